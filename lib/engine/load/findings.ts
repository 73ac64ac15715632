import { catalogue, kind } from '../quantity/catalogue';
import { LIVE } from '../quantity/cautions';
import { fixed, oftenWords, rounded, spaced, written } from '../quantity/words';

/** What to look at where a way to the load, by its id, comes to what cannot be. */
const CHECK_WAY: Readonly<Record<string, string>> = {
  'input-power': `Check unit and ratio of the power meter, and the rated power on the plate. ${LIVE}`,
  slip: 'Read the motor’s own shaft with a tachometer to 1 r/min together with the frequency, and the rated speed on the plate. Guards stay on; a strobe makes a turning shaft look still.',
  current: `Read all conductors of each phase together, and on the plate the rated current of the connection in use. ${LIVE}`,
};

/** Findings about one set of readings: what is impossible, contradictory or missing in it. */
export const LOAD = catalogue({
  'power-negative': kind<{ row: number; input_power: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `The input power of ${rounded(e.input_power, 6)} kW in row ${e.row} is not positive; a running motor takes power.`,
    cause:
      'A current transformer sits the wrong way round, voltage and current of different phases were paired, or the load drives the motor (a hoist lowering, a conveyor running downhill).',
    next: `Check direction and phase of each current sensor and read again at the same load. Never open a current-transformer secondary. ${LIVE}`,
  }),
  'power-impossible': kind<{ row: number; input_power: number; rated_input: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `The input power of ${rounded(e.input_power, 6)} kW in row ${e.row} is ${(e.input_power / e.rated_input).toFixed(1)} times the rated input of ${e.rated_input.toFixed(1)} kW.`,
    cause: 'Watts or horsepower were written for kilowatts, the meter’s ratio was wrong, or the plate belongs to another motor.',
    next: `Check unit and ratio of the meter and the plate; read again. ${LIVE}`,
  }),
  'power-above-apparent': kind<{ row: number; input_power: number; apparent_power: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `The input power of ${rounded(e.input_power, 6)} kW in row ${e.row} exceeds the ${e.apparent_power.toFixed(1)} kVA that volts and amperes give.`,
    cause:
      'Voltage to neutral or the current of one conductor of several was read, or the readings were taken at different times.',
    next: `Read line-to-line voltage, line current of all conductors and power together. ${LIVE}`,
  }),
  'power-below-no-load': kind<{ row: number; input_power: number; no_load: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `The input power of ${rounded(e.input_power, 6)} kW in row ${e.row} is below the ${e.no_load.toFixed(2)} kW that the motor would take running free.`,
    cause: 'One current sensor is missing or reversed, the unit is wrong, or the plate belongs to another motor.',
    next: `Check that all three phases are read, and the unit; read again at the usual load. ${LIVE}`,
  }),
  'power-factor-contradicts': kind<{ row: number; read: number; computed: number }>({
    severity: 'warning',
    text: (e) =>
      `The power factor of ${e.read} % in row ${e.row} does not fit power, volts and amperes, which give ${e.computed.toFixed(0)} %.`,
    cause: 'One of the readings is off, or they were taken at different times.',
    next: `Read volts, amperes, power and power factor together. ${LIVE}`,
  }),
  'power-factor-typed-as-fraction': kind<{ row: number; read: number }>({
    severity: 'warning',
    text: (e) => `The power factor ${e.read} % in row ${e.row} looks like a fraction. It was not used.`,
    cause: 'A fraction was typed where per cent is asked for.',
    next: 'Write the power factor in per cent, for instance 78.',
  }),
  'reading-value-impossible': kind<{ row: number; column: string; value: number }>({
    severity: 'warning',
    text: (e) => `${e.column} is ${rounded(e.value, 6)} in row ${e.row}, which is not possible. The value was not used.`,
    cause: 'A sign, the unit or the decimal sign of the entry is wrong, or another figure was written into the column.',
    next: (e) => `Correct ${e.column}, leave it empty if it is not known, or read it again.`,
  }),
  'frequency-not-the-mains': kind<{ row: number; frequency: number; rated_frequency: number }>({
    severity: 'warning',
    text: (e) =>
      `${e.frequency} Hz in row ${e.row} is no mains frequency for a motor of ${e.rated_frequency} Hz. The frequency was not used.`,
    cause: 'Another figure was written for the frequency, or the motor is fed by a drive and the sheet does not say so.',
    next: 'Say in drive_fed whether a drive feeds the motor, and read the frequency again.',
  }),
  'voltage-phase-for-line': kind<{ row: number; voltage: number; rated_voltage: number }>({
    severity: 'warning',
    text: (e) =>
      `${written(Number(e.voltage.toFixed(1)))} V in row ${e.row} is 1/√3 of the rated ${written(e.rated_voltage)} V. The voltage was not used.`,
    cause: 'Voltage to neutral or earth was read for line-to-line voltage.',
    next: `Read between two lines, all three pairs. ${LIVE}`,
  }),
  'voltage-far-from-plate': kind<{ row: number; voltage: number; rated_voltage: number }>({
    severity: 'warning',
    text: (e) =>
      `${written(Number(e.voltage.toFixed(1)))} V in row ${e.row} is more than 20 % away from the rated ${written(e.rated_voltage)} V. The voltage was not used.`,
    cause: 'The plate voltage of the other connection was written, or the reading is from another place.',
    next: `Check the connection in use on the plate and read the voltage again. ${LIVE}`,
  }),
  'voltage-assumed': kind<{ row: number; rated_voltage: number }>({
    severity: 'note',
    text: (e) => `No usable voltage in row ${e.row}: the rated ${written(e.rated_voltage)} V was taken, ± 6 %.`,
    cause: 'The voltage was not read.',
    next: `Read the three line-to-line voltages with the next reading. ${LIVE}`,
  }),
  'speed-above-synchronous': kind<{ row: number; speed: number; synchronous_speed: number }>({
    severity: 'warning',
    text: (e) =>
      `${rounded(e.speed, 6)} r/min in row ${e.row} is not below the synchronous ${fixed(e.synchronous_speed, 0)} r/min: no motor under load turns so fast. The speed was not used.`,
    cause: 'The strobe locked on a wrong mark, digits were swapped, the driven speed was read, or the pole count is wrong.',
    next: 'Read the motor’s own shaft with a tachometer to 1 r/min, together with the frequency. Guards stay on; a strobe makes a turning shaft look still.',
  }),
  'speed-not-the-motors': kind<{ row: number; speed: number; synchronous_speed: number }>({
    severity: 'warning',
    text: (e) =>
      `${rounded(e.speed, 6)} r/min in row ${e.row} lies far below the synchronous ${fixed(e.synchronous_speed, 0)} r/min. The speed was not used.`,
    cause: 'The driven shaft behind a belt or gear was read, or digits were swapped.',
    next: 'Read the motor’s own shaft with a tachometer to 1 r/min. Guards stay on; a strobe makes a turning shaft look still.',
  }),
  'current-below-magnetising': kind<{ row: number; current: number; magnetising: number }>({
    severity: 'note',
    text: (e) =>
      `${rounded(e.current, 4)} A in row ${e.row} is not above the magnetising current of about ${e.magnetising.toFixed(1)} A: the current says nothing of the load.`,
    cause: 'The motor runs almost free, one conductor of several was read, or the rated current is that of another voltage.',
    next: `Measure input power instead; read the current of all conductors of a phase together. ${LIVE}`,
  }),
  'current-low-load': kind<{ row: number; ratio: number }>({
    severity: 'note',
    text: (e) =>
      `The plain ratio of amperes in row ${e.row} is ${(e.ratio * 100).toFixed(0)} %; below about half load it overstates the load, so the magnetising current was taken out and the interval is wide.`,
    cause: 'The magnetising current hardly falls with the load.',
    next: `Measure input power. ${LIVE}`,
  }),
  'load-not-told-from-none': kind<{ row: number; load: number; u: number }>({
    severity: 'warning',
    text: (e) =>
      `The load in row ${e.row}, ${(e.load * 100).toFixed(1)} % ± ${(e.u * 196).toFixed(1)} %, cannot be told from none: so reads a motor that runs free.`,
    cause: 'The motor was uncoupled, its belt off, or its machine idling when it was read.',
    next: `See that the machine is driven and at work, and read again. If the motor often idles, ask whether it may be stopped. ${LIVE}`,
  }),
  'load-impossible': kind<{ row: number; method: string; load: number; found: 'yes' | 'no' }>({
    severity: 'warning',
    text: (e) =>
      `By ${spaced(e.method)} ${
        e.found === 'yes'
          ? `the load in row ${e.row} would be ${(e.load * 100).toFixed(0)} % of rating, which no motor carries for long`
          : `no load fits row ${e.row}: at its voltage and frequency the motor of the plate does not carry as much`
      }. This way to the load was not used.`,
    cause: 'A reading or a stamp behind it is wrong.',
    next: (e) => CHECK_WAY[e.method] ?? `Check the readings and the stamps of the motor, and read again. ${LIVE}`,
  }),
  'estimates-disagree': kind<{ row: number; p: number; ways: number; spread: string }>({
    severity: 'warning',
    text: (e) =>
      `${
        e.ways > 1
          ? `The ways to the load in row ${e.row} disagree more than their doubts allow (${e.spread})`
          : `What was read in row ${e.row} and the stamps disagree more than their doubts allow, though ${e.ways === 1 ? `one way alone leads to the load (${e.spread})` : 'no single way leads to the load'}`
      }: were all readings and stamps right, they would do so ${oftenWords(e.p)}. The interval was widened.`,
    cause: 'One reading or stamp is wrong: speed and its stamp most often.',
    next: 'Read speed, volts, amperes and power again within a minute at a steady load; check rated speed and current on the plate.',
  }),
  'not-linear': kind<{ row: number; load: number; u: number }>({
    severity: 'note',
    text: (e) =>
      `The estimate from row ${e.row} bends within its own doubt (load ${(e.load * 100).toFixed(0)} % ± ${(e.u * 196).toFixed(0)} points): its 95 % limits are uneven, and hold to about a tenth of their width.`,
    cause: 'What was read hardly changes with the load there: amperes below half load most often.',
    next: `Measure input power; until then the explanation of the figure gives limits from 10,000 draws. ${LIVE}`,
  }),
  'drive-without-frequency': kind<{ row: number }>({
    severity: 'warning',
    text: (e) =>
      `The motor is fed by a drive and row ${e.row} has no output frequency: slip and current say nothing, only input power counts, and the rated losses are not those of the drive’s supply.`,
    cause: 'The drive’s output frequency was not read.',
    next: 'Read output frequency and output power on the drive’s display. After switch-off wait for the DC bus before touching anything.',
  }),
  'drive-fed-losses': kind<{ row: number }>({
    severity: 'note',
    text: (e) =>
      `The motor is fed by a drive: the extra losses of its waveform in row ${e.row} are taken from a published range, not measured.`,
    cause: 'A drive’s output is not a sine.',
    next: `Compare with a reading across the line at the same load, if the drive has a bypass. ${LIVE}`,
  }),
  'uncoupled-reading': kind<{ row: number }>({
    severity: 'note',
    text: (e) => `Row ${e.row} was read uncoupled: it says nothing of the load.`,
    cause: 'The reading belongs to a no-load test.',
    next: `Enter it in the no-load columns; read again coupled at the usual load. ${LIVE}`,
  }),
  'reading-without-load': kind<{ row: number; missing: string }>({
    severity: 'note',
    text: (e) => `Row ${e.row} holds nothing from which a load follows (${e.missing}).`,
    cause: 'Only condition readings were taken, or the load readings could not be used.',
    next: `Read input power, the three voltages and currents, and the speed. ${LIVE}`,
  }),
});
