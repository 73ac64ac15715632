import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as M from '../generated/machine';
import * as N from '../generated/nameplate';
import type { Plate } from '../motor';
import { PLATE } from '../nameplate/findings';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity } from '../quantity/quantity';
import type { LossShareRow, ReferenceTables } from '../tables';
import type { CompletedPlate, LossSet, Machine } from './model';
import { COPPER } from './operate';

/** Winding temperature at which efficiency is stated, by class of temperature rise: IEEE 112 specified temperatures (from memory). */
const SPECIFIED_TEMPERATURE = { A: 75, B: 95, F: 115, H: 130 } as const;

/**
 * Rated losses of a machine from its plate.
 *
 * The total follows from the efficiency, the rotor from the slip; stray-load, friction and windage are typical shares of the total; the
 * rest is split between stator and core by typical shares. A measured resistance, friction, or uncoupled test replaces what it measures.
 * At rated load and voltage the five add up to the stamped total exactly.
 * Source: IEEE 112-2017 clause 5; shares from the table of published ranges (middle of the range, a quarter of it as deviation).
 */
export function buildMachine(
  scope: MotorScope,
  plate: Plate,
  completed: CompletedPlate,
  prefix: string,
): { machine: Machine; findings: Finding[] } {
  const findings: Finding[] = [];
  const referenceTemperature = leaf(scope, {
    value: SPECIFIED_TEMPERATURE[plate.temperatureRiseClass ?? 'B'],
    unit: 'K',
    label: `${prefix}temperature of the rated losses, °C`,
    origin: plate.temperatureRiseClass ? 'stamped' : 'assumed',
    source: plate.temperatureRiseClass
      ? `class of temperature rise ${plate.temperatureRiseClass}`
      : 'rise of class B assumed (common practice)',
    doubts: [{ id: `${prefix}rise`, label: `${prefix}temperature rise`, u: 8 }],
  });
  const total = apply(scope, N.rated_total_loss, { rated_power: completed.ratedPower, efficiency: completed.efficiency });
  const stray = apply(scope, M.share_of_loss, { share: share(scope, 'stray', prefix), total_loss: total });
  const measuredFriction = plate.frictionWindageKw;
  const frictionWindage =
    measuredFriction !== undefined && measuredFriction < total.value * 0.5
      ? leaf(scope, {
          value: measuredFriction,
          unit: 'kW',
          label: 'friction and windage',
          origin: 'metered',
          source: 'test, as entered',
          doubts: [{ id: 'test:friction', label: 'test of friction and windage', u: 0.1 * measuredFriction }],
        })
      : apply(scope, M.share_of_loss, { share: share(scope, 'friction-windage', prefix), total_loss: total });
  const rotor = apply(scope, M.rotor_loss, {
    slip: completed.ratedSlip,
    shaft_power: completed.ratedPower,
    friction_windage: frictionWindage,
    stray,
  });
  const rest = apply(scope, M.rest_of_loss, { total_loss: total, rotor, friction_windage: frictionWindage, stray });
  const split = splitRest(scope, { plate, completed, rest, frictionWindage, referenceTemperature, prefix }, findings);
  const rated: LossSet = { ...split, rotor, frictionWindage, stray, total };
  return {
    findings,
    machine: {
      plate: completed,
      rated,
      referenceTemperature,
      ratedRise: leaf(scope, {
        value: referenceTemperature.value - 25,
        unit: 'K',
        label: `${prefix}rise at rated load`,
        origin: 'derived',
        source: 'temperature of the rated losses less 25 °C',
        doubts: [{ id: `${prefix}rise`, label: `${prefix}temperature rise`, u: 8 }],
      }),
    },
  };
}

interface RestInput {
  readonly plate: Plate;
  readonly completed: CompletedPlate;
  readonly rest: Quantity<'kW'>;
  readonly frictionWindage: Quantity<'kW'>;
  readonly referenceTemperature: Quantity<'K'>;
  readonly prefix: string;
}

/** Stator and core loss out of what the others leave: by uncoupled test, by resistance, else by typical shares. */
function splitRest(scope: MotorScope, given: RestInput, findings: Finding[]): Pick<LossSet, 'stator' | 'core'> {
  const { plate, completed, rest } = given;
  const resistance = hotResistance(scope, plate, given.referenceTemperature);
  if (resistance) {
    const stator = apply(scope, M.stator_loss_from_resistance, { resistance, current: completed.ratedCurrent });
    if (stator.value < rest.value * 0.95) return { stator, core: apply(scope, M.other_part, { sum: rest, part: stator }) };
    findings.push(PLATE.make('resistance-contradicts-plate', { stator_loss: stator.value, rest: rest.value }));
  }
  const statorShare = share(scope, 'stator', given.prefix);
  const coreShare = share(scope, 'core', given.prefix);
  const shares = apply(scope, M.sum_of_two, { first: statorShare, second: coreShare });
  const typicalStator = apply(scope, M.share_of_rest, { rest, share: statorShare, shares });
  if (plate.noLoadPowerKw !== undefined && plate.noLoadCurrentA !== undefined) {
    const ratio = (plate.noLoadCurrentA / completed.ratedCurrent.value) ** 2;
    const statorAtNoLoad = typicalStator.value * ratio;
    const noLoadLoss = plate.noLoadPowerKw - statorAtNoLoad;
    const core = noLoadLoss - given.frictionWindage.value;
    if (core > 0.05 * rest.value && core < 0.85 * rest.value) {
      const measured = leaf(scope, {
        value: core,
        unit: 'kW',
        label: 'core loss by the uncoupled test',
        origin: 'metered',
        source: 'no-load power less the stator loss at the no-load current, less friction and windage',
        doubts: [
          {
            id: 'test:no-load-power',
            label: 'reading of the no-load power',
            u: 0.03 * plate.noLoadPowerKw + 0.1 * given.frictionWindage.value,
          },
        ],
      });
      return { core: measured, stator: apply(scope, M.other_part, { sum: rest, part: measured }) };
    }
    findings.push(
      PLATE.make('no-load-contradicts-plate', { no_load_loss: noLoadLoss, rest: rest.value + given.frictionWindage.value }),
    );
  }
  return { stator: typicalStator, core: apply(scope, M.share_of_rest, { rest, share: coreShare, shares }) };
}

function hotResistance(scope: MotorScope, plate: Plate, wanted: Quantity<'K'>): Quantity<'Ω'> | undefined {
  if (plate.statorResistanceOhm === undefined) return undefined;
  const known = plate.statorResistanceTempC;
  const resistance = leaf(scope, {
    value: plate.statorResistanceOhm,
    unit: 'Ω',
    label: 'resistance between terminals',
    origin: 'metered',
    source: 'mean of the three pairs, as entered',
    doubts: [{ id: 'test:resistance', label: 'measurement of the resistance', u: 0.01 * plate.statorResistanceOhm }],
  });
  const measured_at = leaf(scope, {
    value: known ?? 25,
    unit: 'K',
    label: 'temperature of the resistance measurement, °C',
    origin: known === undefined ? 'assumed' : 'metered',
    source: known === undefined ? 'common practice: 25 °C where no temperature was noted' : 'as entered',
    doubts: [
      { id: 'test:resistance-temperature', label: 'temperature of the resistance measurement', u: known === undefined ? 8 : 2 },
    ],
  });
  return apply(scope, M.resistance_at_temperature, { resistance, measured_at, wanted_at: wanted, material: exact(COPPER, 'K') });
}

const shareRows = new WeakMap<
  ReferenceTables['lossShares'],
  Map<LossShareRow['component'], { middle: number; spread: number }>
>();

/** Typical share of one loss: middle of the published range, a quarter of its width as standard uncertainty. */
function share(scope: MotorScope, component: LossShareRow['component'], prefix: string): Quantity<'1'> {
  const table = scope.tables.lossShares;
  let rows = shareRows.get(table);
  if (!rows) {
    rows = new Map();
    for (const row of table.rows) {
      if (row.ratedPowerKw !== undefined || row.minPct === undefined || row.maxPct === undefined) continue;
      rows.set(row.component, { middle: (row.minPct + row.maxPct) / 200, spread: (row.maxPct - row.minPct) / 400 });
    }
    shareRows.set(table, rows);
  }
  const found = rows.get(component);
  if (!found) throw new Error(`the table of loss shares has no general range for ${component}`);
  return leaf(scope, {
    value: found.middle,
    unit: '1',
    label: `${prefix}typical share of ${component} loss`,
    origin: 'table',
    source: `${table.title}, general range`,
    doubts: [{ id: `${prefix}share:${component}`, label: `${prefix}share of ${component} loss`, u: found.spread }],
  });
}
