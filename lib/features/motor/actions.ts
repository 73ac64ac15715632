'use server';

import { revalidatePath } from 'next/cache';
import type { Motor } from '@/lib/engine';
import { type Database, database } from '@/lib/platform/db';
import type { Result } from '@/lib/platform/errors';
import { formatNumber } from '@/lib/platform/format';
import { asEvaluated } from '../evaluation/as-evaluated';
import { wakeRunner } from '../evaluation/runner';
import { readMotor } from '../fleet/data';
import { readNumber } from '../fleet/number';
import { studyInForce } from '../study/context';
import { typedOf } from '../study/meanwhile';
import { type Refusal, refusedFields } from '../study/schema';
import { rememberWho } from '../study/who';
import { figureChanges } from './compare';
import { readBatch } from './data';
import { addReading, changePlate, type EditDone, type EditKey, setExclusion } from './mutations';
import { type EditState, editForm, exclusionForm, inclusionForm, undoForm } from './schema';
import { PLATE_COLUMNS, plateCells, READING_COLUMNS, type TypedOutcome, typedPlate, typedReading } from './typed-motor';

type Columns = readonly { readonly name: string; readonly kind: { readonly type: string } }[];

function typedCells(form: FormData, columns: Columns): Map<string, string> {
  return new Map(columns.map(({ name }) => [name, String(form.get(name) ?? '').trim()]));
}

/** Numbers whose text was not their plainest form, with what was understood of them. */
function understoodOf(cells: ReadonlyMap<string, string>, columns: Columns): Record<string, string> {
  const understood: Record<string, string> = {};
  for (const { name, kind } of columns) {
    const text = cells.get(name) ?? '';
    if (kind.type !== 'number' || text === '') continue;
    const read = readNumber(text, { decimal: '.' });
    if (read.ok && String(read.value) !== text)
      understood[name] = formatNumber(read.value, Math.max(0, (String(read.value).split('.')[1] ?? '').length));
  }
  return understood;
}

function problemOfForm(error: Refusal, typed: Readonly<Record<string, string>>): EditState {
  return {
    problem: { text: error.issues[0]?.message ?? 'The form cannot be read.', remedy: 'Fill it in and send it again.' },
    refused: refusedFields(error),
    typed,
  };
}

async function context(key: { study: string; motor: string }) {
  const { read } = database();
  const force = await studyInForce(read, key.study);
  const stored = await readMotor(read, key.motor);
  return force && stored && stored.studyId === key.study ? { force, stored } : undefined;
}

const GONE: EditState = { problem: { text: 'The study has no such motor any more.', remedy: 'Go back to the fleet.' } };

async function finish(
  key: EditKey,
  before: Motor,
  done: Result<EditDone>,
  extra: Omit<EditState, 'done' | 'problem'>,
): Promise<EditState> {
  if (!done.ok) return { ...extra, problem: done.problem };
  wakeRunner();
  const after = await context({ study: key.studyId, motor: key.motorId });
  revalidatePath(`/${key.studyId}`, 'layout');
  const { read } = database();
  const figures = after
    ? figureChanges(
        await asEvaluated(read, after.force, { ...after.stored, motor: before }),
        await asEvaluated(read, after.force, after.stored),
        after.force.context,
      )
    : [];
  return { ...(extra.understood && { understood: extra.understood }), done: { ...done.value, figures } };
}

/** Cells of a form, how they are understood, and where they go. */
interface CellsForm<T> {
  readonly columns: Columns;
  readonly understand: (motor: Motor, cells: ReadonlyMap<string, string>) => Promise<TypedOutcome<T>>;
  readonly write: (db: Database, key: EditKey, value: T) => Promise<Result<EditDone>>;
}

async function saveCells<T>(form: FormData, { columns, understand, write }: CellsForm<T>): Promise<EditState> {
  const cells = typedCells(form, columns);
  const typed = typedOf(form);
  const parsed = editForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return problemOfForm(parsed.error, typed);
  const { study, motor, version, who, why } = parsed.data;
  await rememberWho(who);
  const found = await context({ study, motor });
  if (!found) return GONE;
  const read = await understand(found.stored.motor, cells);
  if (!read.ok)
    return {
      refused: read.refused,
      typed,
      problem: {
        text: read.refused[''] ?? 'Some cells cannot be taken as they are; nothing was saved.',
        remedy: 'Mend the cells that say so and save again.',
      },
    };
  const key: EditKey = { studyId: study, motorId: motor, version, who, why };
  const done = await write(database(), key, read.value);
  return finish(key, found.stored.motor, done, { typed, understood: understoodOf(cells, columns) });
}

/** Saves the plate and the driven load as typed. */
export async function savePlate(_: EditState, form: FormData): Promise<EditState> {
  return saveCells(form, { columns: PLATE_COLUMNS, understand: typedPlate, write: changePlate });
}

/** Adds a reading as typed. */
export async function saveReading(_: EditState, form: FormData): Promise<EditState> {
  return saveCells(form, { columns: READING_COLUMNS, understand: typedReading, write: addReading });
}

/** Leaves a reading or a value of an indicator history out, with a reason. */
export async function excludeReading(_: EditState, form: FormData): Promise<EditState> {
  const typed = typedOf(form);
  const parsed = exclusionForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return problemOfForm(parsed.error, typed);
  const { study, motor, version, who, kind, reading, reason } = parsed.data;
  await rememberWho(who);
  const found = await context({ study, motor });
  if (!found) return GONE;
  const key: EditKey = { studyId: study, motorId: motor, version, who };
  return finish(key, found.stored.motor, await setExclusion(database(), key, { kind, id: reading }, reason), { typed });
}

/** Takes an excluded reading or value back in. */
export async function includeReading(_: EditState, form: FormData): Promise<EditState> {
  const typed = typedOf(form);
  const parsed = inclusionForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return problemOfForm(parsed.error, typed);
  const { study, motor, version, who, kind, reading } = parsed.data;
  const found = await context({ study, motor });
  if (!found) return GONE;
  const key: EditKey = { studyId: study, motorId: motor, version, who };
  return finish(key, found.stored.motor, await setExclusion(database(), key, { kind, id: reading }, undefined), { typed });
}

/** Takes a change of the plate back: every fact of the batch gets the value it had. */
export async function undoPlate(_: EditState, form: FormData): Promise<EditState> {
  const parsed = undoForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return problemOfForm(parsed.error, {});
  const { study, motor, version, who, batch } = parsed.data;
  const found = await context({ study, motor });
  if (!found) return GONE;
  const facts = await readBatch(database().read, motor, batch);
  const cells = plateCells(found.stored.motor);
  for (const { field, from } of facts) cells.set(field, from);
  const read = await typedPlate(found.stored.motor, cells);
  if (!read.ok)
    return {
      problem: { text: 'The earlier values do not fit what has been changed since.', remedy: 'Change the plate by hand.' },
    };
  const key: EditKey = { studyId: study, motorId: motor, version, who };
  return finish(key, found.stored.motor, await changePlate(database(), key, read.value, batch), {});
}
