import { PARAMETERS } from '../circuit/parameters';
import type { Evaluation } from '../evaluate';
import type { Pull } from '../load/joint';
import type { Observation, Observed } from '../machine/observation';
import { HEAT } from '../machine/predict';
import type { Figure } from '../result';
import { widthSource } from './width-sources';

/** What one stamp, reading or typical value says, and what it does to the load of the reading in use. */
export interface Contribution {
  /** Stable name, such as `stamped_speed` or `input_power_row_7`. */
  readonly name: string;
  /** `reading` and `stamp` are evidence; `typical` is known of such motors, or assumed. */
  readonly kind: 'reading' | 'stamp' | 'typical';
  /** Row of the sheet, where it is of a reading. */
  readonly row?: number;
  /** As given, with its standard uncertainty, in the unit of a person. */
  readonly given: Figure;
  /** What the fitted machine shows in its place. */
  readonly fitted: number;
  /** Residual over its own standard uncertainty. */
  readonly residual: number;
  /** Share of its own prediction that comes from itself, 0 to 1. */
  readonly influence: number;
  /** Load of the reading in use without it, as a fraction of rating. */
  readonly loadWithout: number;
  /** Load with it less load without it. */
  readonly pull: number;
  /** Share in the variance of the load, were all independent. */
  readonly share: number;
  readonly widthSource: string;
}

/** What every stamp, reading and typical value contributes, in the order of weight in the load; empty without a usable reading. */
export function contributions(evaluation: Evaluation): readonly Contribution[] {
  const { joint, inUse } = evaluation;
  const load = inUse?.combination?.loadFraction;
  const reading = joint && load ? joint.readings.findIndex((each) => each.loadFraction === load) : -1;
  if (!joint || !load || reading < 0) return [];
  return joint
    .pulls()
    .map((pull) => contribution(evaluation, pull, reading, load.value))
    .sort((a, b) => b.share - a.share);
}

function contribution(evaluation: Evaluation, pull: Pull, reading: number, load: number): Contribution {
  const { observation } = pull;
  const { value, scale, unit } = readerOf(evaluation, observation);
  const given = value(observation.value.value);
  const loadWithout = pull.loadsWithout[reading] as number;
  const row = /_row_(\d+)$/.exec(pull.name)?.[1];
  return {
    name: pull.name,
    kind: !pull.evidence ? 'typical' : 'reading' in observation.target ? 'reading' : 'stamp',
    ...(row !== undefined && { row: Number(row) }),
    given: { value: given, u: observation.u * scale(given), unit },
    fitted: value(pull.fitted),
    residual: pull.residual,
    influence: pull.influence,
    loadWithout,
    pull: load - loadWithout,
    share: pull.shares[reading] as number,
    widthSource: widthSource(pull.name),
  };
}

/** How an observed number is said to a person: its value, the slope of that value by the observed number, and its unit. */
interface Reader {
  readonly value: (observed: number) => number;
  readonly scale: (value: number) => number;
  readonly unit: string;
}

const times = (base: number, unit: string): Reader => ({
  value: (observed) => base * Math.exp(observed),
  scale: (value) => value,
  unit,
});
const plain = (factor: number, unit: string): Reader => ({
  value: (observed) => factor * observed,
  scale: () => factor,
  unit,
});

function readerOf({ machine }: Evaluation, { target }: Observation): Reader {
  const { powerKw, currentA } = machine.model.base;
  const ohm = (machine.plate.ratedVoltage.value / Math.sqrt(3) / currentA) * 2;
  const readers: Readonly<Record<Observed['of'], Reader>> = {
    parameter: target.of === 'parameter' ? ofParameter(target.index) : plain(1, '1'),
    'rated-loss': times(powerKw, 'kW'),
    'rated-current': times(currentA, 'A'),
    'rated-power-factor': plain(100, '%'),
    resistance: times(ohm, 'Ω'),
    friction: times(powerKw, 'kW'),
    stray: times(powerKw, 'kW'),
    'free-current': times(currentA, 'A'),
    'free-input': times(powerKw, 'kW'),
    'free-core': times(powerKw, 'kW'),
    'free-constant': times(powerKw, 'kW'),
    input: times(powerKw, 'kW'),
    current: times(currentA, 'A'),
    'power-factor': plain(100, '%'),
    slip: plain(100, '%'),
    load: plain(100, '%'),
    voltage: plain(100, '%'),
    heat: plain(HEAT, 'K'),
  };
  return readers[target.of];
}

/** Parameters by their name: logarithms of shares, but for the exponent of saturation. */
function ofParameter(index: number): Reader {
  const name = PARAMETERS[index];
  if (name === 'saturation') return plain(1, '1');
  if (name === 'slip') return times(100, '%');
  if (name === 'rise') return times(1, 'K');
  return times(1, '1');
}
