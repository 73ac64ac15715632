import { KILOWATTS_PER_HORSEPOWER, SAME_RATING } from '@/lib/engine';
import { issue, type RowIssue } from './issue-codes';
import { indexOf, type ParsedRow } from './parse-row';

/** Plates pair ratings of the two ladders, such as 125 hp with 90 kW; beyond this they no longer mean one motor. */
const REFUSE_ABOVE = 0.08;

/** Kilowatts of a rating in horsepower, free of binary rounding: 40 hp are 29.828 kW to the last digit. */
export function kilowattsOf(hp: number): number {
  return Number((hp * KILOWATTS_PER_HORSEPOWER).toPrecision(15));
}

export interface RatedPower {
  readonly kw: number;
  readonly unit: 'kW' | 'hp';
}

interface Judged {
  readonly value?: RatedPower;
  readonly errors: readonly RowIssue[];
  readonly warnings: readonly RowIssue[];
}

const FINE: Judged = { errors: [], warnings: [] };
const KW = indexOf('rated_power_kw');
const HP = indexOf('rated_power_hp');

/** The rated power of a row; kilowatts count when both are given, if the two agree. */
export function ratedPower({ row, values }: ParsedRow): Judged {
  const kw = values[KW];
  const hp = values[HP];
  if (typeof kw === 'number') {
    const value: RatedPower = { kw, unit: 'kW' };
    return typeof hp === 'number' ? { value, ...judge(row, kw, kilowattsOf(hp)) } : { value, errors: [], warnings: [] };
  }
  return typeof hp === 'number' ? { value: { kw: kilowattsOf(hp), unit: 'hp' }, errors: [], warnings: [] } : FINE;
}

function judge(row: number, kw: number, fromHp: number): Judged {
  const apart = Math.abs(fromHp - kw) / kw;
  const count = Number((apart * 100).toPrecision(3));
  if (apart > REFUSE_ABOVE) return { errors: [issue('power-units-contradict', row, 'rated_power_hp', { count })], warnings: [] };
  if (apart > SAME_RATING) return { errors: [], warnings: [issue('power-units-differ', row, 'rated_power_hp', { count })] };
  return FINE;
}

/** Does a later row's power agree with the motor's? In the same unit it must be equal, else as close as on one plate. */
export function comparePower(
  row: number,
  earlier: { readonly power: RatedPower; readonly rows: readonly number[] },
  later: RatedPower | undefined,
): Judged {
  const { power, rows } = earlier;
  if (later === undefined || later.kw === power.kw) return FINE;
  if (later.unit !== power.unit) return power.unit === 'kW' ? judge(row, power.kw, later.kw) : judge(row, later.kw, power.kw);
  const column = later.unit === 'kW' ? 'rated_power_kw' : 'rated_power_hp';
  const written = ({ kw, unit }: RatedPower): string =>
    String(unit === 'kW' ? kw : Number((kw / KILOWATTS_PER_HORSEPOWER).toPrecision(12)));
  const error = issue('plate-contradiction', row, column, {
    value: written(later),
    other: `“${written(power)}”`,
    otherRow: rows[0] ?? 0,
  });
  return { errors: [error], warnings: [] };
}
