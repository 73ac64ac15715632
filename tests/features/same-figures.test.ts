import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import Papa from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { readResults, readShownRunId } from '@/lib/features/evaluation/data';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { writeFleetCsv } from '@/lib/features/fleet/write-csv';
import { readRanking } from '@/lib/features/ranking/data';
import { someMotors, studyWith } from './support/study-with-demo';
import { temporaryDatabase } from './support/temporary-database';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

describe('the demonstration’s figures', () => {
  const temporary = temporaryDatabase();
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-same-'));
  afterAll(async () => {
    await temporary.remove();
    rmSync(folder, { recursive: true, force: true });
  });

  it('are the same on the command line, in the database that the screens read, and in the ranking', async () => {
    const motors = someMotors(200);
    const sheet = path.join(folder, 'demo.csv');
    writeFileSync(sheet, writeFleetCsv(motors.map((motor) => ({ motor }))));
    const run = spawnSync(process.execPath, ['scripts/study.mjs', 'evaluate', sheet, '--format', 'csv'], {
      cwd: ROOT,
      encoding: 'utf8',
      maxBuffer: 1 << 26,
    });
    expect(run.status).toBe(0);
    const lines = Papa.parse<Record<string, string>>(run.stdout, { header: true, skipEmptyLines: true }).data;
    expect(lines.length).toBe(200);

    const study = await studyWith(temporary.db, motors);
    await temporary.db.write((tx) => enqueueEvaluation(tx, study));
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    const runId = await readShownRunId(temporary.db.read, study);
    const stored = new Map<string, Awaited<ReturnType<typeof collect>>[number]>();
    for (const entry of await collect(runId ?? '')) stored.set(entry.result.tag, entry);
    for (const line of lines) {
      const result = stored.get(line.tag ?? '')?.result;
      expect(result, line.tag).toBeDefined();
      expect(result?.rank).toBe(Number(line.rank));
      expect(result?.decision.option).toBe(line.option);
      expect(result?.trust.level).toBe(line.trust);
      for (const [column, value] of [
        ['load_fraction', result?.load_fraction?.value],
        ['efficiency', result?.efficiency?.value],
        ['loss_total_kw', result?.losses?.total.value],
      ] as const) {
        if (value === undefined) expect(line[column]).toBe('');
        else expect(Number(line[column]), `${line.tag} ${column}`).toBeCloseTo(value, 9);
      }
    }
    const ranking = await readRanking(temporary.db.read, study, { skip: 0, take: 1000 });
    for (const motor of ranking?.motors ?? []) {
      const line = lines.find((candidate) => candidate.tag === motor.tag);
      expect(motor.rank).toBe(Number(line?.rank));
      if (motor.value !== undefined) expect(motor.value, motor.tag).toBeCloseTo(Number(line?.net_present_value), 1);
      if (motor.payback !== undefined) expect(motor.payback).toBeCloseTo(Number(line?.simple_payback_a), 6);
    }
  });

  async function collect(runId: string) {
    const all = [];
    for await (const entry of readResults(temporary.db.read, runId)) all.push(entry);
    return all;
  }
});
