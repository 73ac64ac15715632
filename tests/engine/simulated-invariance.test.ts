import { beforeAll, describe, expect, it } from 'vitest';
import type { UnrankedMotor } from '@/lib/engine';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { rowsOf, simulateFleet } from '../simulator/fleet';
import type { Cells } from '../simulator/plate';
import { evaluateRows } from './support/simulated';

const reference = loadTables();
const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };
const fleet = simulateFleet({ seed: 41, motors: 250, readBefore: 0.3 });
const rows = rowsOf(fleet);

/** The energy figures of a motor: what must not depend on how the sheet is written. */
const energy = ({ shaft_power, load_fraction, input_power, efficiency, losses, trust, agreement }: UnrankedMotor) => ({
  shaft_power,
  load_fraction,
  input_power,
  efficiency,
  losses,
  agreement,
  trust: trust.level,
});

/** Compares figures to a relative 1e-8: sums in another order differ in their last bits. */
function expectSame(ours: unknown, theirs: unknown, at: string): void {
  if (typeof ours === 'number' && typeof theirs === 'number') {
    expect(Math.abs(ours - theirs), at).toBeLessThanOrEqual(1e-8 * Math.max(1e-3, Math.abs(ours)));
    return;
  }
  if (typeof ours === 'object' && typeof theirs === 'object' && ours !== null && theirs !== null) {
    expect(Object.keys(theirs).sort(), at).toEqual(Object.keys(ours).sort());
    for (const [key, value] of Object.entries(ours))
      expectSame(value, Object.entries(theirs).find(([name]) => name === key)?.[1], `${at}.${key}`);
    return;
  }
  expect(theirs, at).toEqual(ours);
}

describe('the energy figures do not depend on how the sheet is written', () => {
  let first: ReadonlyMap<string, UnrankedMotor> = new Map();
  beforeAll(async () => {
    first = await evaluateRows(rows, study);
  });

  async function expectUnchanged(changed: readonly Cells[]): Promise<void> {
    const again = await evaluateRows(changed, study);
    expect(again.size).toBe(first.size);
    for (const [tag, result] of first) {
      const other = again.get(tag);
      if (!other) throw new Error(`${tag} is gone`);
      expectSame(energy(result), energy(other), tag);
    }
  }

  it('nor on the order of the rows', async () => {
    await expectUnchanged([...rows].reverse());
  });

  it('nor on the other motors of the sheet', async () => {
    const alone = await evaluateRows(rowsOf(fleet.slice(0, 20)), study);
    for (const [tag, result] of alone) {
      const among = first.get(tag);
      if (!among) throw new Error(`${tag} is gone`);
      expectSame(energy(among), energy(result), tag);
    }
  });

  it('nor on which phase is called a', async () => {
    const turned = (cells: Cells): Cells => ({
      ...cells,
      ...(cells.voltage_ab_v !== undefined && {
        voltage_ab_v: cells.voltage_bc_v ?? '',
        voltage_bc_v: cells.voltage_ca_v ?? '',
        voltage_ca_v: cells.voltage_ab_v,
      }),
      ...(cells.current_a_a !== undefined && {
        current_a_a: cells.current_b_a ?? '',
        current_b_a: cells.current_c_a ?? '',
        current_c_a: cells.current_a_a,
      }),
    });
    await expectUnchanged(rows.map(turned));
  });

  it('nor on a row that stands twice', async () => {
    await expectUnchanged([...rows, ...rows.slice(0, 30)]);
  });
});
