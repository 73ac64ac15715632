import { apply, leaf } from '../formula/apply';
import * as B from '../generated/bench';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity, Sources } from '../quantity/quantity';
import type { AssumedStrayRow, Table } from '../tables';
import { circuitLoads } from './circuit-loads';
import { BENCH } from './findings';
import type { LoadSide } from './load-side';
import { measuredLoads } from './measured-loads';
import { type BenchScope, METER, read } from './meters';
import { type BenchMethod, type BenchMethodId, benchMethod, CLASS_TEMPERATURE, REFERENCE_COOLANT } from './method';
import { type NoLoad, separateNoLoad } from './no-load';
import { plateConflicts } from './plate-conflicts';
import { doubtfulReadings } from './plausible';
import { referenceWinding, type Winding, windingAt } from './resistance';
import { polesOf } from './slip';
import type { BenchInstruments, BenchPlate, BenchTest } from './test';

/** What a test is worked out with, beside the test itself. */
export interface BenchContext {
  readonly plate: BenchPlate;
  readonly method: BenchMethodId;
  readonly instruments: BenchInstruments;
  readonly assumedStray: Table<AssumedStrayRow>;
}

/** A bench test once worked out, with every column of the computation. */
export interface BenchEvaluation {
  readonly test: BenchTest;
  readonly method: BenchMethod;
  readonly plate: BenchPlate;
  readonly frequencyHz: number;
  /** No finding stands against it. */
  readonly accepted: boolean;
  readonly findings: readonly Finding[];
  /** Those of the findings that contradict the plate or the book. */
  readonly conflicts: readonly Finding[];
  readonly scope: BenchScope;
  readonly reference?: Winding | undefined;
  readonly noLoad?: NoLoad | undefined;
  /** Winding temperature to which the losses are brought, °C. */
  readonly specified?: Quantity<'K'> | undefined;
  readonly load?: LoadSide | undefined;
}

/**
 * Works out a bench test by one method.
 *
 * Units: as in the bench test sheet; losses in kW. The answer is always there: what could not be computed is absent, and a finding says
 * why; `accepted` is false when a finding of weight `disqualifies` stands against the test.
 * Source: the methods named in `method.ts`; propagation of the meters' classes by GUM (JCGM 100:2008) 5.1 through every column and the
 * regressions with their covariance.
 */
export function evaluateBench(test: BenchTest, context: BenchContext): BenchEvaluation {
  const { plate } = context;
  const method = benchMethod(context.method);
  const scope: BenchScope = { sources: new Sources(), instruments: context.instruments };
  const frequencyHz = plate.ratedFrequencyHz ?? measuredFrequency(test) ?? 60;
  const findings: Finding[] = doubtfulReadings(test.sections, plate, frequencyHz, method.copper);
  const done = (more: Partial<BenchEvaluation> = {}): BenchEvaluation => {
    const all = [...findings, ...(more.load?.findings ?? [])];
    const accepted = !all.some((finding) => finding.severity === 'disqualifies');
    return { test, method, plate, frequencyHz, scope, conflicts: [], ...more, findings: all, accepted };
  };
  const reference = referenceWinding(scope, test.sections);
  if (!reference) {
    findings.push(BENCH.make('cold-resistance-missing', {}));
    return done();
  }
  const temperatures = specifiedTemperature(scope, test, plate, method, reference);
  const noLoad = separateNoLoad(
    scope,
    test.sections['no-load'],
    plate,
    method,
    reference,
    noLoadTemperature(scope, test, reference),
  );
  findings.push(...noLoad.findings);
  if (method.load === 'none' || !noLoad.noLoad?.separated) return done({ reference, noLoad: noLoad.noLoad });
  findings.push(...temperatures.findings);
  const { specified, coolant } = temperatures;
  const prepared = {
    test,
    plate,
    method,
    frequencyHz,
    reference,
    noLoad: noLoad.noLoad,
    specified,
    coolant,
    assumedStray: context.assumedStray,
  };
  const load = method.load === 'circuit' ? circuitLoads(scope, prepared) : measuredLoads(scope, prepared);
  const poles = polesOf(plate, test.sections.load, frequencyHz);
  const conflicts = plateConflicts(plate, { load, reference, copper: method.copper, frequencyHz, poles });
  findings.push(...conflicts);
  return done({ conflicts, reference, noLoad: noLoad.noLoad, specified, load });
}

/** Whole-number frequency of the mains nearest to what was measured under load. */
function measuredFrequency(test: BenchTest): number | undefined {
  const hertz = [...test.sections.load, ...test.sections['no-load']]
    .map((point) => point.frequencyHz)
    .find((value) => value !== undefined);
  return hertz === undefined ? undefined : Math.round(hertz);
}

/** Temperature at rated load with the air at 25 °C: from the rated-load test, else by class of temperature rise. */
function specifiedTemperature(
  scope: BenchScope,
  test: BenchTest,
  plate: BenchPlate,
  method: BenchMethod,
  reference: Winding,
): { specified: Quantity<'K'>; coolant: Quantity<'K'>; findings: Finding[] } {
  const findings: Finding[] = [];
  const [point] = test.sections['rated-load'];
  const hot = point && windingAt(scope, point, reference, method.copper);
  const air = [...test.sections['rated-load'], ...test.sections.load]
    .map((each) => read(scope, METER.ambient, each))
    .find(Boolean);
  if (!air) findings.push(BENCH.make('ambient-assumed', { temperature: REFERENCE_COOLANT }));
  const coolant =
    air ??
    leaf(scope, {
      value: REFERENCE_COOLANT,
      unit: 'K',
      label: 'temperature of the cooling air, °C',
      origin: 'assumed',
      source: 'not measured; the reference temperature taken',
      doubts: [{ id: 'bench:coolant', label: 'temperature of the cooling air assumed', u: 5 }],
    });
  if (hot) {
    const specified = apply(scope, B.temperature_at_coolant, {
      winding: hot.temperature,
      coolant,
      reference: exact(REFERENCE_COOLANT, 'K'),
    });
    return { specified, coolant, findings };
  }
  const letter = plate.temperatureRiseClass ?? 'B';
  const value = CLASS_TEMPERATURE[letter];
  const rise_class = plate.temperatureRiseClass ? `the stamped rise class ${letter}` : `an assumed rise class ${letter}`;
  findings.push(BENCH.make('specified-temperature-assumed', { temperature: value, rise_class }));
  const specified = leaf(scope, {
    value,
    unit: 'K',
    label: 'specified winding temperature, °C',
    origin: 'assumed',
    source: 'class of temperature rise; IEEE 112 specified temperatures (from memory)',
    doubts: [{ id: 'bench:specified', label: 'temperature at rated load not measured', u: 8 }],
  });
  return { specified, coolant, findings };
}

/** Winding temperature of an uncoupled run where none was noted: half way between cold and rated load. */
function noLoadTemperature(scope: BenchScope, test: BenchTest, reference: Winding): Quantity<'K'> {
  const [point] = test.sections['rated-load'];
  const hot = (point && read(scope, METER.winding, point)) ?? reference.temperature;
  return exact((hot.value + reference.temperature.value) / 2, 'K');
}
