import type { UnrankedMotor } from '@/lib/engine';
import { type EvaluatedRow, resultRow } from './result-row';
import { type TextBlock, textBlock } from './result-text';

/** The forms in which a block of results is handed on: text for files, rows for the database. */
export interface Shapes {
  readonly text: TextBlock;
  readonly rows: readonly EvaluatedRow[];
}
export type ShapeName = keyof Shapes;

/** Makes each form of a block. */
export const SHAPES: { readonly [Name in ShapeName]: (results: Iterable<UnrankedMotor>, currency: string) => Shapes[Name] } = {
  text: textBlock,
  rows: (results, currency) => Array.from(results, (result) => resultRow(result, currency)),
};
