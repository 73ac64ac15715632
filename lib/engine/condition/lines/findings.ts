import { catalogue, kind } from '../../quantity/catalogue';
import { NORMAL_FACTOR } from '../../quantity/coverage';
import { rounded } from '../../quantity/words';

const n = (value: number, digits = 3) => rounded(value, digits);

/** What weakens a table of expected lines. */
export const LINES = catalogue({
  'lines-speed-estimated': kind<{ speed: number; u: number }>({
    severity: 'warning',
    text: (e) =>
      `The shaft speed was not read; ${n(e.speed, 5)} ± ${n(NORMAL_FACTOR * e.u, 2)} r/min is estimated from the load, which places lines far too coarsely for most purposes.`,
    cause: 'The column shaft_speed_rpm is empty, or its value cannot be the motor’s.',
    next: 'Read the speed to 1 r/min with the spectrum, at the same load. Guards stay on; under a stroboscope a turning shaft looks still.',
  }),
  'lines-resolution-assumed': kind<{ resolution: number }>({
    severity: 'note',
    text: (e) =>
      `The spectrum’s resolution is not known; ${n(e.resolution, 2)} Hz is assumed, the coarsest at which pole-pass sidebands can be read at all.`,
    cause: 'The column spectrum_resolution_hz is empty.',
    next: 'Write the resolution with the spectrum: one over the length of its record in seconds.',
  }),
  'lines-resolution-coarse': kind<{ resolution: number; needed: number; record: number }>({
    severity: 'warning',
    text: (e) =>
      `At ${n(e.resolution, 2)} Hz the pole-pass sidebands cannot be parted from the supply line: ${n(e.needed, 2)} Hz is needed, a record of ${n(e.record, 2)} s or more.`,
    cause: 'The record is too short for this slip.',
    next: 'Take a longer record at steady load, or read at more load, where the slip is larger.',
  }),
  'lines-bars-not-counted': kind<{ bars: number }>({
    severity: 'warning',
    text: (e) => `The count of ${e.bars} rotor bars is not known for certain: lines that rest on it may belong to another count.`,
    cause: 'The count was not taken from the maker or by counting.',
    next: 'Ask the maker, or count the bars when the motor is open.',
  }),
});
