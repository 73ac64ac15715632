import type { PassThrough } from 'node:stream';
import { ENGINE_VERSION, type Motor } from '@/lib/engine';
import type { PrismaClient } from '@/lib/platform/db';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readStudyMotors } from '../fleet/data';
import { studyInForce } from '../study/context';
import { writeWorkbook } from './write-workbook';

/** A workbook that can be begun. */
interface StudyBook {
  readonly fileName: string;
  /** Evaluates the motors and writes; ends early, with a file that is none, once it is no longer wanted. */
  write(wanted?: () => boolean): PassThrough;
}

/** The workbook of a study's options, or that of one motor, read and not yet written; `undefined` when there is no such study or motor. */
export async function readStudyBook(
  db: PrismaClient,
  studyId: string,
  motorId: string | undefined,
): Promise<StudyBook | undefined> {
  const force = await studyInForce(db, studyId);
  if (!force) return undefined;
  const ids = motorId === undefined ? {} : { ids: [motorId] };
  const stored = await readStudyMotors(db, studyId, { withHistory: true, ...ids });
  const one = motorId === undefined ? undefined : stored[0];
  if (motorId !== undefined && one === undefined) return undefined;
  const motors = (await fleetAsEvaluated(db, force, stored)).map(({ motor }) => motor);
  const { study, context } = force;
  const name = [study.name, one?.motor.tag, 'options'].filter(Boolean).join('-');
  return {
    fileName: `${name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '')}.xlsx`,
    write: (wanted = () => true) =>
      writeWorkbook(whileWanted(motors, wanted), context, [
        ['Study', `${study.name}${study.demo ? ', invented figures' : ''}`],
        ['Motors', one ? `${one.motor.site} ${one.motor.tag}`.trim() : `all ${motors.length} of the study`],
        ['As of', context.settings.asOf],
        ['Engine', ENGINE_VERSION],
        ['Prices', context.prices.invented ? 'the shipped list, which is invented' : 'the study’s own list'],
      ]),
  };
}

function* whileWanted(motors: readonly Motor[], wanted: () => boolean): Generator<Motor> {
  for (const motor of motors) {
    if (!wanted()) return;
    yield motor;
  }
}
