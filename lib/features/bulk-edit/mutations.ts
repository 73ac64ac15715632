import { type Change, recordChanges } from '@/lib/platform/audit';
import { updateRows } from '@/lib/platform/bulk';
import type { Database, PrismaClient, Tx } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { formatCount } from '@/lib/platform/format';
import { newId } from '@/lib/platform/id';
import { fromMinor, toMinor } from '@/lib/platform/money';
import { enqueueEvaluation } from '../evaluation/mutations';
import { columnByName } from '../fleet/columns';
import { ensurePlaces } from '../fleet/mutations';
import { writeFacts } from '../import/write-import';
import { readStudy } from '../study/data';
import { type BulkTarget, readTargets } from './data';
import { BULK_FIELDS, type BulkDone, type BulkField, type BulkPreview, bulkChoices } from './schema';
import { understand, valueWords } from './understand';

/** Which motors, as the screen saw them, and what one of their facts is to become. */
interface BulkOrder {
  readonly studyId: string;
  readonly motors: readonly { readonly id: string; readonly version: number }[];
  readonly field: BulkField;
  /** As typed; empty takes the fact away. */
  readonly value: string;
}

const EXAMPLES = 50;
const GONE = refuse('no-study', 'There is no such study.', 'Go to the first page.');

interface Planned {
  readonly currency: string;
  readonly value: string | number | undefined;
  readonly warning: string | undefined;
  readonly changing: readonly BulkTarget[];
  readonly same: number;
  readonly overtaken: number;
}

async function plan(db: PrismaClient | Tx, order: BulkOrder): Promise<Result<Planned>> {
  const study = await readStudy(db, order.studyId);
  if (study === undefined) return GONE;
  const understood = understand(order.field, order.value);
  if (!understood.ok) return understood;
  const { value, warning } = understood.value;
  const { currency } = study.settings;
  const ids = order.motors.map(({ id }) => id);
  const targets = await readTargets(db, order.studyId, ids, order.field, currency);
  const seen = new Map(order.motors.map(({ id, version }) => [id, version]));
  const current = targets.filter(({ id, version }) => seen.get(id) === version);
  const changing = current.filter((target) => target.value !== value);
  const withDuty = order.field === 'hours_per_year' ? changing.filter(({ hasDuty }) => hasDuty).length : 0;
  const duty =
    withDuty === 0 ? [] : [`${formatCount(withDuty)} of them have a duty profile, which goes before the hours of a year.`];
  const warnings = [...(warning === undefined ? [] : [warning]), ...duty];
  return ok({
    currency,
    value,
    warning: warnings.length === 0 ? undefined : warnings.join(' '),
    changing,
    same: current.length - changing.length,
    overtaken: seen.size - current.length,
  });
}

/** Says what would change; nothing does. */
export async function previewBulk(db: Database, order: BulkOrder): Promise<Result<BulkPreview>> {
  const planned = await plan(db.read, order);
  if (!planned.ok) return planned;
  const { value, warning, changing, same, overtaken, currency } = planned.value;
  const unit = bulkChoices(currency).find(({ field }) => field === order.field)?.unit ?? '';
  const words = (each: string | number | undefined): string => valueWords(each, unit);
  return ok({
    understood: words(value),
    ...(warning !== undefined && { warning }),
    changing: changing.length,
    same,
    overtaken,
    examples: changing
      .slice(0, EXAMPLES)
      .map((target) => ({ id: target.id, name: labelOf(target), from: words(target.value), to: words(value) })),
  });
}

/**
 * Changes one fact of many motors in one transaction, with an entry in each motor's history, and has the study evaluated. Motors that
 * somebody else changed since the list was loaded are left as they are.
 */
export async function changeMany(db: Database, order: BulkOrder, by: { who: string; why: string }): Promise<Result<BulkDone>> {
  return db.write(async (tx) => {
    const planned = await plan(tx, order);
    if (!planned.ok) return planned;
    const { changing, value, currency, overtaken } = planned.value;
    if (changing.length === 0) return refuse('nothing-changes', 'Nothing would change.', 'Choose other motors or another value.');
    const batch = newId();
    await write(
      tx,
      order.studyId,
      order.field,
      changing.map((target) => ({ target, value })),
      currency,
    );
    await recordChanges(
      tx,
      changing.map((target) => ({
        ...entry(order.studyId, order.field, target, value, currency),
        who: by.who,
        batch,
        ...(by.why !== '' && { why: by.why }),
      })),
    );
    await enqueueEvaluation(tx, order.studyId);
    const label = columnByName(order.field)?.label ?? order.field;
    const left = overtaken === 0 ? '' : ` ${formatCount(overtaken)} were left, since somebody else had changed them.`;
    return ok({ changed: changing.length, batch, sentence: `${label} changed for ${motorsInWords(changing.length)}.${left}` });
  });
}

/** Takes a change of many motors back, where the fact is still as that change left it. */
export async function takeBackMany(db: Database, studyId: string, batch: string, who: string): Promise<Result<BulkDone>> {
  return db.write(async (tx) => {
    const study = await readStudy(tx, studyId);
    if (study === undefined) return GONE;
    const { currency } = study.settings;
    const events = await tx.changeEvent.findMany({
      where: { studyId, batch, subject: 'motor', what: 'changed', importBatchId: null },
    });
    const field = BULK_FIELDS.find((name) => name === events[0]?.field);
    if (field === undefined) return refuse('no-change', 'There is no such change.', 'Look into the history of the study.');
    const byId = new Map(events.map((event) => [event.subjectId, event]));
    const targets = await readTargets(tx, studyId, [...byId.keys()], field, currency);
    const back = targets.flatMap((target) => {
      const event = byId.get(target.id);
      if (event === undefined || target.value !== read(event.toValue, field, currency)) return [];
      return [{ target, value: read(event.fromValue, field, currency) }];
    });
    if (back.length === 0) {
      return refuse('changed-since', 'Every one of these motors was changed again since.', 'Change them one by one.');
    }
    const undoing = newId();
    await write(tx, studyId, field, back, currency);
    await recordChanges(
      tx,
      back.map(({ target, value }) => ({
        ...entry(studyId, field, target, value, currency),
        who,
        what: 'undone',
        batch: undoing,
        undoes: batch,
      })),
    );
    await enqueueEvaluation(tx, studyId);
    const left = byId.size - back.length;
    const rest = left === 0 ? '' : ` ${motorsInWords(left)} were changed again since and stay as they are.`;
    return ok({ changed: back.length, batch: undoing, sentence: `Taken back for ${motorsInWords(back.length)}.${rest}` });
  });
}

function motorsInWords(count: number): string {
  return count === 1 ? 'one motor' : `${formatCount(count)} motors`;
}

function labelOf({ site, tag }: Pick<BulkTarget, 'site' | 'tag'>): string {
  return site === '' ? tag : `${site} / ${tag}`;
}

function isMoney(field: BulkField): boolean {
  const kind = columnByName(field)?.kind;
  return kind?.type === 'number' && kind.unit === 'currency';
}

/** As the history keeps it: money as whole minor units, all else as it is. */
function kept(value: string | number | undefined, field: BulkField, currency: string): unknown {
  return typeof value === 'number' && isMoney(field) ? toMinor(value, currency) : value;
}

function read(text: string | null, field: BulkField, currency: string): string | number | undefined {
  if (text === null) return undefined;
  const value: unknown = JSON.parse(text);
  if (isMoney(field)) return typeof value === 'string' ? fromMinor(BigInt(value), currency) : undefined;
  return typeof value === 'string' || typeof value === 'number' ? value : undefined;
}

function entry(
  studyId: string,
  field: BulkField,
  target: BulkTarget,
  to: string | number | undefined,
  currency: string,
): Omit<Change, 'who'> {
  return {
    studyId,
    subject: 'motor',
    subjectId: target.id,
    subjectLabel: labelOf(target),
    what: 'changed',
    field,
    from: kept(target.value, field, currency),
    to: kept(to, field, currency),
  };
}

const MOTOR_COLUMN = {
  status: 'status',
  quoted_price: 'quotedPriceMinor',
  quoted_repair: 'quotedRepairMinor',
  unplanned_stop_cost: 'unplannedStopCostMinor',
} as const;
const LOAD_COLUMN = { hours_per_year: 'hoursPerYear', demand_coincidence: 'demandCoincidence' } as const;

async function write(
  tx: Tx,
  studyId: string,
  field: BulkField,
  changes: readonly { readonly target: BulkTarget; readonly value: string | number | undefined }[],
  currency: string,
): Promise<void> {
  const at = new Date();
  const next = ({ id, version }: BulkTarget) => ({ id, version: version + 1, updatedAt: at });
  if (field === 'hours_per_year' || field === 'demand_coincidence') {
    const column = LOAD_COLUMN[field];
    const facts = changes.map(({ target, value }) => {
      const { id, ...columns } = next(target);
      return { id, columns, load: { [column]: typeof value === 'number' ? value : null } };
    });
    await writeFacts(tx, facts, { studyId, at });
  } else if (field === 'area') {
    const sites = changes.map(({ target, value }) => ({
      site: target.site,
      area: typeof value === 'string' ? value : undefined,
    }));
    const places = await ensurePlaces(tx, sites, { studyId, at });
    await updateRows(
      tx,
      'Motor',
      changes.map(({ target }, index) => ({
        ...next(target),
        areaId: places.areaOf(sites[index] ?? { site: '', area: undefined }),
      })),
    );
  } else {
    const column = MOTOR_COLUMN[field];
    await updateRows(
      tx,
      'Motor',
      changes.map(({ target, value }) => ({
        ...next(target),
        [column]: value === undefined ? null : isMoney(field) && typeof value === 'number' ? toMinor(value, currency) : value,
      })),
    );
  }
  await tx.study.update({ where: { id: studyId }, data: { version: { increment: 1 } } });
}
