import { type Change, recordChanges } from '@/lib/platform/audit';
import { type BulkRow, insertRows, updateRows } from '@/lib/platform/bulk';
import type { Tx } from '@/lib/platform/db';
import { newId } from '@/lib/platform/id';
import { toMinor } from '@/lib/platform/money';
import { columnByName } from '../fleet/columns';
import { addMotors, addReadings, ensurePlaces, notesText } from '../fleet/mutations';
import type { ParsedFleet } from '../fleet/parse';
import { drivenLoadColumns, dutyColumns, motorColumns } from '../fleet/stored-motor';
import { type FactChange, type ImportPlan, type MotorChange, writesSomething } from './plan-import';

/** Whose import it is, and when. */
interface ImportContext {
  readonly studyId: string;
  readonly currency: string;
  readonly batchId: string;
  readonly fileName: string;
  readonly who: string;
  readonly at: Date;
}

/** Writes what an import adds and changes, with its history, inside the caller's transaction. */
export async function writePlan(tx: Tx, plan: ImportPlan, context: ImportContext): Promise<void> {
  const { studyId, currency, batchId, at } = context;
  const adding = { studyId, currency, at, importBatchId: batchId };
  await addMotors(tx, plan.added, adding);
  const changed = plan.changed.filter(writesSomething);
  await changeMotors(tx, changed, context);
  await addReadings(
    tx,
    changed.map(({ stored, merged }) => ({ motorId: stored.id, motor: merged })),
    adding,
  );
  await recordChanges(
    tx,
    changed.flatMap((change) => changesOf(change, context)),
    at,
  );
}

async function changeMotors(tx: Tx, changed: readonly MotorChange[], { studyId, currency, at }: ImportContext): Promise<void> {
  const places = await ensurePlaces(
    tx,
    changed.map(({ merged }) => merged),
    { studyId, at },
  );
  await writeFacts(
    tx,
    changed.map(({ stored, merged, duty, notes }) => ({
      id: stored.id,
      columns: {
        ...motorColumns(merged, currency),
        areaId: places.areaOf(merged),
        notes: notesText(notes),
        version: stored.version + 1,
        updatedAt: at,
      },
      load: { ...drivenLoadColumns(merged), ...dutyColumns(duty) },
    })),
    { studyId, at },
  );
}

/** Writes the facts of motors and of what they drive; a motor without a driven load gets one. */
export async function writeFacts(
  tx: Tx,
  motors: readonly { readonly id: string; readonly columns: BulkRow; readonly load: BulkRow }[],
  { studyId, at }: { readonly studyId: string; readonly at: Date },
): Promise<void> {
  const loads = await tx.drivenLoad.findMany({ where: { studyId }, select: { id: true, motorId: true } });
  const loadOf = new Map(loads.map(({ id, motorId }) => [motorId, id]));
  await updateRows(
    tx,
    'Motor',
    motors.map(({ id, columns }) => ({ id, ...columns })),
  );
  const known = motors.flatMap(({ id, load }) => {
    const loadId = loadOf.get(id);
    return loadId === undefined ? [] : [{ id: loadId, ...load }];
  });
  await updateRows(tx, 'DrivenLoad', known);
  const fresh = motors.filter(({ id }) => !loadOf.has(id));
  await insertRows(
    tx,
    'DrivenLoad',
    fresh.map(({ id, load }) => ({ id: newId(at.getTime()), studyId, motorId: id, ...load })),
  );
}

function changesOf({ stored, merged, changes }: MotorChange, context: ImportContext): Change[] {
  const { site, tag } = stored.motor;
  const about = {
    studyId: context.studyId,
    who: context.who,
    subject: 'motor',
    subjectId: stored.id,
    subjectLabel: site === '' ? tag : `${site} / ${tag}`,
    batch: context.batchId,
    importBatchId: context.batchId,
    why: `Import of ${context.fileName}`,
  };
  const list: Change[] = changes.map((change) => ({
    ...about,
    what: 'changed',
    field: change.field,
    from: written(change, change.from, context.currency),
    to: written(change, change.to, context.currency),
  }));
  if (merged.readings.length > 0) list.push({ ...about, what: 'imported', field: 'readings', to: merged.readings.length });
  return list;
}

/** Money goes into the history as whole minor units, all else as it is. */
function written({ field }: FactChange, value: unknown, currency: string): unknown {
  const kind = columnByName(field)?.kind;
  return kind?.type === 'number' && kind.unit === 'currency' && typeof value === 'number' ? toMinor(value, currency) : value;
}

/** Writes why rows were rejected and what is doubtful, with the cells of rejected rows. */
export async function writeIssues(
  tx: Tx,
  parsed: Pick<ParsedFleet, 'rejected' | 'warnings'>,
  { studyId, batchId, at }: Pick<ImportContext, 'studyId' | 'batchId' | 'at'>,
): Promise<void> {
  const rows: BulkRow[] = [];
  const add = (
    kind: 'rejected' | 'warning',
    issue: ParsedFleet['warnings'][number],
    cells: readonly string[] | undefined,
  ): void => {
    rows.push({
      id: newId(at.getTime()),
      studyId,
      batchId,
      row: issue.row,
      column: issue.column === '' ? null : issue.column,
      code: issue.code,
      kind,
      text: issue.text,
      remedy: issue.remedy,
      value: issue.value ?? null,
      cells: cells === undefined ? null : JSON.stringify(cells),
    });
  };
  for (const { issues, cells } of parsed.rejected) {
    // The cells stand with the first reason only.
    for (const [at, issue] of issues.entries()) add('rejected', issue, at === 0 ? cells : undefined);
  }
  for (const warning of parsed.warnings) add('warning', warning, undefined);
  await insertRows(tx, 'ImportRowIssue', rows);
}
