import type { Evaluation } from '../../evaluate';
import type { DrivenMachine } from '../../motor';
import type { Found } from './measure';

/** Loads that jerk, on which toothed belts do not last (common practice). */
const JERKS: ReadonlySet<DrivenMachine> = new Set(['crusher', 'mill', 'compressor', 'hoist']);

/** A belt of less loss in place of a V-belt. */
export function betterBelt({ motor, scope }: Evaluation): Found | undefined {
  const { coupling, drivenMachine } = motor.plate;
  if (coupling !== 'v-belt') return undefined;
  const row = (belt: string, condition: string) =>
    scope.tables.belts.rows.find((entry) => entry.belt === belt && entry.condition.startsWith(condition))?.lowPct;
  const [fresh, kept, worn] = [row('V-belt', 'new'), row('V-belt', 'well kept'), row('V-belt', 'in service')];
  const [notched, synchronous] = [row('notched V-belt', 'about'), row('synchronous', 'wide')];
  if (fresh === undefined || kept === undefined || worn === undefined || notched === undefined || synchronous === undefined)
    return undefined;
  const old = { low: fresh, likely: kept, high: worn };
  const jerks = drivenMachine !== undefined && JERKS.has(drivenMachine);
  return {
    id: 'better-belt',
    text: jerks
      ? 'Change the V-belt for a notched one on the same sheaves.'
      : 'Change the V-belt for a synchronous belt; choose the sheaves for the driven speed of today, since it does not slip.',
    assumed: `V-belt in use between ${worn} and ${fresh} %, ${jerks ? `notched ${notched - fresh} points above` : `synchronous ${synchronous} %`} (table of belts, after US DOE Motor Systems Tip Sheet 5).`,
    item: jerks ? 'notched-belt' : 'synchronous-belt',
    change: (list, which) => {
      const better = jerks ? old[which] + notched - fresh : synchronous;
      return list.map((step) => ({ ...step, shaftKw: (step.shaftKw * old[which]) / better }));
    },
  };
}
