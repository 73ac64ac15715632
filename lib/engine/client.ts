/** What the browser may use of the engine: types and plain helpers without tables or solvers. */

export { KILOWATTS_PER_HORSEPOWER } from './formula/constants';
export type { MovableMotor } from './rerank/movable';
export { type Moves, neutralMoves, type Rerankable, type Reranked, rerank, rerankable } from './rerank/rerank';
export type * from './result';
export type { Settings } from './settings';
