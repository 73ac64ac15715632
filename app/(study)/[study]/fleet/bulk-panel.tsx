'use client';

import { useId, useState, useTransition } from 'react';
import { Dialog } from '@/app/_ui/dialog';
import { commitChange, previewChange } from '@/lib/features/bulk-edit/actions';
import type { BulkChoice, BulkDone, BulkPreview } from '@/lib/features/bulk-edit/schema';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { formatCount } from '@/lib/platform/format';
import styles from './fleet.module.css';

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
  const [who, setWho] = useState(known);
  const [why, setWhy] = useState('');
  const [preview, setPreview] = useState<BulkPreview>();
  const [problem, setProblem] = useState<string>();
  const [waiting, startTransition] = useTransition();
  const valueId = useId();
  const choice = choices.find((each) => each.field === field);
  const order = { studyId: study, motors: rows.map(({ id, version }) => ({ id, version: version ?? 0 })), field, value };
  const fresh = (): void => {
    setPreview(undefined);
    setProblem(undefined);
  };
  const look = (): void =>
    startTransition(async () => {
      const done = await previewChange(order);
      setPreview(done.ok ? done.value : undefined);
      setProblem(done.ok ? undefined : `${done.problem.text} ${done.problem.remedy}`);
    });
  const commit = (): void =>
    startTransition(async () => {
      const done = await commitChange({ ...order, who, why });
      setProblem(done.ok ? undefined : `${done.problem.text} ${done.problem.remedy}`);
      if (!done.ok) return;
      setPreview(undefined);
      setValue('');
      onDone(done.value, who);
    });
  const count = rows.length === 1 ? 'one motor' : `${formatCount(rows.length)} motors`;
  return (
    <Dialog title={`Change ${count}`} open={open} onClose={onClose}>
      <form
        className={styles.fields}
        onSubmit={(event) => {
          event.preventDefault();
          if (preview === undefined) look();
          else commit();
        }}
      >
        <label className={styles.field}>
          Which fact
          <select
            value={field}
            onChange={(event) => {
              const next = choices.find((each) => each.field === event.target.value);
              if (next === undefined) return;
              fresh();
              setValue('');
              setField(next.field);
            }}
          >
            {choices.map((each) => (
              <option key={each.field} value={each.field}>
                {each.label}
              </option>
            ))}
          </select>
        </label>
        {choice && <p className={styles.note}>{choice.meaning}</p>}
        <div className={styles.field}>
          <label htmlFor={valueId}>New value{choice !== undefined && choice.unit !== '' && `, ${choice.unit}`}</label>
          {choice !== undefined && choice.words.length > 0 ? (
            <select
              id={valueId}
              value={value}
              onChange={(event) => {
                fresh();
                setValue(event.target.value);
              }}
            >
              <option value="">choose</option>
              {choice.words.map((word) => (
                <option key={word} value={word}>
                  {word}
                </option>
              ))}
            </select>
          ) : (
            <input
              id={valueId}
              type="text"
              value={value}
              onChange={(event) => {
                fresh();
                setValue(event.target.value);
              }}
            />
          )}
        </div>
        {choice?.words.length === 0 && <p className={styles.note}>Left empty, the fact is taken away: not known.</p>}
        {preview && <Preview preview={preview} label={choice?.label ?? field} />}
        {preview !== undefined && preview.changing > 0 && (
          <>
            <label className={styles.field}>
              Your name
              <input
                type="text"
                autoComplete="name"
                value={who}
                maxLength={80}
                required
                onChange={(event) => setWho(event.target.value)}
              />
            </label>
            <label className={styles.field}>
              Why (kept in the history)
              <input type="text" value={why} maxLength={500} onChange={(event) => setWhy(event.target.value)} />
            </label>
          </>
        )}
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
              Change {preview.changing === 1 ? 'one motor' : `${formatCount(preview.changing)} motors`}
            </button>
          )}
        </div>
      </form>
    </Dialog>
  );
}

function Preview({ preview, label }: { readonly preview: BulkPreview; readonly label: string }) {
  const { changing, same, overtaken, examples, understood, warning } = preview;
  return (
    <div>
      <p role="status">
        Understood as <strong>{understood}</strong>. {formatCount(changing)} would change
        {same > 0 && `, ${formatCount(same)} have it already`}
        {overtaken > 0 &&
          `, ${formatCount(overtaken)} were changed by somebody else since this list was loaded and stay as they are`}
        .
      </p>
      {warning !== undefined && <p className={styles.problem}>{warning}</p>}
      {examples.length > 0 && (
        <section className={styles.previewBox} aria-label="What would change">
          <table className={styles.preview}>
            <thead>
              <tr>
                <th scope="col">Motor</th>
                <th scope="col">{label} now</th>
                <th scope="col">then</th>
              </tr>
            </thead>
            <tbody>
              {examples.map((example) => (
                <tr key={example.id}>
                  <th scope="row">{example.name}</th>
                  <td>{example.from}</td>
                  <td>{example.to}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {changing > examples.length && <p className={styles.note}>The first {formatCount(examples.length)} are shown.</p>}
    </div>
  );
}
