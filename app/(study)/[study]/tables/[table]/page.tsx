import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadTableRows } from '@/lib/features/reference/loaders';
import { STATUS_WORDS } from '../status-words';

interface Props {
  readonly params: Promise<{ study: string; table: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: loadTableRows((await params).table)?.entry.title ?? 'No such table' };
}

/** One reference table: its passport, then its rows. */
export default async function TableScreen({ params }: Props) {
  const { study, table: id } = await params;
  const table = loadTableRows(id);
  if (!table) notFound();
  const { entry } = table;
  return (
    <main id="main" className={sheet.main}>
      <p>
        <Link href={`/${study}/tables`}>Tables</Link>
      </p>
      <h1>{entry.title}</h1>
      <p className={sheet.soft}>
        {entry.issuer}. {entry.edition}. {entry.clause}
      </p>
      <p>How it was read: {entry.read}</p>
      <p>How it was verified: {entry.verified}</p>
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
      <ScrollRegion label={entry.title}>
        <table className={sheet.table}>
          <thead>
            <tr>
              {table.columns.map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row) => (
              <tr key={row.join('|')}>
                {row.map((cell, index) => (
                  <td key={table.columns[index]}>{table.columns[index] === 'status' ? (STATUS_WORDS[cell] ?? cell) : cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </main>
  );
}
