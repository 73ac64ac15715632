import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine';
import { CONDITION } from '@/lib/engine/condition/findings';
import { LOAD } from '@/lib/engine/load/findings';
import { SUSPICION } from '@/lib/engine/load/suspicion';
import { PLATE } from '@/lib/engine/nameplate/findings';
import { TRUST } from '@/lib/engine/trust/findings';
import { unpackResult } from '@/lib/features/evaluation/data';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readingForm, wantedFirst } from '@/lib/features/motor/form-fields';
import { ASKS } from '@/lib/features/trust/asks';
import { readTrustList } from '@/lib/features/trust/data';
import { roundLines } from '@/lib/features/trust/round-lines';
import { LOADS_WANTED, roundMotors, type TrustItem, WANTED } from '@/lib/features/trust/schema';
import { wantedColumns } from '@/lib/features/trust/wanted-columns';
import { motorOf, study } from '../engine/support/study';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

describe('what a finding asks for', () => {
  it('is said for every code of plate, load, suspicion, trust and condition, and for no other', () => {
    const codes = [PLATE, LOAD, SUSPICION, TRUST, CONDITION].flatMap(({ kinds }) => Object.keys(kinds));
    expect(Object.keys(ASKS).sort()).toEqual([...new Set(codes)].sort());
  });

  it('a signature is read at 75 % load, and never alone: power, speed, volts and amperes go with it', () => {
    for (const code of ['signature-under-loaded', 'signature-half-weight', 'signature-load-unknown']) {
      expect(ASKS[code]?.load).toBe('three-quarters');
      expect(ASKS[code]?.readings).toEqual(expect.arrayContaining(['spectrum', 'voltages', 'currents', 'power', 'speed']));
    }
  });
});

describe('the blanks of a round', () => {
  it('have a place for each fact whose want leaves a verdict out: the foundation, the class of the insulation', () => {
    const evaluation = evaluateMotor(motorOf({ reading: { vibrationMmS: 3 } }), study());
    const asked = ['vibration-foundation-unknown', 'temperature-class-unknown'].flatMap((code) => ASKS[code]?.readings ?? []);
    const lines = roundLines(evaluation, asked, [0.5, 1], []).get('On the way in') ?? [];
    expect(lines.map(({ name }) => name)).toEqual(['Foundation', 'Plate: insulation class, rise class, year wound']);
    // A blank without a unit is one that nobody can fill in.
    for (const line of roundLines(evaluation, WANTED, [0.5, 1], []).values())
      for (const { name, unit } of line) expect(unit, name).not.toBe('');
  });
});

describe('the cells of a reading that are wanted', () => {
  it('come first behind when it was read, each once, and all others are folded behind them', () => {
    const form = readingForm('USD', []);
    const names = (groups: typeof form) => groups.flatMap(({ fields }) => fields.map(({ name }) => name));
    const split = wantedFirst(form, wantedColumns(WANTED));
    expect(split.map(({ folded }) => folded === true)).toEqual([false, false, ...split.slice(2).map(() => true)]);
    expect([...names([...split])].sort()).toEqual([...names(form)].sort());
    // Every column that is asked for stands in the form.
    expect(split[1]?.fields.map(({ name }) => name)).toEqual(wantedColumns(WANTED));
    expect(split[0]).toEqual(form[0]);
  });

  it('leave the form as it is where nothing is wanted but what is no reading', () => {
    const form = readingForm('USD', []);
    expect(wantedFirst(form, wantedColumns(['plate', 'foundation']))).toEqual(form);
  });
});

describe('the list of what may not be used', () => {
  let temporary: TemporaryDatabase;
  let studyId: string;
  let items: readonly TrustItem[] = [];
  beforeAll(async () => {
    temporary = temporaryDatabase();
    studyId = await studyWith(temporary.db, someMotors(200));
  });
  afterAll(() => temporary.remove());

  it('is not there before the first evaluation', async () => {
    expect(await readTrustList(temporary.db.read, studyId)).toBeUndefined();
  });

  it('holds every motor that is not sound, each with a reason and a way out', async () => {
    await temporary.db.write((tx) => enqueueEvaluation(tx, studyId));
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    const list = await readTrustList(temporary.db.read, studyId);
    items = list?.items ?? [];
    const rows = await temporary.db.read.motorEvaluation.findMany({ where: { studyId } });
    const notSound = rows.filter(({ trust }) => trust !== 'sound');
    expect(list?.byLevel['not-usable']).toBe(rows.filter(({ trust }) => trust === 'not-usable').length);
    expect(list?.total).toBe(200);
    for (const row of notSound) {
      const item = items.find(({ tag }) => tag === row.tag);
      expect(item?.level, `${row.tag}: ${unpackResult(row.details).trust.findings.map(({ code }) => code)}`).toBe(row.trust);
      for (const doubt of item?.doubts ?? [])
        expect(doubt.readings.length > 0 || doubt.desk !== undefined, doubt.text).toBe(true);
    }
  });

  it('names the planted ones: a sideband at low load is read again at 75 % load, never-measured motors at the usual one', () => {
    const under = items.filter(({ doubts }) => doubts.some(({ text }) => text.includes('it says nothing, neither good nor bad')));
    expect(under.length).toBeGreaterThan(0);
    for (const { load, wanted } of under) {
      expect(load).toBe('three-quarters');
      expect(wanted).toContain('spectrum');
    }
    const never = items.filter(({ doubts }) => doubts.some(({ text }) => text.startsWith('There is no reading')));
    expect(never.length).toBeGreaterThan(0);
    for (const { level, wanted } of never) {
      expect(level).toBe('not-usable');
      expect(wanted).toEqual(expect.arrayContaining(['voltages', 'currents', 'power', 'speed']));
    }
  });

  it('is the same for results kept from before the open findings stood beside them', async () => {
    const now = await readTrustList(temporary.db.read, studyId);
    expect(now?.items).toEqual(items);
    await temporary.db.write((tx) => tx.motorEvaluation.updateMany({ where: { studyId }, data: { openFindings: null } }));
    expect(await readTrustList(temporary.db.read, studyId)).toEqual(now);
  });

  it('keeps readings in the order of a round, and the highest load that one of them asks for', () => {
    for (const { wanted, load, doubts } of items) {
      expect(wanted).toEqual(WANTED.filter((each) => wanted.includes(each)));
      const loads = doubts.filter((doubt) => doubt.load !== 'stopped').map((doubt) => LOADS_WANTED.indexOf(doubt.load));
      expect(LOADS_WANTED.indexOf(load)).toBe(Math.max(0, ...loads));
    }
  });
});

describe('the motors of a round', () => {
  it('are taken from the address once each; anything but an id is passed over', () => {
    const id = '01234567-89ab-7def-8123-456789abcdef';
    expect(roundMotors(undefined)).toEqual([]);
    expect(roundMotors(id)).toEqual([id]);
    expect(roundMotors([id, id, '../etc', ''])).toEqual([id]);
  });
});
