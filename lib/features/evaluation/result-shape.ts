import { type Evaluation, flatResult, fleetKeyOf, motorResult, rankKeyOf } from '@/lib/engine';
import { type EvaluatedRow, resultRow } from './result-row';
import { type TextBlock, textBlock, unrankedJson, unrankedLine } from './result-text';

/** The forms in which a block of results is handed on: JSON or lines of CSV for files, rows for the database. */
export interface Shapes {
  readonly json: TextBlock;
  readonly lines: TextBlock;
  readonly rows: readonly EvaluatedRow[];
}
export type ShapeName = keyof Shapes;

/** Makes each form of a block. */
export const SHAPES: { readonly [Name in ShapeName]: (evaluations: Iterable<Evaluation>, currency: string) => Shapes[Name] } = {
  json: (evaluations) => textBlock(oneByOne(evaluations, motorResult), { textOf: unrankedJson, keyOf: fleetKeyOf }),
  lines: (evaluations) => textBlock(oneByOne(evaluations, flatResult), { textOf: unrankedLine, keyOf: rankKeyOf }),
  rows: (evaluations, currency) => Array.from(evaluations, (evaluation) => resultRow(evaluation, currency)),
};

/** One at a time, so that each evaluation can be let go before the next. */
function* oneByOne<Result>(evaluations: Iterable<Evaluation>, resultOf: (evaluation: Evaluation) => Result): Generator<Result> {
  for (const evaluation of evaluations) yield resultOf(evaluation);
}
