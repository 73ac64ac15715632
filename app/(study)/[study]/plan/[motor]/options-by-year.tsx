import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import styles from '../plan.module.css';

/** One option with what it costs and is worth in each year. */
export interface OptionRow {
  readonly id: string;
  readonly words: string;
  readonly cells: readonly { readonly year: number; readonly value: string; readonly cost: string }[];
}

interface Props {
  readonly rows: readonly OptionRow[];
  readonly years: readonly number[];
  readonly chosen: string;
}

/** Each option in each year, with its present value; either of them may be left open. */
export function OptionsByYear({ rows, years, chosen }: Props) {
  return (
    <ScrollRegion label="Options by year">
      <table className={`${sheet.table} ${styles.grid}`}>
        <thead>
          <tr>
            <th scope="col">Option</th>
            {years.map((year) => (
              <NumberHead key={year} name={year} />
            ))}
            <NumberHead name="Any year" />
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">any of its options</th>
            {years.map((year) => (
              <td key={year} className={sheet.number}>
                <label>
                  <span className="unseen">any of its options in {year}</span>
                  <input type="radio" name="choice" value={`any ${year}`} defaultChecked={chosen === `any ${year}`} />
                </label>
              </td>
            ))}
            <td />
          </tr>
          {rows.map((row) => (
            <OptionLine key={row.id} row={row} chosen={chosen} />
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function OptionLine({ row, chosen }: { readonly row: OptionRow; readonly chosen: string }) {
  const { id, words, cells } = row;
  return (
    <tr>
      <th scope="row">
        {words} <span className={sheet.unit}>for {cells[0]?.cost}</span>
      </th>
      {cells.map(({ year, value, cost }) => (
        <td key={year} className={sheet.number}>
          <label>
            <span className="unseen">
              {words} in {year} for {cost}, worth{' '}
            </span>
            {value}
            <input type="radio" name="choice" value={`${id} ${year}`} defaultChecked={chosen === `${id} ${year}`} />
          </label>
        </td>
      ))}
      <td className={sheet.number}>
        <label>
          <span className="unseen">
            {words} for {cells[0]?.cost} in the year that the solver finds best
          </span>
          <input type="radio" name="choice" value={`${id} any`} defaultChecked={chosen === `${id} any`} />
        </label>
      </td>
    </tr>
  );
}
