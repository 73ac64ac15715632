import { BEARS_ON_SAFETY, type Finding, INDICATOR_TITLES, type SisterResult, urgencyOf } from '@/lib/engine';
import { minorDigits } from '@/lib/platform/money';
import { ownWords, sisterWords } from '../condition/words';
import { type Reader, readShownRunId, unpackResult } from '../evaluation/data';
import type { StoredResult } from '../evaluation/result-row';
import { sistersOf } from '../evaluation/sisters-text';
import { byDate, readingDates } from '../fleet/reading-dates';
import { inLabels } from '../fleet/screen-words';
import { readStudy } from '../study/data';
import type { ApartItem, WorkItem, Worklist } from './schema';

/** Findings that keep a motor from being started or run. */
const SAFETY: ReadonlySet<string> = new Set([...BEARS_ON_SAFETY, 'voltage-unbalance-high']);
/** Words by which a next step shows that the motor must stand still. */
const STANDSTILL = /isolate|lock(ed)? out|standstill|after stopping|open(ed)?\b.*motor/i;
const FAILED_NEXT =
  'Have it repaired or replaced: what each costs and earns stands among the options on its page. Isolate and lock out first.';
const SEVERITY = { disqualifies: 0, warning: 1, note: 2 } as const;

/** The motors of the latest evaluation that need a person, failed ones first, in order of risk; `undefined` before the first evaluation. */
export async function readWorklist(db: Reader, studyId: string): Promise<Worklist | undefined> {
  const study = await readStudy(db, studyId);
  const runId = await readShownRunId(db, studyId);
  if (!study || runId === undefined) return undefined;
  const rows = await db.motorEvaluation.findMany({
    where: { runId, OR: [{ worstBand: { in: ['beyond', 'near'] } }, { motor: { status: 'failed' } }] },
    orderBy: { naturalKey: 'asc' },
    select: {
      motorId: true,
      areaName: true,
      sisters: true,
      details: true,
      motor: { select: { status: true, unplannedStopCostMinor: true, drivenLoad: { select: { standby: true } } } },
    },
  });
  const scale = 10 ** minorDigits(study.settings.currency);
  const items = rows.map(({ motorId, areaName, sisters, details, motor }): WorkItem => {
    const stop =
      motor?.unplannedStopCostMinor == null || motor.drivenLoad?.standby === true
        ? 0
        : Number(motor.unplannedStopCostMinor) / scale;
    return workItem(unpackResult(details), {
      motorId: motorId ?? undefined,
      area: areaName ?? undefined,
      stop,
      failed: motor?.status === 'failed',
      sisters: sistersOf(sisters),
    });
  });
  return {
    items: items.sort(byRisk),
    apart: await readApart(db, runId, new Set(rows.map((row) => row.motorId))),
    total: await db.motorEvaluation.count({ where: { runId } }),
  };
}

/** Motors that are not on the list, and stand apart from their sisters on the bad side. */
async function readApart(db: Reader, runId: string, listed: ReadonlySet<string | null>): Promise<readonly ApartItem[]> {
  const rows = await db.motorEvaluation.findMany({
    // A first sieve of the text; what stands in it is read properly below.
    where: { runId, motorId: { not: null }, sisters: { contains: '"worse":true' } },
    orderBy: { naturalKey: 'asc' },
    select: { motorId: true, siteName: true, areaName: true, tag: true, sisters: true },
  });
  return rows.flatMap(({ motorId, siteName, areaName, tag, sisters }): ApartItem[] => {
    const apart = apartWords(sistersOf(sisters));
    if (motorId === null || listed.has(motorId) || apart.length === 0) return [];
    return [{ motorId, site: siteName, tag, area: areaName ?? undefined, apart }];
  });
}

/** What stands apart from like motors on the bad side, in words. */
function apartWords(sisters: readonly SisterResult[]): string[] {
  return sisters
    .filter(({ worse }) => worse)
    .map((found) => `${INDICATOR_TITLES.get(found.indicator) ?? found.indicator} ${ownWords(found)}, ${sisterWords(found)}`);
}

/** Must-do first, then by the expected cost of leaving it, then by odds. The sort is stable: ties stay in the order of tags. */
function byRisk(a: WorkItem, b: WorkItem): number {
  return Number(b.mustDo) - Number(a.mustDo) || (b.risk ?? 0) - (a.risk ?? 0) || (b.leading?.odds ?? 0) - (a.leading?.odds ?? 0);
}

/** One motor's line: why it stands here, what to do, and what leaving it may cost. */
function workItem(
  result: StoredResult,
  {
    motorId,
    area,
    stop,
    failed,
    sisters,
  }: {
    readonly motorId: string | undefined;
    readonly area: string | undefined;
    readonly stop: number;
    readonly failed: boolean;
    readonly sisters: readonly SisterResult[];
  },
): WorkItem {
  const { indicators, hypotheses, next_measurement: reading } = result.condition;
  const words = (text: string) => inLabels(byDate(text, readingDates(result.readings)));
  const titles = (band: string) =>
    indicators.filter((entry) => entry.band === band).map((entry) => INDICATOR_TITLES.get(entry.id) ?? entry.id);
  const beyond = titles('beyond');
  const near = titles('near');
  const findings = indicators
    .filter((entry) => entry.band === 'beyond' || entry.band === 'near')
    .flatMap((entry) => entry.findings)
    .sort((a, b) => SEVERITY[a.severity] - SEVERITY[b.severity]);
  const safety = findings.find((found) => SAFETY.has(found.code));
  const leading = hypotheses[0];
  // That a verdict is open is no reason to act; the next reading says more.
  const weightiest = safety ?? findings.find((found) => found.code !== 'limit-straddled');
  const next = failed ? FAILED_NEXT : (weightiest?.next ?? reading?.text ?? 'Read the indicator again and follow it.');
  const repair = result.options.find((option) => option.action === 'repair' || option.timing === 'at-failure');
  const consequence = stop + (repair?.cost ?? 0);
  const chance = leading ? leading.odds / (1 + leading.odds) : 0;
  const urgency = urgencyOf(indicators, leading?.for.map((entry) => entry.indicator) ?? []);
  return {
    motorId,
    site: result.site,
    tag: result.tag,
    area,
    mustDo: safety !== undefined || failed,
    failed,
    why: words(failed ? 'It has failed.' : `${whyWords(weightiest, beyond, near)}${decidedWords(result.decision)}`),
    leading: leading && { id: leading.id, odds: leading.odds, strength: leading.strength },
    beyond,
    near,
    next: words(next),
    outage: failed || STANDSTILL.test(next),
    apart: apartWords(sisters),
    ...(consequence > 0 &&
      (failed || leading) && {
        // A failure that has happened is certain and now.
        risk: failed ? consequence : chance * consequence * urgency.share,
        riskParts: failed ? undefined : { chance, consequence, urgency: urgency.share, because: urgency.because },
      }),
  };
}

/** What is decided where the condition calls for a repair. */
function decidedWords({ action, because }: StoredResult['decision']): string {
  if (action === 'repair') return ' A repair now is decided.';
  return because.some(({ code }) => code === 'replacement-beats-repair') ? ' A new motor in place of the repair is decided.' : '';
}

function whyWords(weightiest: Finding | undefined, beyond: readonly string[], near: readonly string[]): string {
  if (weightiest) return weightiest.text;
  if (beyond.length > 0) return `Beyond its limit: ${beyond.join(', ')}.`;
  return `Near its limit: ${near.join(', ')}.`;
}
