import { describe, expect, it } from 'vitest';
import { compareTests } from '@/lib/engine/bench/compare';
import { type BenchContext, evaluateBench } from '@/lib/engine/bench/evaluate';
import { BENCH } from '@/lib/engine/bench/findings';
import { BENCH_METHODS, benchMethod } from '@/lib/engine/bench/method';
import { benchResult } from '@/lib/engine/bench/result';
import { type BenchPoint, type BenchSections, type BenchTest, USUAL_INSTRUMENTS } from '@/lib/engine/bench/test';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { loadTables } from '@/lib/reference/load';
import { METHOD_B } from './context';
import { directRuns } from './direct-runs';
import { LOADS, NO_ERRORS, PLATE, syntheticTest, TRUTH, VOLTAGES } from './synthetic';

const { tables } = loadTables();
const run = (test: BenchTest, change: Partial<BenchContext> = {}) => evaluateBench(test, { ...METHOD_B, ...change });
const codes = (test: BenchTest, change: Partial<BenchContext> = {}) => run(test, change).findings.map((finding) => finding.code);
const altered = (section: string, change: (point: BenchPoint, index: number) => BenchPoint): BenchTest => {
  let index = -1;
  return syntheticTest(NO_ERRORS, (point, own) => {
    if (own !== section) return point;
    index += 1;
    return change(point, index);
  });
};
const without = (sections: Partial<BenchSections>): BenchTest => {
  const test = syntheticTest();
  return { ...test, sections: { ...test.sections, ...sections } };
};
const direct = (...given: Parameters<typeof directRuns>): BenchTest => without(directRuns(...given));
const sound = syntheticTest();

describe('what must hold for every test', () => {
  it('twice all powers, torque and resistance at the same currents are twice all losses and the same efficiency', () => {
    const twice = syntheticTest(NO_ERRORS, (point) => ({
      ...point,
      ...(point.inputPowerKw !== undefined && { inputPowerKw: 2 * point.inputPowerKw }),
      ...(point.torqueNm !== undefined && { torqueNm: 2 * point.torqueNm }),
      ...(point.resistanceOhm !== undefined && { resistanceOhm: 2 * point.resistanceOhm }),
    }));
    const one = run(sound).load?.loads ?? [];
    const two = run(twice, { plate: { ...PLATE, ratedPowerKw: 2 * PLATE.ratedPowerKw } }).load?.loads ?? [];
    expect(two).toHaveLength(6);
    two.forEach((load, i) => {
      for (const key of ['stator', 'rotor', 'core', 'frictionWindage', 'stray', 'total'] as const) {
        expect(load.losses[key].value / (2 * (one[i]?.losses[key].value ?? 0)), key).toBeCloseTo(1, 9);
      }
      expect(load.efficiency.value).toBeCloseTo(one[i]?.efficiency.value ?? 0, 12);
    });
  });

  it('the order of no-load and load points does not matter', () => {
    const { sections } = sound;
    const mixed = without({
      'no-load': [...sections['no-load']].reverse(),
      load: [3, 0, 5, 1, 4, 2].flatMap((i) => sections.load[i] ?? []),
    });
    expect(run(mixed).noLoad?.separated?.core.value).toBeCloseTo(TRUTH.coreKw, 9);
    run(mixed).load?.loads.forEach((load, i) => {
      expect(load.efficiency.value).toBeCloseTo(run(sound).load?.loads[i]?.efficiency.value ?? 0, 9);
    });
  });

  it.each(LOADS.map((load, i) => [load, i] as const))(
    'a gross error of the torque at %d of rated load is the point left out',
    (_, wrong) => {
      const test = altered('load', (point, i) => (i === wrong ? { ...point, torqueNm: (point.torqueNm ?? 0) - 6 } : point));
      const { load, accepted } = run(test);
      expect(load?.line?.discarded).toBe(sound.sections.load[wrong]?.row);
      expect(accepted).toBe(true);
      // The other columns of that point stand.
      expect(load?.corrected).toHaveLength(6);
    },
  );

  it('two gross errors are refused with the reason, and the reasons stand beside the results', () => {
    const test = altered('load', (point, i) =>
      i === 1 || i === 4 ? { ...point, torqueNm: (point.torqueNm ?? 0) + (i === 1 ? -4 : 4) } : point,
    );
    const result = benchResult(run(test));
    expect(result.accepted).toBe(false);
    expect(result.findings.map((finding) => finding.code)).toContain('correlation-below-limit');
    expect(result.points.length).toBeGreaterThan(0);
    expect(result.measured.stray_at_rated_load).toBeUndefined();
    expect(result.measured.core?.value).toBeCloseTo(TRUTH.coreKw, 6);
  });

  it('IEC 60034-2-1 asks for more correlation than IEEE 112: one test may pass the one and fail the other', () => {
    expect(benchMethod('iec-2-1-1b').correlation).toBe(0.95);
    expect(benchMethod('ieee-112-b').correlation).toBe(0.9);
    // Alternating errors of some 0.3 N·m scatter the line between the two limits.
    const shaky = altered('load', (point, i) => ({
      ...point,
      torqueNm: (point.torqueNm ?? 0) + (i % 2 === 0 ? 0.31 : -0.31) * (i < 3 ? 1 : 1.4),
    }));
    const [ieee, iec] = [run(shaky), run(shaky, { method: 'iec-2-1-1b' })];
    expect(ieee.accepted, String(ieee.load?.line?.correlation)).toBe(true);
    expect(ieee.load?.line?.discarded).toBeUndefined();
    expect(ieee.load?.line?.correlation).toBeLessThan(0.95);
    expect(iec.load?.line?.discarded).toBeDefined();
  });

  it('larger instrument classes give wider intervals, exact instruments none but the scatter', () => {
    const u = (factor: number) => {
      const { voltagePct, currentPct, powerPct, torquePct, resistancePct, speedRpm, temperatureK } = USUAL_INSTRUMENTS;
      const instruments = {
        voltagePct: voltagePct * factor,
        currentPct: currentPct * factor,
        powerPct: powerPct * factor,
        torquePct: torquePct * factor,
        resistancePct: resistancePct * factor,
        speedRpm: speedRpm * factor,
        temperatureK: temperatureK * factor,
      };
      const rated = run(sound, { instruments }).load?.loads[3];
      return rated ? standardUncertainty(rated.efficiency) : Number.NaN;
    };
    expect(u(2) / u(1)).toBeCloseTo(2, 1);
    expect(u(1e-6)).toBeLessThan(1e-4);
  });

  it('assumed stray-load loss is less sure than measured', () => {
    const u = (method: BenchContext['method']) =>
      standardUncertainty(run(sound, { method }).load?.loads[3]?.efficiency ?? { parts: { at: [], by: [] } });
    expect(u('ieee-112-e1')).toBeGreaterThan(3 * u('ieee-112-b'));
    expect(u('iec-2-1-1c')).toBeGreaterThan(3 * u('iec-2-1-1b'));
  });

  it('loads more than 5 % beyond the highest tested one are left out', () => {
    const test = without({ load: sound.sections.load.slice(2) });
    expect(run(test).load?.loads.map((load) => load.loadFraction)).toEqual([0.25, 0.5, 0.75, 1]);
  });

  it('IEEE 112 keeps one core loss and one temperature; 2-1-1B the inner voltage, the speed and each point’s own temperature', () => {
    const ieee = run(sound).load?.corrected ?? [];
    expect(new Set(ieee.map((point) => point.losses.core.value.toFixed(9))).size).toBe(1);
    expect(new Set(ieee.map((point) => point.temperature.value.toFixed(9))).size).toBe(1);
    const iec = run(sound, { method: 'iec-2-1-1b' }).load?.corrected ?? [];
    for (const [i, point] of iec.entries()) {
      const next = iec[i + 1];
      expect(point.temperature.value).toBeCloseTo(point.tested.winding.temperature.value - TRUTH.ambientC + 25, 9);
      if (!next) continue;
      expect(point.losses.core.value).toBeLessThan(next.losses.core.value);
      expect(point.losses.frictionWindage.value).toBeLessThan(next.losses.frictionWindage.value);
    }
    const full = iec[2]?.tested;
    expect(full?.frictionWindage.value).toBeCloseTo(TRUTH.frictionKw * (1 - (full?.slip.value ?? 0)) ** 2.5, 9);
  });

  it('a dynamometer that hides 1.5 N·m gets them back from the coupled and the uncoupled run', () => {
    const hidden = 1.5;
    const speed = 1799.2;
    const slip = 1 - speed / 1800;
    const w = (2 * Math.PI * speed) / 60;
    const resistance = (TRUTH.resistance25 * (234.5 + 50)) / (234.5 + 25);
    const stator = (1.5 * TRUTH.noLoadCurrentA ** 2 * resistance) / 1000;
    const power = (torque: number) => stator + TRUTH.coreKw + (TRUTH.frictionKw + (torque * w) / 1000) / (1 - slip);
    const at = { voltageV: 460, currentA: TRUTH.noLoadCurrentA, speedRpm: speed, frequencyHz: 60, windingTempC: 50 };
    const test = {
      ...altered('load', (point) => ({ ...point, torqueNm: (point.torqueNm ?? 0) - hidden })),
    };
    const dynamometer = [
      { row: 30, ...at, inputPowerKw: power(2 + hidden), torqueNm: 2 },
      { row: 31, ...at, inputPowerKw: power(0) },
    ];
    const both = run({ ...test, sections: { ...test.sections, dynamometer } });
    expect(both.load?.correction?.value).toBeCloseTo(hidden, 6);
    expect(both.load?.line?.slope.value).toBeCloseTo(TRUTH.straySlope, 6);
    // Without the uncoupled row the friction of the no-load test serves.
    const one = run({ ...test, sections: { ...test.sections, dynamometer: dynamometer.slice(0, 1) } });
    expect(one.load?.correction?.value).toBeCloseTo(hidden, 1);
  });
});

describe('findings: a test that has each, beside a sound one that has not', () => {
  const noTorque = without({ load: sound.sections.load.map(({ torqueNm: _, ...point }) => point) });
  const TABLE: Readonly<Record<string, readonly [BenchTest, Partial<BenchContext>?]>> = {
    'bench-value-doubtful': [altered('load', (point, i) => (i === 2 ? { ...point, voltageV: 265.6 } : point))],
    'bench-power-above-volt-amperes': [
      altered('load', (point) => ({ ...point, currentA: (point.currentA ?? 0) / 3, voltageV: 460 })),
    ],
    'bench-temperatures-disagree': [altered('rated-load', (point) => ({ ...point, windingTempC: 60 }))],
    'cold-resistance-missing': [without({ cold: [], 'rated-load': [] })],
    'load-points-too-few': [without({ load: sound.sections.load.slice(0, 4) })],
    'load-range-short': [without({ load: sound.sections.load.slice(1) })],
    'load-not-tested': [without({ load: sound.sections.load.slice(0, 4) })],
    'no-load-points-too-few': [without({ 'no-load': [] })],
    'no-load-voltages-equal': [altered('no-load', (point) => ({ ...point, voltageV: 460 }))],
    'no-load-without-low-points': [without({ 'no-load': sound.sections['no-load'].slice(0, 7) })],
    'no-load-range-short': [without({ 'no-load': sound.sections['no-load'].slice(2) })],
    'no-load-far-from-rated': [sound, { plate: { ...PLATE, ratedVoltageV: 690 } }],
    'low-voltage-points-left-out': [altered('no-load', (point, i) => (i === 9 ? { ...point, currentA: 6 } : point))],
    'constant-loss-negative': [altered('no-load', (point, i) => (i === 2 ? { ...point, inputPowerKw: 0.05 } : point))],
    'friction-negative': [
      altered('no-load', (point) => ({
        ...point,
        inputPowerKw: (point.inputPowerKw ?? 0) - 0.125 * ((point.voltageV ?? 0) > 80 ? 1 : 0.9),
      })),
    ],
    'core-negative': [
      altered('no-load', (point, i) => ({
        ...point,
        inputPowerKw: (point.inputPowerKw ?? 0) - (i < 6 ? 0.33 * (VOLTAGES[i] ?? 0) ** 2 : 0),
      })),
    ],
    'bench-reading-missing': [altered('load', (point, i) => (i === 0 ? { row: point.row, voltageV: 460 } : point))],
    'bench-reading-impossible': [altered('load', (point, i) => (i === 0 ? { ...point, inputPowerKw: -31 } : point))],
    'winding-temperature-assumed': [altered('load', ({ windingTempC: _, ...point }) => point)],
    'specified-temperature-assumed': [without({ 'rated-load': [] })],
    'ambient-assumed': [without({ 'rated-load': [] })],
    'poles-unknown': [
      altered('load', (point) => ({ ...point, speedRpm: 900 })),
      { plate: { ...PLATE, poles: undefined, ratedSpeedRpm: 1400 } },
    ],
    'bench-speed-above-synchronous': [altered('load', (point, i) => (i === 5 ? { ...point, speedRpm: 1801 } : point))],
    'torque-missing': [noTorque],
    'output-exceeds-input': [altered('load', (point) => ({ ...point, torqueNm: (point.torqueNm ?? 0) * 1.36 }))],
    'dynamometer-not-corrected': [sound],
    'stray-point-discarded': [
      altered('load', (point, i) => (i === 3 ? { ...point, torqueNm: (point.torqueNm ?? 0) - 6 } : point)),
    ],
    'correlation-below-limit': [
      altered('load', (point, i) =>
        i === 1 || i === 4 ? { ...point, torqueNm: (point.torqueNm ?? 0) + (i === 1 ? -4 : 4) } : point,
      ),
    ],
    'stray-slope-not-positive': [altered('load', (point) => ({ ...point, torqueNm: (point.torqueNm ?? 0) * 1.05 }))],
    'stray-intercept-large': [altered('load', (point) => ({ ...point, inputPowerKw: (point.inputPowerKw ?? 0) + 0.4 }))],
    'stray-loss-assumed': [noTorque, { method: 'ieee-112-e1' }],
    'reverse-rotation-missing': [noTorque, { method: 'ieee-112-e' }],
    'reverse-rotation-negative': [direct({ harmonicW: -30 }), { method: 'ieee-112-e' }],
    'reverse-rotation-exponent': [direct({ harmonicExponent: 2.9 }), { method: 'ieee-112-e' }],
    'locked-rotor-missing': [noTorque, { method: 'ieee-112-f1' }],
    'locked-rotor-frequency': [
      without({
        'locked-rotor': [{ row: 40, voltageV: 90, currentA: 30, inputPowerKw: 1.9, frequencyHz: 60, windingTempC: 30 }],
      }),
      { method: 'ieee-112-f1' },
    ],
    'load-beyond-breakdown': [
      without({
        'locked-rotor': [{ row: 40, voltageV: 38, currentA: 28.4, inputPowerKw: 0.93, frequencyHz: 15, windingTempC: 40 }],
      }),
      { method: 'ieee-112-f1' },
    ],
    'circuit-not-found': [
      without({
        'locked-rotor': [{ row: 40, voltageV: 40, currentA: 30, inputPowerKw: 0.4, frequencyHz: 15, windingTempC: 30 }],
      }),
      { method: 'ieee-112-f1' },
    ],
    'speed-off-plate': [sound, { plate: { ...PLATE, ratedSpeedRpm: 1780 } }],
    'current-off-plate': [sound, { plate: { ...PLATE, ratedCurrentA: 59 } }],
    'resistance-off-book': [sound, { plate: { ...PLATE, statorResistanceOhm: 0.6, statorResistanceTempC: 25 } }],
    'efficiency-off-plate': [sound, { plate: { ...PLATE, nominalEfficiencyPct: 94.1 } }],
  };

  it('has a row for each code', () => {
    expect(Object.keys(TABLE).sort()).toEqual(Object.keys(BENCH.kinds).sort());
  });

  it.each(Object.entries(TABLE))('%s', (code, [test, change]) => {
    expect(codes(test, change)).toContain(code);
    if (code !== 'dynamometer-not-corrected') expect(codes(sound)).not.toContain(code);
  });

  it('each says cause and next step, and a refused test never throws by any method', () => {
    for (const [test, change] of Object.values(TABLE)) {
      for (const method of BENCH_METHODS) {
        for (const finding of run(test, { ...change, method }).findings) {
          expect(finding.text.length * finding.cause.length * finding.next.length).toBeGreaterThan(0);
          expect(finding.text).not.toMatch(/NaN|undefined|Infinity/);
        }
      }
    }
  });
});

describe('readings that make one wonder are named by row and column before anything can be worked out', () => {
  const nothing = { cold: [], 'rated-load': [], load: [], dynamometer: [], 'no-load': [], 'locked-rotor': [] };
  const alone = (section: keyof BenchSections, point: Omit<BenchPoint, 'row'>) => {
    const sections = { ...nothing, 'rotor-removed': [], 'reverse-rotation': [], [section]: [{ row: 7, ...point }] };
    return run({ tag: 'A', test: '', sections })
      .findings.filter(({ evidence }) => evidence.column !== undefined)
      .map(({ evidence }) => [evidence.row, evidence.column]);
  };
  it.each([
    ['volts of one phase', 'load', { voltageV: 266 }, 'voltage_v'],
    ['kilovolts', 'no-load', { voltageV: 0.46 }, 'voltage_v'],
    ['watts for kilowatts', 'load', { inputPowerKw: 20_300 }, 'input_power_kw'],
    ['milliohms', 'cold', { resistanceOhm: 520 }, 'resistance_ohm'],
    ['the frequency of another mains', 'load', { frequencyHz: 50 }, 'frequency_hz'],
    ['fahrenheit', 'rated-load', { windingTempC: 201 }, 'winding_temp_c'],
    ['air as warm as a winding', 'load', { ambientC: 86 }, 'ambient_c'],
    ['a current ratio forgotten', 'load', { currentA: 2930 }, 'current_a'],
    ['more power than volt-amperes', 'load', { voltageV: 460, currentA: 15, inputPowerKw: 20 }, 'input_power_kw'],
  ] as const)('%s', (_, section, point, column) => {
    expect(alone(section, point)).toEqual([[7, column]]);
  });

  it('a quarter of rated frequency is right for a locked rotor', () => {
    expect(alone('locked-rotor', { voltageV: 40, currentA: 28, inputPowerKw: 0.9, frequencyHz: 15 })).toEqual([]);
  });
});

describe('before and after a rewind', () => {
  const result = (test: BenchTest) => benchResult(run(test));
  const limits = tables.rewindLimits;

  it('the same motor twice has kept everything', () => {
    const { verdict, changes } = compareTests(result(sound), result(sound), limits);
    expect(verdict).toBe('kept');
    expect(changes.map((change) => change.id)).toEqual([
      'resistance',
      'no-load-loss',
      'core-loss',
      'friction-windage',
      'stray',
      'efficiency',
    ]);
    expect(changes.every((change) => change.change.value === 0 && !change.significant)).toBe(true);
  });

  it('a core that lost by overheating is beyond the limit, surely and with its size', () => {
    const burnt = altered('no-load', (point, i) => ({
      ...point,
      inputPowerKw: (point.inputPowerKw ?? 0) + 0.4 * TRUTH.coreKw * (VOLTAGES[i] ?? 0) ** 2,
    }));
    const { verdict, changes, sentence } = compareTests(result(sound), result(burnt), limits);
    const core = changes.find((change) => change.id === 'core-loss');
    expect(verdict).toBe('lost');
    expect(core?.percent.value).toBeCloseTo(40, 3);
    expect([core?.verdict, core?.significant]).toEqual(['beyond', true]);
    expect(sentence).toContain('core loss');
  });

  it('efficiencies by different methods are not compared', () => {
    const other = benchResult(run(sound, { method: 'iec-2-1-1b' }));
    const { changes, sentence } = compareTests(result(sound), other, limits);
    expect(changes.some((change) => change.id === 'efficiency')).toBe(false);
    expect(sentence).toContain('different methods');
  });

  it('a change within the doubt of both tests is not significant, and a limit inside the doubt leaves the verdict open', () => {
    const warmer = altered('cold', (point) => ({ ...point, resistanceOhm: 1.027 * (point.resistanceOhm ?? 0) }));
    const wide = { ...USUAL_INSTRUMENTS, resistancePct: 1 };
    const a = benchResult(run(sound, { instruments: wide }));
    const b = benchResult(run(warmer, { instruments: wide }));
    const resistance = compareTests(a, b, limits).changes.find((change) => change.id === 'resistance');
    expect(resistance?.percent.value).toBeCloseTo(2.7, 6);
    expect(resistance?.verdict).toBe('open');
  });
});

describe('an uncoupled run on site', () => {
  const run1 = (points: readonly BenchPoint[], cold: readonly BenchPoint[] = sound.sections.cold) =>
    benchResult(run(without({ load: [], 'rated-load': [], cold, 'no-load': points }), { method: 'no-load-run' }));

  it('at one voltage gives core loss and friction together', () => {
    const result = run1(sound.sections['no-load'].slice(2, 3));
    expect(result.constant_loss?.value).toBeCloseTo(TRUTH.coreKw + TRUTH.frictionKw, 9);
    expect([result.accepted, result.core_loss, result.points.length]).toEqual([true, undefined, 0]);
  });

  it('at several voltages tells them apart, with no complaint about a standard’s range', () => {
    const result = run1([2, 4, 6, 8].flatMap((i) => sound.sections['no-load'][i] ?? []));
    expect(result.core_loss?.value).toBeCloseTo(TRUTH.coreKw, 9);
    expect(result.friction_windage?.value).toBeCloseTo(TRUTH.frictionKw, 9);
    expect([result.accepted, result.measured.core?.value]).toEqual([true, result.core_loss?.value]);
  });

  it('needs no cold row where a point has its resistance and temperature', () => {
    const points = sound.sections['no-load'].map((point) => ({ ...point, resistanceOhm: (TRUTH.resistance25 * 284.5) / 259.5 }));
    expect(run1(points, []).core_loss?.value).toBeCloseTo(TRUTH.coreKw, 9);
  });
});
