/**
 * Where the width of each observation comes from, by the head of its name. The widths themselves stand where the observations are made;
 * docs/methods/machine-model.md and joint-estimate.md say the same at more length.
 */
const WIDTHS: readonly (readonly [head: string, source: string])[] = [
  ['stamped_efficiency', 'tolerance of the standard taken as 2.5 deviations: NEMA MG 1 12.58.2, IEC 60034-1'],
  ['assumed_efficiency', 'spread of motors of that class or year: common practice'],
  ['tested_', 'the test’s own uncertainty'],
  ['stamped_speed', 'tolerance of the slip taken as 2.5 deviations (NEMA MG 1 12.46, IEC 60034-1), and rounding of the stamp'],
  ['typical_slip', 'range of the rotor’s share in the loss: table of loss shares'],
  ['stamped_current', 'tolerance of the standard taken as 2.5 deviations: NEMA MG 1 12.47, from memory'],
  ['stamped_power_factor', 'rounding and spread: common practice'],
  ['code_letter', 'width of the letter’s band, and running over locked leakage: common practice'],
  ['typical_core_loss', 'scatter of the published shares, and a third of their range at least: common practice'],
  ['typical_friction', 'scatter of the published shares, and a third of their range at least: common practice'],
  ['typical_stray_loss', 'scatter of the published shares, and a third of their range at least: common practice'],
  ['measured_', 'reading of the test: common practice'],
  ['no_load_', 'reading of the uncoupled run: common practice'],
  ['typical_', 'common practice'],
  ['input_power_row_', 'class of the meter taken as rectangular (GUM 4.3.7), and what the circuit leaves out (common practice)'],
  ['current_row_', 'class of the meter taken as rectangular (GUM 4.3.7), and saturation and skew (common practice)'],
  ['speed_row_', 'tachometer and frequency taken as rectangular (GUM 4.3.7), and the skin effect in the bars (common practice)'],
  ['voltage_row_', 'class of the meter taken as rectangular (GUM 4.3.7), or common practice where it was not read'],
  ['heat_row_', 'spread of the rise about its rule, less where the winding was measured: common practice'],
  ['prior_load_row_', 'most industrial motors run at 40 to 90 % of rating: common practice'],
];

/** Source of the width of an observation. */
export function widthSource(name: string): string {
  return WIDTHS.find(([head]) => name.startsWith(head))?.[1] ?? 'common practice';
}
