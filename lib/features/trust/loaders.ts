import { compareNaturally, evaluateMotor, motorResult } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { formatNumber, formatPercent, withUnit } from '@/lib/platform/format';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { openFindingsOf } from '../evaluation/open-findings';
import { readMotor, readStudyMotors } from '../fleet/data';
import { ratingWords } from '../motor/words';
import { studyInForce } from '../study/context';
import { readTrustList, trustItem } from './data';
import { loadsExpected, type RoundLine, type RoundPlace, roundLines } from './round-lines';
import { LONGEST_ROUND, type LoadWanted, type RoundStop, type TrustItem, type TrustList, WANTED, type Wanted } from './schema';
import { wantedColumns } from './wanted-columns';

/** What may not be used in a study; `undefined` before the first evaluation. */
export async function loadTrustList(studyId: string): Promise<TrustList | undefined> {
  return readTrustList(database().read, studyId);
}

/** One motor of a round. */
export interface RoundMotor {
  readonly id: string;
  /** Empty where all motors of the study stand at one site. */
  readonly site: string;
  readonly tag: string;
  readonly area: string;
  readonly description: string;
  readonly plate: string;
  /** Why it is on the round. */
  readonly why: readonly string[];
  readonly load: LoadWanted;
  /** The loads for which the expected ranges hold, in words. */
  readonly loads: string;
  readonly places: readonly { readonly place: RoundPlace; readonly lines: readonly RoundLine[] }[];
  readonly hazardous: boolean;
}

/** A round of chosen motors. */
export interface Round {
  readonly name: string;
  readonly asOf: string;
  readonly demo: boolean;
  readonly motors: readonly RoundMotor[];
  /** Motors asked for beyond the longest round. */
  readonly leftOut: number;
}

/** Read on every round, whatever else is wanted: a load set shows whether the rest may be used. */
const ALWAYS = ['voltages', 'currents', 'power', 'frequency', 'speed', 'ambient'] as const;
const ORDER: readonly RoundPlace[] = ['On the way in', 'At the panel, live', 'At the shaft', 'Stopped and locked out'];

function wantedOnRound({ wanted }: TrustItem, withLoadSet: boolean): readonly Wanted[] {
  const always = new Set<string>(withLoadSet ? ALWAYS : []);
  return WANTED.filter((each) => always.has(each) || wanted.includes(each));
}

/** The round sheet of the motors with these ids, by area and tag; `undefined` when there is no such study. */
export async function loadRound(studyId: string, ids: readonly string[]): Promise<Round | undefined> {
  const { read } = database();
  const force = await studyInForce(read, studyId);
  if (!force) return undefined;
  const stored =
    ids.length === 0 ? [] : await readStudyMotors(read, studyId, { ids: ids.slice(0, LONGEST_ROUND), withHistory: true });
  const evaluated = await fleetAsEvaluated(read, force, stored);
  const sites = await read.motor.findMany({ where: { studyId }, distinct: ['siteName'], select: { siteName: true } });
  const motors = evaluated.map(({ id, motor }): RoundMotor => {
    const evaluation = evaluateMotor(motor, force.context);
    const result = motorResult(evaluation);
    const { site, tag, trust } = result;
    const item = trustItem(openFindingsOf(result), { motorId: id, site, tag, area: motor.area, level: trust.level });
    const loads = loadsExpected(evaluation, item.load);
    const wanted = wantedOnRound(item, true);
    const lines = roundLines(evaluation, wanted, loads, result.condition.indicators);
    return {
      id,
      site: sites.length > 1 ? motor.site : '',
      tag: motor.tag,
      area: motor.area ?? '',
      description: motor.description ?? '',
      plate: [
        ratingWords(motor.plate.ratedPowerKw, motor.plate.ratedPowerUnit),
        withUnit(formatNumber(motor.plate.ratedVoltageV, 0), 'V'),
        motor.plate.ratedCurrentA === undefined ? '' : withUnit(formatNumber(motor.plate.ratedCurrentA, 1), 'A'),
        motor.plate.ratedSpeedRpm === undefined ? '' : withUnit(formatNumber(motor.plate.ratedSpeedRpm, 0), 'r/min'),
        motor.plate.frame ?? '',
      ]
        .filter(Boolean)
        .join(', '),
      why: item.doubts.map(({ text }) => text),
      load: item.load === 'any' ? 'usual' : item.load,
      loads: `${formatNumber(100 * loads[0], 0)} to ${formatPercent(loads[1])} load`,
      places: ORDER.flatMap((place) => {
        const found = lines.get(place);
        return found ? [{ place, lines: found }] : [];
      }),
      hazardous: motor.plate.hazardousLocation === true,
    };
  });
  motors.sort((a, b) => compareNaturally(a.site, b.site) || compareNaturally(a.area, b.area) || compareNaturally(a.tag, b.tag));
  return {
    name: force.study.name,
    asOf: force.study.settings.asOf,
    demo: force.study.demo,
    motors,
    leftOut: Math.max(0, ids.length - LONGEST_ROUND),
  };
}

/**
 * Columns of a reading that a motor is to be read for: those of its round sheet, and what would tell most about its condition. Of a motor that does
 * not run, a load set is not asked for. Empty where nothing is wanted.
 */
export async function loadWantedColumns(studyId: string, motorId: string): Promise<readonly string[]> {
  const { read } = database();
  const force = await studyInForce(read, studyId);
  if (!force) return [];
  const stored = await readStudyMotors(read, studyId, { ids: [motorId], withHistory: true });
  const [evaluated] = await fleetAsEvaluated(read, force, stored);
  if (!evaluated) return [];
  const { motor } = evaluated;
  const result = motorResult(evaluateMotor(motor, force.context));
  const { site, tag, trust, condition } = result;
  const item = trustItem(openFindingsOf(result), { motorId, site, tag, area: motor.area, level: trust.level });
  const runs = (motor.plate.status ?? 'running') === 'running';
  const wanted = wantedOnRound(item, runs);
  return [...new Set([...wantedColumns(wanted), ...(condition.next_measurement?.columns ?? [])])];
}

/** Where a motor stands on a round; nothing where it is no stop of it. A motor that is gone meanwhile is passed over. */
export async function loadRoundStop(studyId: string, ids: readonly string[], motorId: string): Promise<RoundStop | undefined> {
  const at = ids.indexOf(motorId);
  if (at < 0) return undefined;
  for (const id of ids.slice(at + 1)) {
    const next = await readMotor(database().read, id);
    if (next?.studyId === studyId) return { at: at + 1, of: ids.length, next: { id, tag: next.motor.tag } };
  }
  return { at: at + 1, of: ids.length, next: undefined };
}
