import sheet from '@/app/_ui/sheet-page.module.css';
import type { Drawn } from '@/lib/features/sign-off/loaders';
import { TableEditions } from '../table-editions';

/** How the figures came about, in a page, for readers who were not there. */
export function Method({ content: { engine, settings, tables } }: { readonly content: Drawn }) {
  return (
    <section className={sheet.section} aria-labelledby="method">
      <h2 id="method">How the figures came about</h2>
      <p>
        <strong>Load.</strong> What was read at each motor (power, current, speed, voltage) and what is stamped on it are fitted
        together by the motor’s circuit. Where they contradict each other beyond chance the usual mistakes of reading are tried,
        and a reading that is found at fault is left out, never corrected.
      </p>
      <p>
        <strong>Losses and efficiency.</strong> Losses are reckoned apart: stator and rotor windings at their temperature, core,
        friction and windage, and stray load. Efficiency is output over input at the load as it is, not at rated load.
      </p>
      <p>
        <strong>Doubt.</strong> Meters, stamps and assumptions each have an uncertainty, which is carried through to every figure
        (JCGM 100). A 95 % interval is 1.96 standard uncertainties to either side.
      </p>
      <p>
        <strong>Savings.</strong> A new motor is put at its own operating point against the same load, with the speed at which it
        would run. Money is what the bill would be with less drawn, by the tariff of the study. Costs and savings are discounted
        by NIST Handbook 135 and ASTM E917, over {String(settings.horizon_years)} years, against the course of keeping the motor
        and doing at its failure what the policy says.
      </p>
      <p>
        <strong>Choice.</strong> Options and years are chosen together so that the budgets bring the most; no choice is made on
        figures that are not usable, unless somebody has put their name and reason to it.
      </p>
      <p>
        Every relation stands with its source on the page Method of the program; every figure opens its derivation there. Engine{' '}
        {engine}.
      </p>
      <p className={sheet.soft}>Tables and their editions:</p>
      <TableEditions tables={tables} />
    </section>
  );
}
