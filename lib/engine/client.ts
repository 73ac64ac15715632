/** What the browser may use of the engine: types and plain helpers without tables or solvers. */

export type * from './condition/lines/line-result';
export type { FlowSoFar } from './explain/cumulative-flow';
export type { Derivation, DerivationStep } from './explain/derivation';
export type { CurvePoint } from './explain/part-load';
export { KILOWATTS_PER_HORSEPOWER } from './formula/constants';
export type { Evidence, Finding, Severity } from './quantity/finding';
export type { MovableMotor } from './rerank/movable';
export { type Moves, neutralMoves, type Rerankable, type Reranked, rerank, rerankable } from './rerank/rerank';
export type * from './result';
export type { Settings } from './settings';
