import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Setup } from '@/lib/features/setup/loaders';
import { counted } from '@/lib/platform/format';
import { DropInstrument, InstrumentForm } from './instrument-forms';

type ShownInstrument = Setup['instruments'][number];

interface Props {
  readonly study: string;
  readonly who: string;
  readonly instruments: readonly ShownInstrument[];
}

const ERRORS = [
  ['Voltage', '%', 'voltagePct'],
  ['Current', '%', 'currentPct'],
  ['Power', '%', 'powerPct'],
  ['Speed', 'r/min', 'speedRpm'],
] as const;

/** The meters of a study with their errors, and which of them should have been calibrated. */
export function InstrumentsSection({ study, who, instruments }: Props) {
  return (
    <section className={sheet.section} aria-labelledby="instruments">
      <h2 id="instruments">Instruments</h2>
      <p>
        Meters by the name that stands with the readings. A reading that states no error of its meter takes the one given here. A
        meter whose calibration is overdue counts with the same error: have it calibrated, or give a wider one.
      </p>
      {instruments.length > 0 && (
        <ScrollRegion label="Instruments in use">
          <table className={sheet.table}>
            <thead>
              <tr>
                <th scope="col">Name</th>
                {ERRORS.map(([name, unit]) => (
                  <NumberHead key={name} name={name} unit={unit} />
                ))}
                <th scope="col">Calibration</th>
                <th scope="col">
                  <span className="unseen">Remove</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {instruments.map((instrument) => (
                <tr key={instrument.id}>
                  <th scope="row">
                    {instrument.name}
                    {instrument.serialNumber !== undefined && <span className={sheet.soft}> {instrument.serialNumber}</span>}
                  </th>
                  {ERRORS.map(([name, , key]) => (
                    <td key={name} className={sheet.number}>
                      {instrument[key] ?? 'the study’s'}
                    </td>
                  ))}
                  <td>
                    <Calibration instrument={instrument} />
                  </td>
                  <td>
                    <DropInstrument study={study} who={who} instrument={instrument.id} name={instrument.name} />
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      <FoldOnPhone what="Add a meter, or change one">
        <div data-folds>
          <InstrumentForm study={study} who={who} />
        </div>
      </FoldOnPhone>
    </section>
  );
}

function Calibration({ instrument }: { readonly instrument: ShownInstrument }) {
  const { calibratedOn, calibrationDueOn, overdue, takenAfterDue } = instrument;
  const dates = [calibratedOn, calibrationDueOn === undefined ? undefined : `due ${calibrationDueOn}`];
  return (
    <>
      {dates.filter((part) => part !== undefined).join(', ') || 'not stated'}
      {overdue && <strong> Overdue.</strong>}
      {takenAfterDue > 0 && ` ${counted(takenAfterDue, 'reading')} taken after it was due.`}
    </>
  );
}
