import type { FlatResult, FleetKey, RankKey, SisterResult, UnrankedMotor } from '@/lib/engine';
import { csvRow } from '../fleet/csv-cell';
import { MOTOR_COLUMNS } from '../results/columns';

/** What the steps over the fleet need of a motor. A form that shows nothing of sisters does without their facts. */
export type TextKey = RankKey & Partial<Pick<FleetKey, 'sisters'>>;

/** Results as text that still lacks ranks and sisters: they are known only when all motors are. */
export interface TextBlock {
  readonly keys: readonly TextKey[];
  /** Each motor's text, one after another, in UTF-8. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Where each motor's text ends in `bytes`. */
  readonly ends: readonly number[];
}

/** A code unit takes up to so many bytes in UTF-8. */
const BYTES_PER_UNIT = 3;

/** Room for a block's text, used again for the next one. */
let room = Buffer.allocUnsafeSlow(1 << 20);

/** A motor's JSON without site, tag, rank and sisters: an object's inside with its closing brace. */
export function unrankedJson(result: UnrankedMotor): string {
  const { site: _site, tag: _tag, ranking: _ranking, likeness: _likeness, ...rest } = result;
  return JSON.stringify(rest).slice(1);
}

/** A motor's line of the flat results behind the rank, which is its first cell. */
export function unrankedLine(result: FlatResult): string {
  return csvRow(MOTOR_COLUMNS.map((column) => column.value(result)));
}

/** Writes results end to end, each in such a way that its rank can be put before it without parsing. */
export function textBlock<Result>(
  results: Iterable<Result>,
  { textOf, keyOf }: { readonly textOf: (result: Result) => string; readonly keyOf: (result: Result) => TextKey },
): TextBlock {
  const keys: TextKey[] = [];
  const ends: number[] = [];
  let end = 0;
  for (const result of results) {
    const text = textOf(result);
    const needed = end + BYTES_PER_UNIT * text.length;
    if (needed > room.length) {
      const wider = Buffer.allocUnsafeSlow(2 * needed);
      room.copy(wider, 0, 0, end);
      room = wider;
    }
    end += room.write(text, end, 'utf8');
    keys.push(keyOf(result));
    ends.push(end);
  }
  return { keys, ends, bytes: new Uint8Array(room.subarray(0, end)) };
}

/** A motor's JSON up to what {@link unrankedJson} writes of it. */
export function rankedHead(
  { site, tag }: Pick<TextKey, 'site' | 'tag'>,
  rank: number,
  sisters: readonly SisterResult[] = [],
): string {
  const among = sisters.length === 0 ? '' : `"sisters":${JSON.stringify(sisters)},`;
  return `{"site":${JSON.stringify(site)},"tag":${JSON.stringify(tag)},"rank":${rank},${among}`;
}
