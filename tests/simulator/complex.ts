/** A complex number. Written here anew, so that nothing of the engine stands behind what judges it. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const complex = (re: number, im = 0): Complex => ({ re, im });
export const polar = (size: number, angle: number): Complex => ({ re: size * Math.cos(angle), im: size * Math.sin(angle) });
export const plus = (...terms: readonly Complex[]): Complex => ({
  re: terms.reduce((sum, term) => sum + term.re, 0),
  im: terms.reduce((sum, term) => sum + term.im, 0),
});
export const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });
export const conjugate = (a: Complex): Complex => ({ re: a.re, im: -a.im });
export const scaled = (a: Complex, factor: number): Complex => ({ re: a.re * factor, im: a.im * factor });
export const size = (a: Complex): number => Math.hypot(a.re, a.im);

export function over(a: Complex, b: Complex): Complex {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
}

/** Impedances side by side; an absent branch is left out of the list. */
export const parallel = (...branches: readonly Complex[]): Complex =>
  over(complex(1), plus(...branches.map((branch) => over(complex(1), branch))));
