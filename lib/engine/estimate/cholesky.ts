/** A pivot this small beside its diagonal is rounding: the unknown hangs wholly on others. */
const ROUNDING = 1e-14;

/**
 * Cholesky factors of a symmetric positive matrix, in place of its lower triangle (row-major, n × n); false when it is not positive,
 * or positive by rounding alone.
 * A few dozen unknowns thousands of times over: a general matrix object costs more here than the arithmetic.
 * Source: Golub and Van Loan, Matrix Computations, algorithm 4.2.1 (from memory).
 */
export function factorise(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    const whole = a[j * n + j] as number;
    let diagonal = whole;
    for (let k = 0; k < j; k++) diagonal -= (a[j * n + k] as number) ** 2;
    if (!(diagonal > ROUNDING * whole)) return false;
    const root = Math.sqrt(diagonal);
    a[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let sum = a[i * n + j] as number;
      for (let k = 0; k < j; k++) sum -= (a[i * n + k] as number) * (a[j * n + k] as number);
      a[i * n + j] = sum / root;
    }
  }
  return true;
}

/** Solves with the factors of {@link factorise}; the right side is replaced by the solution. */
export function solveFactored(factors: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i] as number;
    for (let k = 0; k < i; k++) sum -= (factors[i * n + k] as number) * (b[k] as number);
    b[i] = sum / (factors[i * n + i] as number);
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] as number;
    for (let k = i + 1; k < n; k++) sum -= (factors[k * n + i] as number) * (b[k] as number);
    b[i] = sum / (factors[i * n + i] as number);
  }
}
