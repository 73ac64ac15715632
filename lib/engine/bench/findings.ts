import { catalogue, kind } from '../quantity/catalogue';
import { UNCOUPLED } from '../quantity/cautions';
import { rounded } from '../quantity/words';

const LIVE = 'Qualified persons only; shock and arc-flash boundaries respected, guards on, local codes first.';

const n = (value: number, digits = 4) => rounded(value, digits);

/** Findings about a bench test: what is missing, what contradicts, and where a standard's limit is not met. */
export const BENCH = catalogue({
  'bench-reading-missing': kind<{ row: number; section: string; columns: string }>({
    severity: 'warning',
    text: (e) => `Row ${e.row} (${e.section}) lacks ${e.columns} and is left out.`,
    cause: 'A cell is empty, or its column name is not known.',
    next: 'Fill in the cell, or delete the row.',
  }),
  'bench-reading-impossible': kind<{ row: number; section: string; column: string; value: number }>({
    severity: 'warning',
    text: (e) => `${e.column} in row ${e.row} (${e.section}) is ${n(e.value)}, which cannot be; the row is left out.`,
    cause: 'A sign, a unit or a transducer’s direction is wrong.',
    next: `Check the entry against the log of the test, and measure the point again. ${LIVE}`,
  }),
  'bench-value-doubtful': kind<{ row: number; section: string; column: string; value: number; low: number; high: number }>({
    severity: 'warning',
    text: (e) =>
      `${e.column} in row ${e.row} (${e.section}) is ${n(e.value)}; ${n(e.low, 3)} to ${n(e.high, 3)} is usual for this motor (own judgement).`,
    cause: 'A slip of the pen, another unit, a value of one phase, or the plate of another motor or connection.',
    next: 'Compare the entry with the log of the test, and the plate with the motor.',
  }),
  'bench-power-above-volt-amperes': kind<{ row: number; section: string; column: string; power: number; apparent: number }>({
    severity: 'warning',
    text: (e) =>
      `In row ${e.row} (${e.section}) the power of ${n(e.power)} kW is more than the ${n(e.apparent)} kVA of voltage and current, which cannot be.`,
    cause: 'Voltage or current of one phase where the line is meant, or a ratio of one meter is wrong.',
    next: 'Write line-to-line voltage, line current and the power of all three phases.',
  }),
  'bench-temperatures-disagree': kind<{ row: number; section: string; column: string; noted: number; by_resistance: number }>({
    severity: 'warning',
    text: (e) =>
      `In row ${e.row} (${e.section}) the winding is noted at ${n(e.noted, 3)} °C, and its resistance says ${n(e.by_resistance, 3)} °C.`,
    cause: 'The resistance is of other terminals or was read late, or the sensor is not in the winding.',
    next: 'Compare with the log; measure both again where they belong together. Isolate, lock out and prove dead first.',
  }),
  'cold-resistance-missing': kind<Record<string, never>>({
    severity: 'disqualifies',
    text: () => 'There is no winding resistance with its temperature, so no loss of the stator can be told.',
    cause: 'The sections cold and rated-load are empty.',
    next: 'Measure the resistance between terminals on the cold, isolated motor, with its temperature. Isolate, lock out and prove dead first.',
  }),
  'load-points-too-few': kind<{ points: number; least: number }>({
    severity: 'disqualifies',
    text: (e) => `There are ${e.points} usable load points; the method asks for ${e.least}.`,
    cause: 'Points were not measured, or their rows are incomplete.',
    next: `Measure at about equal steps from the highest load down to 25 %. ${LIVE}`,
  }),
  'load-range-short': kind<{ highest_pct: number; wanted_pct: number }>({
    severity: 'warning',
    text: (e) =>
      `The load points reach ${n(e.highest_pct, 3)} % of rated output; the method begins at about ${n(e.wanted_pct, 3)} %.`,
    cause: 'The dynamometer or the supply did not allow more, or the rating is not the one on the plate.',
    next: 'Add a point near the upper end if the motor may carry it for the short time of a reading.',
  }),
  'load-not-tested': kind<{ load_pct: number }>({
    severity: 'note',
    text: (e) => `No figures are given at ${n(e.load_pct, 3)} % load: the test does not come near it.`,
    cause: 'The nearest load point is too far away to lead the curve there.',
    next: 'Measure a point there if the figure is needed.',
  }),
  'no-load-points-too-few': kind<{ points: number; least: number }>({
    severity: 'disqualifies',
    text: (e) => `There are ${e.points} usable no-load points; separating core loss from friction asks for ${e.least}.`,
    cause: 'The uncoupled run was made at too few voltages.',
    next: `Run uncoupled from above rated voltage down to about a quarter of it. ${UNCOUPLED}`,
  }),
  'no-load-voltages-equal': kind<{ voltages: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `The no-load points stand at ${e.voltages === 1 ? 'one voltage' : `${e.voltages} voltages`} only, so core loss cannot be told from friction and windage.`,
    cause: 'The voltage was not varied, or the same row was entered several times.',
    next: `Vary the voltage by a transformer between the highest and the lowest voltage of the standard. ${UNCOUPLED}`,
  }),
  'no-load-without-low-points': kind<{ lowest_pct: number; limit_pct: number; used: number }>({
    severity: 'warning',
    text: (e) =>
      `Fewer than three no-load points lie at or below ${n(e.limit_pct, 3)} % of rated voltage (the lowest is at ${n(e.lowest_pct, 3)} %); friction and windage are extrapolated from the ${e.used} lowest.`,
    cause: 'The uncoupled run was not taken far enough down.',
    next: `Add points between 60 and 20 % of rated voltage. ${UNCOUPLED}`,
  }),
  'no-load-range-short': kind<{ highest_pct: number; wanted_pct: number }>({
    severity: 'warning',
    text: (e) =>
      `The no-load points begin at ${n(e.highest_pct, 3)} % of rated voltage; the method asks for ${n(e.wanted_pct, 3)} %.`,
    cause: 'The supply did not give more, or the rated voltage is not the one of this connection.',
    next: 'Check the rated voltage of the connection in use; add a point above it.',
  }),
  'no-load-far-from-rated': kind<{ nearest_pct: number }>({
    severity: 'disqualifies',
    text: (e) => `The no-load point nearest to rated voltage lies at ${n(e.nearest_pct, 3)} % of it, too far for the core loss.`,
    cause: 'The uncoupled run was made at another voltage, or the rated voltage is that of another connection.',
    next: `Run uncoupled at rated voltage, and check the connection against the plate. ${UNCOUPLED}`,
  }),
  'low-voltage-points-left-out': kind<{ rows: string; voltage: number }>({
    severity: 'note',
    text: (e) =>
      `No-load points below ${n(e.voltage)} V (rows ${e.rows}) are left out: the current rises again there, as the slip grows.`,
    cause: 'At very low voltage the motor needs slip to carry its own friction.',
    next: 'Nothing: this is as the standards have it.',
  }),
  'constant-loss-negative': kind<{ row: number; loss: number }>({
    severity: 'disqualifies',
    text: (e) => `In row ${e.row} the no-load power less the stator loss is ${n(e.loss)} kW: a loss cannot be negative.`,
    cause:
      'The power is that of one wattmeter of two, the resistance is that of another connection, or a current ratio is wrong.',
    next: 'Check ratios and connections; at low power factor one of two wattmeters reads negative and must be subtracted.',
  }),
  'friction-negative': kind<{ loss: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `Extrapolated to zero voltage the no-load line gives ${n(e.loss)} kW of friction and windage: a loss cannot be negative.`,
    cause: 'The low-voltage points are in error, or the supply was distorted.',
    next: 'Repeat the low-voltage points with a wattmeter made for low power factor.',
  }),
  'core-negative': kind<{ loss: number }>({
    severity: 'disqualifies',
    text: (e) => `At rated voltage the no-load run leaves ${n(e.loss)} kW of core loss: a loss cannot be negative.`,
    cause: 'The high-voltage points are in error, or their voltages are not those of the line.',
    next: 'Check the voltages and the power of the points near rated voltage.',
  }),
  'winding-temperature-assumed': kind<{ rows: string; section: string; temperature: number }>({
    severity: 'warning',
    text: (e) =>
      `Neither resistance nor winding temperature stands in ${e.section} (rows ${e.rows}); ${n(e.temperature, 3)} °C is taken, with 10 K of doubt.`,
    cause: 'The columns winding_temp_c and resistance_ohm are empty in these rows.',
    next: 'Note the winding temperature, or the resistance right after each point.',
  }),
  'specified-temperature-assumed': kind<{ temperature: number; rise_class: string }>({
    severity: 'warning',
    text: (e) =>
      `There is no rated-load temperature test; losses are brought to ${n(e.temperature, 3)} °C, the temperature that goes with ${e.rise_class}.`,
    cause: 'The section rated-load is empty or has no temperature.',
    next: 'Run at rated load until the temperature is steady, and measure the resistance at once after switching off.',
  }),
  'ambient-assumed': kind<{ temperature: number }>({
    severity: 'note',
    text: (e) => `No temperature of the cooling air stands with the load test; ${n(e.temperature, 3)} °C is taken.`,
    cause: 'The column ambient_c is empty in the sections rated-load and load.',
    next: 'Note the temperature of the air at its inlet.',
  }),
  'poles-unknown': kind<Record<string, never>>({
    severity: 'disqualifies',
    text: () => 'The number of poles is not known, and the speeds do not tell it.',
    cause: 'Neither poles nor a speed near a synchronous one is given.',
    next: 'State the number of poles.',
  }),
  'bench-speed-above-synchronous': kind<{ row: number; speed: number; synchronous: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `The speed of ${n(e.speed, 5)} r/min in row ${e.row} is not below the synchronous speed of ${n(e.synchronous, 5)} r/min: a loaded motor slips.`,
    cause: 'The number of poles or the frequency is wrong, or the speed is rounded too coarsely.',
    next: 'Measure speed and frequency together, to 1 r/min or better.',
  }),
  'torque-missing': kind<Record<string, never>>({
    severity: 'disqualifies',
    text: () => 'The load points have no torque, which this method needs.',
    cause: 'The test was made without a dynamometer, or the column torque_nm is empty.',
    next: 'Work the test out by a method that measures the input alone (ieee-112-e1 or iec-2-1-1c).',
  }),
  'output-exceeds-input': kind<{ row: number; shaft_power: number; input_power: number }>({
    severity: 'disqualifies',
    text: (e) => `In row ${e.row} the shaft gives ${n(e.shaft_power)} kW for ${n(e.input_power)} kW taken: more than goes in.`,
    cause: 'Torque or power is in another unit, or a ratio is wrong.',
    next: 'Check units and ratios: N·m and kW are wanted.',
  }),
  'dynamometer-not-corrected': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'The torque is taken as shown: the sheet holds no run from which the dynamometer’s own loss follows.',
    cause: 'The section dynamometer is empty; with a torque transducer on the shaft none is needed.',
    next: 'With a dynamometer that reads at its frame, run coupled at its lowest torque and uncoupled, and add both rows.',
  }),
  'stray-point-discarded': kind<{ row: number; before: number; after: number }>({
    severity: 'note',
    text: (e) =>
      `Row ${e.row} is left out of the stray-load line: with it the correlation is ${n(e.before, 3)}, without it ${n(e.after, 3)}.`,
    cause: 'A gross error of torque or power at that point.',
    next: 'Nothing if the limit is met; else repeat the load test.',
  }),
  'correlation-below-limit': kind<{ correlation: number; limit: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `The stray-load line has a correlation of ${n(e.correlation, 3)}, below the ${e.limit} that the method asks for, also without its worst point.`,
    cause: 'Torque or power scatter too much, or the temperature was not steady.',
    next: 'Check torque calibration, alignment and steadiness of the supply, and repeat the load test.',
  }),
  'stray-slope-not-positive': kind<{ slope: number }>({
    severity: 'disqualifies',
    text: (e) => `The stray-load line falls with torque (slope ${n(e.slope)} W/(N·m)²): stray-load loss grows with load.`,
    cause: 'Torque reads too high, power too low, or the rotor loss too large by a wrong speed.',
    next: 'Check calibration of torque and power and the speed reading, and repeat the load test.',
  }),
  'stray-intercept-large': kind<{ intercept: number; stray: number }>({
    severity: 'warning',
    text: (e) =>
      `The stray-load line meets zero torque at ${n(e.intercept)} W, more than half of the ${n(e.stray)} W at rated load (common practice).`,
    cause: 'A constant error of torque, power or the no-load loss.',
    next: 'Check the zero of the torque meter and the correction of the dynamometer.',
  }),
  'stray-loss-assumed': kind<{ stray_pct: number; words: string }>({
    severity: 'note',
    text: (e) =>
      `Stray-load loss is not measured but assumed: ${n(e.stray_pct, 3)} % of rated ${e.words}. It is taken to lie anywhere between none and twice that.`,
    cause: 'The method prescribes it; modern motors have mostly less.',
    next: 'A dynamometer test (ieee-112-b or iec-2-1-1b) measures it.',
  }),
  'reverse-rotation-missing': kind<{ points: number; least: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `Stray-load loss by reverse rotation asks for ${e.least} points with the rotor out and ${e.least} driven backwards; ${e.points} pairs are there.`,
    cause: 'The sections rotor-removed and reverse-rotation are empty or incomplete.',
    next: 'Use the method with assumed stray-load loss (ieee-112-e1 or ieee-112-f1), or make both runs at three or more currents, with one row of torque and speed and no current.',
  }),
  'reverse-rotation-negative': kind<{ row: number; section: string; loss: number }>({
    severity: 'disqualifies',
    text: (e) => `In row ${e.row} (${e.section}) the stray-load loss comes out as ${n(e.loss)} W: a loss cannot be negative.`,
    cause: 'The resistance is that of another temperature or connection, or the torque with current is less than without.',
    next: 'Check winding temperature and the zero of the torque meter, and take the point again. Guards on: the rotor is driven.',
  }),
  'reverse-rotation-exponent': kind<{ part: string; exponent: number }>({
    severity: 'warning',
    text: (e) =>
      `The part of stray-load loss ${e.part} goes with the current to the power of ${n(e.exponent, 3)}; it should be near 2 (half a unit of room: own judgement).`,
    cause: 'A point of the test is in error, or the winding warmed from point to point without its temperature being noted.',
    next: 'Look for the point that lies off the others; note resistance or temperature with each.',
  }),
  'locked-rotor-missing': kind<Record<string, never>>({
    severity: 'disqualifies',
    text: () => 'The circuit cannot be found: there is no usable point of the section locked-rotor.',
    cause: 'The locked-rotor test was not made, or its row lacks voltage, current, power or frequency.',
    next: `Lock the shaft safely and measure at reduced voltage, best at a quarter of rated frequency and rated current. ${LIVE}`,
  }),
  'locked-rotor-frequency': kind<{ frequency: number; wanted: number }>({
    severity: 'warning',
    text: (e) =>
      `The locked-rotor point was taken at ${n(e.frequency, 3)} Hz; at more than ${n(e.wanted, 3)} Hz the bars’ skin effect makes the running rotor resistance look too large.`,
    cause: 'No supply of low frequency was at hand.',
    next: 'Repeat at about a quarter of rated frequency, or use a load point.',
  }),
  'load-beyond-breakdown': kind<{ load_pct: number }>({
    severity: 'note',
    text: (e) => `By the circuit found the motor cannot carry ${n(e.load_pct, 3)} % load, so no figures are given there.`,
    cause: 'The leakage found from the locked-rotor test is large, or the motor really breaks down below that load.',
    next: 'Check voltage and current of the locked-rotor point against the log.',
  }),
  'circuit-not-found': kind<{ reason: string }>({
    severity: 'disqualifies',
    text: (e) => `No circuit fits the tests: ${e.reason}.`,
    cause: 'No-load and locked-rotor tests contradict each other, or a reading is per phase where the line is meant.',
    next: 'Check that voltages are line to line, currents of the line, powers of all three phases.',
  }),
  'efficiency-off-plate': kind<{ efficiency_pct: number; nominal_pct: number; expanded_pct: number }>({
    severity: 'warning',
    text: (e) =>
      `At rated load the test gives ${n(e.efficiency_pct)} ± ${n(e.expanded_pct, 2)} %, the plate ${n(e.nominal_pct)} %: further apart than the test’s doubt.`,
    cause:
      'The stamp is a nominal value of many motors; this one is another, was rewound, or the test was made by another method.',
    next: 'Keep both; the test speaks for this motor, the stamp for its kind.',
  }),
  'speed-off-plate': kind<{ speed: number; stamped: number }>({
    severity: 'warning',
    text: (e) =>
      `At rated load the test gives ${n(e.speed, 5)} r/min, the plate ${n(e.stamped, 5)} r/min: the slip differs by more than the 20 % that a stamp may be off.`,
    cause: 'The stamped speed is rounded or of another motor, or the rotor has a broken bar or another winding.',
    next: 'Go by the measured speed; look at the rotor if the slip is larger than stamped.',
  }),
  'current-off-plate': kind<{ current: number; stamped: number }>({
    severity: 'warning',
    text: (e) => `At rated load the test gives ${n(e.current)} A, the plate ${n(e.stamped)} A: more than 10 % apart.`,
    cause: 'The plate’s current is that of another connection, or the motor was rewound otherwise.',
    next: 'Check the connection in use against the plate, and the current ratios of the bench.',
  }),
  'resistance-off-book': kind<{ resistance: number; known: number; temperature: number }>({
    severity: 'warning',
    text: (e) =>
      `Brought to ${n(e.temperature, 3)} °C the test’s resistance is ${n(e.resistance)} Ω, the one in the book ${n(e.known)} Ω: more than 5 % apart (common practice).`,
    cause: 'The motor was rewound, the connection is another, or one of the two was measured with its cable.',
    next: 'Measure again at the motor’s terminals with the temperature. Isolate, lock out and prove dead first.',
  }),
});
