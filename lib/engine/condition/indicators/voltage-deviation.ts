import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Quantity } from '../../quantity/quantity';
import type { Indicator } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { read, words } from './shared';

/**
 * Mean terminal voltage against the rated one, in per cent; the sign is kept in the value, the band goes by its size.
 * Limit: ± 10 % (US DOE Motor Systems Tip Sheet 9; NEMA MG 1 12.44).
 */
export const voltageDeviation: Indicator = {
  id: 'voltage-deviation',
  title: 'Voltage deviation',
  needs: ['voltage_v'],
  limits: ['C5'],
  present: (reading) =>
    reading.voltageV !== undefined &&
    reading.voltageV > 0 &&
    reading.readingsAt !== 'drive-input' &&
    reading.readingsAt !== 'drive-output',
  judge(scope, { reading, machine, motor }) {
    if (reading.voltageV === undefined || motor.plate.driveFed) return { value: undefined, findings: [] };
    const measured = read(scope, {
      value: reading.voltageV,
      unit: 'V',
      label: 'line-to-line voltage',
      row: reading.row,
      errorPct: reading.voltageAccuracyPct ?? scope.settings.accuracy.voltagePct,
      id: 'deviation-voltage',
    });
    const value = apply(scope, C.relative_deviation, { value: measured, rated: machine.plate.ratedVoltage });
    // A fifth off is a plate or reading of another connection, which the load step reports: no verdict on the supply.
    if (Math.abs(value.value) > 20) return { value: undefined, findings: [] };
    const limit = limitOf(scope, 'C5');
    const size: Quantity<'%'> = { ...value, value: Math.abs(value.value) };
    const judged = bandBelow(size, limit, 'voltage deviation');
    return {
      value,
      band: judged.band,
      findings: judged.findings,
      limit: `within ± ${words(limit.value)} % of rated`,
      source: limit.source,
      status: limit.status,
    };
  },
};
