import type { OptionResult, Plate } from '@/lib/engine';
import { KILOWATTS_PER_HORSEPOWER } from '@/lib/engine/client';

/** Unit in which a plate states its rating. */
export type RatingUnit = Plate['ratedPowerUnit'];

/** A rating in the unit of the plate, as catalogues write it: `300 hp` or `37 kW`; three digits, since ratings come in steps. */
export function ratingWords(ratedPowerKw: number, unit: RatingUnit): string {
  return `${ratingNumber(ratedPowerKw, unit)}\u202f${unit}`;
}

/** The same where the unit stands in the head. */
export function ratingNumber(ratedPowerKw: number, unit: RatingUnit): string {
  return String(Number((unit === 'hp' ? ratedPowerKw / KILOWATTS_PER_HORSEPOWER : ratedPowerKw).toPrecision(3)));
}

const TITLES = { keep: 'Keep', repair: 'Repair', replace: 'Replace', resize: 'Resize' } as const;

/** An option in a few words: `Replace by 300 hp premium, now`. */
export function optionTitle(option: OptionResult, unit: RatingUnit): string {
  if (option.action === 'keep') return 'Keep as it is';
  const bought =
    option.action === 'repair'
      ? ''
      : `${option.action === 'resize' ? ' to' : ' by'} ${ratingWords(option.rated_power_kw, unit)} ${option.efficiency_class ?? ''}`.trimEnd();
  return `${TITLES[option.action]}${bought}, ${option.timing === 'now' ? 'now' : 'at failure'}`;
}

/** A figure's path in plain words; one of an option is named by the option's title, whose id may hold points. */
export function figureWords(path: string, titles: ReadonlyMap<string, string>): string {
  const [, id, figure] = /^options\.(.+)\.([a-z_]+)$/.exec(path) ?? [];
  const plain = (part: string) => part.replaceAll('_', ' ');
  if (id !== undefined && figure !== undefined) return `${plain(figure)} of “${titles.get(id) ?? id}”`;
  return path.split('.').map(plain).join(': ');
}
