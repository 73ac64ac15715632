import type { MotorScope } from '../../context';
import { apply, leaf } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Motor } from '../../motor';
import type { Quantity } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import { type Indicator, judgement } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { isBelted } from '../lines/mechanical';
import { INSTRUMENT, read, words } from './shared';

/** A stated ratio is known to so many per cent, one from sheave diameters to so many (common practice). */
const RATIO_PCT = { stated: 0.2, sheaves: 0.7 } as const;

/**
 * Slip of the belt: what the driven shaft lacks against the motor's speed over the ratio, in per cent.
 * Limits: 3 % for V-belts, notched or not, 0.5 % for toothed ones (common practice). A slip below zero by more than its doubt is a wrong ratio or
 * speed, and has no verdict.
 */
export const beltSlip: Indicator = {
  id: 'belt-slip',
  title: 'Belt slip',
  needs: ['driven_speed_rpm', 'speed_ratio', 'shaft_speed_rpm', 'coupling'],
  limits: ['belt-slip', 'belt-slip-synchronous'],
  present: ({ turning }, plate) => isBelted(plate) && plate.drivenSpeedRpm !== undefined && turning?.metered.speed !== undefined,
  judge(scope, { motor, turning, reading }) {
    const speed = turning?.metered.speed;
    const driven = motor.plate.drivenSpeedRpm;
    const ratio = ratioOf(scope, motor);
    if (!speed || driven === undefined || !ratio) return { value: undefined, findings: [] };
    const driven_speed = read(scope, {
      value: driven,
      unit: 'r/min',
      label: 'speed of the driven shaft',
      row: reading.row,
      error: INSTRUMENT.speedRpm,
      id: 'driven-speed',
    });
    const value = apply(scope, C.belt_slip, { driven_speed, ratio, speed });
    const limit = limitOf(scope, motor.plate.coupling === 'synchronous-belt' ? 'belt-slip-synchronous' : 'belt-slip');
    const base = { value, limit: `at most ${words(limit.value)} %`, source: limit.source, status: limit.status };
    if (value.value < -limit.value)
      return judgement(base, { findings: [CONDITION.make('belt-slip-impossible', { slip: value.value })] });
    const judged = bandBelow(value, limit, 'belt slip');
    return judgement(base, judged);
  },
};

function ratioOf(scope: MotorScope, { plate, lineGeometry }: Motor): Quantity<'1'> | undefined {
  const own = lineGeometry?.motorSheaveMm;
  const other = lineGeometry?.drivenSheaveMm;
  const stated = plate.speedRatio;
  const value = stated ?? (own !== undefined && other !== undefined && own > 0 ? other / own : undefined);
  if (value === undefined || value <= 0) return undefined;
  const pct = stated === undefined ? RATIO_PCT.sheaves : RATIO_PCT.stated;
  return leaf(scope, {
    value,
    unit: '1',
    label: 'motor speed over driven speed without slip',
    origin: 'stamped',
    source: stated === undefined ? 'sheave diameters' : 'fleet sheet',
    doubts: [{ id: 'belt-ratio', label: 'speed ratio of the belt drive', u: (value * pct) / 100 / Math.sqrt(3) }],
  });
}
