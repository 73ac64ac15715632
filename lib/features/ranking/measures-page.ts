import { evaluateMotor, type Measures, measuresOf, type Settings } from '@/lib/engine';
import type { PrismaClient } from '@/lib/platform/db';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readStudyMotors } from '../fleet/data';
import { studyInForce } from '../study/context';

/** What is worth looking into at one motor, beside another motor. */
export interface MotorMeasures {
  readonly id: string;
  readonly site: string;
  readonly area: string;
  readonly tag: string;
  readonly found: Measures;
  /** True where the prices that the money rests on are those of a study without a tariff of the site. */
  readonly flatPrices: boolean;
}

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
  const motors = stored.flatMap(({ id, motor }): MotorMeasures[] => {
    const found = measuresOf(evaluateMotor(motor, context));
    if (found.measures.length === 0) return [];
    const flatPrices = context.settings.tariffs[motor.site] === undefined;
    return [{ id, site: motor.site, area: motor.area ?? '', tag: motor.tag, found, flatPrices }];
  });
  return {
    settings: context.settings,
    motors: motors.sort((a, b) => mostMoney(b) - mostMoney(a) || mostEnergy(b) - mostEnergy(a)),
    sites: new Set(stored.map(({ motor }) => motor.site)).size,
    inService: stored.filter(({ motor }) => motor.plate.status === 'running').length,
  };
}

function mostMoney({ found }: MotorMeasures): number {
  return (
    (found.moneySavedTogether?.likely ?? 0) + (found.measures.find(({ id }) => id === 'power-factor')?.moneySaved?.likely ?? 0)
  );
}

function mostEnergy({ found }: MotorMeasures): number {
  return found.energySavedTogether?.likely ?? 0;
}
