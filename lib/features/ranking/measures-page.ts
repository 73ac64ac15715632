import type { Settings } from '@/lib/engine';
import type { PrismaClient } from '@/lib/platform/db';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readStudyMotors } from '../fleet/data';
import { studyInForce } from '../study/context';
import { fleetMeasures, type MotorMeasures } from './fleet-measures';

/** Measures over a fleet, what saves most money first. */
export interface MeasuresPage {
  readonly settings: Settings;
  readonly motors: readonly MotorMeasures[];
  readonly sites: number;
  readonly inService: number;
}

/** Measures over the fleet of a study; `undefined` when there is no such study. The fleet is evaluated anew. */
export async function readMeasures(db: PrismaClient, studyId: string): Promise<MeasuresPage | undefined> {
  const force = await studyInForce(db, studyId);
  if (!force) return undefined;
  const { context } = force;
  const stored = await fleetAsEvaluated(db, force, await readStudyMotors(db, studyId, { withHistory: true }));
  return {
    settings: context.settings,
    motors: fleetMeasures(stored, context),
    sites: new Set(stored.map(({ motor }) => motor.site)).size,
    inService: stored.filter(({ motor }) => motor.plate.status === 'running').length,
  };
}
