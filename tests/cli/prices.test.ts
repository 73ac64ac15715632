/** The price list of a call: which one, how it is written, and what becomes of rows that cannot be used. Prices are invented. */
import { describe, expect, it } from 'vitest';
import { resultsShape } from './results-shape';
import { scratch, studyCommand } from './run';

const { file } = scratch();
const FLEET = file(
  'fleet.csv',
  'tag,rated_power_kw,rated_voltage_v,rated_speed_rpm,hours_per_year,taken_at,input_power_kw\nP-1,30,460,1765,6000,2025-06-01,24.4\n',
);
const COMMA = file(
  'comma.csv',
  '\ufeffitem;rated_power_kw;efficiency_class;price\r\nmotor;30,0;premium;3000,50\r\nrewind;30;;1200\r\nremoval-install;;;99,5\r\n',
);
const POINT = file('point.csv', 'item,rated_power_kw,efficiency_class,price\nmotor,30,premium,2000\nrewind,30,,1200\n');
const SETTINGS = file('study.json', '{"prices": "comma.csv"}');

const ALL = ['evaluate', 'plan', 'measures', 'check'] as const;
const costNow = (out: string) =>
  resultsShape.parse(JSON.parse(out)).motors[0]?.options.find(({ action, timing }) => action === 'replace' && timing === 'now')
    ?.cost;

describe('the price list of a call', () => {
  it('is read with the signs that are said for it, whether the settings or the call name it', () => {
    for (const named of [
      ['--settings', SETTINGS],
      ['--prices', COMMA],
    ]) {
      const ran = studyCommand('evaluate', FLEET, ...named, '--prices-decimal', ',', '--prices-delimiter', 'semicolon');
      expect([ran.code, costNow(ran.out)]).toEqual([0, 3100]);
    }
  });

  it('that the call names takes the place of that of the settings', () => {
    const ran = studyCommand('evaluate', FLEET, '--settings', SETTINGS, '--prices', POINT);
    expect([ran.code, costNow(ran.out)]).toEqual([0, 2000]);
  });

  it('of which no row can be used ends every command with the rows, and with how a comma is announced', () => {
    for (const command of ALL) {
      const ran = studyCommand(command, FLEET, '--prices', file('all.csv', 'item;price\nmotor;3000,50\nrewind;1200,1\n'));
      expect([command, ran.code, ran.out]).toEqual([command, 2, '']);
      expect(ran.err).toContain('all.csv: no row of the price list can be used.\n');
      expect(ran.err).toContain('row 3, price: “1200,1” uses a comma');
      expect(ran.err).toMatch(/with a decimal comma throughout, say --prices-decimal ,\n$/);
    }
  });

  it('of which some rows cannot be used is told from a sound one by the exit code', () => {
    for (const command of ALL) {
      const ran = studyCommand(command, FLEET, '--prices', COMMA);
      expect([command, ran.code]).toEqual([command, 3]);
      expect(ran.err).toContain('row 4, price: “99,5” uses a comma');
    }
    expect(studyCommand('evaluate', FLEET, '--prices', POINT).code).toBe(0);
  });

  it.each([
    ['no list', ['--prices-decimal', ','], 'No price list is named that --prices-… could speak of.'],
    ['a sign that is none', ['--prices', POINT, '--prices-decimal', ';'], '--prices-decimal ;: a point or a comma.'],
    ['a list that is not there', ['--prices', '/nowhere/p.csv'], '/nowhere/p.csv'],
  ])('ends with 2 and a sentence on %s', (_, args, words) => {
    for (const command of ['measures', 'check']) {
      const ran = studyCommand(command, FLEET, ...args);
      expect([command, ran.code, ran.out]).toEqual([command, 2, '']);
      expect(ran.err).toContain(words);
    }
  });

  it('is not asked for where prices are no matter, and settings that cannot be read are', () => {
    expect(studyCommand('lines', FLEET, '--tag', 'P-1', '--settings', file('s.json', '{"prices": "nowhere.csv"}')).code).toBe(0);
    const ran = studyCommand('check', FLEET, '--settings', file('bad.json', '{"discount_rte": 0.08}'));
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toContain('Did you mean discount_rate?');
  });
});

describe('a fleet sheet whose cells are refused for their signs', () => {
  it.each(['evaluate', 'check'])('is told how its sign is announced (%s)', (command) => {
    const sheet = file('signs.csv', 'tag;rated_power_kw;rated_voltage_v\nP-1;30,5;460\nP-2;30;460\n');
    const ran = studyCommand(command, sheet);
    expect(ran.code).toBe(3);
    expect(ran.err).toMatch(/decimal comma throughout, say --decimal ,\n$/);
    expect(studyCommand(command, sheet, '--decimal', ',').err).not.toContain('throughout');
  });
});
