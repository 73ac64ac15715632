import { statSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { evaluateMotor } from '@/lib/engine';
import { unpackResult } from '@/lib/features/evaluation/data';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readMotor, readStudyMotors } from '@/lib/features/fleet/data';
import { readHistoryValues } from '@/lib/features/fleet/stored-history';
import { commitHistory } from '@/lib/features/import/commit-history';
import { readImports, rejectedOfBatch } from '@/lib/features/import/data';
import { undoImport } from '@/lib/features/import/mutations';
import { isHistory } from '@/lib/features/import/plan-history';
import { firstLook, suggestRecipe } from '@/lib/features/import/recipe';
import type { ImportDone } from '@/lib/features/import/write-batch';
import { readHistory } from '@/lib/features/motor/data';
import { setExclusion } from '@/lib/features/motor/mutations';
import { study as evaluationStudy } from '../engine/support/study';
import { dump, imported, newStudy, sheetFile } from './support/import-sheet';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let temporary: TemporaryDatabase;
beforeAll(() => {
  temporary = temporaryDatabase();
});
afterAll(() => temporary.remove());

const FLEET = [
  'tag,site,rated_power_kw,rated_voltage_v,rated_speed_rpm,foundation,taken_at,input_power_kw,vibration_mm_s',
  'P-1,North,75,460,1780,rigid,2025-06-01,52,3.1',
  'P-2,North,75,460,1780,rigid,2025-06-01,50,1.2',
].join('\n');

const HISTORY = [
  'site,tag,indicator,value,unit,taken_at,instrument',
  'North,P-1,vibration,1.0,mm/s,2023-06-01,probe',
  'North,P-1,vibration,0.08,in/s,2024-06-01,probe',
  'North,P-1,insulation_resistance,900,MΩ,2024-06-01,',
  'North,P-9,vibration,1.0,mm/s,2023-06-01,probe',
  'North,P-1,shine,1.0,mm/s,2023-06-01,probe',
  'North,P-2,vibration,2,furlong,2023-06-01,probe',
  'North,P-2,vibration,9,mm/s,2025-06-01,',
].join('\n');

async function take(studyId: string, text: string): Promise<ImportDone> {
  const file = sheetFile(text);
  const { encoding, outcome } = await firstLook(file, 'history.csv');
  if (!outcome.ok) return expect.fail(outcome.problem.text);
  expect(isHistory(outcome.sample)).toBe(true);
  const done = await commitHistory(temporary.db, {
    studyId,
    file: { path: file, name: 'history.csv', bytes: statSync(file).size, hash: '' },
    kind: outcome.sample.kind,
    recipe: suggestRecipe(outcome.sample, encoding),
    who: 'A. Tester',
  });
  return done.ok ? done.value : expect.fail(done.problem.text);
}

const valuesOf = async (studyId: string) => [...(await readHistoryValues(temporary.db.read, studyId)).values()].flat();

async function fleet(name: string): Promise<string> {
  const id = await newStudy(temporary.db, name);
  await imported(temporary.db, id, FLEET);
  return id;
}

describe('an indicator history', () => {
  test('is told from a fleet sheet by its columns', async () => {
    const { outcome } = await firstLook(sheetFile(FLEET), 'fleet.csv');
    expect(outcome.ok && isHistory(outcome.sample)).toBe(false);
  });

  test('brings its good rows in our units, and gives back the others: unknown motor, indicator, unit, and a contradiction', async () => {
    const id = await fleet('good and bad');
    const done = await take(id, HISTORY);
    expect(done).toMatchObject({ readingsAdded: 3, motorsChanged: 1, rowsRejected: 4 });
    const values = await valuesOf(id);
    expect(
      values
        .map(({ indicator, value, unit }) => [indicator, Number(value.toFixed(6)), unit])
        .sort((a, b) => Number(a[1]) - Number(b[1])),
    ).toEqual([
      ['vibration', 1, 'mm/s'],
      // 25.4 mm to the inch.
      ['vibration', 2.032, 'mm/s'],
      ['insulation_resistance', 900, 'MΩ'],
    ]);
    const [entry] = await readImports(temporary.db.read, id, done.batchId);
    expect(entry).toMatchObject({ kind: 'indicators', rowsRead: 7, rowsRejected: 4, readingsAdded: 3 });
    const rejected = (await rejectedOfBatch(temporary.db.read, id, done.batchId ?? ''))?.csv ?? '';
    const lines = rejected.trim().split('\r\n');
    expect(lines[0]).toBe(`${HISTORY.split('\n')[0]},rejected_row,rejected_reason,rejected_remedy`);
    expect(lines.slice(1).map((line) => line.split(',')[7])).toEqual(['5', '6', '7', '8']);
    // Mended, the file comes in as it is.
    const mended = rejected
      .replace('P-9', 'P-2')
      .replace('shine', 'bearing_temp')
      .replace('1.0,mm/s,2023-06-01,probe,6', '61,°C,2023-06-01,probe,6');
    const again = await take(
      id,
      mended.replace('furlong', 'mm/s').replace('2,mm/s,2023', '2,mm/s,2022').replace(',9,mm/s,2025-06-01', ',9,mm/s,2025-05-01'),
    );
    expect(again).toMatchObject({ readingsAdded: 4, rowsRejected: 0 });
  });

  test('twice is once, and within one file too', async () => {
    const id = await fleet('twice');
    await take(id, HISTORY);
    const before = await valuesOf(id);
    expect(await take(id, HISTORY)).toMatchObject({ batchId: undefined, readingsAdded: 0 });
    expect(await valuesOf(id)).toEqual(before);
    const [head, first] = HISTORY.split('\n');
    const other = await fleet('twice in one file');
    expect(await take(other, [head, first, first].join('\n'))).toMatchObject({ readingsAdded: 1 });
  });

  test('gives the evaluation its trend, which it has not without', async () => {
    const id = await fleet('trend');
    const trendOf = async () => {
      const motors = await readStudyMotors(temporary.db.read, id, { withHistory: true });
      const motor = motors.find((stored) => stored.motor.tag === 'P-1')?.motor;
      if (!motor) throw new Error('P-1 is gone');
      return evaluateMotor(motor, evaluationStudy()).condition.indicators.find((entry) => entry.id === 'vibration')?.trend;
    };
    expect(await trendOf()).toBeUndefined();
    await take(id, HISTORY);
    // 1.0, 2.032 and 3.1 mm/s, a year apart: about one millimetre a second more each year.
    expect((await trendOf())?.perYear).toBeCloseTo(1.05, 1);
    expect(await trendOf()).toMatchObject({ readings: 3, direction: 'worse' });
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    const row = await temporary.db.read.motorEvaluation.findFirst({
      where: { studyId: id, tag: 'P-1' },
      orderBy: { id: 'desc' },
    });
    const stored = row && unpackResult(row.details).condition.indicators.find((entry) => entry.id === 'vibration');
    expect(stored?.trend?.readings).toBe(3);
  });

  test('a single value is left out with a reason, and taken back in; it is not brought in again by the same file', async () => {
    const id = await fleet('left out');
    await take(id, HISTORY);
    const { db } = temporary;
    const motor = await db.read.motor.findFirstOrThrow({ where: { studyId: id, tag: 'P-1' } });
    const value = await db.read.indicatorReading.findFirstOrThrow({
      where: { motorId: motor.id, indicator: 'vibration' },
      orderBy: { takenAt: 'asc' },
    });
    const trendOf = async () => {
      const stored = await readMotor(db.read, motor.id, { withHistory: true });
      if (!stored) throw new Error('P-1 is gone');
      return evaluateMotor(stored.motor, evaluationStudy()).condition.indicators.find((entry) => entry.id === 'vibration')?.trend;
    };
    const set = async (reason: string | undefined, valueId = value.id) => {
      const { version } = await db.read.motor.findUniqueOrThrow({ where: { id: motor.id } });
      const key = { studyId: id, motorId: motor.id, version, who: 'A. Tester' };
      return setExclusion(db, key, { kind: 'value', id: valueId }, reason);
    };
    const before = await trendOf();
    expect((await set('sensor was loose')).ok).toBe(true);
    expect((await trendOf())?.readings).toBe((before?.readings ?? 0) - 1);
    expect(await set('again')).toMatchObject({ ok: false, problem: { code: 'already-so' } });
    expect(await set('no such value', 'nothing')).toMatchObject({ ok: false, problem: { code: 'no-value' } });
    expect(await take(id, HISTORY)).toMatchObject({ readingsAdded: 0 });
    expect((await trendOf())?.readings).toBe((before?.readings ?? 0) - 1);
    const said = await readHistory(db.read, motor.id, [value.id]);
    expect(said[0]).toMatchObject({ what: 'excluded', field: 'vibration', why: 'sensor was loose' });
    expect((await set(undefined)).ok).toBe(true);
    expect(await trendOf()).toEqual(before);
  });

  test('is taken back whole, and stands in the way of taking back the import that brought its motors', async () => {
    const id = await newStudy(temporary.db, 'taken back');
    const brought = await imported(temporary.db, id, FLEET, { at: new Date('2025-07-01T10:00:00Z') });
    const before = await dump(temporary.db, id);
    const done = await take(id, HISTORY);
    const undo = (batchId: string | undefined) =>
      undoImport(temporary.db, { studyId: id, batchId: batchId ?? '', who: 'A. Tester' });
    const refused = await undo(brought.batchId);
    expect(refused.ok ? 'undone' : refused.problem.code).toBe('built-on');
    expect((await undo(done.batchId)).ok).toBe(true);
    expect(await valuesOf(id)).toEqual([]);
    expect(await dump(temporary.db, id)).toEqual(before);
    expect((await undo(brought.batchId)).ok).toBe(true);
    expect(await readStudyMotors(temporary.db.read, id)).toEqual([]);
  });
});
