import type { Evaluation } from './evaluate';
import { contributionOf, type Quantity, standardUncertainty } from './quantity/quantity';
import type { MeterEffects } from './result';
import { briefly } from './result-figure';

/** A contribution below this share of a figure's doubt counts as none: in a sum over 10,000 motors that makes the doubt smaller by a twentieth at most. */
const SLIGHT = 3e-3;

/**
 * What the error of each meter does to the figures of a motor that are summed over fleets. Within one motor it is one of many causes; over motors
 * that were read with the same meter it does not average out (GUM 5.2.2).
 */
export function meterEffects({ scope, point, options }: Evaluation): MeterEffects[] {
  const inputPower = effectOn(point?.inputPower);
  const totalLoss = effectOn(point?.losses.total);
  const energy = options.map(({ figures }) => effectOn(figures.energy_saved));
  const demand = options.map(({ figures }) => effectOn(figures.demand_saved));
  const money = options.map(({ figures }) => effectOn(figures.money_saved));
  const found: MeterEffects[] = [];
  scope.sources.list.forEach(({ meter }, source) => {
    if (!meter) return;
    const input_power = inputPower(source);
    const total_loss = totalLoss(source);
    const energy_saved = ofEach(energy, source);
    const demand_saved = ofEach(demand, source);
    const money_saved = ofEach(money, source);
    if (input_power === 0 && total_loss === 0 && !energy_saved && !demand_saved && !money_saved) return;
    found.push({
      ...(meter.instrument !== undefined && { instrument: meter.instrument }),
      reads: meter.reads,
      input_power,
      total_loss,
      ...(energy_saved && { energy_saved }),
      ...(demand_saved && { demand_saved }),
      ...(money_saved && { money_saved }),
    });
  });
  return found;
}

/** What a source does to a figure. */
type Effect = (source: number) => number;

const none: Effect = () => 0;

/** The figure's doubt is worked out once, for all sources. */
function effectOn(quantity: Quantity | undefined): Effect {
  if (!quantity) return none;
  const slight = SLIGHT * standardUncertainty(quantity);
  return (source) => {
    const contribution = contributionOf(source, quantity);
    return Math.abs(contribution) > slight ? briefly(contribution) : 0;
  };
}

/** The effects on a figure of each option; undefined where there are none. */
function ofEach(effects: readonly Effect[], source: number): number[] | undefined {
  const all = effects.map((effect) => effect(source));
  return all.some((effect) => effect !== 0) ? all : undefined;
}
