import type { Metadata } from 'next';
import Link from 'next/link';
import { Head } from '@/app/_ui/head';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadPassports } from '@/lib/features/reference/loaders';
import { formatCount } from '@/lib/platform/format';
import { FindForm, findOf } from './find-form';
import { STATUS_WORDS } from './status-words';

export const metadata: Metadata = { title: 'Tables' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<{ find?: string | string[] }>;
}

/** The published tables behind the figures, each with its passport and how its rows are known. */
export default async function TablesScreen({ params, searchParams }: Props) {
  const { study } = await params;
  const find = findOf((await searchParams).find);
  const tables = loadPassports(find);
  const words = find === '' ? '' : `?find=${encodeURIComponent(find)}`;
  return (
    <main id="main" className={sheet.main}>
      <h1>Tables</h1>
      <p className={sheet.answer}>
        Published figures that the program rests on: where each comes from, how it was read, and how far it may be trusted.
      </p>
      <p className={sheet.soft}>
        Rows from memory are shown and computed with; they never serve to claim compliance with a standard.
      </p>
      <FindForm
        find={find}
        here={`/${study}/tables`}
        label="Find a table by its title, standard or rows"
        found={
          find === ''
            ? `${counted(tables.length)}.`
            : `${counted(tables.length)} ${tables.length === 1 ? 'holds' : 'hold'} “${find}”.`
        }
      />
      {tables.length > 0 && (
        <ScrollRegion label="Reference tables">
          <table {...TABLE} className={`${sheet.table} ${sheet.lines}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Table</Head>
                <Head>Issuer, edition, clause</Head>
                <Head>How its rows are known</Head>
                <Head>Use</Head>
              </tr>
            </thead>
            <tbody {...GROUP}>
              {tables.map((table) => (
                <tr key={table.id} {...ROW}>
                  <th {...ROW_HEAD} scope="row">
                    <Link href={`/${study}/tables/${table.id}${words}`} prefetch={false}>
                      {table.title}
                    </Link>
                  </th>
                  <td {...CELL}>
                    {table.issuer}. {table.edition}. {table.clause}
                  </td>
                  <td {...CELL} data-name="Rows">
                    {table.statusCounts.length === 0
                      ? `${formatCount(table.rowCount)} rows, invented for demonstration`
                      : table.statusCounts
                          .map(({ status, count }) => `${formatCount(count)} ${STATUS_WORDS[status] ?? status}`)
                          .join(', ')}
                  </td>
                  <td {...CELL} data-name="Use">
                    {USES[table.use]}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
    </main>
  );
}

const counted = (count: number): string => (count === 1 ? 'One table' : `${formatCount(count)} tables`);

const USES = {
  engine: 'computing',
  check: 'reading, and checks of other tables',
  prices: 'prices until you name your own',
} as const;
