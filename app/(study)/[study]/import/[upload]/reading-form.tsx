import type { ReactNode } from 'react';
import { readAgain } from '@/lib/features/import/actions';
import type { Preview } from '@/lib/features/import/loaders';
import type { SheetSample } from '@/lib/features/import/sample-sheet';
import { ENCODINGS } from '@/lib/features/import/schema';
import { counted, formatCount } from '@/lib/platform/format';
import styles from '../import.module.css';
import { ColumnTable } from './column-table';

const DELIMITERS = [
  [',', 'comma'],
  [';', 'semicolon'],
  ['\t', 'tab'],
] as const;

const SIGN_WORDS = { '.': 'a point', ',': 'a comma' } as const;

/** How a doubtful number would be understood under a sign. */
function understood(text: string, sign: '.' | ','): string {
  const grouping = sign === '.' ? ',' : '.';
  if (text.includes(grouping)) return 'refused';
  return text.replace(',', '.');
}

/** What the numbers of the sheet show, in words. */
function evidenceWords({ points, commas, samples }: SheetSample['decimal']): string {
  if (samples.length === 0) return 'The sheet has no decimals.';
  const from = samples.map(({ column, row }) => `${column}, row ${row}`).join('; ');
  if (points > 0 && commas > 0) {
    return `${counted(commas, 'number')} with a comma, ${formatCount(points)} with a point. Shown: ${from}. Those with the other sign are rejected.`;
  }
  return `Shown: ${from}.`;
}

/** How the sheet is read: signs, encoding, words for empty, and where each column goes. */
export function ReadingForm({ preview, children }: { readonly preview: Preview; readonly children?: ReactNode }) {
  const { study, about, recipe, sample } = preview;
  const isText = sample === undefined || sample.kind === 'csv';
  const undecided = recipe.decimal === undefined;
  return (
    // A new recipe makes a new form: what was chosen before must not linger in its fields.
    <form action={readAgain} key={JSON.stringify(recipe)}>
      <input type="hidden" name="study" value={study.id} />
      <input type="hidden" name="upload" value={about.id} />
      {sample !== undefined && (isText || undecided || sample.decimal.samples.length > 0) && (
        <fieldset className={`${styles.field} ${undecided ? styles.ask : ''}`} aria-describedby="decimal-note">
          <legend>Decimals are marked by</legend>
          <div className={styles.choices}>
            {(['.', ','] as const).map((sign) => (
              <label key={sign}>
                <input type="radio" name="decimal" value={sign} defaultChecked={recipe.decimal === sign} required />
                <span>
                  {SIGN_WORDS[sign]}
                  {sample.decimal.samples.length > 0 && (
                    <span className={styles.state}>
                      {sample.decimal.samples.map(({ text }) => `${text} is ${understood(text, sign)}`).join(' · ')}
                    </span>
                  )}
                </span>
              </label>
            ))}
          </div>
          <p id="decimal-note" className={styles.note}>
            {evidenceWords(sample.decimal)}
          </p>
        </fieldset>
      )}
      {isText && (
        <div className={styles.row}>
          <div className={styles.field}>
            <label htmlFor="delimiter">Cells are divided by</label>
            <select id="delimiter" name="delimiter" defaultValue={recipe.delimiter}>
              {DELIMITERS.map(([value, word]) => (
                <option key={word} value={value}>
                  {word}
                </option>
              ))}
            </select>
          </div>
          <div className={styles.field}>
            <label htmlFor="encoding">Letters are encoded in</label>
            <select id="encoding" name="encoding" defaultValue={recipe.encoding}>
              {ENCODINGS.map((name) => (
                <option key={name}>{name}</option>
              ))}
            </select>
          </div>
        </div>
      )}
      <div className={styles.field}>
        <label htmlFor="empty">Words that mean an empty cell</label>
        <input id="empty" name="empty" type="text" defaultValue={recipe.emptyWords.join(', ')} aria-describedby="empty-note" />
        <p id="empty-note" className={styles.note}>
          Divided by commas, such as -, n/a
        </p>
      </div>
      {children}
      {sample !== undefined && preview.history === undefined && <ColumnTable columns={sample.columns} mapping={recipe.mapping} />}
      <div className={styles.actions}>
        <button type="submit" {...(undecided ? { 'data-primary': true } : {})}>
          Read the sheet again
        </button>
      </div>
    </form>
  );
}
