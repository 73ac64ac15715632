import type { Scope } from './formula/apply';
import type { PriceList, Settings } from './settings';
import type { ReferenceTables } from './tables';

/** What every motor of a study is evaluated with. */
export interface StudyContext {
  readonly settings: Settings;
  readonly tables: ReferenceTables;
  readonly prices: PriceList;
}

/** The study and the scope of one motor's evaluation. */
export interface MotorScope extends Scope, StudyContext {}
