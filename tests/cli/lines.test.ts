import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { scratch, studyCommand } from './run';

const { file } = scratch();
const HEADER =
  'tag,site,rated_power_hp,rated_voltage_v,rated_speed_rpm,nominal_efficiency_pct,taken_at,input_power_kw,shaft_speed_rpm,rotor_bars,rotor_bars_source,coupling,gear_teeth,observed_lines_hz,spectrum_resolution_hz';
const sheet = file(
  'lines.csv',
  `${HEADER}\nP-1,North,50,460,1755,91.7,2025-06-01,38,1755,44,estimated,gear,23;67,1347;58.1,0.05\nP-2,North,50,460,1755,91.7,,,,,,,,,\n`,
);

const shape = z.object({
  schema: z.literal(1),
  tag: z.string(),
  lines: z.array(
    z.object({
      id: z.string(),
      spectrum: z.enum(['current', 'vibration']),
      frequency: z.object({ value: z.number(), u: z.number() }),
    }),
  ),
  coincide: z.array(z.object({ lines: z.tuple([z.string(), z.string()]), apart_hz: z.number(), always: z.boolean() })),
  observed: z.array(z.object({ frequency_hz: z.number(), may_be: z.array(z.string()) })),
  bar_counts: z.array(z.object({ fits: z.array(z.object({ bars: z.number(), stated: z.boolean() })) })),
  missing: z.array(z.object({ column: z.string() })),
});

describe('study lines', () => {
  it('writes the expected lines as JSON, with their doubt and what was seen', () => {
    const ran = studyCommand('lines', sheet, '--tag', 'P-1', '--format', 'json');
    expect(ran.code).toBe(0);
    const table = shape.parse(JSON.parse(ran.out));
    const place = (id: string) => table.lines.find((line) => line.id === id)?.frequency;
    expect(place('pole-pass-lower')?.value).toBeCloseTo(57, 9);
    // Speed to ± 1 r/min rectangular, four times; the supply to 0.02 Hz.
    expect(place('pole-pass-lower')?.u).toBeCloseTo(Math.hypot((4 / 60) * (1 / Math.sqrt(3)), 0.02), 6);
    expect(place('slot-static-1-upper')?.value).toBeCloseTo(1347, 9);
    expect(table.observed).toEqual([
      { frequency_hz: 1347, may_be: ['slot-static-1-upper'] },
      { frequency_hz: 58.1, may_be: [] },
    ]);
    expect(table.bar_counts[0]?.fits.map((fit) => fit.bars)).toEqual(expect.arrayContaining([43, 44, 45]));
  });

  it('writes the same as text and as CSV', () => {
    const text = studyCommand('lines', sheet, '--tag', 'P-1');
    expect(text.code).toBe(0);
    expect(text.out).toContain('lower pole-pass sideband');
    expect(text.out).toContain('44 bars (as stated)');
    const rows = studyCommand('lines', sheet, '--tag', 'P-1', '--format', 'csv').out.trim().split('\n');
    expect(rows[0]).toContain('frequency_hz');
    expect(rows.find((row) => row.includes(',pole-pass-upper,'))).toMatch(/^current,pole-pass-upper,63,/);
  });

  it('says on standard error what the settings give to remark, as the other commands do', () => {
    const settings = file('taxed.json', JSON.stringify({ tax_rate: 0.25 }));
    for (const args of [
      ['lines', sheet, '--tag', 'P-1'],
      ['explain', sheet, '--tag', 'P-1'],
      ['evaluate', sheet],
    ]) {
      const ran = studyCommand(...args, '--settings', settings);
      expect([ran.code, ran.err.includes('no purchase is written off')], args[0]).toEqual([0, true]);
    }
  });

  it('says what is missing where no speed is known, and ends with 2 for a tag that is not there', () => {
    const bare = studyCommand('lines', sheet, '--tag', 'P-2', '--format', 'json');
    expect(shape.parse(JSON.parse(bare.out)).missing[0]?.column).toBe('shaft_speed_rpm');
    const unknown = studyCommand('lines', sheet, '--tag', 'X');
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('No motor has the tag "X"');
  });

  it('names the reason where each row of the motor was rejected, and where one of several was', () => {
    const wrong = file(
      'wrong.csv',
      `${HEADER}\nP-1,North,50,460,1755,91.7,2025-06-01,38,1755,44,guess,gear,23;67,1347,0.05\nP-2,North,50,460,1755,91.7,2025-06-01,38,1755,44,estimated,gear,23;67,1347,0.05\nP-2,North,,,,,2025-07-01,much,1756,,,,,,\n`,
    );
    const none = studyCommand('lines', wrong, '--tag', 'P-1');
    expect(none.code).toBe(2);
    expect(none.err).toContain('what carries it was rejected');
    expect(none.err).toContain('row 2, rotor_bars_source');
    expect(none.err).not.toContain('row 4');
    const some = studyCommand('lines', wrong, '--tag', 'P-2');
    expect(some.code).toBe(0);
    expect(some.err).toContain('row 4, input_power_kw');
    expect(studyCommand('lines', wrong, '--tag', 'P-2', '--site', 'South').err).not.toContain('rejected');
  });
});
