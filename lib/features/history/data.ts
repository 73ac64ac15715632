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
}

/** A page of a study's history, newest first, with the count of all. */
export async function readEvents(
  db: Reader,
  studyId: string,
  skip: number,
  take: number,
): Promise<{ readonly events: StudyEvent[]; readonly total: number }> {
  const rows = await db.changeEvent.findMany({ where: { studyId }, orderBy: [{ at: 'desc' }, { id: 'desc' }], skip, take });
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
  }));
  return { events, total: await db.changeEvent.count({ where: { studyId } }) };
}

/** The history keeps values as JSON; texts are shown without their quotes. */
function plain(json: string | null): string {
  if (json === null) return '';
  const value: unknown = JSON.parse(json);
  return typeof value === 'string' ? value : JSON.stringify(value);
}
