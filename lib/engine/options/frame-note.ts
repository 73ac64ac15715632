import type { MotorScope } from '../context';
import type { Finding } from '../quantity/finding';
import { OPTIONS } from './findings';
import { type FrameSize, frameSeries, plainFrame, type ShaftEnd, shaftEnd, shaftHeightMm, standardFrame } from './frames';
import type { Present } from './present';

/**
 * Whether another rating comes in another frame, and what that needs: adapter for the height of the shaft, coupling for its end. `undefined` where
 * the frame of today is neither stamped nor told by a table.
 */
export function frameNote(scope: MotorScope, { plate, machine }: Present, ratedPowerKw: number): Finding | undefined {
  const { tables, settings } = scope;
  const { poles } = machine.plate;
  const size: FrameSize = {
    poles,
    enclosure: plate.enclosure ?? 'enclosed',
    series: frameSeries(plate.frame, settings.standards),
  };
  const from = plate.frame === undefined ? standardFrame(tables, plate.ratedPowerKw, size) : plainFrame(plate.frame);
  if (from === undefined) return undefined;
  const to = standardFrame(tables, ratedPowerKw, size);
  if (to === undefined) return OPTIONS.make('frame-not-listed', { from, rated_power_kw: ratedPowerKw });
  if (to === from) return OPTIONS.make('frame-stays', { frame: to });
  const base = baseWords(shaftHeightMm(from), shaftHeightMm(to));
  const coupling = couplingWords(shaftEnd(tables, from, poles), shaftEnd(tables, to, poles));
  const needs = [base.needs, ...(coupling.needs === undefined ? [] : [coupling.needs])].join(', ');
  return OPTIONS.make('frame-to-match', {
    from,
    named: plate.frame === undefined ? BY_TABLE : '',
    to,
    height: base.words,
    shaft: coupling.words,
    needs,
  });
}

const BY_TABLE = ' (by the table, since the sheet names none)';

function baseWords(from: number | undefined, to: number | undefined): { words: string; needs: string } {
  if (from === undefined || to === undefined) return { words: '', needs: 'base or adapter' };
  if (from === to)
    return { words: `, with the shaft at the same ${to.toFixed(0)} mm above the base but other feet`, needs: 'an adapter plate' };
  const words = `, with the shaft at ${to.toFixed(0)} in place of ${from.toFixed(0)} mm above the base`;
  const step = Math.abs(to - from).toFixed(0);
  return { words, needs: to < from ? `an adapter base ${step} mm high` : `a base ${step} mm lower` };
}

function couplingWords(from: ShaftEnd | undefined, to: ShaftEnd | undefined): { words: string; needs?: string } {
  if (!from || !to) return { words: '', needs: 'coupling or sheave' };
  const size = (end: ShaftEnd) => `${end.diameterMm} × ${end.lengthMm}`;
  if (size(from) === size(to)) return { words: `; the shaft end of ${size(to)} mm stays` };
  return {
    words: `, and a shaft end of ${size(to)} in place of ${size(from)} mm`,
    needs: `a coupling half or sheave for ${to.diameterMm} mm`,
  };
}
