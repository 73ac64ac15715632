// Written by scripts/generate.ts from duty.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const load_of_step = {
  id: "duty.load_of_step",
  title: "Load at a step of the duty",
  unit: "1",
  symbol: "x_k",
  inputs: {"fraction":{"unit":"1","symbol":"f_k","meaning":"fraction of the reference load"},"reference":{"unit":"1","symbol":"x","meaning":"load fraction of the reading that the profile refers to; 1 for rated power"}},
  names: ["fraction","reference"],
  f: (fraction: number, reference: number) => fraction * reference,
  d: [
    (_fraction: number, reference: number) => reference,
    (fraction: number) => fraction,
  ],
  tex: "f_k\\cdot x",
  template: "⟦fraction⟧\\cdot ⟦reference⟧",
  cell: "{fraction} * {reference}",
  expression: "fraction * reference",
  valid: "Fractions of shaft load.",
  source: "Definition of the duty profile in the fleet sheet",
} as const satisfies Compiled;
