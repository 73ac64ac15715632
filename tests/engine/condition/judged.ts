import { judgeCondition } from '@/lib/engine/condition/judge';
import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Motor, Plate, Reading } from '@/lib/engine/motor';
import { exact } from '@/lib/engine/quantity/quantity';
import type { Settings } from '@/lib/engine/settings';
import { motorOf, READING, scopeOf, study } from '../support/study';

export type Changes = {
  plate?: Partial<Plate>;
  reading?: Partial<Reading>;
  readings?: readonly Reading[];
  motor?: Partial<Motor>;
};

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

/** Two readings of one motor, a year apart. */
export function twice(first: Partial<Reading>, second: Partial<Reading>): readonly Reading[] {
  return [
    { ...READING, takenAt: '2024-06-01T10:00', ...first },
    { ...READING, row: 3, ...second },
  ];
}

/** One reading judged at a load that is exactly known. */
export function atLoad(load: number | undefined, changes: Changes, settings: Partial<Settings> = {}) {
  const motor = motorOf(changes);
  const { machine } = evaluateMotor(motor, study(settings));
  const readings = motor.readings.map((reading) => ({
    reading,
    loadFraction: load === undefined ? undefined : exact(load, '1'),
  }));
  const judged = judgeCondition(scopeOf(settings), { motor, machine, readings });
  return (id: string) => {
    const indicator = judged.indicators.find((entry) => entry.id === id);
    return { indicator, band: indicator?.band, codes: indicator?.findings.map((found) => found.code) ?? [] };
  };
}
