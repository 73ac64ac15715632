import { writeBenchCsv } from '@/lib/features/bench/write-sheet';

/** A blank bench test sheet: the column names alone. */
export function GET(): Response {
  return new Response(`\ufeff${writeBenchCsv([])}`, {
    headers: { 'content-type': 'text/csv; charset=utf-8', 'content-disposition': 'attachment; filename="bench-test.csv"' },
  });
}
