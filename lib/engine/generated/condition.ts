// Written by scripts/generate.ts from condition.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const broken_bars = {
  id: "condition.broken_bars",
  title: "Estimated broken bars",
  unit: "1",
  symbol: "n",
  inputs: {"bars":{"unit":"1","symbol":"R","meaning":"rotor bars"},"level":{"unit":"dB","symbol":"N","meaning":"sideband level at full load, dB below the line component"},"decade":{"unit":"dB","symbol":"20","meaning":"20 dB for a decade of amplitude"},"pole_pairs":{"unit":"1","symbol":"p","meaning":"pole pairs"}},
  names: ["bars","level","decade","pole_pairs"],
  f: (bars: number, level: number, decade: number, pole_pairs: number) => 2 * bars / (Math.exp(Math.log(10) * level / decade) + pole_pairs),
  d: [
    (_bars: number, level: number, decade: number, pole_pairs: number) => 2 / (Math.exp(2.302585092994046 * level / decade) + pole_pairs),
    (bars: number, level: number, decade: number, pole_pairs: number) => -(4.605170185988092 * bars * Math.exp(2.302585092994046 * level / decade) / (Math.exp(2.302585092994046 * level / decade) + pole_pairs) ** 2 / decade),
    (bars: number, level: number, decade: number, pole_pairs: number) => 4.605170185988092 * bars * level * Math.exp(2.302585092994046 * level / decade) * (Math.exp(2.302585092994046 * level / decade) + pole_pairs) ** (-2) / (decade * decade),
    (bars: number, level: number, decade: number, pole_pairs: number) => -(2 * bars / (Math.exp(2.302585092994046 * level / decade) + pole_pairs) ** 2),
  ],
  tex: "\\frac{2\\cdot R}{\\exp\\left(\\frac{\\ln\\left(10\\right)\\cdot N}{ 20}\\right)+ p}",
  template: "\\frac{2\\cdot ⟦bars⟧}{\\exp\\left(\\frac{\\ln\\left(10\\right)\\cdot ⟦level⟧}{ ⟦decade⟧}\\right)+ ⟦pole_pairs⟧}",
  cell: "2 * {bars} / (EXP(LN(10) * {level} / {decade}) + {pole_pairs})",
  expression: "2 * bars / (exp(log(10) * level / decade) + pole_pairs)",
  valid: "At or near full load, counted bars, steady load.",
  source: "Thomson and Rankin 1987; Thomson and Fenger 2001 (from memory)",
} as const satisfies Compiled;

export const deviation_from_mean = {
  id: "condition.deviation_from_mean",
  title: "Unbalance as the largest deviation from the mean",
  unit: "%",
  symbol: "U",
  inputs: {"farthest":{"unit":"1","symbol":"v_1","meaning":"the value farthest from the mean"},"second":{"unit":"1","symbol":"v_2","meaning":"one of the other two"},"third":{"unit":"1","symbol":"v_3","meaning":"the other"},"sign":{"unit":"1","symbol":"\\sigma","meaning":"1 when the farthest value lies above the mean, −1 below"}},
  names: ["farthest","second","third","sign"],
  f: (farthest: number, second: number, third: number, sign: number) => 100 * sign * (3 * farthest / (farthest + second + third) - 1),
  d: [
    (farthest: number, second: number, third: number, sign: number) => (3 - 3 * farthest / (farthest + second + third)) * 100 * sign / (farthest + second + third),
    (farthest: number, second: number, third: number, sign: number) => -(3 * 100 * sign * farthest / (farthest + second + third) ** 2),
    (farthest: number, second: number, third: number, sign: number) => -(3 * 100 * sign * farthest / (farthest + second + third) ** 2),
    (farthest: number, second: number, third: number) => (3 * farthest / (farthest + second + third) - 1) * 100,
  ],
  tex: "100\\cdot \\sigma\\cdot\\left(\\frac{3\\cdot v_1}{ v_1+ v_2+ v_3}-1\\right)",
  template: "100\\cdot ⟦sign⟧\\cdot\\left(\\frac{3\\cdot ⟦farthest⟧}{ ⟦farthest⟧+ ⟦second⟧+ ⟦third⟧}-1\\right)",
  cell: "100 * {sign} * (3 * {farthest} / ({farthest} + {second} + {third}) - 1)",
  expression: "percent * sign * (3 * farthest / (farthest + second + third) - 1)",
  valid: "Three line-to-line voltages, line currents or terminal resistances of one moment.",
  source: "NEMA MG 1 14.36 (definition); US DOE Motor Systems Tip Sheet 7",
} as const satisfies Compiled;

export const excess_current_unbalance = {
  id: "condition.excess_current_unbalance",
  title: "Current unbalance beyond what the voltage explains",
  unit: "%",
  symbol: "U_{I,x}",
  inputs: {"current_unbalance":{"unit":"%","symbol":"U_I","meaning":"current unbalance"},"voltage_unbalance":{"unit":"%","symbol":"U","meaning":"voltage unbalance"},"multiple":{"unit":"1","symbol":"m","meaning":"current unbalance for each per cent of voltage unbalance"}},
  names: ["current_unbalance","voltage_unbalance","multiple"],
  f: (current_unbalance: number, voltage_unbalance: number, multiple: number) => current_unbalance - multiple * voltage_unbalance,
  d: [
    () => 1,
    (_current_unbalance: number, _voltage_unbalance: number, multiple: number) => -multiple,
    (_current_unbalance: number, voltage_unbalance: number) => -voltage_unbalance,
  ],
  tex: "U_I- m\\cdot U",
  template: "⟦current_unbalance⟧- ⟦multiple⟧\\cdot ⟦voltage_unbalance⟧",
  cell: "{current_unbalance} - {multiple} * {voltage_unbalance}",
  expression: "current_unbalance - multiple * voltage_unbalance",
  valid: "Near rated load; the multiple grows as the load falls.",
  source: "US DOE Motor Systems Tip Sheet 7: 6 to 10 times",
} as const satisfies Compiled;

export const insulation_at_reference = {
  id: "condition.insulation_at_reference",
  title: "Insulation resistance at 40 °C",
  unit: "MΩ",
  symbol: "R_{40}",
  inputs: {"resistance":{"unit":"MΩ","symbol":"R_T","meaning":"one-minute resistance as measured"},"factor":{"unit":"1","symbol":"K_T","meaning":"factor to 40 °C"}},
  names: ["resistance","factor"],
  f: (resistance: number, factor: number) => resistance * factor,
  d: [
    (_resistance: number, factor: number) => factor,
    (resistance: number) => resistance,
  ],
  tex: "R_T\\cdot K_T",
  template: "⟦resistance⟧\\cdot ⟦factor⟧",
  cell: "{resistance} * {factor}",
  expression: "resistance * factor",
  valid: "As the factor.",
  source: "IEEE 43-2013 clause 6.3",
} as const satisfies Compiled;

export const insulation_factor_thermoplastic = {
  id: "condition.insulation_factor_thermoplastic",
  title: "Factor to 40 °C, thermoplastic insulation",
  unit: "1",
  symbol: "K_T",
  inputs: {"temperature":{"unit":"K","symbol":"T","meaning":"winding temperature, in °C"},"reference":{"unit":"K","symbol":"T_r","meaning":"40 °C"},"halving":{"unit":"K","symbol":"\\Delta","meaning":"10 K: resistance halves for each"}},
  names: ["temperature","reference","halving"],
  f: (temperature: number, reference: number, halving: number) => Math.exp(-Math.log(2) * (reference - temperature) / halving),
  d: [
    (temperature: number, reference: number, halving: number) => 0.6931471805599453 * Math.exp(0.6931471805599453 * (temperature - reference) / halving) / halving,
    (temperature: number, reference: number, halving: number) => -(0.6931471805599453 * Math.exp(0.6931471805599453 * (temperature - reference) / halving) / halving),
    (temperature: number, reference: number, halving: number) => 0.6931471805599453 * (reference - temperature) * Math.exp(0.6931471805599453 * (temperature - reference) / halving) / (halving * halving),
  ],
  tex: "\\exp\\left(\\frac{-\\ln\\left(2\\right)\\cdot\\left( T_r- T\\right)}{ \\Delta}\\right)",
  template: "\\exp\\left(\\frac{-\\ln\\left(2\\right)\\cdot\\left( ⟦reference⟧- ⟦temperature⟧\\right)}{ ⟦halving⟧}\\right)",
  cell: "EXP(-LN(2) * ({reference} - {temperature}) / {halving})",
  expression: "exp(-log(2) * (reference - temperature) / halving)",
  valid: "Above the dew point; asphaltic and shellac windings, mostly before the 1960s.",
  source: "IEEE 43-2013 clause 6.3 (from memory); halving read in a secondary text",
} as const satisfies Compiled;

export const insulation_factor_thermosetting = {
  id: "condition.insulation_factor_thermosetting",
  title: "Factor to 40 °C, thermosetting insulation",
  unit: "1",
  symbol: "K_T",
  inputs: {"temperature":{"unit":"K","symbol":"T","meaning":"winding temperature, in °C"},"reference":{"unit":"K","symbol":"T_r","meaning":"40 °C"},"zero":{"unit":"K","symbol":"T_0","meaning":"273 K, the zero of the scale as the standard rounds it"},"coefficient":{"unit":"K","symbol":"c","meaning":"4230 above 40 °C, 1245 below"}},
  names: ["temperature","reference","zero","coefficient"],
  f: (temperature: number, reference: number, zero: number, coefficient: number) => Math.exp(-coefficient * (1 / (temperature + zero) - 1 / (reference + zero))),
  d: [
    (temperature: number, reference: number, zero: number, coefficient: number) => coefficient * Math.exp((1 / (reference + zero) - 1 / (temperature + zero)) * coefficient) / (temperature + zero) ** 2,
    (temperature: number, reference: number, zero: number, coefficient: number) => -(coefficient * Math.exp((1 / (reference + zero) - 1 / (temperature + zero)) * coefficient) / (reference + zero) ** 2),
    (temperature: number, reference: number, zero: number, coefficient: number) => (1 / (temperature + zero) ** 2 - 1 / (reference + zero) ** 2) * coefficient * Math.exp((1 / (reference + zero) - 1 / (temperature + zero)) * coefficient),
    (temperature: number, reference: number, zero: number, coefficient: number) => (1 / (reference + zero) - 1 / (temperature + zero)) * Math.exp((1 / (reference + zero) - 1 / (temperature + zero)) * coefficient),
  ],
  tex: "\\exp\\left(- c\\cdot\\left(\\frac{1}{ T+ T_0}-\\frac{1}{ T_r+ T_0}\\right)\\right)",
  template: "\\exp\\left(- ⟦coefficient⟧\\cdot\\left(\\frac{1}{ ⟦temperature⟧+ ⟦zero⟧}-\\frac{1}{ ⟦reference⟧+ ⟦zero⟧}\\right)\\right)",
  cell: "EXP(-{coefficient} * (1 / ({temperature} + {zero}) - 1 / ({reference} + {zero})))",
  expression: "exp(-coefficient * (1 / (temperature + zero) - 1 / (reference + zero)))",
  valid: "10 to 85 °C, above the dew point.",
  source: "IEEE 43-2013 clause 6.3 (from memory)",
} as const satisfies Compiled;

export const insulation_life_share = {
  id: "condition.insulation_life_share",
  title: "Insulation life left by a higher temperature",
  unit: "1",
  symbol: "L / L_0",
  inputs: {"excess":{"unit":"K","symbol":"\\Delta T","meaning":"winding temperature above the one that the life belongs to"},"halving":{"unit":"K","symbol":"\\Delta","meaning":"10 K: life halves for each"}},
  names: ["excess","halving"],
  f: (excess: number, halving: number) => Math.exp(-Math.log(2) * excess / halving),
  d: [
    (excess: number, halving: number) => -(0.6931471805599453 * Math.exp(-(0.6931471805599453 * excess / halving)) / halving),
    (excess: number, halving: number) => 0.6931471805599453 * excess * Math.exp(-(0.6931471805599453 * excess / halving)) / (halving * halving),
  ],
  tex: "\\exp\\left(\\frac{-\\ln\\left(2\\right)\\cdot \\Delta T}{ \\Delta}\\right)",
  template: "\\exp\\left(\\frac{-\\ln\\left(2\\right)\\cdot ⟦excess⟧}{ ⟦halving⟧}\\right)",
  cell: "EXP(-LN(2) * {excess} / {halving})",
  expression: "exp(-log(2) * excess / halving)",
  valid: "To compare, not to forecast; a mean over materials, cautious above about 155 °C.",
  source: "US DOE Motor Systems Tip Sheets 3 and 7 (2012)",
} as const satisfies Compiled;

export const old_insulation_minimum = {
  id: "condition.old_insulation_minimum",
  title: "Least insulation resistance of old windings",
  unit: "MΩ",
  symbol: "R_{min}",
  inputs: {"voltage":{"unit":"V","symbol":"U_r","meaning":"rated line-to-line voltage"},"per_kilovolt":{"unit":"MΩ","symbol":"a","meaning":"1 MΩ for each kilovolt"},"unit_voltage":{"unit":"V","symbol":"U_1","meaning":"1000 V"},"offset":{"unit":"MΩ","symbol":"b","meaning":"1 MΩ"}},
  names: ["voltage","per_kilovolt","unit_voltage","offset"],
  f: (voltage: number, per_kilovolt: number, unit_voltage: number, offset: number) => per_kilovolt * voltage / unit_voltage + offset,
  d: [
    (_voltage: number, per_kilovolt: number, unit_voltage: number) => per_kilovolt / unit_voltage,
    (voltage: number, _per_kilovolt: number, unit_voltage: number) => voltage / unit_voltage,
    (voltage: number, per_kilovolt: number, unit_voltage: number) => -(per_kilovolt * voltage / (unit_voltage * unit_voltage)),
    () => 1,
  ],
  tex: "\\frac{ a\\cdot U_r}{ U_1}+ b",
  template: "\\frac{ ⟦per_kilovolt⟧\\cdot ⟦voltage⟧}{ ⟦unit_voltage⟧}+ ⟦offset⟧",
  cell: "{per_kilovolt} * {voltage} / {unit_voltage} + {offset}",
  expression: "per_kilovolt * voltage / unit_voltage + offset",
  valid: "Most windings made before about 1970.",
  source: "IEEE 43-2013 clause 12.3: kV + 1 MΩ (read in a secondary text)",
} as const satisfies Compiled;

export const overload = {
  id: "condition.overload",
  title: "Load against the service factor",
  unit: "1",
  symbol: "x / k_{SF}",
  inputs: {"load_fraction":{"unit":"1","symbol":"x","meaning":"load fraction"},"service_factor":{"unit":"1","symbol":"k_{SF}","meaning":"service factor"}},
  names: ["load_fraction","service_factor"],
  f: (load_fraction: number, service_factor: number) => load_fraction / service_factor,
  d: [
    (_load_fraction: number, service_factor: number) => 1 / service_factor,
    (load_fraction: number, service_factor: number) => -(load_fraction / (service_factor * service_factor)),
  ],
  tex: "\\frac{ x}{ k_{SF}}",
  template: "\\frac{ ⟦load_fraction⟧}{ ⟦service_factor⟧}",
  cell: "{load_fraction} / {service_factor}",
  expression: "load_fraction / service_factor",
  valid: "Steady load.",
  source: "NEMA MG 1 1.42 (service factor)",
} as const satisfies Compiled;

export const relative_deviation = {
  id: "condition.relative_deviation",
  title: "Deviation from the rated value",
  unit: "%",
  symbol: "\\Delta",
  inputs: {"value":{"unit":"V","symbol":"U","meaning":"measured value"},"rated":{"unit":"V","symbol":"U_r","meaning":"rated value"}},
  names: ["value","rated"],
  f: (value: number, rated: number) => 100 * (value / rated - 1),
  d: [
    (_value: number, rated: number) => 100 / rated,
    (value: number, rated: number) => -(100 * value / (rated * rated)),
  ],
  tex: "100\\cdot\\left(\\frac{ U}{ U_r}-1\\right)",
  template: "100\\cdot\\left(\\frac{ ⟦value⟧}{ ⟦rated⟧}-1\\right)",
  cell: "100 * ({value} / {rated} - 1)",
  expression: "percent * (value / rated - 1)",
  valid: "Always.",
  source: "Definition",
} as const satisfies Compiled;

export const sideband_at_full_load = {
  id: "condition.sideband_at_full_load",
  title: "Sideband level at full load",
  unit: "dB",
  symbol: "N",
  inputs: {"level":{"unit":"dB","symbol":"N_x","meaning":"mean of upper and lower sideband, dB below the line component"},"correction":{"unit":"dB","symbol":"\\Delta N","meaning":"correction to full load"}},
  names: ["level","correction"],
  f: (level: number, correction: number) => level - correction,
  d: [
    () => 1,
    () => -1,
  ],
  tex: "N_x- \\Delta N",
  template: "⟦level⟧- ⟦correction⟧",
  cell: "{level} - {correction}",
  expression: "level - correction",
  valid: "As the correction.",
  source: "Own derivation, see the correction",
} as const satisfies Compiled;

export const sideband_correction = {
  id: "condition.sideband_correction",
  title: "Correction of a sideband level to full load",
  unit: "dB",
  symbol: "\\Delta N",
  inputs: {"decade":{"unit":"dB","symbol":"20","meaning":"20 dB for a decade of amplitude"},"load_fraction":{"unit":"1","symbol":"x","meaning":"load fraction at the reading"},"magnetising_share":{"unit":"1","symbol":"i_0","meaning":"magnetising share"}},
  names: ["decade","load_fraction","magnetising_share"],
  f: (decade: number, load_fraction: number, magnetising_share: number) => decade * Math.log10(Math.sqrt(magnetising_share * magnetising_share + load_fraction * load_fraction * (1 - magnetising_share * magnetising_share)) / load_fraction),
  d: [
    (_decade: number, load_fraction: number, magnetising_share: number) => Math.log10(Math.sqrt(magnetising_share * magnetising_share + load_fraction * load_fraction * (1 - magnetising_share * magnetising_share)) / load_fraction),
    (decade: number, load_fraction: number, magnetising_share: number) => 0.43429448190325176 * (load_fraction * load_fraction * (1 - magnetising_share * magnetising_share) / Math.sqrt(magnetising_share * magnetising_share + load_fraction * load_fraction * (1 - magnetising_share * magnetising_share)) ** 2 - 1) * decade / load_fraction,
    (decade: number, load_fraction: number, magnetising_share: number) => 0.21714724095162588 * (2 - 2 * load_fraction * load_fraction) * magnetising_share * decade / Math.sqrt(magnetising_share * magnetising_share + load_fraction * load_fraction * (1 - magnetising_share * magnetising_share)) ** 2,
  ],
  tex: "20\\cdot\\log_{10}\\left(\\frac{\\sqrt{{ i_0}^{2}+{ x}^{2}\\cdot\\left(1-{ i_0}^{2}\\right)}}{ x}\\right)",
  template: "⟦decade⟧\\cdot\\log_{10}\\left(\\frac{\\sqrt{{ ⟦magnetising_share⟧}^{2}+{ ⟦load_fraction⟧}^{2}\\cdot\\left(1-{ ⟦magnetising_share⟧}^{2}\\right)}}{ ⟦load_fraction⟧}\\right)",
  cell: "{decade} * LOG10(SQRT({magnetising_share} ^ 2 + {load_fraction} ^ 2 * (1 - {magnetising_share} ^ 2)) / {load_fraction})",
  expression: "decade * log10(sqrt(magnetising_share^2 + load_fraction^2 * (1 - magnetising_share^2)) / load_fraction)",
  valid: "Load of 40 % and more; inertia, interbar currents and saturation left out.",
  source: "Line current as phasor sum, sidebands in proportion to the load current; own derivation",
} as const satisfies Compiled;

export const unbalance_rise_factor = {
  id: "condition.unbalance_rise_factor",
  title: "Temperature rise under voltage unbalance",
  unit: "1",
  symbol: "k_t",
  inputs: {"unbalance":{"unit":"%","symbol":"U","meaning":"voltage unbalance"},"unit_percent":{"unit":"%","symbol":"1\\,\\%","meaning":"one per cent"}},
  names: ["unbalance","unit_percent"],
  f: (unbalance: number, unit_percent: number) => 1 + 2 * unbalance * unbalance / (100 * unit_percent),
  d: [
    (unbalance: number, unit_percent: number) => 4 * unbalance / unit_percent / 100,
    (unbalance: number, unit_percent: number) => -(2 * unbalance * unbalance / (unit_percent * unit_percent) / 100),
  ],
  tex: "1+\\frac{2\\cdot{ U}^{2}}{ 100\\cdot 1\\,\\%}",
  template: "1+\\frac{2\\cdot{ ⟦unbalance⟧}^{2}}{ 100\\cdot ⟦unit_percent⟧}",
  cell: "1 + 2 * {unbalance} ^ 2 / (100 * {unit_percent})",
  expression: "1 + 2 * unbalance^2 / (percent * unit_percent)",
  valid: "Up to about 5 %: per cent unbalance squared and doubled is the rise in per cent.",
  source: "US DOE Motor Systems Tip Sheet 7",
} as const satisfies Compiled;
