'use client';

import { useActionState, useRef } from 'react';
import { DraftNote } from '@/app/_ui/draft-note';
import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import { OpenedOn } from '@/app/_ui/opened-on';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { useDraft } from '@/app/_ui/use-draft';
import { WhoField } from '@/app/_ui/who-field';
import { saveSettings } from '@/lib/features/setup/actions';
import { capitalised } from '@/lib/platform/format';
import { UndoSettings } from '../undo-settings';

/** A key of the settings as plain data. */
interface ShownSetting {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly meaning: string;
  readonly kind: string;
  readonly words?: readonly string[];
  readonly said?: Readonly<Record<string, string>>;
  readonly value: string;
  readonly usual: string;
}

interface Props {
  readonly study: string;
  readonly who: string;
  readonly groups: readonly { readonly title: string; readonly fields: readonly ShownSetting[] }[];
}

/** Every key of the settings; numbers by the strict reader, the whole checked by the schema of the settings file. */
export function SettingsForm({ study, who, groups }: Props) {
  const [state, send, pending] = useActionState(saveSettings, {});
  const form = useRef<HTMLFormElement>(null);
  const draft = useDraft(form, `${study} settings`, state.done && state);
  const opened = Object.fromEntries(groups.flatMap(({ fields }) => fields.map(({ key, value }) => [key, value])));
  const written = groups.flatMap(({ fields }) => fields.filter(({ kind }) => kind === 'json'));
  const shown = (field: ShownSetting) => (
    <Field key={field.key} field={field} typed={state.typed?.[field.key]} refused={state.refused?.[field.key]} />
  );
  return (
    <section aria-label="Settings">
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
      <DraftNote draft={draft} />
      <form ref={form} action={send} className={sheet.form} noValidate>
        <input type="hidden" name="study" value={study} />
        <OpenedOn cells={state.seen ?? opened} />
        {groups.map((group) => {
          const fields = group.fields.filter(({ kind }) => kind !== 'json');
          return (
            <fieldset key={group.title}>
              <legend>{group.title}</legend>
              <FoldOnPhone
                what={capitalised(
                  fields.map(({ label }) => label.replace(/^[A-Z](?![A-Z])/, (first) => first.toLowerCase())).join(', '),
                )}
                wanted={draft.restored || fields.some(({ key }) => state.refused?.[key] !== undefined)}
              >
                <div className={sheet.fields} data-folds>
                  {fields.map(shown)}
                </div>
              </FoldOnPhone>
            </fieldset>
          );
        })}
        <details
          className={sheet.more}
          open={written.some(({ key, value }) => used(value) || state.refused?.[key] !== undefined)}
        >
          <summary>As a settings file writes it: {written.map(({ label }) => label.toLowerCase()).join(', ')}</summary>
          <div className={sheet.fields}>{written.map(shown)}</div>
        </details>
        <WhoField id="settings-who" initial={who} typed={state.typed?.who} refused={state.refused?.who} />
        <div className={sheet.field}>
          <label htmlFor="settings-why">Why (may be left out)</label>
          <input id="settings-why" name="why" maxLength={500} defaultValue={state.typed?.why} key={state.typed?.why} />
        </div>
        <p>
          <button type="submit" data-primary aria-disabled={pending}>
            {pending ? 'Saving…' : 'Save the settings'}
          </button>
        </p>
      </form>
    </section>
  );
}

/** Whether a part of the settings that is written as JSON says anything. */
function used(value: string): boolean {
  return !['', '{}', '[]'].includes(value);
}

function Field({
  field,
  typed,
  refused,
}: {
  readonly field: ShownSetting;
  readonly typed: string | undefined;
  readonly refused: string | undefined;
}) {
  const id = `setting-${field.key.replaceAll('.', '-')}`;
  const value = typed ?? field.value;
  const shared = {
    id,
    name: field.key,
    defaultValue: value,
    'aria-describedby': `${id}-note`,
    'aria-invalid': refused !== undefined,
  } as const;
  return (
    <div className={sheet.field}>
      <label htmlFor={id}>
        {field.label} {field.unit !== '' && <span className={sheet.soft}>{field.unit}</span>}
      </label>
      {field.words ? (
        <select {...shared} key={value}>
          {field.words.map((word) => (
            <option key={word} value={word}>
              {field.said?.[word] ?? word}
            </option>
          ))}
        </select>
      ) : field.kind === 'json' ? (
        <textarea {...shared} key={value} rows={2} spellCheck={false} />
      ) : (
        <input
          {...shared}
          key={value}
          autoComplete="off"
          {...(field.kind === 'number' ? { inputMode: 'decimal' as const } : {})}
        />
      )}
      <p id={`${id}-note`}>
        {refused ?? field.meaning}
        {field.usual !== value && used(field.usual) && ` Usual: ${field.said?.[field.usual] ?? field.usual}.`}
      </p>
    </div>
  );
}
