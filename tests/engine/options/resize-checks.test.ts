import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checksBefore, shareLeftByPlace } from '@/lib/engine/options/checks';
import { frameSeries, shaftHeightMm } from '@/lib/engine/options/frames';
import { rmsLoad } from '@/lib/engine/options/resize-notes';
import { accelerating, runUpTime } from '@/lib/engine/options/starting';
import { PLATE, study } from '../support/study';
import { weigh } from './weighing';

/** What a plate of 50 Hz and 7.5 kW with 4 poles says. Invented. */
const METRIC_PLATE = {
  ratedPowerKw: 7.5,
  ratedVoltageV: 400,
  ratedCurrentA: 15.2,
  ratedSpeedRpm: 1455,
  ratedFrequencyHz: 50,
  ratedPowerFactorPct: 83,
  nominalEfficiencyPct: 86,
  poles: 4,
  frame: undefined,
} as const;

/** A 25 hp motor in place of the 50 hp one, on a pump; each test changes one thing. */
const BASE = {
  tables: study().tables,
  plate: { ...PLATE, drivenMachine: 'pump' as const },
  poles: 4,
  synchronousSpeedRpm: 1800,
  newRatedPowerKw: 25 * 0.7457,
  highestLoadKw: 15,
  exponent: 2,
};

function checksOf(plate: Partial<typeof PLATE>, more: Partial<Parameters<typeof checksBefore>[0]> = {}): unknown[] {
  return checksBefore({ ...BASE, ...more, plate: { ...BASE.plate, ...plate } }).map((found) => found.evidence.check);
}

describe('heat of a smaller rating', () => {
  it('is judged by the root mean square of the load over the hours that it runs', () => {
    const step = (load: number, hours: number) =>
      ({ point: { loadFraction: { value: load } }, hours: { value: hours } }) as unknown as Parameters<typeof rmsLoad>[0][number];
    // By hand: √((1² × 1000 + 0.5² × 3000) / 4000).
    expect(rmsLoad([step(1, 1000), step(0.5, 3000)])).toBeCloseTo(0.6614378, 6);
    expect(rmsLoad([step(0.7, 100)])).toBeCloseTo(0.7, 12);
    expect(rmsLoad([])).toBe(0);
  });
  it('against what a voltage unbalance leaves: 0.95 at 2 % (NEMA MG 1 figure 14-1, as read off by a handbook)', () => {
    expect(checksOf({}, { rmsLoad: 0.94, unbalancePct: 2 })).toEqual([]);
    // The place is known to be neither high nor hot, so that the unbalance alone speaks.
    expect(checksOf({ altitudeM: 0 }, { rmsLoad: 0.96, unbalancePct: 2, ambientC: 25 })).toEqual(['heat']);
    expect(checksOf({ altitudeM: 0 }, { rmsLoad: 0.96, ambientC: 25 })).toEqual([]);
    expect(checksOf({}, { rmsLoad: 0.5, unbalancePct: 5.1 })).toEqual(['unbalance']);
  });
  it('and by place and highest step', () => {
    expect(checksOf({ altitudeM: 1000 }, { ambientC: 40 })).toEqual([]);
    expect(checksOf({ altitudeM: 1200 })).toEqual(['altitude']);
    expect(checksOf({}, { ambientC: 45 })).toEqual(['ambient']);
    expect(checksOf({}, { highestLoad: 1.02 })).toEqual(['highest-load']);
  });
  it('and by what the highest load may be within its limits of 95 % (GUM 6.2.1 and G.1.3: 1.96 standard uncertainties)', () => {
    // By hand: 0.8 + 1.96 × 0.102 = 0.99992 and 0.8 + 1.96 × 0.1021 = 1.000116.
    expect(checksOf({}, { highestLoad: 0.8, highestLoadU: 0.102 })).toEqual([]);
    expect(checksOf({}, { highestLoad: 0.8, highestLoadU: 0.1021 })).toEqual(['load-doubt']);
    // Too small by the estimate itself is said once.
    expect(checksOf({}, { highestLoad: 1.02, highestLoadU: 0.2 })).toEqual(['highest-load']);
    // The rating above carries more than the present one: nothing is risked.
    expect(checksOf({}, { highestLoad: 0.8, highestLoadU: 0.3, newRatedPowerKw: 60 * 0.7457 })).toEqual([]);
  });
  it('and by a place that is not known where less than 5 % is left for it (5 %: 1500 m, or 44 °C, by the rules below)', () => {
    expect([shareLeftByPlace(1500, 40), shareLeftByPlace(1000, 44)]).toEqual([0.95, 0.95]);
    expect(checksOf({}, { highestLoad: 0.96 })).toEqual(['place']);
    expect(checksOf({ altitudeM: 300 }, { rmsLoad: 0.96 })).toEqual(['place']);
    expect(checksOf({}, { highestLoad: 0.96, ambientC: 25 })).toEqual(['place']);
    expect(checksOf({ altitudeM: 300 }, { highestLoad: 0.96, ambientC: 25 })).toEqual([]);
    expect(checksOf({}, { highestLoad: 0.95 })).toEqual([]);
    // Beyond its rating the motor is too small in any place.
    expect(checksOf({}, { highestLoad: 1.02 })).toEqual(['highest-load']);
  });
  it('at what the place leaves of the rating: 1 % of the rise for each 100 m (NEMA MG 1 14.4, from memory), 1 of 80 K for each kelvin', () => {
    expect(shareLeftByPlace(1000, 40)).toBe(1);
    expect(shareLeftByPlace(undefined, undefined)).toBe(1);
    expect(shareLeftByPlace(2000, 40)).toBeCloseTo(0.9, 12);
    expect(shareLeftByPlace(0, 50)).toBeCloseTo(0.875, 12);
    // Both: 0.9 × 0.875.
    expect(shareLeftByPlace(2000, 50)).toBeCloseTo(0.7875, 12);
    expect(shareLeftByPlace(50_000, 300)).toBe(0);
    expect(checksOf({ altitudeM: 2000 }, { highestLoad: 0.9, rmsLoad: 0.8 })).toEqual([]);
    expect(checksOf({ altitudeM: 2000 }, { highestLoad: 0.91, rmsLoad: 0.8 })).toEqual(['altitude']);
    expect(checksOf({ altitudeM: 2000 }, { highestLoad: 0.8, rmsLoad: 0.8, ambientC: 50 })).toEqual(['altitude', 'ambient']);
  });
  it('caps a resize of a motor on unbalanced voltages, and leaves the same rating free', () => {
    const base = {
      load: 0.45,
      plate: { flowControl: 'drive' as const },
      settings: { policy: { ...study().settings.policy, spareCapacityPct: 0 } },
    };
    const reading = (voltagesV: readonly [number, number, number]) => ({
      motor: { readings: [{ row: 2, readingsAt: 'motor' as const, readingCondition: 'coupled' as const, voltagesV }] },
    });
    const checks = (trial: Parameters<typeof weigh>[0], action: 'replace' | 'resize') =>
      weigh(trial)
        .option(action, 'now')
        .findings()
        .filter((found) => found.code === 'check-before')
        .map((found) => found.evidence.check);
    expect(checks({ ...base, ...reading([460, 460, 460]) }, 'resize')).toEqual([]);
    expect(checks({ ...base, ...reading([474, 452, 454]) }, 'resize')).toEqual(['heat']);
    expect(checks({ ...base, ...reading([474, 452, 454]) }, 'replace')).toEqual([]);
  });
});

describe('a load that is known but roughly', () => {
  const checks = (trial: Parameters<typeof weigh>[0]) =>
    weigh({ load: 0.42, ...trial })
      .option('resize', 'now')
      .findings()
      .filter((found) => found.evidence.check === 'load-doubt');
  it('caps the advice of a smaller rating, and a stated highest load lifts the cap', () => {
    // 0.42 of 50 hp is 0.84 of 25 hp, a little less at the new motor's lower speed; up to 0.83 × (1 + 1.96 × 0.15) = 1.07.
    expect(checks({ loadDoubt: 0.15 }).map(({ text }) => text)).toEqual([
      expect.stringMatching(/asks for 83 % of the smaller rating by the estimate, and by its doubt for up to 107 %/),
    ]);
    expect(checks({ loadDoubt: 0.02 })).toEqual([]);
    expect(checks({ loadDoubt: 0.15, plate: { peakLoadKw: 16.5 } })).toEqual([]);
    // A stated one below what was measured is not the highest.
    expect(checks({ loadDoubt: 0.15, plate: { peakLoadKw: 10 } })).toHaveLength(1);
  });
});

describe('starts of a smaller rating', () => {
  it('are held against the table (NEMA MG 10 table 2-3, read in a handbook): 25 hp, 4 poles', () => {
    const row = study().tables.starts.rows.find((entry) => entry.poles === 4 && entry.ratedPowerHp === 25);
    if (!row) throw new Error('the table lacks 25 hp');
    expect(checksOf({ startsPerHour: row.startsPerHour })).toEqual([]);
    expect(checksOf({ startsPerHour: row.startsPerHour + 0.1 })).toEqual(['starts']);
    expect(checksOf({ flowControl: 'on-off' })).toEqual(['starts']);
    expect(checksOf({ flowControl: 'on-off', driveFed: true })).toEqual([]);
  });
});

describe('run-up', () => {
  const flat = { locked: 1, pullUp: 1, breakdown: 1 };

  it('takes J Δω / T: 100 lb·ft² through 1750 r/min by 150 lb·ft take 3.79 s (t = WK² Δn / (308 T), derived)', () => {
    const left = accelerating({ torques: flat, breakaway: 0, running: 0, shape: () => 1, voltage: 1 });
    expect(left.mean).toBeCloseTo(1, 12);
    const speed = 1750 / 0.95;
    const ratedPowerKw = (150 * 1.3558179 * (speed * Math.PI)) / 30 / 1000;
    const seconds = runUpTime({ inertiaKgm2: 100 * 0.04214011, synchronousSpeedRpm: speed, ratedPowerKw, mean: left.mean });
    expect(seconds).toBeCloseTo(3.797, 3);
    expect(Math.abs((seconds ?? 0) / 3.788 - 1)).toBeLessThan(0.003);
  });
  it('finds the least torque where it is: at standstill by the breakaway, else at the end of the pull-up for a load that rises', () => {
    const torques = { locked: 1.5, pullUp: 1, breakdown: 2 };
    const atRest = accelerating({ torques, breakaway: 1.45, running: 0.3, shape: () => 1, voltage: 1 });
    expect(atRest.at).toBe(0);
    expect(atRest.least).toBeCloseTo(0.05, 12);
    const rising = accelerating({ torques, breakaway: 0.3, running: 0.9, shape: (speed) => speed ** 2, voltage: 1 });
    expect(rising.at).toBeCloseTo(0.8, 12);
    expect(rising.least).toBeCloseTo(1 - 0.9 * 0.64, 12);
  });
  it('has no time where the motor would stall', () => {
    const stalled = accelerating({ torques: flat, breakaway: 0.5, running: 1.2, shape: () => 1, voltage: 1 });
    expect(stalled).toMatchObject({ mean: 0 });
    expect(runUpTime({ inertiaKgm2: 1, synchronousSpeedRpm: 1800, ratedPowerKw: 10, mean: stalled.mean })).toBeUndefined();
  });
  it('never gets easier with more load or less voltage', () => {
    const share = fc.double({ min: 0.1, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, fc.constantFrom(0, 1, 2), (running, voltage, exponent) => {
        const at = (load: number, volts: number) =>
          accelerating({
            torques: { locked: 1.5, pullUp: 1, breakdown: 2 },
            breakaway: 1.5 * load,
            running: load,
            shape: (speed) => speed ** exponent,
            voltage: volts,
          });
        expect(at(running, voltage).least).toBeLessThanOrEqual(at(running * 0.9, voltage).least);
        expect(at(running, voltage).least).toBeLessThan(at(running, voltage * 1.05).least);
      }),
    );
  });
  it('longer than an ordinary overload relay allows is to be checked', () => {
    expect(checksOf({ drivenMachine: 'fan', loadInertiaKgm2: 1 })).toEqual([]);
    expect(checksOf({ drivenMachine: 'fan', loadInertiaKgm2: 5 })).toEqual(['run-up-time']);
  });
  it('of a load that asks for more than the pull-up torque on the way is to be checked', () => {
    // 25 hp, 4 poles: at least 105 % pull-up (NEMA MG 1, from memory), 85 % at 90 % voltage; started without breakaway torque the square load
    // meets it at 80 % of speed with 64 % of its running torque.
    const highestLoadKw = (share: number) => (share * 25 * 0.7457 * 1.05 * 0.81) / 0.64;
    expect(checksOf({}, { highestLoadKw: highestLoadKw(0.99) })).toEqual([]);
    expect(checksOf({}, { highestLoadKw: highestLoadKw(1.01) })).toEqual(['starting-torque']);
  });
});

describe('shaft height by the frame', () => {
  it('is a quarter inch for each of the first two digits of a T or U frame: 8 in for 326T (NEMA MG 1 4.2, from memory)', () => {
    expect(shaftHeightMm('326T')).toBeCloseTo(8 * 25.4, 9);
    expect(shaftHeightMm('445U')).toBeCloseTo(11 * 25.4, 9);
  });
  it('is the number of an IEC frame in millimetres (IEC 60072-1), and unknown of any other name', () => {
    expect(shaftHeightMm('180M')).toBe(180);
    expect(shaftHeightMm('90S')).toBe(90);
    expect(shaftHeightMm('special')).toBeUndefined();
  });
});

describe('the frame of another rating', () => {
  /** A motor of 50 Hz and its note of the frame at the smaller rating that is weighed in its place. */
  const noteOf = (plate: Partial<typeof PLATE>, load = 0.45, standards: 'nema' | 'iec' = 'iec') => {
    const { options } = weigh({
      load,
      plate: { ...METRIC_PLATE, ...plate },
      settings: { frequencyHz: 50, standards },
    });
    return options
      .filter(({ action }) => action === 'resize')
      .map((option) => [
        option.ratedPowerKw,
        option
          .findings()
          .filter(({ code }) => code.startsWith('frame-'))
          .map(({ code, text, next }) => ({ code, text, next })),
      ]);
  };
  const of = (kw: number, notes: ReturnType<typeof noteOf>) => notes.find(([rating]) => rating === kw)?.[1];
  it('at another shaft height names both heights, both shaft ends, the adapter and the coupling', () => {
    // 132M to 112M for 7.5 to 4 kW, 4 poles: 38 × 80 to 28 × 60 mm (EN 50347, from memory); 132 − 112 = 20 mm.
    expect(of(4, noteOf({ frame: '132M' }))).toEqual([
      {
        code: 'frame-to-match',
        text: 'The frame goes from 132M to 112M, with the shaft at 112 in place of 132 mm above the base, and a shaft end of 28 × 60 in place of 38 × 80 mm.',
        next: 'Have an adapter base 20 mm high, a coupling half or sheave for 28 mm and the alignment quoted with the motor, by the maker’s drawing.',
      },
    ]);
  });
  it('at the same height says that the shaft stays and the feet do not', () => {
    const [note] = (of(5.5, noteOf({ frame: 'IEC 132 m' })) ?? []) as { text: string; next: string }[];
    expect(note?.text).toBe(
      'The frame goes from 132M to 132S, with the shaft at the same 132 mm above the base but other feet; the shaft end of 38 × 80 mm stays.',
    );
    expect(note?.next).toMatch(/^Have an adapter plate and the alignment/);
  });
  it('that is the same frame says so, and costs no adapter', () => {
    // 7.5 and 5.5 kW with 2 poles are both 132S.
    const plate = { frame: '132S', poles: 2, ratedSpeedRpm: 2900 };
    expect(of(5.5, noteOf(plate))).toEqual([expect.objectContaining({ code: 'frame-stays' })]);
  });
  it('of a motor whose frame nobody stamped is taken from the table of the study’s standards, and a larger one than it lists from none', () => {
    expect(of(4, noteOf({}))).toEqual([
      expect.objectContaining({
        code: 'frame-to-match',
        text: expect.stringContaining('from 132M (by the table, since the sheet names none) to'),
      }),
    ]);
    const large = { ratedPowerKw: 250, ratedSpeedRpm: 1485, ratedCurrentA: 440, nominalEfficiencyPct: 95 };
    expect(noteOf(large).every(([, notes]) => (notes as unknown[]).length === 0)).toBe(true);
    expect(of(150, noteOf({ ...large, frame: '355M' }))).toEqual([expect.objectContaining({ code: 'frame-not-listed' })]);
  });
  it('is counted as the plate has it, whatever the standards of the study', () => {
    expect(frameSeries('326T', 'iec')).toBe('T');
    expect(frameSeries('182U', 'iec')).toBe('T');
    for (const frame of ['132M', '132 m', 'IEC132M', 'IEC 132 M', '315S/M']) expect(frameSeries(frame, 'nema')).toBe('iec');
    expect([frameSeries(undefined, 'iec'), frameSeries(undefined, 'nema'), frameSeries('special', 'nema')]).toEqual([
      'iec',
      'T',
      'T',
    ]);
  });
});

describe('a start against a load curve', () => {
  const machine = { drivenMachine: 'conveyor' as const };
  const curve = (atRest: number) => [
    { speedPct: 0, torquePct: atRest },
    { speedPct: 20, torquePct: 30 },
    { speedPct: 105, torquePct: 40 },
  ];
  it('is checked in place of being unknown', () => {
    const more = { exponent: 0, highestLoadKw: 12 };
    expect(checksOf(machine, more)).toContain('starting-duty');
    expect(checksOf(machine, { ...more, curve: curve(40) })).toEqual([]);
    // 100 % of 50 hp is twice the torque of 25 hp: more than the 150 % locked rotor that MG 1 asks of it gives at 90 % voltage (from memory).
    expect(checksOf(machine, { ...more, curve: curve(100) })).toEqual(['starting-torque']);
  });
  it('stays unknown where the points do not reach down to rest', () => {
    expect(checksOf(machine, { exponent: 0, highestLoadKw: 12, curve: curve(40).slice(1) })).toContain('starting-duty');
  });
  it('is raised where the highest load known lies above the points', () => {
    // By hand: the stated 40 % of 50 hp near full speed are 80 % of 25 hp, below the 110 % pull-up torque at 90 % voltage (89 %, from memory);
    // 18 kW are 97 %.
    expect(checksOf(machine, { exponent: 0, highestLoadKw: 14, curve: curve(30) })).toEqual([]);
    expect(checksOf(machine, { exponent: 0, highestLoadKw: 18, curve: curve(30) })).toEqual(['starting-torque']);
  });
});
