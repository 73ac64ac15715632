import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { BENCH_METHODS, BENCH_SECTIONS, type BenchPoint, type BenchSections } from '@/lib/engine';
import { ENTRY_COLUMNS, sectionsWith } from '@/lib/features/bench/columns';
import { findMotors, readTest, readTests } from '@/lib/features/bench/data';
import { keepTest, withdrawTest } from '@/lib/features/bench/mutations';
import { parseBench } from '@/lib/features/bench/parse-sheet';
import { keepForm } from '@/lib/features/bench/schema';
import { parseTyped, typedRows } from '@/lib/features/bench/typed-test';
import { workOut } from '@/lib/features/bench/work-out';
import { writeBenchCsv } from '@/lib/features/bench/write-sheet';
import { asEvaluated, fleetAsEvaluated } from '@/lib/features/evaluation/as-evaluated';
import { readMotor } from '@/lib/features/fleet/data';
import { readHistory } from '@/lib/features/motor/data';
import { studyInForce } from '@/lib/features/study/context';
import { METHOD_B } from '../engine/bench/context';
import { directRuns } from '../engine/bench/direct-runs';
import { PLATE, syntheticTest } from '../engine/bench/synthetic';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

const test = syntheticTest();

describe('the bench test sheet', () => {
  it('written and read is the same test, by comma or semicolon', async () => {
    const text = writeBenchCsv([test]);
    const read = await parseBench({ name: 'sheet', text });
    expect(read.ok && read.tests).toEqual([test]);
    expect(read.ok && [read.warnings, read.rejected]).toEqual([[], []]);
    const other = await parseBench({ name: 'sheet', text: text.replaceAll(',', ';').replaceAll('.', ',') }, { decimal: ',' });
    expect(other.ok && other.tests).toEqual([test]);
  });

  it.each([
    ['an unknown section', 'section\ncoldish\n', 'unknown-word'],
    ['grouped thousands', 'section,speed_rpm\nload,"1,769"\n', 'grouped-thousands'],
    ['no section', 'section,voltage_v\n,460\n', 'missing-required'],
    ['a cell too many', 'section,voltage_v\nload,460,9\n', 'too-many-cells'],
  ])('%s rejects the row by name', async (_, text, code) => {
    const read = await parseBench({ name: 'sheet', text });
    expect(read.ok && read.rejected.map((issue) => issue.code)).toEqual([code]);
    expect(read.ok && read.tests).toEqual([]);
  });

  it('an unknown column is named with the nearest known one', async () => {
    const read = await parseBench({ name: 'sheet', text: 'section,torque_mn\nload,98\n' });
    expect(read.ok && read.warnings[0]?.remedy).toContain('torque_nm');
  });

  it.each([
    ['empty', '', 'empty-file'],
    ['without sections', 'tag,voltage_v\nA,460\n', 'missing-bench-column'],
    ['with a column twice', 'section,tag,tag\ncold,A,A\n', 'duplicate-column'],
  ])('a file %s is refused in words', async (_, text, code) => {
    const read = await parseBench({ name: 'sheet', text });
    expect(!read.ok && read.problem.code).toBe(code);
  });
});

/** Values that no meter of the invented motor would make one wonder at, for cells that a test has no use for. */
const FILLING: Omit<Required<BenchPoint>, 'row'> = {
  voltageV: 458,
  currentA: 26,
  inputPowerKw: 18,
  torqueNm: 80,
  speedRpm: 1775,
  frequencyHz: 60.1,
  windingTempC: 60,
  resistanceOhm: 0.6,
  ambientC: 33,
};

describe('cells that a section has no use for', () => {
  const locked = { row: 90, voltageV: 40, currentA: 28, inputPowerKw: 0.9, frequencyHz: 15, windingTempC: 30 };
  const whole = { ...test.sections, ...directRuns(), dynamometer: [], 'locked-rotor': [locked] };
  const useless = (section: keyof BenchSections) =>
    ENTRY_COLUMNS.flatMap(({ field }) => (field === undefined || sectionsWith(field).includes(section) ? [] : [field]));
  const withUseless = (value: (field: keyof typeof FILLING) => number | undefined): BenchSections =>
    Object.fromEntries(
      BENCH_SECTIONS.map((section) => [
        section,
        whole[section].map((point: BenchPoint) => ({
          ...point,
          ...Object.fromEntries(useless(section).map((field) => [field, value(field)])),
        })),
      ]),
    ) as unknown as BenchSections;

  it.each(BENCH_METHODS)('change nothing by %s, whether they are filled or empty', (method) => {
    const result = (sections: BenchSections) =>
      workOut({ ...test, sections }, METHOD_B, method, { assumedStray: METHOD_B.assumedStray }).result;
    const empty = result(withUseless(() => undefined));
    expect(result(withUseless((field) => FILLING[field]))).toEqual(empty);
    expect(empty.points.length, 'the test answers').toBeGreaterThan(method === 'no-load-run' ? -1 : 0);
  });
});

describe('the table of entry', () => {
  it('gives back what it shows; rows not yet filled do not count and keep their number', async () => {
    const rows = typedRows(test);
    const empty = { section: 'load', cells: ENTRY_COLUMNS.map(() => '') };
    const typed = await parseTyped({ tag: test.tag, name: test.test, decimal: '.', rows: [empty, ...rows] });
    expect(typed.ok && typed.rejected).toEqual([]);
    expect(typed.ok && typed.tests.map((each) => typedRows(each))).toEqual([rows]);
    expect(typed.ok && typed.tests[0]?.sections.cold[0]?.row).toBe(2);
  });

  it('takes decimal commas when told, and refuses them by row and column when not', async () => {
    const cells = ENTRY_COLUMNS.map((column) => (column.name === 'resistance_ohm' ? '0,52' : ''));
    const rows = [{ section: 'cold', cells }];
    const comma = await parseTyped({ tag: 'A', name: '', decimal: ',', rows });
    expect(comma.ok && comma.tests[0]?.sections.cold[0]?.resistanceOhm).toBe(0.52);
    const point = await parseTyped({ tag: 'A', name: '', decimal: '.', rows });
    expect(point.ok && point.rejected.map(({ row, column }) => [row, column])).toEqual([[1, 'resistance_ohm']]);
  });

  it('the form asks for a tag, a name and a date that is one', () => {
    const form = { study: '0'.repeat(36), tag: 'A', rows: [], who: 'R. Example' };
    expect(keepForm.safeParse(form).success).toBe(true);
    for (const wrong of [{ tag: ' ' }, { who: '' }, { takenAt: '14/03/2026' }, { method: 'guess' }]) {
      expect(keepForm.safeParse({ ...form, ...wrong }).success).toBe(false);
    }
  });
});

describe('tests kept with a motor', () => {
  let temporary: TemporaryDatabase;
  let studyId: string;
  let motorId: string;
  beforeEach(async () => {
    temporary = temporaryDatabase();
    const motors = someMotors(2);
    studyId = await studyWith(temporary.db, motors);
    const [first] = await findMotors(temporary.db.read, studyId, motors[0]?.tag ?? '', motors[0]?.site ?? '');
    motorId = first?.id ?? '';
  });
  afterEach(() => temporary.remove());

  const wish = (name: string, takenAt?: string) => ({
    studyId,
    motorId,
    who: 'R. Example',
    test: { ...test, test: name },
    takenAt,
    method: 'ieee-112-b' as const,
    rotorConductor: 'copper' as const,
  });

  it('come back as they were, newest first, and the same test twice is one', async () => {
    const { db } = temporary;
    const before = await keepTest(db, wish('before', '2025-03-01'));
    const after = await keepTest(db, wish('after', '2025-06-01'));
    const again = await keepTest(db, wish('before', '2025-03-01'));
    expect(before.ok && again.ok && [again.value.id, again.value.known]).toEqual([before.ok && before.value.id, true]);
    const kept = await readTests(db.read, { studyId, motorId });
    expect(kept.map((each) => each.test.test)).toEqual(['after', 'before']);
    expect(kept[1]?.test.sections).toEqual(test.sections);
    expect([kept[1]?.rotorConductor, kept[1]?.method, kept[1]?.addedBy]).toEqual(['copper', 'ieee-112-b', 'R. Example']);
    expect(after.ok && (await readTest(db.read, studyId, after.value.id))?.takenAt).toBe('2025-06-01');
    expect(after.ok && (await readTest(db.read, 'another study', after.value.id))).toBeUndefined();
  });

  it('stand in the history of the motor when added and when withdrawn, with the reason', async () => {
    const { db } = temporary;
    const kept = await keepTest(db, wish('before', '2025-03-01'));
    if (!kept.ok) throw new Error(kept.problem.text);
    const order = { studyId, id: kept.value.id, who: 'R. Example', why: 'torque meter not zeroed' };
    expect((await withdrawTest(db, order)).ok).toBe(true);
    expect((await withdrawTest(db, order)).ok).toBe(false);
    expect((await readTest(db.read, studyId, kept.value.id))?.withdrawn?.reason).toBe('torque meter not zeroed');
    const history = await readHistory(db.read, motorId, []);
    expect(history.map(({ what, field, why }) => [what, field, why])).toEqual([
      ['withdrawn', 'bench test', 'torque meter not zeroed'],
      ['added', 'bench test', undefined],
    ]);
  });

  it('have the study evaluated again, with the test and, once it is withdrawn, without it', async () => {
    const { db } = temporary;
    const force = await studyInForce(db.read, studyId);
    const found = await readMotor(db.read, motorId);
    if (!force || !found) throw new Error('the study is gone');
    // The test is of an 18.65 kW motor for 460 V; the demonstration's is another.
    const { ratedPowerKw, ratedVoltageV, poles, ratedSpeedRpm } = PLATE;
    const plate = { ...found.motor.plate, ratedPowerKw, ratedVoltageV, poles, ratedSpeedRpm, lastRewindYear: undefined };
    const stored = { ...found, motor: { ...found.motor, plate } };
    const waiting = () => db.read.evaluationRun.count({ where: { studyId, state: 'queued' } });
    await db.write((tx) => tx.evaluationRun.updateMany({ data: { state: 'cancelled' } }));
    const kept = await keepTest(db, wish('shop', '2025-03-01'));
    if (!kept.ok) throw new Error(kept.problem.text);
    expect(await waiting()).toBe(1);
    const [all] = await fleetAsEvaluated(db.read, force, [stored]);
    const alone = await asEvaluated(db.read, force, stored);
    expect(alone.tested?.name).toBe('shop, 2025-03-01');
    expect(all?.motor).toEqual(alone);
    await db.write((tx) => tx.evaluationRun.updateMany({ data: { state: 'cancelled' } }));
    await withdrawTest(db, { studyId, id: kept.value.id, who: 'R. Example', why: 'torque meter not zeroed' });
    expect(await waiting()).toBe(1);
    expect((await asEvaluated(db.read, force, stored)).tested).toBeUndefined();
  });

  it('are refused for a motor of another study', async () => {
    const done = await keepTest(temporary.db, { ...wish('x'), studyId: '0'.repeat(36) });
    expect(!done.ok && done.problem.code).toBe('no-motor');
  });
});
