import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import { exact } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { behindDrive, INSTRUMENT, read, words } from './shared';

/** Lowest order that a balanced supply without even and third harmonics holds. */
const LOWEST_ORDER = 5;

/**
 * Total harmonic distortion of the voltage, per cent of its fundamental. Limit by voltage: 8 % up to 1 kV, 5 % above (IEEE 519-2014 table 1, read
 * in a second text; made for the point of common coupling). It bounds the harmonic voltage factor of NEMA MG 1 30.1.2 at THD/√5, and says
 * no more of derating than that. A drive makes its own wave, so beside one there is no verdict.
 */
export const voltageDistortion: Indicator = {
  id: 'voltage-distortion',
  title: 'Voltage distortion',
  needs: ['thd_voltage_pct'],
  limits: ['C10', 'C11', 'C12'],
  present: ({ reading }) => reading.thdVoltagePct !== undefined && reading.thdVoltagePct >= 0,
  judge(scope, { reading, motor }) {
    if (reading.thdVoltagePct === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: reading.thdVoltagePct,
      unit: '%',
      label: 'total harmonic distortion of the voltage',
      row: reading.row,
      error: INSTRUMENT.distortionPoints,
      id: 'thd-voltage',
    });
    const limit = limitOf(scope, motor.plate.ratedVoltageV > 1000 ? 'C12' : 'C11');
    const base = { value, limit: `at most ${words(limit.value)} %`, source: limit.source, status: limit.status };
    if (behindDrive(motor.plate, reading) || reading.readingsAt === 'drive-output')
      return judgement(base, { findings: [CONDITION.make('supply-behind-drive', { reading: 'voltage distortion' })] });
    const judged = bandBelow(value, limit, 'voltage distortion');
    const bound = apply(scope, C.harmonic_factor_bound, { distortion: value, lowest: exact(LOWEST_ORDER, '1') });
    const said =
      judged.band === 'within'
        ? []
        : [
            CONDITION.make('distortion-bounds-hvf', {
              distortion: value.value,
              bound: bound.value,
              free: limitOf(scope, 'C10').value,
            }),
          ];
    return judgement(base, { band: judged.band, margin: judged.margin, findings: [...judged.findings, ...said] });
  },
};
