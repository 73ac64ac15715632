import { evaluateMotor, type LineTable, lineTable } from '@/lib/engine';
import { lineSeen, stepHertz } from '@/lib/features/condition/line-words';
import { csvRow } from '@/lib/features/fleet/write-csv';
import { COVERAGE_FACTOR, formatFigure, formatNumber } from '@/lib/platform/format';
import { loadTables } from '@/lib/reference/load';
import type { Call } from './arguments';
import { EXIT } from './exit';
import { openOutput } from './output';
import { motorOf, readCallSettings, readFleetSheet } from './study-input';

/** Lists the spectral lines to expect of one motor, and which of them cannot be told apart. */
export async function lines(call: Call): Promise<number> {
  const reference = loadTables();
  const { settings, remarks } = readCallSettings(call);
  const motor = motorOf(call, await readFleetSheet(call, { asOf: settings.asOf }));
  for (const remark of remarks) console.error(remark);
  const table = lineTable(evaluateMotor(motor, { settings, tables: reference.tables, prices: reference.prices }));
  const output = openOutput(call.out);
  output.write(
    call.format === 'json'
      ? `${JSON.stringify({ schema: 1, ...table }, undefined, 1)}\n`
      : call.format === 'csv'
        ? asCsv(table)
        : asText(table),
  );
  output.finish();
  return EXIT.done;
}

/** One row a line, with the lines of the same spectrum that it coincides with. */
function asCsv(table: LineTable): string {
  const header = [
    'spectrum',
    'line',
    'frequency_hz',
    'u_hz',
    'cause',
    'relation',
    'meaning',
    'coincides_with',
    'source',
    'status',
  ];
  const rows = table.lines.map((line) => [
    line.spectrum,
    line.id,
    line.frequency.value,
    line.frequency.u,
    line.cause,
    line.relation,
    line.meaning,
    partners(table, line.spectrum, line.id).join(';'),
    line.source,
    line.status,
  ]);
  return [header, ...rows].map((row) => csvRow(row)).join('');
}

function partners(table: LineTable, spectrum: string, id: string): string[] {
  return table.coincide
    .filter((found) => found.spectrum === spectrum && found.lines.includes(id))
    .map(({ lines: [first, second] }) => (first === id ? second : first));
}

function asText(table: LineTable): string {
  const blocks = [
    [
      `${table.tag}${table.site === '' ? '' : `, ${table.site}`}${table.row === undefined ? '' : `, row ${table.row}`}`,
      ...figuresOf(table),
    ],
    ...(['current', 'vibration'] as const).map((spectrum) => spectrumBlock(table, spectrum)),
    coincidenceBlock(table),
    observedBlock(table),
    barBlock(table),
    titled(
      'Not listed, for want of a column',
      table.missing.map(({ column, adds }) => `${column}: ${adds}`),
    ),
    titled(
      'To bear in mind',
      table.findings.map((found) => `${found.code}: ${found.text} ${found.next}`),
    ),
  ];
  return `${blocks
    .filter((block) => block.length > 0)
    .map((block) => block.join('\n'))
    .join('\n\n')}\n`;
}

function titled(title: string, rows: readonly string[]): string[] {
  return rows.length === 0 ? [] : [title, ...rows.map((row) => `  ${row}`)];
}

function figuresOf(table: LineTable): string[] {
  const { resolution, sidebands_need: need } = table;
  const named = [
    ['shaft speed', table.speed],
    ['supply frequency', table.supply_frequency],
    ['slip', table.slip],
    ['pole-pass frequency', table.pole_pass],
    ['load fraction', table.load_fraction],
  ] as const;
  return [
    ...named.flatMap(([name, value]) => (value ? [`  ${name}: ${formatFigure(value).text}`] : [])),
    ...(resolution ? [`  resolution: ${stepHertz(resolution.value_hz)} (${resolution.known})`] : []),
    ...(need
      ? [`  the pole-pass sidebands need: ${stepHertz(need.resolution_hz)}, a record of ${formatNumber(need.record_s, 1)} s`]
      : []),
  ];
}

function spectrumBlock(table: LineTable, spectrum: 'current' | 'vibration'): string[] {
  const rows = table.lines.filter((line) => line.spectrum === spectrum);
  const width = Math.max(0, ...rows.map((line) => line.id.length));
  return titled(
    `Lines in the ${spectrum}`,
    rows.map((line) => {
      const place = `${line.frequency.value.toFixed(3).padStart(10)} ± ${(COVERAGE_FACTOR * line.frequency.u).toFixed(3)} Hz`;
      const shared = partners(table, spectrum, line.id);
      return `${line.id.padEnd(width)} ${place.padEnd(24)} ${line.relation}: ${line.meaning}${shared.length > 0 ? ` [not to be told from ${shared.join(', ')}]` : ''}`;
    }),
  );
}

function parted(found: { always: boolean; parted_at?: { speed_rpm: number; load_fraction: number } }): string {
  if (found.always) return 'one frequency at every speed';
  return found.parted_at
    ? `parted at ${found.parted_at.speed_rpm.toFixed(1)} r/min, about ${(100 * found.parted_at.load_fraction).toFixed(0)} % load`
    : 'no speed of this motor parts them at this resolution';
}

function coincidenceBlock(table: LineTable): string[] {
  return titled(
    'Lines of different causes that cannot be told apart',
    table.coincide.map((found) => {
      const finer =
        found.resolution_hz === undefined ? '' : `; a resolution of ${stepHertz(found.resolution_hz)} would part them here`;
      return `${found.spectrum}: ${found.lines.join(' and ')}: ${stepHertz(found.apart_hz)} apart, ${stepHertz(found.needed_hz)} needed; ${parted(found)}${finer}`;
    }),
  );
}

function observedBlock(table: LineTable): string[] {
  return titled(
    'Lines seen',
    table.observed.map(
      ({ frequency_hz, may_be }) =>
        `${lineSeen(frequency_hz, table.resolution)}: ${may_be.length === 0 ? 'none of these' : may_be.join(' or ')}`,
    ),
  );
}

function barBlock(table: LineTable): string[] {
  return titled(
    'Counts of rotor bars that would put a slot line there',
    table.bar_counts.flatMap(({ frequency_hz, fits }) =>
      fits.map(
        (fit, index) =>
          `${lineSeen(frequency_hz, table.resolution)}: ${fit.bars} bars${fit.stated ? ' (as stated)' : ''}, ${fit.relation}, ${stepHertz(fit.off_hz)} off${index === 0 ? '' : `; against the first: ${parted(fit)}`}`,
      ),
    ),
  );
}
