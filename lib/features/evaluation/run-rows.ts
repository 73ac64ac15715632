import type { Tx } from '@/lib/platform/db';
import { newId } from '@/lib/platform/id';
import type { EvaluatedRow } from './result-row';

/** Rows of table MotorEvaluation by the hundred in one statement; the values travel as one JSON text. */

export interface Run {
  readonly id: string;
  readonly studyId: string;
}

/** A motor's result with the place where it belongs. */
export interface PlacedRow {
  readonly row: EvaluatedRow;
  readonly motorId: string;
  readonly naturalKey: string;
  readonly inputHash: string;
}

/** Adds results to a run; one of the same motor is replaced. A motor that is gone by now leaves its site and tag. */
export async function insertEvaluations(tx: Tx, run: Run, rows: readonly PlacedRow[]): Promise<void> {
  const first = rows[0];
  if (first === undefined) return;
  const names = Object.keys(first.row.columns);
  const values = rows.map(({ row, motorId, naturalKey, inputHash }) => [
    newId(),
    motorId,
    naturalKey,
    inputHash,
    Buffer.from(row.details).toString('hex'),
    Buffer.from(row.movable).toString('hex'),
    ...Object.values(row.columns),
  ]);
  const at = (index: number): string => `json_extract(j.value, '$[${index}]')`;
  await tx.$executeRawUnsafe(
    `INSERT OR REPLACE INTO "MotorEvaluation"
      ("id", "studyId", "runId", "motorId", "naturalKey", "inputHash", "details", "movable", "rank", ${names.map((name) => `"${name}"`).join(', ')})
     SELECT ${at(0)}, ?, ?, (SELECT "id" FROM "Motor" WHERE "id" = ${at(1)}), ${at(2)}, ${at(3)}, unhex(${at(4)}), unhex(${at(5)}), 0,
      ${names.map((_, index) => at(index + 6)).join(', ')}
     FROM json_each(?) AS j`,
    run.studyId,
    run.id,
    JSON.stringify(values),
  );
}

/** Removes a run's rows but these. */
export async function deleteRows(tx: Tx, runId: string, keep: readonly string[]): Promise<void> {
  await tx.$executeRawUnsafe(
    `DELETE FROM "MotorEvaluation" WHERE "runId" = ? AND "id" NOT IN (SELECT value FROM json_each(?))`,
    runId,
    JSON.stringify(keep),
  );
}

/** Puts rows into a run, with their motor, rank and sisters. */
export async function placeRows(
  tx: Tx,
  runId: string,
  places: readonly { readonly id: string; readonly motorId: string; readonly rank: number; readonly sisters: string | null }[],
): Promise<void> {
  await tx.$executeRawUnsafe(
    `UPDATE "MotorEvaluation"
     SET "runId" = ?, "rank" = json_extract(j.value, '$.rank'), "sisters" = json_extract(j.value, '$.sisters'),
       "motorId" = (SELECT "id" FROM "Motor" WHERE "id" = json_extract(j.value, '$.motorId'))
     FROM json_each(?) AS j WHERE "MotorEvaluation"."id" = json_extract(j.value, '$.id')`,
    runId,
    JSON.stringify(places),
  );
}
