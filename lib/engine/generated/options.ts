// Written by scripts/generate.ts from options.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const annual_energy = {
  id: "options.annual_energy",
  title: "Energy of one step of the duty",
  unit: "kWh/a",
  symbol: "E_k",
  inputs: {"hours":{"unit":"h/a","symbol":"h_k","meaning":"hours a year"},"power":{"unit":"kW","symbol":"P_k","meaning":"power during them"}},
  names: ["hours","power"],
  f: (hours: number, power: number) => hours * power,
  d: [
    (_hours: number, power: number) => power,
    (hours: number) => hours,
  ],
  tex: "h_k\\cdot P_k",
  template: "⟦hours⟧\\cdot ⟦power⟧",
  cell: "{hours} * {power}",
  expression: "hours * power",
  valid: "Steady power during the hours.",
  source: "Definition",
} as const satisfies Compiled;

export const annual_reactive_energy = {
  id: "options.annual_reactive_energy",
  title: "Reactive energy of one step of the duty",
  unit: "kvarh/a",
  symbol: "W_k",
  inputs: {"hours":{"unit":"h/a","symbol":"h_k","meaning":"hours a year"},"reactive":{"unit":"kvar","symbol":"Q_k","meaning":"reactive power during them"}},
  names: ["hours","reactive"],
  f: (hours: number, reactive: number) => hours * reactive,
  d: [
    (_hours: number, reactive: number) => reactive,
    (hours: number) => hours,
  ],
  tex: "h_k\\cdot Q_k",
  template: "⟦hours⟧\\cdot ⟦reactive⟧",
  cell: "{hours} * {reactive}",
  expression: "hours * reactive",
  valid: "Steady power during the hours.",
  source: "Definition",
} as const satisfies Compiled;

export const billed_demand = {
  id: "options.billed_demand",
  title: "Input that falls into the billed peak",
  unit: "kW",
  symbol: "D",
  inputs: {"input_power":{"unit":"kW","symbol":"P_1","meaning":"input at the step with the highest input"},"coincidence":{"unit":"1","symbol":"k","meaning":"share of it that falls into the billed peak"}},
  names: ["input_power","coincidence"],
  f: (input_power: number, coincidence: number) => input_power * coincidence,
  d: [
    (_input_power: number, coincidence: number) => coincidence,
    (input_power: number) => input_power,
  ],
  tex: "P_1\\cdot k",
  template: "⟦input_power⟧\\cdot ⟦coincidence⟧",
  cell: "{input_power} * {coincidence}",
  expression: "input_power * coincidence",
  valid: "Coincidence from 0 to 1.",
  source: "T. Gonen, Electric Power Distribution System Engineering, example 2.5 (coincidence factor)",
} as const satisfies Compiled;

export const cost_after_repair = {
  id: "options.cost_after_repair",
  title: "Cost of running after a repair",
  unit: "currency/a",
  symbol: "C_{rep}",
  inputs: {"cost":{"unit":"currency/a","symbol":"C","meaning":"cost before"},"ratio":{"unit":"1","symbol":"r_{rep}","meaning":"input after over input before"}},
  names: ["cost","ratio"],
  f: (cost: number, ratio: number) => cost * ratio,
  d: [
    (_cost: number, ratio: number) => ratio,
    (cost: number) => cost,
  ],
  tex: "C\\cdot r_{rep}",
  template: "⟦cost⟧\\cdot ⟦ratio⟧",
  cell: "{cost} * {ratio}",
  expression: "cost * ratio",
  valid: "Same duty and prices.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const demand_saved = {
  id: "options.demand_saved",
  title: "Demand saved",
  unit: "kW",
  symbol: "\\Delta D",
  inputs: {"before":{"unit":"kW","symbol":"D_1","meaning":"billed demand as it is"},"after":{"unit":"kW","symbol":"D_2","meaning":"billed demand with the option"}},
  names: ["before","after"],
  f: (before: number, after: number) => before - after,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "D_1- D_2",
  template: "⟦before⟧- ⟦after⟧",
  cell: "{before} - {after}",
  expression: "before - after",
  valid: "Same step of the duty.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const emissions_saved = {
  id: "options.emissions_saved",
  title: "Emissions saved in a year",
  unit: "kg/a",
  symbol: "\\Delta m",
  inputs: {"energy_saved":{"unit":"kWh/a","symbol":"\\Delta E","meaning":"energy saved in a year"},"emission_factor":{"unit":"kg/kWh","symbol":"f","meaning":"emission factor of the supply"}},
  names: ["energy_saved","emission_factor"],
  f: (energy_saved: number, emission_factor: number) => energy_saved * emission_factor,
  d: [
    (_energy_saved: number, emission_factor: number) => emission_factor,
    (energy_saved: number) => energy_saved,
  ],
  tex: "\\Delta E\\cdot f",
  template: "⟦energy_saved⟧\\cdot ⟦emission_factor⟧",
  cell: "{energy_saved} * {emission_factor}",
  expression: "energy_saved * emission_factor",
  valid: "Average factor of the supply; carbon dioxide or its equivalent, as the factor says.",
  source: "Definition of an emission factor",
} as const satisfies Compiled;

export const energy_after_repair = {
  id: "options.energy_after_repair",
  title: "Energy after a repair",
  unit: "kWh/a",
  symbol: "E_{rep}",
  inputs: {"energy":{"unit":"kWh/a","symbol":"E","meaning":"energy before"},"ratio":{"unit":"1","symbol":"r_{rep}","meaning":"input after over input before"}},
  names: ["energy","ratio"],
  f: (energy: number, ratio: number) => energy * ratio,
  d: [
    (_energy: number, ratio: number) => ratio,
    (energy: number) => energy,
  ],
  tex: "E\\cdot r_{rep}",
  template: "⟦energy⟧\\cdot ⟦ratio⟧",
  cell: "{energy} * {ratio}",
  expression: "energy * ratio",
  valid: "Same duty.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const energy_ratio = {
  id: "options.energy_ratio",
  title: "Mean efficiency over the duty",
  unit: "1",
  symbol: "\\bar\\eta",
  inputs: {"shaft_energy":{"unit":"kWh/a","symbol":"E_2","meaning":"energy at the shaft"},"input_energy":{"unit":"kWh/a","symbol":"E_1","meaning":"energy at the terminals"}},
  names: ["shaft_energy","input_energy"],
  f: (shaft_energy: number, input_energy: number) => shaft_energy / input_energy,
  d: [
    (_shaft_energy: number, input_energy: number) => 1 / input_energy,
    (shaft_energy: number, input_energy: number) => -(shaft_energy / (input_energy * input_energy)),
  ],
  tex: "\\frac{ E_2}{ E_1}",
  template: "\\frac{ ⟦shaft_energy⟧}{ ⟦input_energy⟧}",
  cell: "{shaft_energy} / {input_energy}",
  expression: "shaft_energy / input_energy",
  valid: "Input energy above zero.",
  source: "Definition",
} as const satisfies Compiled;

export const energy_saved = {
  id: "options.energy_saved",
  title: "Energy saved in a year",
  unit: "kWh/a",
  symbol: "\\Delta E",
  inputs: {"before":{"unit":"kWh/a","symbol":"E_1","meaning":"energy as it is"},"after":{"unit":"kWh/a","symbol":"E_2","meaning":"energy with the option"}},
  names: ["before","after"],
  f: (before: number, after: number) => before - after,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "E_1- E_2",
  template: "⟦before⟧- ⟦after⟧",
  cell: "{before} - {after}",
  expression: "before - after",
  valid: "Same duty; negative when the option takes more.",
  source: "Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17",
} as const satisfies Compiled;

export const energy_sum = {
  id: "options.energy_sum",
  title: "Energy of two steps together",
  unit: "kWh/a",
  symbol: "E",
  inputs: {"first":{"unit":"kWh/a","symbol":"E_1","meaning":"energy so far"},"second":{"unit":"kWh/a","symbol":"E_2","meaning":"energy of one more step"}},
  names: ["first","second"],
  f: (first: number, second: number) => first + second,
  d: [
    () => 1,
    () => 1,
  ],
  tex: "E_1+ E_2",
  template: "⟦first⟧+ ⟦second⟧",
  cell: "{first} + {second}",
  expression: "first + second",
  valid: "Steps of one duty.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const hours_at_speed_ratio = {
  id: "options.hours_at_speed_ratio",
  title: "Hours for the same flow at another speed",
  unit: "h/a",
  symbol: "h'",
  inputs: {"hours":{"unit":"h/a","symbol":"h","meaning":"hours as it is"},"speed_ratio":{"unit":"1","symbol":"r","meaning":"new speed over old speed"}},
  names: ["hours","speed_ratio"],
  f: (hours: number, speed_ratio: number) => hours / speed_ratio,
  d: [
    (_hours: number, speed_ratio: number) => 1 / speed_ratio,
    (hours: number, speed_ratio: number) => -(hours / (speed_ratio * speed_ratio)),
  ],
  tex: "\\frac{ h}{ r}",
  template: "\\frac{ ⟦hours⟧}{ ⟦speed_ratio⟧}",
  cell: "{hours} / {speed_ratio}",
  expression: "hours / speed_ratio",
  valid: "On-off control: the flow goes with the speed, so the same volume takes less time.",
  source: "Affinity laws of fans and pumps: flow in proportion to speed",
} as const satisfies Compiled;

export const input_ratio_after_repair = {
  id: "options.input_ratio_after_repair",
  title: "Input after a repair over input before",
  unit: "1",
  symbol: "r_{rep}",
  inputs: {"efficiency":{"unit":"1","symbol":"\\eta","meaning":"mean efficiency before the repair"},"change":{"unit":"1","symbol":"\\Delta\\eta","meaning":"change of efficiency by the repair, negative when it falls"}},
  names: ["efficiency","change"],
  f: (efficiency: number, change: number) => efficiency / (efficiency + change),
  d: [
    (efficiency: number, change: number) => change / (efficiency + change) ** 2,
    (efficiency: number, change: number) => -(efficiency / (efficiency + change) ** 2),
  ],
  tex: "\\frac{ \\eta}{ \\eta+ \\Delta\\eta}",
  template: "\\frac{ ⟦efficiency⟧}{ ⟦efficiency⟧+ ⟦change⟧}",
  cell: "{efficiency} / ({efficiency} + {change})",
  expression: "efficiency / (efficiency + change)",
  valid: "Same shaft power; the change at rated load is taken for the change at the duty.",
  source: "Efficiency as output over input; change from the table of rewind changes",
} as const satisfies Compiled;

export const load_fraction_of_power = {
  id: "options.load_fraction_of_power",
  title: "Load fraction of another rating",
  unit: "1",
  symbol: "x",
  inputs: {"shaft_power":{"unit":"kW","symbol":"P","meaning":"shaft power"},"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"}},
  names: ["shaft_power","rated_power"],
  f: (shaft_power: number, rated_power: number) => shaft_power / rated_power,
  d: [
    (_shaft_power: number, rated_power: number) => 1 / rated_power,
    (shaft_power: number, rated_power: number) => -(shaft_power / (rated_power * rated_power)),
  ],
  tex: "\\frac{ P}{ P_r}",
  template: "\\frac{ ⟦shaft_power⟧}{ ⟦rated_power⟧}",
  cell: "{shaft_power} / {rated_power}",
  expression: "shaft_power / rated_power",
  valid: "Without service factor.",
  source: "Definition",
} as const satisfies Compiled;

export const power_after_repair = {
  id: "options.power_after_repair",
  title: "Input after a repair",
  unit: "kW",
  symbol: "P_{rep}",
  inputs: {"power":{"unit":"kW","symbol":"P_1","meaning":"input before"},"ratio":{"unit":"1","symbol":"r_{rep}","meaning":"input after over input before"}},
  names: ["power","ratio"],
  f: (power: number, ratio: number) => power * ratio,
  d: [
    (_power: number, ratio: number) => ratio,
    (power: number) => power,
  ],
  tex: "P_1\\cdot r_{rep}",
  template: "⟦power⟧\\cdot ⟦ratio⟧",
  cell: "{power} * {ratio}",
  expression: "power * ratio",
  valid: "Same duty.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const power_at_speed_ratio = {
  id: "options.power_at_speed_ratio",
  title: "Shaft power at another speed",
  unit: "kW",
  symbol: "P'",
  inputs: {"shaft_power":{"unit":"kW","symbol":"P","meaning":"shaft power of the existing motor"},"speed_ratio":{"unit":"1","symbol":"r","meaning":"new speed over old speed"},"torque_exponent":{"unit":"1","symbol":"n","meaning":"torque goes with speed to this power"}},
  names: ["shaft_power","speed_ratio","torque_exponent"],
  f: (shaft_power: number, speed_ratio: number, torque_exponent: number) => shaft_power * speed_ratio ** (torque_exponent + 1),
  d: [
    (_shaft_power: number, speed_ratio: number, torque_exponent: number) => speed_ratio ** (torque_exponent + 1),
    (shaft_power: number, speed_ratio: number, torque_exponent: number) => shaft_power * (torque_exponent + 1) * speed_ratio ** torque_exponent,
    (shaft_power: number, speed_ratio: number, torque_exponent: number) => shaft_power * speed_ratio ** (torque_exponent + 1) * Math.log(speed_ratio),
  ],
  tex: "P\\cdot{ r}^{ n+1}",
  template: "⟦shaft_power⟧\\cdot{ ⟦speed_ratio⟧}^{ ⟦torque_exponent⟧+1}",
  cell: "{shaft_power} * {speed_ratio} ^ ({torque_exponent} + 1)",
  expression: "shaft_power * speed_ratio^(torque_exponent + 1)",
  valid: "Speeds a few per cent apart; a fan or pump on a system without static head has n = 2.",
  source: "Affinity laws of fans and pumps; US DOE fact sheet on buying an energy-efficient motor (1740 to 1760 r/min: 3.5 %)",
} as const satisfies Compiled;

export const power_saved_by_efficiency = {
  id: "options.power_saved_by_efficiency",
  title: "Input saved by efficiency alone",
  unit: "kW",
  symbol: "\\Delta P",
  inputs: {"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"},"load_fraction":{"unit":"1","symbol":"x","meaning":"load fraction"},"efficiency_before":{"unit":"1","symbol":"\\eta_1","meaning":"efficiency as it is"},"efficiency_after":{"unit":"1","symbol":"\\eta_2","meaning":"efficiency with the option"}},
  names: ["rated_power","load_fraction","efficiency_before","efficiency_after"],
  f: (rated_power: number, load_fraction: number, efficiency_before: number, efficiency_after: number) => rated_power * load_fraction * (1 / efficiency_before - 1 / efficiency_after),
  d: [
    (_rated_power: number, load_fraction: number, efficiency_before: number, efficiency_after: number) => (1 / efficiency_before - 1 / efficiency_after) * load_fraction,
    (rated_power: number, _load_fraction: number, efficiency_before: number, efficiency_after: number) => (1 / efficiency_before - 1 / efficiency_after) * rated_power,
    (rated_power: number, load_fraction: number, efficiency_before: number) => -(rated_power * load_fraction / (efficiency_before * efficiency_before)),
    (rated_power: number, load_fraction: number, _efficiency_before: number, efficiency_after: number) => rated_power * load_fraction / (efficiency_after * efficiency_after),
  ],
  tex: "P_r\\cdot x\\cdot\\left(\\frac{1}{ \\eta_1}-\\frac{1}{ \\eta_2}\\right)",
  template: "⟦rated_power⟧\\cdot ⟦load_fraction⟧\\cdot\\left(\\frac{1}{ ⟦efficiency_before⟧}-\\frac{1}{ ⟦efficiency_after⟧}\\right)",
  cell: "{rated_power} * {load_fraction} * (1 / {efficiency_before} - 1 / {efficiency_after})",
  expression: "rated_power * load_fraction * (1 / efficiency_before - 1 / efficiency_after)",
  valid: "Same shaft power: the effect of another speed is not in it.",
  source: "Y. A. Cengel and M. A. Boles, Thermodynamics: An Engineering Approach, example 2-17",
} as const satisfies Compiled;

export const reactive_energy_sum = {
  id: "options.reactive_energy_sum",
  title: "Reactive energy of two steps together",
  unit: "kvarh/a",
  symbol: "W",
  inputs: {"first":{"unit":"kvarh/a","symbol":"W_1","meaning":"so far"},"second":{"unit":"kvarh/a","symbol":"W_2","meaning":"of one more step"}},
  names: ["first","second"],
  f: (first: number, second: number) => first + second,
  d: [
    () => 1,
    () => 1,
  ],
  tex: "W_1+ W_2",
  template: "⟦first⟧+ ⟦second⟧",
  cell: "{first} + {second}",
  expression: "first + second",
  valid: "Steps of one duty.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const reactive_in_peak = {
  id: "options.reactive_in_peak",
  title: "Reactive power that falls into the billed peak",
  unit: "kvar",
  symbol: "Q_D",
  inputs: {"reactive":{"unit":"kvar","symbol":"Q","meaning":"reactive power at the step with the highest input"},"coincidence":{"unit":"1","symbol":"k","meaning":"share of it that falls into the billed peak"}},
  names: ["reactive","coincidence"],
  f: (reactive: number, coincidence: number) => reactive * coincidence,
  d: [
    (_reactive: number, coincidence: number) => coincidence,
    (reactive: number) => reactive,
  ],
  tex: "Q\\cdot k",
  template: "⟦reactive⟧\\cdot ⟦coincidence⟧",
  cell: "{reactive} * {coincidence}",
  expression: "reactive * coincidence",
  valid: "Coincidence from 0 to 1.",
  source: "T. Gonen, Electric Power Distribution System Engineering, example 2.5 (coincidence factor)",
} as const satisfies Compiled;

export const reactive_power = {
  id: "options.reactive_power",
  title: "Reactive power at an operating point",
  unit: "kvar",
  symbol: "Q",
  inputs: {"input_power":{"unit":"kW","symbol":"P_1","meaning":"input"},"power_factor":{"unit":"1","symbol":"\\cos\\varphi","meaning":"power factor, lagging"}},
  names: ["input_power","power_factor"],
  f: (input_power: number, power_factor: number) => input_power * Math.sqrt(1 / (power_factor * power_factor) - 1),
  d: [
    (_input_power: number, power_factor: number) => Math.sqrt(1 / (power_factor * power_factor) - 1),
    (input_power: number, power_factor: number) => -(input_power / power_factor ** 3 / Math.sqrt(1 / (power_factor * power_factor) - 1)),
  ],
  tex: "P_1\\cdot\\sqrt{\\frac{1}{{ \\cos\\varphi}^{2}}-1}",
  template: "⟦input_power⟧\\cdot\\sqrt{\\frac{1}{{ ⟦power_factor⟧}^{2}}-1}",
  cell: "{input_power} * SQRT(1 / {power_factor} ^ 2 - 1)",
  expression: "input_power * sqrt(1 / power_factor^2 - 1)",
  valid: "Power factor above 0 and below 1.",
  source: "Definition; V. K. Mehta and R. Mehta, Principles of Power System, example 6.4",
} as const satisfies Compiled;
