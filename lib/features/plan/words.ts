import { formatNumber } from '@/lib/platform/format';
import type { ProgrammeItem } from './programme';

/** A motor by its names, as a person reads it: `Works / P-1`. */
export function nameOf({ site, tag }: { readonly site: string; readonly tag: string }): string {
  return [site, tag].filter(Boolean).join(' / ');
}

/** What is done with a motor, in words. */
export function itemWords({ action, rated_power_kw: power, efficiency_class: grade, must }: ProgrammeItem): string {
  return `${action}: ${formatNumber(power, 1)}\u202fkW${grade === undefined ? '' : `, ${grade}`}${must ? ', must be done' : ''}`;
}

/** An option's name in words: `replace-at-failure-30-premium` is a new motor of 30 kW. */
export function optionWords(id: string): string {
  const [action = id, ...rest] = id.replace('at-failure-', '').replace('now-', '').split('-');
  const [power, ...grade] = rest;
  if (power === undefined || Number.isNaN(Number(power))) return [action, ...rest].join(' ');
  return `${action}: ${power}\u202fkW${grade.length === 0 ? '' : `, ${grade.join(' ')}`}`;
}
