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
  const found: MeterEffects[] = [];
  scope.sources.list.forEach(({ meter }, source) => {
    if (!meter) return;
    const input_power = effect(source, point?.inputPower);
    const total_loss = effect(source, point?.losses.total);
    const energy = options.map(({ figures }) => effect(source, figures.energy_saved));
    const demand = options.map(({ figures }) => effect(source, figures.demand_saved));
    const money = options.map(({ figures }) => effect(source, figures.money_saved));
    const effects = {
      input_power,
      total_loss,
      ...(energy.some(moves) && { energy_saved: energy }),
      ...(demand.some(moves) && { demand_saved: demand }),
      ...(money.some(moves) && { money_saved: money }),
    };
    if (input_power === 0 && total_loss === 0 && Object.keys(effects).length === 2) return;
    found.push({ ...(meter.instrument !== undefined && { instrument: meter.instrument }), reads: meter.reads, ...effects });
  });
  return found;
}

const moves = (effect: number): boolean => effect !== 0;

function effect(source: number, quantity: Quantity | undefined): number {
  if (!quantity) return 0;
  const contribution = contributionOf(source, quantity);
  return Math.abs(contribution) > SLIGHT * standardUncertainty(quantity) ? briefly(contribution) : 0;
}
