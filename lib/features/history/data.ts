import { ratingWords } from '../motor/words';
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

/** A part of a study's history, newest first, with the count of all; `take` absent takes the rest, with `subject` only the changes of such things. */
export async function readEvents(
  db: Reader,
  studyId: string,
  skip: number,
  take: number | undefined,
  subject?: string,
): Promise<{ readonly events: StudyEvent[]; readonly total: number }> {
  const where = { studyId, ...(subject !== undefined && { subject }) };
  const rows = await db.changeEvent.findMany({
    where,
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    skip,
    ...(take !== undefined && { take }),
  });
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

/** The history keeps values as JSON; here they are words. */
function plain(json: string | null): string {
  return json === null ? '' : inWords(JSON.parse(json));
}

/** Plain data as a person reads it: lists by semicolons, steps of a duty and ratings as the sheet has them, counts by their names. */
function inWords(value: unknown): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (value === null || value === undefined) return '';
  if (typeof value !== 'object') return String(value);
  if (Array.isArray(value)) return value.map(inWords).join('; ');
  if ('fraction' in value && 'hoursPerYear' in value) return `${inWords(value.fraction)}@${inWords(value.hoursPerYear)}`;
  if ('kw' in value && 'unit' in value) return ratingWords(Number(value.kw), value.unit === 'hp' ? 'hp' : 'kW');
  return Object.entries(value)
    .map(
      ([name, part]) =>
        `${name
          .replace(/([a-z])([A-Z])/g, '$1 $2')
          .toLowerCase()
          .replaceAll('_', ' ')} ${inWords(part)}`,
    )
    .join(', ');
}
