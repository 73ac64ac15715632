import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadTable, type TableColumn, type TableEntry } from '@/lib/features/reference/loaders';
import { formatCount } from '@/lib/platform/format';
import { FindForm, findOf } from '../find-form';
import { rowStatus } from '../status-words';

interface Props {
  readonly params: Promise<{ study: string; table: string }>;
  readonly searchParams: Promise<{ find?: string | string[] }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: loadTable((await params).table)?.entry.title ?? 'No such table' };
}

/** One reference table as it is written: its passport, then its rows, gaps and notes included. */
export default async function TableScreen({ params, searchParams }: Props) {
  const { study, table: id } = await params;
  const find = findOf((await searchParams).find);
  const table = loadTable(id, find);
  if (!table) notFound();
  const { entry, columns, rows } = table;
  const total = formatCount(entry.rowCount);
  return (
    <main id="main" className={sheet.main}>
      <p>
        <Link href={`/${study}/tables`}>Tables</Link>
      </p>
      <h1>{entry.title}</h1>
      {entry.use === 'prices' && (
        <p className={sheet.caution}>Invented for demonstration: no price here is anybody’s offer. Name your own in Setup.</p>
      )}
      <PassportFacts entry={entry} />
      <FindForm
        find={find}
        here={`/${study}/tables/${id}`}
        label="Find rows by words or exact numbers"
        found={find === '' ? `${total} rows.` : `${formatCount(rows.length)} of ${total} rows hold “${find}”.`}
      />
      {rows.length > 0 && (
        <ScrollRegion label={entry.title}>
          <table className={sheet.table}>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column.id} scope="col" title={column.meaning} className={column.numeric ? sheet.number : undefined}>
                    {column.name}
                    {column.unit !== '' && <span className={sheet.unit}>{column.unit}</span>}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={row.join('|')}>
                  {columns.map((column, at) => (
                    <td key={column.id} className={column.numeric ? sheet.number : undefined}>
                      {column.id === 'status' ? rowStatus(row[at] ?? '') : row[at]}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      <Meanings columns={columns} />
    </main>
  );
}

/** Where the table comes from and how it was read. */
function PassportFacts({ entry }: { readonly entry: TableEntry }) {
  const facts = [
    ['Issuer', entry.issuer],
    ['Edition', entry.edition],
    ['Clause', entry.clause],
    ['How it was read', entry.read],
    ['How it was verified', entry.verified],
    ['Reuse', entry.reuse],
  ] as const;
  return (
    <>
      <dl className={sheet.passport}>
        {facts.map(([name, text]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      {entry.misprints.length > 0 && (
        <>
          <h2>Known misprints in the texts read</h2>
          <ul>
            {entry.misprints.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** What each column means, for those who cannot point at its head. */
function Meanings({ columns }: { readonly columns: readonly TableColumn[] }) {
  return (
    <details className={sheet.section}>
      <summary>What the columns mean</summary>
      <dl className={sheet.passport}>
        {columns.map((column) => (
          <div key={column.id}>
            <dt>{[column.name, column.unit].filter(Boolean).join(', ')}</dt>
            <dd>{column.meaning}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
