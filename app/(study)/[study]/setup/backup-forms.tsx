'use client';

import { useActionState } from 'react';
import { Outcome } from '@/app/_ui/outcome';
import sheet from '@/app/_ui/sheet-page.module.css';
import { backUpNow, restoreFromBackup, restoreFromFile } from '@/lib/features/backup/actions';
import { formatCount } from '@/lib/platform/format';
import type { Restored } from '@/lib/platform/restore-file';

interface State {
  readonly problem?: { readonly text: string; readonly remedy: string };
  readonly done?: string;
}

async function backUp(): Promise<State> {
  const done = await backUpNow();
  return done.ok ? { done: `Backed up as ${done.value.name}, and the copy was checked.` } : { problem: done.problem };
}

async function restore(_: State, form: FormData): Promise<State> {
  const done =
    form.get('file') instanceof File && (form.get('file') as File).size > 0
      ? await restoreFromFile(form)
      : await restoreFromBackup(form);
  return done.ok ? { done: restoredWords(done.value) } : { problem: done.problem };
}

/** What was tried before anything was replaced, what it held, and where the former data are. */
function restoredWords({ rows, keptAside }: Restored): string {
  const held = [
    [rows.Study, 'study', 'studies'],
    [rows.Motor, 'motor', 'motors'],
    [rows.Reading, 'reading', 'readings'],
  ] as const;
  const counts = held.map(([count = 0, one, many]) => `${formatCount(count)} ${count === 1 ? one : many}`).join(', ');
  const kept = keptAside === undefined ? '' : ` What was there before is kept as ${keptAside.split(/[\\/]/).at(-1)}.`;
  return `Restored. A copy of the backup was opened, checked page by page, brought up to this version and counted first: ${counts}.${kept}`;
}

/** Makes a backup of all studies now. */
export function BackUpForm() {
  const [state, send, pending] = useActionState(backUp, {});
  return (
    <form action={send} className={sheet.form}>
      <Outcome state={state} />
      <button type="submit" aria-disabled={pending}>
        {pending ? 'Backing up…' : 'Back up now'}
      </button>
    </form>
  );
}

/** Restores a backup of the folder, or a file from the reader's computer, after it was tried. */
export function RestoreForm({ names }: { readonly names: readonly string[] }) {
  const [state, send, pending] = useActionState(restore, {});
  return (
    <form action={send} className={sheet.form}>
      <Outcome state={state} />
      <div className={sheet.fields}>
        {names.length > 0 && (
          <div className={sheet.field}>
            <label htmlFor="backup-name">A backup of the folder</label>
            <select id="backup-name" name="name">
              {names.map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </div>
        )}
        <div className={sheet.field}>
          <label htmlFor="backup-file">Or a backup file of yours</label>
          <input id="backup-file" name="file" type="file" accept=".db" />
        </div>
      </div>
      <p>
        <label>
          <input type="checkbox" name="confirmed" value="yes" /> All studies are replaced by those of the backup.
        </label>
      </p>
      <button type="submit" aria-disabled={pending}>
        {pending ? 'Restoring…' : 'Restore'}
      </button>
    </form>
  );
}
