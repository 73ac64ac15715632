import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Plate, Reading } from '../../motor';
import type { Finding } from '../../quantity/finding';
import { exact, type Quantity } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { bandAbove, type Limit, limitOf } from '../limit';
import { read, words } from './shared';
import { insulationSystemOf, windingOf, yearWound } from './winding';

/** Insulation resistance brought to 40 °C, or the reason why it cannot be. */
export function insulationAt40(
  scope: MotorScope,
  plate: Plate,
  reading: Reading,
): { resistance: Quantity<'MΩ'> } | { finding: Finding } {
  const measured = reading.insulationResistanceMohm ?? 0;
  const temperature = reading.insulationTempC;
  if (temperature === undefined) return { finding: CONDITION.make('insulation-without-temperature', {}) };
  const system = insulationSystemOf(plate);
  if (system === undefined) return { finding: CONDITION.make('insulation-system-unknown', { resistance: measured }) };
  if (temperature < 10 || temperature > 85) return { finding: CONDITION.make('insulation-outside-range', { temperature }) };
  const resistance = read(scope, {
    value: measured,
    unit: 'MΩ',
    label: 'insulation resistance after one minute',
    row: reading.row,
    errorPct: 5,
    id: 'insulation',
  });
  const at = read(scope, {
    value: temperature,
    unit: 'K',
    label: 'winding temperature at the insulation test, °C',
    row: reading.row,
    errorPct: 8,
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

/** The minimum for this winding: old windings kV + 1, form-wound 100, random-wound 5 MΩ (IEEE 43-2013 12.3). */
function minimumFor(scope: MotorScope, plate: Plate): Limit {
  const year = yearWound(plate);
  const old = plate.insulationSystem === 'thermoplastic' || (year !== undefined && year <= 1970);
  if (windingOf(plate) === 'random' && plate.ratedVoltageV < 1000) return limitOf(scope, 'A3');
  if (!old) return limitOf(scope, 'A2');
  const row = scope.tables.limits.rows.find((entry) => entry.id === 'A1');
  const own = scope.settings.limits.A1;
  return {
    id: 'A1',
    value: own?.value ?? C.old_insulation_minimum.f(plate.ratedVoltageV, 1, 1000, 1),
    unit: 'MΩ',
    source: own ? `set in the study: ${own.reason}` : (row?.source ?? ''),
    status: own ? 'practice' : (row?.status ?? 'memory'),
  };
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
  present: (reading) => reading.insulationResistanceMohm !== undefined && reading.insulationResistanceMohm >= 0,
  judge(scope, { reading, motor }) {
    const limit = minimumFor(scope, motor.plate);
    const base = { limit: `at least ${words(limit.value)} MΩ at 40 °C`, source: limit.source, status: limit.status };
    const corrected = insulationAt40(scope, motor.plate, reading);
    if ('finding' in corrected) {
      const asRead = read(scope, {
        value: reading.insulationResistanceMohm ?? 0,
        unit: 'MΩ',
        label: 'insulation resistance as read',
        row: reading.row,
        errorPct: 5,
        id: 'insulation',
      });
      return { ...base, value: asRead, findings: [corrected.finding] };
    }
    const judged = bandAbove(corrected.resistance, limit, 'insulation resistance');
    const beyond = judged.band === 'beyond';
    const findings = beyond
      ? [
          ...judged.findings,
          CONDITION.make('insulation-below-minimum', { resistance: corrected.resistance.value, minimum: limit.value }),
        ]
      : judged.findings;
    return {
      ...base,
      value: corrected.resistance,
      band: judged.band,
      findings,
      callsFor: beyond ? 'rewind' : undefined,
      safety: beyond,
    };
  },
};
