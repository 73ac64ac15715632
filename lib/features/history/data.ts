import type { Reader } from '../study/data';

/** One line of a study's history. */
export interface StudyEvent {
  readonly id: string;
  readonly at: Date;
  readonly who: string;
  readonly verified: boolean;
  readonly subject: string;
  readonly subjectId: string;
  readonly label: string;
  readonly what: string;
  readonly field: string;
  readonly from: string;
  readonly to: string;
  readonly why: string;
  /** Groups the changes of one act. */
  readonly batch: string | undefined;
}

/** A page of a study's history, newest first, with the count of all; with `subject` only the changes of such things. */
export async function readEvents(
  db: Reader,
  studyId: string,
  skip: number,
  take: number,
  subject?: string,
): Promise<{ readonly events: StudyEvent[]; readonly total: number }> {
  const where = { studyId, ...(subject !== undefined && { subject }) };
  const rows = await db.changeEvent.findMany({ where, orderBy: [{ at: 'desc' }, { id: 'desc' }], skip, take });
  const events = rows.map((row) => ({
    id: row.id,
    at: row.at,
    who: row.who,
    verified: row.verified,
    subject: row.subject,
    subjectId: row.subjectId,
    label: row.subjectLabel,
    what: row.what,
    field: row.field ?? '',
    from: plain(row.fromValue),
    to: plain(row.toValue),
    why: row.why ?? '',
    batch: row.batch ?? undefined,
  }));
  return { events, total: await db.changeEvent.count({ where }) };
}

/** What has been changed in a study, with the count of changes, the most changed first. */
export async function readSubjects(
  db: Reader,
  studyId: string,
): Promise<readonly { readonly subject: string; readonly count: number }[]> {
  const groups = await db.changeEvent.groupBy({ by: ['subject'], where: { studyId }, _count: { _all: true } });
  return groups.map(({ subject, _count }) => ({ subject, count: _count._all })).sort((a, b) => b.count - a.count);
}

/** The history keeps values as JSON; texts are shown without their quotes. */
function plain(json: string | null): string {
  if (json === null) return '';
  const value: unknown = JSON.parse(json);
  return typeof value === 'string' ? value : JSON.stringify(value);
}
