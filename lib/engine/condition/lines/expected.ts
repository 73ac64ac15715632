import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as L from '../../generated/lines';
import type { LineGeometry, Plate } from '../../motor';
import { exact, scaled } from '../../quantity/quantity';
import { polePassLines, slotLines, supplyLines } from './electrical';
import type { Line, LineRule, Rotation } from './line';
import { mechanicalLines } from './mechanical';

/**
 * Every line that motor and drive train can make, in current and vibration, in order of spectrum and frequency.
 *
 * Units: Hz. Valid for: steady speed. Lines that lack their data (bars, sheaves, teeth, bearing) are left out.
 * Doubt: that of speed and supply frequency, of belt dimensions, and of slip in bearings.
 * Source: stands with each line.
 */
export function expectedLines(
  scope: MotorScope,
  plate: Plate,
  geometry: LineGeometry | undefined,
  rotation: Rotation,
): readonly Line[] {
  const rules = [
    ...supplyLines(),
    ...(plate.machineKind === 'synchronous' ? [] : polePassLines(rotation.poles)),
    ...slotLines(plate.machineKind === 'cage' ? plate.rotorBars : undefined, plate.statorSlots),
    ...mechanicalLines(scope, plate, geometry),
  ];
  return rules
    .map((rule) => lineOf(scope, rule, rotation))
    .sort((a, b) => (a.spectrum === b.spectrum ? a.frequency.value - b.frequency.value : a.spectrum < b.spectrum ? -1 : 1));
}

/** Works out the frequency of one line; a negative one folds back about zero. */
export function lineOf(scope: MotorScope, rule: LineRule, rotation: Rotation): Line {
  const { supply, shaft, ...rest } = rule;
  let supplyMultiple = typeof supply === 'number' ? exact(supply, '1') : supply;
  let shaftMultiple = typeof shaft === 'number' ? exact(shaft, '1') : shaft;
  const sum = supplyMultiple.value * rotation.supply.value + shaftMultiple.value * rotation.shaft.value;
  if (sum < 0) {
    supplyMultiple = scaled(supplyMultiple, -1);
    shaftMultiple = scaled(shaftMultiple, -1);
  }
  const frequency = apply(scope, L.spectral_line, {
    supply_multiple: supplyMultiple,
    supply: rotation.supply,
    shaft_multiple: shaftMultiple,
    shaft: rotation.shaft,
  });
  return { ...rest, supplyMultiple, shaftMultiple, frequency };
}
