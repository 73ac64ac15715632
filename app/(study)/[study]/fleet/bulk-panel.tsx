'use client';

import { useId, useState } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import type { BulkChoice, BulkDone, BulkField } from '@/lib/features/bulk-edit/schema';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { formatCount } from '@/lib/platform/format';
import { BulkPreview } from './bulk-preview';
import styles from './fleet.module.css';
import { useBulkChange } from './use-bulk-change';

interface Props {
  readonly open: boolean;
  readonly onClose: () => void;
  readonly study: string;
  readonly rows: readonly FleetRow[];
  readonly choices: readonly BulkChoice[];
  readonly who: string;
  readonly onDone: (done: BulkDone, who: string) => void;
}

/** Changes one fact of the selected motors: first what would change, then the change. */
export function BulkPanel({ open, onClose, study, rows, choices, who: known, onDone }: Props) {
  const [field, setField] = useState(choices[0]?.field ?? 'area');
  const [value, setValue] = useState('');
  const [signed, setSigned] = useState<Signed>({ who: known, why: '' });
  const { preview, problem, waiting, look, commit, reset } = useBulkChange();
  const choice = choices.find((each) => each.field === field);
  const order = { studyId: study, motors: rows.map(({ id, version }) => ({ id, version: version ?? 0 })), field, value };
  const send = (): void => {
    if (preview === undefined) look(order);
    else
      commit({ ...order, ...signed }, (done) => {
        setValue('');
        onDone(done, signed.who);
      });
  };
  const type = (next: string): void => {
    reset();
    setValue(next);
  };
  return (
    <Dialog title={`Change ${motorsInWords(rows.length)}`} open={open} onClose={onClose}>
      <form
        className={styles.fields}
        onSubmit={(event) => {
          event.preventDefault();
          send();
        }}
      >
        <FactField
          field={field}
          choices={choices}
          onField={(next) => {
            type('');
            setField(next);
          }}
        />
        {choice && <p className={styles.note}>{choice.meaning}</p>}
        <ValueField choice={choice} value={value} onValue={type} />
        {choice?.words.length === 0 && <p className={styles.note}>Left empty, the fact is taken away: not known.</p>}
        {preview && <BulkPreview preview={preview} label={choice?.label ?? field} />}
        {preview !== undefined && preview.changing > 0 && <SignedFields signed={signed} onSigned={setSigned} />}
        {problem !== undefined && (
          <p className={styles.problem} role="alert">
            {problem}
          </p>
        )}
        <div className={styles.actions}>
          {preview === undefined ? (
            <button type="submit" data-primary disabled={waiting}>
              Show what would change
            </button>
          ) : (
            <button type="submit" data-primary disabled={waiting || preview.changing === 0}>
              Change {motorsInWords(preview.changing)}
            </button>
          )}
        </div>
      </form>
    </Dialog>
  );
}

function motorsInWords(count: number): string {
  return count === 1 ? 'one motor' : `${formatCount(count)} motors`;
}

interface FactProps {
  readonly field: BulkField;
  readonly choices: readonly BulkChoice[];
  readonly onField: (field: BulkField) => void;
}

function FactField({ field, choices, onField }: FactProps) {
  return (
    <label className={styles.field}>
      Which fact
      <select
        value={field}
        onChange={(event) => {
          const next = choices.find((each) => each.field === event.target.value);
          if (next !== undefined) onField(next.field);
        }}
      >
        {choices.map((each) => (
          <option key={each.field} value={each.field}>
            {each.label}
          </option>
        ))}
      </select>
    </label>
  );
}

interface ValueProps {
  readonly choice: BulkChoice | undefined;
  readonly value: string;
  readonly onValue: (value: string) => void;
}

/** The new value: one of the words that are understood, or typed freely. */
function ValueField({ choice, value, onValue }: ValueProps) {
  const id = useId();
  return (
    <div className={styles.field}>
      <label htmlFor={id}>New value{choice !== undefined && choice.unit !== '' && `, ${choice.unit}`}</label>
      {choice !== undefined && choice.words.length > 0 ? (
        <select id={id} value={value} onChange={(event) => onValue(event.target.value)}>
          <option value="">choose</option>
          {choice.words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      ) : (
        <input id={id} type="text" value={value} onChange={(event) => onValue(event.target.value)} />
      )}
    </div>
  );
}

/** Who makes the change, and why. */
interface Signed {
  readonly who: string;
  readonly why: string;
}

function SignedFields({ signed, onSigned }: { readonly signed: Signed; readonly onSigned: (signed: Signed) => void }) {
  return (
    <>
      <label className={styles.field}>
        Your name
        <input
          type="text"
          autoComplete="name"
          value={signed.who}
          maxLength={80}
          required
          onChange={(event) => onSigned({ ...signed, who: event.target.value })}
        />
      </label>
      <label className={styles.field}>
        Why (kept in the history)
        <input
          type="text"
          value={signed.why}
          maxLength={500}
          onChange={(event) => onSigned({ ...signed, why: event.target.value })}
        />
      </label>
    </>
  );
}
