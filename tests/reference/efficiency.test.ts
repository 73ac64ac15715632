/** Efficiency tables: order, range, ladder, and each against another table, another class or the law. */
import { describe, expect, it } from 'vitest';
import type { EfficiencyRow } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';
import { common, halfUnit, steps } from './support';

const { tables, checks } = loadTables();
const { usPremium, usEnergyEfficient, iec50Hz, iec60Hz, nominalToMinimum } = tables;

const column = (r: EfficiencyRow): string => `${r.efficiencyClass} ${r.poles} poles ${r.enclosure ?? ''}`;
const cell = (r: EfficiencyRow): string => `${r.poles} ${r.enclosure} ${r.ratedPowerHp}`;
const ladder = new Set(nominalToMinimum.rows.map((r) => r.nominalEfficiencyPct));

function us(table: typeof usPremium, poles: number, enclosure: string, hp: number): number | undefined {
  return table.rows.find((r) => r.poles === poles && r.enclosure === enclosure && r.ratedPowerHp === hp)?.nominalEfficiencyPct;
}

describe.each([
  ['premium', usPremium],
  ['energy-efficient', usEnergyEfficient],
] as const)('United States table %s', (efficiencyClass, table) => {
  it('has 184 cells: 25 ratings at 2 and 4 poles, 22 at 6, 20 at 8, each open and enclosed', () => {
    expect(table.rows).toHaveLength(184);
    const count = (poles: number) => table.rows.filter((r) => r.poles === poles).length;
    expect([2, 4, 6, 8].map(count)).toEqual([50, 50, 44, 40]);
    expect(new Set(table.rows.map((r) => r.efficiencyClass))).toEqual(new Set([efficiencyClass]));
    expect(new Set(table.rows.map((r) => r.frequencyHz))).toEqual(new Set([60]));
  });

  it('rises in rating, and efficiency never falls with it: the law has no exception', () => {
    for (const [before, after] of steps(table.rows, column)) {
      expect(after.ratedPowerKw).toBeGreaterThan(before.ratedPowerKw);
      expect(after.nominalEfficiencyPct).toBeGreaterThanOrEqual(before.nominalEfficiencyPct);
    }
  });

  it('stands on the ladder of NEMA MG 1 Table 12-10', () => {
    expect(table.rows.filter((r) => !ladder.has(r.nominalEfficiencyPct))).toEqual([]);
  });

  it('pairs hp and kW as the table of steps does', () => {
    const paired = common(
      table.rows,
      (r) => `${r.ratedPowerHp}`,
      tables.horsepowerSteps.rows,
      (r) => `${r.ratedPowerHp}`,
    );
    expect(paired).toHaveLength(184);
    for (const [row, step] of paired) expect(row.ratedPowerKw).toBe(step.ratedPowerKw);
  });
});

describe('premium against energy-efficient', () => {
  it('is higher in every common cell, by one to three steps of the ladder', () => {
    const rungs = [...ladder].sort((a, b) => a - b);
    const pairs = common(usPremium.rows, cell, usEnergyEfficient.rows, cell);
    expect(pairs).toHaveLength(184);
    for (const [premium, efficient] of pairs) {
      const apart = rungs.indexOf(premium.nominalEfficiencyPct) - rungs.indexOf(efficient.nominalEfficiencyPct);
      expect(apart, cell(premium)).toBeGreaterThanOrEqual(1);
      expect(apart, cell(premium)).toBeLessThanOrEqual(3);
    }
  });
});

describe('values of the law', () => {
  // Premium: 10 CFR 431.25 Table 1, the cells that a Canadian motor regulation repeats.
  it.each([
    [4, 'enclosed', 1, 85.5],
    [4, 'enclosed', 5, 89.5],
    [4, 'enclosed', 10, 91.7],
    [4, 'enclosed', 15, 92.4],
    [4, 'enclosed', 20, 93.0],
    [4, 'enclosed', 25, 93.6],
    [4, 'enclosed', 40, 94.1],
    [4, 'enclosed', 50, 94.5],
    [4, 'enclosed', 60, 95.0],
    [4, 'enclosed', 75, 95.4],
    [4, 'enclosed', 150, 95.8],
    [4, 'enclosed', 200, 96.2],
    [2, 'open', 100, 93.6],
    [2, 'open', 200, 95.0],
    [6, 'open', 15, 91.7],
    [6, 'open', 20, 92.4],
    [6, 'enclosed', 150, 95.8],
  ])('premium, %i poles, %s, %d hp: %d per cent', (poles, enclosure, hp, efficiency) => {
    expect(us(usPremium, poles, enclosure, hp)).toBe(efficiency);
  });

  // Energy-efficient: 42 USC 6313(b)(1), remembered cells of the Act (from memory, 4 poles).
  it.each([
    [4, 'enclosed', 1, 82.5],
    [4, 'enclosed', 10, 89.5],
    [4, 'enclosed', 50, 93.0],
    [4, 'enclosed', 100, 94.5],
    [4, 'enclosed', 200, 95.0],
    [4, 'open', 20, 91.0],
    [4, 'open', 100, 94.1],
  ])('energy-efficient, %i poles, %s, %d hp: %d per cent', (poles, enclosure, hp, efficiency) => {
    expect(us(usEnergyEfficient, poles, enclosure, hp)).toBe(efficiency);
  });
});

describe.each([
  ['50 Hz', iec50Hz, ['IE1', 'IE2', 'IE3', 'IE4'], 41, 0],
  ['60 Hz', iec60Hz, ['IE2', 'IE3', 'IE4'], 25, 2],
] as const)('IEC classes at %s', (_, table, classes, ratings, gaps) => {
  it('has every rating in every class and pole number but the known gaps', () => {
    expect(table.rows).toHaveLength(classes.length * ratings * 4 - gaps);
    expect([...new Set(table.rows.map((r) => r.efficiencyClass))]).toEqual(classes);
  });

  it('rises in rating, and efficiency never falls with it', () => {
    for (const [before, after] of steps(table.rows, column)) {
      expect(after.ratedPowerKw).toBeGreaterThan(before.ratedPowerKw);
      expect(after.nominalEfficiencyPct).toBeGreaterThanOrEqual(before.nominalEfficiencyPct);
    }
  });

  it('puts each class above the one before in every common cell', () => {
    const place = (r: EfficiencyRow) => `${r.poles} ${r.ratedPowerKw}`;
    for (const [at, lower] of classes.slice(0, -1).entries()) {
      const rowsOf = (name: string | undefined) => table.rows.filter((r) => r.efficiencyClass === name);
      const pairs = common(rowsOf(lower), place, rowsOf(classes[at + 1]), place);
      expect(pairs.length).toBeGreaterThanOrEqual(ratings * 4 - gaps);
      for (const [less, more] of pairs) expect(more.nominalEfficiencyPct, place(more)).toBeGreaterThan(less.nominalEfficiencyPct);
    }
  });
});

describe('IEC 50 Hz against the coefficients of UK SI 2021/745 Schedule 16', () => {
  const computed = checks.iecCoefficients.flatMap((c) =>
    iec50Hz.rows
      .filter((r) => r.efficiencyClass === c.efficiencyClass && r.poles === c.poles)
      .filter((r) => r.ratedPowerKw >= c.ratedPowerKwMin && r.ratedPowerKw <= c.ratedPowerKwMax)
      .map((row) => {
        const l = Math.log10(row.ratedPowerKw);
        return { row, status: c.status, efficiency: c.a * l ** 3 + c.b * l ** 2 + c.c * l + c.d };
      }),
  );

  it('gives every cell of IE2, IE3 and IE4 from 0.12 to 200 kW, rounded to a tenth', () => {
    const read = computed.filter((c) => c.status === 'read');
    expect(read).toHaveLength(348);
    const off = read.filter((c) => Math.abs(c.efficiency - c.row.nominalEfficiencyPct) > halfUnit(0.1));
    expect(off.map((c) => c.row)).toEqual([]);
  });

  it('gives the IE1 cells too, whose coefficients are from memory', () => {
    const memory = computed.filter((c) => c.status === 'memory');
    expect(memory.length).toBeGreaterThan(60);
    const off = memory.filter((c) => Math.abs(c.efficiency - c.row.nominalEfficiencyPct) > halfUnit(0.1));
    expect(off.map((c) => c.row)).toEqual([]);
  });

  it('is constant above 200 kW, but for IE4 at 6 poles', () => {
    const large = iec50Hz.rows.filter((r) => r.ratedPowerKw >= 200);
    const changes = steps(large, column).filter(([a, b]) => a.nominalEfficiencyPct !== b.nominalEfficiencyPct);
    expect(changes.map(([, b]) => [b.efficiencyClass, b.poles, b.ratedPowerKw, b.nominalEfficiencyPct])).toEqual([
      ['IE4', 6, 250, 96.5],
      ['IE4', 6, 315, 96.6],
    ]);
  });
});

describe('IEC 60 Hz against the United States tables', () => {
  const rated = (r: EfficiencyRow) => `${r.poles} ${r.ratedPowerKw}`;

  /** Cells remembered as really different: 0.75 kW, and 1.1 kW at 8 poles. */
  it.each([
    ['IE2', usEnergyEfficient, ['4 0.75', '6 0.75', '8 0.75', '8 1.1']],
    ['IE3', usPremium, ['4 0.75']],
  ] as const)('%s equals enclosed motors where both stand, but for the cells named', (name, table, named) => {
    const classRows = iec60Hz.rows.filter((r) => r.efficiencyClass === name && r.ratedPowerKw >= 0.75);
    const enclosed = table.rows.filter((r) => r.enclosure === 'enclosed');
    const pairs = common(classRows, rated, enclosed, rated);
    expect(pairs.length).toBeGreaterThan(60);
    const differing = pairs
      .filter(([iec, law]) => iec.nominalEfficiencyPct !== law.nominalEfficiencyPct)
      .map(([iec]) => rated(iec));
    expect(differing).toEqual(named);
  });

  it('IE3 below 0.75 kW equals 10 CFR 431.446 (small polyphase motors)', () => {
    const classRows = iec60Hz.rows.filter((r) => r.efficiencyClass === 'IE3' && r.ratedPowerKw < 0.75);
    const pairs = common(classRows, rated, checks.usSmallPolyphase, (r) => `${r.poles} ${r.ratedPowerKw}`);
    expect(pairs.length).toBeGreaterThanOrEqual(12);
    for (const [iec, law] of pairs) expect(iec.nominalEfficiencyPct, rated(iec)).toBe(law.averageEfficiencyPct);
  });
});

describe('small polyphase motors', () => {
  it('efficiency never falls with rating', () => {
    for (const [before, after] of steps(checks.usSmallPolyphase, (r) => `${r.poles}`)) {
      expect(after.averageEfficiencyPct).toBeGreaterThanOrEqual(before.averageEfficiencyPct);
    }
  });
});

describe('nominal to minimum (NEMA MG 1 Table 12-10)', () => {
  const rungs = [...ladder].sort((a, b) => a - b);

  it('has 51 steps from 50.5 to 99.0, falling, each minimum below its nominal', () => {
    expect(nominalToMinimum.rows).toHaveLength(51);
    expect([rungs[0], rungs.at(-1)]).toEqual([50.5, 99]);
    for (const r of nominalToMinimum.rows) expect(r.minimumEfficiencyPct).toBeLessThan(r.nominalEfficiencyPct);
    for (const [before, after] of steps(nominalToMinimum.rows, () => '')) {
      expect(after.nominalEfficiencyPct).toBeLessThan(before.nominalEfficiencyPct);
      expect(after.minimumEfficiencyPct).toBeLessThan(before.minimumEfficiencyPct);
    }
  });

  it('gives as minimum the step nearest to 1.2 times the losses (MG 1 12.58.2), but for 98.7', () => {
    // The ladder goes on below its lowest nominal step by the same minima that the table prints.
    const all = [...new Set([...rungs, ...nominalToMinimum.rows.map((r) => r.minimumEfficiencyPct)])];
    const exceptions = nominalToMinimum.rows.filter((r) => {
      const nominal = r.nominalEfficiencyPct / 100;
      const target = 100 / (1 + 1.2 * (1 / nominal - 1));
      const distance = (step: number) => Math.abs(step - target);
      return all.some((step) => distance(step) < distance(r.minimumEfficiencyPct) - 1e-9);
    });
    expect(exceptions.map((r) => [r.nominalEfficiencyPct, r.minimumEfficiencyPct])).toEqual([[98.7, 98.5]]);
  });
});

describe('standard motors at part load', () => {
  const rows = tables.usStandardPartLoad.rows;
  const motor = (r: (typeof rows)[number]) => `${r.poles} ${r.enclosure} ${r.ratedPowerHp}`;

  it('leaves out its 47 gaps and is from memory throughout', () => {
    expect(rows).toHaveLength(389);
    expect(new Set(rows.map((r) => r.status))).toEqual(new Set(['memory']));
  });

  it('stays below the energy-efficient table at full load, but for the two cells whose notes say so', () => {
    const full = rows.filter((r) => r.loadPct === 100);
    const pairs = common(full, motor, usEnergyEfficient.rows, cell);
    expect(pairs.length).toBeGreaterThan(80);
    const high = pairs
      .filter(([old, efficient]) => old.averageEfficiencyPct >= efficient.nominalEfficiencyPct)
      .map(([old]) => motor(old));
    expect(high.sort()).toEqual(['8 enclosed 25', '8 open 40']);
  });

  it('falls from half to quarter load, and lies within 4 points of full load at three quarters', () => {
    const at = (load: number) => rows.filter((r) => r.loadPct === load);
    for (const [half, quarter] of common(at(50), motor, at(25), motor)) {
      expect(quarter.averageEfficiencyPct, motor(half)).toBeLessThan(half.averageEfficiencyPct);
    }
    for (const [full, most] of common(at(100), motor, at(75), motor)) {
      expect(Math.abs(full.averageEfficiencyPct - most.averageEfficiencyPct), motor(full)).toBeLessThan(4);
    }
  });
});

describe('old Design B motors', () => {
  const rows = tables.usOldDesign.rows;

  it('has bands that follow on each other, the last without upper end, rising in efficiency', () => {
    for (const [before, after] of steps(rows, () => '')) {
      expect(after.ratedPowerHpMin).toBe((before.ratedPowerHpMax ?? Number.POSITIVE_INFINITY) + 1);
      expect(after.nominalEfficiencyPct).toBeGreaterThan(before.nominalEfficiencyPct);
    }
    expect(rows.at(-1)?.ratedPowerHpMax).toBeUndefined();
  });

  it('is below the energy-efficient table (4 poles, enclosed) everywhere in each band', () => {
    const enclosed = usEnergyEfficient.rows.filter((r) => r.poles === 4 && r.enclosure === 'enclosed');
    for (const band of rows) {
      const inside = enclosed.filter((r) => {
        const hp = r.ratedPowerHp ?? 0;
        return hp >= band.ratedPowerHpMin && hp <= (band.ratedPowerHpMax ?? Number.POSITIVE_INFINITY);
      });
      expect(inside.length).toBeGreaterThan(0);
      for (const r of inside) expect(r.nominalEfficiencyPct).toBeGreaterThan(band.nominalEfficiencyPct);
    }
  });

  it('stands on the ladder, but for 78.8 as printed', () => {
    expect(rows.map((r) => r.nominalEfficiencyPct).filter((value) => !ladder.has(value))).toEqual([78.8]);
  });
});
