import { catalogue, kind } from '../quantity/catalogue';
import { LIVE } from '../quantity/cautions';
import { spaced } from '../quantity/words';

/** Findings about how far a motor's readings as a whole may be trusted. */
export const TRUST = catalogue({
  'no-usable-reading': kind<{ readings: number }>({
    severity: 'disqualifies',
    text: (e) =>
      e.readings === 0
        ? 'There is no reading of this motor.'
        : e.readings === 1
          ? 'The one reading of this motor gives no usable load.'
          : `None of the ${e.readings} readings gives a usable load.`,
    cause: 'The motor has not been measured yet, or each reading is missing what a load follows from.',
    next: `At the usual load read input power, the three voltages and currents, and the shaft speed. ${LIVE}`,
  }),
  'not-in-service': kind<{ status: string }>({
    severity: 'disqualifies',
    text: (e) =>
      `The motor ${{ failed: 'has failed', spare: 'is a spare', retired: 'is retired' }[e.status] ?? 'does not run'}, and no reading from before gives a usable load.`,
    cause: 'A motor that does not run carries no load to read.',
    next: 'Take its load from the process, or from the motor that runs in its place; enter it as a duty profile in fractions of rated power.',
  }),
  'latest-reading-unusable': kind<{ row: number; used: number }>({
    severity: 'warning',
    text: (e) => `The latest reading (row ${e.row}) could not be used; the figures are those of row ${e.used}.`,
    cause: 'Something in the latest reading is missing or impossible.',
    next: `Repeat the latest reading. ${LIVE}`,
  }),
  'reading-stale': kind<{ row: number; years: number; limit: number }>({
    severity: 'warning',
    text: (e) => `The reading in row ${e.row} is ${e.years.toFixed(1)} years old; the study asks for at most ${e.limit}.`,
    cause: 'The motor has not been measured for a long time; load and condition may have changed.',
    next: `Read it again at the usual load. ${LIVE}`,
  }),
  'reading-undated': kind<{ row: number }>({
    severity: 'note',
    text: (e) => `The reading in row ${e.row} has no date and counts as the oldest.`,
    cause: 'The date was not written down.',
    next: 'Write the date and time with each reading.',
  }),
  'reading-after-study': kind<{ row: number; taken_at: string; as_of: string }>({
    severity: 'note',
    text: (e) => `The reading in row ${e.row} of ${e.taken_at} is later than the study’s date ${e.as_of}; it was used.`,
    cause: 'The study is dated before the reading, or a date was mistyped.',
    next: 'Check the date of the reading and the study’s date.',
  }),
  'one-way-to-load': kind<{ row: number; method: string }>({
    severity: 'note',
    text: (e) => `The load in row ${e.row} rests on one way alone (${spaced(e.method)}).`,
    cause: 'Nothing else was read, or it could not be used.',
    next: `Read a second quantity at the same time: speed to 1 r/min, or the three currents beside power. ${LIVE}`,
  }),
  'second-way-weak': kind<{ row: number; method: string; u: number }>({
    severity: 'note',
    text: (e) =>
      `In row ${e.row} the ways beside ${spaced(e.method)} are too uncertain (± ${(e.u * 196).toFixed(0)} points) to confirm the load.`,
    cause: 'At low load current says little, and a stamped speed has a tolerance of 20 % of its slip.',
    next: `Read input power and speed together; a second reading at higher load helps if the process owner agrees. ${LIVE}`,
  }),
  overloaded: kind<{ load: number }>({
    severity: 'note',
    text: (e) => `The motor carries ${(e.load * 100).toFixed(0)} % of its rating.`,
    cause: 'The driven machine asks more than the motor is rated for, or the plate belongs to another motor.',
    next: 'Check the duty of the driven machine and the plate; watch the winding temperature.',
  }),
});
