import { INDICATOR_TITLES, type TrustLevel } from '@/lib/engine';
import { type Reader, readShownRunId, unpackResult } from '../evaluation/data';
import { type OpenFindings, openFindingsOf } from '../evaluation/open-findings';
import { byDate } from '../fleet/reading-dates';
import { inLabels } from '../fleet/screen-words';
import { askOf } from './asks';
import { type Doubt, LOADS_WANTED, type TrustItem, type TrustList, WANTED } from './schema';

/** Results per question: their compressed forms are some kilobytes each. */
const CHUNK = 500;
const SEVERITY = { disqualifies: 0, warning: 1, note: 2 } as const;
const LEVELS = ['sound', 'provisional', 'not-usable'] as const satisfies readonly TrustLevel[];

/** What may not be used in the latest evaluation of a study, and what to measure again; `undefined` before the first evaluation. */
export async function readTrustList(db: Reader, studyId: string): Promise<TrustList | undefined> {
  const runId = await readShownRunId(db, studyId);
  if (runId === undefined) return undefined;
  const rows = await db.motorEvaluation.findMany({
    where: { runId },
    orderBy: { naturalKey: 'asc' },
    select: { id: true, motorId: true, areaName: true, siteName: true, tag: true, trust: true, openFindings: true },
  });
  const unpacked = await readUnpacked(
    db,
    rows.flatMap(({ id, openFindings }) => (openFindings === null ? [id] : [])),
  );
  const byLevel: Record<TrustLevel, number> = { sound: 0, provisional: 0, 'not-usable': 0 };
  const items = rows.flatMap(({ id, motorId, areaName, siteName, tag, trust, openFindings }): TrustItem[] => {
    const level = LEVELS.find((each) => each === trust) ?? 'not-usable';
    byLevel[level] += 1;
    const open: OpenFindings | undefined = openFindings === null ? unpacked.get(id) : JSON.parse(openFindings);
    if (open === undefined || open.found.length === 0) return [];
    const item = trustItem(open, { motorId: motorId ?? undefined, site: siteName, tag, area: areaName ?? undefined, level });
    return item.doubts.length > 0 ? [item] : [];
  });
  const areas = [...new Set(items.flatMap(({ area }) => (area === undefined ? [] : [area])))].sort();
  return { items, areas, total: rows.length, byLevel };
}

/** The open findings of results kept from before they stood beside them. */
async function readUnpacked(db: Reader, ids: readonly string[]): Promise<ReadonlyMap<string, OpenFindings>> {
  const found = new Map<string, OpenFindings>();
  for (let at = 0; at < ids.length; at += CHUNK) {
    const rows = await db.motorEvaluation.findMany({
      where: { id: { in: ids.slice(at, at + CHUNK) } },
      select: { id: true, details: true },
    });
    for (const { id, details } of rows) found.set(id, openFindingsOf(unpackResult(details)));
  }
  return found;
}

/** What may not be used of one motor, and what to measure again. */
export function trustItem(open: OpenFindings, motor: Pick<TrustItem, 'motorId' | 'site' | 'tag' | 'area' | 'level'>): TrustItem {
  const doubts = doubtsOf(open);
  const wanted = new Set(doubts.flatMap(({ readings }) => readings));
  const highest = Math.max(0, ...doubts.map(({ load }) => LOADS_WANTED.indexOf(load === 'stopped' ? 'any' : load)));
  return {
    ...motor,
    description: open.description,
    doubts,
    wanted: WANTED.filter((each) => wanted.has(each)),
    load: LOADS_WANTED[highest] ?? 'any',
  };
}

function doubtsOf({ found, dates = [] }: OpenFindings): Doubt[] {
  const words = (text: string) => inLabels(byDate(text, new Map(dates)));
  const doubts: Doubt[] = [];
  const said = new Set<string>();
  for (const { indicator, ...finding } of found) {
    const wanted = askOf(finding);
    if (said.has(finding.text) || wanted === undefined) continue;
    said.add(finding.text);
    doubts.push({
      severity: finding.severity,
      text: words(finding.text),
      ...(indicator !== undefined && { indicator: INDICATOR_TITLES.get(indicator) ?? indicator }),
      ...wanted,
      ...(wanted.readings.length === 0 && { desk: words(finding.next) }),
    });
  }
  return doubts.sort((a, b) => SEVERITY[a.severity] - SEVERITY[b.severity]);
}
