import { motorKey } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { readSolution } from '../plan/data';
import { programmeCsv } from '../plan/programme-csv';
import { compareVersions, type Difference } from './compare';
import { type Content, versionFile } from './content';
import { readVersion, readVersions, type StoredVersion, type VersionEntry } from './data';
import { type Draft, readDraft } from './draft';

export type { Programme, ProgrammeItem } from '../plan/programme';
export type { Difference } from './compare';
export { type Content, eventWords } from './content';
export type { VersionEntry } from './data';
export type { Draft } from './draft';
export { type MotorChoice, notChosen } from './not-chosen';
export { agrees, reconcile, type Sum } from './reconcile';
export { type Drawn, type FundedItem, type Report, reportOf, type Share, type YearSaving } from './report';
export type { MeasureTotal, Total } from './totals';
export { workbookOf } from './workbook-sum';

/** The frozen versions of a study, the newest first. */
export async function loadVersions(studyId: string): Promise<readonly VersionEntry[]> {
  return readVersions(database().read, studyId);
}

/** A version, checked against its hashes. */
export async function loadVersion(studyId: string, number: number): Promise<StoredVersion | undefined> {
  return Number.isSafeInteger(number) && number > 0 ? readVersion(database().read, studyId, number) : undefined;
}

/** A version as a file; `undefined` when there is none or it is damaged. */
export async function loadVersionFile(studyId: string, number: number): Promise<string | undefined> {
  const version = await loadVersion(studyId, number);
  return version?.sound === true ? versionFile(version.text, version.hash, version.events) : undefined;
}

/** The programme of a version as CSV, with the version's hash; `undefined` when there is none or it is damaged. */
export async function loadVersionCsv(
  studyId: string,
  number: number,
): Promise<{ readonly text: string; readonly hash: string } | undefined> {
  const version = await loadVersion(studyId, number);
  return version?.sound === true
    ? { text: [...programmeCsv(version.content.programme)].join(''), hash: version.hash }
    : undefined;
}

/** What differs between a version and the one before it; `undefined` for the first, or where one of them is damaged. */
export async function loadDifference(
  studyId: string,
  number: number,
  after: Content,
): Promise<{ readonly number: number; readonly difference: Difference } | undefined> {
  const before = await loadVersion(studyId, number - 1);
  return before?.sound === true ? { number: before.number, difference: compareVersions(before.content, after) } : undefined;
}

/** The plan as it stands, to be reported before it is frozen; `stale` when it is not that of the study as it stands. */
export async function loadDraft(studyId: string): Promise<Draft | 'stale' | undefined> {
  return readDraft(database().read, studyId);
}

/** The plan as it was worked out last as CSV; `undefined` while there is none. */
export async function loadPlanCsv(studyId: string): Promise<string | undefined> {
  const solution = await readSolution(database().read, studyId);
  return solution && 'years' in solution.outcome ? [...programmeCsv(solution.outcome)].join('') : undefined;
}

/** Ids that the motors of a version have in the study now, by site and tag. */
export async function loadMotorIds(studyId: string): Promise<ReadonlyMap<string, string>> {
  const rows = await database().read.motor.findMany({ where: { studyId }, select: { id: true, siteName: true, tag: true } });
  return new Map(rows.map(({ id, siteName, tag }) => [motorKey({ site: siteName, tag }), id]));
}
