import { Head } from '@/app/_ui/head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { SavedCells, SavedHeads } from '@/app/_ui/screened-cell';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Measures, Settings } from '@/lib/engine';
import { afterTheOthers, screenedText, worthwhile, worthwhileTogether } from '@/lib/features/ranking/measure-words';
import { interacting } from '@/lib/features/ranking/measures';
import { unparted } from '@/lib/platform/format';

/** What else is worth looking into: screened, never planned; what they save together is less than their sum. */
export function AlsoWorth({ found, settings }: { readonly found: Measures; readonly settings: Settings }) {
  const { measures, energySavedTogether } = found;
  const { currency } = settings;
  const joint = interacting({ found });
  const together = energySavedTogether && screenedText(energySavedTogether);
  return (
    <section className={sheet.section} aria-labelledby="also">
      <h2 id="also">Also worth a look</h2>
      {measures.length === 0 ? (
        <p>
          Nothing stands out. Idle hours, throttled flow, belts, voltages and power factor are looked at where the motor runs, its
          hours are known and its load is usable.
        </p>
      ) : (
        <>
          <p>
            Screening estimates of what could be done to the motor as it is, each as if nothing else were done; with another motor
            they must be reckoned again. They are not in any plan: look into them first.
          </p>
          <ScrollRegion label="Other measures">
            <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
              <thead {...GROUP}>
                <tr {...ROW}>
                  <Head>Measure, and what was assumed</Head>
                  <SavedHeads currency={currency} />
                  <Head>Cost and payback</Head>
                </tr>
              </thead>
              <tbody {...GROUP}>
                {measures.map((measure) => {
                  const later = joint.includes(measure.id) ? afterTheOthers(measure) : undefined;
                  return (
                    <tr key={measure.id} {...ROW}>
                      <th {...ROW_HEAD} scope="row" className={sheet.because}>
                        {unparted(measure.text)}
                        <span className={sheet.unit}>{unparted(measure.assumed)}</span>
                      </th>
                      <SavedCells energy={measure.energySaved} money={measure.moneySaved} currency={currency} />
                      <td {...CELL} className={sheet.because}>
                        {worthwhile(measure, settings).words}
                        {later !== undefined && ` ${later}`}
                      </td>
                    </tr>
                  );
                })}
              </tbody>
            </table>
          </ScrollRegion>
          {together && joint.length > 1 && (
            <p>
              All together they save {together.likely} kWh a year{together.range && ` (${together.range})`}: less than their sum,
              since each acts on what the others leave. {worthwhileTogether(found, settings).words}
            </p>
          )}
        </>
      )}
    </section>
  );
}
