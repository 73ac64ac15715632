import { z } from 'zod';
import { evaluateMotor, type Settings, shelfMotor, shelvesOf } from '@/lib/engine';
import type { PrismaClient } from '@/lib/platform/db';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readStudyMotors } from '../fleet/data';
import { readNumber } from '../fleet/number';
import { studyInForce } from '../study/context';
import { shelfGiven, USUAL_SHELF } from './spare-of';
import { adviceOf, type SpareAdvice } from './spares';

/** What no sheet holds, as it may be asked for: up to which number, and in which words. */
const ASKED = {
  weeks: { most: 200, words: 'weeks' },
  keeping: { most: 50, words: '% a year' },
} as const;
type Asked = keyof typeof ASKED;

const text = z.string().trim().catch('');
const asked = z.object({ weeks: text, keeping: text }).catch({ weeks: '', keeping: '' });

/** What was asked for; what was not, or cannot be, is as usual, and is said. */
function givenOf(wanted: unknown): Pick<SparesPage, 'given' | 'typed' | 'refused'> {
  const typed = asked.parse(wanted);
  const given: Record<Asked, number> = { ...USUAL_SHELF };
  const refused: Partial<Record<Asked, string>> = {};
  for (const name of ['weeks', 'keeping'] as const) {
    if (typed[name] === '') continue;
    const { most, words } = ASKED[name];
    const read = readNumber(typed[name], { decimal: '.' });
    if (read.ok && read.value >= 0 && read.value <= most) given[name] = read.value;
    else {
      const why = read.ok ? `A number from 0 to ${most} is wanted.` : `${read.text} ${read.remedy}`;
      refused[name] = `${why} Here are the figures for the usual ${given[name]} ${words}.`;
    }
  }
  return { given, typed, refused };
}

/** Which new motors are worth keeping on the shelf. */
export interface SparesPage {
  readonly settings: Settings;
  readonly invented: boolean;
  readonly given: Readonly<Record<Asked, number>>;
  /** As they were typed; empty where nothing was. */
  readonly typed: Readonly<Record<Asked, string>>;
  /** Why a typed one could not be taken, and what was taken instead. */
  readonly refused: Partial<Readonly<Record<Asked, string>>>;
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
  const { given, typed, refused } = givenOf(wanted);
  const stored = await fleetAsEvaluated(db, force, await readStudyMotors(db, studyId, { withHistory: true }));
  const motors = stored.flatMap(({ motor }) => shelfMotor(evaluateMotor(motor, context)) ?? []);
  const shelves = shelvesOf(motors, { settings, prices }, shelfGiven(given));
  const served = shelves.reduce((sum, { tags }) => sum + tags.length, 0);
  const inService = stored.filter(({ motor }) => motor.plate.status !== 'spare' && motor.plate.status !== 'retired').length;
  return {
    settings,
    invented: prices.invented,
    given,
    typed,
    refused,
    shelves: shelves.map((shelf) => adviceOf(shelf, settings)),
    sites: new Set(stored.map(({ motor }) => motor.site)).size,
    notServed: inService - served,
    motorIds: new Map(stored.map(({ id, motor }) => [`${motor.site}\n${motor.tag}`, id])),
  };
}
