// Written by scripts/generate.ts from circuit.sheet.ts. Do not edit: change the sheet and run "npm run generate".
import type { Compiled } from '../formula/compiled';

export const negative_sequence_rotor = {
  id: "circuit.negative_sequence_rotor",
  title: "Rotor branch that the negative sequence meets",
  unit: "1",
  symbol: "R_2''",
  inputs: {"negative_rotor":{"unit":"1","symbol":"k_{r2}","meaning":"rotor resistance at twice line frequency over that at slip frequency"},"r2_hot":{"unit":"1","symbol":"R_2'","meaning":"rotor resistance at its temperature"},"s":{"unit":"1","symbol":"s","meaning":"slip"}},
  names: ["negative_rotor","r2_hot","s"],
  f: (negative_rotor: number, r2_hot: number, s: number) => negative_rotor * r2_hot / (2 - s),
  d: [
    (_negative_rotor: number, r2_hot: number, s: number) => r2_hot / (2 - s),
    (negative_rotor: number, _r2_hot: number, s: number) => negative_rotor / (2 - s),
    (negative_rotor: number, r2_hot: number, s: number) => negative_rotor * r2_hot / (2 - s) ** 2,
  ],
  tex: "\\frac{ k_{r2}\\cdot R_2'}{2- s}",
  template: "\\frac{ ⟦negative_rotor⟧\\cdot ⟦r2_hot⟧}{2- ⟦s⟧}",
  cell: "{negative_rotor} * {r2_hot} / (2 - {s})",
  expression: "negative_rotor * r2_hot / (2 - s)",
  valid: "Slip from 0 up to breakdown.",
  source: "A field turning backwards sees the rotor at slip 2 − s: Fitzgerald, Kingsley and Umans, Electric Machinery (from memory)",
} as const satisfies Compiled;

export const negative_sequence_squared = {
  id: "circuit.negative_sequence_squared",
  title: "Square of the impedance that the negative sequence meets",
  unit: "1",
  symbol: "Z_-^2",
  inputs: {"r1_hot":{"unit":"1","symbol":"R_1'","meaning":"stator resistance at its temperature"},"backward":{"unit":"1","symbol":"R_2''","meaning":"rotor branch for the negative sequence"},"x1_f":{"unit":"1","symbol":"X_1'","meaning":"stator leakage reactance at the frequency in force"},"x2_f":{"unit":"1","symbol":"X_2'","meaning":"rotor leakage reactance at the frequency in force"}},
  names: ["r1_hot","backward","x1_f","x2_f"],
  f: (r1_hot: number, backward: number, x1_f: number, x2_f: number) => (r1_hot + backward) ** 2 + (x1_f + x2_f) ** 2,
  d: [
    (r1_hot: number, backward: number) => 2 * (r1_hot + backward),
    (r1_hot: number, backward: number) => 2 * (r1_hot + backward),
    (_r1_hot: number, _backward: number, x1_f: number, x2_f: number) => 2 * (x1_f + x2_f),
    (_r1_hot: number, _backward: number, x1_f: number, x2_f: number) => 2 * (x1_f + x2_f),
  ],
  tex: "{\\left( R_1'+ R_2''\\right)}^{2}+{\\left( X_1'+ X_2'\\right)}^{2}",
  template: "{\\left( ⟦r1_hot⟧+ ⟦backward⟧\\right)}^{2}+{\\left( ⟦x1_f⟧+ ⟦x2_f⟧\\right)}^{2}",
  cell: "({r1_hot} + {backward}) ^ 2 + ({x1_f} + {x2_f}) ^ 2",
  expression: "(r1_hot + backward) ^ 2 + (x1_f + x2_f) ^ 2",
  valid: "The magnetising branch hardly counts at that slip.",
  source: "Fitzgerald, Kingsley and Umans, Electric Machinery (from memory)",
} as const satisfies Compiled;
