import type { ReactNode } from 'react';
import styles from './chart-frame.module.css';
import { ScrollRegion } from './scroll-region';

interface Props {
  /** The message of the chart in one sentence, above it. */
  readonly sentence: ReactNode;
  readonly children: ReactNode;
  /** The same data as a table, one key away. */
  readonly table: { readonly head: readonly string[]; readonly rows: readonly (readonly ReactNode[])[] };
}

/** A chart with its message above and its data as a table behind a disclosure. */
export function ChartFrame({ sentence, children, table }: Props) {
  return (
    <figure className={styles.frame}>
      <figcaption className={styles.sentence}>{sentence}</figcaption>
      {children}
      <details className={styles.data}>
        <summary>The same as a table</summary>
        <ScrollRegion label="Data of the chart">
          <table>
            <thead>
              <tr>
                {table.head.map((text) => (
                  <th key={text} scope="col">
                    {text}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row, index) => (
                <tr key={String(index)}>
                  {row.map((cell, column) =>
                    column === 0 ? (
                      <th key={String(column)} scope="row">
                        {cell}
                      </th>
                    ) : (
                      <td key={String(column)}>{cell}</td>
                    ),
                  )}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      </details>
    </figure>
  );
}
