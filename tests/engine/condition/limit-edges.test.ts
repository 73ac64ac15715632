import { describe, expect, it } from 'vitest';
import { LIMIT_IDS } from '@/lib/engine';
import { limitOf } from '@/lib/engine/condition/limit';
import { PRACTICE } from '@/lib/engine/condition/practice';
import type { Plate } from '@/lib/engine/motor';
import { scopeOf, study } from '../support/study';
import { atLoad, judge, three } from './judged';

/** Numbers of the table of limits as summaries of each source give them: id, value, upper end, unit. The standards themselves were not read. */
const NUMBERS: readonly (readonly [string, number, number | undefined, string])[] = [
  // IEEE 43-2013, clauses 12.2 and 12.3.
  ['A2', 100, undefined, 'MΩ'],
  ['A3', 5, undefined, 'MΩ'],
  ['A4', 1.5, undefined, '1'],
  ['A5', 2, undefined, '1'],
  ['A6', 5000, undefined, 'MΩ'],
  // ANSI/EASA AR100-2020, from memory; B3 common practice.
  ['B1', 2, undefined, '%'],
  ['B2', 1, undefined, '%'],
  ['B3', 5, undefined, '%'],
  // NEMA MG 1 12.44, 12.45, 14.36, 30.1.2; US DOE Motor Systems Tip Sheets 7, 8 and 9.
  ['C1', 1, undefined, '%'],
  ['C2', 5, undefined, '%'],
  ['C4', 6, 10, '%/%'],
  ['C5', 10, undefined, '% of rated'],
  ['C6', 5, undefined, '% of rated'],
  ['C7', 10, undefined, '%'],
  ['C8', 3, undefined, '%'],
  ['C9', 15, undefined, '%'],
  ['C10', 0.03, undefined, '1'],
  // IEEE 519-2014, table 1.
  ['C11', 8, undefined, '%'],
  ['C12', 5, undefined, '%'],
  // NEMA MG 1 part 7.
  ['D1', 0.15, undefined, 'in/s peak'],
  ['D2', 0.8, undefined, '1'],
  // Common practice.
  ['E1a', 50, undefined, '% load'],
  ['E1b', 75, undefined, '% load'],
  // US DOE Motor Systems Tip Sheets 3 and 7.
  ['F1', 10, undefined, '°C'],
  // ANSI/EASA AR100-2015 3.3; notes of the repair trade on core-loss tests; US DOE fact sheets.
  ['G1', 370, undefined, '°C'],
  ['G2', 400, undefined, '°C'],
  ['G3', 20, undefined, '%'],
  ['G4', 4, undefined, 'W/lb'],
  ['G5a', 15, undefined, '°C'],
  ['G5b', 10, undefined, '°C'],
  ['G6', 50, 65, '% of new premium'],
  ['G7', 60, undefined, '% of new premium'],
  ['H1', 50, 100, '% of rated'],
  ['H2', 75, undefined, '% of rated'],
  ['H3', 40, 50, '% of rated'],
  // 10 CFR 436.14 and 436.18; common practice.
  ['J1', 1, undefined, '1'],
  ['J3', 3, 10, '%'],
  ['J4', 2, 3, 'years'],
];

describe('the table of limits', () => {
  it('holds these numbers, each with its unit, and no others', () => {
    const found = study().tables.limits.rows.filter((row) => row.value !== undefined);
    expect(found.map(({ id, value, valueHigh, unit }) => [id, value, valueHigh, unit])).toEqual(NUMBERS);
  });

  it('says the rest in words: formulas of the standards', () => {
    const words = study().tables.limits.rows.filter((row) => row.value === undefined);
    expect(words.map(({ id }) => id)).toEqual(['A1', 'A7', 'C3', 'E2', 'J2']);
  });

  it('every limit that a study may set is above zero, so that zero or less can be refused', () => {
    const scope = scopeOf();
    const own = [...LIMIT_IDS].filter((id) => id in PRACTICE || NUMBERS.some(([known]) => known === id));
    expect(own.length).toBeGreaterThan(30);
    for (const id of own) expect(limitOf(scope, id).value, id).toBeGreaterThan(0);
  });
});

/** Temperatures of each class, °C, and its rise by resistance, K (NEMA MG 1 12.43, second text). */
const CLASSES = [
  ['A', 105, 60],
  ['B', 130, 80],
  ['F', 155, 105],
  ['H', 180, 125],
] as const;
const EDGES = [
  [-10.1, 'within'],
  [-10, 'near'],
  [-0.1, 'near'],
  [0, 'near'],
  [0.1, 'beyond'],
] as const;
const each = CLASSES.flatMap((row) => EDGES.map((edge) => [...row, ...edge] as const));

describe('winding temperature, each class', () => {
  const band = (plate: Partial<Plate>, windingTempC: number, windingTempMethod: 'embedded' | 'resistance') =>
    judge('winding-temperature', { plate, reading: { windingTempC, windingTempMethod, ambientC: 25 } }).indicator?.band;

  it.each(each)('%s by detector, %d °C (rise %d K): %d K from it is %s', (name, most, _, off, expected) => {
    expect(band({ insulationClass: name }, most + off, 'embedded')).toBe(expected);
  });

  it.each(each)('%s (%d °C) by its rise of %d K alone at 25 °C: %d K from it is %s', (name, _, rise, off, expected) => {
    expect(band({ temperatureRiseClass: name }, 25 + rise + off, 'resistance')).toBe(expected);
    // By detector the rise is 10 K more (MG 1 20.8, from memory).
    expect(band({ temperatureRiseClass: name }, 35 + rise + off, 'embedded')).toBe(expected);
  });
});

describe('limits of what is said beside a verdict', () => {
  it.each([
    [4.999, 'voltage-unbalance-derates'],
    [5, 'voltage-unbalance-derates'],
    [5.001, 'voltage-unbalance-high'],
  ])('%s %% of voltage unbalance: %s; above 5 %% a motor is not to be run (NEMA MG 1 14.36, second text)', (pct, code) => {
    const { indicator } = judge('voltage-unbalance', { reading: { voltagesV: three(460, pct), voltageV: 460 } });
    expect(indicator?.findings.map((found) => found.code).filter((found) => found.startsWith('voltage-'))).toEqual([code]);
  });

  // THD/√5 is 0.03 at 6.7082 %: NEMA MG 1 30.1.2, from memory.
  it.each([
    [6.7, true],
    [6.708, true],
    [6.709, false],
    [7.5, false],
  ])('%s %% of distortion: no derating is needed is %s', (thdVoltagePct, free) => {
    const { indicator } = judge('voltage-distortion', { reading: { thdVoltagePct } });
    const said = indicator?.findings.find((found) => found.code === 'distortion-bounds-hvf');
    expect(said?.text.includes('which needs no derating')).toBe(free);
  });

  it.each([
    [40.1, undefined],
    [40, 'near'],
    [39.9, 'near'],
  ])('an eccentricity sideband of %s dB with nothing to compare has the band %s (common practice)', (level, band) => {
    expect(atLoad(0.9, { reading: { eccentricitySidebandDb: level } })('eccentricity-sideband').band).toBe(band);
  });

  it('on the limit itself is near: frequency together with voltage, and a toothed belt', () => {
    const both = { reading: { voltageV: 460 * 1.08, frequencyHz: 60 * 1.02 } };
    expect(judge('frequency-deviation', both).indicator?.band).toBe('near');
    // 1779.4 r/min at a ratio of 2 without slip are 889.7; 0.5 % less are 885.2515.
    const belt = { plate: { coupling: 'synchronous-belt', speedRatio: 2, drivenSpeedRpm: 889.7 * 0.995 } } as const;
    expect(judge('belt-slip', belt).indicator?.band).toBe('near');
  });
});
