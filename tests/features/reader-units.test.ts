import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FLEET_COLUMNS, fleetColumn } from '@/lib/features/results/fleet-columns';
import { filterParts, readQuery } from '@/lib/features/results/fleet-filter';
import { FLEET_FACT_NAMES, type FleetRow, rowsOfPack } from '@/lib/features/results/fleet-row';
import { keptLimit, shownColumn, shownLimit } from '@/lib/features/results/shown-columns';
import { atShaft, readUnits } from '@/lib/features/study/reader-units';
import { formatFigure } from '@/lib/platform/format';

// 1 hp = 0.745700 kW: the fleet sheet's own definition, after 550 ft·lbf/s = 745.6999 W (NIST SP 811, appendix B.8).
const KW = 0.7457;

function rowWith(facts: Readonly<Record<string, unknown>>): FleetRow {
  const known: Readonly<Record<string, unknown>> = { id: 'a', tag: 'M-1', status: 'running', ...facts };
  const cells = FLEET_FACT_NAMES.map((name) => known[name] ?? null);
  const [row] = rowsOfPack({ currency: 'USD', minorDigits: 2, horizonYears: 15, names: FLEET_FACT_NAMES, rows: [cells] });
  if (!row) throw new Error('a pack of one row has a row');
  return row;
}

describe('a reader who wants hp', () => {
  it('sees shaft power, its interval and its limits in hp; nobody who does not ask does', () => {
    const figure = { value: 100 * KW, u: 2 * KW, unit: 'kW', low: 90 * KW, high: 120 * KW };
    expect(atShaft(figure, 'kw')).toBe(figure);
    const seen = atShaft(figure, 'hp');
    for (const [name, value] of [
      ['value', 100],
      ['u', 2],
      ['low', 90],
      ['high', 120],
    ] as const)
      expect(seen[name]).toBeCloseTo(value, 10);
    expect(formatFigure(atShaft({ value: 100 * KW, u: 2 * KW, unit: 'kW' }, 'hp')).text).toBe('100.0 ± 3.9\u202fhp');
    for (const cookie of [undefined, '', 'us', 'HP', 'kw']) expect(readUnits(cookie)).toBe('kw');
  });

  it('sees ratings and shaft power of the list so, and electrical power, losses and all else as they were', () => {
    const row = rowWith({
      rated_power_kw: 50 * KW,
      shaft_power_kw: 25 * KW,
      shaft_power_kw_u: KW,
      input_power_kw: 21,
      loss_total_kw: 2,
    });
    const shown = (id: string) => shownColumn(id, 'hp');
    expect(shown('rated_power_kw')?.value(row)).toBeCloseTo(50, 10);
    expect(shown('shaft_power_kw')?.value(row)).toBeCloseTo(25, 10);
    expect(shown('shaft_power_kw')?.doubt?.(row)).toBeCloseTo(1, 10);
    expect([shown('rated_power_kw')?.unit, shown('shaft_power_kw')?.unit]).toEqual(['hp', 'hp']);
    for (const { id } of FLEET_COLUMNS) {
      expect(shownColumn(id, 'kw')).toBe(fleetColumn(id));
      if (id !== 'rated_power_kw' && id !== 'shaft_power_kw') expect(shown(id)).toBe(fleetColumn(id));
    }
    expect(shown('rated_power_kw')?.value(rowWith({}))).toBeUndefined();
  });

  it('filters in hp, while the address, which others may open, stays in kW', () => {
    const query = readQuery(new URLSearchParams(`rated_power_kw=37.285..74.57&input_power_kw=..30`));
    expect(filterParts(query, 'USD', 'hp').map(({ text }) => text)).toEqual(['rating 50 to 100 hp', 'input power at most 30 kW']);
    expect(filterParts(query, 'USD').map(({ text }) => text)[0]).toBe('rating 37.285 to 74.57 kW');
    const rating = fleetColumn('rated_power_kw');
    if (!rating) throw new Error('the list has ratings');
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999 }), (typed) => {
        expect(shownLimit(rating, keptLimit(rating, typed, 'hp'), 'hp')).toBe(typed);
        expect(keptLimit(rating, typed, 'kw')).toBe(typed);
      }),
    );
  });
});
