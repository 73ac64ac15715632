import type { MeasureCost, MeasureItem, Screened, ScreenedPayback } from './cost';
import type { Case, MeasureStep } from './steps';

/** What can be done beside another motor, in the order in which one acts on what the others leave: from the process back to the supply. */
export const MEASURE_IDS = ['stop-idling', 'speed-control', 'better-belt', 'balance-voltages', 'power-factor'] as const;
export type MeasureId = (typeof MEASURE_IDS)[number];

/** One measure, screened on assumptions: to be looked into, never planned as it stands. */
export interface Measure {
  readonly id: MeasureId;
  readonly text: string;
  /** What was assumed, and where it is from. */
  readonly assumed: string;
  /** kWh and money a year if nothing else is done. */
  readonly energySaved?: Screened | undefined;
  readonly moneySaved?: Screened | undefined;
  /** Money of the first year, which the payback counts: a ratchet may still hold the old peak. Absent where it is that of any year. */
  readonly firstYearSaved?: Screened | undefined;
  /** kWh and money a year that it adds after the measures before it. */
  readonly energySavedInSequence?: number | undefined;
  readonly moneySavedInSequence?: number | undefined;
  /** What the price list calls what it takes; absent where no list can hold it, since it differs from case to case. */
  readonly item?: MeasureItem | undefined;
  /** What it costs by the list, and the payback if nothing else is done; absent where the list has no such item. */
  readonly cost?: MeasureCost | undefined;
  readonly payback?: ScreenedPayback | undefined;
  /** Years until the cost is paid back by what the measure adds after those before it; absent where that is nothing. */
  readonly paybackInSequence?: number | undefined;
  /** The measure that must not be done beside this one. */
  readonly notWith?: MeasureId | undefined;
  /** Capacitor at the motor, kvar; it saves no energy in the motor itself. */
  readonly capacitorKvar?: number | undefined;
  /** True where the prices of the study leave open whether what it saves is charged, so that no money can be told. */
  readonly chargeUnknown?: true | undefined;
}

/** A measure that the data of a motor ask for, before it is known what it saves. */
export interface Found {
  readonly id: MeasureId;
  readonly text: string;
  readonly assumed: string;
  readonly item?: MeasureItem;
  /** The steps of the duty as they are with it. */
  readonly change: (steps: readonly MeasureStep[], which: Case) => readonly MeasureStep[];
}
