/** What a field turning backwards meets, once for the running point and for the unbalance of the current: symbol and expression. */
export const BACKWARD = {
  rotor: ["R_2''", 'negative_rotor * r2_hot / (2 - s)'],
  impedanceSquared: ['Z_-^2', '(r1_hot + backward) ^ 2 + (x1_f + x2_f) ^ 2'],
} as const satisfies Record<string, readonly [symbol: string, expression: string]>;
