import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { insulationAt40 } from '@/lib/engine/condition/indicators/insulation-resistance';
import { unbalanceDerating } from '@/lib/engine/condition/indicators/voltage-unbalance';
import * as C from '@/lib/engine/generated/condition';
import { loadTables } from '@/lib/reference/load';
import { checkCases, given, readCases } from '../cases/published';
import { PLATE, READING, scopeOf } from '../support/study';

const plastic = (temperature: number) => C.insulation_factor_thermoplastic.f(temperature, 40, 10);
/** The correction as the indicator makes it, branch and all. */
function setting(insulationTempC: number): number {
  const plate = { ...PLATE, insulationSystem: 'thermosetting' as const };
  const found = insulationAt40(scopeOf(), plate, { ...READING, insulationTempC }, 100);
  return 'resistance' in found ? found.resistance.value / 100 : Number.NaN;
}

/** Largest deviation from the mean, the branch chosen as the indicator does. */
function unbalance(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const [first = 0, second = 0, third = 0] = [...values].sort((a, b) => Math.abs(b - mean) - Math.abs(a - mean));
  return C.deviation_from_mean.f(first, second, third, first >= mean ? 1 : -1);
}

checkCases(
  './condition.json',
  {
    'F-HUB-5.14': (c) => {
      const percent = unbalance([given(c, 'v_ab'), given(c, 'v_bc'), given(c, 'v_ca')]);
      const rise = given(c, 'rise_rated') * C.unbalance_rise_factor.f(percent, 1);
      const life = given(c, 'normal_life') * C.insulation_life_share.f(rise - given(c, 'rise_rated'), 10);
      return { unbalance_pct: percent, rise, life };
    },
    'F-NEMA-14.36': (c) => {
      const values = c.inputs.v?.value as number[];
      return { mean: values.reduce((sum, value) => sum + value, 0) / 3, unbalance_pct: unbalance(values) };
    },
    'I-ELN-IR': (c) => ({
      k: plastic(given(c, 'temp')),
      r40: C.insulation_at_reference.f(given(c, 'r'), plastic(given(c, 'temp'))),
    }),
    'I-UEI-IR': (c) => {
      // The page refers to 20 °C: the doubling rule with another reference.
      const at20 = (temperature: number) => C.insulation_factor_thermoplastic.f(temperature, 20, 10);
      return { r20: C.insulation_at_reference.f(given(c, 'r30'), at20(30)), k40: at20(40) };
    },
    'I-IEEE43-K': () => ({
      k20_tp: plastic(20),
      k35_tp: plastic(35),
      k60_tp: plastic(60),
      k20_ts: setting(20),
      k60_ts: setting(60),
    }),
    'I-IEEE43-PI': (c) => {
      const kilovolts = c.inputs.kv?.value as number[];
      const minimum = (kv: number) => C.old_insulation_minimum.f(1000 * kv, 1, 1000, 1);
      return { min_046: minimum(kilovolts[0] ?? 0), min_40: minimum(kilovolts[2] ?? 0), pi: given(c, 'ir10') / given(c, 'ir1') };
    },
  },
  // The derating is a reading of the curve: the test of the curve below takes it.
  { 'F-HUB-5.14': ['hp_derated'] },
);

function rows(file: string): Record<string, number>[] {
  const text = readFileSync(fileURLToPath(new URL(file, import.meta.url)), 'utf8');
  return Papa.parse<Record<string, number>>(text, { header: true, dynamicTyping: true, skipEmptyLines: true }).data;
}

describe('tables of the trade, row by row', () => {
  it('K_T of IEEE 43 (derived from its formulas, rounded to three decimals)', () => {
    const table = rows('../../../reference-data/condition/insulation-temperature-factor.csv');
    expect(table.length).toBeGreaterThan(10);
    for (const row of table) {
      const [temperature = 0, thermoplastic = 0, thermosetting = 0] = Object.values(row);
      expect(Math.abs(plastic(temperature) - thermoplastic)).toBeLessThan(0.000501);
      expect(Math.abs(setting(temperature) - thermosetting)).toBeLessThan(0.000501);
    }
  });

  it('sideband levels of one, two and three broken bars (Thomson and Fenger’s formula turned round, to 0.1 dB)', () => {
    const table = rows('../cases/broken-bar-levels.csv');
    expect(table.length).toBeGreaterThan(40);
    for (const row of table) {
      for (const bars of [1, 2, 3]) {
        const level = row[bars === 1 ? 'dB_down_1_bar' : `dB_down_${bars}_bars`] ?? 0;
        // A rounding of 0.05 dB is 0.6 % of the amplitude, a little more where the pole pairs weigh in.
        expect(Math.abs(C.broken_bars.f(row.rotor_bars_R ?? 0, level, 20, row.pole_pairs_p ?? 0) / bars - 1)).toBeLessThan(
          0.0062,
        );
      }
    }
  });

  it('correction of a sideband to full load (own derivation, to 0.1 dB)', () => {
    const table = rows('../cases/sideband-correction.csv');
    expect(table.length).toBeGreaterThan(30);
    for (const row of table) {
      const correction = C.sideband_correction.f(20, row.load_current_component_pu ?? 1, row.magnetising_current_pu_of_FLA ?? 0);
      expect(Math.abs(correction - (row.add_to_level_dB_toward_fault ?? 0))).toBeLessThan(0.0501);
    }
  });

  it('one per cent of unbalance in 462, 463, 455 V (US DOE Motor Systems Tip Sheet 7: 1.1 %)', () => {
    expect(unbalance([462, 463, 455])).toBeCloseTo(1.1, 1);
  });

  it('derating at 2.58 % of unbalance is the 0.92 that Hubert, Example 5.14, reads off the curve, within the 0.02 to which it is known', () => {
    const { rows: curve } = loadTables().tables.unbalanceDerating;
    const [published] = readCases('./condition.json').filter((entry) => entry.id === 'F-HUB-5.14');
    if (!published) throw new Error('the case is missing');
    const factor = unbalanceDerating(
      curve,
      unbalance([given(published, 'v_ab'), given(published, 'v_bc'), given(published, 'v_ca')]),
    );
    expect(Math.abs(factor - given(published, 'derating'))).toBeLessThan(0.02);
    expect(Math.abs(given(published, 'hp') * factor - 27.6)).toBeLessThan(0.6);
    for (const row of curve) expect(unbalanceDerating(curve, row.unbalancePct)).toBe(row.deratingFactor);
    expect(unbalanceDerating(curve, 7)).toBe(curve.at(-1)?.deratingFactor);
  });

  it('2 % of unbalance on an 80 °C rise adds 6.4 °C (US DOE Motor Systems Tip Sheet 7)', () => {
    expect(80 * (C.unbalance_rise_factor.f(2, 1) - 1)).toBeCloseTo(6.4, 9);
  });

  it('mean sideband of 36.2 and 32.5 dB is 34.35 dB, and a real cage at 34.35 dB is judged unhealthy (W. T. Thomson, case page)', () => {
    expect((36.2 + 32.5) / 2).toBeCloseTo(34.35, 9);
    expect(C.broken_bars.f(44, 34.35, 20, 2)).toBeGreaterThan(1);
  });
});
