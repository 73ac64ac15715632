import type { StudyContext } from '../context';
import type { DutyStep, Motor } from '../motor';
import type { PriceList, Settings } from '../settings';
import type { Tariff } from '../tariff/tariff';

/**
 * What can be moved to see what an option hangs on. Each is a factor on what the study or the sheet states, but for the discount rate, which
 * is itself.
 */
export type Lever = 'energy-price' | 'demand-price' | 'hours' | 'cost' | 'failure-rate' | 'discount-rate';

/** A motor and its study. */
export interface Question {
  readonly motor: Motor;
  readonly study: StudyContext;
}

/** The same question with one thing moved; the original is left as it is. */
export function moved({ motor, study }: Question, lever: Lever, to: number): Question {
  const { settings } = study;
  const set = (changes: Partial<Settings>): Question => ({ motor, study: { ...study, settings: { ...settings, ...changes } } });
  switch (lever) {
    case 'energy-price':
      return set({
        energyPricePerKwh: settings.energyPricePerKwh * to,
        tariffs: eachTariff(settings, (tariff) => energyTimes(tariff, to)),
      });
    case 'demand-price':
      return set({
        demandPricePerKwMonth: settings.demandPricePerKwMonth * to,
        tariffs: eachTariff(settings, (tariff) => ({
          ...tariff,
          demand: tariff.demand.map((charge) => ({ ...charge, price: charge.price * to })),
        })),
      });
    case 'failure-rate':
      return set({ failureRatePerYear: settings.failureRatePerYear * to });
    case 'discount-rate':
      return set({ discountRate: to });
    case 'hours':
      return { motor: withHours(motor, to), study };
    case 'cost':
      return {
        motor: {
          ...motor,
          plate: {
            ...motor.plate,
            quotedPrice: times(motor.plate.quotedPrice, to),
            quotedRepair: times(motor.plate.quotedRepair, to),
          },
        },
        study: { ...study, prices: pricesTimes(study.prices, to) },
      };
  }
}

/** The question in the low case: energy and demand prices and the hours at these factors of what is stated. */
export function lowCase(
  question: Question,
  { energyPrice, hours }: { readonly energyPrice: number; readonly hours: number },
): Question {
  return moved(moved(moved(question, 'energy-price', energyPrice), 'demand-price', energyPrice), 'hours', hours);
}

function times(amount: number | undefined, factor: number): number | undefined {
  return amount === undefined ? undefined : amount * factor;
}

function eachTariff(settings: Settings, change: (tariff: Tariff) => Tariff): Settings['tariffs'] {
  return Object.fromEntries(Object.entries(settings.tariffs).map(([site, tariff]) => [site, change(tariff)]));
}

function energyTimes(tariff: Tariff, factor: number): Tariff {
  return {
    ...tariff,
    energy: tariff.energy.map((period) => ({ ...period, pricePerKwh: period.pricePerKwh * factor })),
    blocks: tariff.blocks.map((block) => ({ ...block, pricePerKwh: block.pricePerKwh * factor })),
  };
}

function pricesTimes(list: PriceList, factor: number): PriceList {
  return { ...list, prices: list.prices.map((line) => ({ ...line, price: line.price * factor })) };
}

function withHours(motor: Motor, factor: number): Motor {
  const steps = (list: readonly DutyStep[]) => list.map((step) => ({ ...step, hoursPerYear: step.hoursPerYear * factor }));
  return {
    ...motor,
    ...(motor.hoursPerYear !== undefined && { hoursPerYear: motor.hoursPerYear * factor }),
    ...(motor.plateDuty && { plateDuty: { ...motor.plateDuty, steps: steps(motor.plateDuty.steps) } }),
    readings: motor.readings.map((reading) => (reading.duty ? { ...reading, duty: steps(reading.duty) } : reading)),
  };
}

/** Hours a year that the motor is stated to run; absent when they are not known. */
export function statedHours({ motor }: Question): number | undefined {
  const duties = [motor.plateDuty, ...motor.readings.map(({ row, duty }) => duty && { row, steps: duty })];
  const [latest] = duties.filter((duty) => duty !== undefined).sort((a, b) => b.row - a.row);
  return latest ? latest.steps.reduce((sum, step) => sum + step.hoursPerYear, 0) : motor.hoursPerYear;
}
