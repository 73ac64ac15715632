import type { MotorScope } from '../../context';
import type { Plate, Reading } from '../../motor';
import type { Finding } from '../../quantity/finding';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandAbove, exceeds, limitOf } from '../limit';
import { insulationAt40 } from './insulation-resistance';
import { INSTRUMENT, read, share, words } from './shared';
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
  present: ({ reading }) => reading.polarizationIndex !== undefined && reading.polarizationIndex > 0,
  judge(scope, { reading, motor }) {
    const index = reading.polarizationIndex;
    if (index === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: index,
      unit: '1',
      label: 'polarization index',
      row: reading.row,
      error: share(index, INSTRUMENT.insulationPct),
      id: 'polarization',
    });
    const limit = limitOf(scope, motor.plate.insulationClass === 'A' ? 'A4' : 'A5');
    const base = { value, limit: `at least ${words(limit.value)}`, source: limit.source, status: limit.status };
    const hindrance = whyNotJudged(scope, motor.plate, reading, index);
    if (hindrance) return judgement(base, { findings: [hindrance] });
    const judged = bandAbove(value, limit, 'polarization index');
    return judgement(base, judged);
  },
};

/** Why the index cannot be judged, if so. With a one-minute resistance beside it that cannot be brought to 40 °C its gate stays closed. */
function whyNotJudged(scope: MotorScope, plate: Plate, reading: Reading, index: number): Finding | undefined {
  if (windingOf(plate) === 'random') return CONDITION.make('polarization-random-wound', { index });
  if (plate.insulationClass === undefined) return CONDITION.make('polarization-class-unknown', {});
  const measured = reading.insulationResistanceMohm;
  if (measured === undefined) return undefined;
  const corrected = insulationAt40(scope, plate, reading, measured);
  if ('finding' in corrected) return corrected.finding;
  return exceeds(corrected.resistance.value, limitOf(scope, 'A6').value)
    ? CONDITION.make('polarization-not-meaningful', { resistance: corrected.resistance.value })
    : undefined;
}
