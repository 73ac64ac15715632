import { COLUMN_GROUPS, type Column } from '@/lib/features/fleet/column';
import { COLUMNS } from '@/lib/features/fleet/columns';
import { labelWithUnit } from '@/lib/features/fleet/screen-words';
import { AS_NOTE, LEFT_OUT, placeOf } from '@/lib/features/import/recipe-form';
import type { SampledColumn } from '@/lib/features/import/sample-sheet';
import type { Recipe } from '@/lib/features/import/schema';
import styles from '../import.module.css';

const GROUPS: readonly (readonly [label: string, columns: readonly Column[]])[] = Object.entries(COLUMN_GROUPS)
  .map(([key, label]) => [label, COLUMNS.filter(({ group }) => group === key)] as const)
  .filter(([, columns]) => columns.length > 0);

interface Props {
  readonly columns: readonly SampledColumn[];
  readonly mapping: Recipe['mapping'];
}

/** Every column of the sheet with the place it takes: a column of the fleet sheet, a note, or none. */
export function ColumnTable({ columns, mapping }: Props) {
  return (
    <div className={styles.scroll}>
      <table className={`${styles.table} ${styles.stack}`}>
        <caption>
          Every column of the sheet is placed, kept as a note, or left out. Suggestions come from its name alone: please check
          them.
        </caption>
        <thead>
          <tr>
            <th scope="col">In the sheet</th>
            <th scope="col">First values</th>
            <th scope="col">Goes to</th>
          </tr>
        </thead>
        <tbody>
          {columns.map((column) => {
            const at = column.position - 1;
            const place = placeOf(column.title, mapping);
            return (
              <tr key={column.position}>
                <th scope="row" className={styles.title}>
                  {column.title === '' ? (
                    <span className={styles.soft}>column {column.position}, without a name</span>
                  ) : (
                    column.title
                  )}
                </th>
                <td data-name="First values" className={styles.cell}>
                  {column.values.length === 0 ? <span className={styles.soft}>all empty</span> : column.values.join(' · ')}
                </td>
                <td data-name="Goes to" className={styles.place}>
                  {column.title === '' ? (
                    <span className={styles.soft}>a note, if anything stands there</span>
                  ) : (
                    <>
                      <input type="hidden" name={`title-${at}`} value={column.title} />
                      <select name={`place-${at}`} defaultValue={place} aria-label={`Place of ${column.title}`}>
                        <option value={AS_NOTE}>kept as a note</option>
                        <option value={LEFT_OUT}>left out</option>
                        {GROUPS.map(([label, members]) => (
                          <optgroup key={label} label={label}>
                            {members.map((member) => (
                              <option key={member.name} value={member.name}>
                                {labelWithUnit(member)}
                              </option>
                            ))}
                          </optgroup>
                        ))}
                      </select>
                      <span className={styles.state}>{stateOf(column, place)}</span>
                    </>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function stateOf(column: SampledColumn, place: string): string {
  if (place === LEFT_OUT || place === AS_NOTE) return '';
  if (column.exact && column.suggestion === place) return '';
  return column.suggestion === place ? 'suggested' : 'chosen';
}
