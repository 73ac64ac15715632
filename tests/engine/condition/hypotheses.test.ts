import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HYPOTHESIS_IDS, type HypothesisId, motorResult } from '@/lib/engine';
import { combine } from '@/lib/engine/condition/hypotheses/combine';
import type { Evidence } from '@/lib/engine/condition/hypotheses/evidence';
import { INDICATORS } from '@/lib/engine/condition/registry';
import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Plate, Reading } from '@/lib/engine/motor';
import { motorOf, study } from '../support/study';
import { type Changes, full, three } from './judged';

const evidence = (hypothesis: HypothesisId, group: string, ratio: number, indicator = group): Evidence => ({
  hypothesis,
  indicator,
  group,
  text: '',
  logRatio: Math.log(ratio),
});

const PRIORS = [
  { hypothesis: 'bearing', chance: 0.02 },
  { hypothesis: 'supply', chance: 0.04 },
] as const;
const chanceOf = (id: HypothesisId, list: readonly Evidence[]) => combine(PRIORS, list).get(id) ?? Number.NaN;
const odds = (chance: number) => chance / (1 - chance);

describe('combining evidence', () => {
  it('without evidence gives back what was known before', () => {
    expect(chanceOf('bearing', [])).toBeCloseTo(0.02, 12);
    expect(chanceOf('supply', [])).toBeCloseTo(0.04, 12);
  });

  it('multiplies the odds by the ratios of independent groups, worked by hand', () => {
    const list = [evidence('bearing', 'vibration', 10), evidence('bearing', 'bearing-heat', 5), evidence('bearing', 'load', 0.5)];
    expect(odds(chanceOf('bearing', list))).toBeCloseTo((0.02 / 0.98) * 10 * 5 * 0.5, 12);
    // The other fault is as likely as before: nothing was said of it.
    expect(chanceOf('supply', list)).toBeCloseTo(0.04, 12);
  });

  it('counts the strongest of a group once, and what speaks against beside it', () => {
    const once = chanceOf('bearing', [evidence('bearing', 'vibration', 10, 'a')]);
    expect(
      chanceOf('bearing', [evidence('bearing', 'vibration', 10, 'a'), evidence('bearing', 'vibration', 8, 'b')]),
    ).toBeCloseTo(once, 12);
    const torn = chanceOf('bearing', [evidence('bearing', 'vibration', 10, 'a'), evidence('bearing', 'vibration', 0.2, 'b')]);
    expect(odds(torn)).toBeCloseTo((0.02 / 0.98) * 10 * 0.2, 12);
  });

  it('a reading that one fault explains says little for another that would explain it less well', () => {
    const shared = [evidence('supply', 'vibration', 40), evidence('bearing', 'vibration', 4)];
    expect(chanceOf('bearing', shared)).toBeLessThan(chanceOf('bearing', [evidence('bearing', 'vibration', 4)]));
    // By hand: states none, bearing, supply, both; both are explained by the better of the two.
    const [b, s] = [0.02 / 0.98, 0.04 / 0.96];
    const all = 1 + b * 4 + s * 40 + b * s * 40;
    expect(chanceOf('bearing', shared)).toBeCloseTo((b * 4 + b * s * 40) / all, 12);
  });

  it('lets two faults stand beside each other', () => {
    const two = [evidence('supply', 'supply-voltage', 2000), evidence('bearing', 'bearing-heat', 2000)];
    expect(chanceOf('supply', two)).toBeGreaterThan(0.9);
    expect(chanceOf('bearing', two)).toBeGreaterThan(0.9);
  });

  it('more for it never lowers, more against never raises the odds', () => {
    const ratio = fc.double({ min: 0.05, max: 200, noNaN: true });
    fc.assert(
      fc.property(ratio, ratio, ratio, (a, b, c) => {
        const base = [evidence('bearing', 'vibration', a), evidence('supply', 'load', b)];
        const more = chanceOf('bearing', [...base, evidence('bearing', 'speeds', c)]);
        if (c >= 1) expect(more).toBeGreaterThanOrEqual(chanceOf('bearing', base) - 1e-12);
        else expect(more).toBeLessThanOrEqual(chanceOf('bearing', base) + 1e-12);
        expect(more).toBeGreaterThan(0);
        expect(more).toBeLessThan(1);
      }),
    );
  });
});

describe('the table of evidence', () => {
  const { faultEvidence, faultBaseRates } = study().tables;

  it('speaks of indicators that exist, and of every suspicion, each with a base rate', () => {
    const known = new Set([...INDICATORS.map((indicator) => indicator.id), 'readings-agreement']);
    for (const row of faultEvidence.rows) expect(known.has(row.indicator), row.indicator).toBe(true);
    expect(new Set(faultEvidence.rows.map((row) => row.hypothesis))).toEqual(new Set(HYPOTHESIS_IDS));
    expect(faultBaseRates.rows.map((row) => row.hypothesis).sort()).toEqual([...HYPOTHESIS_IDS].sort());
  });

  it('gives each indicator one group', () => {
    const groups = new Map<string, string>();
    for (const row of faultEvidence.rows) {
      expect(groups.get(row.indicator) ?? row.group).toBe(row.group);
      groups.set(row.indicator, row.group);
    }
  });

  it('is common practice throughout and says so', () => {
    expect(new Set(faultEvidence.rows.map((row) => row.status))).toEqual(new Set(['practice']));
  });
});

const judged = (changes: Changes) => motorResult(evaluateMotor(motorOf(changes), study())).condition;
const found = (changes: Changes, id: HypothesisId) => judged(changes).hypotheses.find((entry) => entry.id === id);

describe('strength', () => {
  const hot = { bearingTempC: 112 };
  const shaking = { plate: { foundation: 'rigid' } as Partial<Plate>, reading: { vibrationMmS: 6 } };

  it('one indicator is weak, however far beyond its limit', () => {
    for (const changes of [
      { reading: hot },
      shaking,
      { reading: { voltagesV: three(460, 9), voltageV: 460 } },
      { reading: { insulationResistanceMohm: 0.01, insulationTempC: 40 } },
      { plate: { rotorBars: 44, rotorBarsSource: 'counted' }, reading: { ...full, rotorSidebandDb: 20 } },
    ] as Changes[])
      for (const { strength } of judged(changes).hypotheses) expect(strength).toBe('weak');
  });

  it('two independent groups at 9 to 1 are strong', () => {
    const both = found({ ...shaking, reading: { ...shaking.reading, ...hot } }, 'bearing');
    expect(both?.odds).toBeGreaterThan(9);
    expect(both?.strength).toBe('strong');
    expect(new Set(both?.for.map((entry) => entry.group)).size).toBeGreaterThanOrEqual(2);
  });

  it('two readings of one group stay weak', () => {
    const vibration = { vibrationMmS: 6, vibration2xMmS: 4, vibrationAxialMmS: 4 };
    expect(found({ ...shaking, reading: vibration }, 'misalignment-soft-foot')?.strength).toBe('weak');
  });

  it('evidence against is listed and lowers the odds', () => {
    const alone = found({ reading: hot }, 'bearing');
    const quiet = found({ ...shaking, reading: { ...hot, vibrationMmS: 1 } }, 'bearing');
    expect(quiet?.against.map((entry) => entry.indicator)).toContain('vibration');
    expect(quiet?.odds ?? 1).toBeLessThan(alone?.odds ?? 0);
  });

  it('what is missing is named with its columns, and the next reading with its caution', () => {
    const condition = judged({ reading: hot });
    const bearing = condition.hypotheses.find((entry) => entry.id === 'bearing');
    expect(bearing?.missing.find((entry) => entry.indicator === 'vibration')?.text).toContain('vibration_mm_s');
    expect(condition.next_measurement?.between).toContain('bearing');
    expect(condition.next_measurement?.text).toMatch(/Guards|Qualified|Isolate/);
    expect(bearing?.missing.map((entry) => entry.indicator)).not.toContain('bearing-temperature');
  });

  it('of a motor that is out of service the next reading is one at standstill, or none', () => {
    const next = (status: 'running' | 'failed' | 'spare', reading: Partial<Reading>) =>
      judged({ plate: { status, insulationClass: 'F' }, reading }).next_measurement;
    // A hot bearing is told apart by how it shakes, which a motor that stands still does not.
    expect(next('running', hot)?.columns).toContain('vibration_mm_s');
    expect(next('failed', hot)?.text ?? '').not.toMatch(/Guards|Qualified persons only, with the panel/);
    // What a hot winding has is told by its resistance or insulation, which are tested locked out.
    const warm = { windingTempC: 190, windingTempMethod: 'embedded' } as const;
    for (const status of ['failed', 'spare'] as const) {
      expect(next(status, warm)?.columns[0]).toMatch(/^(resistance|insulation)_/);
      expect(next(status, warm)?.text).toMatch(/Isolate/);
    }
  });

  it('a sound motor has no suspicion', () => {
    expect(judged({ reading: { bearingTempC: 55, voltagesV: three(460, 0.2), voltageV: 460 } }).hypotheses).toEqual([]);
  });

  it('likeliest first', () => {
    const list = judged({
      ...shaking,
      reading: { ...shaking.reading, ...hot, insulationResistanceMohm: 2, insulationTempC: 40 },
    }).hypotheses;
    expect(list.map((entry) => entry.odds)).toEqual(list.map((entry) => entry.odds).sort((a, b) => b - a));
    expect(list.length).toBeGreaterThan(2);
  });
});

describe('what was known before', () => {
  it('is the yearly share of failures: bearings 44 % of 5 in 100 a year (table of base rates), raised by what their heat says', () => {
    const result = evaluateMotor(motorOf({ reading: { bearingTempC: 140 } }), study({ failureRatePerYear: 0.05 }));
    const bearing = result.condition.suspicions().hypotheses.find(({ id }) => id === 'bearing');
    const row = study().tables.faultEvidence.rows.find(
      (each) => each.hypothesis === 'bearing' && each.indicator === 'bearing-temperature',
    );
    const before = 0.44 * 0.05;
    // Nothing else speaks for it; what the other readings say against it lowers the odds somewhat.
    const alone = (before / (1 - before)) * (row?.beyond ?? Number.NaN);
    expect(bearing?.odds).toBeGreaterThan(0.6 * alone);
    expect(bearing?.odds).toBeLessThan(1.05 * alone);
  });
});

describe('three traps', () => {
  const counted = { rotorBars: 44, rotorBarsSource: 'counted' } as const;

  it('a gear’s line where the bars’ would be: the verdict stops at near, and the gear is suspected as much', () => {
    const geared: Changes = {
      plate: { ...counted, coupling: 'gear' },
      reading: { ...full, rotorSidebandDb: 33, spectrumResolutionHz: 0.1 },
      // 1770 r/min: pole pass 2 Hz, and 12 teeth on 177 turn the wheel twice a second.
      motor: { lineGeometry: { gearTeeth: [12, 177] } },
    };
    const clear: Changes = { ...geared, motor: { lineGeometry: { gearTeeth: [23, 67] } } };
    expect(judged(clear).indicators.find((entry) => entry.id === 'rotor-sideband')?.band).toBe('beyond');
    const condition = judged(geared);
    expect(condition.indicators.find((entry) => entry.id === 'rotor-sideband')?.band).toBe('near');
    const cage = condition.hypotheses.find((entry) => entry.id === 'rotor-cage');
    const gear = condition.hypotheses.find((entry) => entry.id === 'driven-machine');
    expect(cage?.odds ?? 1).toBeLessThan(found(clear, 'rotor-cage')?.odds ?? 0);
    expect(gear?.odds ?? 0).toBeGreaterThan(cage?.odds ?? 1);
    expect(cage?.strength).toBe('weak');
  });

  it('a sideband at low load says nothing, neither for nor against, and is named as missing', () => {
    const light: Partial<Reading> = { inputPowerKw: 15, currentA: 31, shaftSpeedRpm: 1787 };
    for (const rotorSidebandDb of [30, 62]) {
      const cage = found({ plate: counted, reading: { ...light, rotorSidebandDb } }, 'rotor-cage');
      expect(cage).toMatchObject({ for: [], against: [], strength: 'weak' });
      expect(cage?.missing.find((entry) => entry.indicator === 'rotor-sideband')?.text).toContain('% load');
    }
  });

  it('counts half between 50 and 75 % load, by the chance that the load was enough', () => {
    const at = (inputPowerKw: number) =>
      found(
        { plate: counted, reading: { inputPowerKw, currentA: undefined, shaftSpeedRpm: undefined, rotorSidebandDb: 36 } },
        'rotor-cage',
      )?.for.find((entry) => entry.indicator === 'rotor-sideband')?.ratio ?? Number.NaN;
    // Input power at 91.7 %: 25.6 kW is 63 % load, 36.6 kW 90 %.
    expect(at(25.6)).toBeCloseTo(Math.sqrt(at(36.6)), 1);
    expect(at(30.5)).toBeGreaterThan(at(25.6));
    expect(at(30.5)).toBeLessThan(at(36.6));
  });

  it('belt slip with an uneven air gap points to the belt drive, not to the air gap alone', () => {
    const belted: Changes = {
      plate: { coupling: 'v-belt', speedRatio: 1.5, drivenSpeedRpm: (1770 / 1.5) * 0.94 },
      reading: { ...full, eccentricitySidebandDb: 36 },
    };
    const list = judged(belted).hypotheses;
    expect(list[0]?.id).toBe('belt-drive');
    expect(list[0]?.strength).not.toBe('weak');
    expect(list.find((entry) => entry.id === 'eccentricity')?.strength).toBe('weak');
    // The same line without a belt speaks for the air gap.
    expect(judged({ reading: { ...full, eccentricitySidebandDb: 36 } }).hypotheses[0]?.id).toBe('eccentricity');
  });
});
