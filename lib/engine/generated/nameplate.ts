// Written by scripts/generate.ts from nameplate.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const apparent_power = {
  id: "nameplate.apparent_power",
  title: "Apparent power of a three-phase line",
  unit: "kVA",
  symbol: "S",
  inputs: {"voltage":{"unit":"V","symbol":"U","meaning":"mean line-to-line voltage"},"current":{"unit":"A","symbol":"I","meaning":"mean line current"}},
  names: ["voltage","current"],
  f: (voltage: number, current: number) => Math.sqrt(3) * voltage * current / 1000,
  d: [
    (_voltage: number, current: number) => 1.7320508075688772 * current / 1000,
    (voltage: number) => 1.7320508075688772 * voltage / 1000,
  ],
  tex: "\\frac{\\sqrt{3}\\cdot U\\cdot I}{ 1000}",
  template: "\\frac{\\sqrt{3}\\cdot ⟦voltage⟧\\cdot ⟦current⟧}{ 1000}",
  cell: "SQRT(3) * {voltage} * {current} / 1000",
  expression: "sqrt(3) * voltage * current / watts_per_kilowatt",
  valid: "Mean values; unbalance of a few per cent changes the product by less than its square.",
  source: "Definition",
} as const satisfies Compiled;

export const efficiency_after_change = {
  id: "nameplate.efficiency_after_change",
  title: "Efficiency after a repair",
  unit: "1",
  symbol: "\\eta",
  inputs: {"efficiency":{"unit":"1","symbol":"\\eta_r","meaning":"efficiency before"},"change":{"unit":"1","symbol":"\\Delta\\eta","meaning":"change of efficiency, negative for a loss"}},
  names: ["efficiency","change"],
  f: (efficiency: number, change: number) => efficiency + change,
  d: [
    () => 1,
    () => 1,
  ],
  tex: "\\eta_r+ \\Delta\\eta",
  template: "⟦efficiency⟧+ ⟦change⟧",
  cell: "{efficiency} + {change}",
  expression: "efficiency + change",
  valid: "Change of a few points at most.",
  source: "EASA/AEMT studies of 2003 and 2019-2020: see the table of rewind changes",
} as const satisfies Compiled;

export const efficiency_by_present_method = {
  id: "nameplate.efficiency_by_present_method",
  title: "Efficiency of a stamp by the old IEC method, as it is measured today",
  unit: "1",
  symbol: "\\eta",
  inputs: {"stamped":{"unit":"1","symbol":"\\eta_r","meaning":"stamped efficiency"},"excess":{"unit":"1","symbol":"\\Delta p","meaning":"stray-load loss beyond the fixed allowance, as a fraction of input"}},
  names: ["stamped","excess"],
  f: (stamped: number, excess: number) => stamped - excess,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "\\eta_r- \\Delta p",
  template: "⟦stamped⟧- ⟦excess⟧",
  cell: "{stamped} - {excess}",
  expression: "stamped - excess",
  valid: "Cage motors whose plate goes by IEC 60034-2 before its edition of 2007.",
  source: "IEC 60034-2 (0.5 % of input); survey of 817 tests, 0.75 to 375 kW: 1.0 points more at 50 Hz, 0.8 at 60 Hz",
} as const satisfies Compiled;

export const magnetising_share = {
  id: "nameplate.magnetising_share",
  title: "Share of the magnetising current in the rated current",
  unit: "1",
  symbol: "i_0",
  inputs: {"power_factor":{"unit":"1","symbol":"\\lambda_r","meaning":"power factor at rated load"},"leakage":{"unit":"1","symbol":"x_\\sigma","meaning":"total leakage reactance, per unit of rated impedance"}},
  names: ["power_factor","leakage"],
  f: (power_factor: number, leakage: number) => Math.sqrt(1 - power_factor * power_factor) - leakage,
  d: [
    (power_factor: number) => -(power_factor / Math.sqrt(1 - power_factor * power_factor)),
    () => -1,
  ],
  tex: "\\sqrt{1-{ \\lambda_r}^{2}}- x_\\sigma",
  template: "\\sqrt{1-{ ⟦power_factor⟧}^{2}}- ⟦leakage⟧",
  cell: "SQRT(1 - {power_factor} ^ 2) - {leakage}",
  expression: "sqrt(1 - power_factor^2) - leakage",
  valid: "Cage motors with a power factor below about 0.97; the rated reactive power less that of the leakage, at rated voltage.",
  source: "Reactive balance of the equivalent circuit at rated load, first order; own derivation",
} as const satisfies Compiled;

export const no_load_share = {
  id: "nameplate.no_load_share",
  title: "No-load current as a share of rated current",
  unit: "1",
  symbol: "i_0",
  inputs: {"no_load_current":{"unit":"A","symbol":"I_0","meaning":"current of the uncoupled test"},"rated_current":{"unit":"A","symbol":"I_r","meaning":"rated current"},"no_load_voltage":{"unit":"V","symbol":"U_0","meaning":"voltage of the uncoupled test"},"rated_voltage":{"unit":"V","symbol":"U_r","meaning":"rated voltage"}},
  names: ["no_load_current","rated_current","no_load_voltage","rated_voltage"],
  f: (no_load_current: number, rated_current: number, no_load_voltage: number, rated_voltage: number) => no_load_current / rated_current * rated_voltage / no_load_voltage,
  d: [
    (_no_load_current: number, rated_current: number, no_load_voltage: number, rated_voltage: number) => rated_voltage / no_load_voltage / rated_current,
    (no_load_current: number, rated_current: number, no_load_voltage: number, rated_voltage: number) => -(rated_voltage * no_load_current / (rated_current * rated_current) / no_load_voltage),
    (no_load_current: number, rated_current: number, no_load_voltage: number, rated_voltage: number) => -(no_load_current * rated_voltage / (no_load_voltage * no_load_voltage) / rated_current),
    (no_load_current: number, rated_current: number, no_load_voltage: number) => no_load_current / no_load_voltage / rated_current,
  ],
  tex: "\\frac{\\frac{ I_0}{ I_r}\\cdot U_r}{ U_0}",
  template: "\\frac{\\frac{ ⟦no_load_current⟧}{ ⟦rated_current⟧}\\cdot ⟦rated_voltage⟧}{ ⟦no_load_voltage⟧}",
  cell: "{no_load_current} / {rated_current} * {rated_voltage} / {no_load_voltage}",
  expression: "no_load_current / rated_current * rated_voltage / no_load_voltage",
  valid: "Test voltage within about 10 % of rated: the magnetising current is taken as proportional to the voltage.",
  source: "Definition; C. I. Hubert, Electric Machines, example 5.16 (no-load current per cent)",
} as const satisfies Compiled;

export const power_from_current = {
  id: "nameplate.power_from_current",
  title: "Three-phase input power from volts, amperes and power factor",
  unit: "kW",
  symbol: "P_1",
  inputs: {"voltage":{"unit":"V","symbol":"U","meaning":"mean line-to-line voltage"},"current":{"unit":"A","symbol":"I","meaning":"mean line current"},"power_factor":{"unit":"1","symbol":"\\lambda","meaning":"power factor"}},
  names: ["voltage","current","power_factor"],
  f: (voltage: number, current: number, power_factor: number) => Math.sqrt(3) * voltage * current * power_factor / 1000,
  d: [
    (_voltage: number, current: number, power_factor: number) => 1.7320508075688772 * power_factor * current / 1000,
    (voltage: number, _current: number, power_factor: number) => 1.7320508075688772 * power_factor * voltage / 1000,
    (voltage: number, current: number) => 1.7320508075688772 * voltage * current / 1000,
  ],
  tex: "\\frac{\\sqrt{3}\\cdot U\\cdot I\\cdot \\lambda}{ 1000}",
  template: "\\frac{\\sqrt{3}\\cdot ⟦voltage⟧\\cdot ⟦current⟧\\cdot ⟦power_factor⟧}{ 1000}",
  cell: "SQRT(3) * {voltage} * {current} * {power_factor} / 1000",
  expression: "sqrt(3) * voltage * current * power_factor / watts_per_kilowatt",
  valid: "Sinusoidal supply, mean values of the three phases.",
  source: "US DOE fact sheet on motor load and efficiency, input power (from memory; cases recomputed)",
} as const satisfies Compiled;

export const rated_current_from_power = {
  id: "nameplate.rated_current_from_power",
  title: "Rated current from rating, efficiency and power factor",
  unit: "A",
  symbol: "I_r",
  inputs: {"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"},"efficiency":{"unit":"1","symbol":"\\eta_r","meaning":"efficiency at rated load"},"power_factor":{"unit":"1","symbol":"\\lambda_r","meaning":"power factor at rated load"},"voltage":{"unit":"V","symbol":"U_r","meaning":"rated line-to-line voltage"}},
  names: ["rated_power","efficiency","power_factor","voltage"],
  f: (rated_power: number, efficiency: number, power_factor: number, voltage: number) => 1000 * rated_power / (Math.sqrt(3) * voltage * efficiency * power_factor),
  d: [
    (_rated_power: number, efficiency: number, power_factor: number, voltage: number) => 0.5773502691896258 * 1000 / voltage / power_factor / efficiency,
    (rated_power: number, efficiency: number, power_factor: number, voltage: number) => -(0.5773502691896258 * 1000 * rated_power / voltage / (efficiency * efficiency) / power_factor),
    (rated_power: number, efficiency: number, power_factor: number, voltage: number) => -(0.5773502691896258 * 1000 * rated_power / voltage / (power_factor * power_factor) / efficiency),
    (rated_power: number, efficiency: number, power_factor: number, voltage: number) => -(0.5773502691896258 * 1000 * rated_power / power_factor / (voltage * voltage) / efficiency),
  ],
  tex: "\\frac{ 1000\\cdot P_r}{\\sqrt{3}\\cdot U_r\\cdot \\eta_r\\cdot \\lambda_r}",
  template: "\\frac{ 1000\\cdot ⟦rated_power⟧}{\\sqrt{3}\\cdot ⟦voltage⟧\\cdot ⟦efficiency⟧\\cdot ⟦power_factor⟧}",
  cell: "1000 * {rated_power} / (SQRT(3) * {voltage} * {efficiency} * {power_factor})",
  expression: "watts_per_kilowatt * rated_power / (sqrt(3) * voltage * efficiency * power_factor)",
  valid: "Rated load, rated voltage.",
  source: "Definition",
} as const satisfies Compiled;

export const rated_input_power = {
  id: "nameplate.rated_input_power",
  title: "Rated input power",
  unit: "kW",
  symbol: "P_{1r}",
  inputs: {"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"},"efficiency":{"unit":"1","symbol":"\\eta_r","meaning":"efficiency at rated load"}},
  names: ["rated_power","efficiency"],
  f: (rated_power: number, efficiency: number) => rated_power / efficiency,
  d: [
    (_rated_power: number, efficiency: number) => 1 / efficiency,
    (rated_power: number, efficiency: number) => -(rated_power / (efficiency * efficiency)),
  ],
  tex: "\\frac{ P_r}{ \\eta_r}",
  template: "\\frac{ ⟦rated_power⟧}{ ⟦efficiency⟧}",
  cell: "{rated_power} / {efficiency}",
  expression: "rated_power / efficiency",
  valid: "Efficiency above 0 and at most 1.",
  source: "Definition of efficiency; US DOE fact sheet on motor load and efficiency",
} as const satisfies Compiled;

export const rated_power_factor_from_current = {
  id: "nameplate.rated_power_factor_from_current",
  title: "Rated power factor from rating, efficiency and current",
  unit: "1",
  symbol: "\\lambda_r",
  inputs: {"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"},"efficiency":{"unit":"1","symbol":"\\eta_r","meaning":"efficiency at rated load"},"current":{"unit":"A","symbol":"I_r","meaning":"rated current"},"voltage":{"unit":"V","symbol":"U_r","meaning":"rated line-to-line voltage"}},
  names: ["rated_power","efficiency","current","voltage"],
  f: (rated_power: number, efficiency: number, current: number, voltage: number) => 1000 * rated_power / (Math.sqrt(3) * voltage * efficiency * current),
  d: [
    (_rated_power: number, efficiency: number, current: number, voltage: number) => 0.5773502691896258 * 1000 / voltage / current / efficiency,
    (rated_power: number, efficiency: number, current: number, voltage: number) => -(0.5773502691896258 * 1000 * rated_power / voltage / (efficiency * efficiency) / current),
    (rated_power: number, efficiency: number, current: number, voltage: number) => -(0.5773502691896258 * 1000 * rated_power / voltage / (current * current) / efficiency),
    (rated_power: number, efficiency: number, current: number, voltage: number) => -(0.5773502691896258 * 1000 * rated_power / current / (voltage * voltage) / efficiency),
  ],
  tex: "\\frac{ 1000\\cdot P_r}{\\sqrt{3}\\cdot U_r\\cdot \\eta_r\\cdot I_r}",
  template: "\\frac{ 1000\\cdot ⟦rated_power⟧}{\\sqrt{3}\\cdot ⟦voltage⟧\\cdot ⟦efficiency⟧\\cdot ⟦current⟧}",
  cell: "1000 * {rated_power} / (SQRT(3) * {voltage} * {efficiency} * {current})",
  expression: "watts_per_kilowatt * rated_power / (sqrt(3) * voltage * efficiency * current)",
  valid: "Rated load, rated voltage.",
  source: "Definition; C. I. Hubert, Electric Machines, example 4.6",
} as const satisfies Compiled;

export const rated_total_loss = {
  id: "nameplate.rated_total_loss",
  title: "Total loss at rated load",
  unit: "kW",
  symbol: "\\Sigma P_r",
  inputs: {"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"},"efficiency":{"unit":"1","symbol":"\\eta_r","meaning":"efficiency at rated load"}},
  names: ["rated_power","efficiency"],
  f: (rated_power: number, efficiency: number) => rated_power * (1 / efficiency - 1),
  d: [
    (_rated_power: number, efficiency: number) => 1 / efficiency - 1,
    (rated_power: number, efficiency: number) => -(rated_power / (efficiency * efficiency)),
  ],
  tex: "P_r\\cdot\\left(\\frac{1}{ \\eta_r}-1\\right)",
  template: "⟦rated_power⟧\\cdot\\left(\\frac{1}{ ⟦efficiency⟧}-1\\right)",
  cell: "{rated_power} * (1 / {efficiency} - 1)",
  expression: "rated_power * (1 / efficiency - 1)",
  valid: "Efficiency above 0 and at most 1.",
  source: "Definition of efficiency; C. I. Hubert, Electric Machines, example 4.6",
} as const satisfies Compiled;

export const slip_fraction = {
  id: "nameplate.slip_fraction",
  title: "Slip",
  unit: "1",
  symbol: "s",
  inputs: {"synchronous_speed":{"unit":"r/min","symbol":"n_s","meaning":"synchronous speed"},"shaft_speed":{"unit":"r/min","symbol":"n","meaning":"shaft speed"}},
  names: ["synchronous_speed","shaft_speed"],
  f: (synchronous_speed: number, shaft_speed: number) => (synchronous_speed - shaft_speed) / synchronous_speed,
  d: [
    (synchronous_speed: number, shaft_speed: number) => ((synchronous_speed + shaft_speed) / synchronous_speed - 1) / synchronous_speed,
    (synchronous_speed: number) => -(1 / synchronous_speed),
  ],
  tex: "\\frac{ n_s- n}{ n_s}",
  template: "\\frac{ ⟦synchronous_speed⟧- ⟦shaft_speed⟧}{ ⟦synchronous_speed⟧}",
  cell: "({synchronous_speed} - {shaft_speed}) / {synchronous_speed}",
  expression: "(synchronous_speed - shaft_speed) / synchronous_speed",
  valid: "Motoring: 0 to 1.",
  source: "IEEE 112-2017 clause 5; definition",
} as const satisfies Compiled;

export const slip_from_rotor_share = {
  id: "nameplate.slip_from_rotor_share",
  title: "Rated slip from the typical share of rotor loss",
  unit: "1",
  symbol: "s_r",
  inputs: {"rotor_share":{"unit":"1","symbol":"k_2","meaning":"rotor loss as a share of total loss"},"total_loss":{"unit":"kW","symbol":"\\Sigma P_r","meaning":"total loss at rated load"},"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"}},
  names: ["rotor_share","total_loss","rated_power"],
  f: (rotor_share: number, total_loss: number, rated_power: number) => rotor_share * total_loss / (rated_power + rotor_share * total_loss),
  d: [
    (rotor_share: number, total_loss: number, rated_power: number) => total_loss * rated_power / (rated_power + rotor_share * total_loss) ** 2,
    (rotor_share: number, total_loss: number, rated_power: number) => rotor_share * rated_power / (rated_power + rotor_share * total_loss) ** 2,
    (rotor_share: number, total_loss: number, rated_power: number) => -(rotor_share * total_loss / (rated_power + rotor_share * total_loss) ** 2),
  ],
  tex: "\\frac{ k_2\\cdot \\Sigma P_r}{ P_r+ k_2\\cdot \\Sigma P_r}",
  template: "\\frac{ ⟦rotor_share⟧\\cdot ⟦total_loss⟧}{ ⟦rated_power⟧+ ⟦rotor_share⟧\\cdot ⟦total_loss⟧}",
  cell: "{rotor_share} * {total_loss} / ({rated_power} + {rotor_share} * {total_loss})",
  expression: "rotor_share * total_loss / (rated_power + rotor_share * total_loss)",
  valid: "Where no speed is stamped; rotor loss is slip times air-gap power.",
  source: "IEEE 112-2017 clause 5.8 (rotor loss from slip), turned round; share from the table of loss shares",
} as const satisfies Compiled;

export const speed_from_slip = {
  id: "nameplate.speed_from_slip",
  title: "Shaft speed from slip",
  unit: "r/min",
  symbol: "n",
  inputs: {"synchronous_speed":{"unit":"r/min","symbol":"n_s","meaning":"synchronous speed"},"slip":{"unit":"1","symbol":"s","meaning":"slip"}},
  names: ["synchronous_speed","slip"],
  f: (synchronous_speed: number, slip: number) => synchronous_speed * (1 - slip),
  d: [
    (_synchronous_speed: number, slip: number) => 1 - slip,
    (synchronous_speed: number) => -synchronous_speed,
  ],
  tex: "n_s\\cdot\\left(1- s\\right)",
  template: "⟦synchronous_speed⟧\\cdot\\left(1- ⟦slip⟧\\right)",
  cell: "{synchronous_speed} * (1 - {slip})",
  expression: "synchronous_speed * (1 - slip)",
  valid: "Any slip.",
  source: "Definition; C. I. Hubert, Electric Machines, examples 4.5 and 4.6",
} as const satisfies Compiled;

export const synchronous_speed = {
  id: "nameplate.synchronous_speed",
  title: "Synchronous speed",
  unit: "r/min",
  symbol: "n_s",
  inputs: {"frequency":{"unit":"Hz","symbol":"f","meaning":"supply frequency"},"poles":{"unit":"pole","symbol":"2p","meaning":"number of poles"}},
  names: ["frequency","poles"],
  f: (frequency: number, poles: number) => 2 * 60 * frequency / poles,
  d: [
    (_frequency: number, poles: number) => 2 * 60 / poles,
    (frequency: number, poles: number) => -(2 * 60 * frequency / (poles * poles)),
  ],
  tex: "\\frac{2\\cdot 60\\cdot f}{ 2p}",
  template: "\\frac{2\\cdot 60\\cdot ⟦frequency⟧}{ ⟦poles⟧}",
  cell: "2 * 60 * {frequency} / {poles}",
  expression: "2 * seconds_per_minute * frequency / poles",
  valid: "Any polyphase machine; poles even.",
  source: "IEEE 112-2017 clause 5; definition",
} as const satisfies Compiled;
