/** How far an input may be off. */
export interface TornadoInput {
  readonly id: string;
  readonly low: number;
  readonly high: number;
}

/** What one input does to a figure when it alone moves; absent where the figure cannot be given there. */
interface TornadoBar extends TornadoInput {
  readonly atLow: number | undefined;
  readonly atHigh: number | undefined;
  /** Distance between the two, or between the one there is and the base. */
  readonly width: number;
}

/** The figure as it is, and the bars of its inputs, widest first. */
export interface Tornado {
  readonly base: number | undefined;
  readonly bars: readonly TornadoBar[];
}

/**
 * Moves each input to its ends while the others stay, and puts the effects in order of size. Inputs of equal effect keep their order.
 * Units: those of the figure. Valid for: inputs taken one at a time; what two do together is not in it.
 * Source: one-at-a-time sensitivity as in ASTM E1765 and E917 (from memory).
 */
export function tornado(
  base: number | undefined,
  inputs: readonly TornadoInput[],
  figure: (id: string, at: number) => number | undefined,
): Tornado {
  const bars = inputs.map((input): TornadoBar => {
    const atLow = figure(input.id, input.low);
    const atHigh = figure(input.id, input.high);
    const known = [atLow, atHigh, ...(atLow === undefined || atHigh === undefined ? [base] : [])].filter(
      (end): end is number => end !== undefined,
    );
    return { ...input, atLow, atHigh, width: known.length < 2 ? 0 : Math.max(...known) - Math.min(...known) };
  });
  return { base, bars: bars.sort((a, b) => b.width - a.width) };
}
