import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, expect } from 'vitest';
import { commitImport } from '@/lib/features/import/mutations';
import type { ConflictsApart } from '@/lib/features/import/plan-import';
import { firstLook, suggestRecipe } from '@/lib/features/import/recipe';
import type { ConflictRule, Recipe } from '@/lib/features/import/schema';
import type { ImportDone } from '@/lib/features/import/write-batch';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import type { Database } from '@/lib/platform/db';
import type { Result } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';

const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-sheets-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

export async function newStudy(db: Database, name: string): Promise<string> {
  const id = newId();
  await db.read.study.create({ data: { id, name, settings: JSON.stringify(settingsToJson(defaultSettings())) } });
  return id;
}

export function sheetFile(content: string | Uint8Array): string {
  const file = path.join(folder, newId());
  writeFileSync(file, content);
  return file;
}

export interface ImportWishes {
  readonly recipe?: Partial<Recipe>;
  readonly conflicts?: ConflictRule;
  readonly apart?: ConflictsApart;
  readonly at?: Date;
  readonly who?: string;
}

/** Imports a text as the screen would: first look, suggestions, then the given wishes. */
export async function importText(
  db: Database,
  studyId: string,
  content: string | Uint8Array,
  wishes: ImportWishes = {},
): Promise<Result<ImportDone>> {
  const file = sheetFile(content);
  const { encoding, outcome } = await firstLook(file, 'sheet.csv');
  if (!outcome.ok) return outcome;
  return commitImport(
    db,
    {
      studyId,
      file: { path: file, name: 'sheet.csv', bytes: statSync(file).size, hash: '' },
      kind: outcome.sample.kind,
      recipe: { ...suggestRecipe(outcome.sample, encoding), ...wishes.recipe },
      conflicts: wishes.conflicts ?? 'sheet',
      ...(wishes.apart !== undefined && { apart: wishes.apart }),
      who: wishes.who ?? 'A. Tester',
    },
    wishes.at,
  );
}

/** The same, for sheets that must go in. */
export async function imported(...args: Parameters<typeof importText>): Promise<ImportDone> {
  const done = await importText(...args);
  if (!done.ok) expect.fail(done.problem.text);
  return done.value;
}

/** Everything that is kept of a study's motors, but for the marks that every change leaves. */
export async function dump(db: Database, studyId: string): Promise<unknown> {
  const where = { studyId };
  const motors = await db.read.motor.findMany({ where, orderBy: { id: 'asc' } });
  return {
    motors: motors.map(({ version: _version, updatedAt: _updatedAt, ...facts }) => facts),
    loads: await db.read.drivenLoad.findMany({ where, orderBy: { id: 'asc' } }),
    readings: await db.read.reading.findMany({ where, orderBy: { id: 'asc' } }),
    sites: await db.read.site.findMany({ where, orderBy: { id: 'asc' } }),
    areas: await db.read.area.findMany({ where, orderBy: { id: 'asc' } }),
  };
}
