import { describe, expect, it } from 'vitest';
import type { EfficiencyClass } from '@/lib/engine/motor';
import { classContradiction } from '@/lib/engine/nameplate/class-contradiction';
import { study } from './support/study';

const { tables } = study();
const FIFTY_HP = { ratedPowerKw: 37.3, poles: 4, enclosure: 'enclosed', frequencyHz: 60, standards: 'nema' } as const;
const against = (stated: EfficiencyClass, pct: number) => classContradiction(tables, FIFTY_HP, stated, pct);

describe('a stamped efficiency against the class on the same sheet', () => {
  it('allows what lies between nominal and guaranteed: 93.6 for 94.5 % (NEMA MG 1 table 12-10, from memory), and no less', () => {
    expect(against('premium', 93.6)).toBeUndefined();
    expect(against('premium', 93)).toMatchObject({ against: 'premium', pct: 94.5 });
  });

  it('says how many times the loss is: (100 / 88.5 - 1) / (100 / 94.5 - 1) = 2.23 (10 CFR 431.25 has 94.5 % at 50 hp)', () => {
    expect(against('premium', 88.5)?.ratio).toBeCloseTo(2.2327, 3);
  });

  it('knows a stamp that is better than the class above allows, and one that merely reaches it', () => {
    expect(against('standard', 96.9)).toMatchObject({ against: 'energy-efficient', pct: 93 });
    expect(against('standard', 93)).toBeUndefined();
    expect(against('energy-efficient', 94.5)).toBeUndefined();
    expect(against('energy-efficient', 95.8)).toMatchObject({ against: 'premium' });
  });

  it('does not hold a standard motor to a least efficiency, since that class has none', () => {
    expect(against('standard', 85)).toBeUndefined();
  });

  it('finds no fault with any row of the tables under its own class', () => {
    const rows = [tables.usPremium, tables.usEnergyEfficient, tables.iec50Hz, tables.iec60Hz].flatMap((table) => {
      const us = table === tables.usPremium || table === tables.usEnergyEfficient;
      const standards = us ? ('nema' as const) : ('iec' as const);
      const frequencyHz = table === tables.iec50Hz ? 50 : 60;
      return table.rows.map((row) => ({ row, standards, frequencyHz }));
    });
    expect(rows.length).toBeGreaterThan(500);
    for (const { row, standards, frequencyHz } of rows) {
      const stated = row.efficiencyClass as EfficiencyClass;
      const enclosure = row.enclosure ?? 'enclosed';
      const query = { ratedPowerKw: row.ratedPowerKw, poles: row.poles, enclosure, frequencyHz, standards };
      expect(classContradiction(tables, query, stated, row.nominalEfficiencyPct)).toBeUndefined();
    }
  });

  it('says nothing where no table holds the class at the rating', () => {
    expect(classContradiction(tables, { ...FIFTY_HP, ratedPowerKw: 900 }, 'premium', 80)).toBeUndefined();
  });
});
