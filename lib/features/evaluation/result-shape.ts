import type { UnrankedMotor } from '@/lib/engine';
import { type EvaluatedRow, resultRow } from './result-row';
import { type EvaluatedText, resultText } from './result-text';

/** The forms in which workers hand results on: text for files, rows for the database. */
export interface Shapes {
  readonly text: EvaluatedText;
  readonly row: EvaluatedRow;
}
export type ShapeName = keyof Shapes;

/** Makes each form of a result. */
export const SHAPES: { readonly [Name in ShapeName]: (result: UnrankedMotor, currency: string) => Shapes[Name] } = {
  text: (result) => resultText(result),
  row: resultRow,
};
