import type { BearingGeometry } from './column';
import { type DecimalSign, readNumber } from './number';

/** Readers of cells that hold several numbers; `undefined` when any part of the cell is not as it should be. */

interface Written {
  readonly decimal: DecimalSign;
}

interface Step {
  readonly fraction: number;
  readonly hoursPerYear: number;
}

function numbersOf(parts: readonly string[], written: Written): number[] | undefined {
  const values: number[] = [];
  for (const part of parts) {
    const reading = readNumber(part, written);
    if (!reading.ok) return undefined;
    values.push(reading.value);
  }
  return values;
}

/** `a;b;c`: frequencies above zero. */
export function readNumberList(text: string, written: Written): readonly number[] | undefined {
  const values = numbersOf(text.split(';'), written);
  return values?.every((value) => value > 0) ? values : undefined;
}

/** `n;m`: two tooth counts. */
export function readTeeth(text: string, written: Written): readonly [number, number] | undefined {
  const [pinion, wheel, ...more] = numbersOf(text.split(';'), written) ?? [];
  if (pinion === undefined || wheel === undefined || more.length > 0) return undefined;
  return Number.isInteger(pinion) && Number.isInteger(wheel) && pinion > 0 && wheel > 0 ? [pinion, wheel] : undefined;
}

/** `balls/ball_mm/pitch_mm/angle_deg`: the pitch diameter exceeds the ball's, the contact angle is 0 to below 90 degrees. */
export function readBearing(text: string, written: Written): BearingGeometry | undefined {
  const parts = text.split('/');
  const [balls = 0, ballMm = 0, pitchMm = 0, angleDeg = 0] = numbersOf(parts, written) ?? [];
  if (parts.length !== 4 || !Number.isInteger(balls) || balls < 1) return undefined;
  if (ballMm <= 0 || pitchMm <= ballMm || angleDeg < 0 || angleDeg >= 90) return undefined;
  return { balls, ballMm, pitchMm, angleDeg };
}

/** `fraction@hours;…`: steps of a duty, neither part negative. The sum of the hours is not judged here. */
export function readDuty(text: string, written: Written): readonly Step[] | undefined {
  const steps: Step[] = [];
  for (const part of text.split(';')) {
    const [fraction, hoursPerYear, ...more] = numbersOf(part.split('@'), written) ?? [];
    if (fraction === undefined || hoursPerYear === undefined || more.length > 0) return undefined;
    if (fraction < 0 || hoursPerYear < 0) return undefined;
    steps.push({ fraction, hoursPerYear });
  }
  return steps;
}
