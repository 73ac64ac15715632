/** When a motor is expected to fail next. */
export interface TimeToFailure {
  /** Failures a year that the rest follows from. */
  readonly rate: number;
  /** Mean time, and the means at twice and at half the rate. */
  readonly years: number;
  readonly lowYears: number;
  readonly highYears: number;
  /** Chance that the failure comes within the horizon, and its range at half and at twice the rate. */
  readonly withinHorizon: number;
  readonly lowWithin: number;
  readonly highWithin: number;
}

/** Published rates span 1 to 8 % a year around the setting: a factor of two either way (two standard deviations of its logarithm). */
const FACTOR = 2;
/** Highest rate that a year of the cash flow can hold. */
const HIGHEST_RATE = 0.9;

/**
 * Expected time to the next failure, by the same constant chance in every year that the cash flow counts with. A condition that calls for a
 * repair doubles it. Age does not enter: at a constant rate a motor that has run for long is as likely to fail as a new one, and the
 * surveys at hand give no rate by age.
 *
 * Units: rate per year, years. Valid for: rates above 0; `undefined` at 0, where no failure is expected and the time is not known.
 * Source: mean and distribution of a geometric waiting time; spread of the rate by the surveys of IEEE 493 (from memory).
 */
export function timeToFailure(given: {
  readonly failureRatePerYear: number;
  readonly horizonYears: number;
  readonly raised: boolean;
}): TimeToFailure | undefined {
  const rate = limited(given.failureRatePerYear * (given.raised ? 2 : 1));
  if (!(rate > 0)) return undefined;
  const within = (yearly: number) => 1 - (1 - yearly) ** given.horizonYears;
  const [less, more] = [limited(rate / FACTOR), limited(rate * FACTOR)];
  return {
    rate,
    years: 1 / rate,
    lowYears: 1 / more,
    highYears: 1 / less,
    withinHorizon: within(rate),
    lowWithin: within(less),
    highWithin: within(more),
  };
}

function limited(rate: number): number {
  return Math.min(rate, HIGHEST_RATE);
}
