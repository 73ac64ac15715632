import { Readable } from 'node:stream';
import { ENGINE_VERSION } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readStudyMotors } from '../fleet/data';
import { studyInForce } from '../study/context';
import { writeWorkbook } from './write-workbook';

/** A workbook as a download. */
export interface WorkbookDownload {
  readonly fileName: string;
  readonly body: ReadableStream;
}

/**
 * The workbook of a study's options with live formulas, or that of one motor.
 * @returns `undefined` when there is no such study or motor.
 */
export async function openWorkbook(studyId: string, motorId: string | undefined): Promise<WorkbookDownload | undefined> {
  const db = database().read;
  const force = await studyInForce(db, studyId);
  if (!force) return undefined;
  const ids = motorId === undefined ? {} : { ids: [motorId] };
  const stored = await readStudyMotors(db, studyId, { withHistory: true, ...ids });
  const one = motorId === undefined ? undefined : stored[0];
  if (motorId !== undefined && one === undefined) return undefined;
  const motors = (await fleetAsEvaluated(db, force, stored)).map(({ motor }) => motor);
  const { study, context } = force;
  const stream = writeWorkbook(motors, context, [
    ['Study', `${study.name}${study.demo ? ', invented figures' : ''}`],
    ['Motors', one ? `${one.motor.site} ${one.motor.tag}`.trim() : `all ${motors.length} of the study`],
    ['As of', context.settings.asOf],
    ['Engine', ENGINE_VERSION],
    ['Prices', context.prices.invented ? 'the shipped list, which is invented' : 'the study’s own list'],
  ]);
  const name = [study.name, one?.motor.tag, 'options'].filter(Boolean).join('-');
  return {
    fileName: `${name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '')}.xlsx`,
    // The web's stream type of Node and that of the browser's library are declared apart.
    body: Readable.toWeb(stream) as ReadableStream,
  };
}
