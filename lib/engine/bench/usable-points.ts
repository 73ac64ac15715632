import type { Finding } from '../quantity/finding';
import { BENCH } from './findings';
import type { BenchPoint, BenchSections } from './test';

type Field = Exclude<keyof BenchPoint, 'row'>;

/** Column of the bench test sheet for each field. */
export const BENCH_COLUMN: Readonly<Record<Field, string>> = {
  voltageV: 'voltage_v',
  currentA: 'current_a',
  inputPowerKw: 'input_power_kw',
  torqueNm: 'torque_nm',
  speedRpm: 'speed_rpm',
  frequencyHz: 'frequency_hz',
  windingTempC: 'winding_temp_c',
  resistanceOhm: 'resistance_ohm',
  ambientC: 'ambient_c',
};

/** Fields that are positive wherever they stand. */
const POSITIVE: readonly Field[] = ['voltageV', 'currentA', 'inputPowerKw', 'speedRpm', 'frequencyHz', 'resistanceOhm'];

/** Points of a section that hold what is needed and nothing impossible, and a finding for each that does not. */
export function usablePoints(
  section: keyof BenchSections,
  points: readonly BenchPoint[],
  needed: readonly Field[],
): { points: BenchPoint[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const usable = points.filter((point) => {
    const missing = needed.filter((field) => point[field] === undefined);
    if (missing.length > 0) {
      const columns = missing.map((field) => BENCH_COLUMN[field]).join(', ');
      findings.push(BENCH.make('bench-reading-missing', { row: point.row, section, columns }));
      return false;
    }
    const wrong = POSITIVE.find((field) => needed.includes(field) && (point[field] ?? 1) <= 0);
    if (wrong === undefined) return true;
    const value = point[wrong] ?? 0;
    findings.push(BENCH.make('bench-reading-impossible', { row: point.row, section, column: BENCH_COLUMN[wrong], value }));
    return false;
  });
  return { points: usable, findings };
}
