// Written by scripts/generate.ts from machine.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const efficiency = {
  id: "machine.efficiency",
  title: "Efficiency as output over input",
  unit: "1",
  symbol: "\\eta",
  inputs: {"shaft_power":{"unit":"kW","symbol":"P","meaning":"shaft power"},"total_loss":{"unit":"kW","symbol":"\\Sigma P","meaning":"total loss"}},
  names: ["shaft_power","total_loss"],
  f: (shaft_power: number, total_loss: number) => shaft_power / (shaft_power + total_loss),
  d: [
    (shaft_power: number, total_loss: number) => total_loss / (shaft_power + total_loss) ** 2,
    (shaft_power: number, total_loss: number) => -(shaft_power / (shaft_power + total_loss) ** 2),
  ],
  tex: "\\frac{ P}{ P+ \\Sigma P}",
  template: "\\frac{ ⟦shaft_power⟧}{ ⟦shaft_power⟧+ ⟦total_loss⟧}",
  cell: "{shaft_power} / ({shaft_power} + {total_loss})",
  expression: "shaft_power / (shaft_power + total_loss)",
  valid: "Shaft power above zero.",
  source: "Definition; IEEE 112-2017 clause 6",
} as const satisfies Compiled;

export const fundamental_loss = {
  id: "machine.fundamental_loss",
  title: "Loss on a balanced sine",
  unit: "kW",
  symbol: "\\Sigma P_1",
  inputs: {"total_loss":{"unit":"kW","symbol":"\\Sigma P","meaning":"total loss"},"unbalance":{"unit":"kW","symbol":"P_u","meaning":"loss by the unbalance of the voltages"},"extra_loss":{"unit":"kW","symbol":"P_x","meaning":"extra loss by drive or distortion"}},
  names: ["total_loss","unbalance","extra_loss"],
  f: (total_loss: number, unbalance: number, extra_loss: number) => total_loss - unbalance - extra_loss,
  d: [
    () => 1,
    () => -1,
    () => -1,
  ],
  tex: "\\Sigma P- P_u- P_x",
  template: "⟦total_loss⟧- ⟦unbalance⟧- ⟦extra_loss⟧",
  cell: "{total_loss} - {unbalance} - {extra_loss}",
  expression: "total_loss - unbalance - extra_loss",
  valid: "Always.",
  source: "Sum of the losses by cause",
} as const satisfies Compiled;

export const input_power = {
  id: "machine.input_power",
  title: "Input power as shaft power and losses",
  unit: "kW",
  symbol: "P_1",
  inputs: {"shaft_power":{"unit":"kW","symbol":"P","meaning":"shaft power"},"total_loss":{"unit":"kW","symbol":"\\Sigma P","meaning":"total loss"}},
  names: ["shaft_power","total_loss"],
  f: (shaft_power: number, total_loss: number) => shaft_power + total_loss,
  d: [
    () => 1,
    () => 1,
  ],
  tex: "P+ \\Sigma P",
  template: "⟦shaft_power⟧+ ⟦total_loss⟧",
  cell: "{shaft_power} + {total_loss}",
  expression: "shaft_power + total_loss",
  valid: "Motoring.",
  source: "Energy balance",
} as const satisfies Compiled;

export const no_load_loss = {
  id: "machine.no_load_loss",
  title: "Core loss with friction and windage from the uncoupled test",
  unit: "kW",
  symbol: "P_{fe} + P_{fw}",
  inputs: {"no_load_power":{"unit":"kW","symbol":"P_0","meaning":"input power of the uncoupled test"},"no_load_stator_loss":{"unit":"kW","symbol":"P_{1,0}","meaning":"stator loss at the no-load current"}},
  names: ["no_load_power","no_load_stator_loss"],
  f: (no_load_power: number, no_load_stator_loss: number) => no_load_power - no_load_stator_loss,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "P_0- P_{1,0}",
  template: "⟦no_load_power⟧- ⟦no_load_stator_loss⟧",
  cell: "{no_load_power} - {no_load_stator_loss}",
  expression: "no_load_power - no_load_stator_loss",
  valid: "Near rated voltage; rotor loss at no load neglected.",
  source: "IEEE 112-2017 clause 5.5; C. I. Hubert, Electric Machines, example 5.16",
} as const satisfies Compiled;

export const other_part = {
  id: "machine.other_part",
  title: "What one loss leaves of a sum",
  unit: "kW",
  symbol: "P_b",
  inputs: {"sum":{"unit":"kW","symbol":"P_{ab}","meaning":"sum of two losses"},"part":{"unit":"kW","symbol":"P_a","meaning":"one of them"}},
  names: ["sum","part"],
  f: (sum: number, part: number) => sum - part,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "P_{ab}- P_a",
  template: "⟦sum⟧- ⟦part⟧",
  cell: "{sum} - {part}",
  expression: "sum - part",
  valid: "Result above zero.",
  source: "Arithmetic",
} as const satisfies Compiled;

export const resistance_at_temperature = {
  id: "machine.resistance_at_temperature",
  title: "Resistance at another temperature",
  unit: "Ω",
  symbol: "R_2",
  inputs: {"resistance":{"unit":"Ω","symbol":"R_1","meaning":"resistance as measured"},"measured_at":{"unit":"K","symbol":"t_1","meaning":"temperature at the measurement, in °C"},"wanted_at":{"unit":"K","symbol":"t_2","meaning":"temperature wanted, in °C"},"material":{"unit":"K","symbol":"k","meaning":"constant of the conductor: 234.5 for copper"}},
  names: ["resistance","measured_at","wanted_at","material"],
  f: (resistance: number, measured_at: number, wanted_at: number, material: number) => resistance * (material + wanted_at) / (material + measured_at),
  d: [
    (_resistance: number, measured_at: number, wanted_at: number, material: number) => (material + wanted_at) / (material + measured_at),
    (resistance: number, measured_at: number, wanted_at: number, material: number) => -((material + wanted_at) * resistance / (material + measured_at) ** 2),
    (resistance: number, measured_at: number, _wanted_at: number, material: number) => resistance / (material + measured_at),
    (resistance: number, measured_at: number, wanted_at: number, material: number) => (1 / (material + measured_at) - (1 / (material + measured_at)) ** 2 * (material + wanted_at)) * resistance,
  ],
  tex: "\\frac{ R_1\\cdot\\left( k+ t_2\\right)}{ k+ t_1}",
  template: "\\frac{ ⟦resistance⟧\\cdot\\left( ⟦material⟧+ ⟦wanted_at⟧\\right)}{ ⟦material⟧+ ⟦measured_at⟧}",
  cell: "{resistance} * ({material} + {wanted_at}) / ({material} + {measured_at})",
  expression: "resistance * (material + wanted_at) / (material + measured_at)",
  valid: "Copper or aluminium near room and running temperature.",
  source: "IEEE 112-2017 clause 5.3 (from memory); textbooks",
} as const satisfies Compiled;

export const shaft_power_at_load = {
  id: "machine.shaft_power_at_load",
  title: "Shaft power from load fraction",
  unit: "kW",
  symbol: "P",
  inputs: {"load_fraction":{"unit":"1","symbol":"x","meaning":"load fraction"},"rated_power":{"unit":"kW","symbol":"P_r","meaning":"rated shaft output"}},
  names: ["load_fraction","rated_power"],
  f: (load_fraction: number, rated_power: number) => load_fraction * rated_power,
  d: [
    (_load_fraction: number, rated_power: number) => rated_power,
    (load_fraction: number) => load_fraction,
  ],
  tex: "x\\cdot P_r",
  template: "⟦load_fraction⟧\\cdot ⟦rated_power⟧",
  cell: "{load_fraction} * {rated_power}",
  expression: "load_fraction * rated_power",
  valid: "Load fraction is taken without service factor.",
  source: "Definition",
} as const satisfies Compiled;

export const stator_loss_from_resistance = {
  id: "machine.stator_loss_from_resistance",
  title: "Stator loss from terminal resistance",
  unit: "kW",
  symbol: "P_1",
  inputs: {"resistance":{"unit":"Ω","symbol":"R","meaning":"resistance between two terminals"},"current":{"unit":"A","symbol":"I","meaning":"line current"}},
  names: ["resistance","current"],
  f: (resistance: number, current: number) => 1.5 * current * current * resistance / 1000,
  d: [
    (_resistance: number, current: number) => current * current * 3 / 2 / 1000,
    (resistance: number, current: number) => 3 * resistance * current / 1000,
  ],
  tex: "\\frac{1.5\\cdot{ I}^{2}\\cdot R}{ 1000}",
  template: "\\frac{1.5\\cdot{ ⟦current⟧}^{2}\\cdot ⟦resistance⟧}{ 1000}",
  cell: "1.5 * {current} ^ 2 * {resistance} / 1000",
  expression: "1.5 * current^2 * resistance / watts_per_kilowatt",
  valid: "Star and delta alike; mean of the three pairs.",
  source: "IEEE 112-2017 clause 5.4; B. L. Theraja, A Textbook of Electrical Technology vol. II, example 34.38",
} as const satisfies Compiled;

export const stray_with_extra_loss = {
  id: "machine.stray_with_extra_loss",
  title: "Stray-load loss with what drive or distortion add",
  unit: "kW",
  symbol: "P_{LL}",
  inputs: {"stray":{"unit":"kW","symbol":"P_{LL,1}","meaning":"stray-load loss on a sine"},"extra_loss":{"unit":"kW","symbol":"P_x","meaning":"extra loss by drive or distortion"}},
  names: ["stray","extra_loss"],
  f: (stray: number, extra_loss: number) => stray + extra_loss,
  d: [
    () => 1,
    () => 1,
  ],
  tex: "P_{LL,1}+ P_x",
  template: "⟦stray⟧+ ⟦extra_loss⟧",
  cell: "{stray} + {extra_loss}",
  expression: "stray + extra_loss",
  valid: "Always.",
  source: "The extra losses of a waveform count with the stray-load loss (common practice)",
} as const satisfies Compiled;

export const total_loss = {
  id: "machine.total_loss",
  title: "Sum of the five losses",
  unit: "kW",
  symbol: "\\Sigma P",
  inputs: {"stator":{"unit":"kW","symbol":"P_1","meaning":"stator loss"},"rotor":{"unit":"kW","symbol":"P_2","meaning":"rotor loss"},"core":{"unit":"kW","symbol":"P_{fe}","meaning":"core loss"},"friction_windage":{"unit":"kW","symbol":"P_{fw}","meaning":"friction and windage"},"stray":{"unit":"kW","symbol":"P_{LL}","meaning":"stray-load loss"}},
  names: ["stator","rotor","core","friction_windage","stray"],
  f: (stator: number, rotor: number, core: number, friction_windage: number, stray: number) => stator + rotor + core + friction_windage + stray,
  d: [
    () => 1,
    () => 1,
    () => 1,
    () => 1,
    () => 1,
  ],
  tex: "P_1+ P_2+ P_{fe}+ P_{fw}+ P_{LL}",
  template: "⟦stator⟧+ ⟦rotor⟧+ ⟦core⟧+ ⟦friction_windage⟧+ ⟦stray⟧",
  cell: "{stator} + {rotor} + {core} + {friction_windage} + {stray}",
  expression: "stator + rotor + core + friction_windage + stray",
  valid: "Always.",
  source: "IEEE 112-2017 clause 5; IEC 60034-2-1 clause 6",
} as const satisfies Compiled;
