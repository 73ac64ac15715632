import { exact, type Quantity } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';
import type { LossSet, Machine } from './model';

const bare = new WeakMap<Machine, Machine>();

/** The same machine with exact values: for iterations, where only the numbers matter. */
export function withoutDoubt(machine: Machine): Machine {
  const known = bare.get(machine);
  if (known) return known;
  const strip = <U extends Unit>(quantity: Quantity<U>): Quantity<U> => exact(quantity.value, quantity.unit);
  const { plate, rated } = machine;
  const losses: LossSet = {
    stator: strip(rated.stator),
    rotor: strip(rated.rotor),
    core: strip(rated.core),
    frictionWindage: strip(rated.frictionWindage),
    stray: strip(rated.stray),
    total: strip(rated.total),
  };
  const result: Machine = {
    plate: {
      ...plate,
      ratedPower: strip(plate.ratedPower),
      synchronousSpeed: strip(plate.synchronousSpeed),
      ratedSpeed: strip(plate.ratedSpeed),
      ratedSlip: strip(plate.ratedSlip),
      efficiency: strip(plate.efficiency),
      powerFactor: strip(plate.powerFactor),
      ratedCurrent: strip(plate.ratedCurrent),
      magnetisingShare: strip(plate.magnetisingShare),
    },
    rated: losses,
    referenceTemperature: strip(machine.referenceTemperature),
    ratedRise: strip(machine.ratedRise),
  };
  bare.set(machine, result);
  return result;
}
