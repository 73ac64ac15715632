import type { Motor, Plate, Reading } from '@/lib/engine';

/** A mistake or a fault planted into one demo motor, and the findings or bands that it must bring out. */
export interface Plant {
  readonly tag: string;
  /** What happened, in words: shown nowhere, kept for whoever reads the demo's truth. */
  readonly story: string;
  readonly change: Change;
}

/** What a plant makes of a motor. */
type Change = (motor: Motor) => Motor;

/** Changes the plate, by what it says where a function is given. */
export const plate =
  (changes: Partial<Plate> | ((own: Plate) => Partial<Plate>)): Change =>
  (motor) => ({ ...motor, plate: { ...motor.plate, ...(typeof changes === 'function' ? changes(motor.plate) : changes) } });

/** Changes the last reading. */
export const latest =
  (change: (reading: Reading, motor: Motor) => Partial<Reading>): Change =>
  (motor) => ({
    ...motor,
    readings: motor.readings.map((reading, index) =>
      index === motor.readings.length - 1 ? { ...reading, ...change(reading, motor) } : reading,
    ),
  });

/** One change after the other. */
export const all =
  (...changes: readonly Change[]): Change =>
  (motor) =>
    changes.reduce((changed, change) => change(changed), motor);
