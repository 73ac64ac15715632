import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { EfficiencyClass, Enclosure } from '../motor';
import type { EfficiencyRow, PartLoadRow, ReferenceTables, RowStatus, Table } from '../tables';

/** A class efficiency found in a table. */
export interface ClassEfficiency {
  readonly pct: number;
  readonly status: RowStatus;
  readonly table: string;
  /** False when poles or rating lie outside the table and the nearest row was taken. */
  readonly inside: boolean;
}

/** The rating whose efficiency is asked for. */
export interface RatingQuery {
  readonly ratedPowerKw: number;
  readonly poles: number;
  readonly enclosure: Enclosure;
  readonly frequencyHz: number;
  readonly standards: 'nema' | 'iec';
}

/** A rating of a class. */
export interface ClassQuery extends RatingQuery {
  readonly efficiencyClass: EfficiencyClass;
}

/** The doubt grows by so much where poles or rating lie beyond the table (common practice). */
const BEYOND_TABLE = 1.5;

/** By how much the doubt grows for where in its table an efficiency was found. */
export function beyondTable(found: ClassEfficiency | undefined): number {
  return found?.inside === false ? BEYOND_TABLE : 1;
}

type Row<R> = Table<R>['rows'][number];

/** Looks up the rows of a table by a key, by which they are sorted out once, by rising rating; rows without one are never asked for. */
function rowsBy<R>(
  keyOf: (row: Row<R>) => string | undefined,
  ratingOf: (row: Row<R>) => number,
): (table: Table<R>, key: string) => readonly Row<R>[] {
  const indexes = new WeakMap<Table<R>, Map<string, Row<R>[]>>();
  return (table, key) => {
    let index = indexes.get(table);
    if (!index) {
      index = new Map();
      for (const row of table.rows) {
        const own = keyOf(row);
        const list = own && index.get(own);
        if (list) list.push(row);
        else if (own) index.set(own, [row]);
      }
      for (const list of index.values()) list.sort((a, b) => ratingOf(a) - ratingOf(b));
      indexes.set(table, index);
    }
    return index.get(key) ?? [];
  };
}

/** Rows of a class, poles and enclosure. */
const rowsOfClass = rowsBy<EfficiencyRow>(
  (row) => `${row.efficiencyClass}|${row.poles}|${row.enclosure ?? ''}`,
  (row) => row.ratedPowerKw,
);

/** Rows of the survey at rated load, by poles and enclosure. */
const surveyedAtRatedLoad = rowsBy<PartLoadRow>(
  (row) => (row.loadPct === 100 ? `${row.poles}|${row.enclosure}` : undefined),
  (row) => row.ratedPowerHp,
);

/**
 * Nominal full-load efficiency of a class from the published tables.
 *
 * Between two listed ratings the higher one is taken from the midpoint on, the lower one below it (10 CFR 431.25 on horsepower;
 * EU 2019/1781 Annex I on kilowatts at 60 Hz). Beyond the ends of a table the nearest row is taken and `inside` is false.
 * Returns `undefined` when no table holds the class at this frequency.
 */
export function classEfficiency(tables: ReferenceTables, query: ClassQuery): ClassEfficiency | undefined {
  const { table, word, byHp } = chooseTable(tables, query);
  const enclosure = byHp ? query.enclosure : '';
  const tablePoles = Math.min(Math.max(query.poles, 2), 8);
  const rows = rowsOfClass(table, `${word}|${tablePoles}|${enclosure}`);
  const size = byHp ? query.ratedPowerKw / KILOWATTS_PER_HORSEPOWER : query.ratedPowerKw;
  const first = rows[0];
  const last = rows[rows.length - 1];
  if (!first || !last) return undefined;
  let chosen = first;
  for (const row of rows) {
    if (!(size >= (ratingOf(byHp, chosen) + ratingOf(byHp, row)) / 2)) break;
    chosen = row;
  }
  const slack = 1.03;
  const inside = tablePoles === query.poles && size >= ratingOf(byHp, first) / slack && size <= ratingOf(byHp, last) * slack;
  return { pct: chosen.nominalEfficiencyPct, status: chosen.status, table: `${table.title} (${table.edition})`, inside };
}

/** Rating of a row in the unit that its table goes by. */
function ratingOf(byHp: boolean, row: Row<EfficiencyRow>): number {
  return byHp ? (row.ratedPowerHp ?? row.ratedPowerKw / KILOWATTS_PER_HORSEPOWER) : row.ratedPowerKw;
}

function chooseTable(tables: ReferenceTables, query: ClassQuery): { table: Table<EfficiencyRow>; word: string; byHp: boolean } {
  const iec = Math.round(query.frequencyHz) === 50 ? tables.iec50Hz : tables.iec60Hz;
  const us = query.standards === 'nema' && Math.round(query.frequencyHz) === 60;
  switch (query.efficiencyClass) {
    case 'premium':
      return us ? { table: tables.usPremium, word: 'premium', byHp: true } : { table: iec, word: 'IE3', byHp: false };
    case 'energy-efficient':
      return us
        ? { table: tables.usEnergyEfficient, word: 'energy-efficient', byHp: true }
        : { table: iec, word: 'IE2', byHp: false };
    case 'standard':
      return { table: tables.iec50Hz, word: 'IE1', byHp: false };
    default:
      // The 60 Hz tables begin at IE2; IE1 is taken from 50 Hz, which is lower still.
      return query.efficiencyClass === 'IE1'
        ? { table: tables.iec50Hz, word: 'IE1', byHp: false }
        : { table: iec, word: query.efficiencyClass, byHp: false };
  }
}

/** Efficiency of a class by its table, or of a standard motor by {@link standardEfficiency}. */
export function listedEfficiency(
  tables: ReferenceTables,
  query: RatingQuery,
  efficiencyClass: EfficiencyClass,
): ClassEfficiency | undefined {
  return efficiencyClass === 'standard'
    ? standardEfficiency(tables, query)
    : classEfficiency(tables, { ...query, efficiencyClass });
}

/** Rated loss of a standard motor over that of the energy-efficient class: mean of the 107 ratings that the survey and that class's table share, whose deviation is 0.12. */
const STANDARD_OVER_EFFICIENT = 1.28;

/** So far may the rating of a cell of the survey be off, as a logarithm: less than one step of ratings. */
const NEAR = 0.16;

/**
 * Efficiency of an old standard motor: average of the US survey where it has the cell, and its largest rating beyond that; else the old
 * Design B minimum nominal of the band, which holds for all pole counts and so stands above what small slow and fast motors reach: no
 * better than {@link STANDARD_OVER_EFFICIENT} lets it; else IE1. Rating in kW.
 */
export function standardEfficiency(tables: ReferenceTables, query: RatingQuery): ClassEfficiency | undefined {
  if (query.standards === 'iec') return classEfficiency(tables, { ...query, efficiencyClass: 'IE1' });
  const hp = query.ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  const cell = surveyed(surveyedAtRatedLoad(tables.usStandardPartLoad, `${query.poles}|${query.enclosure}`), hp);
  if (cell) return { pct: cell.averageEfficiencyPct, status: cell.status, table: tables.usStandardPartLoad.title, inside: true };
  const old = tables.usOldDesign.rows.find(
    (row) => hp >= row.ratedPowerHpMin * 0.97 && (row.ratedPowerHpMax === undefined || hp < row.ratedPowerHpMax + 0.99),
  );
  if (!old) return classEfficiency(tables, { ...query, efficiencyClass: 'IE1' });
  const band = { pct: old.nominalEfficiencyPct, status: old.status, table: tables.usOldDesign.title, inside: true };
  const better = classEfficiency(tables, { ...query, efficiencyClass: 'energy-efficient' });
  if (!better) return band;
  const most = 100 / (1 + STANDARD_OVER_EFFICIENT * (100 / better.pct - 1));
  return most < band.pct
    ? {
        pct: most,
        status: better.status,
        table: `${better.table}, ${STANDARD_OVER_EFFICIENT} times its loss`,
        inside: better.inside,
      }
    : band;
}

/** The nearest cell of the survey within a step of the rating; the last one for larger ratings. Rows come by rising rating. */
function surveyed(rows: readonly Row<PartLoadRow>[], hp: number): Row<PartLoadRow> | undefined {
  const last = rows.at(-1);
  if (last && hp > last.ratedPowerHp) return last;
  let best: { row: Row<PartLoadRow>; distance: number } | undefined;
  for (const row of rows) {
    const distance = Math.abs(Math.log(row.ratedPowerHp / hp));
    if (distance < NEAR && (!best || distance < best.distance)) best = { row, distance };
  }
  return best?.row;
}
