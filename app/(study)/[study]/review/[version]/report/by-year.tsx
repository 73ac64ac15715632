import { FigureText } from '@/app/_ui/figure';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Report, Total } from '@/lib/features/sign-off/loaders';
import { formatCount } from '@/lib/platform/format';

/** What is saved in each year of the budget and after it, to the horizon. */
export function ByYear({ report: { byYear }, currency }: { readonly report: Report; readonly currency: string }) {
  if (byYear.every(({ motors }) => motors === 0)) return null;
  const cell = (total: Total | undefined, name: string, reason: string) => (
    <td className={sheet.number}>
      <FigureText figure={total && total.motors > 0 ? total : undefined} name={name} reason={reason} unitInHead />
    </td>
  );
  const missing = 'No saving can be worked out: hours or load are missing, or nothing is done by then.';
  return (
    <section className={sheet.section} aria-labelledby="by-year">
      <h2 id="by-year">What is saved in which year</h2>
      <p>
        A motor is changed at the start of its year and saves from then on. Money is at the prices of the study’s day, before tax.
        Against each motor as it is: once the old one would have failed, the new one earns against what would have replaced it,
        which the present value counts and this table does not.
      </p>
      <ScrollRegion label="Savings by year">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Year</th>
              <NumberHead name="Motors done" />
              <NumberHead name="Energy" unit="kWh" />
              <NumberHead name="Money" unit={currency} />
              <NumberHead name="Emissions" unit="kg of CO₂" />
            </tr>
          </thead>
          <tbody>
            {byYear.map(({ year, to, motors, energy, money, emissions }) => {
              const words = to === undefined || to === year ? String(year) : `each year from ${year} to ${to}`;
              return (
                <tr key={year}>
                  <th scope="row">{words}</th>
                  <td className={sheet.number}>{formatCount(motors)}</td>
                  {cell(energy, `energy saved, ${words}`, missing)}
                  {cell(money, `money saved, ${words}`, missing)}
                  {cell(emissions, `emissions saved, ${words}`, emissions ? missing : 'The factor of emissions differs by year.')}
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}
