import type { MotorScope } from '../../context';
import { apply, leaf } from '../../formula/apply';
import * as C from '../../generated/condition';
import { exact, type Quantity } from '../../quantity/quantity';
import type { Unit } from '../../quantity/unit';

/** A condition reading as a quantity; its relative error counts as rectangular. */
export function read<U extends Unit>(
  scope: MotorScope,
  given: { value: number; unit: U; label: string; row: number; errorPct: number; id: string },
): Quantity<U> {
  return leaf(scope, {
    value: given.value,
    unit: given.unit,
    label: given.label,
    origin: 'metered',
    source: `reading in row ${given.row}`,
    doubts: [
      {
        id: `row ${given.row}:${given.id}`,
        label: `${given.label}: error of the meter`,
        u: (Math.abs(given.value) * given.errorPct) / 100 / Math.sqrt(3),
      },
    ],
  });
}

/**
 * Unbalance of three values in per cent: largest deviation from the mean over the mean (NEMA MG 1 14.36). Which of the three deviates
 * most is a branch, chosen here; the rest is the formula. The meter's gain cancels; `errorPct` is what differs between two readings of it.
 */
export function unbalance(
  scope: MotorScope,
  values: readonly [number, number, number],
  given: { label: string; row: number; errorPct: number; id: string },
): Quantity<'%'> {
  const mean = (values[0] + values[1] + values[2]) / 3;
  const order = [0, 1, 2].sort((i, j) => Math.abs((values[j] ?? 0) - mean) - Math.abs((values[i] ?? 0) - mean)) as [
    number,
    number,
    number,
  ];
  const of = (index: number) =>
    read(scope, {
      value: values[index] ?? mean,
      unit: '1',
      label: `${given.label} ${index + 1}`,
      row: given.row,
      errorPct: given.errorPct,
      id: `${given.id}-${index + 1}`,
    });
  const farthest = values[order[0]] ?? mean;
  return apply(scope, C.deviation_from_mean, {
    farthest: of(order[0]),
    second: of(order[1]),
    third: of(order[2]),
    sign: exact(farthest >= mean ? 1 : -1, '1'),
  });
}

/** Number with three significant digits, for limits in words. */
export function words(value: number): string {
  return Number(value.toPrecision(4)).toString();
}
