import { type FleetOutcome, type ParsedFleet, type ParseOptions, parseFleet } from '@/lib/features/fleet/parse';

/** The least that a row must say. */
export const BASE = { tag: 'M-1', site: 'North', rated_power_kw: '30', rated_voltage_v: '460' } as const;

type Row = Readonly<Record<string, string>>;

/** CSV text of rows; a column stands in the header if any row has it. */
export function csv(rows: readonly Row[], delimiter = ','): string {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const quoted = (text: string): string => (/[",;\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return [names, ...rows.map((row) => names.map((name) => row[name] ?? ''))]
    .map((row) => `${row.map(quoted).join(delimiter)}\n`)
    .join('');
}

export function parseText(text: string, options?: ParseOptions): Promise<FleetOutcome> {
  return parseFleet({ name: 'sheet.csv', text }, options);
}

/** Parses rows and expects the file itself to be readable. */
export async function parseRows(rows: readonly Row[], options?: ParseOptions): Promise<ParsedFleet> {
  return mustParse(await parseText(csv(rows), options));
}

export function mustParse(outcome: FleetOutcome): ParsedFleet {
  if (!outcome.ok) throw new Error(outcome.problem.text);
  return outcome;
}

export async function problemOf(outcome: Promise<FleetOutcome>): Promise<string> {
  const result = await outcome;
  return result.ok ? `read ${result.rows} rows` : result.problem.code;
}

/** Each row with content stands in exactly one place. */
export function placedRows({ motors, rejected, ignoredRepeats }: ParsedFleet): number {
  return motors.reduce((sum, motor) => sum + motor.rows.length, 0) + rejected.length + ignoredRepeats;
}
