import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import * as N from '../generated/nameplate';
import type { Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import { exact, type Origin, type Quantity } from '../quantity/quantity';
import { PLATE } from './findings';

/** Rated current, power factor and magnetising share. */
export interface RatedCurrent {
  readonly current: Quantity<'A'>;
  readonly powerFactor: Quantity<'1'>;
  readonly magnetisingShare: Quantity<'1'>;
  readonly origins: { readonly current: Origin; readonly powerFactor: Origin; readonly magnetisingShare: Origin };
  readonly findings: readonly Finding[];
}

interface Given {
  readonly ratedPower: Quantity<'kW'>;
  readonly efficiency: Quantity<'1'>;
  readonly voltage: Quantity<'V'>;
  readonly poles: number;
  readonly prefix: string;
}

/**
 * Typical power factor at rated load, from the share of the magnetising current in the rated one and a leakage of 0.17 per unit.
 *
 * Units: kW. Valid for cage motors of 1 to 1,000 hp. The share is about half at 1 hp and 0.3 at 100 hp with 4 poles, and grows with the poles
 * (common practice). Published capacitor sizes for old motors, which stay below the share, are 0.39 of rated current at 3 hp, 0.27 at
 * 10 hp, and with 8, 10 and 12 poles 1.3 to 1.7, 1.7 to 2 and 2 to 2.5 times that of 4 poles.
 */
export function typicalPowerFactor(poles: number, ratedPowerKw: number): number {
  const byPoles = poles <= 2 ? 0.86 : poles <= 4 ? 1 : poles <= 6 ? 1.15 : poles <= 8 ? 1.33 : poles <= 10 ? 1.5 : 1.65;
  const ofFourPoles = Math.max(0.2, 0.48 - 0.09 * Math.log10(ratedPowerKw / KILOWATTS_PER_HORSEPOWER));
  const reactive = Math.min(0.68, ofFourPoles * byPoles) + 0.17;
  return Math.sqrt(1 - reactive * reactive);
}

/**
 * Rated current and power factor from one another, each stamped where the stamps agree.
 *
 * Stamped amperes count with 10 % at 2.5 deviations (NEMA MG 1 12.47, from memory); a stamped power factor with its rounding and 0.015.
 * A stamp that the others refute is reported and not used: the current of the other voltage of a two-voltage plate is named as such.
 */
export function completeCurrent(scope: MotorScope, plate: Plate, given: Given): RatedCurrent {
  const findings: Finding[] = [];
  const stampedFactor = usablePowerFactor(scope, plate, given.prefix, findings);
  const typical = leaf(scope, {
    value: typicalPowerFactor(given.poles, plate.ratedPowerKw),
    unit: '1',
    label: `${given.prefix}typical power factor at rated load`,
    origin: 'assumed',
    source: 'common practice by poles and rating',
    doubts: [{ id: `${given.prefix}typical:power-factor`, label: `${given.prefix}power factor assumed`, u: 0.035 }],
  });
  const expected = apply(scope, N.rated_current_from_power, {
    rated_power: given.ratedPower,
    efficiency: given.efficiency,
    power_factor: stampedFactor ?? typical,
    voltage: given.voltage,
  });
  const stampedCurrent = usableCurrent(scope, plate, given.prefix, expected, stampedFactor !== undefined, findings);
  const powerFactor =
    stampedFactor ??
    (stampedCurrent
      ? apply(scope, N.rated_power_factor_from_current, {
          rated_power: given.ratedPower,
          efficiency: given.efficiency,
          current: stampedCurrent,
          voltage: given.voltage,
        })
      : typical);
  const current = stampedCurrent ?? expected;
  const magnetising = magnetisingShare(
    scope,
    plate,
    given,
    current,
    powerFactor,
    stampedFactor !== undefined || stampedCurrent !== undefined,
  );
  return {
    current,
    powerFactor,
    magnetisingShare: magnetising.share,
    origins: {
      current: stampedCurrent ? 'stamped' : 'derived',
      powerFactor: stampedFactor ? 'stamped' : stampedCurrent ? 'derived' : 'assumed',
      magnetisingShare: magnetising.origin,
    },
    findings,
  };
}

function usablePowerFactor(scope: MotorScope, plate: Plate, prefix: string, findings: Finding[]): Quantity<'1'> | undefined {
  const stamped = plate.ratedPowerFactorPct;
  if (stamped === undefined) return undefined;
  const leadingAllowed = plate.machineKind === 'synchronous';
  if (Math.abs(stamped) > 0 && Math.abs(stamped) <= 1) {
    findings.push(PLATE.make('power-factor-as-fraction', { stamped }));
    return undefined;
  }
  const size = leadingAllowed ? Math.abs(stamped) : stamped;
  if (size < 30 || size > 100 || (size > 98 && !leadingAllowed)) {
    findings.push(PLATE.make('power-factor-impossible', { stamped }));
    return undefined;
  }
  return leaf(scope, {
    value: size / 100,
    unit: '1',
    label: `${prefix}rated power factor`,
    origin: 'stamped',
    source: 'nameplate, power factor',
    doubts: [{ id: `${prefix}stamp:power-factor`, label: `${prefix}rounding and spread of the stamped power factor`, u: 0.015 }],
  });
}

function usableCurrent(
  scope: MotorScope,
  plate: Plate,
  prefix: string,
  expected: Quantity<'A'>,
  factorStamped: boolean,
  findings: Finding[],
): Quantity<'A'> | undefined {
  const stamped = plate.ratedCurrentA;
  if (stamped === undefined) return undefined;
  const ratio = stamped / expected.value;
  const slack = factorStamped ? 1.15 : 1.35;
  if (ratio > slack || ratio < 1 / slack) {
    const double = ratio > 1.65 && ratio < 2.5;
    const half = ratio < 0.6 && ratio > 0.4;
    findings.push(
      PLATE.make(double || half ? 'current-of-other-voltage' : 'current-contradicts-plate', {
        stamped,
        expected: expected.value,
        ratio,
      }),
    );
    return undefined;
  }
  return leaf(scope, {
    value: stamped,
    unit: 'A',
    label: `${prefix}rated current`,
    origin: 'stamped',
    source: 'nameplate, rated current',
    doubts: [{ id: `${prefix}stamp:current`, label: `${prefix}tolerance of the stamped current`, u: (0.1 * stamped) / 2.5 }],
  });
}

/** Magnetising share: from an uncoupled test where there is one, else from the rated power factor less the leakage. */
function magnetisingShare(
  scope: MotorScope,
  plate: Plate,
  given: Given,
  ratedCurrent: Quantity<'A'>,
  powerFactor: Quantity<'1'>,
  known: boolean,
): { share: Quantity<'1'>; origin: Origin } {
  if (plate.noLoadCurrentA !== undefined) {
    const share = apply(scope, N.no_load_share, {
      no_load_current: leaf(scope, {
        value: plate.noLoadCurrentA,
        unit: 'A',
        label: 'no-load current',
        origin: 'metered',
        source: 'uncoupled test',
        doubts: [{ id: 'test:no-load-current', label: 'reading of the no-load current', u: 0.015 * plate.noLoadCurrentA }],
      }),
      rated_current: ratedCurrent,
      no_load_voltage: exact(plate.noLoadVoltageV ?? plate.ratedVoltageV, 'V'),
      rated_voltage: given.voltage,
    });
    if (share.value > 0.1 && share.value < 0.9) return { share, origin: 'metered' };
  }
  const leakage = leaf(scope, {
    value: 0.17,
    unit: '1',
    label: `${given.prefix}leakage reactance, per unit`,
    origin: 'assumed',
    source: 'common practice: locked-rotor current of about six times rated current',
    doubts: [
      {
        id: `${given.prefix}typical:leakage`,
        label: `${given.prefix}leakage and share of magnetising current`,
        u: known ? 0.05 : 0.07,
      },
    ],
  });
  const share = apply(scope, N.magnetising_share, { power_factor: powerFactor, leakage });
  if (share.value >= 0.15 && share.value <= 0.8) return { share, origin: 'derived' };
  const bounded = leaf(scope, {
    value: share.value < 0.15 || Number.isNaN(share.value) ? 0.22 : 0.7,
    unit: '1',
    label: `${given.prefix}magnetising share`,
    origin: 'assumed',
    source: 'common practice: the power factor gives no believable share',
    doubts: [{ id: `${given.prefix}typical:leakage`, label: `${given.prefix}leakage and share of magnetising current`, u: 0.08 }],
  });
  return { share: bounded, origin: 'assumed' };
}
