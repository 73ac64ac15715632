import { csvRow } from '../fleet/csv-cell';
import type { Programme } from '../plan/programme';

/** The columns of a programme as a sheet. */
export const PROGRAMME_HEADS = [
  'year',
  'site',
  'tag',
  'option',
  'cost',
  'net_present_value',
  'override_by',
  'override_reason',
  'because',
] as const;

/** A programme as CSV: one line for each motor with its year, or why it is in none. */
export function programmeCsv(programme: Programme): string {
  const lines = [csvRow(PROGRAMME_HEADS)];
  for (const { year, items } of programme.years)
    for (const { site, tag, option, cost, net_present_value: worth, override } of items)
      lines.push(csvRow([year, site, tag, option, cost, worth, override?.by, override?.reason, undefined]));
  if (programme.method === 'plan')
    for (const { site, tag, option } of programme.at_failure)
      lines.push(csvRow(['at failure', site, tag, option, undefined, undefined, undefined, undefined, undefined]));
  for (const { site, tag, because } of programme.left_out)
    lines.push(csvRow([undefined, site, tag, undefined, undefined, undefined, undefined, undefined, because.text]));
  return lines.join('');
}
