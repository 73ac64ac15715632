import { type FigureText, formatFigure } from '@/lib/platform/format';
import type { ReaderUnits } from '../study/reader-units';
import type { FleetRow } from './fleet-row';
import type { PaybackWords } from './payback-words';

/** One column of the fleet's list: the same for the screen, its filters, its print and its sorting. */
export interface FleetColumn {
  /** Name in addresses; that of the results file's column where there is one. */
  readonly id: string;
  /** One or two words at the head of the column. */
  readonly name: string;
  /** Stands under the name; `currency` stands for the study's. */
  readonly unit: string;
  /** A sentence for those who ask what it is. */
  readonly meaning: string;
  /** `word` has few values and is filtered by choosing; `number` by from and to; `text` by the search. */
  readonly kind: 'text' | 'word' | 'number';
  /** Shown until somebody chooses otherwise. */
  readonly initial: boolean;
  /** Value in the unit shown. */
  readonly value: (row: FleetRow) => string | number | undefined;
  /** Standard uncertainty in the unit shown, where the column has figures with doubt. */
  readonly doubt?: (row: FleetRow) => number | undefined;
  /** 95 % limits in the unit shown, where they are not always value ± 1.96 times the doubt. */
  readonly limits?: {
    readonly low: (row: FleetRow) => number | undefined;
    readonly high: (row: FleetRow) => number | undefined;
  };
  /** Digits after the decimal sign of values without doubt. */
  readonly decimals?: number;
  /** Written digit by digit, as a year is: never grouped, never rounded. */
  readonly plain?: true;
  /** Words by value, in the order in which they sort. */
  readonly words?: Readonly<Record<string, string>>;
  /** Path of the figure whose derivation can be asked for. */
  readonly why?: (row: FleetRow) => string | undefined;
  /** Why a cell may be empty. */
  readonly absent?: string;
  /** Power at the shaft or rating, in kW: shown in the reader's unit. */
  readonly shaft?: true;
  /** What stands in place of a figure that would promise too much; its derivation gives the figure. */
  readonly instead?: (row: FleetRow, showing: Showing) => PaybackWords | undefined;
}

/** How a list is shown to its reader. */
export interface Showing {
  readonly locale: string;
  readonly currency: string;
  /** Horizon of the study. */
  readonly horizonYears: number;
  readonly units: ReaderUnits;
}

/** A figure of a row with its 95 % interval in words, by the one formatter; `undefined` where the row has none. */
export function figureIn(row: FleetRow, column: FleetColumn, locale: string, unit = ''): FigureText | undefined {
  const value = column.value(row);
  const u = column.doubt?.(row);
  if (typeof value !== 'number' || u === undefined) return undefined;
  return formatFigure({ value, u, unit, low: column.limits?.low(row), high: column.limits?.high(row) }, { locale });
}
