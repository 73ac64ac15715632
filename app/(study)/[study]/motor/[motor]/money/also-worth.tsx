import { SavedHeads, ScreenedCell, screenedText } from '@/app/_ui/screened-cell';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Measures } from '@/lib/engine';

/** What else is worth looking into: screened, never planned; what they save together is less than their sum. */
export function AlsoWorth({
  measures: { measures, energySavedTogether },
  currency,
}: {
  readonly measures: Measures;
  readonly currency: string;
}) {
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
            Screening estimates of what could be done beside another motor, each as if nothing else were done. They are not in any
            plan: look into them first.
          </p>
          <ScrollRegion label="Other measures">
            <table className={sheet.table}>
              <thead>
                <tr>
                  <th scope="col">Measure</th>
                  <SavedHeads currency={currency} />
                  <th scope="col">What was assumed</th>
                </tr>
              </thead>
              <tbody>
                {measures.map(({ id, text, assumed, energySaved, moneySaved }) => (
                  <tr key={id}>
                    <th scope="row" className={sheet.because}>
                      {text}
                    </th>
                    <ScreenedCell screened={energySaved} />
                    <ScreenedCell screened={moneySaved} />
                    <td className={sheet.because}>{assumed}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
          {together && measures.filter(({ energySaved }) => energySaved).length > 1 && (
            <p>
              All together they save {together.likely} kWh a year{together.range && ` (${together.range})`}: less than their sum,
              since each acts on what the others leave.
            </p>
          )}
        </>
      )}
    </section>
  );
}
