import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as B from '../generated/bench';
import * as N from '../generated/nameplate';
import type { Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { PLATE } from './findings';

/** First year of plates that go by IEC 60034-2-1 (September 2007), and the first in which none goes by the method before it (withdrawn in 2010). From memory. */
const FIRST_BY_TESTED_STRAY = 2008;
const ALL_BY_TESTED_STRAY = 2011;

/** Measured stray-load loss above the old half per cent of input: mean of 817 tests, 0.75 to 375 kW, as a fraction of input (survey of 2002, table of its abstract, read). */
const MEAN_EXCESS = { at50Hz: 0.01, at60Hz: 0.008 } as const;
/** Middle of the survey's ratings on a logarithmic scale, kW: there its mean is taken to hold. */
const MIDDLE_KW = Math.sqrt(0.75 * 375);
/** Tests of single designs scatter by about two fifths of the excess, and by 0.15 points at least (common practice). */
const SPREAD = 0.4;
const LEAST_SPREAD = 0.0015;
/** A large machine keeps this much of an excess (own judgement): the assigned share never falls to the half per cent below 10,000 kW. */
const LEAST_EXCESS = 0.0015;

/**
 * What a stamp by the old IEC method is above the efficiency as it is measured today.
 *
 * Until IEC 60034-2-1 makers took 0.5 % of input as stray-load loss, whatever it was. The excess is that of the survey at the middle of its
 * ratings and falls with the rating as the assigned allowance of IEC 60034-2-1 does. A class IE1 to IE4 stands for the present method, whatever the
 * year. Where year and class leave it open, half of the excess is taken with a doubt that reaches to none and to all of it.
 * Units: rating in kW, result in fraction of input. Range: 0.1 to 10,000 kW.
 */
export function byPresentMethod(
  scope: MotorScope,
  plate: Plate,
  given: { readonly stamped: Quantity<'1'>; readonly frequencyHz: number; readonly prefix: string },
): { efficiency: Quantity<'1'>; findings: Finding[] } {
  const { stamped, frequencyHz, prefix } = given;
  const likelihood = shareByOldMethod(scope, plate);
  const full = likelihood > 0 ? excess(scope, plate.ratedPowerKw, frequencyHz) : undefined;
  if (full === undefined) return { efficiency: stamped, findings: [] };
  const within = Math.max(SPREAD * full, LEAST_SPREAD);
  const off = leaf(scope, {
    value: likelihood * full,
    unit: '1',
    label: `${prefix}stray-load loss that the stamp leaves out`,
    origin: 'assumed',
    source:
      'survey of 817 tests (2002): stray-load loss above the fixed 0.5 % of IEC 60034-2 before 2007, falling with the rating as the allowance of IEC 60034-2-1 does',
    doubts: [
      {
        id: `${prefix}stamp:old-stray-allowance`,
        label: `${prefix}stray-load loss that the old method left out`,
        // Variance of a mixture: that of the excess where it applies, and that of whether it applies.
        u: Math.sqrt(likelihood * within ** 2 + likelihood * (1 - likelihood) * full ** 2),
      },
    ],
  });
  return {
    efficiency: apply(scope, N.efficiency_by_present_method, { stamped, excess: off }),
    findings: [
      PLATE.make('efficiency-by-old-method', {
        stamped: 100 * stamped.value,
        points: 100 * off.value,
        ...(plate.yearBuilt !== undefined && { year: plate.yearBuilt }),
      }),
    ],
  };
}

/** How likely the stamp goes by the fixed half per cent: 0, 1/2 where nothing tells, or 1. A class above standard is one of today's where no year says otherwise. */
function shareByOldMethod(scope: MotorScope, { efficiencyClass, yearBuilt, machineKind }: Plate): number {
  if (scope.settings.standards !== 'iec' || machineKind === 'synchronous' || efficiencyClass?.startsWith('IE')) return 0;
  if (yearBuilt === undefined) return efficiencyClass === undefined || efficiencyClass === 'standard' ? 0.5 : 0;
  return yearBuilt < FIRST_BY_TESTED_STRAY ? 1 : yearBuilt < ALL_BY_TESTED_STRAY ? 0.5 : 0;
}

/**
 * Stray-load loss at rated load as tests find it: the old half per cent and the survey's mean excess, as a fraction of input; `undefined` where the
 * table of assumed losses lacks a row. Rating in kW.
 */
export function strayShareByTests(scope: MotorScope, ratedPowerKw: number, frequencyHz: number): number | undefined {
  const fixed = scope.tables.assumedStray.rows.find(({ standard }) => standard === 'iec-60034-2')?.share;
  const above = excess(scope, ratedPowerKw, frequencyHz);
  return fixed === undefined || above === undefined ? undefined : fixed + above;
}

/** Stray-load loss that IEC 60034-2-1 assigns where it is not measured, fraction of input, by rating in kW; `undefined` when the table has no sloping allowance. */
export function assignedStrayShare(scope: MotorScope): ((ratedPowerKw: number) => number) | undefined {
  const row = scope.tables.assumedStray.rows.find(({ fallPerDecade }) => fallPerDecade !== undefined);
  if (row?.shareAt1Kw === undefined || row.fallPerDecade === undefined) return undefined;
  const { shareAt1Kw, fallPerDecade } = row;
  return (kw) => B.stray_assigned_share.f(Math.max(kw, 1), 1, shareAt1Kw, fallPerDecade);
}

/** Mean excess of a rating in kW, fraction of input; `undefined` when the table has no sloping allowance. */
function excess(scope: MotorScope, ratedPowerKw: number, frequencyHz: number): number | undefined {
  const allowance = assignedStrayShare(scope);
  if (!allowance) return undefined;
  const mean = Math.round(frequencyHz) === 60 ? MEAN_EXCESS.at60Hz : MEAN_EXCESS.at50Hz;
  return Math.max(LEAST_EXCESS, mean + allowance(ratedPowerKw) - allowance(MIDDLE_KW));
}
