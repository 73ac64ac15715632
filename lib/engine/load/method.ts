import type { MotorScope } from '../context';
import type { Machine } from '../machine/model';
import type { Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import type { MethodId } from '../result';
import type { Metered } from './metered';

/** What a method of load estimation works on. */
export interface MethodInput {
  /** The machine of the plate alone. */
  readonly machine: Machine;
  readonly plate: Plate;
  /** What the methods before this one gave, by id: for those that combine others. */
  readonly before: ReadonlyMap<MethodId, MethodOutcome>;
  readonly metered: Metered;
}

/** What a method gives: an estimate, or the names of what it lacks. */
export interface MethodOutcome {
  readonly loadFraction?: Quantity<'1'> | undefined;
  /** On which side of all possible loads the reading lies, when no load shows it. */
  readonly outOfRange?: 'below' | 'above' | undefined;
  readonly missing: readonly string[];
  /** Remarks on validity, in words. */
  readonly why: readonly string[];
  readonly findings: readonly Finding[];
}

/** A registered way from readings to the load. */
export interface LoadMethod {
  readonly id: MethodId;
  readonly title: string;
  /** Columns of the fleet sheet without which the method gives nothing. */
  readonly needs: readonly string[];
  /** Where it holds, in words. */
  readonly validity: string;
  readonly source: string;
  /** Page of the manual, relative to `docs/`. */
  readonly page: string;
  estimate(scope: MotorScope, input: MethodInput): MethodOutcome;
}
