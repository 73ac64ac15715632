import { describe, expect, it } from 'vitest';
import { classEfficiency, standardEfficiency } from '@/lib/engine/nameplate/class-efficiency';
import { study } from './support/study';

const { tables } = study();
const KW_PER_HP = 0.7457;
const HP = [1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250, 300, 350, 400, 450, 500];
const POLES = [2, 4, 6, 8];
const query = (hp: number, poles: number, enclosure: 'open' | 'enclosed') =>
  ({ ratedPowerKw: hp * KW_PER_HP, poles, enclosure, frequencyHz: 60, standards: 'nema' }) as const;
const standard = (hp: number, poles: number, enclosure: 'open' | 'enclosed' = 'enclosed'): number =>
  standardEfficiency(tables, query(hp, poles, enclosure))?.pct ?? Number.NaN;
const loss = (pct: number): number => 100 / pct - 1;

describe('efficiency of a standard motor of which nothing is stamped', () => {
  it('stays below the energy-efficient class at every rating (42 USC 6313, NEMA MG 1 table 12-11), but for the two cells that the survey has so', () => {
    const high: string[] = [];
    for (const enclosure of ['open', 'enclosed'] as const)
      for (const poles of POLES)
        for (const hp of HP) {
          const asked = query(hp, poles, enclosure);
          const better = classEfficiency(tables, { ...asked, efficiencyClass: 'energy-efficient' });
          if (better && standard(hp, poles, enclosure) >= better.pct) high.push(`${poles} ${enclosure} ${hp}`);
        }
    // Notes of the table: an average may exceed a later minimum; probably a slip of the source or of recall.
    expect(high.sort()).toEqual(['8 enclosed 25', '8 open 40']);
  });

  it('of a small fast or slow motor is not that of the old band, which holds for all pole counts', () => {
    // 42 USC 6313: 75.5 % at 1 hp with 2 poles, 74.0 with 8. 1.28 times their loss: 100 / (1 + 1.28 x (100 / 75.5 - 1)) = 70.65; so 68.97.
    expect(standard(1, 2)).toBeCloseTo(70.65, 1);
    expect(standard(1, 8)).toBeCloseTo(68.97, 1);
    // With 4 poles the old Design B minimum of the band is the lower one.
    expect(standard(3, 4)).toBe(78.8);
  });

  it('does not fall beyond the largest rating of the survey', () => {
    for (const poles of POLES)
      for (const hp of [350, 500, 1000]) expect(standard(hp, poles, 'open')).toBeGreaterThanOrEqual(standard(300, poles, 'open'));
  });

  it('the ratio of losses below the survey is that of the survey over the energy-efficient table where both have a cell', () => {
    const ratios = tables.usStandardPartLoad.rows
      .filter(({ loadPct }) => loadPct === 100)
      .flatMap((old) => {
        const row = tables.usEnergyEfficient.rows.find(
          (each) => each.poles === old.poles && each.enclosure === old.enclosure && each.ratedPowerHp === old.ratedPowerHp,
        );
        return row ? [loss(old.averageEfficiencyPct) / loss(row.nominalEfficiencyPct)] : [];
      });
    const mean = ratios.reduce((sum, each) => sum + each, 0) / ratios.length;
    const deviation = Math.sqrt(ratios.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (ratios.length - 1));
    expect(ratios.length).toBe(107);
    expect(mean).toBeCloseTo(1.28, 2);
    expect(deviation).toBeCloseTo(0.12, 2);
  });
});
