import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { Enclosure } from '../motor';
import { isSameRating } from '../same-rating';
import type { Settings } from '../settings';
import type { ReferenceTables } from '../tables';

/** How frames are counted: by NEMA's T frames, or by the height of the shaft in millimetres. */
type FrameSeries = 'T' | 'iec';

/** What decides which frame a rating comes in. */
export interface FrameSize {
  readonly poles: number;
  readonly enclosure: Enclosure;
  readonly series: FrameSeries;
}

/** Diameter and length of a shaft end, mm. */
export interface ShaftEnd {
  readonly diameterMm: number;
  readonly lengthMm: number;
}

/** A frame as the tables write it: `IEC 132 m` is 132M. */
export function plainFrame(frame: string): string {
  return frame
    .toUpperCase()
    .replaceAll(/\s+/g, '')
    .replace(/^IEC-?(?=\d)/, '');
}

/** How the frames of a motor are counted: as its own is written, and without one as the study's standards have it. */
export function frameSeries(frame: string | undefined, standards: Settings['standards']): FrameSeries {
  const own = frame === undefined ? '' : plainFrame(frame);
  if (/^\d{3}[TU]/.test(own)) return 'T';
  return METRIC.test(own) || standards === 'iec' ? 'iec' : 'T';
}

const METRIC = /^(\d{2,3})[SML]/;

interface Assigned {
  readonly t: ReadonlyMap<string, string>;
  /** By number of poles, in rising order of the rating. */
  readonly iec: ReadonlyMap<number, readonly { readonly ratedPowerKw: number; readonly frame: string }[]>;
  readonly ends: ReadonlyMap<string, ShaftEnd>;
}

const assigned = new WeakMap<ReferenceTables, Assigned>();

function assignedIn(tables: ReferenceTables): Assigned {
  const known = assigned.get(tables);
  if (known) return known;
  const t = new Map<string, string>();
  for (const row of tables.frames.rows)
    if (row.series === 'T') t.set(`${row.ratedPowerHp}|${row.poles}|${row.enclosure}`, row.frame.toUpperCase());
  const iec = new Map<number, { ratedPowerKw: number; frame: string }[]>();
  const ends = new Map<string, ShaftEnd>();
  for (const { poles, ratedPowerKw, frame, shaftDiameterMm, shaftLengthMm } of tables.iecFrames.rows) {
    iec.set(poles, [...(iec.get(poles) ?? []), { ratedPowerKw, frame }]);
    ends.set(endKey(frame, poles), { diameterMm: shaftDiameterMm, lengthMm: shaftLengthMm });
  }
  const made = { t, iec, ends };
  assigned.set(tables, made);
  return made;
}

/** Two-pole motors of large frames have thinner shaft ends than the others, which are alike. */
function endKey(frame: string, poles: number): string {
  return `${METRIC.exec(frame)?.[1]}|${poles === 2}`;
}

/**
 * Frame that a new motor comes in, by rating, poles and, for T frames, enclosure; `undefined` where the table has none.
 * Units: kW. Source: tables `frames` (NEMA MG 13) and `iecFrames` (EN 50347), both from memory: to be shown, never a claim of compliance.
 */
export function standardFrame(tables: ReferenceTables, ratedPowerKw: number, size: FrameSize): string | undefined {
  const { t, iec } = assignedIn(tables);
  if (size.series === 'iec') return iec.get(size.poles)?.find((row) => isSameRating(row.ratedPowerKw, ratedPowerKw))?.frame;
  const hp = ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  return t.get(`${Number(hp.toFixed(1))}|${size.poles}|${size.enclosure}`);
}

/** Shaft end of a metric frame; `undefined` for others and where the table has none of its height. As {@link standardFrame} from memory. */
export function shaftEnd(tables: ReferenceTables, frame: string, poles: number): ShaftEnd | undefined {
  return METRIC.test(frame) ? assignedIn(tables).ends.get(endKey(frame, poles)) : undefined;
}

/** Quarter of an inch in mm. */
const QUARTER_INCH = 6.35;

/**
 * Height of the shaft above the feet by the frame's number, in mm; `undefined` where the name says none.
 * Three digits with T or U: the first two are quarters of an inch (NEMA MG 1 4.2, from memory). Digits with S, M or L: millimetres (IEC 60072-1).
 */
export function shaftHeightMm(frame: string): number | undefined {
  const quarters = /^(\d{2})\d[TU]/.exec(frame)?.[1];
  if (quarters !== undefined) return Number(quarters) * QUARTER_INCH;
  const millimetres = METRIC.exec(frame)?.[1];
  return millimetres === undefined ? undefined : Number(millimetres);
}
