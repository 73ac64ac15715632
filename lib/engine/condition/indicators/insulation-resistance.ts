import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Plate, Reading } from '../../motor';
import type { Finding } from '../../quantity/finding';
import { exact, type Quantity } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandAbove, inForce, limitOf, limitRow } from '../limit';
import type { Limit } from '../limit-model';
import { INSTRUMENT, read, share, words } from './shared';
import { insulationSystemOf, windingOf, yearWound } from './winding';

/** Insulation resistance `measured` in MΩ brought to 40 °C, or the reason why it cannot be. */
export function insulationAt40(
  scope: MotorScope,
  plate: Plate,
  reading: Reading,
  measured: number,
): { resistance: Quantity<'MΩ'> } | { finding: Finding } {
  const temperature = reading.insulationTempC;
  if (temperature === undefined) return { finding: CONDITION.make('insulation-without-temperature', {}) };
  const system = insulationSystemOf(plate);
  if (system === undefined) return { finding: CONDITION.make('insulation-system-unknown', { resistance: measured }) };
  if (system === 'thermosetting' && (temperature < 10 || temperature > 85))
    return { finding: CONDITION.make('insulation-outside-range', { temperature }) };
  const resistance = asRead(scope, reading, measured);
  const at = read(scope, {
    value: temperature,
    unit: 'K',
    label: 'winding temperature at the insulation test, °C',
    row: reading.row,
    error: INSTRUMENT.temperatureK,
    id: 'insulation-temperature',
  });
  const factor =
    system === 'thermoplastic'
      ? apply(scope, C.insulation_factor_thermoplastic, { temperature: at, reference: exact(40, 'K'), halving: exact(10, 'K') })
      : apply(scope, C.insulation_factor_thermosetting, {
          temperature: at,
          reference: exact(40, 'K'),
          zero: exact(273, 'K'),
          coefficient: exact(temperature > 40 ? 4230 : 1245, 'K'),
        });
  return { resistance: apply(scope, C.insulation_at_reference, { resistance, factor }) };
}

/** The resistance as the tester showed it. */
function asRead(scope: MotorScope, reading: Reading, measured: number): Quantity<'MΩ'> {
  return read(scope, {
    value: measured,
    unit: 'MΩ',
    label: 'insulation resistance after one minute',
    row: reading.row,
    error: share(measured, INSTRUMENT.insulationPct),
    id: 'insulation',
  });
}

/**
 * The minimum for this winding (IEEE 43-2013 12.3): 5 MΩ random-wound, and form-wound below 1 kV; above that kV + 1 MΩ for windings up to
 * about 1970 and 100 MΩ since. Where the year is not known, a thermoplastic winding counts as old.
 */
function minimumFor(scope: MotorScope, plate: Plate): Limit {
  if (windingOf(plate) === 'random' || plate.ratedVoltageV < 1000) return limitOf(scope, 'A3');
  const year = yearWound(plate);
  const old = year === undefined ? plate.insulationSystem === 'thermoplastic' : year <= 1970;
  if (!old) return limitOf(scope, 'A2');
  const row = limitRow(scope, 'A1');
  const value = C.old_insulation_minimum.f(plate.ratedVoltageV, 1, 1000, 1);
  return inForce(scope, { id: row.id, value, unit: row.unit, source: row.source, status: row.status });
}

/**
 * One-minute insulation resistance, brought to 40 °C by the kind of insulation. Never a verdict without the correction.
 * Source: IEEE 43-2013 clauses 6.3 and 12.3; rows from memory may be shown, not used to claim compliance.
 */
export const insulationResistance: Indicator = {
  id: 'insulation-resistance',
  title: 'Insulation resistance at 40 °C',
  needs: ['insulation_resistance_mohm', 'insulation_temp_c'],
  limits: ['A1', 'A2', 'A3'],
  present: ({ reading }) => reading.insulationResistanceMohm !== undefined && reading.insulationResistanceMohm >= 0,
  judge(scope, { reading, motor }) {
    const measured = reading.insulationResistanceMohm;
    if (measured === undefined) return { value: undefined, findings: [] };
    const limit = minimumFor(scope, motor.plate);
    const corrected = insulationAt40(scope, motor.plate, reading, measured);
    const held = {
      value: 'finding' in corrected ? asRead(scope, reading, measured) : corrected.resistance,
      limit: `at least ${words(limit.value)} MΩ at 40 °C`,
      source: limit.source,
      status: limit.status,
    };
    if ('finding' in corrected) return judgement(held, { findings: [corrected.finding] });
    const judged = bandAbove(corrected.resistance, limit, 'insulation resistance');
    const beyond = judged.band === 'beyond';
    if (beyond)
      judged.findings.push(
        CONDITION.make('insulation-below-minimum', { resistance: corrected.resistance.value, minimum: limit.value }),
      );
    return judgement(held, judged, { callsFor: beyond ? 'rewind' : undefined, safety: beyond });
  },
};
