import { BENCH_SECTIONS, type BenchTest } from '@/lib/engine';
import { csvRow } from '../fleet/csv-cell';
import { BENCH_COLUMNS } from './columns';

/** Bench tests as a sheet in our columns; without tests it is the blank sheet. Reading it gives the points back in the order of the sections. */
export function writeBenchCsv(tests: readonly BenchTest[]): string {
  const rows = tests.flatMap(({ tag, test, sections }) =>
    BENCH_SECTIONS.flatMap((section) =>
      sections[section].map((point) =>
        csvRow(
          BENCH_COLUMNS.map(({ name, field }) => {
            if (field) return point[field];
            return name === 'tag' ? tag : name === 'test' ? test : section;
          }),
        ),
      ),
    ),
  );
  return [csvRow(BENCH_COLUMNS.map(({ name }) => name)), ...rows].join('');
}
