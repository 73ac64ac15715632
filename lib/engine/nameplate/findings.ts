import { catalogue, kind } from '../quantity/catalogue';
import { LIVE, UNCOUPLED } from '../quantity/cautions';
import { rounded, written } from '../quantity/words';

/** Findings about the nameplate: what is missing, impossible or contradictory on it. */
export const PLATE = catalogue({
  'efficiency-as-fraction': kind<{ stamped: number }>({
    severity: 'warning',
    text: (e) =>
      `The efficiency ${e.stamped} % is not that of a motor; it looks like a fraction (${(e.stamped * 100).toFixed(1)} %). It was not used.`,
    cause: 'A fraction was typed where per cent is asked for.',
    next: 'Write the stamped nominal efficiency in per cent, for instance 93.6.',
  }),
  'efficiency-impossible': kind<{ stamped: number }>({
    severity: 'warning',
    text: (e) => `An efficiency of ${written(e.stamped)} % cannot be that of a motor of this kind. It was not used.`,
    cause: 'A typing slip, or another figure read from the plate.',
    next: 'Read the nominal efficiency from the plate again.',
  }),
  'class-contradicts-efficiency': kind<{
    stamped: number;
    class: string;
    against: string;
    pct: number;
    table: string;
    ratio: number;
  }>({
    severity: 'warning',
    text: (e) =>
      `The stamped ${e.stamped} % cannot be that of class ${e.class}: ${e.against === e.class ? 'it' : `even the class above it (${e.against})`} has ${e.pct} % at this rating (${e.table}), and the stamp means ${e.ratio.toFixed(2)} times its loss. The stamp was used, with a doubt that reaches half way.`,
    cause: 'Efficiency or class was misread, or one of them is that of another motor.',
    next: 'Read both from the plate again; leave out the one that does not stand on it.',
  }),
  'efficiency-by-old-method': kind<{ stamped: number; points: number; year?: number }>({
    severity: 'note',
    text: (e) =>
      `The stamped ${written(Number(e.stamped.toFixed(2)))} % ${e.year !== undefined && e.year < 2008 ? 'goes' : 'may go'} by the IEC method before 2007, which put stray-load loss at 0.5 % of the input: ${e.points.toFixed(1)} points were taken off.`,
    cause: 'In tests the stray-load loss came out about a point higher than that method allowed, less in large motors.',
    next: 'Write the year of making, or the class IE1 to IE4 if it is stamped: such plates go by the present method.',
  }),
  'efficiency-by-test': kind<{ test: string; tested: number; stamped?: number }>({
    severity: 'note',
    text: (e) =>
      `The bench test “${e.test}” measured ${e.tested.toFixed(2)} % at rated load${e.stamped === undefined ? '' : `; the plate says ${e.stamped} %`}. The test counts.`,
    cause: 'A test of this very motor says more than a stamp or a class.',
    next: 'Nothing. Withdraw the test if it is not of this motor as it is now.',
  }),
  'test-contradicts-plate': kind<{ test: string; tested: number; stamped: number; apart: number }>({
    severity: 'warning',
    text: (e) =>
      `The bench test “${e.test}” measured ${e.tested.toFixed(2)} % at rated load, the plate says ${e.stamped} %: ${e.apart.toFixed(1)} standard uncertainties apart. The test was believed.`,
    cause: 'The motor was rewound or damaged, the plate is of another motor, or the test is.',
    next: 'Check that test and plate are of the same motor, and what was done to it since it was new.',
  }),
  'efficiency-unknown': kind<{ assumed: number; basis: string }>({
    severity: 'note',
    text: (e) => `No efficiency or class is known; ${e.assumed.toFixed(1)} % was taken (${e.basis}).`,
    cause: 'The plate is old or worn, or the column was left empty.',
    next: 'Read the nominal efficiency or the class word from the plate, or find the year of making.',
  }),
  'power-factor-as-fraction': kind<{ stamped: number }>({
    severity: 'warning',
    text: (e) => `The rated power factor ${e.stamped} % looks like a fraction. It was not used.`,
    cause: 'A fraction was typed where per cent is asked for.',
    next: 'Write the stamped power factor in per cent, for instance 85.',
  }),
  'power-factor-impossible': kind<{ stamped: number }>({
    severity: 'warning',
    text: (e) => `A rated power factor of ${written(e.stamped)} % does not fit an induction motor. It was not used.`,
    cause: 'A typing slip, or a leading value on a motor that cannot lead.',
    next: 'Read the power factor from the plate again.',
  }),
  'poles-contradict-speed': kind<{ stated: number; from_speed: number; rated_speed: number }>({
    severity: 'warning',
    text: (e) =>
      `${e.stated} poles do not fit a rated speed of ${written(e.rated_speed)} r/min, which belongs to ${e.from_speed} poles. The speed was believed.`,
    cause: 'The pole count was taken for pole pairs, or the plate of another motor was read.',
    next: 'Count the poles from the plate speed: 2 poles run just below 3,600 (3,000) r/min, 4 poles just below 1,800 (1,500).',
  }),
  'poles-assumed': kind<{ poles: number }>({
    severity: 'warning',
    text: (e) => `Neither poles nor a speed are known; ${e.poles} poles were taken.`,
    cause: 'The speed is missing on the sheet.',
    next: 'Read the rated speed from the plate.',
  }),
  'rated-speed-impossible': kind<{ rated_speed: number; synchronous_speed: number }>({
    severity: 'warning',
    text: (e) =>
      `A rated speed of ${written(e.rated_speed)} r/min is not below the synchronous ${written(e.synchronous_speed)} r/min by a rated slip. It was not used.`,
    cause: 'The synchronous speed was written for the rated one, or the frequency is wrong.',
    next: 'Read the full-load speed from the plate; check the rated frequency.',
  }),
  'slip-contradicts-efficiency': kind<{ rotor_share: number; rated_speed: number }>({
    severity: 'warning',
    text: (e) =>
      `The stamped speed of ${written(e.rated_speed)} r/min would put ${(e.rotor_share * 100).toFixed(0)} % of the rated loss into the rotor, which the stamped efficiency does not allow. The speed was not used.`,
    cause:
      'Speed or efficiency were misread, or belong to another motor; or the motor is for another frequency than the sheet says.',
    next: 'Read speed, efficiency and frequency from the plate again; write the frequency into rated_frequency_hz.',
  }),
  'current-of-other-voltage': kind<{ stamped: number; expected: number; ratio: number }>({
    severity: 'warning',
    text: (e) =>
      `The rated current of ${e.stamped} A is ${e.ratio.toFixed(2)} times the ${e.expected.toFixed(1)} A that rating and voltage ask for. It was not used.`,
    cause: 'On a two-voltage plate the current of the other voltage was read.',
    next: 'Read the current that belongs to the connection in use.',
  }),
  'current-contradicts-plate': kind<{ stamped: number; expected: number; ratio: number }>({
    severity: 'warning',
    text: (e) =>
      `The rated current of ${e.stamped} A does not fit rating, efficiency and power factor, which ask for ${e.expected.toFixed(1)} A. It was not used.`,
    cause: 'One of the stamps was misread.',
    next: 'Read rated power, voltage, current, efficiency and power factor from the plate again.',
  }),
  'resistance-contradicts-plate': kind<{ stator_loss: number; rest: number }>({
    severity: 'warning',
    text: (e) =>
      `The measured resistance gives a stator loss of ${e.stator_loss.toFixed(3)} kW, more than the ${e.rest.toFixed(3)} kW that the plate leaves for stator and core. It was not used.`,
    cause:
      'Leads, cable or contacts were measured along, the wrong unit was written, or the motor was rewound with thinner wire.',
    next: 'With the motor locked out and proved dead, measure the three terminal pairs at the motor with a four-wire meter and write down the winding temperature.',
  }),
  'no-load-contradicts-plate': kind<{ no_load_loss: number; rest: number }>({
    severity: 'warning',
    text: (e) =>
      `The uncoupled test gives ${e.no_load_loss.toFixed(3)} kW of core, friction and windage loss, which does not fit the ${e.rest.toFixed(3)} kW left by the plate. It was not used.`,
    cause: 'The motor was not free, the voltage was off, or the plate efficiency does not hold any more.',
    next: `Repeat the uncoupled run at rated voltage; take power with a meter that reads low power factors well. ${UNCOUPLED} ${LIVE}`,
  }),
  'plate-fits-no-machine': kind<Record<string, never>>({
    severity: 'warning',
    text: () => 'The stamps together describe no possible motor; its reactances were taken as typical.',
    cause: 'One of the stamps was misread, or they belong to different connections.',
    next: 'Read rated power, voltage, current, speed, efficiency and power factor from the plate again.',
  }),
  'plate-value-impossible': kind<{ column: string; value: number }>({
    severity: 'warning',
    text: (e) => `${e.column} is ${rounded(e.value, 6)}, which is not possible. The value was not used.`,
    cause: 'A sign, the unit or the decimal sign of the entry is wrong, or another figure was written into the column.',
    next: (e) => `Correct ${e.column}, or leave it empty if it is not known.`,
  }),
  'synchronous-limited': kind<Record<string, never>>({
    severity: 'warning',
    text: () => 'This is a synchronous motor: load comes from input power only, and the loss split is a rough one.',
    cause: 'Slip and magnetising current of a synchronous motor say nothing of its load.',
    next: `Measure input power at the usual load. ${LIVE}`,
  }),
  'wound-rotor-rings': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'This is a wound-rotor motor: the slip method holds only with the rings short-circuited.',
    cause: 'Resistance in the rotor circuit adds slip at the same load.',
    next: 'Note whether the rings were shorted when the speed was read.',
  }),
  'rewound-before': kind<{ rewinds: number; points: number }>({
    severity: 'note',
    text: (e) =>
      `Rewound ${e.rewinds} time${e.rewinds === 1 ? '' : 's'}: the efficiency was taken ${Math.abs(e.points).toFixed(2)} points below the stamp.`,
    cause: 'Published studies find a small loss of efficiency after a rewind, depending on the shop.',
    next: 'Ask for the repair report with core test and winding data.',
  }),
});
