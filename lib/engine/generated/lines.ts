// Written by scripts/generate.ts from lines.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const bearing_cage = {
  id: "lines.bearing_cage",
  title: "Turns of the bearing’s cage for each turn",
  unit: "1",
  symbol: "b_c",
  inputs: {"ball":{"unit":"mm","symbol":"d","meaning":"diameter of a rolling element"},"pitch":{"unit":"mm","symbol":"D","meaning":"pitch diameter"},"cosine":{"unit":"1","symbol":"\\cos\\alpha","meaning":"cosine of the contact angle"}},
  names: ["ball","pitch","cosine"],
  f: (ball: number, pitch: number, cosine: number) => (1 - ball / pitch * cosine) / 2,
  d: [
    (_ball: number, pitch: number, cosine: number) => cosine * -1 / 2 / pitch,
    (ball: number, pitch: number, cosine: number) => cosine * ball / 2 / (pitch * pitch),
    (ball: number, pitch: number) => ball * -1 / 2 / pitch,
  ],
  tex: "\\frac{1-\\frac{ d}{ D}\\cdot \\cos\\alpha}{2}",
  template: "\\frac{1-\\frac{ ⟦ball⟧}{ ⟦pitch⟧}\\cdot ⟦cosine⟧}{2}",
  cell: "(1 - {ball} / {pitch} * {cosine}) / 2",
  expression: "(1 - ball / pitch * cosine) / 2",
  valid: "Rolling without slip; real bearings slip by about 1 to 2 % (common practice).",
  source: "Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing",
} as const satisfies Compiled;

export const bearing_element = {
  id: "lines.bearing_element",
  title: "Hits of a damaged rolling element for each turn",
  unit: "1",
  symbol: "b_e",
  inputs: {"ball":{"unit":"mm","symbol":"d","meaning":"diameter of a rolling element"},"pitch":{"unit":"mm","symbol":"D","meaning":"pitch diameter"},"cosine":{"unit":"1","symbol":"\\cos\\alpha","meaning":"cosine of the contact angle"}},
  names: ["ball","pitch","cosine"],
  f: (ball: number, pitch: number, cosine: number) => pitch / ball * (1 - (ball / pitch * cosine) ** 2),
  d: [
    (ball: number, pitch: number, cosine: number) => -((cosine * cosine + pitch * pitch / (ball * ball)) / pitch),
    (ball: number, pitch: number, cosine: number) => (ball * ball * cosine * cosine / (pitch * pitch) + 1) / ball,
    (ball: number, pitch: number, cosine: number) => -(2 * ball * cosine / pitch),
  ],
  tex: "\\frac{ D}{ d}\\cdot\\left(1-{\\left(\\frac{ d}{ D}\\cdot \\cos\\alpha\\right)}^{2}\\right)",
  template: "\\frac{ ⟦pitch⟧}{ ⟦ball⟧}\\cdot\\left(1-{\\left(\\frac{ ⟦ball⟧}{ ⟦pitch⟧}\\cdot ⟦cosine⟧\\right)}^{2}\\right)",
  cell: "{pitch} / {ball} * (1 - ({ball} / {pitch} * {cosine}) ^ 2)",
  expression: "pitch / ball * (1 - (ball / pitch * cosine)^2)",
  valid: "The element hits both races in one spin, so this is twice the spin frequency. Rolling without slip; real bearings slip by about 1 to 2 % (common practice).",
  source: "Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing",
} as const satisfies Compiled;

export const bearing_inner = {
  id: "lines.bearing_inner",
  title: "Passes over the inner race for each turn",
  unit: "1",
  symbol: "b_i",
  inputs: {"elements":{"unit":"1","symbol":"N_b","meaning":"rolling elements"},"ball":{"unit":"mm","symbol":"d","meaning":"diameter of a rolling element"},"pitch":{"unit":"mm","symbol":"D","meaning":"pitch diameter"},"cosine":{"unit":"1","symbol":"\\cos\\alpha","meaning":"cosine of the contact angle"}},
  names: ["elements","ball","pitch","cosine"],
  f: (elements: number, ball: number, pitch: number, cosine: number) => elements / 2 * (1 + ball / pitch * cosine),
  d: [
    (_elements: number, ball: number, pitch: number, cosine: number) => (ball * cosine / pitch + 1) / 2,
    (elements: number, _ball: number, pitch: number, cosine: number) => elements * cosine / 2 / pitch,
    (elements: number, ball: number, pitch: number, cosine: number) => elements * cosine * ball * -1 / 2 / (pitch * pitch),
    (elements: number, ball: number, pitch: number) => elements * ball / 2 / pitch,
  ],
  tex: "\\frac{ N_b}{2}\\cdot\\left(1+\\frac{ d}{ D}\\cdot \\cos\\alpha\\right)",
  template: "\\frac{ ⟦elements⟧}{2}\\cdot\\left(1+\\frac{ ⟦ball⟧}{ ⟦pitch⟧}\\cdot ⟦cosine⟧\\right)",
  cell: "{elements} / 2 * (1 + {ball} / {pitch} * {cosine})",
  expression: "elements / 2 * (1 + ball / pitch * cosine)",
  valid: "Rolling without slip; real bearings slip by about 1 to 2 % (common practice).",
  source: "Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing",
} as const satisfies Compiled;

export const bearing_outer = {
  id: "lines.bearing_outer",
  title: "Passes over the outer race for each turn",
  unit: "1",
  symbol: "b_o",
  inputs: {"elements":{"unit":"1","symbol":"N_b","meaning":"rolling elements"},"ball":{"unit":"mm","symbol":"d","meaning":"diameter of a rolling element"},"pitch":{"unit":"mm","symbol":"D","meaning":"pitch diameter"},"cosine":{"unit":"1","symbol":"\\cos\\alpha","meaning":"cosine of the contact angle"}},
  names: ["elements","ball","pitch","cosine"],
  f: (elements: number, ball: number, pitch: number, cosine: number) => elements / 2 * (1 - ball / pitch * cosine),
  d: [
    (_elements: number, ball: number, pitch: number, cosine: number) => (1 - ball * cosine / pitch) / 2,
    (elements: number, _ball: number, pitch: number, cosine: number) => elements * cosine * -1 / 2 / pitch,
    (elements: number, ball: number, pitch: number, cosine: number) => elements * cosine * ball / 2 / (pitch * pitch),
    (elements: number, ball: number, pitch: number) => elements * ball * -1 / 2 / pitch,
  ],
  tex: "\\frac{ N_b}{2}\\cdot\\left(1-\\frac{ d}{ D}\\cdot \\cos\\alpha\\right)",
  template: "\\frac{ ⟦elements⟧}{2}\\cdot\\left(1-\\frac{ ⟦ball⟧}{ ⟦pitch⟧}\\cdot ⟦cosine⟧\\right)",
  cell: "{elements} / 2 * (1 - {ball} / {pitch} * {cosine})",
  expression: "elements / 2 * (1 - ball / pitch * cosine)",
  valid: "Rolling without slip; real bearings slip by about 1 to 2 % (common practice).",
  source: "Kinematics of rolling bearings; checked against the published multipliers of a 6205 bearing",
} as const satisfies Compiled;

export const belt_multiple = {
  id: "lines.belt_multiple",
  title: "Belt passes for each turn of the shaft",
  unit: "1",
  symbol: "b_b",
  inputs: {"sheave":{"unit":"mm","symbol":"D","meaning":"pitch diameter of the motor’s sheave"},"length":{"unit":"mm","symbol":"L","meaning":"pitch length of the belt"}},
  names: ["sheave","length"],
  f: (sheave: number, length: number) => 3.141592653589793 * sheave / length,
  d: [
    (_sheave: number, length: number) => 3.141592653589793 / length,
    (sheave: number, length: number) => -(3.141592653589793 * sheave / (length * length)),
  ],
  tex: "\\frac{ \\pi\\cdot D}{ L}",
  template: "\\frac{ \\pi\\cdot ⟦sheave⟧}{ ⟦length⟧}",
  cell: "3.141592653589793 * {sheave} / {length}",
  expression: "pi * sheave / length",
  valid: "Belt without slip on the motor’s sheave.",
  source: "Kinematics: belt speed π D n over belt length",
} as const satisfies Compiled;

export const load_from_speed = {
  id: "lines.load_from_speed",
  title: "Load at a speed, by slip",
  unit: "1",
  symbol: "x",
  inputs: {"synchronous_speed":{"unit":"r/min","symbol":"n_s","meaning":"synchronous speed"},"speed":{"unit":"r/min","symbol":"n","meaning":"shaft speed"},"rated_slip":{"unit":"1","symbol":"s_r","meaning":"rated slip"}},
  names: ["synchronous_speed","speed","rated_slip"],
  f: (synchronous_speed: number, speed: number, rated_slip: number) => (1 - speed / synchronous_speed) / rated_slip,
  d: [
    (synchronous_speed: number, speed: number, rated_slip: number) => speed / (synchronous_speed * synchronous_speed) / rated_slip,
    (synchronous_speed: number, _speed: number, rated_slip: number) => -(1 / rated_slip / synchronous_speed),
    (synchronous_speed: number, speed: number, rated_slip: number) => (speed / synchronous_speed - 1) / (rated_slip * rated_slip),
  ],
  tex: "\\frac{1-\\frac{ n}{ n_s}}{ s_r}",
  template: "\\frac{1-\\frac{ ⟦speed⟧}{ ⟦synchronous_speed⟧}}{ ⟦rated_slip⟧}",
  cell: "(1 - {speed} / {synchronous_speed}) / {rated_slip}",
  expression: "(1 - speed / synchronous_speed) / rated_slip",
  valid: "To find the load at which to read again; about ± 20 %, as the stamped slip.",
  source: "Slip in proportion to load",
} as const satisfies Compiled;

export const pole_pass = {
  id: "lines.pole_pass",
  title: "Pole-pass frequency",
  unit: "Hz",
  symbol: "f_p",
  inputs: {"supply":{"unit":"Hz","symbol":"f_1","meaning":"supply frequency"},"shaft":{"unit":"Hz","symbol":"f_r","meaning":"shaft frequency"},"poles":{"unit":"1","symbol":"2p","meaning":"number of poles"}},
  names: ["supply","shaft","poles"],
  f: (supply: number, shaft: number, poles: number) => 2 * supply - poles * shaft,
  d: [
    () => 2,
    (_supply: number, _shaft: number, poles: number) => -poles,
    (_supply: number, shaft: number) => -shaft,
  ],
  tex: "2\\cdot f_1- 2p\\cdot f_r",
  template: "2\\cdot ⟦supply⟧- ⟦poles⟧\\cdot ⟦shaft⟧",
  cell: "2 * {supply} - {poles} * {shaft}",
  expression: "2 * supply - poles * shaft",
  valid: "Cage and wound-rotor induction machines: twice slip times supply frequency.",
  source: "Pole-pass frequency = 2 s f₁ = poles × slip speed (read in a trade text on electrical frequencies)",
} as const satisfies Compiled;

export const record_length = {
  id: "lines.record_length",
  title: "Length of record for a resolution",
  unit: "s",
  symbol: "T",
  inputs: {"resolution":{"unit":"Hz","symbol":"\\Delta f","meaning":"distance of neighbouring steps of the spectrum"}},
  names: ["resolution"],
  f: (resolution: number) => 1 / resolution,
  d: [
    (resolution: number) => -(1 / (resolution * resolution)),
  ],
  tex: "\\frac{1}{ \\Delta f}",
  template: "\\frac{1}{ ⟦resolution⟧}",
  cell: "1 / {resolution}",
  expression: "1 / resolution",
  valid: "Without averaging of shorter pieces.",
  source: "A spectrum’s step is one over the length of its record",
} as const satisfies Compiled;

export const resolution_needed = {
  id: "lines.resolution_needed",
  title: "Spectral resolution that parts two lines",
  unit: "Hz",
  symbol: "\\Delta f",
  inputs: {"apart":{"unit":"Hz","symbol":"\\delta","meaning":"distance of the lines"},"steps":{"unit":"1","symbol":"k","meaning":"steps of the spectrum between them"}},
  names: ["apart","steps"],
  f: (apart: number, steps: number) => apart / steps,
  d: [
    (_apart: number, steps: number) => 1 / steps,
    (apart: number, steps: number) => -(apart / (steps * steps)),
  ],
  tex: "\\frac{ \\delta}{ k}",
  template: "\\frac{ ⟦apart⟧}{ ⟦steps⟧}",
  cell: "{apart} / {steps}",
  expression: "apart / steps",
  valid: "Steady speed; the number of steps is common practice.",
  source: "A spectrum’s step is one over the length of its record",
} as const satisfies Compiled;

export const shaft_frequency = {
  id: "lines.shaft_frequency",
  title: "Shaft frequency",
  unit: "Hz",
  symbol: "f_r",
  inputs: {"speed":{"unit":"r/min","symbol":"n","meaning":"shaft speed"}},
  names: ["speed"],
  f: (speed: number) => speed / 60,
  d: [
    () => 1 / 60,
  ],
  tex: "\\frac{ n}{ 60}",
  template: "\\frac{ ⟦speed⟧}{ 60}",
  cell: "{speed} / 60",
  expression: "speed / seconds_per_minute",
  valid: "Always.",
  source: "Definition",
} as const satisfies Compiled;

export const spectral_line = {
  id: "lines.spectral_line",
  title: "Line of a spectrum",
  unit: "Hz",
  symbol: "f",
  inputs: {"supply_multiple":{"unit":"1","symbol":"a","meaning":"multiple of the supply frequency"},"supply":{"unit":"Hz","symbol":"f_1","meaning":"supply frequency"},"shaft_multiple":{"unit":"1","symbol":"b","meaning":"multiple of the shaft frequency"},"shaft":{"unit":"Hz","symbol":"f_r","meaning":"shaft frequency"}},
  names: ["supply_multiple","supply","shaft_multiple","shaft"],
  f: (supply_multiple: number, supply: number, shaft_multiple: number, shaft: number) => supply_multiple * supply + shaft_multiple * shaft,
  d: [
    (_supply_multiple: number, supply: number) => supply,
    (supply_multiple: number) => supply_multiple,
    (_supply_multiple: number, _supply: number, _shaft_multiple: number, shaft: number) => shaft,
    (_supply_multiple: number, _supply: number, shaft_multiple: number) => shaft_multiple,
  ],
  tex: "a\\cdot f_1+ b\\cdot f_r",
  template: "⟦supply_multiple⟧\\cdot ⟦supply⟧+ ⟦shaft_multiple⟧\\cdot ⟦shaft⟧",
  cell: "{supply_multiple} * {supply} + {shaft_multiple} * {shaft}",
  expression: "supply_multiple * supply + shaft_multiple * shaft",
  valid: "Steady speed and supply while the record is taken.",
  source: "Every line of motor and drive train is such a sum; the multiples have a source each",
} as const satisfies Compiled;

export const speed_share = {
  id: "lines.speed_share",
  title: "Turns of the driven shaft for each turn of the driving one",
  unit: "1",
  symbol: "i^{-1}",
  inputs: {"driver":{"unit":"1","symbol":"d_1","meaning":"size of the driver: sheave diameter or teeth"},"driven":{"unit":"1","symbol":"d_2","meaning":"size of the driven one"}},
  names: ["driver","driven"],
  f: (driver: number, driven: number) => driver / driven,
  d: [
    (_driver: number, driven: number) => 1 / driven,
    (driver: number, driven: number) => -(driver / (driven * driven)),
  ],
  tex: "\\frac{ d_1}{ d_2}",
  template: "\\frac{ ⟦driver⟧}{ ⟦driven⟧}",
  cell: "{driver} / {driven}",
  expression: "driver / driven",
  valid: "Without slip.",
  source: "Kinematics",
} as const satisfies Compiled;

export const supply_frequency = {
  id: "lines.supply_frequency",
  title: "Supply frequency of the synchronous speed",
  unit: "Hz",
  symbol: "f_1",
  inputs: {"synchronous_speed":{"unit":"r/min","symbol":"n_s","meaning":"synchronous speed"},"poles":{"unit":"pole","symbol":"2p","meaning":"number of poles"}},
  names: ["synchronous_speed","poles"],
  f: (synchronous_speed: number, poles: number) => synchronous_speed * poles / (2 * 60),
  d: [
    (_synchronous_speed: number, poles: number) => poles / 2 / 60,
    (synchronous_speed: number) => synchronous_speed / 2 / 60,
  ],
  tex: "\\frac{ n_s\\cdot 2p}{2\\cdot 60}",
  template: "\\frac{ ⟦synchronous_speed⟧\\cdot ⟦poles⟧}{2\\cdot 60}",
  cell: "{synchronous_speed} * {poles} / (2 * 60)",
  expression: "synchronous_speed * poles / (2 * seconds_per_minute)",
  valid: "Always.",
  source: "Definition of synchronous speed",
} as const satisfies Compiled;
