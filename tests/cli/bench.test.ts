import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import type { BenchTest } from '@/lib/engine';
import { writeBenchCsv } from '@/lib/features/bench/write-sheet';
import { NO_ERRORS, syntheticTest } from '../engine/bench/synthetic';
import { resultsShape } from './results-shape';
import { scratch, studyCommand } from './run';

const { folder, file } = scratch();
const PLATE = ['--rated-power-kw', '18.65', '--rated-voltage-v', '460', '--rated-speed-rpm', '1769'];
const sound = file('sound.csv', writeBenchCsv([syntheticTest()]));
const poor: BenchTest = syntheticTest(NO_ERRORS, (point, section) =>
  section === 'load' ? { ...point, torqueNm: (point.torqueNm ?? 0) + (point.row % 2 === 0 ? 3 : -3) } : point,
);

const figure = z.object({ value: z.number(), u: z.number().nonnegative(), unit: z.string() });
const losses = z.object({ stator: figure, rotor: figure, core: figure, friction_windage: figure, stray: figure, total: figure });
const shape = z.object({
  schema: z.literal(1),
  tag: z.string(),
  test: z.string(),
  method: z.string(),
  accepted: z.boolean(),
  findings: z.array(z.object({ code: z.string(), severity: z.string(), text: z.string() })),
  stray_load_loss: z
    .object({ slope: figure, intercept: figure, correlation: z.number(), discarded_point: z.number().optional() })
    .optional(),
  core_loss: figure,
  friction_windage: figure,
  winding_temp_specified: figure.optional(),
  points: z.array(
    z.object({
      load_fraction: z.number(),
      input_power: figure,
      shaft_power: figure,
      efficiency: figure,
      power_factor: figure,
      current: figure,
      speed: figure,
      losses,
    }),
  ),
});

describe('study bench', () => {
  it('writes the contract’s results: units, five losses that add up, input as output and losses', () => {
    const ran = studyCommand('bench', sound, ...PLATE, '--standard', 'ieee-112-b');
    expect([ran.code, ran.err]).toEqual([0, '']);
    const result = shape.parse(JSON.parse(ran.out));
    expect([result.tag, result.method, result.accepted]).toEqual(['INVENTED-1', 'ieee-112-b', true]);
    expect([result.stray_load_loss?.slope.unit, result.stray_load_loss?.intercept.unit]).toEqual(['W/(N m)²', 'W']);
    expect([result.winding_temp_specified?.unit, result.core_loss.unit]).toEqual(['°C', 'kW']);
    expect(result.stray_load_loss?.discarded_point).toBeUndefined();
    expect(result.points.map((point) => point.load_fraction)).toEqual([0.25, 0.5, 0.75, 1, 1.25, 1.5]);
    for (const { losses: l, ...point } of result.points) {
      const sum = l.stator.value + l.rotor.value + l.core.value + l.friction_windage.value + l.stray.value;
      expect(sum).toBeCloseTo(l.total.value, 8);
      expect(point.shaft_power.value + l.total.value).toBeCloseTo(point.input_power.value, 7);
      expect(point.shaft_power.value / point.input_power.value).toBeCloseTo(point.efficiency.value, 8);
    }
  });

  it('ends with 4 for a test that the standard refuses, results and reasons written', () => {
    const ran = studyCommand('bench', file('poor.csv', writeBenchCsv([poor])), ...PLATE);
    expect(ran.code).toBe(4);
    const result = shape.parse(JSON.parse(ran.out));
    expect(result.accepted).toBe(false);
    expect(result.points.length).toBeGreaterThan(0);
    expect(ran.err).toContain('correlation');
  });

  it('takes the plate from the fleet sheet by tag, and several tests at once', () => {
    const fleet = file(
      'fleet.csv',
      'tag,rated_power_kw,rated_voltage_v,rated_speed_rpm,power_accuracy_pct\nINVENTED-1,18.65,460,1769,0.5\n',
    );
    const both = file('both.csv', writeBenchCsv([syntheticTest(), { ...poor, test: 'again' }]));
    const ran = studyCommand('bench', both, '--fleet', fleet, '--standard', 'iec-2-1-1b');
    expect(ran.code).toBe(4);
    const { tests } = z.object({ tests: z.array(shape) }).parse(JSON.parse(ran.out));
    expect(tests.map((test) => [test.test, test.accepted])).toEqual([
      ['synthetic', true],
      ['again', false],
    ]);
    // Meters of 0.5 % in place of 0.2 % show in the doubt.
    const plain = shape.parse(JSON.parse(studyCommand('bench', sound, ...PLATE, '--standard', 'iec-2-1-1b').out));
    expect((tests[0]?.points[3]?.efficiency.u ?? 0) / (plain.points[3]?.efficiency.u ?? 1)).toBeGreaterThan(2);
  });

  it('writes a table, and a file in place of the output', () => {
    const out = path.join(folder, 'loads.csv');
    const ran = studyCommand('bench', sound, ...PLATE, '--format', 'csv', '--out', out);
    expect([ran.code, ran.out]).toEqual([0, '']);
    const lines = readFileSync(out, 'utf8').trim().split('\r\n');
    expect(lines).toHaveLength(7);
    expect(lines[0]).toContain('efficiency,u_efficiency');
  });

  it('reads decimal commas when told, rejects a bad row alone, and says which', () => {
    const text = writeBenchCsv([syntheticTest()]);
    const semicolons = text.replaceAll(',', ';').replaceAll('.', ',');
    const ran = studyCommand('bench', file('comma.csv', semicolons), ...PLATE, '--decimal', ',');
    expect(ran.code).toBe(0);
    const bad = text.replace(/(load,460,)[\d.]+/, '$1many');
    const rejected = studyCommand('bench', file('bad.csv', bad), ...PLATE, '--standard', 'ieee-112-b');
    expect(rejected.err).toContain('current_a');
    // Five load points are fewer than the standard's six.
    expect(rejected.code).toBe(4);
  });

  it.each([
    ['no plate', [sound], 'rated_power_kw'],
    ['a plate twice', [sound, ...PLATE, '--fleet', sound], 'not by both'],
    ['a standard that is none', [sound, ...PLATE, '--standard', 'guess'], 'ieee-112-b'],
    ['a rotor of wood', [sound, ...PLATE, '--rotor-conductor', 'wood'], 'aluminium or copper'],
    ['a sheet without sections', [file('none.csv', 'tag,voltage_v\nA,460\n'), ...PLATE], 'section'],
    ['a file that is not there', ['/nowhere/test.csv', ...PLATE], '/nowhere/test.csv'],
    ['a header alone', [file('head.csv', 'tag,section\n'), ...PLATE], 'holds no test'],
  ])('ends with 2 and a sentence on %s', (_, args, words) => {
    const ran = studyCommand('bench', ...args);
    expect([ran.code, ran.out]).toEqual([2, '']);
    expect(ran.err).toContain(words);
  });
});

describe('study evaluate with a sheet of bench tests', () => {
  const fleet = file(
    'tested.csv',
    'tag,rated_power_kw,rated_voltage_v,rated_speed_rpm,taken_at,voltage_v,input_power_kw\nA-1,18.65,460,1769,2025-06-01,460,14.4\nA-2,18.65,460,1769,2025-06-01,460,14.4\n',
  );
  const tests = (tag: string) => file(`${tag}-test.csv`, writeBenchCsv([{ ...syntheticTest(), tag }]));

  it('takes the losses of the motor that was tested, and leaves the others alone', () => {
    const ran = studyCommand('evaluate', fleet, '--bench', tests('A-1'));
    expect(ran.code).toBe(0);
    const { motors } = resultsShape.parse(JSON.parse(ran.out));
    const [one, two] = motors;
    expect(one?.trust.findings.map(({ code }) => code)).toContain('efficiency-by-test');
    expect(two?.trust.findings.map(({ code }) => code)).toContain('efficiency-unknown');
    expect((one?.efficiency?.u ?? 1) / (two?.efficiency?.u ?? 0)).toBeLessThan(0.5);
    const explained = studyCommand('explain', fleet, '--tag', 'A-1', '--figure', 'efficiency', '--bench', tests('A-1'));
    expect(explained.out).toContain('bench test');
  });

  it('names a test whose motor the sheet does not have, and ends with 3', () => {
    const ran = studyCommand('evaluate', fleet, '--bench', tests('A-9'));
    expect(ran.code).toBe(3);
    expect(ran.err).toContain('A-9');
    expect(studyCommand('evaluate', fleet, '--bench', '/nowhere.csv').code).toBe(2);
  });
});
