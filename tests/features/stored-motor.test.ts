import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Motor } from '@/lib/engine/motor';
import { readMotor, readStudyMotors } from '@/lib/features/fleet/data';
import { addMotors } from '@/lib/features/fleet/mutations';
import { readingRows } from '@/lib/features/fleet/stored-motor';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { newId } from '@/lib/platform/id';
import { arbitraryMotor } from './support/arbitrary-motor';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let temporary: TemporaryDatabase;
beforeAll(() => {
  temporary = temporaryDatabase();
});
afterAll(() => temporary.remove());

async function newStudy(name: string): Promise<string> {
  const id = newId();
  await temporary.db.read.study.create({ data: { id, name, settings: JSON.stringify(settingsToJson(defaultSettings())) } });
  return id;
}

/** What is kept: the duty's row only says whether it stands after the readings with a duty. */
function comparable(motor: Motor): unknown {
  const { plateDuty, ...rest } = motor;
  const carrying = motor.readings.filter(({ duty }) => duty !== undefined);
  const last = Math.max(0, ...carrying.map(({ row }) => row));
  return { ...rest, plateDuty: plateDuty?.steps, replaces: last > 0 && (plateDuty?.row ?? 0) > last };
}

describe('a motor and the rows that keep it', () => {
  test('any motor that the sheet can state comes back as it was', async () => {
    const { db } = temporary;
    let round = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(arbitraryMotor, { maxLength: 5, selector: ({ site, tag }) => `${site}\0${tag}` }),
        async (motors) => {
          round++;
          const studyId = await newStudy(`round trip ${round}`);
          const at = new Date(Date.UTC(2026, 0, 1));
          const ids = await db.write((tx) =>
            addMotors(
              tx,
              motors.map((motor) => ({ motor, notes: { colour: motor.tag } })),
              { studyId, currency: 'USD', at },
            ),
          );
          const stored = await readStudyMotors(db.read, studyId);
          expect(stored.length).toBe(motors.length);
          for (const [index, motor] of motors.entries()) {
            const found = stored.find(({ id }) => id === ids[index]);
            expect(found === undefined ? undefined : comparable(found.motor)).toEqual(comparable(motor));
            expect(found?.notes).toEqual({ colour: motor.tag });
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('numbers written in bulk keep their last bit', async () => {
    const { db } = temporary;
    const studyId = await newStudy('last bit');
    // Decimal texts that SQLite 3.45 reads with an error in the last bit, found by trial among random numbers.
    const powers = [3096.921762646866, 0.335757924021477, 0.006935563259424789, 0.000005612477549615235, 29.828];
    const plate = { ratedVoltageV: 460, ratedPowerUnit: 'kW', status: 'running', machineKind: 'cage' } as const;
    const motors = powers.map((ratedPowerKw, index): Motor => {
      return { site: '', tag: `M${index}`, plate: { ...plate, ratedPowerKw }, readings: [] };
    });
    await db.write((tx) =>
      addMotors(
        tx,
        motors.map((motor) => ({ motor })),
        { studyId, currency: 'USD', at: new Date() },
      ),
    );
    const stored = await readStudyMotors(db.read, studyId);
    expect(stored.map(({ motor }) => motor.plate.ratedPowerKw)).toEqual(powers);
  });

  test('an excluded reading is listed but does not count; the numbers of the others stay', async () => {
    const { db } = temporary;
    const studyId = await newStudy('excluded');
    const plate = { ratedPowerKw: 30, ratedVoltageV: 460, ratedPowerUnit: 'kW', status: 'running', machineKind: 'cage' } as const;
    const reading = { readingsAt: 'motor', readingCondition: 'coupled' } as const;
    const motor: Motor = {
      site: 'North',
      tag: 'P-1',
      area: 'Hall 2',
      plate,
      readings: [
        { ...reading, row: 4, takenAt: '2025-01-01', inputPowerKw: 20 },
        { ...reading, row: 2, takenAt: '2025-02-01', inputPowerKw: 21 },
      ],
    };
    const [id = ''] = await db.write((tx) => addMotors(tx, [{ motor }], { studyId, currency: 'USD', at: new Date() }));
    const before = await readMotor(db.read, id);
    const first = before?.readings.find(({ reading: { row } }) => row === 4);
    await db.read.reading.update({
      where: { id: first?.id ?? '' },
      data: { excludedAt: new Date(0), excludedBy: 'A. Tester', excludedReason: 'clamp reversed' },
    });
    const after = await readMotor(db.read, id);
    expect(after?.motor.readings.map(({ row }) => row)).toEqual([2]);
    expect(after?.readings.map(({ reading: { row }, excluded }) => [row, excluded?.reason])).toEqual([
      [2, undefined],
      [4, 'clamp reversed'],
    ]);
    expect(after?.motor.area).toBe('Hall 2');
    expect(await readMotor(db.read, 'nobody')).toBeUndefined();
    expect((await readStudyMotors(db.read, studyId, { ids: [id, 'nobody'] })).map((each) => each.id)).toEqual([id]);
  });

  test('readings of a second sheet, or typed in, are numbered after those before', () => {
    const rows = (...sheetRows: (number | null)[]) => readingRows(sheetRows.map((sheetRow) => ({ sheetRow })));
    expect(rows(2, 5, 9)).toEqual([2, 5, 9]);
    expect(rows(5, 9, 2, null, 30)).toEqual([5, 9, 10, 11, 30]);
    expect(rows(null, null)).toEqual([2, 3]);
  });

  test('motors come in the order in which people count', async () => {
    const { db } = temporary;
    const studyId = await newStudy('order');
    const plate = { ratedPowerKw: 30, ratedVoltageV: 460, ratedPowerUnit: 'kW', status: 'running', machineKind: 'cage' } as const;
    const motors = ['A13', 'A2', 'A132'].map((tag): Motor => ({ site: '', tag, plate, readings: [] }));
    await db.write((tx) =>
      addMotors(
        tx,
        motors.map((motor) => ({ motor })),
        { studyId, currency: 'USD', at: new Date() },
      ),
    );
    expect((await readStudyMotors(db.read, studyId)).map(({ motor }) => motor.tag)).toEqual(['A2', 'A13', 'A132']);
  });
});
