import { apply, leaf } from '../formula/apply';
import * as B from '../generated/bench';
import * as M from '../generated/machine';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity } from '../quantity/quantity';
import { BENCH } from './findings';
import { type BenchScope, METER, read } from './meters';
import type { BenchPoint, BenchSections } from './test';

/** Resistance between terminals and winding temperature at one point, in °C. */
export interface Winding {
  readonly resistance: Quantity<'Ω'>;
  readonly temperature: Quantity<'K'>;
}

/** Doubt of a winding temperature that nobody measured, K (own judgement: a third of a usual rise, rounded). */
const ASSUMED_DOUBT = 10;

/**
 * The resistance with its temperature to which all others are referred: the cold one, else that of the rated-load test, else of a no-load
 * or load point.
 */
export function referenceWinding(scope: BenchScope, sections: BenchSections): Winding | undefined {
  for (const point of [...sections.cold, ...sections['rated-load'], ...sections['no-load'], ...sections.load]) {
    const resistance = read(scope, METER.resistance, point);
    const temperature = read(scope, METER.winding, point);
    if (resistance && temperature && resistance.value > 0) return { resistance, temperature };
  }
  return undefined;
}

/**
 * Resistance and temperature of the winding at a point: each as measured, else the one from the other through the reference.
 * `undefined` where neither was measured. `copper` is the constant of its conductor, 234.5 °C for copper.
 */
export function windingAt(scope: BenchScope, point: BenchPoint, reference: Winding, copper: number): Winding | undefined {
  const material = exact(copper, 'K');
  const resistance = read(scope, METER.resistance, point);
  const temperature = read(scope, METER.winding, point);
  if (resistance && temperature) return { resistance, temperature };
  if (resistance) {
    const found = apply(scope, B.temperature_by_resistance, {
      resistance,
      cold_resistance: reference.resistance,
      cold_temperature: reference.temperature,
      material,
    });
    return { resistance, temperature: found };
  }
  return temperature && atTemperature(scope, temperature, reference, copper);
}

/** The winding at a given temperature, °C; `copper` is the constant of its conductor, 234.5 °C for copper. */
export function atTemperature(scope: BenchScope, temperature: Quantity<'K'>, reference: Winding, copper: number): Winding {
  const resistance = apply(scope, M.resistance_at_temperature, {
    resistance: reference.resistance,
    measured_at: reference.temperature,
    wanted_at: temperature,
    material: exact(copper, 'K'),
  });
  return { resistance, temperature };
}

/** The windings of a section's points; what was not measured is taken from `fallback` with a finding. */
export function windingsOf(
  scope: BenchScope,
  section: string,
  points: readonly BenchPoint[],
  reference: Winding,
  fallback: Quantity<'K'>,
  copper: number,
): { windings: Winding[]; findings: Finding[] } {
  const unknown: number[] = [];
  const windings = points.map((point) => {
    const found = windingAt(scope, point, reference, copper);
    if (found) return found;
    unknown.push(point.row);
    return atTemperature(scope, assumed(scope, fallback, section), reference, copper);
  });
  if (unknown.length === 0) return { windings, findings: [] };
  const evidence = { rows: unknown.join(', '), section, temperature: fallback.value };
  return { windings, findings: [BENCH.make('winding-temperature-assumed', evidence)] };
}

function assumed(scope: BenchScope, around: Quantity<'K'>, section: string): Quantity<'K'> {
  return leaf(scope, {
    value: around.value,
    unit: 'K',
    label: `winding temperature in the section ${section}, °C`,
    origin: 'assumed',
    source: 'taken from another section of the test',
    doubts: [{ id: `bench:winding:${section}`, label: `winding temperature in ${section} not measured`, u: ASSUMED_DOUBT }],
  });
}
