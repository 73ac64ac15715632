import type { Figure, UnrankedMotor } from '@/lib/engine';
import type { ReadingSet } from '../../simulator/readings';
import type { Scores } from './simulated';

/** What 95 % limits must hold: overall, in each set of readings, and at least in each band of load of a set. */
const OVERALL = [0.93, 0.98] as const;
const IN_SET = [0.91, 0.99] as const;
const IN_BAND = 0.88;
/** In a band up to 40 % load where only amperes or only speed are known. */
const IN_HARD_BAND = 0.85;
const FEWEST = 100;

/** Where limits hold too seldom or too often, each as a sentence; `power` of the `excused` sets is not asked, alone or by band. */
export function coverageMisses({ all, sets, cells }: Scores, excused: readonly ReadingSet[] = []): string[] {
  const found: string[] = [];
  const ask = (name: string, share: number, least: number, most: number) => {
    if (!(share >= least && share <= most)) found.push(`${name}: ${(100 * share).toFixed(1)} %`);
  };
  for (const of of ['power', 'efficiency'] as const) {
    ask(of, all.coverage[of], ...OVERALL);
    const asked = (set: ReadingSet) => of !== 'power' || !excused.includes(set);
    for (const [set, { coverage }] of sets) if (asked(set)) ask(`${of}, ${set}`, coverage[of], ...IN_SET);
    for (const { set, band, score } of cells) {
      if (score.motors < FEWEST || !asked(set)) continue;
      const hard = (set === 'amps-volts' || set === 'speed-volts') && band[1] <= 0.4;
      ask(`${of}, ${set} from ${band[0]}`, score.coverage[of], hard ? IN_HARD_BAND : IN_BAND, 1);
    }
  }
  return found;
}

/** Results whose figures have but value and u, so that limits are value ± 1.96 u. */
export const withoutLimits = (results: ReadonlyMap<string, UnrankedMotor>): ReadonlyMap<string, UnrankedMotor> =>
  new Map(
    [...results].map(([tag, result]) => [
      tag,
      { ...result, shaft_power: bare(result.shaft_power), efficiency: bare(result.efficiency) },
    ]),
  );

function bare(figure: Figure | undefined): Figure | undefined {
  return figure && { value: figure.value, u: figure.u, unit: figure.unit };
}
