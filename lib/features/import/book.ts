import type { Reading } from '@/lib/engine';
import { firstDifference, type MotorBook } from '../fleet/build-motors';
import { columnByName } from '../fleet/columns';
import type { StoredMotor } from '../fleet/data';
import { issue } from '../fleet/issue-codes';
import { timeKey } from '../fleet/taken-at';

/** What is kept of a study's motors, as the parser asks for it and as the comparison finds it. */
export interface StudyBook extends MotorBook {
  find(site: string, tag: string): StoredMotor | undefined;
}

/** The motors of a study, to be found by site and tag. */
export function bookOf(motors: readonly StoredMotor[]): StudyBook {
  const byKey = new Map(motors.map((stored) => [`${stored.motor.site}\0${stored.motor.tag}`, stored]));
  const find = (site: string, tag: string): StoredMotor | undefined => byKey.get(`${site}\0${tag}`);
  return {
    find,
    plateOf: (site, tag) => {
      const plate = find(site, tag)?.motor.plate;
      if (plate === undefined) return undefined;
      return { power: { kw: plate.ratedPowerKw, unit: plate.ratedPowerUnit }, ratedVoltageV: plate.ratedVoltageV };
    },
    refuse: (site, tag, reading) => {
      const same = readingAt(find(site, tag), reading);
      const column = same === undefined ? undefined : firstDifference(same, reading);
      if (same === undefined || column === undefined) return undefined;
      const other = `“${wordsOf(same, column)}”`;
      return issue('reading-contradiction', reading.row, column, { value: wordsOf(reading, column), other });
    },
  };
}

/** The reading in use that was taken at the same time; readings without a time are told apart by their content alone. */
export function readingAt(stored: StoredMotor | undefined, { takenAt }: Reading): Reading | undefined {
  if (stored === undefined || takenAt === undefined) return undefined;
  const key = timeKey(takenAt);
  return stored.motor.readings.find((kept) => kept.takenAt !== undefined && timeKey(kept.takenAt) === key);
}

const PHASES: Readonly<Record<string, keyof Reading>> = {
  voltage_ab_v: 'voltagesV',
  voltage_v: 'voltageV',
  current_a_a: 'currentsA',
  current_a: 'currentA',
  resistance_ab_ohm: 'resistancesOhm',
  duty_profile: 'duty',
};

function wordsOf(reading: Reading, column: string): string {
  const target = columnByName(column)?.target;
  const key = PHASES[column] ?? (target?.of === 'reading' ? target.key : undefined);
  const value = key === undefined ? undefined : reading[key];
  if (value === undefined) return 'empty';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}
