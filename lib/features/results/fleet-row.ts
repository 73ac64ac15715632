/**
 * The rows of the fleet's list: what is known of each motor and the figures that lists sort by, packed into one JSON text. This file
 * goes to the browser, and reads there what `data.ts` packed on the server.
 */

/** Kinds of facts: `key` is always there; money is packed in minor units and read in units of the currency. */
type Kind = 'key' | 'text' | 'number' | 'money';

/** The facts of a row, in the order of the pack. `…_u` are standard uncertainties (k = 1), `…_low` and `…_high` limits at 95 %, in the unit of the fact before. */
const FLEET_FACTS = {
  id: 'key',
  version: 'number',
  site: 'text',
  tag: 'key',
  area: 'text',
  description: 'text',
  status: 'key',
  rated_power_kw: 'number',
  rated_voltage_v: 'number',
  rated_speed_rpm: 'number',
  poles: 'number',
  efficiency_class: 'text',
  nominal_efficiency_pct: 'number',
  frame: 'text',
  year_built: 'number',
  driven_machine: 'text',
  hours_per_year: 'number',
  readings: 'number',
  rank: 'number',
  load_fraction: 'number',
  load_fraction_u: 'number',
  load_fraction_low: 'number',
  load_fraction_high: 'number',
  shaft_power_kw: 'number',
  shaft_power_kw_u: 'number',
  shaft_power_kw_low: 'number',
  shaft_power_kw_high: 'number',
  input_power_kw: 'number',
  input_power_kw_u: 'number',
  input_power_kw_low: 'number',
  input_power_kw_high: 'number',
  efficiency: 'number',
  efficiency_u: 'number',
  efficiency_low: 'number',
  efficiency_high: 'number',
  loss_total_kw: 'number',
  loss_total_kw_u: 'number',
  loss_total_kw_low: 'number',
  loss_total_kw_high: 'number',
  trust: 'text',
  band: 'text',
  action: 'text',
  timing: 'text',
  option: 'text',
  cost: 'money',
  money_saved: 'money',
  money_saved_u: 'money',
  energy_saved_kwh_a: 'number',
  energy_saved_kwh_a_u: 'number',
  simple_payback_a: 'number',
  simple_payback_a_u: 'number',
  net_present_value: 'money',
  net_present_value_u: 'money',
  internal_rate_of_return: 'number',
  probability_within_policy: 'number',
  rank_group: 'number',
} as const satisfies Readonly<Record<string, Kind>>;

export type FleetFact = keyof typeof FLEET_FACTS;
export const FLEET_FACT_NAMES = Object.keys(FLEET_FACTS).filter((name): name is FleetFact => name in FLEET_FACTS);

type Fact<K extends Kind> = K extends 'key' ? string : (K extends 'text' ? string : number) | undefined;

/** One motor in the list; an absent fact is `undefined`. */
export type FleetRow = {
  readonly [Name in FleetFact]: Fact<(typeof FLEET_FACTS)[Name]>;
} & {
  /** Place in the natural order of site and tag. */
  readonly order: number;
};

/** A study's list as it travels: rows of facts in the order of `names`, in natural order of site and tag. */
export interface FleetPack {
  readonly currency: string;
  /** Digits of the currency's minor units. */
  readonly minorDigits: number;
  /** Horizon of the study, beyond which no payback is counted on. */
  readonly horizonYears: number;
  /** The run whose figures these are; absent before the first one is finished. */
  readonly runId?: string;
  readonly names: readonly string[];
  readonly rows: readonly (readonly unknown[])[];
}

/** Why a pack could not be read: it was made by another version of the program. */
export class StrangePack extends Error {
  override readonly name = 'StrangePack';
}

/** The rows of a pack. @throws StrangePack when it does not hold the facts that are expected. */
export function rowsOfPack(pack: FleetPack): FleetRow[] {
  if (pack.names.join() !== FLEET_FACT_NAMES.join()) throw new StrangePack('The list has other columns than expected.');
  const scale = 10 ** pack.minorDigits;
  const kinds: readonly Kind[] = FLEET_FACT_NAMES.map((name) => FLEET_FACTS[name]);
  return pack.rows.map((cells, order) => {
    const row: Record<string, unknown> = { order };
    for (let at = 0; at < kinds.length; at++) {
      const name = FLEET_FACT_NAMES[at] ?? '';
      row[name] = readFact(kinds[at] ?? 'text', cells[at], name, scale);
    }
    // Every fact has just been read by its kind: the object has all members of a row.
    return row as FleetRow;
  });
}

function readFact(kind: Kind, cell: unknown, name: string, scale: number): string | number | undefined {
  if (cell === null || cell === undefined) {
    if (kind === 'key') throw new StrangePack(`A motor has no ${name}.`);
    return undefined;
  }
  if (kind === 'key' || kind === 'text') {
    if (typeof cell !== 'string') throw new StrangePack(`${name} is no text.`);
    return cell;
  }
  if (typeof cell !== 'number') throw new StrangePack(`${name} is no number.`);
  return kind === 'money' ? cell / scale : cell;
}
