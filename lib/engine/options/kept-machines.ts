import type { MotorScope } from '../context';
import type { CompletedPlate, LossSet, Machine } from '../machine/model';
import { type Parts, type Quantity, type Source, Sources } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';
import type { Settings } from '../settings';
import type { ReferenceTables } from '../tables';
import type { Replacement } from './on-offer';

/** Motors on offer are few beside the motors that they may replace, some 2,000 for a mixed fleet of 10,000: so many are kept for a study. */
const KEPT = 4000;

/** A motor on offer with the sources of its doubts, in the order in which working it out asks for them. */
interface KeptReplacement {
  readonly replacement: Replacement | undefined;
  readonly sources: readonly Source[];
}

interface OfStudy {
  readonly tables: ReferenceTables;
  readonly entries: Map<string, KeptReplacement>;
}

const studies = new WeakMap<Settings, OfStudy>();

/**
 * A motor on offer, worked out once for all motors of a study that it may replace; that there is none is kept too.
 *
 * `mark` must name all that `workOut` uses beside settings and tables. What is handed back has its doubts among the sources of the motor that
 * asks: they are registered in the order in which working it out would register them, so that every figure is the same to the last digit.
 * Where steps are recorded nothing is kept, since each motor has a record of its own.
 */
export function keptReplacement(
  scope: MotorScope,
  mark: string,
  workOut: (scope: MotorScope) => Replacement | undefined,
): Replacement | undefined {
  if (scope.trace) return workOut(scope);
  const entries = entriesOf(scope);
  let kept = entries.get(mark);
  if (!kept) {
    const sources = new Sources();
    kept = { replacement: workOut({ ...scope, sources }), sources: sources.list };
    if (entries.size >= KEPT) entries.clear();
    entries.set(mark, kept);
  }
  const numbers = kept.sources.map(({ id, label, rectangular, meter }) => scope.sources.number(id, label, rectangular, meter));
  const { replacement } = kept;
  return replacement && { ...replacement, machine: moved(replacement.machine, new Places(numbers)) };
}

function entriesOf({ settings, tables }: MotorScope): Map<string, KeptReplacement> {
  let known = studies.get(settings);
  if (known?.tables !== tables) {
    known = { tables, entries: new Map() };
    studies.set(settings, known);
  }
  return known.entries;
}

/** Numbers of a machine's sources among those of a motor. Lists that were one stay one, since sums are quicker then and go in the same order. */
class Places {
  private readonly lists = new Map<readonly number[], readonly number[]>();

  constructor(private readonly numbers: readonly number[]) {}

  of({ at, by }: Parts): Parts {
    let moved = this.lists.get(at);
    if (!moved) {
      moved = at.map((source) => this.numbers[source] as number);
      this.lists.set(at, moved);
    }
    return { at: moved, by };
  }
}

/** A quantity whose doubts are put among another motor's sources when they are first asked for. */
class Moved<U extends Unit> implements Quantity<U> {
  readonly unit: U;
  readonly value: number;
  private found: Parts | undefined = undefined;

  constructor(
    private readonly original: Quantity<U>,
    private readonly places: Places,
  ) {
    this.unit = original.unit;
    this.value = original.value;
  }

  get parts(): Parts {
    this.found ??= this.places.of(this.original.parts);
    return this.found;
  }
}

function moved({ plate, model, rated, ratedRise }: Machine, places: Places): Machine {
  return {
    plate: movedPlate(plate, places),
    model: {
      parameters: model.parameters.map((parameter) => new Moved(parameter, places)),
      circuit: model.circuit,
      slopes: model.slopes,
      rotorShare: model.rotorShare,
      base: model.base,
    },
    rated: movedLosses(rated, places),
    ratedRise: new Moved(ratedRise, places),
  };
}

function movedPlate(plate: CompletedPlate, places: Places): CompletedPlate {
  return {
    ratedPower: new Moved(plate.ratedPower, places),
    ratedVoltage: new Moved(plate.ratedVoltage, places),
    ratedFrequency: new Moved(plate.ratedFrequency, places),
    poles: plate.poles,
    synchronousSpeed: new Moved(plate.synchronousSpeed, places),
    ratedSpeed: new Moved(plate.ratedSpeed, places),
    ratedSlip: new Moved(plate.ratedSlip, places),
    efficiency: new Moved(plate.efficiency, places),
    powerFactor: new Moved(plate.powerFactor, places),
    ratedCurrent: new Moved(plate.ratedCurrent, places),
    magnetisingShare: new Moved(plate.magnetisingShare, places),
    origins: plate.origins,
    efficiencyKnown: plate.efficiencyKnown,
  };
}

function movedLosses(losses: LossSet, places: Places): LossSet {
  return {
    stator: new Moved(losses.stator, places),
    rotor: new Moved(losses.rotor, places),
    core: new Moved(losses.core, places),
    frictionWindage: new Moved(losses.frictionWindage, places),
    stray: new Moved(losses.stray, places),
    total: new Moved(losses.total, places),
  };
}
