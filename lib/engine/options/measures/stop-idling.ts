import { fixed } from '../../quantity/words';
import type { Found } from './measure';
import type { MeasureStep } from './steps';

/** A step below this share of the rating counts as idling (common practice). */
const IDLE = 0.1;
/** Share of idle hours that can be switched off (common practice). */
const STOPPABLE = { low: 0.5, likely: 0.8, high: 1 } as const;

/** The hours at idle, where the duty has any beside others. Rating in kW. */
export function stopIdling(steps: readonly MeasureStep[], ratedKw: number): Found | undefined {
  const idle = (step: MeasureStep) => step.shaftKw < IDLE * ratedKw;
  const hours = steps.reduce((sum, step) => sum + (idle(step) ? step.hours : 0), 0);
  if (hours <= 0 || !steps.some((step) => !idle(step) && step.hours > 0)) return undefined;
  return {
    id: 'stop-idling',
    text: `Switch the motor off while it idles: its duty has ${fixed(hours, 0)} hours a year below ${100 * IDLE} % load.`,
    assumed: 'Half to all of the idle hours can be stopped (common practice); heed the permitted starts an hour.',
    change: (list, which) => list.map((step) => (idle(step) ? { ...step, hours: step.hours * (1 - STOPPABLE[which]) } : step)),
  };
}
