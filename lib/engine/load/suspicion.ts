import { catalogue, type FindingKind, kind } from '../quantity/catalogue';
import { LIVE } from '../quantity/cautions';
import { fixed, rounded } from '../quantity/words';
import type { MistakeCode, PowerMistake } from './mistakes';

interface Suspected {
  readonly [name: string]: number | string;
  readonly row: number;
  readonly odds: number;
}

const odds = (e: { readonly odds: number }): string => (e.odds > 1000 ? 'more than 1,000' : rounded(e.odds, 2));

/** One mistake in words that stand beside those of another as well. */
interface MistakeWords extends FindingKind<Suspected> {
  readonly cause: string;
  readonly next: string;
}

const ONE_MISTAKE: Readonly<Record<MistakeCode, MistakeWords>> = {
  'power-sensor-reversed': {
    severity: 'warning',
    text: (e) =>
      `The input power in row ${e.row} is what a meter shows with one current sensor the wrong way round (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'One current sensor of the power meter sits the wrong way round or on the wrong phase.',
    next: `Turn the sensor, check that each phase shows positive power, and read again at the same load. Never open a current-transformer secondary. ${LIVE}`,
  },
  'power-sensor-missing': {
    severity: 'warning',
    text: (e) =>
      `The input power in row ${e.row} is what a meter shows with one of its current sensors missing (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'One current sensor was not connected, not closed, or on a dead range.',
    next: `Check that every phase shows a current and read again at the same load. Never open a current-transformer secondary. ${LIVE}`,
  },
  'power-in-horsepower': {
    severity: 'warning',
    text: (e) =>
      `The input power in row ${e.row} fits if it is in horsepower (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'The meter was set to horsepower.',
    next: 'Write the input power in kW: multiply horsepower by 0.7457.',
  },
  'power-in-watts': {
    severity: 'warning',
    text: (e) =>
      `The input power in row ${e.row} fits if it is in watts (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'The meter showed watts.',
    next: 'Write the input power in kW: divide watts by 1,000.',
  },
  'voltage-not-the-motors': {
    severity: 'warning',
    text: (e) =>
      `The voltage in row ${e.row} fits if it is off by √3 or 2 (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'Voltage to neutral was read for line-to-line voltage, or the plate voltage is that of the other connection.',
    next: `Read between two lines, all three pairs, and check the connection in use. ${LIVE}`,
  },
  'current-of-a-winding': {
    severity: 'warning',
    text: (e) =>
      `The current in row ${e.row} fits if it is off by √3 (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'The current inside a delta was read for the line current, or the other way round.',
    next: `Read the current of each supply line, outside of any delta. ${LIVE}`,
  },
  'current-of-half-the-conductors': {
    severity: 'warning',
    text: (e) =>
      `The current in row ${e.row} fits if it is half of the line current (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'One of two parallel conductors of each phase was clamped.',
    next: `Clamp all conductors of a phase together. ${LIVE}`,
  },
  'stamped-current-not-the-motors': {
    severity: 'warning',
    text: (e) =>
      `The stamped current does not fit the readings of row ${e.row}; without it all else agrees (${odds(e)} to 1 against the next best cause). The interval was widened.`,
    cause: 'The current of another voltage or connection was read from the plate.',
    next: 'Read from the plate the current that belongs to the connection in use.',
  },
  'speed-digits-swapped': {
    severity: 'warning',
    text: (e) =>
      `The speed in row ${e.row} fits if two neighbouring digits are swapped (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'Two digits were swapped in writing the speed down.',
    next: 'Look the speed up in the field notes, or read it again to 1 r/min. Guards stay on; a strobe makes a turning shaft look still.',
  },
  'speed-of-another-shaft': {
    severity: 'warning',
    text: (e) =>
      `The speed in row ${e.row} does not fit the motor’s shaft; without it all else agrees (${odds(e)} to 1 against the next best cause). It was not used.`,
    cause: 'The shaft of the driven machine was read, the strobe locked on a multiple, or digits were mistaken.',
    next: 'Read the motor’s own shaft with a tachometer to 1 r/min. Guards stay on; a strobe makes a turning shaft look still.',
  },
  'poles-not-the-motors': {
    severity: 'warning',
    text: (e) =>
      `The speed in row ${e.row} belongs to another number of poles than the plate says (${odds(e)} to 1 against the next best cause).`,
    cause: 'Poles or speed of the plate were misread, or the plate belongs to another motor.',
    next: 'Read speed and poles from the plate again; check that the plate is this motor’s.',
  },
  'read-uncoupled': {
    severity: 'warning',
    text: (e) =>
      `The readings in row ${e.row} are those of a motor running free (${odds(e)} to 1 against the next best cause). They were not used for the load.`,
    cause: 'The motor was uncoupled, its belt off, or its machine idling when it was read.',
    next: `Say so in reading_condition, or read again at the usual load. ${LIVE}`,
  },
  'plate-of-another-motor': {
    severity: 'warning',
    text: (e) =>
      `The stamps do not fit the readings of row ${e.row}; without them the readings agree (${odds(e)} to 1 against the next best cause). The interval was widened.`,
    cause: 'The plate belongs to another motor, or the motor was rewound for other data.',
    next: 'Read the plate again, and compare frame and rating with the motor that stands there.',
  },
};

/** What to do about two mistakes, the likelier first; the caution that both end with is said once. */
function inTurn(first: MistakeCode, second: MistakeCode): string {
  const { next } = ONE_MISTAKE[first];
  const then = ONE_MISTAKE[second].next;
  const begin = then.endsWith(LIVE) && next.endsWith(LIVE) ? next.slice(0, -LIVE.length).trimEnd() : next;
  return begin === then || then.startsWith(begin) ? then : `First: ${begin} If that is in order: ${then}`;
}

/** A mistake of the power meter that is no more than possible: what would have been, and what settles it. */
const MAY_BE: Readonly<Record<PowerMistake, { readonly supposed: string; readonly next: string }>> = {
  'power-sensor-reversed': {
    supposed: 'one current sensor of the power meter turned round',
    next: `Check place and direction of each sensor of the power meter; then read power, volts, amperes and speed again at the same load. Never open a current-transformer secondary. ${LIVE}`,
  },
  'power-sensor-missing': {
    supposed: 'one current sensor of the power meter missing',
    next: `Check that each sensor of the power meter is closed and shows a current; then read power, volts, amperes and speed again at the same load. Never open a current-transformer secondary. ${LIVE}`,
  },
  'power-in-horsepower': {
    supposed: 'the input power in horsepower',
    next: 'Look up in which unit the meter was set to show power, and read it again at the same load if nobody knows.',
  },
};

/**
 * Mistakes that repair the fit when they are supposed: each names what was probably done, with its odds against the next best; where two
 * stand out that the readings cannot tell apart, both.
 */
export const SUSPICION = catalogue({
  ...ONE_MISTAKE,
  'power-not-confirmed': kind<{
    readonly [name: string]: number | string;
    readonly row: number;
    readonly mistake: PowerMistake;
    readonly load: number;
    readonly other: number;
  }>({
    severity: 'warning',
    text: (e) =>
      `The readings in row ${e.row} fit no better as they stand than with ${MAY_BE[e.mistake].supposed}; the load would then be ${fixed(100 * e.other, 0)} % of rating in place of ${fixed(100 * e.load, 0)} %. The power was used as it stands.`,
    cause: (e) =>
      `Either plate and meters are off by as much as they may be and nothing is wrong, or: ${ONE_MISTAKE[e.mistake].cause}`,
    next: (e) => MAY_BE[e.mistake].next,
  }),
  'one-of-two-mistakes': kind<Suspected & { readonly first: MistakeCode; readonly second: MistakeCode }>({
    severity: 'warning',
    text: (e) =>
      `The readings in row ${e.row} fit if one of two mistakes was made, and nothing read tells which (together ${odds(e)} to 1 against the next best cause). What either touches was not used.`,
    cause: (e) => `Likelier: ${ONE_MISTAKE[e.first].cause} Or: ${ONE_MISTAKE[e.second].cause}`,
    next: (e) => inTurn(e.first, e.second),
  }),
});
