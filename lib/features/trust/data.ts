import { type Finding, INDICATOR_TITLES, type TrustLevel } from '@/lib/engine';
import { type Reader, readShownRunId, unpackResult } from '../evaluation/data';
import type { StoredResult } from '../evaluation/result-row';
import { askOf } from './asks';
import { type Doubt, LOADS_WANTED, type TrustItem, type TrustList, WANTED } from './schema';

/** Results per question: their compressed forms are some kilobytes each. */
const CHUNK = 500;
const SEVERITY = { disqualifies: 0, warning: 1, note: 2 } as const;
/** Findings that keep a motor from being sound, though they are but notes. */
const CAPPING_NOTES: ReadonlySet<string> = new Set([
  'one-way-to-load',
  'second-way-weak',
  'efficiency-unknown',
  'reading-undated',
]);

/** What may not be used in the latest evaluation of a study, and what to measure again; `undefined` before the first evaluation. */
export async function readTrustList(db: Reader, studyId: string): Promise<TrustList | undefined> {
  const runId = await readShownRunId(db, studyId);
  if (runId === undefined) return undefined;
  const items: TrustItem[] = [];
  const byLevel: Record<TrustLevel, number> = { sound: 0, provisional: 0, 'not-usable': 0 };
  let total = 0;
  for (let rows = await next(0); rows.length > 0; rows = await next(total)) {
    total += rows.length;
    for (const { motorId, areaName, details } of rows) {
      const result = unpackResult(details);
      byLevel[result.trust.level] += 1;
      const item = trustItem(result, { motorId: motorId ?? undefined, area: areaName ?? undefined });
      if (item.doubts.length > 0) items.push(item);
    }
  }
  const areas = [...new Set(items.flatMap(({ area }) => (area === undefined ? [] : [area])))].sort();
  return { items, areas, total, byLevel };

  function next(skip: number) {
    return db.motorEvaluation.findMany({
      where: { runId: runId ?? '' },
      orderBy: { naturalKey: 'asc' },
      skip,
      take: CHUNK,
      select: { motorId: true, areaName: true, details: true },
    });
  }
}

/** What may not be used of one motor, and what to measure again. */
export function trustItem(
  result: StoredResult,
  { motorId, area }: { readonly motorId: string | undefined; readonly area: string | undefined },
): TrustItem {
  const doubts = doubtsOf(result);
  const wanted = new Set(doubts.flatMap(({ readings }) => readings));
  const highest = Math.max(0, ...doubts.map(({ load }) => LOADS_WANTED.indexOf(load === 'stopped' ? 'any' : load)));
  return {
    motorId,
    site: result.site,
    tag: result.tag,
    area,
    description: result.description,
    level: result.trust.level,
    doubts,
    wanted: WANTED.filter((each) => wanted.has(each)),
    load: LOADS_WANTED[highest] ?? 'any',
  };
}

function doubtsOf({ trust, condition }: StoredResult): Doubt[] {
  const doubts: Doubt[] = [];
  const said = new Set<string>();
  const add = (found: Finding, indicator?: string): void => {
    const wanted = askOf(found);
    if (said.has(found.text) || wanted === undefined) return;
    said.add(found.text);
    doubts.push({
      severity: found.severity,
      text: found.text,
      ...(indicator !== undefined && { indicator }),
      ...wanted,
      ...(wanted.readings.length === 0 && { desk: found.next }),
    });
  };
  // A verdict that could not be given, or one that counts half: its finding tells why.
  for (const { id, band, findings } of condition.indicators) {
    for (const found of findings) if (band === undefined || WEAKENED.has(found.code)) add(found, INDICATOR_TITLES.get(id) ?? id);
  }
  for (const found of trust.findings) {
    if (found.severity !== 'note' || (trust.level !== 'sound' && CAPPING_NOTES.has(found.code))) add(found);
  }
  return doubts.sort((a, b) => SEVERITY[a.severity] - SEVERITY[b.severity]);
}

/** Findings beside a verdict that must not be used as it stands. */
const WEAKENED: ReadonlySet<string> = new Set(['signature-half-weight', 'sideband-one-side', 'sideband-not-unique']);
