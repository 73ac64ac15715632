'use client';

import { useActionState, useEffect, useRef, useState } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { OpenedOn } from '@/app/_ui/opened-on';
import { Outcome } from '@/app/_ui/outcome';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, HEAD, ROW, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { readDraft, useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { sendTariff } from '@/lib/features/setup/actions';
import type { TariffView } from '@/lib/features/setup/tariff-view';
import { UndoSettings } from '../../undo-settings';
import styles from './tariff-form.module.css';
import { TariffResult } from './tariff-result';

/** A cell of the form as plain data. */
interface ShownCell {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly note: string;
  readonly kind: string;
  readonly words?: readonly { readonly value: string; readonly label: string }[];
}

interface ShownRows {
  readonly part: string;
  readonly title: string;
  readonly note: string;
  readonly cells: readonly ShownCell[];
}

interface Props {
  readonly study: string;
  readonly site: string;
  readonly who: string;
  readonly stored: boolean;
  readonly cells: Readonly<Record<string, string>>;
  readonly view: TariffView;
  readonly rows: readonly ShownRows[];
  readonly fields: {
    readonly head: readonly ShownCell[];
    readonly other: readonly ShownCell[];
    readonly usage: readonly ShownCell[];
  };
}

/** A site's tariff: typed, worked out as often as one likes, and saved. What it comes to stands above the form. */
export function TariffForm({ study, site, who, stored, cells, view, rows, fields }: Props) {
  const [state, send, pending] = useActionState(sendTariff, {});
  const shown = state.typed ?? cells;
  const refused = state.refused ?? {};
  const form = useRef<HTMLFormElement>(null);
  const name = `${study} tariff ${site}`;
  const kept = useKept(name);
  const draft = useDraft(form, name, state.batch === undefined ? undefined : state, kept);
  const field = (one: ShownCell) => <Field key={one.name} cell={one} value={shown[one.name] ?? ''} refused={refused[one.name]} />;
  return (
    // One section around both, so that what a sent form has to say leads to the refused cell wherever it stands.
    <section aria-label="Tariff">
      <div className={styles.result}>
        {state.batch === undefined ? (
          <Outcome state={state} />
        ) : (
          <UndoSettings
            key={state.batch}
            study={study}
            who={who}
            batch={state.batch}
            {...(state.done !== undefined && { done: state.done })}
          />
        )}
        {state.view !== undefined && state.batch === undefined && (
          <p className={sheet.soft}>These are the figures of the tariff as typed.</p>
        )}
        <TariffResult view={state.view ?? view} />
      </div>
      <div className={sheet.section}>
        <h2>The tariff</h2>
        <DraftNote draft={draft} />
        <form ref={form} action={send} className={styles.form} noValidate>
          <input type="hidden" name="study" value={study} />
          <input type="hidden" name="site" value={site} />
          <OpenedOn cells={state.seen ?? (stored ? cells : {})} />
          {/* The first button is what Enter presses: it changes nothing. */}
          <button type="submit" name="intent" value="work-out" className="unseen" tabIndex={-1} aria-hidden="true">
            Work it out
          </button>
          <div className={sheet.fields}>{fields.head.map(field)}</div>
          {rows.map((part) => (
            <Rows key={part.part} part={part} shown={shown} kept={kept} refused={refused} />
          ))}
          <fieldset>
            <legend>Other charges</legend>
            <div className={sheet.fields}>{fields.other.map(field)}</div>
          </fieldset>
          <fieldset>
            <legend>What the whole site takes</legend>
            <p className={sheet.soft}>
              From the last twelve bills. Blocks, ratchets, minimums, kVA and power-factor charges need it.
            </p>
            <div className={sheet.fields}>{fields.usage.map(field)}</div>
          </fieldset>
          <WhoField id="tariff-who" initial={who} typed={state.typed?.who} refused={refused.who} />
          <div className={sheet.bar}>
            <button type="submit" name="intent" value="work-out" aria-disabled={pending}>
              {pending ? 'Working…' : 'Work it out'}
            </button>
            <button type="submit" name="intent" value="save" data-primary aria-disabled={pending}>
              Save the tariff
            </button>
            {stored && (
              <button type="submit" name="intent" value="remove" aria-disabled={pending}>
                Remove it: flat prices again
              </button>
            )}
          </div>
        </form>
      </div>
    </section>
  );
}

/** What the window kept of a tariff that was not saved: its rows must be there before it can be put back. */
function useKept(name: string): ReadonlyMap<string, string> | undefined {
  const [kept, setKept] = useState<ReadonlyMap<string, string>>();
  useEffect(() => setKept(readDraft(`draft ${name}`)), [name]);
  return kept;
}

/** Rows that a part has, by the cells that are filled, and one more to type into. */
function filledRows(part: string, cells: Iterable<readonly [string, string]>): number {
  let last = -1;
  for (const [name, value] of cells) {
    // What is kept stands under the name of its cell and its place among those of that name.
    const [of = '', index = '', ...cell] = name.replace(/ 0$/, '').split('.');
    if (of === part && value !== '' && cell.join() !== 'unit') last = Math.max(last, Number(index));
  }
  return last + 1;
}

function Rows({
  part,
  shown,
  kept,
  refused,
}: {
  readonly part: ShownRows;
  readonly shown: Readonly<Record<string, string>>;
  readonly kept: ReadonlyMap<string, string> | undefined;
  readonly refused: Readonly<Record<string, string>>;
}) {
  const [more, setMore] = useState(0);
  const filled = Math.max(filledRows(part.part, Object.entries(shown)), filledRows(part.part, kept ?? []));
  const count = Math.max(1, filled + (part.part === 'energy' || part.part === 'demand' ? 1 : 0)) + more;
  const bad = Object.entries(refused).filter(([name]) => name.startsWith(`${part.part}.`));
  return (
    <fieldset>
      <legend>{part.title}</legend>
      <p className={sheet.soft}>{part.note}</p>
      <ScrollRegion label={`Rows of ${part.title.toLowerCase()}`}>
        <table {...TABLE} className={`${sheet.table} ${styles.rows} ${lines.lines} ${lines.figures}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              {part.cells.map((cell) => (
                <th key={cell.name} {...HEAD} scope="col">
                  {cell.label}
                  {cell.unit !== '' && <span className={sheet.unit}>{cell.unit}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody {...GROUP}>
            {Array.from({ length: count }, (_, index) => `${part.part}.${index}`).map((row, index) => (
              <tr key={row} {...ROW}>
                {part.cells.map((cell) => (
                  <td key={cell.name} {...CELL} data-unit={cell.unit === '' ? cell.label : `${cell.label}, ${cell.unit}`}>
                    <Control
                      cell={cell}
                      name={`${row}.${cell.name}`}
                      value={shown[`${row}.${cell.name}`] ?? ''}
                      label={`${part.title}, row ${index + 1}: ${cell.label.toLowerCase()}`}
                      invalid={refused[`${row}.${cell.name}`] !== undefined}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      {bad.map(([name, text]) => (
        <p key={name} className={styles.refused}>
          {text}
        </p>
      ))}
      <button type="button" onClick={() => setMore(more + 1)}>
        Another row <span className="unseen">of {part.title.toLowerCase()}</span>
      </button>
    </fieldset>
  );
}

function Control({
  cell,
  name,
  value,
  label,
  invalid,
}: {
  readonly cell: ShownCell;
  readonly name: string;
  readonly value: string;
  readonly label: string;
  readonly invalid: boolean;
}) {
  const shared = { name, defaultValue: value, 'aria-label': label, 'aria-invalid': invalid, className: styles[cell.kind] };
  if (cell.words)
    return (
      <select {...shared} key={value}>
        {cell.words.map((word) => (
          <option key={word.value} value={word.value}>
            {word.label}
          </option>
        ))}
      </select>
    );
  return (
    <input
      {...shared}
      key={value}
      autoComplete="off"
      {...(['number', 'per-cent'].includes(cell.kind) ? { inputMode: 'decimal' as const } : {})}
    />
  );
}

function Field({
  cell,
  value,
  refused,
}: {
  readonly cell: ShownCell;
  readonly value: string;
  readonly refused: string | undefined;
}) {
  const id = `tariff-${cell.name.replaceAll(/[._]/g, '-')}`;
  const shared = {
    id,
    name: cell.name,
    defaultValue: value,
    'aria-describedby': `${id}-note`,
    'aria-invalid': refused !== undefined,
  } as const;
  return (
    <div className={sheet.field}>
      <label htmlFor={id}>
        {cell.label} {cell.unit !== '' && <span className={sheet.soft}>{cell.unit}</span>}
      </label>
      {cell.words ? (
        <select {...shared} key={value}>
          {cell.words.map((word) => (
            <option key={word.value} value={word.value}>
              {word.label}
            </option>
          ))}
        </select>
      ) : cell.kind === 'use' ? (
        <textarea {...shared} key={value} rows={3} spellCheck={false} />
      ) : (
        <input {...shared} key={value} autoComplete="off" />
      )}
      <p id={`${id}-note`}>{refused ?? cell.note}</p>
    </div>
  );
}
