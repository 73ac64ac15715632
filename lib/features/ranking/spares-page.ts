import { z } from 'zod';
import { evaluateMotor, type Settings, shelfMotor, shelvesOf } from '@/lib/engine';
import type { PrismaClient } from '@/lib/platform/db';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readStudyMotors } from '../fleet/data';
import { studyInForce } from '../study/context';
import { shelfGiven, USUAL_SHELF } from './spare-of';
import { adviceOf, type SpareAdvice } from './spares';

/** What no sheet holds; what is not asked for, or cannot be, is as usual. */
const asked = z.object({
  weeks: z.coerce.number().min(0).max(200).catch(USUAL_SHELF.weeks),
  keeping: z.coerce.number().min(0).max(50).catch(USUAL_SHELF.keeping),
});

/** Which new motors are worth keeping on the shelf. */
export interface SparesPage {
  readonly settings: Settings;
  readonly invented: boolean;
  readonly given: { readonly weeks: number; readonly keeping: number };
  readonly shelves: readonly SpareAdvice[];
  readonly sites: number;
  /** Motors of the study for which no shelf could be reckoned: their load is assumed, a price is missing, or nothing comes at failure. */
  readonly notServed: number;
  readonly motorIds: ReadonlyMap<string, string>;
}

/** The spare strategy of a study; `undefined` when there is no such study. The fleet is evaluated anew. */
export async function readSpares(db: PrismaClient, studyId: string, wanted: unknown): Promise<SparesPage | undefined> {
  const force = await studyInForce(db, studyId);
  if (!force) return undefined;
  const { context } = force;
  const { settings, prices } = context;
  const given = asked.parse(wanted);
  const stored = await fleetAsEvaluated(db, force, await readStudyMotors(db, studyId, { withHistory: true }));
  const motors = stored.flatMap(({ motor }) => shelfMotor(evaluateMotor(motor, context)) ?? []);
  const shelves = shelvesOf(motors, { settings, prices }, shelfGiven(given));
  const served = shelves.reduce((sum, { tags }) => sum + tags.length, 0);
  const inService = stored.filter(({ motor }) => motor.plate.status !== 'spare' && motor.plate.status !== 'retired').length;
  return {
    settings,
    invented: prices.invented,
    given,
    shelves: shelves.map((shelf) => adviceOf(shelf, settings)),
    sites: new Set(stored.map(({ motor }) => motor.site)).size,
    notServed: inService - served,
    motorIds: new Map(stored.map(({ id, motor }) => [`${motor.site}\n${motor.tag}`, id])),
  };
}
