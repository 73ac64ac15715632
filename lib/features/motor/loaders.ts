import {
  type CurvePoint,
  type Derivation,
  derive,
  evaluateMotor,
  figuresOf,
  motorResult,
  partLoadCurve,
  type Quantity,
  type UnrankedMotor,
} from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { readMotor, type StoredMotor } from '../fleet/data';
import { withInstruments } from '../instruments/with-instruments';
import { type StudyInForce, studyInForce } from '../study/context';
import { readHistory, readRank } from './data';
import type { HistoryEntry } from './schema';

/** Everything that a motor's page shows. */
export interface MotorPage {
  readonly study: StudyInForce['study'];
  readonly stored: StoredMotor;
  readonly result: UnrankedMotor;
  readonly curve: readonly CurvePoint[];
  readonly rank: { readonly rank: number; readonly of: number } | undefined;
  readonly history: readonly HistoryEntry[];
  /** Paths of the figures that can be explained. */
  readonly explained: ReadonlySet<string>;
}

async function inForce(studyId: string, motorId: string): Promise<{ force: StudyInForce; stored: StoredMotor } | undefined> {
  const { read } = database();
  const force = await studyInForce(read, studyId);
  const stored = await readMotor(read, motorId);
  if (!force || !stored || stored.studyId !== studyId) return undefined;
  return { force, stored };
}

/** A motor with its evaluation, made at once from what is stored now; `undefined` when the study has no such motor. */
export async function loadMotorPage(studyId: string, motorId: string): Promise<MotorPage | undefined> {
  const found = await inForce(studyId, motorId);
  if (!found) return undefined;
  const { force, stored } = found;
  const { read } = database();
  const evaluation = evaluateMotor(withInstruments(stored.motor, force.instruments), force.context);
  const [rank, history] = await Promise.all([
    readRank(read, studyId, motorId),
    readHistory(
      read,
      motorId,
      stored.readings.map((entry) => entry.id),
    ),
  ]);
  return {
    study: force.study,
    stored,
    result: motorResult(evaluation),
    curve: evaluation.point ? partLoadCurve(evaluation) : [],
    rank,
    history,
    explained: new Set(figuresOf(evaluation).keys()),
  };
}

/** How one figure of a motor came about, and the other figures that can be asked for. */
export interface WhyPage {
  readonly study: StudyInForce['study'];
  readonly stored: StoredMotor;
  readonly derivation: Derivation;
  readonly figures: readonly string[];
}

/** The derivation of a figure by its path; `undefined` when there is no such motor or figure. */
export async function loadWhy(studyId: string, motorId: string, path: string): Promise<WhyPage | undefined> {
  const found = await inForce(studyId, motorId);
  if (!found) return undefined;
  const evaluation = evaluateMotor(withInstruments(found.stored.motor, found.force.instruments), found.force.context, new Map());
  const figures: ReadonlyMap<string, Quantity> = figuresOf(evaluation);
  const quantity = figures.get(path);
  const derivation = quantity && derive(evaluation, path, quantity);
  if (!derivation) return undefined;
  return { study: found.force.study, stored: found.stored, derivation, figures: [...figures.keys()] };
}

/** A motor as it is stored, for its forms; `undefined` when the study has none such. */
export async function loadStored(studyId: string, motorId: string): Promise<StoredMotor | undefined> {
  const stored = await readMotor(database().read, motorId);
  return stored && stored.studyId === studyId ? stored : undefined;
}
