import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readMotor } from '@/lib/features/fleet/data';
import { figureChanges } from '@/lib/features/motor/compare';
import { readBatch, readHistory } from '@/lib/features/motor/data';
import { addReading, changePlate, type EditKey, setExclusion } from '@/lib/features/motor/mutations';
import { PLATE_COLUMNS, plateCells, typedPlate, typedReading } from '@/lib/features/motor/typed-motor';
import { studyInForce } from '@/lib/features/study/context';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let temporary: TemporaryDatabase;
let study: string;
let motorId: string;

beforeEach(async () => {
  temporary = temporaryDatabase();
  study = await studyWith(temporary.db, someMotors(14).slice(13));
  motorId = (await temporary.db.read.motor.findFirst({ where: { studyId: study } }))?.id ?? '';
});
afterEach(() => temporary.remove());

const stored = async () => {
  const found = await readMotor(temporary.db.read, motorId);
  if (!found) throw new Error('the motor was planted');
  return found;
};
const key = async (changes: Partial<EditKey> = {}): Promise<EditKey> => ({
  studyId: study,
  motorId,
  version: (await stored()).version,
  who: 'R. Example',
  why: 'plate read again',
  ...changes,
});

async function change(cells: Readonly<Record<string, string>>, edit: Partial<EditKey> = {}, undoes?: string) {
  const { motor } = await stored();
  const read = await typedPlate(motor, new Map([...plateCells(motor), ...Object.entries(cells)]));
  if (!read.ok) throw new Error(JSON.stringify(read.refused));
  return changePlate(temporary.db, await key(edit), read.value, undoes);
}

describe('the plate’s form', () => {
  it('sent as it is shown changes nothing', async () => {
    const before = await stored();
    expect(await change({})).toMatchObject({ ok: true, value: { changes: 0 } });
    expect((await stored()).version).toBe(before.version);
  });

  it('writes each changed fact into the history, raises the version and queues an evaluation', async () => {
    const before = await stored();
    const done = await change({ rated_current_a: '43.5', frame: '286T' });
    expect(done).toMatchObject({ ok: true, value: { changes: 2, version: before.version + 1 } });
    const after = await stored();
    expect(after.motor.plate.ratedCurrentA).toBe(43.5);
    expect(after.motor.plate.frame).toBe('286T');
    expect(after.motor.readings).toEqual(before.motor.readings);
    const history = await readHistory(temporary.db.read, motorId, []);
    expect(history.map((entry) => entry.field).sort()).toEqual(['Frame', 'Rated current']);
    expect(history.every((entry) => entry.who === 'R. Example' && !entry.verified && entry.why === 'plate read again')).toBe(
      true,
    );
    expect(await temporary.db.read.evaluationRun.count({ where: { studyId: study, state: 'queued' } })).toBe(1);
  });

  it('an emptied cell means not known, and what is required stays required', async () => {
    await change({ rated_current_a: '' });
    expect((await stored()).motor.plate.ratedCurrentA).toBeUndefined();
    const { motor } = await stored();
    const read = await typedPlate(motor, new Map([...plateCells(motor), ['rated_voltage_v', '']]));
    expect(read.ok).toBe(false);
    if (!read.ok) expect(Object.keys(read.refused)).toEqual(['rated_voltage_v']);
  });

  it('is refused in words when somebody else changed the motor meanwhile, and nothing is written', async () => {
    const old = (await stored()).version;
    await change({ frame: '286T' });
    const late = await change({ frame: '324T' }, { version: old });
    expect(late).toMatchObject({ ok: false, problem: { code: 'changed-meanwhile' } });
    expect((await stored()).motor.plate.frame).toBe('286T');
  });

  it('a change is taken back exactly, and that stands in the history too', async () => {
    const before = plateCells((await stored()).motor);
    const done = await change({ rated_current_a: '77', year_built: '1969', frame: '' });
    if (!done.ok) throw new Error(done.problem.text);
    const facts = await readBatch(temporary.db.read, motorId, done.value.batch);
    await change(Object.fromEntries(facts.map(({ field, from }) => [field, from])), {}, done.value.batch);
    expect(plateCells((await stored()).motor)).toEqual(before);
    expect((await readHistory(temporary.db.read, motorId, [])).filter((entry) => entry.what === 'undone').length).toBe(
      facts.length,
    );
  });

  it('says which main figures a change moved', async () => {
    const force = await studyInForce(temporary.db.read, study);
    const { motor } = await stored();
    const read = await typedPlate(motor, new Map([...plateCells(motor), ['nominal_efficiency_pct', '84']]));
    if (!read.ok || !force) throw new Error('the plate is sound');
    const changes = figureChanges(motor, read.value, force.context);
    expect(changes.map((entry) => entry.name)).toContain('Efficiency');
    expect(figureChanges(motor, motor, force.context)).toEqual([]);
  });

  it.each([
    ['4.3', 4.3],
    ['1e3', 1000],
    [' 4.3 ', 4.3],
    ['1.234', 1.234],
    ['-0', 0],
    ['1e-3', 0.001],
  ])('understands “%s”', async (text, value) => {
    const { motor } = await stored();
    const read = await typedPlate(motor, new Map([...plateCells(motor), ['altitude_m', text]]));
    expect(read.ok && read.value.plate.altitudeM).toBe(value);
  });

  it.each(['4,3', '1 234', '４.３', '4.3 kW', 'NaN', '1,234.5', '1\u00a0234', '٤.٣', 'about 4', '4..3', '-'])(
    'refuses “%s” in words, naming the cell',
    async (text) => {
      const { motor } = await stored();
      const read = await typedPlate(motor, new Map([...plateCells(motor), ['altitude_m', text]]));
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.refused.altitude_m?.length).toBeGreaterThan(20);
    },
  );

  it('shows every column of the sheet that belongs to the motor', () => {
    expect(PLATE_COLUMNS.length).toBeGreaterThan(50);
  });
});

describe('readings', () => {
  const CELLS = new Map([
    ['taken_at', '2025-12-01T09:30'],
    ['input_power_kw', '14.2'],
    ['voltage_v', '459'],
    ['shaft_speed_rpm', '1778'],
  ]);

  it('a typed reading is added once, with its entry; the same again is refused', async () => {
    const { motor } = await stored();
    const read = await typedReading(motor, CELLS);
    if (!read.ok) throw new Error(JSON.stringify(read.refused));
    expect((await addReading(temporary.db, await key(), read.value)).ok).toBe(true);
    const after = await stored();
    expect(after.motor.readings.length).toBe(motor.readings.length + 1);
    expect(after.motor.readings.some((reading) => reading.inputPowerKw === 14.2)).toBe(true);
    expect(await addReading(temporary.db, await key(), read.value)).toMatchObject({
      ok: false,
      problem: { code: 'same-reading' },
    });
  });

  it('without anything measured, or with a refused cell, nothing is written', async () => {
    const { motor } = await stored();
    expect((await typedReading(motor, new Map([['taken_at', '2025-12-01']]))).ok).toBe(false);
    const bad = await typedReading(motor, new Map([...CELLS, ['input_power_kw', 'twelve']]));
    expect(bad.ok).toBe(false);
    if (!bad.ok) expect(bad.refused.input_power_kw).toBeDefined();
  });

  it('is left out with a reason, never rewritten, and taken back in', async () => {
    const before = await stored();
    const reading = before.readings[0];
    expect(
      (await setExclusion(temporary.db, await key(), { kind: 'reading', id: reading?.id ?? '' }, 'another motor was read')).ok,
    ).toBe(true);
    const out = await stored();
    expect(out.motor.readings.length).toBe(before.motor.readings.length - 1);
    expect(out.readings[0]?.excluded).toMatchObject({ by: 'R. Example', reason: 'another motor was read' });
    expect(out.readings[0]?.reading).toEqual(reading?.reading);
    expect(await setExclusion(temporary.db, await key(), { kind: 'reading', id: reading?.id ?? '' }, 'again')).toMatchObject({
      ok: false,
    });
    expect((await setExclusion(temporary.db, await key(), { kind: 'reading', id: reading?.id ?? '' }, undefined)).ok).toBe(true);
    expect((await stored()).motor.readings).toEqual(before.motor.readings);
    const history = await readHistory(temporary.db.read, motorId, [reading?.id ?? '']);
    expect(history.map((entry) => entry.what)).toEqual(['included', 'excluded']);
  });
});
