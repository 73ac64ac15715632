import type { Metadata } from 'next';
import Link from 'next/link';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadPassports } from '@/lib/features/reference/loaders';
import { STATUS_WORDS } from './status-words';

export const metadata: Metadata = { title: 'Tables' };

/** The published tables behind the figures, each with its passport and how its rows are known. */
export default async function TablesScreen({ params }: { readonly params: Promise<{ study: string }> }) {
  const { study } = await params;
  return (
    <main id="main" className={sheet.main}>
      <h1>Tables</h1>
      <p className={sheet.answer}>
        Published figures that the program rests on: where each comes from, how it was read, and how far it may be trusted.
      </p>
      <p className={sheet.soft}>
        Rows from memory are shown and computed with; they never serve to claim compliance with a standard.
      </p>
      <ScrollRegion label="Reference tables">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Table</th>
              <th scope="col">Issuer, edition, clause</th>
              <th scope="col">How its rows are known</th>
              <th scope="col">Use</th>
            </tr>
          </thead>
          <tbody>
            {loadPassports().map((table) => (
              <tr key={table.id}>
                <th scope="row">
                  <Link href={`/${study}/tables/${table.id}`} prefetch={false}>
                    {table.title}
                  </Link>
                </th>
                <td>
                  {table.issuer}. {table.edition}. {table.clause}
                </td>
                <td>
                  {table.statusCounts.length === 0
                    ? `${table.rowCount} rows, invented for demonstration`
                    : table.statusCounts.map(({ status, count }) => `${count} ${STATUS_WORDS[status] ?? status}`).join(', ')}
                </td>
                <td>{USES[table.use]}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </main>
  );
}

const USES = { engine: 'computing', check: 'checks of other tables', prices: 'prices until you name your own' } as const;
