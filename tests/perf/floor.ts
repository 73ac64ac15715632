import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { worldNamed } from '../simulator/beliefs';
import { simulateFleet } from '../simulator/fleet';
import { READING_SETS, type ReadingSet } from '../simulator/readings';

/**
 * `npm run perf -- floor [motors to learn from] [world]`: how well a sheet of the simulated world could be read at all, by a regression that was
 * trained on it. Tells which bars can be asked of an estimate, and which nobody could clear. Needs Python with numpy.
 */
const learned = Number(process.argv[2] ?? 20_000);
const TRIED = 4000;
const world = worldNamed(process.argv[3]);

interface Floor {
  readonly motors: number;
  readonly load: { readonly mean_absolute: number; readonly sd: number };
  readonly efficiency: { readonly mean_absolute: number; readonly sd: number };
}

function floorOf(set: ReadingSet, seed: number): Floor {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-floor-'));
  try {
    const [train, tried] = [learned, TRIED].map((motors, i) => {
      const file = path.join(folder, `${i}.json`);
      const fleet = simulateFleet({ seed: seed + i, motors, world, sets: { [set]: 1 } });
      writeFileSync(
        file,
        JSON.stringify(fleet.map(({ cells, loadFraction, at }) => ({ cells, load: loadFraction, efficiency: at.efficiency }))),
      );
      return file;
    });
    const script = fileURLToPath(new URL('floor.py', import.meta.url));
    const ran = spawnSync('python3', [script, train ?? '', tried ?? ''], { encoding: 'utf8' });
    if (ran.status !== 0) throw new Error(`the regression needs Python with numpy: ${ran.stderr}`);
    return JSON.parse(ran.stdout) as Floor;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

console.log(
  `Mean absolute error (standard deviation) in points of a regression trained on ${learned} motors a set of the ${world} world`,
);
for (const [i, set] of READING_SETS.entries()) {
  const { load, efficiency } = floorOf(set, 900 + 10 * i);
  const points = ({ mean_absolute, sd }: Floor['load']) => `${mean_absolute.toFixed(2)} (${sd.toFixed(2)})`;
  console.log(`  ${set.padEnd(18)} load ${points(load)}  efficiency ${points(efficiency)}`);
}
