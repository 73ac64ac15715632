import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Plate, Reading } from '@/lib/engine/motor';
import { motorOf, study } from '../support/study';

export type Changes = { plate?: Partial<Plate>; reading?: Partial<Reading> };

/** One motor judged: the indicator asked for, and all that was found. */
export function judge(id: string, changes: Changes) {
  const { condition, trust } = evaluateMotor(motorOf(changes), study());
  return {
    indicator: condition.indicators.find((entry) => entry.id === id),
    codes: condition.findings.map((found) => found.code),
    condition,
    trust,
  };
}

/** Three values whose largest deviation from the mean is so many per cent. */
export function three(mean: number, pct: number): readonly [number, number, number] {
  const d = (mean * pct) / 100;
  return [mean - d, mean + d / 2, mean + d / 2];
}

/** Readings at about 90 % load. */
export const full: Partial<Reading> = { inputPowerKw: 34.4, currentA: 52, shaftSpeedRpm: 1770 };
