import { type Evaluation, type ExpectedRange, expectedReadings, type IndicatorResult, type Reading } from '@/lib/engine';
import { formatNumber, formatStated } from '@/lib/platform/format';
import type { LoadWanted, Wanted } from './schema';

/** One blank to fill in: what to read, and what it should be about. */
export interface RoundLine {
  readonly name: string;
  readonly unit: string;
  /** How many blanks stand side by side: three phases, both bearings. */
  readonly blanks: number;
  /** What to expect, in words with numbers; empty where nothing can be said beforehand. */
  readonly expect: string;
}

/** Where on the way round a line is read. */
export type RoundPlace = 'On the way in' | 'At the panel, live' | 'At the shaft' | 'Stopped and locked out';

/** Load of which the range of expected readings is made, for each wish; `usual` around the known load, or all of it. */
const ANY_LOAD = [0.15, 1.15] as const;
const AROUND = 0.15;
const LEAST: Readonly<Partial<Record<LoadWanted, number>>> = { half: 0.5, 'three-quarters': 0.75 };

/** The loads at which a motor will be read: about its usual one where that is known, not below what is asked for. */
export function loadsExpected(evaluation: Evaluation, wanted: LoadWanted): readonly [number, number] {
  const least = LEAST[wanted];
  if (least !== undefined) return [least, ANY_LOAD[1]];
  const known = evaluation.trust.level === 'not-usable' ? undefined : evaluation.point?.loadFraction.value;
  if (known === undefined) return ANY_LOAD;
  return [Math.max(0.05, known - AROUND), Math.max(known + AROUND, 0.2)];
}

const PLACES: Readonly<Record<Wanted, RoundPlace>> = {
  plate: 'On the way in',
  'insulation-class': 'On the way in',
  foundation: 'On the way in',
  ambient: 'On the way in',
  'bearing-temperature': 'On the way in',
  vibration: 'On the way in',
  voltages: 'At the panel, live',
  currents: 'At the panel, live',
  power: 'At the panel, live',
  'power-factor': 'At the panel, live',
  frequency: 'At the panel, live',
  harmonics: 'At the panel, live',
  'drive-output': 'At the panel, live',
  'winding-temperature': 'At the panel, live',
  spectrum: 'At the panel, live',
  speed: 'At the shaft',
  'driven-speed': 'At the shaft',
  resistance: 'Stopped and locked out',
  insulation: 'Stopped and locked out',
  polarization: 'Stopped and locked out',
  'no-load': 'Stopped and locked out',
};

/** The blanks of one motor's round, by place, with what to expect at the loads given. */
export function roundLines(
  evaluation: Evaluation,
  wanted: readonly Wanted[],
  loads: readonly [number, number],
  indicators: readonly IndicatorResult[],
): ReadonlyMap<RoundPlace, readonly RoundLine[]> {
  const expected = expectedReadings(evaluation, loads);
  const last = (key: keyof Reading, decimals: number): string => {
    const found = evaluation.motor.readings.filter((reading) => typeof reading[key] === 'number').at(-1);
    const value = found?.[key];
    if (typeof value !== 'number') return '';
    return `was ${formatNumber(value, decimals)}${found?.takenAt === undefined ? '' : ` on ${formatStated(found.takenAt).slice(0, 10)}`}`;
  };
  const limit = (id: string) => indicators.find((entry) => entry.id === id)?.limit;
  const joined = (...parts: readonly (string | undefined)[]) => parts.filter(Boolean).join('; ');
  const line = (name: string, unit: string, expect: string, blanks = 1): RoundLine => ({ name, unit, expect, blanks });
  const synchronous = expected.synchronousSpeed;
  const lines: Readonly<Record<Wanted, () => readonly RoundLine[]>> = {
    plate: () => [
      line('Plate: power, speed, current, efficiency', 'kW or hp, r/min, A, %', 'as stamped, of the connection in use', 4),
    ],
    'insulation-class': () => [
      line('Plate: insulation class, rise class, year wound', 'A, B, F, H', 'as stamped; a rewind has a plate of its own', 3),
    ],
    // What counts as rigid is common practice; the standard goes by the lowest natural frequency of machine and support.
    foundation: () => [
      line('Foundation', 'rigid or flexible', 'rigid: concrete or a stiff base; flexible: steelwork or springs'),
    ],
    ambient: () => [line('Ambient', '°C', last('ambientC', 0))],
    'bearing-temperature': () => [
      line('Bearing temperature', '°C', joined(limit('bearing-temperature'), last('bearingTempC', 0))),
    ],
    vibration: () => [line('Vibration, highest bearing', 'mm/s RMS', joined(limit('vibration'), last('vibrationMmS', 1)))],
    voltages: () => [line('Voltage ab, bc, ca', 'V', joined(between(expected.voltage), 'within 1 % of their mean'), 3)],
    currents: () => [line('Current a, b, c', 'A', joined(between(expected.current), 'within 10 % of their mean'), 3)],
    power: () => [line('Input power, three-phase', 'kW', joined(between(expected.inputPower), 'never more than √3·V·A'))],
    'power-factor': () => [line('Power factor', '%', between(expected.powerFactor))],
    frequency: () => [line('Frequency', 'Hz', between(expected.frequency))],
    harmonics: () => [line('Voltage harmonics 5, 7, 11, 13', '%', '', 4)],
    'drive-output': () => [line('Drive output: frequency, power', 'Hz, kW', 'from the drive’s display', 2)],
    'winding-temperature': () => [line('Winding temperature and method', '°C', last('windingTempC', 0), 2)],
    spectrum: () => [
      line('Pole-pass sidebands, lower and upper', 'dB below line', joined('both sides', last('rotorSidebandDb', 1)), 2),
      line('Rotational sideband; resolution', 'dB; Hz', last('eccentricitySidebandDb', 1), 2),
    ],
    speed: () => [
      line(
        'Speed of the motor’s own shaft',
        'r/min',
        joined(between(expected.speed), synchronous === undefined ? '' : `below ${formatNumber(synchronous, 0)}`),
      ),
    ],
    'driven-speed': () => [line('Speed of the driven shaft', 'r/min', '')],
    resistance: () => [
      line('Winding resistance ab, bc, ca, at the motor', 'Ω', joined(limit('winding-resistance-unbalance')), 3),
    ],
    insulation: () => [
      line('Insulation resistance, 1 min', 'MΩ', joined(limit('insulation-resistance'), last('insulationResistanceMohm', 0))),
      line('Winding temperature then; test voltage', '°C; V dc', '10 to 85 °C, above the dew point', 2),
    ],
    polarization: () => [line('Insulation resistance, 10 min', 'MΩ', '')],
    'no-load': () => [line('Uncoupled: voltage, current, power', 'V, A, kW', '', 3)],
  };
  const byPlace = new Map<RoundPlace, RoundLine[]>();
  for (const each of wanted) {
    const place = PLACES[each];
    byPlace.set(place, [...(byPlace.get(place) ?? []), ...lines[each]()]);
  }
  return byPlace;
}

/** `41 to 66`: three significant digits, or to the last one where the two would read alike. */
function between(range: ExpectedRange | undefined): string {
  if (!range) return '';
  const width = range.high - range.low;
  const decimals = Math.min(3, Math.max(0, 1 - Math.floor(Math.log10(width || 1))));
  return `${formatNumber(range.low, decimals)} to ${formatNumber(range.high, decimals)}`;
}
