import type { Motor, Reading } from '@/lib/engine';
import type { HistoryValue } from './indicator-history';
import { issue, type RowIssue } from './issue-codes';
import { instantOf, timeKey } from './taken-at';

const keyOf = (site: string, tag: string) => `${site}\0${tag}`;

/**
 * The values of an indicator history, ready to be joined with the motors they belong to. A value joins the reading of the same time where that
 * has none of its own, so that the load of that reading is its load; else values of one time and instrument become a reading. Rows of the
 * history count on from the last row of the sheet, so that no two readings of a motor share a number.
 */
export class HistoryJoiner {
  readonly #byMotor = new Map<string, HistoryValue[]>();
  readonly #rowsBefore: number;
  readonly #issues: RowIssue[] = [];

  constructor(values: readonly HistoryValue[], rowsBefore: number) {
    this.#rowsBefore = rowsBefore;
    for (const value of values) {
      const key = keyOf(value.site, value.tag);
      const known = this.#byMotor.get(key);
      if (known) known.push(value);
      else this.#byMotor.set(key, [value]);
    }
  }

  /** A motor with its part of the history, each motor once. */
  join(motor: Motor): Motor {
    const key = keyOf(motor.site, motor.tag);
    const values = this.#byMotor.get(key);
    if (!values) return motor;
    this.#byMotor.delete(key);
    const readings = [...motor.readings];
    for (const value of values) this.#place(readings, value);
    // Oldest first, undated ones before dated ones; the sort is stable.
    return { ...motor, readings: readings.sort((a, b) => timeOf(a) - timeOf(b)) };
  }

  /** Rows that contradict what is known, and, once every motor has been asked for, rows of motors that there are not. */
  get issues(): readonly RowIssue[] {
    const strays = [...this.#byMotor.values()].flat();
    return [
      ...this.#issues,
      ...strays.map((value) => issue('unknown-motor', value.row, 'tag', { value: value.tag, other: value.site })),
    ].sort((a, b) => a.row - b.row);
  }

  #place(readings: Reading[], { row, indicator, value, takenAt, instrument }: HistoryValue): void {
    const { key, name } = indicator;
    const at = readings.findIndex(
      (reading) =>
        sameTime(reading.takenAt, takenAt) &&
        (instrument === undefined || reading.instrument === undefined || reading.instrument === instrument),
    );
    const found = readings[at];
    if (!found) {
      const base = { row: this.#rowsBefore + row, readingsAt: 'motor', readingCondition: 'coupled' } as const;
      readings.push({ ...base, takenAt, instrument, [key]: value });
      return;
    }
    const known = found[key];
    if (known === undefined) readings[at] = { ...found, [key]: value };
    else if (known !== value)
      this.#issues.push(
        issue('history-contradiction', row, 'value', { value: String(value), other: String(known), words: name }),
      );
  }
}

function sameTime(a: string | undefined, b: string | undefined): boolean {
  return a !== undefined && b !== undefined && timeKey(a) === timeKey(b);
}

function timeOf(reading: Reading): number {
  return reading.takenAt === undefined ? Number.NEGATIVE_INFINITY : instantOf(reading.takenAt);
}
