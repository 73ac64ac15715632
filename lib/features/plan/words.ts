import { capitalised } from '@/lib/platform/format';
import { ratingWords } from '../motor/words';
import type { PlanWish, Programme, ProgrammeItem } from './programme';

/** A motor by its names, as a person reads it: `Works / P-1`. */
export function nameOf({ site, tag }: { readonly site: string; readonly tag: string }): string {
  return [site, tag].filter(Boolean).join(' / ');
}

/** How motors of a list are named: by their tags where all stand at one site, else by site and tag, since each site may have an A-1. */
export function namedBy(motors: Iterable<{ readonly site: string }>): typeof nameOf {
  const sites = new Set<string>();
  for (const { site } of motors) sites.add(site);
  return sites.size > 1 ? nameOf : ({ tag }) => tag;
}

/** How the motors of a programme are named: by their tags where all stand at one site, else by site and tag. */
export function namer(programme: Programme): typeof nameOf {
  const waiting = programme.method === 'plan' ? programme.at_failure : [];
  const all = [...programme.years.flatMap(({ items }) => items), ...waiting, ...programme.left_out];
  return namedBy(all);
}

/** What is done with a motor, in words. */
export function itemWords({ action, rated_power_kw: power, efficiency_class: grade, must }: ProgrammeItem): string {
  return `${action}: ${ratingWords(power, 'kW')}${grade === undefined ? '' : `, ${grade}`}${must ? ', must be done' : ''}`;
}

/** An option's name in words: `replace-at-failure-30-premium` is a new motor of 30 kW. */
export function optionWords(id: string): string {
  const [action = id, ...rest] = id.replace('at-failure-', '').replace('now-', '').split('-');
  const [power, ...grade] = rest;
  if (power === undefined || Number.isNaN(Number(power))) return [action, ...rest].join(' ');
  return `${action}: ${power}\u202fkW${grade.length === 0 ? '' : `, ${grade.join(' ')}`}`;
}

export function wishWords({ kind, option, year, bundle, by, reason }: Omit<PlanWish, 'site' | 'tag'>): string {
  switch (kind) {
    case 'pinned':
      return `pinned by ${by}: ${option === undefined ? 'any of its options' : optionWords(option)} in ${year ?? 'any year'}`;
    case 'forbidden':
      return `left alone, as ${by} wants it`;
    case 'must':
      return `must be done${year === undefined ? '' : ` by ${year}`}, as ${by} wants it`;
    case 'together':
      return `together with all of “${bundle}”, as ${by} wants it`;
    case 'override':
      return `let in by ${by} though its figures may not be used: ${reason}`;
  }
}

/** Reasons that name nobody; who wished says the wish itself. */
const WISHED: ReadonlySet<string> = new Set(['asked-for', 'pinned']);

/** What was found of the motor of an item that makes it a must, sentence by sentence; wishes apart. */
export function foundWords({ because = [] }: ProgrammeItem): readonly string[] {
  return because.filter(({ code }) => !WISHED.has(code)).map(({ text }) => text);
}

/** Why something must be done with the motor of an item: what was found, and who wished what. Empty where nothing must. */
export function mustWords(item: ProgrammeItem, programme: Programme): readonly string[] {
  if (item.must !== true) return [];
  const wished = programme.method === 'plan' ? programme.wishes : [];
  const own = wished.filter(
    ({ site, tag, kind }) => site === item.site && tag === item.tag && (kind === 'must' || kind === 'pinned'),
  );
  return [...foundWords(item), ...own.map((wish) => sentence(wishWords(wish)))];
}

function sentence(words: string): string {
  return `${capitalised(words)}.`;
}
