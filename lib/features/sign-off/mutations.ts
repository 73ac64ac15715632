import { gzipSync } from 'node:zlib';
import type { MotorResult } from '@/lib/engine';
import { recordChange } from '@/lib/platform/audit';
import type { Database } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { canonicalJson, sha256 } from '@/lib/platform/hash';
import { newId } from '@/lib/platform/id';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readProgress, readResults, readRunMaking } from '../evaluation/data';
import { contextHash, inputHash, inputsHash } from '../evaluation/input-hash';
import { readStudyMotors } from '../fleet/data';
import { writeFleetCsv } from '../fleet/write-csv';
import { readInputsHash, readSolution } from '../plan/data';
import { studyInForce } from '../study/context';
import { settingsToJson } from '../study/settings';
import { type Content, type EventKind, eventHash, type SignEvent } from './content';
import { readSettingsChanges, readVersion } from './data';

const NO_STUDY = refuse('no-study', 'There is no such study any more.', 'Go back to the list of studies.');
const NOT_EVALUATED = refuse(
  'not-evaluated',
  'The fleet is not evaluated as it stands now.',
  'Wait until the evaluation is done, then freeze the programme.',
);
const NOT_PLANNED = refuse(
  'not-planned',
  'The plan is not worked out as the study stands now.',
  'Work it out on the plan screen, then freeze the programme.',
);

/**
 * Freezes the plan of the study as it stands: inputs, settings, wishes, engine version, table editions, results and the items by year, under one
 * hash. Refused unless the results in force were computed from exactly these inputs, and the plan from exactly these results and wishes. The line in the history goes into the same transaction.
 */
export async function freezeProgramme(
  db: Database,
  wish: { readonly studyId: string; readonly who: string },
  at = new Date(),
): Promise<Result<{ readonly number: number; readonly hash: string }>> {
  const { studyId, who } = wish;
  return db.write(async (tx) => {
    const inForce = await studyInForce(tx, studyId);
    if (inForce === undefined) return NO_STUDY;
    const { study, context, instruments } = inForce;
    const { shown, active } = await readProgress(tx, studyId);
    const run = shown && (await tx.evaluationRun.findUnique({ where: { id: shown.id }, select: { id: true, inputsHash: true } }));
    const making = run && (await readRunMaking(tx, run.id));
    if (active !== undefined || !run || !making) return NOT_EVALUATED;
    const stored = await readStudyMotors(tx, studyId, { withHistory: true });
    const motors = await fleetAsEvaluated(tx, inForce, stored);
    const hashOfContext = contextHash(context);
    if (inputsHash(motors.map(({ motor }) => inputHash(hashOfContext, motor))) !== run.inputsHash) return NOT_EVALUATED;
    const solution = await readSolution(tx, studyId);
    if (!solution || solution.hash !== (await readInputsHash(tx, studyId))?.hash || 'problems' in solution.outcome)
      return NOT_PLANNED;
    const results: MotorResult[] = [];
    for await (const { result } of readResults(tx, run.id)) results.push(result);
    const last = await tx.planVersion.findFirst({ where: { studyId }, select: { number: true }, orderBy: { number: 'desc' } });
    const number = (last?.number ?? 0) + 1;
    const content: Record<keyof Content, unknown> = {
      study: { name: study.name, demo: study.demo },
      version: number,
      drawn: { by: who, at: at.toISOString() },
      engine: making.engineVersion,
      tables: making.tableEditions,
      settings: settingsToJson(study.settings, study.pricesFile),
      settings_changes: await readSettingsChanges(tx, studyId),
      prices: context.prices,
      instruments,
      fleet: writeFleetCsv(stored),
      motors: motors.map(({ motor }) => motor),
      results,
      programme: solution.outcome,
    };
    const text = canonicalJson(content);
    const hash = sha256(text);
    const bytes = gzipSync(text);
    const id = newId(at.getTime());
    await tx.planVersion.create({
      data: { id, studyId, number, contentHash: hash, bytesHash: sha256(bytes), content: bytes, drawnBy: who, createdAt: at },
    });
    await recordChange(
      tx,
      { studyId, who, subject: 'programme', subjectId: id, subjectLabel: `version ${number}`, what: 'frozen', to: hash },
      at,
    );
    return ok({ number, hash });
  });
}

export interface EventWish {
  readonly studyId: string;
  readonly number: number;
  readonly kind: EventKind;
  readonly who: string;
  readonly comment: string;
  /** The hash that the signer saw: another content is never signed by mistake. */
  readonly hash: string;
}

/** Adds what somebody says of a version, with its line in the history, in one transaction; nothing earlier changes. */
export async function sayOfVersion(db: Database, wish: EventWish, at = new Date()): Promise<Result<SignEvent>> {
  return db.write(async (tx) => {
    const version = await readVersion(tx, wish.studyId, wish.number);
    if (version === undefined) return refuse('no-version', 'The study has no such version.', 'Go back to the review.');
    if (!version.sound) return refuse('damaged', version.damage, 'Restore a backup, or freeze a new version.');
    if (version.hash !== wish.hash) return refuse('other-version', 'The page shows another content.', 'Load the page again.');
    const refused = refusedWord(version.standing, version.events, wish);
    if (refused) return refused;
    const { kind, who, comment } = wish;
    const said = { kind, who, verified: false as const, comment, at: at.toISOString(), hash: '' };
    const event = { ...said, hash: eventHash(version.hash, version.events.at(-1)?.hash, said) };
    await tx.planEvent.create({
      data: {
        id: newId(at.getTime()),
        studyId: wish.studyId,
        versionId: version.id,
        position: version.events.length + 1,
        ...event,
        at,
      },
    });
    await recordChange(
      tx,
      {
        studyId: wish.studyId,
        who,
        subject: 'programme',
        subjectId: version.id,
        subjectLabel: `version ${wish.number}`,
        what: kind,
        to: version.hash,
        ...(comment !== '' && { why: comment }),
      },
      at,
    );
    return ok(event);
  });
}

function refusedWord(standing: string, events: readonly SignEvent[], { kind, who, comment }: EventWish) {
  if (standing === 'returned' || standing === 'rejected') {
    return refuse('closed', `The version was ${standing} already.`, 'Freeze a new version once the study is mended.');
  }
  if (kind !== 'signed' && comment === '') return refuse('no-comment', 'The comment is missing.', 'Write what has to change.');
  if (kind === 'returned' && standing === 'signed') {
    return refuse('signed', 'The version is signed.', 'Reject it: the signature stays, and the rejection stands after it.');
  }
  if (kind === 'rejected' && standing !== 'signed')
    return refuse('not-signed', 'The version is not signed.', 'Return it with a comment.');
  if (kind === 'signed' && events.some((event) => event.kind === 'signed' && event.who === who)) {
    return refuse('twice', `${who} has signed this version already.`, 'Nothing more is needed.');
  }
  return undefined;
}
