import cdf from '@stdlib/stats-base-dists-normal-cdf';
import { describe, expect, it } from 'vitest';
import { classEfficiency } from '@/lib/engine/nameplate/class-efficiency';
import { ratedEfficiency } from '@/lib/engine/nameplate/efficiency';
import { lossOverFirstClass } from '@/lib/engine/nameplate/sold-in-europe';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { motorOf, scopeOf, study } from './support/study';

/** Shares of the motors of 1.1 to 90 kW sold in Europe below the limit of EFF2 and above that of EFF1: CEMEP, the makers' committee of the voluntary agreement, quoted by a trade paper of September 2002 (read). */
const SOLD = [
  { year: 1998, poles: 4, below: 0.6842, above: 0.0208 },
  { year: 1998, poles: 2, below: 0.4355, above: 0.05 },
  { year: 2001, poles: 4, below: 0.161, above: 0.034 },
  { year: 2001, poles: 2, below: 0.1589, above: 0.06 },
];
const RATINGS_KW = [1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55, 75, 90];

const { tables } = study();
const lossOf = (efficiencyClass: 'IE1' | 'IE2', ratedPowerKw: number, poles: number): number => {
  const found = classEfficiency(tables, {
    efficiencyClass,
    ratedPowerKw,
    poles,
    enclosure: 'enclosed',
    frequencyHz: 50,
    standards: 'iec',
  });
  return 100 / (found?.pct ?? Number.NaN) - 1;
};

/** Deviations from the mean below which a share of a normal distribution lies, by halving. */
function deviations(share: number): number {
  let [low, high] = [-6, 6];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (cdf(middle, 0, 1) < share) low = middle;
    else high = middle;
  }
  return low;
}

describe('loss of an ordinary European motor over that of IE1', () => {
  it.each(SOLD)(
    '$year, $poles poles: two shares fix mean and deviation of a log-normal loss',
    ({ year, poles, below, above }) => {
      const atFirst = deviations(1 - below);
      const atSecond = deviations(above);
      const found = RATINGS_KW.map((kw) => {
        const apart = Math.log(lossOf('IE1', kw, poles) / lossOf('IE2', kw, poles));
        const deviation = apart / (atFirst - atSecond);
        return { mean: -atFirst * deviation, deviation };
      });
      const mean = found.reduce((sum, each) => sum + each.mean, 0) / found.length;
      // Half a per cent of rounding in the constants, and one figure for both pole counts of 2001.
      expect(Math.abs(lossOverFirstClass(year, poles) / Math.exp(mean) - 1)).toBeLessThan(0.01);
      for (const { deviation } of found) expect(deviation).toBeLessThan(0.28);
    },
  );

  it('is that of 1998 before, that of 2001 after, and goes evenly between', () => {
    expect(lossOverFirstClass(1970, 4)).toBe(lossOverFirstClass(1998, 4));
    expect(lossOverFirstClass(2010, 4)).toBe(lossOverFirstClass(2001, 4));
    const [before, after] = [lossOverFirstClass(1998, 6), lossOverFirstClass(2001, 6)];
    expect(lossOverFirstClass(1999, 6)).toBeCloseTo(before + (after - before) / 3, 12);
  });
});

describe('efficiency of a motor of which only the year is known, in a study by IEC', () => {
  const plate = motorOf({ plate: { ratedPowerKw: 11, ratedFrequencyHz: 50 } }).plate;
  const bare = { ...plate, nominalEfficiencyPct: undefined, efficiencyClass: undefined, frame: undefined };
  const rated = (yearBuilt: number | undefined, poles = 4, efficiencyClass?: 'IE1') =>
    ratedEfficiency(
      scopeOf({ standards: 'iec', frequencyHz: 50 }),
      { ...bare, yearBuilt, poles, ...(efficiencyClass && { efficiencyClass }) },
      poles,
      50,
      '',
    ).efficiency;

  it('of 1985 is that of IE1 with 1.08 times its loss: 100 / (1 + 1.08 x (100 / 87.6 - 1)) = 86.74 % (IEC 60034-30-1: 87.6 % at 11 kW, from memory)', () => {
    expect(100 * rated(1985).value).toBeCloseTo(86.74, 1);
    expect(100 * rated(2005).value).toBeCloseTo(100 / (1 + 0.92 * (100 / 87.6 - 1)), 1);
  });

  it('is IE1 where neither year is known or the class is stated', () => {
    expect(100 * rated(undefined).value).toBeCloseTo(87.6, 6);
    expect(100 * rated(1985, 4, 'IE1').value).toBeCloseTo(87.6, 6);
  });

  it('is more doubtful where the table ends: with 12 poles the doubt of the loss is half as much again as with 8', () => {
    const ofLoss = (poles: number): number => {
      const efficiency = rated(1985, poles);
      return standardUncertainty(efficiency) / (efficiency.value * (1 - efficiency.value));
    };
    expect(ofLoss(12) / ofLoss(8)).toBeCloseTo(1.5, 6);
  });
});
