import { capitalised } from '@/lib/platform/format';
import type { TypedTariff } from './tariff-cells';

/** A place in the tariff in words: `energy, row 2, price per kwh`. */
export function placeWords(key: string): string {
  if (key === '') return 'The tariff';
  const parts = key.split('.').map((part) => (/^\d+$/.test(part) ? `row ${Number(part) + 1}` : part.replaceAll('_', ' ')));
  const words = parts.join(', ');
  return capitalised(words);
}

/** The cell of the form that a place in the tariff came from. */
export function cellOf(key: string, { rows }: TypedTariff): string {
  const [part = '', index = '', ...rest] = key.split('.');
  const row = rows.get(`${part}.${index}`);
  if (row === undefined) {
    if (part === 'power_factor') return index === 'kind' ? key : `power_factor.${index.startsWith('price') ? 'price' : 'limit'}`;
    return part === 'usage' ? `usage.${index === '' ? 'energy_kwh' : index}` : part === 'energy' ? 'energy.0.name' : key;
  }
  const cell = rest.join('_');
  if (cell === '') return `${row}.${part === 'demand' ? 'price' : part === 'blocks' ? 'up_to_kwh' : 'name'}`;
  return `${row}.${cell.startsWith('price_per_k') && part === 'demand' ? 'price' : cell.replace(/^months_.*/, 'months')}`;
}
