import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Motor } from '@/lib/engine/motor';
import { readStudyMotors } from '@/lib/features/fleet/data';
import { parseFleet, type SheetMotor } from '@/lib/features/fleet/parse';
import { writeFleetCsv } from '@/lib/features/fleet/write-csv';
import { rejectedOfBatch } from '@/lib/features/import/data';
import { undoImport } from '@/lib/features/import/mutations';
import { conflictsApart } from '@/lib/features/import/schema';
import { recordChange } from '@/lib/platform/audit';
import { arbitraryMotor } from './support/arbitrary-motor';
import { dump, imported, importText, newStudy } from './support/import-sheet';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let temporary: TemporaryDatabase;
beforeAll(() => {
  temporary = temporaryDatabase();
});
afterAll(() => temporary.remove());

/** What a sheet states of a motor, whichever rows it stands in: whose duty is in force counts, the number of its row does not. */
function stated(motor: Motor): { readonly key: string; readonly facts: unknown } {
  const { plateDuty, readings, ...rest } = motor;
  const replaced = readings.filter(({ duty, row }) => duty !== undefined && row > (plateDuty?.row ?? 0)).length;
  const carried = readings.filter(({ duty }) => duty !== undefined).length;
  const inForce =
    plateDuty === undefined ? 'none' : carried > 0 && replaced === 0 ? 'own' : carried > 0 ? 'of a reading' : 'only';
  return {
    key: `${motor.site}\0${motor.tag}`,
    facts: { ...rest, duty: plateDuty?.steps, inForce, readings: readings.map((reading) => ({ ...reading, row: 0 })) },
  };
}

const SHEET = [
  'tag,site,area,rated_power_kw,rated_voltage_v,rated_current_a,status,hours_per_year,taken_at,input_power_kw,colour',
  'P-1,North,Hall,30,460,48,,6000,2025-01-10,21.4,blue',
  'P-1,North,,,,,,,2025-03-10,22,',
  'P-2,North,,15,460,,failed,,2025-01-11,9.1,red',
].join('\n');

async function study(name: string): Promise<string> {
  return newStudy(temporary.db, name);
}

async function motorsByTag(studyId: string) {
  const motors = await readStudyMotors(temporary.db.read, studyId);
  return new Map(motors.map((stored) => [stored.motor.tag, stored]));
}

describe('bringing a sheet in', () => {
  test('adds its motors, readings, places and notes, and says how many', async () => {
    const id = await study('adds');
    const done = await imported(temporary.db, id, SHEET);
    expect(done).toMatchObject({ motorsAdded: 2, motorsChanged: 0, readingsAdded: 3, rowsRejected: 0 });
    const motors = await motorsByTag(id);
    expect(motors.get('P-1')?.motor).toMatchObject({ site: 'North', area: 'Hall', hoursPerYear: 6000 });
    expect(motors.get('P-1')?.motor.readings.map(({ inputPowerKw }) => inputPowerKw)).toEqual([21.4, 22]);
    expect(motors.get('P-1')?.notes).toEqual({ colour: 'blue' });
    expect(motors.get('P-2')?.motor.plate.status).toBe('failed');
  });

  test('a torque law takes the place of one stated the other way, with a note, and the sheet written out is read again', async () => {
    const head = 'tag,site,rated_power_kw,rated_voltage_v';
    for (const [first, second, field, earlier] of [
      [
        `${head},load_torque_exponent\nK-1,North,30,460,1`,
        'tag,site,load_curve\nK-1,North,kiln',
        'loadCurve',
        'load_torque_exponent',
      ],
      [
        `${head},load_curve\nK-1,North,30,460,kiln`,
        'tag,site,load_torque_exponent\nK-1,North,1',
        'loadTorqueExponent',
        'load_curve',
      ],
    ] as const) {
      const id = await study(`law by ${field}`);
      await imported(temporary.db, id, first);
      const before = await motorsByTag(id);
      // The study keeps its own law where that was wished, whole.
      await imported(temporary.db, id, second, { conflicts: 'kept' });
      expect((await motorsByTag(id)).get('K-1')?.motor.plate).toEqual(before.get('K-1')?.motor.plate);
      const done = await imported(temporary.db, id, second);
      const after = (await motorsByTag(id)).get('K-1');
      const { loadCurve, loadTorqueExponent } = after?.motor.plate ?? {};
      expect([loadCurve, loadTorqueExponent]).toEqual(field === 'loadCurve' ? ['kiln', undefined] : [undefined, 1]);
      expect(after?.notes).toEqual({ [`earlier ${earlier}`]: field === 'loadCurve' ? '1' : 'kiln' });
      const again = await parseFleet({ name: 'sheet', text: writeFleetCsv(after ? [after] : []) });
      if (!again.ok) expect.fail(again.problem.text);
      expect(again.rejected).toEqual([]);
      expect(again.motors.map(({ motor }) => motor.plate)).toEqual([after?.motor.plate]);
      expect(await undoImport(temporary.db, { studyId: id, batchId: done.batchId ?? '', who: 'C' })).toMatchObject({ ok: true });
      const back = (await motorsByTag(id)).get('K-1');
      expect([back?.motor.plate, back?.notes]).toEqual([before.get('K-1')?.motor.plate, {}]);
    }
  });

  test('any sheet that the generator makes comes back the same when it is written out again', async () => {
    let round = 0;
    const key = ({ site, tag }: { site: string; tag: string }) => `${site.trim()}\0${tag.trim()}`;
    await fc.assert(
      fc.asyncProperty(fc.uniqueArray(arbitraryMotor, { minLength: 1, maxLength: 4, selector: key }), async (motors) => {
        const id = await study(`generated ${++round}`);
        const first = writeFleetCsv(motors.map((motor) => ({ motor })));
        const parsed = await parseFleet({ name: 'sheet', text: first });
        // What the sheet cannot say (such as a text that begins with a space) is the parser's matter, not the import's.
        if (!parsed.ok || parsed.motors.length === 0) return;
        await imported(temporary.db, id, first, { recipe: { decimal: '.', emptyWords: [], delimiter: ',' } });
        const stored = await readStudyMotors(temporary.db.read, id);
        const again = await parseFleet({ name: 'sheet', text: writeFleetCsv(stored) });
        if (!again.ok) expect.fail(again.problem.text);
        expect(again.rejected).toEqual([]);
        const sorted = (sheets: readonly SheetMotor[]) =>
          sheets.map(({ motor }) => stated(motor)).sort((a, b) => (a.key < b.key ? -1 : 1));
        expect(sorted(again.motors)).toEqual(sorted(parsed.motors));
      }),
      { numRuns: 40 },
    );
  });

  test('the same file a second time changes nothing, not even the list of imports', async () => {
    const id = await study('twice');
    await imported(temporary.db, id, SHEET);
    const before = await dump(temporary.db, id);
    const counts = () =>
      Promise.all([
        temporary.db.read.importBatch.count({ where: { studyId: id } }),
        temporary.db.read.changeEvent.count({ where: { studyId: id } }),
        temporary.db.read.study.findUnique({ where: { id }, select: { version: true } }),
      ]);
    const earlier = await counts();
    const again = await imported(temporary.db, id, SHEET);
    expect(again).toMatchObject({ batchId: undefined, motorsAdded: 0, motorsChanged: 0, readingsAdded: 0 });
    expect(await dump(temporary.db, id)).toEqual(before);
    expect(await counts()).toEqual(earlier);
  });

  test('fills in what was empty, and empties nothing', async () => {
    const id = await study('fills');
    await imported(temporary.db, id, SHEET);
    await imported(
      temporary.db,
      id,
      'tag,site,rated_power_kw,rated_voltage_v,rated_current_a,poles\nP-1,North,30,460,,4\nP-2,North,15,460,25,\n',
    );
    const motors = await motorsByTag(id);
    expect(motors.get('P-1')?.motor.plate).toMatchObject({ ratedCurrentA: 48, poles: 4 });
    expect(motors.get('P-1')?.motor.hoursPerYear).toBe(6000);
    // No row states the status, so the sheet's default does not count against what is kept.
    expect(motors.get('P-2')?.motor.plate).toMatchObject({ ratedCurrentA: 25, status: 'failed' });
    expect(motors.get('P-1')?.version).toBe(2);
  });

  test.each([
    ['sheet', 50],
    ['kept', 48],
  ] as const)('where both state a fact, the rule %s decides', async (conflicts, current) => {
    const id = await study(`conflict ${conflicts}`);
    await imported(temporary.db, id, SHEET);
    await imported(temporary.db, id, 'tag,site,rated_power_kw,rated_voltage_v,rated_current_a,poles\nP-1,North,30,460,50,4\n', {
      conflicts,
    });
    expect((await motorsByTag(id)).get('P-1')?.motor.plate).toMatchObject({ ratedCurrentA: current, poles: 4 });
    const changes = await temporary.db.read.changeEvent.findMany({ where: { studyId: id, field: 'rated_current_a' } });
    expect(changes.map(({ fromValue, toValue, who }) => [fromValue, toValue, who])).toEqual(
      conflicts === 'sheet' ? [['48', '50', 'A. Tester']] : [],
    );
  });

  test('conflicts decided apart go their own way, the others by the rule for all', async () => {
    const id = await study('conflicts apart');
    await imported(temporary.db, id, SHEET);
    const first = (await motorsByTag(id)).get('P-1')?.id ?? '';
    const second = (await motorsByTag(id)).get('P-2')?.id ?? '';
    const choices = conflictsApart.parse([`${first} rated_current_a=kept`, '', `${second} rated_voltage_v=sheet`]);
    await imported(
      temporary.db,
      id,
      'tag,site,rated_power_kw,rated_voltage_v,rated_current_a\nP-1,North,37,460,50\nP-2,North,15,400,26\n',
      { conflicts: 'kept', apart: choices },
    );
    const motors = await motorsByTag(id);
    expect(motors.get('P-1')?.motor.plate).toMatchObject({ ratedCurrentA: 48, ratedPowerKw: 30 });
    expect(motors.get('P-2')?.motor.plate).toMatchObject({ ratedCurrentA: 26, ratedVoltageV: 400 });
    for (const bad of ['rated_current_a=sheet', `${first} rated_current_a=both`, `${first} rated_current_a`])
      expect(conflictsApart.safeParse([bad]).success).toBe(false);
  });

  test('a sheet of readings alone needs no plates for motors that are kept, but does for others', async () => {
    const id = await study('readings alone');
    await imported(temporary.db, id, SHEET);
    const done = await imported(
      temporary.db,
      id,
      'tag,site,taken_at,input_power_kw\nP-1,North,2025-06-01,20\nP-9,North,2025-06-01,20\n',
    );
    expect(done).toMatchObject({ motorsAdded: 0, motorsChanged: 1, readingsAdded: 1, rowsRejected: 1 });
    const motors = await motorsByTag(id);
    expect(motors.get('P-1')?.motor.readings.map(({ takenAt }) => takenAt)).toEqual(['2025-01-10', '2025-03-10', '2025-06-01']);
    expect(motors.get('P-1')?.motor.plate).toMatchObject({ ratedPowerKw: 30, ratedVoltageV: 460, ratedPowerUnit: 'kW' });
  });

  test('horsepower of the same plate is no conflict; other kilowatts are', async () => {
    const id = await study('horsepower');
    await imported(temporary.db, id, SHEET);
    const same = await imported(temporary.db, id, 'tag,site,rated_power_hp,rated_voltage_v\nP-1,North,40,460\n');
    expect(same.batchId).toBeUndefined();
    await imported(temporary.db, id, 'tag,site,rated_power_hp,rated_voltage_v\nP-1,North,50,460\n');
    expect((await motorsByTag(id)).get('P-1')?.motor.plate).toMatchObject({ ratedPowerKw: 37.285, ratedPowerUnit: 'hp' });
  });

  test('a reading that contradicts a kept one is rejected in words, until the kept one is excluded', async () => {
    const id = await study('contradiction');
    await imported(temporary.db, id, SHEET);
    const other = 'tag,site,taken_at,input_power_kw\nP-1,North,2025-01-10,24\n';
    const refused = await imported(temporary.db, id, `${other}P-2,North,2025-09-09,8\n`);
    expect(refused).toMatchObject({ readingsAdded: 1, rowsRejected: 1 });
    const issues = await temporary.db.read.importRowIssue.findMany({
      where: { batchId: refused.batchId ?? '', kind: 'rejected' },
    });
    expect(issues.map(({ row, code, column }) => [row, code, column])).toEqual([[2, 'reading-contradiction', 'input_power_kw']]);
    expect(issues[0]?.text).toContain('24');
    expect(issues[0]?.text).toContain('21.4');
    const kept = (await motorsByTag(id)).get('P-1')?.readings.find(({ reading }) => reading.takenAt === '2025-01-10');
    await temporary.db.read.reading.update({
      where: { id: kept?.id ?? '' },
      data: { excludedAt: new Date(), excludedBy: 'B', excludedReason: 'wrong' },
    });
    expect(await imported(temporary.db, id, other)).toMatchObject({ readingsAdded: 1, rowsRejected: 0 });
    // The excluded one comes back with its old sheet: it is known, and stays excluded.
    expect(await imported(temporary.db, id, 'tag,site,taken_at,input_power_kw\nP-1,North,2025-01-10,21.4\n', {})).toMatchObject({
      readingsAdded: 0,
    });
  });

  test('the duty of a new reading replaces the duty of the plate; a later plate duty replaces that', async () => {
    const id = await study('duty');
    const head = 'tag,rated_power_kw,rated_voltage_v,taken_at,input_power_kw,duty_profile';
    await imported(temporary.db, id, `${head}\nA,30,460,,,1@4000\n`);
    await imported(temporary.db, id, `${head}\nA,30,460,2025-01-01,20,1@3000\n`);
    const inForce = async () => {
      const motor = (await motorsByTag(id)).get('A')?.motor;
      const last = motor?.readings.findLast(({ duty }) => duty !== undefined);
      return (motor?.plateDuty?.row ?? 0) > (last?.row ?? 0) ? motor?.plateDuty?.steps : last?.duty;
    };
    expect(await inForce()).toEqual([{ fraction: 1, hoursPerYear: 3000 }]);
    const third = await imported(temporary.db, id, `${head}\nA,30,460,,,1@2000\n`);
    expect(await inForce()).toEqual([{ fraction: 1, hoursPerYear: 2000 }]);
    await imported(temporary.db, id, `${head}\nA,30,460,2025-02-02,21,1@1000\n`);
    expect(await inForce()).toEqual([{ fraction: 1, hoursPerYear: 1000 }]);
    expect(third.batchId).toBeDefined();
  });

  test('a file that cannot be read, or whose decimal sign nobody has said, changes nothing', async () => {
    const id = await study('unreadable');
    const missing = await importText(temporary.db, id, 'tag,frame\nP-1,180M\n');
    expect(missing.ok).toBe(true);
    const empty = await importText(temporary.db, id, '');
    expect(empty).toMatchObject({ ok: false, problem: { code: 'empty-file' } });
    const doubtful = await importText(temporary.db, id, 'tag;rated_power_kw;rated_voltage_v\nP-1;1.250;4.160\n');
    expect(doubtful).toMatchObject({ ok: false, problem: { code: 'decimal-sign' } });
    expect(await temporary.db.read.motor.count({ where: { studyId: id } })).toBe(0);
    expect(await importText(temporary.db, '00000000-0000-0000-0000-000000000000', SHEET)).toMatchObject({
      ok: false,
      problem: { code: 'no-study' },
    });
  });

  test('rejected rows come back as a file that imports once it is mended, also rows that leaned on another row', async () => {
    const id = await study('mended');
    const bad = SHEET.replace('2025-03-10,22,', '2025-03-10,"22,5",').replace('15,460', 'fifteen,460');
    const done = await imported(temporary.db, id, bad, { recipe: { decimal: '.' } });
    expect(done).toMatchObject({ motorsAdded: 1, readingsAdded: 1, rowsRejected: 2 });
    const rejected = await rejectedOfBatch(temporary.db.read, id, done.batchId ?? '');
    expect(rejected?.csv.split('\r\n')[0]).toBe(`${SHEET.split('\n')[0]},rejected_row,rejected_reason,rejected_remedy`);
    expect(rejected?.csv).toContain('Write decimals with a point');
    const mended = rejected?.csv.replace('"22,5"', '22.5').replace('fifteen', '15') ?? '';
    expect(await imported(temporary.db, id, mended)).toMatchObject({ motorsAdded: 1, readingsAdded: 2, rowsRejected: 0 });
    const recipes = await temporary.db.read.importRecipe.findMany({ where: { studyId: id } });
    expect(recipes.length).toBe(1);
  });
});

describe('taking an import back', () => {
  const LATER = [
    'tag,site,area,rated_power_kw,rated_voltage_v,rated_current_a,quoted_price,bearing_de,duty_profile,taken_at,input_power_kw,colour',
    'P-1,North,New hall,37,480,50,1234.56,9/12.7/58.5/0,1@4000,,,green',
    'P-1,North,,,,,,,0.5@100,2025-07-01,25,',
    'P-3,South,Yard,11,460,,,,,2025-07-01,6,',
  ].join('\n');

  test('restores the state before exactly: facts, notes, readings, sites and areas', async () => {
    const id = await study('undo');
    await imported(temporary.db, id, SHEET);
    const before = await dump(temporary.db, id);
    const done = await imported(temporary.db, id, LATER);
    expect(done).toMatchObject({ motorsAdded: 1, motorsChanged: 1, readingsAdded: 2 });
    expect(await dump(temporary.db, id)).not.toEqual(before);
    const undone = await undoImport(temporary.db, { studyId: id, batchId: done.batchId ?? '', who: 'C. Tester' });
    expect(undone).toMatchObject({ ok: true });
    expect(await dump(temporary.db, id)).toEqual(before);
    expect((await motorsByTag(id)).get('P-1')?.version).toBe(3);
    const again = await undoImport(temporary.db, { studyId: id, batchId: done.batchId ?? '', who: 'C. Tester' });
    expect(again).toMatchObject({ ok: false, problem: { code: 'already-undone' } });
    // And the sheet can be brought in once more.
    expect(await imported(temporary.db, id, LATER)).toMatchObject({ motorsAdded: 1, motorsChanged: 1, readingsAdded: 2 });
  });

  test('is refused in words while a later import builds on it, and goes once that is taken back', async () => {
    const id = await study('undo in order');
    const empty = await dump(temporary.db, id);
    const first = await imported(temporary.db, id, SHEET);
    const second = await imported(temporary.db, id, LATER, { who: 'D. Later' });
    const refused = await undoImport(temporary.db, { studyId: id, batchId: first.batchId ?? '', who: 'C' });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'built-on' } });
    expect(refused.ok ? '' : refused.problem.text).toContain('North / P-1 (D. Later,');
    expect(await undoImport(temporary.db, { studyId: id, batchId: second.batchId ?? '', who: 'C' })).toMatchObject({ ok: true });
    expect(await undoImport(temporary.db, { studyId: id, batchId: first.batchId ?? '', who: 'C' })).toMatchObject({ ok: true });
    expect(await dump(temporary.db, id)).toEqual(empty);
  });

  test('is refused after an edit of one of its motors, an excluded or an added reading; not after edits of others', async () => {
    const id = await study('undo after edits');
    await imported(temporary.db, id, SHEET.split('\n').slice(0, 3).join('\n'));
    const second = await imported(
      temporary.db,
      id,
      LATER.split('\n')
        .filter((line) => !line.startsWith('P-1'))
        .join('\n'),
    );
    const motors = await motorsByTag(id);
    const edit = (subjectId: string, label: string, batch: string, undoes?: string) =>
      temporary.db.write((tx) =>
        recordChange(tx, {
          studyId: id,
          who: 'E. Editor',
          subject: 'motor',
          subjectId,
          subjectLabel: label,
          what: 'changed',
          batch,
          undoes,
        }),
      );
    const undo = () => undoImport(temporary.db, { studyId: id, batchId: second.batchId ?? '', who: 'C' });
    await edit(motors.get('P-1')?.id ?? '', 'North / P-1', 'one');
    await edit(motors.get('P-3')?.id ?? '', 'South / P-3', 'two');
    const refused = await undo();
    expect(refused.ok ? '' : refused.problem.text).toContain('South / P-3 (E. Editor,');
    await edit(motors.get('P-3')?.id ?? '', 'South / P-3', 'three', 'two');
    const reading = motors.get('P-3')?.readings[0];
    await temporary.db.read.reading.update({ where: { id: reading?.id ?? '' }, data: { excludedAt: new Date() } });
    expect(await undo()).toMatchObject({ ok: false });
    await temporary.db.read.reading.update({ where: { id: reading?.id ?? '' }, data: { excludedAt: null } });
    expect(await undo()).toMatchObject({ ok: true });
  });

  test('belongs to its study', async () => {
    const [one, two] = [await study('mine'), await study('yours')];
    const done = await imported(temporary.db, one, SHEET);
    expect(await undoImport(temporary.db, { studyId: two, batchId: done.batchId ?? '', who: 'C' })).toMatchObject({ ok: false });
  });
});
