/** What is said of slips in a call: one sentence that names what was probably meant. */
import { describe, expect, it } from 'vitest';
import { readCall } from '@/lib/cli/arguments';
import { signHint } from '@/lib/cli/study-input';
import { faultOf } from '@/lib/cli/words';
import { readSettings } from '@/lib/features/study/settings';
import { scratch, studyCommand } from './run';

const { file, folder } = scratch();

describe('a call with a slip', () => {
  it.each([
    [['evalute', 'x.csv'], 'There is no command "evalute". Did you mean evaluate? Known: '],
    [['x.csv', 'check'], 'There is no command "x.csv". The command comes first: study check x.csv. Known: '],
    [['guess'], 'There is no command "guess". Known: '],
    [['check', 'x.csv', '--setings', 's.json'], "Unknown option '--setings'. Did you mean --settings? Known options: "],
    [['check', 'x.csv', '--colour', 'blue'], "Unknown option '--colour'. Known options: "],
  ])('%j', (args, words) => {
    expect(() => readCall(args)).toThrow(words);
  });

  it('names the tag that was meant, and says of a folder that it is one', () => {
    const fleet = file('tags.csv', 'tag,rated_power_kw,rated_voltage_v\nP-101A,30,460\nQ-7,30,460\n');
    expect(studyCommand('explain', fleet, '--tag', 'p-101a').err).toContain('No motor has the tag "p-101a" in');
    expect(studyCommand('explain', fleet, '--tag', 'p-101a').err).toContain('Did you mean P-101A?');
    expect(studyCommand('explain', fleet, '--tag', 'pump in the cellar').err).not.toContain('Did you mean');
    expect(studyCommand('evaluate', fleet, '--settings', folder).err).toBe(`${folder} cannot be read: it is a folder.\n`);
  });
});

describe('the words about a file', () => {
  it('say its name once, by the path that was given', () => {
    expect(faultOf('a/b.csv', { text: 'b.csv is empty.', remedy: 'Fill it.' })).toBe('a/b.csv is empty. Fill it.');
    expect(faultOf('a/b.csv', { text: 'A quote is open.', remedy: 'Close it.' })).toBe('a/b.csv: A quote is open. Close it.');
  });
  it('tell of the other decimal sign where cells show it, and not where digits are grouped', () => {
    expect(signHint([{ code: 'grouped-thousands' }], '--decimal', ',')).toEqual([]);
    expect(signHint([{ code: 'other-decimal-sign' }], '--decimal', ',')).toEqual([
      'If the file is written with a decimal point throughout, say --decimal .',
    ]);
  });
});

it('column names below a title are read from there, and said', () => {
  const fleet = file('title.csv', 'Motors of the mill;;\n\ntag;rated_power_kw;rated_voltage_v\nP-1;30;460\nP-2;fifty;460\n');
  const { code, out } = studyCommand('check', fleet);
  expect(out).toContain('row 1 with “Motors of the mill”');
  expect(out).toContain('row 5');
  expect(code).toBe(
    studyCommand('check', file('plain.csv', 'tag,rated_power_kw,rated_voltage_v\nP-1,30,460\nP-2,fifty,460\n')).code,
  );
});

describe('settings with a slip', () => {
  it.each([
    ['{"discount_rate": "0,08"}', 'Write the number without quotes: 0.08.'],
    ['{"discount_rate": "eight"}', 'Correct the value, or leave the key out'],
    ['{"energy_price_per_kwh": 0,11}', 'decimals take a point, as in 0.11.'],
    ['[]', 'Write the settings in one pair of braces { }, as the settings command prints them.'],
    ['null', 'Write the settings in one pair of braces { }'],
    ['{"policy": {"at_failure": "scrap"}}', 'policy.at_failure: is scrap, and may be repair or replace.'],
  ])('%s', (text, words) => {
    const read = readSettings(text);
    expect(read.ok ? '' : `${read.problem.text} ${read.problem.remedy}`).toContain(words);
  });
});
