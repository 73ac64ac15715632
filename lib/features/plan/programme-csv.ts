import { csvRow } from '../fleet/csv-cell';

/** The columns of a programme as a sheet. */
const HEADS = [
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

interface Place {
  readonly site: string;
  readonly tag: string;
}

/** What the sheet needs of a plan or of a programme that follows the ranking. */
interface Listed {
  readonly years: readonly {
    readonly year: number;
    readonly items: readonly (Place & {
      readonly option: string;
      readonly cost: number;
      readonly net_present_value?: number | undefined;
      readonly because?: readonly { readonly text: string }[] | undefined;
      readonly override?: { readonly by: string; readonly reason: string } | undefined;
    })[];
  }[];
  readonly at_failure?: readonly (Place & { readonly option: string })[] | undefined;
  readonly left_out: readonly (Place & { readonly because: { readonly text: string } })[];
}

/** A programme as CSV, line by line: each motor with its year, and why where it must be done, or why it is in none. Money stays a number, also below zero. */
export function* programmeCsv({ years, at_failure = [], left_out }: Listed): Generator<string> {
  yield csvRow(HEADS);
  for (const { year, items } of years)
    for (const { site, tag, option, cost, net_present_value: worth, override, because } of items)
      yield csvRow([
        year,
        site,
        tag,
        option,
        cost,
        worth,
        override?.by,
        override?.reason,
        because?.map(({ text }) => text).join(' '),
      ]);
  for (const { site, tag, option } of at_failure)
    yield csvRow(['at failure', site, tag, option, undefined, undefined, undefined, undefined, undefined]);
  for (const { site, tag, because } of left_out)
    yield csvRow([undefined, site, tag, undefined, undefined, undefined, undefined, undefined, because.text]);
}
