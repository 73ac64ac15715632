import { type FleetKey, fleetKeyOf, type SisterResult, type UnrankedMotor } from '@/lib/engine';

/** Results as text that still lacks ranks and sisters: they are known only when all motors are. */
export interface TextBlock {
  /** What the steps over the fleet need of each motor. */
  readonly keys: readonly FleetKey[];
  /** Each motor's JSON without site, tag, rank and sisters, one after another, in UTF-8: an object's inside with its closing brace. */
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Where each motor's text ends in `bytes`. */
  readonly ends: readonly number[];
}

/** A code unit takes up to so many bytes in UTF-8. */
const BYTES_PER_UNIT = 3;

/** Room for a block's text, used again for the next one. */
let room = Buffer.allocUnsafeSlow(1 << 20);

/** Writes results end to end, each in such a way that its rank and sisters can be added without parsing. */
export function textBlock(results: Iterable<UnrankedMotor>): TextBlock {
  const keys: FleetKey[] = [];
  const ends: number[] = [];
  let end = 0;
  for (const result of results) {
    const { site: _site, tag: _tag, ranking: _ranking, likeness: _likeness, ...rest } = result;
    const text = JSON.stringify(rest).slice(1);
    const needed = end + BYTES_PER_UNIT * text.length;
    if (needed > room.length) {
      const wider = Buffer.allocUnsafeSlow(2 * needed);
      room.copy(wider, 0, 0, end);
      room = wider;
    }
    end += room.write(text, end, 'utf8');
    keys.push(fleetKeyOf(result));
    ends.push(end);
  }
  return { keys, ends, bytes: new Uint8Array(room.subarray(0, end)) };
}

/** A motor's JSON up to the text of its block. */
export function rankedHead(
  { site, tag }: Pick<FleetKey, 'site' | 'tag'>,
  rank: number,
  sisters: readonly SisterResult[] = [],
): string {
  const among = sisters.length === 0 ? '' : `"sisters":${JSON.stringify(sisters)},`;
  return `{"site":${JSON.stringify(site)},"tag":${JSON.stringify(tag)},"rank":${rank},${among}`;
}
