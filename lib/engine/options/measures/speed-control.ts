import type { Evaluation } from '../../evaluate';
import { driveEfficiency } from '../../load/drive';
import type { DrivenMachine } from '../../motor';
import type { Found } from './measure';
import type { MeasureStep } from './steps';

const THROTTLED: ReadonlySet<DrivenMachine> = new Set(['pump', 'fan', 'blower']);
/** Power of a throttled machine at no flow over that at full flow (common practice). */
const AT_NO_FLOW = { low: 0.4, likely: 0.5, high: 0.6 } as const;
/** Static head over total head at full flow: assumed, since it is not on the sheet. */
const STATIC_HEAD = { pump: { low: 0.6, likely: 0.3, high: 0 }, fan: { low: 0.2, likely: 0.05, high: 0 } } as const;
/** Least speed that is run at. */
const LEAST_SPEED = 0.3;

/**
 * Shaft power at a share of full flow by speed, over that at full flow: flow times head, of which the static part stays and the rest goes with
 * the square of the flow. Source: affinity laws of fans and pumps; system curve with static head.
 */
export function powerBySpeed(flow: number, staticHead: number): number {
  return flow * (staticHead + (1 - staticHead) * flow * flow);
}

/** A drive in place of the throttle or damper of a pump or fan. */
export function speedControl({ motor, machine, scope }: Evaluation, steps: readonly MeasureStep[]): Found | undefined {
  const { drivenMachine: driven, flowControl, peakLoadKw = 0 } = motor.plate;
  if (driven === undefined || !THROTTLED.has(driven) || (flowControl !== 'throttle' && flowControl !== 'damper'))
    return undefined;
  const rated = machine.plate.ratedPower.value;
  const full = Math.max(peakLoadKw, ...steps.map((step) => step.shaftKw));
  return {
    id: 'speed-control',
    text: `Vary the speed of the ${driven} with a drive in place of the ${flowControl === 'damper' ? 'damper' : 'throttle valve'}.`,
    assumed: `Screening by the affinity laws: full flow at ${full.toFixed(1)} kW, power at no flow 40 to 60 % of that (common practice), static head ${
      driven === 'pump' ? '0 to 60 %' : '0 to 20 %'
    } of the total (assumed), drive efficiency by a table of typical values.${flowControl === 'damper' ? ' The damper is taken to be at the outlet: vanes at the inlet throttle with less loss, and less is saved there.' : ''} Measure flow and head before buying.`,
    item: 'drive',
    change: (list, which) =>
      list.map((step) => {
        const flow = Math.min(1, Math.max(LEAST_SPEED, (step.shaftKw / full - AT_NO_FLOW[which]) / (1 - AT_NO_FLOW[which])));
        const shaftKw = Math.min(step.shaftKw, full * powerBySpeed(flow, STATIC_HEAD[driven === 'pump' ? 'pump' : 'fan'][which]));
        return { ...step, shaftKw, driveEfficiency: driveEfficiency(scope, rated, shaftKw / rated).value, negativeSequence: 0 };
      }),
  };
}
