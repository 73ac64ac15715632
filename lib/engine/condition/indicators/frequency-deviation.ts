import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import { type Quantity, withValue } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { INSTRUMENT, read, words } from './shared';

/** Beyond this share it is another mains or a drive, which the load step reports. */
const OTHER_MAINS_PCT = 15;

/**
 * Supply frequency against the rated one, per cent, with its sign; the band goes by its size. Limit ± 5 % (NEMA MG 1 12.44, read in a second
 * text). Where the voltage was read, both sizes together must stay within 10 % (same clause): the nearer of the two limits counts.
 */
export const frequencyDeviation: Indicator = {
  id: 'frequency-deviation',
  title: 'Frequency deviation',
  needs: ['frequency_hz'],
  limits: ['C6', 'C7'],
  present: ({ reading }) => reading.frequencyHz !== undefined && reading.frequencyHz > 0,
  judge(scope, { reading, motor, machine }) {
    if (reading.frequencyHz === undefined) return { value: undefined, findings: [] };
    const rated = machine.plate.ratedFrequency;
    const measured = read(scope, {
      value: reading.frequencyHz,
      unit: 'Hz',
      label: 'supply frequency',
      row: reading.row,
      error: INSTRUMENT.frequencyHz,
      id: 'frequency-deviation',
    });
    const value = apply(scope, C.relative_frequency, { value: measured, rated });
    const off = Math.abs(value.value);
    if (off > OTHER_MAINS_PCT) return { value: undefined, findings: [] };
    const alone = limitOf(scope, 'C6');
    const together = limitOf(scope, 'C7');
    const volts = reading.voltageV === undefined ? 0 : Math.abs(reading.voltageV / motor.plate.ratedVoltageV - 1) * 100;
    const left = Math.max(0, together.value - volts);
    const limit = left < alone.value ? { ...together, value: left } : alone;
    const base = {
      value,
      limit: `within ± ${words(limit.value)} % of rated${limit.id === 'C7' ? `, what the voltage leaves of ${words(together.value)} % together` : ''}`,
      source: limit.source,
      status: limit.status,
    };
    if (motor.plate.driveFed === true || reading.readingsAt === 'drive-input' || reading.readingsAt === 'drive-output')
      return judgement(base, { findings: [CONDITION.make('supply-behind-drive', { reading: 'frequency' })] });
    const size: Quantity<'%'> = withValue(value, off);
    const judged = bandBelow(size, limit, 'frequency deviation');
    return judgement(base, judged);
  },
};
