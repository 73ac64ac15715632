import { type Motor, motorKey, type PriceList } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';
import { engineInUse } from '../evaluation/engine-in-use';
import { readSettings } from '../study/settings';
import { type WorkedOption, workedOut } from '../workbook/work-out';
import type { Content } from './content';

/**
 * The workbook of a version's funded motors, made from its frozen inputs and worked out from the text of its formulas. `changed` where the engine or the
 * tables are no longer those it was frozen with: then it would be another workbook.
 */
export async function workbookOf(
  content: Pick<Content, 'engine' | 'tables' | 'settings' | 'prices' | 'motors' | 'programme'>,
): Promise<ReadonlyMap<string, WorkedOption> | 'changed'> {
  const reference = loadTables();
  const editions = new Map(reference.passports.map(({ id, edition }) => [id, edition]));
  const settings = readSettings(JSON.stringify(content.settings));
  const same = content.tables.length === editions.size && content.tables.every(({ id, edition }) => editions.get(id) === edition);
  if (content.engine !== engineInUse() || !same || !settings.ok) return 'changed';
  const funded = new Set(content.programme.years.flatMap(({ items }) => items.map(motorKey)));
  // Both were written by this program, and their hash was checked.
  const motors = (content.motors as readonly Motor[]).filter((motor) => funded.has(motorKey(motor)));
  const prices = content.prices as unknown as PriceList;
  return workedOut(motors, { settings: settings.settings, tables: reference.tables, prices });
}
