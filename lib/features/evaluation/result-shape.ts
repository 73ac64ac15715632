import { type Evaluation, motorResult, type UnrankedMotor } from '@/lib/engine';
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
  json: (evaluations) => textBlock(resultsOf(evaluations), unrankedJson),
  lines: (evaluations) => textBlock(resultsOf(evaluations), unrankedLine),
  rows: (evaluations, currency) => Array.from(evaluations, (evaluation) => resultRow(evaluation, currency)),
};

/** One at a time, so that each evaluation can be let go before the next. */
function* resultsOf(evaluations: Iterable<Evaluation>): Generator<UnrankedMotor> {
  for (const evaluation of evaluations) yield motorResult(evaluation);
}
