import { spawn, spawnSync } from 'node:child_process';
import { existsSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ExcelJS from 'exceljs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { generateDemo } from '@/lib/features/demo/generate';
import { writeFleetCsv } from '@/lib/features/fleet/write-csv';
import { noWishes } from '@/lib/features/plan/wishes';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { type ResultsFile, resultsShape } from './results-shape';
import { ROOT, scratch, studyCommand } from './run';

const { folder, file } = scratch();
const HEADER =
  'tag,site,rated_power_hp,rated_voltage_v,rated_current_a,rated_speed_rpm,nominal_efficiency_pct,hours_per_year,taken_at,voltage_v,current_a,input_power_kw,shaft_speed_rpm';
const ROW = 'P-1,North,50,460,61,1765,91.7,6000,2025-06-01,462,40.6,24.4,1779';
const sheet = (name: string, ...rows: string[]) => file(name, `${[HEADER, ...rows].join('\n')}\n`);

function results(...args: string[]): { code: number | null; results: ResultsFile; err: string } {
  const ran = studyCommand('evaluate', ...args);
  return { code: ran.code, err: ran.err, results: resultsShape.parse(JSON.parse(ran.out)) };
}

describe('study', () => {
  it('says how it is used, and its version', () => {
    const help = studyCommand('--help');
    expect(help.code).toBe(0);
    for (const command of ['evaluate', 'check', 'explain', 'measures', 'lines', 'settings']) expect(help.out).toContain(command);
    const { version } = JSON.parse(readFileSync(path.join(ROOT, 'package.json'), 'utf8')) as { version: string };
    expect(studyCommand('--version').out.trim()).toBe(version);
  });

  it.each([
    ['no command', [], 'No command was given'],
    ['an unknown command', ['guess'], 'There is no command "guess"'],
    ['an unknown option', ['check', 'x.csv', '--colour', 'blue'], '--colour'],
    ['no sheet', ['evaluate'], 'wants one fleet sheet'],
    ['a format it does not write', ['evaluate', 'x.csv', '--format', 'pdf'], 'json or csv or xlsx'],
    ['a file that is not there', ['evaluate', '/nowhere/fleet.csv'], '/nowhere/fleet.csv'],
    ['explain without a tag', ['explain', 'x.csv'], '--tag'],
    ['lines without a tag', ['lines', 'x.csv'], '--tag'],
    ['no number of jobs', ['evaluate', 'x.csv', '--jobs', '0'], '--jobs'],
    ['a decimal sign that is none', ['evaluate', 'x.csv', '--decimal', ';'], '--decimal'],
  ])('ends with 2 and a sentence on %s', (_, args, words) => {
    const ran = studyCommand(...args);
    expect(ran.code).toBe(2);
    expect(ran.out).toBe('');
    expect(ran.err).toContain(words);
    expect(ran.err).not.toContain('    at ');
  });

  it('prints the default settings as JSON and nothing else', () => {
    const ran = studyCommand('settings');
    expect(ran.code).toBe(0);
    expect(JSON.parse(ran.out)).toEqual({ ...settingsToJson(defaultSettings()), plan: noWishes() });
  });
});

describe('study evaluate', () => {
  it('writes a workbook of every option, and ends as it does for other formats', async () => {
    const out = path.join(folder, 'options.xlsx');
    const ran = studyCommand('evaluate', sheet('book.csv', ROW, 'P-2,North,0,460,,,,,,,,,'), '--format', 'xlsx', '--out', out);
    expect(ran.err).toContain('1 row rejected');
    expect(ran.code).toBe(3);
    const book = new ExcelJS.Workbook();
    await book.xlsx.readFile(out);
    expect(book.worksheets.map((each) => each.name)).toEqual(['Assumptions', 'Options', 'Cash flow', 'Years', 'Working']);
    expect(book.getWorksheet('Options')?.getCell('C2').value).toBe('keep');
    expect(book.definedNames.getRanges('energy_price_per_kwh').ranges).toHaveLength(1);
  });

  it('writes the contract’s results: finite numbers, losses that add up, keep among the options', () => {
    const { code, results: written } = results(sheet('one.csv', ROW));
    expect(code).toBe(0);
    const motor = written.motors[0];
    expect(motor?.rank).toBe(1);
    expect(motor?.options.some((option) => option.action === 'keep' && option.net_present_value?.value === 0)).toBe(true);
    const { losses, input_power, shaft_power, efficiency } = motor ?? {};
    const sum =
      (losses?.stator.value ?? 0) +
      (losses?.rotor.value ?? 0) +
      (losses?.core.value ?? 0) +
      (losses?.friction_windage.value ?? 0) +
      (losses?.stray.value ?? 0);
    expect(sum).toBeCloseTo(losses?.total.value ?? 0, 7);
    expect((input_power?.value ?? 0) - (shaft_power?.value ?? 0)).toBeCloseTo(losses?.total.value ?? 0, 7);
    expect(efficiency?.value).toBeCloseTo((shaft_power?.value ?? 0) / (input_power?.value ?? 1), 8);
  });

  it('keeps the good rows, names the bad ones by row and column, and ends with 3', () => {
    const {
      code,
      results: written,
      err,
    } = results(
      sheet('mixed.csv', ROW, 'P-2,North,0,460,,,,,,,,,', 'P-3,North,"1,234.5",460,,,,,,,,,', ROW.replace('P-1', 'P-4')),
    );
    expect(code).toBe(3);
    expect(written.motors.map((motor) => motor.tag)).toEqual(['P-1', 'P-4']);
    expect(written.rejected.map(({ row, column }) => [row, column])).toEqual([
      [3, 'rated_power_hp'],
      [4, 'rated_power_hp'],
    ]);
    expect(err).toContain('row 3');
  });

  it('a row’s result does not depend on the other rows', () => {
    const alone = results(sheet('alone.csv', ROW)).results.motors[0];
    const among = results(
      sheet('among.csv', 'A-1,North,100,460,,1780,94.1,8000,2025-05-01,455,90,62,1787', ROW),
    ).results.motors.find((motor) => motor.tag === 'P-1');
    expect({ ...among, rank: 0, readings: [] }).toEqual({ ...alone, rank: 0, readings: [] });
  });

  it('lists motors in natural order with unique ranks', () => {
    const { results: written } = results(
      sheet('order.csv', ROW.replace('P-1', 'A13'), ROW.replace('P-1', 'A2'), ROW.replace('P-1', 'A1')),
    );
    expect(written.motors.map((motor) => motor.tag)).toEqual(['A1', 'A2', 'A13']);
    expect(new Set(written.motors.map((motor) => motor.rank)).size).toBe(3);
  });

  it('writes --out through a link, keeps who may read the file, and leaves a device and a pipe what they are', () => {
    const good = sheet('through.csv', ROW);
    const [real, link, pipe] = ['real.json', 'link.json', 'pipe.json'].map((name) => path.join(folder, name)) as [
      string,
      string,
      string,
    ];
    writeFileSync(real, 'old', { mode: 0o600 });
    symlinkSync(real, link);
    expect(studyCommand('settings', '--out', link).code).toBe(0);
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(JSON.parse(readFileSync(real, 'utf8'))).toMatchObject({ schema: 1 });
    expect(statSync(real).mode & 0o777).toBe(0o600);
    expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
    const read = `cat ${pipe} & exec "$@"`;
    const ran = spawnSync('sh', ['-c', read, 'sh', process.execPath, 'scripts/study.mjs', 'check', good, '--out', pipe], {
      cwd: ROOT,
      encoding: 'utf8',
    });
    expect(ran.status).toBe(0);
    expect(ran.stdout).toContain('1 motor');
    expect(lstatSync(pipe).isFIFO()).toBe(true);
  });

  it('writes in CSV what the results hold, each motor with its own rank', () => {
    const three = sheet(
      'both.csv',
      ROW.replace('P-1', 'A-2'),
      ROW.replace('P-1', 'A-10').replace('24.4', '23.1'),
      'B-1,"South, old",100,460,,1780,,8000,2025-05-01,455,90,62,1787',
    );
    const rows = studyCommand('evaluate', three, '--format', 'csv').out;
    const [head, ...lines] = Papa.parse<string[]>(rows.trim()).data;
    const cell = (tag: string, name: string) => lines.find((line) => line[2] === tag)?.[head?.indexOf(name) ?? -1];
    const { motors } = results(three).results;
    expect(lines.map(([, site, tag]) => [site, tag])).toEqual(motors.map(({ site, tag }) => [site, tag]));
    for (const { tag, rank, efficiency, decision, options } of motors) {
      const option = options.find(({ id }) => id === decision.option);
      expect(cell(tag, 'rank')).toBe(String(rank));
      expect(cell(tag, 'efficiency')).toBe(String(efficiency?.value));
      expect(cell(tag, 'efficiency_u')).toBe(String(efficiency?.u));
      expect(cell(tag, 'because')).toBe(decision.because.map(({ text }) => text).join(' '));
      expect(cell(tag, 'net_present_value')).toBe(String(option?.net_present_value?.value ?? ''));
    }
  });

  it('a header without rows is an empty result and ends with 0', () => {
    const { code, results: written } = results(sheet('empty.csv'));
    expect(code).toBe(0);
    expect(written.motors).toEqual([]);
  });

  it('reads words for empty cells and a decimal comma when told', () => {
    const semicolon = file(
      'comma.csv',
      `${HEADER.replaceAll(',', ';')}\nP-1;North;50;460;-;1765;91,7;6000;2025-06-01;462;40,6;24,4;1779\n`,
    );
    const { code, results: written } = results(semicolon, '--decimal', ',', '--empty', '-,n/a');
    expect(code).toBe(0);
    expect(written.motors[0]?.readings[0]?.metered.input_power).toBe(24.4);
  });

  it('writes --out whole or not at all, and CSV with guarded text', () => {
    const target = path.join(folder, 'out.csv');
    const ran = studyCommand('evaluate', sheet('guard.csv', ROW.replace('P-1', '=1+2')), '--format', 'csv', '--out', target);
    expect(ran.code).toBe(0);
    expect(ran.out).toBe('');
    const text = readFileSync(target, 'utf8');
    expect(text.split('\n')[0]).toContain('load_fraction');
    expect(text).not.toMatch(/(^|,)"?=1\+2/m);
    expect(text).toContain('=1+2');
    const failed = path.join(folder, 'never.json');
    expect(studyCommand('evaluate', '/nowhere.csv', '--out', failed).code).toBe(2);
    expect(existsSync(failed)).toBe(false);
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('says in one sentence why --out cannot be written, and ends with 2', () => {
    const good = sheet('out-to.csv', ROW);
    for (const target of [path.join(folder, 'no-such-folder', 'x.json'), folder]) {
      for (const args of [['evaluate', good], ['check', good], ['settings']]) {
        const ran = studyCommand(...args, '--out', target);
        expect([ran.code, ran.out], args[0]).toEqual([2, '']);
        expect(ran.err).toMatch(/^--out .* cannot be written: (there is no such folder|it is a folder)\.\n$/);
      }
    }
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });

  it('refuses a limit that no indicator is judged by and one that is not above zero, with key and remedy', () => {
    const good = sheet('limits.csv', ROW);
    const ran = (name: string, limits: object) =>
      studyCommand('evaluate', good, '--settings', file(name, JSON.stringify({ limits })));
    const own = (value: number) => ({ value, reason: 'own' });
    const taken = ran('limits.json', { C1: own(3) });
    expect(taken.code).toBe(0);
    expect(taken.err).toContain('1 motor from 1 row.');
    const unknown = ran('limits-unknown.json', { C1: own(3), c1: own(3) });
    expect([unknown.code, unknown.out]).toEqual([2, '']);
    expect(unknown.err).toContain('limits.c1 is no limit that is judged by. Did you mean limits.C1?');
    const negative = ran('limits-negative.json', { C1: own(-3) });
    expect([negative.code, negative.out]).toEqual([2, '']);
    expect(negative.err).toContain('limits.C1.value: -3 is not above zero');
    expect(negative.err).toContain('leave limits.C1 out');
  });

  it('says of a tariff whose site no motor has that it prices nothing, and of a period that it never holds', () => {
    const good = sheet('tariff-sites.csv', ROW);
    const all = { name: 'all', price_per_kwh: 0.1 };
    const settings = file(
      'tariff-sites.json',
      JSON.stringify({ tariffs: { Nrth: { energy: [all, { ...all, name: 'night' }] } } }),
    );
    for (const args of [['evaluate'], ['plan'], ['measures'], ['explain', '--tag', 'P-1']]) {
      const [command = '', ...more] = args;
      const ran = studyCommand(command, good, '--settings', settings, ...more);
      expect(ran.err, command).toContain('tariffs.Nrth prices nothing: no motor of the sheet has the site Nrth.');
      expect(ran.err, command).toContain('tariffs.Nrth.energy.1 (night) never holds');
    }
  });

  it('gives the same text with one job and with two', () => {
    const motors = Array.from({ length: 9 }, (_, seed) => generateDemo({ asOf: '2026-01-01', seed })).flatMap((fleet, batch) =>
      fleet.map(({ motor }) => ({ motor: { ...motor, tag: `${motor.tag}/${batch}` } })),
    );
    const large = file('large.csv', writeFleetCsv(motors));
    const one = studyCommand('evaluate', large, '--jobs', '1');
    const two = studyCommand('evaluate', large, '--jobs', '2');
    expect([0, 3]).toContain(one.code);
    expect(two.out === one.out).toBe(true);
  });

  it('ends quietly when its reader closes the pipe', async () => {
    const many = Array.from({ length: 300 }, (_, index) => ROW.replace('P-1', `P-${index + 1}`));
    const child = spawn(process.execPath, ['scripts/study.mjs', 'evaluate', sheet('pipe.csv', ...many)], { cwd: ROOT });
    let err = '';
    child.stderr.on('data', (text: Buffer) => {
      err += text.toString();
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
    expect(code).toBe(0);
    expect(err).not.toContain('EPIPE');
  });
});

describe('study check', () => {
  it('lists errors and warnings as text, JSON and CSV', () => {
    const bad = sheet('check.csv', ROW, 'P-2,North,abc,460,,,,,,,,,');
    const text = studyCommand('check', bad);
    expect(text.code).toBe(3);
    expect(text.out).toContain('row 3');
    expect(text.out).toContain('rated_power_hp');
    const json = JSON.parse(studyCommand('check', bad, '--format', 'json').out) as { rejected: { row: number }[] };
    expect(json.rejected[0]?.row).toBe(3);
    expect(studyCommand('check', bad, '--format', 'csv').out.split('\n')[0]).toContain('kind,row,column,code');
  });
});

describe('study explain', () => {
  it('says what is left to the limit of an indicator, and of each of them where no figure is named', () => {
    const one = file(
      'explain-limits.csv',
      'tag,rated_power_kw,rated_voltage_v,rated_speed_rpm,taken_at,input_power_kw,vibration_mm_s,foundation,insulation_resistance_mohm\n' +
        'P-1,37.285,460,1765,2025-06-01,33,3,rigid,50\n',
    );
    const all = studyCommand('explain', one, '--tag', 'P-1');
    // 4.5 mm/s begins zone D of group 2, rigid (ISO 20816-3, from memory): 1.5 mm/s are left; 5 % of 3 mm/s, rectangular, at 95 % are 0.17.
    expect(all.out).toMatch(
      /Vibration \(condition\.indicators\.vibration\)\n {2}near, 1\.50 ± 0\.17\u202fmm\/s left\n {2}limit: zone B/,
    );
    // Without a temperature there is no correction to 40 °C, so neither a verdict nor a margin.
    expect(all.out).toMatch(/\(condition\.indicators\.insulation-resistance\)\n {2}no verdict\n/);
    const asked = studyCommand('explain', one, '--tag', 'P-1', '--figure', 'condition.indicators.vibration', '--format', 'json');
    const [{ verdict }] = z
      .tuple([z.object({ verdict: z.object({ band: z.string(), margin: z.object({ value: z.number(), unit: z.string() }) }) })])
      .parse(JSON.parse(asked.out));
    expect(verdict).toMatchObject({ band: 'near', margin: { unit: 'mm/s' } });
    expect(verdict.margin.value).toBeCloseTo(1.5, 9);
  });

  it('ends with the decision, what would turn it, and the spare that would serve the motor; a decision turns where it says', () => {
    const first = ROW.replace(',6000,', ',1500,');
    const three = sheet('explain-decision.csv', first, first.replace('P-1', 'P-2'), first.replace('P-1,North', 'P-3,South'));
    const decidedAt = (energy: number) => {
      const settings = file(`explain-${energy}.json`, JSON.stringify({ schema: 1, energy_price_per_kwh: energy }));
      return results(three, '--settings', settings).results.motors[0]?.decision.option;
    };
    const all = studyCommand('explain', three, '--tag', 'P-1');
    const text = all.out.slice(all.out.indexOf('Decision: '));
    const decided = /^Decision: (\S+)/.exec(text)?.[1];
    expect(decided).toBe(results(three).results.motors[0]?.decision.option);
    expect(text).toContain('Runner-up by value: ');
    // Two of the three are of this site.
    expect(text).toContain('one would serve 2 motors of the site, it among them');
    // The price is printed to a thousandth, and lies below that of the defaults.
    const price = Number(/With energy at ([\d.]+) USD a kWh \(\d+ % less\)/.exec(text)?.[1]);
    expect(price).toBeLessThan(defaultSettings().energyPricePerKwh);
    expect(decidedAt(price + 0.001)).toBe(decided);
    expect(decidedAt(price - 0.001)).not.toBe(decided);
    expect(studyCommand('explain', three, '--tag', 'P-1', '--figure', 'losses.stator').out).not.toContain('Decision: ');
  });

  it('names what else is worth a look, with cost and payback where the list has a price and in words where not', () => {
    const heads = HEADER.replace('hours_per_year', 'hours_per_year,driven_machine,flow_control,coupling,peak_load_kw');
    const row = ROW.replace(',6000,', ',6000,fan,damper,v-belt,36,');
    const fan = file('measures.csv', `${heads}\n${row}\n`);
    const also = (out: string) => out.slice(out.indexOf('Also worth a look'), out.indexOf('Spare on the shelf'));
    const invented = also(studyCommand('explain', fan, '--tag', 'P-1').out);
    expect(invented).toMatch(/Vary the speed of the fan.* Saves [\d,]+ kWh/);
    expect(invented).toMatch(/Costs about [\d,]+\sUSD \(an invented price\) and pays back in [\d.]+ years \([\d.]+ to [\d.]+\)/);
    expect(invented).toMatch(/Once those above are done: [\d.]+ years\./);
    file('own-prices.csv', 'item,price\ndrive,4000\n');
    const settings = file('own-prices.json', JSON.stringify({ schema: 1, prices: 'own-prices.csv' }));
    const own = also(studyCommand('explain', fan, '--tag', 'P-1', '--settings', settings).out);
    expect(own).toContain('Costs about 4,000\u202fUSD (by the price list)');
    expect(own).toContain('No price in the list for a synchronous belt.');
    expect(own).toContain('No price in the list for: better belt. Together');
    const listed = studyCommand('measures', fan, '--settings', settings, '--format', 'json');
    expect(listed.code).toBe(0);
    const measures = z.object({ measures: z.array(z.looseObject({ measure: z.string(), cost: z.number().optional() })) });
    expect(measures.parse(JSON.parse(listed.out)).measures.map(({ measure, cost }) => [measure, cost])).toEqual([
      ['speed-control', 4000],
      ['better-belt', undefined],
      ['power-factor', undefined],
    ]);
    expect(studyCommand('measures', fan).out.split('\r\n')[0]).toMatch(/^site,area,tag,measure,text,estimate,/);
  });

  it('goes from the load down to stamps and meters', () => {
    const ran = studyCommand('explain', sheet('explain.csv', ROW), '--tag', 'P-1', '--figure', 'losses.stator');
    expect(ran.code).toBe(0);
    for (const words of [
      'Stator loss',
      'stamped: nameplate',
      'metered: reading in row 2',
      'residual',
      'Where the doubt comes from',
      'The machine behind it',
      'input_power_row_2 (reading)',
      'width: scatter of the published shares',
      'left by the iterative solution',
    ])
      expect(ran.out).toContain(words);
    // The line with the numbers holds no name of a constant.
    expect(ran.out).not.toMatch(/^ {4}= .*[a-z]_[a-z]/m);
  });

  it('names the figures it has when asked for another, and the tags it lacks', () => {
    const one = sheet('explain2.csv', ROW);
    const ran = studyCommand('explain', one, '--tag', 'P-1', '--figure', 'happiness');
    expect(ran.code).toBe(2);
    expect(ran.err).toContain('losses.stator');
    expect(studyCommand('explain', one, '--tag', 'Z-9').err).toContain('Z-9');
  });

  it('asks for the site when a tag stands at two', () => {
    const two = sheet('sites.csv', ROW, ROW.replace('North', 'South'));
    expect(studyCommand('explain', two, '--tag', 'P-1').err).toContain('--site');
    expect(studyCommand('explain', two, '--tag', 'P-1', '--site', 'South').code).toBe(0);
  });
});
