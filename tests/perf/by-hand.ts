import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { type SimulatedMotor, sheetText } from '../simulator/fleet';
import type { Cells } from '../simulator/plate';

/** What `hand-methods.py` prints: errors in points by what was read, where rows carry their truth. */
export interface ByHand {
  readonly motors: number;
  readonly microseconds: number;
  readonly errors: Readonly<Record<string, number>> | null;
}

/** The row of a motor with its true load and efficiency beside it. */
export const withTruth = ({ cells, loadFraction, at }: SimulatedMotor): Cells => ({
  ...cells,
  true_load: String(loadFraction),
  true_efficiency: String(at.efficiency),
});

/** The published hand methods in numpy on these rows; undefined where there is no Python with numpy. */
export function byHand(rows: readonly Cells[], repeats = 50): ByHand | undefined {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-by-hand-'));
  try {
    const file = path.join(folder, 'sheet.csv');
    writeFileSync(file, sheetText(rows));
    const script = fileURLToPath(new URL('hand-methods.py', import.meta.url));
    const ran = spawnSync('python3', [script, file, String(repeats)], { encoding: 'utf8' });
    return ran.status === 0 ? (JSON.parse(ran.stdout) as ByHand) : undefined;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
