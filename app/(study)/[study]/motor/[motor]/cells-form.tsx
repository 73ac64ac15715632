'use client';

import Link from 'next/link';
import { type ReactNode, useActionState, useEffect, useLayoutEffect, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { ProblemNote } from '@/app/_ui/problem-note';
import { useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import type { FormField, FormGroup } from '@/lib/features/motor/form-fields';
import type { EditState } from '@/lib/features/motor/schema';
import { typedOf } from '@/lib/features/study/meanwhile';
import { counted } from '@/lib/platform/format';
import styles from './cells-form.module.css';

interface Props {
  readonly action: (state: EditState, form: FormData) => Promise<EditState>;
  readonly groups: readonly FormGroup[];
  readonly study: string;
  readonly motor: string;
  readonly version: number;
  readonly who: string;
  readonly submit: string;
  readonly back: string;
  /** Where one goes on to once it is saved, such as the next motor of a round. */
  readonly onwards?: { readonly href: string; readonly words: string };
}

/** Without an answer the form stays as it was typed: whoever stands at a motor may be out of reach for a while. */
function keeping(action: Props['action']): Props['action'] {
  return async (state, form) => {
    try {
      return await action(state, form);
    } catch (error) {
      // An error of the program has its mark in the log; one of the way to it is the browser's own.
      if (!(error instanceof TypeError) || 'digest' in error) throw error;
      return {
        typed: typedOf(form),
        problem: {
          text: 'The program does not answer: this device may be out of reach, or the program was ended.',
          remedy: 'What you typed is kept here. Save again once you are back in reach.',
        },
      };
    }
  };
}

/** A form of a sheet's cells: every value as text, understood by the sheet's own rules, refused in words and never changed in silence. */
export function CellsForm({ action, groups, study, motor, version, who, submit, back, onwards }: Props) {
  const [state, send, pending] = useActionState(keeping(action), {});
  const done = state.done;
  const form = useRef<HTMLFormElement>(null);
  const outcome = useRef<HTMLElement>(null);
  const draft = useDraft(form, `${motor} ${submit}`, done);
  // The button stands below a long form: what came of it is led to, a refused cell first, and before it is painted: a key pressed on sight of it
  // goes on from there.
  useLayoutEffect(() => {
    if (state.done) outcome.current?.focus();
    else if (state.problem) {
      openFilled(form.current);
      const refused = form.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
      if (refused) refused.focus();
      else form.current?.scrollIntoView();
    }
  }, [state]);
  // A draft is put back after the page was sent, and may stand in what is folded.
  useEffect(() => {
    if (draft.restored) openFilled(form.current);
  }, [draft.restored]);
  return (
    <form ref={form} action={send} className={styles.form} noValidate>
      <input type="hidden" name="study" value={study} />
      <input type="hidden" name="motor" value={motor} />
      <input type="hidden" name="version" value={done?.version ?? version} />
      <ProblemNote problem={state.problem} />
      <DraftNote draft={draft} />
      {done && (
        <section ref={outcome} tabIndex={-1} aria-labelledby="outcome" className={styles.done}>
          <p>
            <strong id="outcome">{done.changes === 0 ? 'Nothing was different; nothing was saved.' : 'Saved.'}</strong>{' '}
            <Link href={back}>Back to the motor</Link>
          </p>
          {onwards && (
            <p>
              <Link href={onwards.href}>{onwards.words}</Link>
            </p>
          )}
          {done.figures.length > 0 && <Moved figures={done.figures} />}
          {done.changes > 0 && done.figures.length === 0 && <p>No main figure moved.</p>}
        </section>
      )}
      {groups.map((group) => (
        <Group key={group.title} group={group}>
          {group.fields.map((field) => (
            <Cell
              key={field.name}
              field={field}
              typed={state.typed?.[field.name]}
              refused={state.refused?.[field.name]}
              understood={state.understood?.[field.name]}
            />
          ))}
        </Group>
      ))}
      <fieldset className={styles.group}>
        <legend>Who and why</legend>
        <WhoField id="who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <div className={styles.cell}>
          <label htmlFor="why">Why (may be left out)</label>
          <input id="why" name="why" maxLength={500} defaultValue={state.typed?.why ?? ''} key={state.typed?.why ?? ''} />
        </div>
      </fieldset>
      <p className={styles.buttons}>
        <button type="submit" data-primary aria-disabled={pending}>
          {pending ? 'Saving…' : submit}
        </button>{' '}
        <Link href={back}>Leave without saving</Link>
      </p>
    </form>
  );
}

/** The cells of a group under its name; folded where one seldom has something to put in. */
function Group({ group, children }: { readonly group: FormGroup; readonly children: ReactNode }) {
  const { title, fields, folded } = group;
  if (!folded) {
    return (
      <fieldset className={styles.group}>
        <legend>{title}</legend>
        <div className={styles.cells}>{children}</div>
      </fieldset>
    );
  }
  return (
    <details className={styles.folded}>
      <summary>
        {title} <span className={styles.count}>{counted(fields.length, 'cell')}</span>
      </summary>
      <fieldset className={styles.inside} aria-label={title}>
        <div className={styles.cells}>{children}</div>
      </fieldset>
    </details>
  );
}

/** Opens what is folded and holds an entry or a refusal. */
function openFilled(form: HTMLFormElement | null): void {
  for (const folded of form?.querySelectorAll('details') ?? []) {
    const cells = [...folded.querySelectorAll<HTMLInputElement | HTMLSelectElement>('input, select')];
    if (cells.some((cell) => cell.value !== '' || cell.getAttribute('aria-invalid') === 'true')) folded.open = true;
  }
}

/** The main figures that the change moved. */
function Moved({ figures }: Pick<NonNullable<EditState['done']>, 'figures'>) {
  return (
    <table>
      <caption>What it changed</caption>
      <thead>
        <tr>
          <th scope="col">Figure</th>
          <th scope="col">Before</th>
          <th scope="col">Now</th>
        </tr>
      </thead>
      <tbody>
        {figures.map((figure) => (
          <tr key={figure.name}>
            <th scope="row">{figure.name}</th>
            <td>{figure.before}</td>
            <td>{figure.after}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The time on the reader's clock, as the sheet writes it: who types at the motor has the time of the site. */
function putNow(id: string): void {
  const input = document.getElementById(id);
  if (!(input instanceof HTMLInputElement)) return;
  const now = new Date();
  const local = new Date(now.getTime() - now.getTimezoneOffset() * 60_000);
  input.value = local.toISOString().slice(0, 16).replace('T', ' ');
  // So that the draft learns of it.
  input.dispatchEvent(new Event('input', { bubbles: true }));
  input.focus();
}

function Cell({
  field,
  typed,
  refused,
  understood,
}: {
  readonly field: FormField;
  readonly typed: string | undefined;
  readonly refused: string | undefined;
  readonly understood: string | undefined;
}) {
  const note = `${field.name}-note`;
  const value = typed ?? field.value;
  return (
    <div className={styles.cell} data-refused={refused !== undefined}>
      <label htmlFor={field.name} title={field.meaning}>
        {field.label}{' '}
        {field.unit !== '' && !field.label.endsWith(` ${field.unit}`) && <span className={styles.unit}>{field.unit}</span>}
      </label>
      {field.words ? (
        <select
          id={field.name}
          name={field.name}
          defaultValue={value}
          key={value}
          aria-describedby={note}
          aria-invalid={refused !== undefined}
        >
          <option value="">not known</option>
          {field.words.map((word) => (
            <option key={word} value={word}>
              {word}
            </option>
          ))}
        </select>
      ) : (
        <span className={styles.entry}>
          <input
            id={field.name}
            name={field.name}
            defaultValue={value}
            key={value}
            autoComplete="off"
            aria-describedby={note}
            aria-invalid={refused !== undefined}
            {...(field.numeric ? { inputMode: 'decimal' as const } : {})}
            {...(field.known ? { list: `${field.name}-known` } : {})}
          />
          {field.known && (
            <datalist id={`${field.name}-known`}>
              {field.known.map((word) => (
                <option key={word} value={word} />
              ))}
            </datalist>
          )}
          {field.moment && (
            <button type="button" onClick={() => putNow(field.name)}>
              Now<span className="unseen"> as {field.label}</span>
            </button>
          )}
        </span>
      )}
      <p id={note} className={refused === undefined ? styles.note : styles.refused}>
        {refused ?? (understood === undefined ? field.meaning : `Understood as ${understood}.`)}
      </p>
    </div>
  );
}
