import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { bandAbove, limitOf } from '../limit';
import { insulationAt40 } from './insulation-resistance';
import { read, words } from './shared';
import { windingOf } from './winding';

/**
 * Polarization index: resistance after ten minutes over that after one.
 * Minimum 1.5 for class A, 2.0 for B, F, H (IEEE 43-2013 12.2); set aside above 5000 MΩ at 40 °C; on random-wound machines a note only.
 */
export const polarizationIndex: Indicator = {
  id: 'polarization-index',
  title: 'Polarization index',
  needs: ['polarization_index'],
  limits: ['A4', 'A5', 'A6'],
  present: (reading) => reading.polarizationIndex !== undefined && reading.polarizationIndex > 0,
  judge(scope, { reading, motor }) {
    const index = reading.polarizationIndex ?? 0;
    const value = read(scope, {
      value: index,
      unit: '1',
      label: 'polarization index',
      row: reading.row,
      errorPct: 5,
      id: 'polarization',
    });
    const thermalClass = motor.plate.insulationClass;
    const limit = limitOf(scope, thermalClass === 'A' ? 'A4' : 'A5');
    const base = { value, limit: `at least ${words(limit.value)}`, source: limit.source, status: limit.status };
    if (windingOf(motor.plate) === 'random')
      return { ...base, findings: [CONDITION.make('polarization-random-wound', { index })] };
    if (thermalClass === undefined) return { ...base, findings: [CONDITION.make('polarization-class-unknown', {})] };
    if (reading.insulationResistanceMohm !== undefined) {
      const corrected = insulationAt40(scope, motor.plate, reading);
      if ('resistance' in corrected && corrected.resistance.value > limitOf(scope, 'A6').value) {
        return { ...base, findings: [CONDITION.make('polarization-not-meaningful', { resistance: corrected.resistance.value })] };
      }
    }
    const judged = bandAbove(value, limit, 'polarization index');
    return { ...base, band: judged.band, findings: judged.findings };
  },
};
