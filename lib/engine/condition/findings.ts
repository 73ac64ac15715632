import { catalogue, kind } from '../quantity/catalogue';
import { DEAD, LIVE } from '../quantity/cautions';
import { NORMAL_FACTOR } from '../quantity/coverage';
import { rounded } from '../quantity/words';

const n = (value: number, digits = 3) => rounded(value, digits);

/** Findings about condition readings: why no verdict could be given, or what weakens one. */
export const CONDITION = catalogue({
  'limit-straddled': kind<{ indicator: string; value: number; limit: number; unit: string; u: number }>({
    severity: 'note',
    text: (e) =>
      `${e.indicator}: ${n(e.value)} ± ${n(NORMAL_FACTOR * e.u, 2)} ${e.unit} straddles the limit of ${n(e.limit)} ${e.unit}, so the verdict is open.`,
    cause: 'The reading is not sure enough for a value so near the limit.',
    next: 'Repeat the reading at the same load with a better meter, or trend it.',
  }),
  'voltage-unbalance-high': kind<{ unbalance: number }>({
    severity: 'warning',
    text: (e) => `The voltage unbalance of ${n(e.unbalance)} % is above 5 %, at which a motor should not be run.`,
    cause: 'An open or loose supply phase, or single-phase loads on one phase.',
    next: `Find the unbalance from the motor back to the transformer; do not leave the motor running on it. ${LIVE}`,
  }),
  'voltage-unbalance-derates': kind<{ unbalance: number; rise_pct: number; life_pct: number; load_pct: number }>({
    severity: 'note',
    text: (e) =>
      `At rated load the voltage unbalance of ${n(e.unbalance)} % adds ${n(e.rise_pct, 2)} % to the rise of the winding and leaves about ${n(e.life_pct, 2)} % of the insulation’s life; the load should stay below ${n(e.load_pct, 2)} % of rating.`,
    cause: 'Single-phase loads on one phase, unequal taps or cables, or a weak joint upstream.',
    next: `Read the three voltages at the motor, the panel and the transformer at the same load, and shift single-phase loads. ${LIVE}`,
  }),
  'supply-behind-drive': kind<{ reading: string }>({
    severity: 'note',
    text: (e) => `The ${e.reading} has no verdict: a drive stands between this reading and the mains or the motor.`,
    cause: 'A drive makes its own voltage, and draws its current as a rectifier does.',
    next: `Read at the drive’s output with a meter made for it, or judge the drive’s input by the drive’s own manual. The drive holds charge after switch-off: wait the marked time. ${LIVE}`,
  }),
  'distortion-bounds-hvf': kind<{ distortion: number; bound: number; free: number }>({
    severity: 'note',
    text: (e) =>
      e.bound <= e.free
        ? `A distortion of ${n(e.distortion)} % bounds the harmonic voltage factor at ${n(e.bound, 2)}, which needs no derating.`
        : `A distortion of ${n(e.distortion)} % bounds the harmonic voltage factor at ${n(e.bound, 2)} only, above the ${n(e.free)} that need no derating: no derating can be said from it.`,
    cause: 'Total distortion does not say which harmonics it holds; low orders weigh more.',
    next: `Read the 5th, 7th, 11th and 13th harmonic of the voltage one by one. ${LIVE}`,
  }),
  'belt-slip-impossible': kind<{ slip: number }>({
    severity: 'note',
    text: (e) => `The driven shaft turns ${n(-e.slip, 2)} % faster than a belt without slip would drive it: no verdict.`,
    cause: 'The speed ratio or a sheave diameter is wrong, or one of the two speeds was misread or read at another load.',
    next: 'Read both speeds together, and check the sheaves at standstill, locked out. Guards stay on while it turns; under a stroboscope a turning shaft looks still.',
  }),
  'starts-outside-table': kind<{ rated_power: number; poles: number }>({
    severity: 'note',
    text: (e) => `The table of permitted starts holds no ${e.poles}-pole motor of ${n(e.rated_power)} kW: no verdict.`,
    cause: 'The table covers 1 to 250 hp at two, four and six poles.',
    next: 'Ask the maker how many starts an hour are permitted with this load.',
  }),
  'sideband-not-unique': kind<{ lines: string; resolution: number }>({
    severity: 'warning',
    text: (e) =>
      `At a resolution of ${n(e.resolution, 2)} Hz the pole-pass sidebands cannot be told from ${e.lines}, so the verdict goes no further than near.`,
    cause: 'Another part of the drive train makes a line at nearly the same frequency.',
    next: `Read again at another load or with a longer record: the list of spectral lines says which. ${LIVE}`,
  }),
  'current-unbalance-unexplained': kind<{ current: number; voltage: number }>({
    severity: 'warning',
    text: (e) => `The current unbalance of ${n(e.current)} % is more than the voltage unbalance of ${n(e.voltage)} % explains.`,
    cause: 'A joint, contact or winding with too much resistance, or a current sensor that is off.',
    next: `Swap the three sensors and read again; then rotate the leads by one to learn whether the unbalance stays with the line or the motor. ${LIVE}`,
  }),
  'current-unbalance-without-voltage': kind<Record<string, never>>({
    severity: 'note',
    text: () =>
      'The current unbalance is not judged: the three voltages were not read, and voltage unbalance shows up many times larger in the current.',
    cause: 'Only currents were read.',
    next: `Read the three line-to-line voltages together with the currents. ${LIVE}`,
  }),
  'current-unbalance-low-load': kind<{ load: number }>({
    severity: 'note',
    text: (e) =>
      `The current unbalance was read at ${n(100 * e.load, 2)} % load, where it looks larger than at full load: no verdict.`,
    cause: 'The magnetising current carries the unbalance; as load falls its share grows.',
    next: `Read at 50 % load or more, if the process owner agrees. ${LIVE}`,
  }),
  'resistance-at-starter': kind<Record<string, never>>({
    severity: 'note',
    text: () =>
      'The resistances were measured from the starter: cable and joints are in them, so the wider limit of the whole circuit serves.',
    cause: 'The motor’s terminals were not opened.',
    next: `If it is near the limit, measure again at the motor’s terminals. ${DEAD}`,
  }),
  'resistance-place-unknown': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'It is not said whether the resistances were measured at the motor or at the starter: no verdict.',
    cause: 'The column resistance_at is empty.',
    next: 'Write where the meter was connected; limits differ.',
  }),
  'insulation-without-temperature': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'The insulation resistance has no winding temperature, so it cannot be brought to 40 °C: no verdict.',
    cause: 'The temperature was not written down.',
    next: `Note the winding temperature with the next test. ${DEAD}`,
  }),
  'insulation-system-unknown': kind<{ resistance: number }>({
    severity: 'note',
    text: (e) =>
      `The insulation resistance of ${n(e.resistance)} MΩ cannot be brought to 40 °C, since it is not known whether the winding is thermoplastic or thermosetting: no verdict.`,
    cause: 'Year of winding and insulation system are empty, or the winding is older than 1970.',
    next: 'Find the year of the last rewind, or ask the shop that wound it.',
  }),
  'insulation-outside-range': kind<{ temperature: number }>({
    severity: 'note',
    text: (e) => `At ${n(e.temperature)} °C the published correction to 40 °C does not hold (10 to 85 °C): no verdict.`,
    cause: 'The winding was too cold or too hot; below the dew point moisture rules the reading.',
    next: `Test again with the winding between 10 and 85 °C and above the dew point. ${DEAD}`,
  }),
  'insulation-below-minimum': kind<{ resistance: number; minimum: number }>({
    severity: 'warning',
    text: (e) =>
      `The insulation resistance at 40 °C of ${n(e.resistance)} MΩ is below the minimum of ${n(e.minimum)} MΩ: the motor must not be started.`,
    cause: 'Moisture, dirt, or damaged insulation.',
    next: `Keep it locked out; clean, dry and test again; rewind if it stays low. ${DEAD}`,
  }),
  'polarization-random-wound': kind<{ index: number }>({
    severity: 'note',
    text: (e) =>
      `The polarization index of ${n(e.index)} is not judged: on small random-wound machines the absorption current is gone in seconds.`,
    cause: 'The index was made for form-wound windings.',
    next: 'Nothing: go by the insulation resistance and its trend.',
  }),
  'polarization-not-meaningful': kind<{ resistance: number }>({
    severity: 'note',
    text: (e) =>
      `The polarization index is set aside: the one-minute resistance at 40 °C of ${n(e.resistance)} MΩ is above 5,000 MΩ, where currents are too small to measure well.`,
    cause: 'Very good insulation.',
    next: 'Nothing: go by the insulation resistance.',
  }),
  'polarization-class-unknown': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'The polarization index has no verdict: the insulation class is not known, and the minimum depends on it.',
    cause: 'The column insulation_class is empty.',
    next: 'Read the insulation class from the plate.',
  }),
  'vibration-foundation-unknown': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'The vibration has no service zone: it is not known whether the foundation is rigid or flexible.',
    cause: 'The column foundation is empty.',
    next: 'Write rigid or flexible: rigid where the lowest natural frequency lies at least a quarter above the main exciting one.',
  }),
  'vibration-outside-standard': kind<{ rated_power: number }>({
    severity: 'note',
    text: (e) =>
      `The vibration has no service zone: a motor of ${n(e.rated_power)} kW is not above the 15 kW at which ISO 20816-3 begins.`,
    cause: 'Small machines are outside the standard.',
    next: 'Trend the reading, or compare it with sister motors.',
  }),
  'vibration-zone-c': kind<{ vibration: number; zone_bc: number }>({
    severity: 'note',
    text: (e) => `At ${n(e.vibration)} mm/s the motor is above zone B (${n(e.zone_bc)} mm/s): fit for a limited time only.`,
    cause: 'Unbalance, misalignment, looseness or a bearing.',
    next: 'Plan a look within weeks; take a spectrum of the vibration at both bearings, at the usual load. Guards stay on.',
  }),
  'signature-under-loaded': kind<{ reading: string; load: number; least: number }>({
    severity: 'warning',
    text: (e) =>
      `The ${e.reading} was read at ${n(100 * e.load, 2)} % load; below ${n(100 * e.least, 2)} % it says nothing, neither good nor bad.`,
    cause: 'At light load the lines crowd the line frequency and shrink (common practice: 50 % at least, 75 % preferred).',
    next: `Read the signature again at 75 % load or more, if the process owner agrees; never raise the load for a reading alone. ${LIVE}`,
  }),
  'signature-load-unknown': kind<{ reading: string }>({
    severity: 'note',
    text: (e) => `The ${e.reading} has no verdict: the load at which it was read is not known.`,
    cause: 'No power, current or speed was read with it.',
    next: `Read it again together with input power, at 75 % load or more. ${LIVE}`,
  }),
  'signature-half-weight': kind<{ reading: string; load: number; least: number; full: number }>({
    severity: 'note',
    text: (e) =>
      `The ${e.reading} was read at ${n(100 * e.load, 2)} % load: between ${n(100 * e.least, 2)} and ${n(100 * e.full, 2)} % it counts half, and the indicator is provisional.`,
    cause: 'The lines are small at part load (common practice).',
    next: `Confirm at 75 % load or more, if the process owner agrees. ${LIVE}`,
  }),
  'sideband-one-side': kind<Record<string, never>>({
    severity: 'note',
    text: () =>
      'Only one sideband was read: speed ripple lowers one and raises the other, so the verdict goes no further than near.',
    cause: 'The other sideband was hidden or not noted.',
    next: `Note both sidebands with the next spectrum, at 75 % load or more: their mean counts. ${LIVE}`,
  }),
  'bars-unknown': kind<Record<string, never>>({
    severity: 'note',
    text: () =>
      'The rotor’s bar count is not known: how many bars may be broken cannot be told, and general levels serve instead.',
    cause: 'The column rotor_bars is empty.',
    next: 'Ask the maker, or count the bars when the motor is open.',
  }),
  'bars-estimated': kind<{ bars: number }>({
    severity: 'note',
    text: (e) =>
      `The count of ${e.bars} rotor bars is an estimate: a nearly right count points at the wrong fault, so the verdict goes no further than near.`,
    cause: 'The count was not taken from the maker or by counting.',
    next: 'Ask the maker for the bar count.',
  }),
  'eccentricity-trend-only': kind<{ level: number }>({
    severity: 'note',
    text: (e) =>
      `The eccentricity sideband, ${n(e.level)} dB below the line, has no published limit, and no earlier reading to compare with: trend it.`,
    cause: 'Levels differ by motor design.',
    next: `Read it again at the same load in the next round. ${LIVE}`,
  }),
  'temperature-surface': kind<{ temperature: number }>({
    severity: 'note',
    text: (e) => `${n(e.temperature)} °C on the surface never judges the winding’s class.`,
    cause: 'The frame is far cooler than the winding, by an amount that nobody knows.',
    next: `Read an embedded detector at the usual load, or the resistance right after stopping. ${DEAD}`,
  }),
  'temperature-class-unknown': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'The winding temperature has no verdict: the insulation class, or how the temperature was read, is not known.',
    cause: 'The columns insulation_class or winding_temp_method are empty.',
    next: 'Read the insulation class from the plate, and note the method.',
  }),
});

/** Findings of a breach that bears on safety: such a motor is not started before it is mended. */
export const BEARS_ON_SAFETY: ReadonlySet<string> = new Set(['insulation-below-minimum']);
