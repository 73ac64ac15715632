import { closeSync, existsSync, mkdirSync, openSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { generateDemo } from '@/lib/features/demo/generate';
import { fleetCsvLines } from '@/lib/features/fleet/write-csv';

/** A fleet sheet with so many motors: the demo's plates and readings, drawn anew with another seed for each two hundred. */
export function perfSheet(motors: number): string {
  const folder = path.join(tmpdir(), 'lossbook-perf');
  mkdirSync(folder, { recursive: true });
  const file = path.join(folder, `fleet-${motors}.csv`);
  if (existsSync(file)) return file;
  const fd = openSync(file, 'w');
  for (const line of fleetCsvLines(many(motors))) writeSync(fd, line);
  closeSync(fd);
  return file;
}

function many(count: number) {
  const all = [];
  for (let batch = 0; all.length < count; batch++) {
    for (const { motor } of generateDemo({ asOf: '2026-01-01', seed: 1000 + batch })) {
      if (all.length < count) all.push({ motor: { ...motor, tag: `${motor.tag}/${batch}` } });
    }
  }
  return all;
}
