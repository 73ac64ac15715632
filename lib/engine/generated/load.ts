// Written by scripts/generate.ts from load.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const load_fraction = {
  id: "load.load_fraction",
  title: "Load fraction",
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

export const load_from_current_ratio = {
  id: "load.load_from_current_ratio",
  title: "Load as the ratio of measured to rated current",
  unit: "1",
  symbol: "x",
  inputs: {"current":{"unit":"A","symbol":"I","meaning":"measured current"},"rated_current":{"unit":"A","symbol":"I_r","meaning":"rated current"},"voltage":{"unit":"V","symbol":"U","meaning":"measured voltage"},"rated_voltage":{"unit":"V","symbol":"U_r","meaning":"rated voltage"}},
  names: ["current","rated_current","voltage","rated_voltage"],
  f: (current: number, rated_current: number, voltage: number, rated_voltage: number) => current / rated_current * voltage / rated_voltage,
  d: [
    (_current: number, rated_current: number, voltage: number, rated_voltage: number) => voltage / rated_voltage / rated_current,
    (current: number, rated_current: number, voltage: number, rated_voltage: number) => -(voltage * current / (rated_current * rated_current) / rated_voltage),
    (current: number, rated_current: number, _voltage: number, rated_voltage: number) => current / rated_voltage / rated_current,
    (current: number, rated_current: number, voltage: number, rated_voltage: number) => -(current * voltage / (rated_voltage * rated_voltage) / rated_current),
  ],
  tex: "\\frac{\\frac{ I}{ I_r}\\cdot U}{ U_r}",
  template: "\\frac{\\frac{ ⟦current⟧}{ ⟦rated_current⟧}\\cdot ⟦voltage⟧}{ ⟦rated_voltage⟧}",
  cell: "{current} / {rated_current} * {voltage} / {rated_voltage}",
  expression: "current / rated_current * voltage / rated_voltage",
  valid: "Above about half load; below it the magnetising current makes the load look larger than it is.",
  source: "US DOE fact sheet on motor load and efficiency, current method (from memory; case recomputed)",
} as const satisfies Compiled;

export const load_from_input_ratio = {
  id: "load.load_from_input_ratio",
  title: "Load as the ratio of measured to rated input",
  unit: "1",
  symbol: "x",
  inputs: {"input_power":{"unit":"kW","symbol":"P_1","meaning":"measured input power"},"rated_input_power":{"unit":"kW","symbol":"P_{1r}","meaning":"rated output over rated efficiency"}},
  names: ["input_power","rated_input_power"],
  f: (input_power: number, rated_input_power: number) => input_power / rated_input_power,
  d: [
    (_input_power: number, rated_input_power: number) => 1 / rated_input_power,
    (input_power: number, rated_input_power: number) => -(input_power / (rated_input_power * rated_input_power)),
  ],
  tex: "\\frac{ P_1}{ P_{1r}}",
  template: "\\frac{ ⟦input_power⟧}{ ⟦rated_input_power⟧}",
  cell: "{input_power} / {rated_input_power}",
  expression: "input_power / rated_input_power",
  valid: "A first look: takes the rated efficiency for the efficiency at the load.",
  source: "US DOE fact sheet on motor load and efficiency, input power method (from memory; case recomputed)",
} as const satisfies Compiled;

export const load_from_slip = {
  id: "load.load_from_slip",
  title: "Load from slip, with the voltage allowed for",
  unit: "1",
  symbol: "x",
  inputs: {"synchronous_speed":{"unit":"r/min","symbol":"n_s","meaning":"synchronous speed at the supply frequency"},"shaft_speed":{"unit":"r/min","symbol":"n","meaning":"measured speed"},"rated_synchronous_speed":{"unit":"r/min","symbol":"n_{s,r}","meaning":"synchronous speed at rated frequency"},"rated_speed":{"unit":"r/min","symbol":"n_r","meaning":"stamped speed"},"voltage":{"unit":"V","symbol":"U","meaning":"measured voltage"},"rated_voltage":{"unit":"V","symbol":"U_r","meaning":"rated voltage"}},
  names: ["synchronous_speed","shaft_speed","rated_synchronous_speed","rated_speed","voltage","rated_voltage"],
  f: (synchronous_speed: number, shaft_speed: number, rated_synchronous_speed: number, rated_speed: number, voltage: number, rated_voltage: number) => (synchronous_speed - shaft_speed) / ((rated_synchronous_speed - rated_speed) * (rated_voltage / voltage) ** 2),
  d: [
    (_synchronous_speed: number, _shaft_speed: number, rated_synchronous_speed: number, rated_speed: number, voltage: number, rated_voltage: number) => voltage * voltage / (rated_voltage * rated_voltage) / (rated_synchronous_speed - rated_speed),
    (_synchronous_speed: number, _shaft_speed: number, rated_synchronous_speed: number, rated_speed: number, voltage: number, rated_voltage: number) => -(voltage * voltage / (rated_voltage * rated_voltage) / (rated_synchronous_speed - rated_speed)),
    (synchronous_speed: number, shaft_speed: number, rated_synchronous_speed: number, rated_speed: number, voltage: number, rated_voltage: number) => voltage * voltage * (shaft_speed - synchronous_speed) * rated_voltage ** (-2) / (rated_synchronous_speed - rated_speed) ** 2,
    (synchronous_speed: number, shaft_speed: number, rated_synchronous_speed: number, rated_speed: number, voltage: number, rated_voltage: number) => voltage * voltage * (synchronous_speed - shaft_speed) * rated_voltage ** (-2) / (rated_synchronous_speed - rated_speed) ** 2,
    (synchronous_speed: number, shaft_speed: number, rated_synchronous_speed: number, rated_speed: number, voltage: number, rated_voltage: number) => 2 * voltage * (shaft_speed - synchronous_speed) * (rated_speed - rated_synchronous_speed) * rated_voltage ** (-2) / (rated_synchronous_speed - rated_speed) ** 2,
    (synchronous_speed: number, shaft_speed: number, rated_synchronous_speed: number, rated_speed: number, voltage: number, rated_voltage: number) => 2 * voltage * voltage * (shaft_speed - synchronous_speed) / rated_voltage ** 3 / (rated_synchronous_speed - rated_speed),
  ],
  tex: "\\frac{ n_s- n}{\\left( n_{s,r}- n_r\\right)\\cdot\\left({\\frac{ U_r}{ U}}\\right)^{2}}",
  template: "\\frac{ ⟦synchronous_speed⟧- ⟦shaft_speed⟧}{\\left( ⟦rated_synchronous_speed⟧- ⟦rated_speed⟧\\right)\\cdot\\left({\\frac{ ⟦rated_voltage⟧}{ ⟦voltage⟧}}\\right)^{2}}",
  cell: "({synchronous_speed} - {shaft_speed}) / (({rated_synchronous_speed} - {rated_speed}) * ({rated_voltage} / {voltage}) ^ 2)",
  expression: "(synchronous_speed - shaft_speed) / ((rated_synchronous_speed - rated_speed) * (rated_voltage / voltage)^2)",
  valid: "Cage motors between about 20 and 120 % load; rests wholly on the stamped slip, whose tolerance is 20 %.",
  source: "US DOE fact sheet on motor load and efficiency, slip method (from memory; cases recomputed); NEMA MG 1 12.46 for the tolerance",
} as const satisfies Compiled;

export const power_behind_drive = {
  id: "load.power_behind_drive",
  title: "Motor input behind a drive",
  unit: "kW",
  symbol: "P_1",
  inputs: {"drive_input_power":{"unit":"kW","symbol":"P_d","meaning":"power measured at the input of the drive"},"drive_efficiency":{"unit":"1","symbol":"\\eta_d","meaning":"efficiency of the drive at this load"}},
  names: ["drive_input_power","drive_efficiency"],
  f: (drive_input_power: number, drive_efficiency: number) => drive_input_power * drive_efficiency,
  d: [
    (_drive_input_power: number, drive_efficiency: number) => drive_efficiency,
    (drive_input_power: number) => drive_input_power,
  ],
  tex: "P_d\\cdot \\eta_d",
  template: "⟦drive_input_power⟧\\cdot ⟦drive_efficiency⟧",
  cell: "{drive_input_power} * {drive_efficiency}",
  expression: "drive_input_power * drive_efficiency",
  valid: "Adjustable-speed drives with a passive rectifier.",
  source: "US DOE Motor Systems Tip Sheet 11, table 1",
} as const satisfies Compiled;

export const shaft_power_by_losses = {
  id: "load.shaft_power_by_losses",
  title: "Shaft power as input less segregated losses",
  unit: "kW",
  symbol: "P",
  inputs: {"input_power":{"unit":"kW","symbol":"P_{in}","meaning":"input power"},"stator":{"unit":"kW","symbol":"P_1","meaning":"stator loss"},"core":{"unit":"kW","symbol":"P_{fe}","meaning":"core loss"},"slip":{"unit":"1","symbol":"s","meaning":"slip"},"friction_windage":{"unit":"kW","symbol":"P_{fw}","meaning":"friction and windage"},"stray":{"unit":"kW","symbol":"P_{LL}","meaning":"stray-load loss"}},
  names: ["input_power","stator","core","slip","friction_windage","stray"],
  f: (input_power: number, stator: number, core: number, slip: number, friction_windage: number, stray: number) => (input_power - stator - core) * (1 - slip) - friction_windage - stray,
  d: [
    (_input_power: number, _stator: number, _core: number, slip: number) => 1 - slip,
    (_input_power: number, _stator: number, _core: number, slip: number) => slip - 1,
    (_input_power: number, _stator: number, _core: number, slip: number) => slip - 1,
    (input_power: number, stator: number, core: number) => stator + core - input_power,
    () => -1,
    () => -1,
  ],
  tex: "\\left( P_{in}- P_1- P_{fe}\\right)\\cdot\\left(1- s\\right)- P_{fw}- P_{LL}",
  template: "\\left( ⟦input_power⟧- ⟦stator⟧- ⟦core⟧\\right)\\cdot\\left(1- ⟦slip⟧\\right)- ⟦friction_windage⟧- ⟦stray⟧",
  cell: "({input_power} - {stator} - {core}) * (1 - {slip}) - {friction_windage} - {stray}",
  expression: "(input_power - stator - core) * (1 - slip) - friction_windage - stray",
  valid: "Motoring; core loss before the air gap, stray-load loss behind it.",
  source: "IEEE 112-2017 methods E and E1; IEC 60034-2-1 clause 6",
} as const satisfies Compiled;

export const voltage_ratio = {
  id: "load.voltage_ratio",
  title: "Voltage ratio",
  unit: "1",
  symbol: "u",
  inputs: {"voltage":{"unit":"V","symbol":"U","meaning":"terminal voltage"},"rated_voltage":{"unit":"V","symbol":"U_r","meaning":"rated voltage"}},
  names: ["voltage","rated_voltage"],
  f: (voltage: number, rated_voltage: number) => voltage / rated_voltage,
  d: [
    (_voltage: number, rated_voltage: number) => 1 / rated_voltage,
    (voltage: number, rated_voltage: number) => -(voltage / (rated_voltage * rated_voltage)),
  ],
  tex: "\\frac{ U}{ U_r}",
  template: "\\frac{ ⟦voltage⟧}{ ⟦rated_voltage⟧}",
  cell: "{voltage} / {rated_voltage}",
  expression: "voltage / rated_voltage",
  valid: "Always.",
  source: "Definition",
} as const satisfies Compiled;
