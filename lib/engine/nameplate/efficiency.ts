import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import type { KnownPlate, Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Origin, Quantity } from '../quantity/quantity';
import { classContradiction } from './class-contradiction';
import { beyondTable, listedEfficiency, type RatingQuery, standardEfficiency } from './class-efficiency';
import { efficiencyOfYear } from './efficiency-of-year';
import { PLATE } from './findings';
import { byPresentMethod } from './old-iec-stamp';

/** The rated efficiency with its origin. */
export interface RatedEfficiency {
  readonly efficiency: Quantity<'1'>;
  readonly origin: Origin;
  readonly known: boolean;
  readonly findings: readonly Finding[];
}

/** Tolerance limits count as 2.5 standard deviations, since makers keep clear of them (common practice). */
const LIMIT_IN_DEVIATIONS = 2.5;

/** Rated losses over those of a standard motor of the same rating, beyond which an efficiency is that of no such motor (common practice). */
const MOST_LOSS = 3;
const LEAST_LOSS = 0.28;

/** Further apart than this many standard uncertainties, test and plate contradict each other. */
const CONTRADICTION = 3;

/**
 * Efficiency at rated load: stamped, else by class, else by year of making.
 *
 * Doubt is stated on the loss: 20 % of the loss between nominal and guaranteed minimum for US motors (NEMA MG 1 12.58.2), 15 % to
 * 150 kW and 10 % above for IEC motors (IEC 60034-1), each at 2.5 deviations; 20 % of the loss at one deviation where only the year
 * speaks, 25 % where nothing does (common practice); more where stamp and class contradict each other. A rewound motor is taken lower as published studies find.
 */
export function ratedEfficiency(
  scope: MotorScope,
  plate: KnownPlate,
  poles: number,
  frequencyHz: number,
  prefix: string,
): RatedEfficiency {
  const findings: Finding[] = [];
  const stamped = possibleStamp(plate, findings);
  const spread = toleranceOfLoss(scope, plate.ratedPowerKw) / LIMIT_IN_DEVIATIONS;
  const tested = byTest(scope, plate, prefix, stamped, spread, findings);
  if (tested) return tested;
  const query = {
    ratedPowerKw: plate.ratedPowerKw,
    poles,
    enclosure: plate.enclosure ?? ('enclosed' as const),
    frequencyHz,
    standards: scope.settings.standards,
  };
  if (stamped !== undefined) {
    if (plate.machineKind === 'synchronous' || isNearStandard(scope, query, stamped))
      return byStamp(scope, plate, prefix, stamped, spread, query, findings);
    findings.push(PLATE.make('efficiency-impossible', { stamped }));
  }
  return byClass(scope, plate, prefix, spread, query, findings) ?? byYear(scope, plate, prefix, query, findings);
}

/** The stamped efficiency in per cent, unless it can be that of no motor at all. */
function possibleStamp({ nominalEfficiencyPct: stamped }: Plate, findings: Finding[]): number | undefined {
  if (stamped === undefined) return undefined;
  if (stamped > 0 && stamped <= 1) findings.push(PLATE.make('efficiency-as-fraction', { stamped }));
  else if (stamped < 40 || stamped > 99.5) findings.push(PLATE.make('efficiency-impossible', { stamped }));
  else return stamped;
  return undefined;
}

/** True where an efficiency in per cent is not too far from that of a standard motor of the rating. */
function isNearStandard(scope: MotorScope, query: RatingQuery, pct: number): boolean {
  const standard = standardEfficiency(scope.tables, query)?.pct ?? pct;
  const ratio = (100 / pct - 1) / (100 / standard - 1);
  return !(ratio > MOST_LOSS || ratio < LEAST_LOSS);
}

/** The efficiency that a bench test measured, where all its losses were measured. */
function byTest(
  scope: MotorScope,
  plate: KnownPlate,
  prefix: string,
  stamped: number | undefined,
  spreadOfStamp: number,
  findings: Finding[],
): RatedEfficiency | undefined {
  const measured = plate.tested?.measured.efficiency;
  if (!plate.tested || !measured || !(measured.value > 0.4 && measured.value < 0.995)) return undefined;
  const { name: test } = plate.tested;
  const pct = 100 * measured.value;
  const ofStamp = stamped === undefined ? 0 : spreadOfStamp * (stamped / 100) * (1 - stamped / 100);
  const apart = stamped === undefined ? 0 : Math.abs(measured.value - stamped / 100) / Math.hypot(measured.u, ofStamp);
  if (stamped !== undefined && apart > CONTRADICTION)
    findings.push(PLATE.make('test-contradicts-plate', { test, tested: pct, stamped, apart }));
  else findings.push(PLATE.make('efficiency-by-test', { test, tested: pct, ...(stamped !== undefined && { stamped }) }));
  const efficiency = leaf(scope, {
    value: measured.value,
    unit: '1',
    label: `${prefix}efficiency at rated load`,
    origin: 'metered',
    source: `bench test “${test}”`,
    doubts: [{ id: 'bench:efficiency', label: 'efficiency by bench test', u: measured.u }],
  });
  return { efficiency, origin: 'metered', known: true, findings };
}

/** The stamped efficiency, as it would be measured today; in more doubt where the stated class contradicts it. */
function byStamp(
  scope: MotorScope,
  plate: KnownPlate,
  prefix: string,
  stamped: number,
  spread: number,
  query: RatingQuery,
  findings: Finding[],
): RatedEfficiency {
  const stated = plate.efficiencyClass;
  const against = stated && classContradiction(scope.tables, query, stated, stamped);
  if (against) findings.push(PLATE.make('class-contradicts-efficiency', { stamped, class: stated, ...against }));
  const stamp = make(
    scope,
    prefix,
    stamped,
    // Nothing tells which of the two is true: the doubt of one deviation reaches half way to the other.
    Math.max(spread, against ? Math.abs(Math.log(against.ratio)) / 2 : 0),
    'stamped',
    'nameplate, nominal efficiency',
    'tolerance of the stamped efficiency',
  );
  const present = byPresentMethod(scope, plate, { stamped: stamp, frequencyHz: query.frequencyHz, prefix });
  return { efficiency: present.efficiency, origin: 'stamped', known: true, findings: [...findings, ...present.findings] };
}

/** The efficiency of the stated class, where a table holds it. */
function byClass(
  scope: MotorScope,
  { efficiencyClass: stated }: Plate,
  prefix: string,
  spreadOfClass: number,
  query: RatingQuery,
  findings: Finding[],
): RatedEfficiency | undefined {
  const found = stated && listedEfficiency(scope.tables, query, stated);
  if (!found) return undefined;
  const spread = (stated === 'standard' ? 0.2 : spreadOfClass) * beyondTable(found);
  const source = `class ${stated}: ${found.table}`;
  const efficiency = make(scope, prefix, found.pct, spread, 'table', source, 'tolerance of the class efficiency');
  return { efficiency, origin: 'table', known: true, findings };
}

/** What motors of its year had, with a finding that says so. */
function byYear(scope: MotorScope, plate: Plate, prefix: string, query: RatingQuery, findings: Finding[]): RatedEfficiency {
  const { pct, basis, spread } = efficiencyOfYear(scope, plate, query);
  findings.push(PLATE.make('efficiency-unknown', { assumed: pct, basis }));
  const efficiency = make(scope, prefix, pct, spread, 'assumed', basis, 'efficiency assumed');
  return { efficiency, origin: 'assumed', known: false, findings };
}

function make(
  scope: MotorScope,
  prefix: string,
  pct: number,
  spreadOfLoss: number,
  origin: Origin,
  source: string,
  doubt: string,
): Quantity<'1'> {
  const value = pct / 100;
  return leaf(scope, {
    value,
    unit: '1',
    label: `${prefix}efficiency at rated load`,
    origin,
    source,
    doubts: [{ id: `${prefix}stamp:efficiency`, label: `${prefix}${doubt}`, u: spreadOfLoss * value * (1 - value) }],
  });
}

function toleranceOfLoss(scope: MotorScope, ratedPowerKw: number): number {
  if (scope.settings.standards === 'nema') return 0.2;
  return ratedPowerKw <= 150 ? 0.15 : 0.1;
}
