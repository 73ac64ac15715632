import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import type { EfficiencyClass, KnownPlate, Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Origin, Quantity } from '../quantity/quantity';
import { classContradiction } from './class-contradiction';
import { classEfficiency, standardEfficiency } from './class-efficiency';
import { PLATE } from './findings';
import { byPresentMethod } from './old-iec-stamp';
import { lossOverFirstClass } from './sold-in-europe';

/** The rated efficiency with its origin. */
export interface RatedEfficiency {
  readonly efficiency: Quantity<'1'>;
  readonly origin: Origin;
  readonly known: boolean;
  readonly findings: readonly Finding[];
}

/** Tolerance limits count as 2.5 standard deviations, since makers keep clear of them (common practice). */
const LIMIT_IN_DEVIATIONS = 2.5;

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
  const stamped = plate.nominalEfficiencyPct;
  let usable = stamped;
  if (stamped !== undefined && stamped > 0 && stamped <= 1) {
    findings.push(PLATE.make('efficiency-as-fraction', { stamped }));
    usable = undefined;
  } else if (stamped !== undefined && (stamped < 40 || stamped > 99.5)) {
    findings.push(PLATE.make('efficiency-impossible', { stamped }));
    usable = undefined;
  }
  const tolerance = toleranceOfLoss(scope, plate.ratedPowerKw);
  const tested = byTest(scope, plate, prefix, usable, tolerance / LIMIT_IN_DEVIATIONS, findings);
  if (tested) return tested;
  const query = {
    ratedPowerKw: plate.ratedPowerKw,
    poles,
    enclosure: plate.enclosure ?? ('enclosed' as const),
    frequencyHz,
    standards: scope.settings.standards,
  };
  if (usable !== undefined && plate.machineKind !== 'synchronous') {
    const standard = standardEfficiency(scope.tables, query)?.pct ?? usable;
    const ratio = lossRatio(usable, standard);
    if (ratio > MOST_LOSS || ratio < LEAST_LOSS) {
      findings.push(PLATE.make('efficiency-impossible', { stamped: usable }));
      usable = undefined;
    }
  }
  const stated = plate.efficiencyClass;
  if (usable !== undefined) {
    const against = stated && classContradiction(scope.tables, query, stated, usable);
    if (against) findings.push(PLATE.make('class-contradicts-efficiency', { stamped: usable, class: stated, ...against }));
    const stamp = make(
      scope,
      prefix,
      usable,
      // Nothing tells which of the two is true: the doubt of one deviation reaches half way to the other.
      Math.max(tolerance / LIMIT_IN_DEVIATIONS, against ? Math.abs(Math.log(against.ratio)) / 2 : 0),
      'stamped',
      'nameplate, nominal efficiency',
      'tolerance of the stamped efficiency',
    );
    const present = byPresentMethod(scope, plate, { stamped: stamp, frequencyHz, prefix });
    return { efficiency: present.efficiency, origin: 'stamped', known: true, findings: [...findings, ...present.findings] };
  }
  if (stated !== undefined) {
    const found =
      stated === 'standard'
        ? standardEfficiency(scope.tables, query)
        : classEfficiency(scope.tables, { ...query, efficiencyClass: stated });
    if (found) {
      const spread = (stated === 'standard' ? 0.2 : tolerance / LIMIT_IN_DEVIATIONS) * (found.inside ? 1 : BEYOND_TABLE);
      return {
        efficiency: make(
          scope,
          prefix,
          found.pct,
          spread,
          'table',
          `class ${stated}: ${found.table}`,
          'tolerance of the class efficiency',
        ),
        origin: 'table',
        known: true,
        findings,
      };
    }
  }
  const guess = classOfYear(plate, scope.settings.standards);
  const found =
    guess.efficiencyClass === 'standard'
      ? standardEfficiency(scope.tables, query)
      : classEfficiency(scope.tables, { ...query, efficiencyClass: guess.efficiencyClass });
  const table = found?.pct ?? UNLISTED_PCT;
  const sold =
    guess.efficiencyClass === 'standard' && scope.settings.standards === 'iec' && plate.yearBuilt !== undefined
      ? lossOverFirstClass(plate.yearBuilt, poles)
      : 1;
  const pct = sold === 1 ? table : 100 / (1 + sold * (100 / table - 1));
  const named = found ? `table “${found.table}”${sold === 1 ? '' : `, ${sold.toFixed(2)} times its loss`}` : 'common practice';
  const basis = `${guess.why}, so taken for ${guess.efficiencyClass}; ${named}`;
  const spread = guess.spread * (found?.inside === false ? BEYOND_TABLE : 1);
  findings.push(PLATE.make('efficiency-unknown', { assumed: pct, basis }));
  return {
    efficiency: make(scope, prefix, pct, spread, 'assumed', basis, 'efficiency assumed'),
    origin: 'assumed',
    known: false,
    findings,
  };
}

/** Where no table holds the class at the frequency (common practice). */
const UNLISTED_PCT = 88;

/** The doubt grows by so much where poles or rating lie beyond the table (common practice). */
const BEYOND_TABLE = 1.5;

/** Rated losses over those of a standard motor of the same rating, beyond which an efficiency is that of no such motor (common practice). */
const MOST_LOSS = 3;
const LEAST_LOSS = 0.28;

function lossRatio(pct: number, other: number): number {
  return (100 / pct - 1) / (100 / other - 1);
}

/** Further apart than this many standard uncertainties, test and plate contradict each other. */
const CONTRADICTION = 3;

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

/** The class that most motors of a year had. Years: US law of 1992 in force from 1997, premium from 2011; IEC classes by EU law from 2011 and 2017. */
function classOfYear(plate: Plate, standards: 'nema' | 'iec'): { efficiencyClass: EfficiencyClass; why: string; spread: number } {
  const year = plate.yearBuilt;
  const oldFrame = plate.frame !== undefined && /^\d{3}U/i.test(plate.frame.trim());
  if (oldFrame) return { efficiencyClass: 'standard', why: 'a U frame, made before about 1964', spread: 0.2 };
  if (year === undefined) return { efficiencyClass: 'standard', why: 'year not known', spread: 0.25 };
  const [second, third] = standards === 'nema' ? [1998, 2011] : [2011, 2017];
  if (year < second) return { efficiencyClass: 'standard', why: `made in ${year}`, spread: 0.2 };
  if (year < third)
    return { efficiencyClass: standards === 'nema' ? 'energy-efficient' : 'IE2', why: `made in ${year}`, spread: 0.2 };
  return { efficiencyClass: standards === 'nema' ? 'premium' : 'IE3', why: `made in ${year}`, spread: 0.2 };
}
