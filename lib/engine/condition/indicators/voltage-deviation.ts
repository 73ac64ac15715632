import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import { type Quantity, withValue } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { read, share, words } from './shared';

/** A voltage so far off is a plate or reading of another connection, which the load step reports. */
const OTHER_CONNECTION_PCT = 20;

/**
 * Mean terminal voltage against the rated one, in per cent; the sign is kept in the value, the band goes by its size.
 * A drive sets the voltage with the speed, so behind one there is no verdict.
 * Limit: ± 10 % (US DOE Motor Systems Tip Sheet 9; NEMA MG 1 12.44).
 */
export const voltageDeviation: Indicator = {
  id: 'voltage-deviation',
  title: 'Voltage deviation',
  needs: ['voltage_v'],
  limits: ['C5'],
  present: ({ reading }) => reading.voltageV !== undefined && reading.voltageV > 0,
  judge(scope, { reading, machine, motor }) {
    if (reading.voltageV === undefined) return { value: undefined, findings: [] };
    const measured = read(scope, {
      value: reading.voltageV,
      unit: 'V',
      label: 'line-to-line voltage',
      row: reading.row,
      error: share(reading.voltageV, reading.voltageAccuracyPct ?? scope.settings.accuracy.voltagePct),
      id: 'deviation-voltage',
    });
    const value = apply(scope, C.relative_deviation, { value: measured, rated: machine.plate.ratedVoltage });
    if (Math.abs(value.value) > OTHER_CONNECTION_PCT) return { value: undefined, findings: [] };
    const limit = limitOf(scope, 'C5');
    const base = { value, limit: `within ± ${words(limit.value)} % of rated`, source: limit.source, status: limit.status };
    if (motor.plate.driveFed === true || reading.readingsAt === 'drive-input' || reading.readingsAt === 'drive-output')
      return judgement(base, { findings: [CONDITION.make('supply-behind-drive', { reading: 'voltage' })] });
    const size: Quantity<'%'> = withValue(value, Math.abs(value.value));
    const judged = bandBelow(size, limit, 'voltage deviation');
    return judgement(base, judged);
  },
};
