import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { generateDemo } from '@/lib/features/demo/generate';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { addMotors } from '@/lib/features/fleet/mutations';
import { readFleetPack } from '@/lib/features/results/data';
import { applyQuery, readQuery } from '@/lib/features/results/fleet-filter';
import { rowsOfPack } from '@/lib/features/results/fleet-row';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { type Database, openDatabase } from '@/lib/platform/db';
import { readEnv } from '@/lib/platform/env';
import { newId } from '@/lib/platform/id';
import { prepareDatabase } from '@/lib/platform/prepare-database';
import type { Measure } from './engine';

const MOTORS = 10_000;

/** A data folder with one evaluated study of 10,000 motors. */
export interface StoredFleet {
  readonly folder: string;
  readonly studyId: string;
  readonly measures: Measure[];
  remove(): void;
}

/** Stores and evaluates 10,000 motors, and measures each step of it. */
export async function storedFleet(): Promise<StoredFleet> {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-perf-'));
  const env = readEnv({ LOSSBOOK_DATA: folder });
  const prepared = prepareDatabase(env);
  if (!prepared.ok) throw new Error(prepared.problem.text);
  const db = openDatabase(env.databaseFile);
  try {
    const studyId = newId();
    const measures = await steps(db, studyId);
    return { folder, studyId, measures, remove: () => rmSync(folder, { recursive: true, force: true }) };
  } finally {
    await db.close();
  }
}

async function steps(db: Database, studyId: string): Promise<Measure[]> {
  const measures: Measure[] = [];
  const timed = async <T>(what: string, work: () => T | Promise<T>, bar?: string): Promise<T> => {
    const start = performance.now();
    const done = await work();
    measures.push({ what, value: (performance.now() - start) / 1000, unit: 's', ...(bar !== undefined && { bar }) });
    return done;
  };
  const settings = defaultSettings();
  const motors = manyMotors();
  const evaluate = async (): Promise<void> => {
    await db.write((tx) => enqueueEvaluation(tx, studyId));
    await workThroughQueue(db);
  };
  await timed('10,000 motors written to the database', () =>
    db.write(async (tx) => {
      await tx.study.create({ data: { id: studyId, name: 'Large', settings: JSON.stringify(settingsToJson(settings)) } });
      await addMotors(tx, motors, { studyId, currency: settings.currency, at: new Date() });
    }),
  );
  await timed('evaluated, ranked and stored', evaluate);
  await timed('evaluated again, nothing changed', evaluate);
  const one = await db.read.drivenLoad.findFirst({ where: { studyId }, select: { id: true } });
  await db.read.drivenLoad.update({ where: { id: one?.id ?? '' }, data: { hoursPerYear: 1234 } });
  await timed('evaluated again, one motor changed', evaluate);
  const text = await timed('list packed', () => readFleetPack(db.read, studyId));
  const rows = await timed('list unpacked', () => rowsOfPack(JSON.parse(text ?? '')));
  const ask = (query: string) => () => applyQuery(rows, readQuery(new URLSearchParams(query)));
  await timed('sorted by present value and tag', ask('sort=-net_present_value,tag'), '0.1 s');
  await timed('filtered by trust, load and text', ask('trust=provisional&load_fraction=..50&q=pump'), '0.1 s');
  return measures;
}

function manyMotors() {
  const all = [];
  for (let batch = 0; all.length < MOTORS; batch++) {
    for (const { motor } of generateDemo({ asOf: '2026-01-01', seed: 1000 + batch })) {
      if (all.length < MOTORS) all.push({ motor: { ...motor, tag: `${motor.tag}/${batch}` } });
    }
  }
  return all;
}
