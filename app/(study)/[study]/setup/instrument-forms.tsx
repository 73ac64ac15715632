'use client';

import { useActionState } from 'react';
import { focusBeyondTable } from '@/app/_ui/focus-heir';
import { Outcome } from '@/app/_ui/outcome';
import { ProblemNote } from '@/app/_ui/problem-note';
import sheet from '@/app/_ui/sheet-page.module.css';
import { WhoField } from '@/app/_ui/who-field';
import { dropInstrument, saveInstrument } from '@/lib/features/instruments/actions';

const ERROR_NOTE = 'Greatest permissible error; empty: the study’s.';

const FIELDS = [
  { name: 'voltage', label: 'Voltage', unit: '% of reading', note: ERROR_NOTE },
  { name: 'current', label: 'Current', unit: '% of reading', note: ERROR_NOTE },
  { name: 'power', label: 'Power', unit: '% of reading', note: ERROR_NOTE },
  { name: 'speed', label: 'Speed', unit: 'r/min', note: ERROR_NOTE },
  { name: 'serial', label: 'Serial number', unit: '', note: 'May be left empty.' },
  { name: 'calibrated', label: 'Calibrated on', unit: 'year-month-day', note: 'As on its certificate; may be left empty.' },
  { name: 'due', label: 'Calibration due on', unit: 'year-month-day', note: 'The last day it counts as calibrated.' },
] as const;

/** Adds a meter, or gives the one of this name other errors and dates. */
export function InstrumentForm({ study, who }: { readonly study: string; readonly who: string }) {
  const [state, send, pending] = useActionState(saveInstrument, {});
  return (
    <form action={send} className={sheet.form}>
      <input type="hidden" name="study" value={study} />
      <Outcome state={state} />
      <div className={sheet.fields}>
        <div className={sheet.field}>
          <label htmlFor="instrument-name">Name</label>
          <input
            id="instrument-name"
            name="name"
            required
            maxLength={120}
            defaultValue={state.typed?.name}
            aria-describedby="instrument-name-note"
            aria-invalid={state.refused?.name !== undefined}
          />
          <p id="instrument-name-note">{state.refused?.name ?? 'As it stands in the column “instrument” of the readings.'}</p>
        </div>
        {FIELDS.map(({ name, label, unit, note }) => (
          <div key={name} className={sheet.field}>
            <label htmlFor={`instrument-${name}`}>
              {label} <span className={sheet.soft}>{unit}</span>
            </label>
            <input
              id={`instrument-${name}`}
              name={name}
              inputMode={note === ERROR_NOTE ? 'decimal' : undefined}
              autoComplete="off"
              defaultValue={state.typed?.[name]}
              aria-describedby={`instrument-${name}-note`}
              aria-invalid={state.refused?.[name] !== undefined}
            />
            <p id={`instrument-${name}-note`}>{state.refused?.[name] ?? note}</p>
          </div>
        ))}
      </div>
      <WhoField id="instrument-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
      <p>
        <button type="submit" aria-disabled={pending}>
          {pending ? 'Saving…' : 'Save the instrument'}
        </button>
      </p>
    </form>
  );
}

/** Removes a meter; its readings fall back to the study's errors. */
export function DropInstrument({
  study,
  who,
  instrument,
  name,
}: {
  readonly study: string;
  readonly who: string;
  readonly instrument: string;
  readonly name: string;
}) {
  const [state, send, pending] = useActionState(dropInstrument, {});
  return (
    <form ref={focusBeyondTable} action={send}>
      <ProblemNote problem={state.problem} />
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="instrument" value={instrument} />
      <input type="hidden" name="who" value={who === '' ? 'not named' : who} />
      <button type="submit" aria-disabled={pending}>
        Remove <span className="unseen">{name}</span>
      </button>
    </form>
  );
}
