import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Motor, PriceList, Settings } from '@/lib/engine';
import { type HistoryOutcome, readHistory } from '@/lib/features/fleet/indicator-history';
import { type ParseOptions, type SheetMotor, type StreamedFleet, streamFleet } from '@/lib/features/fleet/parse';
import { noWishes, type PlanWishesFile } from '@/lib/features/plan/wishes';
import { readPrices } from '@/lib/features/study/prices';
import { defaultSettings, readSettings } from '@/lib/features/study/settings';
import type { LoadedReference } from '@/lib/reference/load';
import type { Call } from './arguments';
import { UsageError } from './exit';

/** Settings of a call with the price list they name; without settings the defaults and the shipped, invented list. */
export async function readStudy(
  file: string | undefined,
  reference: LoadedReference,
): Promise<{ settings: Settings; prices: PriceList; plan: PlanWishesFile; remarks: readonly string[] }> {
  if (file === undefined) return { settings: defaultSettings(), prices: reference.prices, plan: noWishes(), remarks: [] };
  const read = readSettings(readText(file));
  if (!read.ok) throw new UsageError(`${file}: ${read.problem.text} ${read.problem.remedy}`);
  const remarks = read.warnings.map((warning) => `${file}: ${warning.text}`);
  if (read.pricesFile === undefined) return { settings: read.settings, prices: reference.prices, plan: read.plan, remarks };
  const pricesPath = path.resolve(path.dirname(file), read.pricesFile);
  const prices = await readPrices({ path: pricesPath }, { currency: read.settings.currency, asOf: read.settings.asOf });
  if (!prices.ok) throw new UsageError(`${pricesPath}: ${prices.problem.text} ${prices.problem.remedy}`);
  return {
    settings: read.settings,
    prices: prices.list,
    plan: read.plan,
    remarks: [
      ...remarks,
      ...prices.warnings.map((warning) => `${pricesPath}, row ${warning.row}: ${warning.text} ${warning.remedy}`),
    ],
  };
}

/** The sheet of a call; an unreadable file ends the command with its remedy. */
export async function readFleetSheet(call: Call, options: Pick<ParseOptions, 'asOf' | 'inSight'> = {}): Promise<StreamedFleet> {
  const outcome = await streamFleet({ path: call.fleet }, { ...call.reading, ...options });
  if (!outcome.ok) throw new UsageError(`${call.fleet}: ${outcome.problem.text} ${outcome.problem.remedy}`);
  return outcome;
}

/** The motors as they come, with their sites noted on the way: a large sheet is gone through once. */
export function* notingSites(motors: Iterable<SheetMotor>, sites: Set<string>): Generator<SheetMotor> {
  for (const entry of motors) {
    sites.add(entry.motor.site);
    yield entry;
  }
}

/** Tariffs of the settings that no motor of the sheet has, each with its remedy: they price nothing. */
export function strayTariffs(call: Call, settings: Settings, sites: ReadonlySet<string>): string[] {
  const known = [...sites].map((site) => site || '(none)').join(', ');
  return Object.keys(settings.tariffs)
    .filter((site) => !sites.has(site))
    .map(
      (site) =>
        `${call.settings}: tariffs.${site} prices nothing: no motor of the sheet has the site ${site}. Write the name as in the column site, which has ${known}.`,
    );
}

/** The indicator history of a call; an unreadable file ends the command with its remedy. */
export async function readCallHistory(
  call: Call,
  options: Pick<ParseOptions, 'asOf'>,
): Promise<Extract<HistoryOutcome, { ok: true }> | undefined> {
  if (call.history === undefined) return undefined;
  const outcome = await readHistory({ path: call.history }, { ...call.reading, ...options });
  if (!outcome.ok) throw new UsageError(`${call.history}: ${outcome.problem.text} ${outcome.problem.remedy}`);
  return outcome;
}

/** The one motor that a call names by tag, and by site where the tag alone is not enough. */
export function motorOf(call: Call, parsed: Pick<StreamedFleet, 'motors' | 'header' | 'rejected'>): Motor {
  const wanted: SheetMotor[] = [];
  for (const entry of parsed.motors)
    if (entry.motor.tag === call.tag && (call.site === undefined || entry.motor.site === call.site)) wanted.push(entry);
  const first = wanted[0];
  const rejected = rejectedOf(call, parsed);
  if (!first)
    throw new UsageError(
      [
        `No motor has the tag "${call.tag}"${call.site === undefined ? '' : ` at site "${call.site}"`} in ${call.fleet}${rejected.length > 0 ? ': what carries it was rejected' : ''}.`,
        ...rejected,
      ].join('\n'),
    );
  if (wanted.length > 1) {
    throw new UsageError(
      `The tag "${call.tag}" stands at ${wanted.length} sites (${wanted.map((entry) => entry.motor.site || '(no site)').join(', ')}); name one with --site.`,
    );
  }
  for (const line of rejected) console.error(`${line} The rest of ${call.tag} stands without this row.`);
  return first.motor;
}

/** Why rows of the motor that a call names were rejected, a line for each reason. */
function rejectedOf(call: Call, { header, rejected }: Pick<StreamedFleet, 'header' | 'rejected'>): string[] {
  const place = (name: string) => header.findIndex((column) => column.trim().toLowerCase() === name);
  const tag = place('tag');
  const site = place('site');
  return rejected
    .filter(
      ({ cells }) => cells[tag]?.trim() === call.tag && (call.site === undefined || (cells[site]?.trim() ?? '') === call.site),
    )
    .flatMap(({ issues }) =>
      issues.map((issue) => `row ${issue.row}  ${issue.column || '(row)'}  ${issue.text} ${issue.remedy}`),
    );
}

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new UsageError(
      `${file} cannot be read: ${(error as NodeJS.ErrnoException).code === 'ENOENT' ? 'there is no such file' : (error as Error).message}.`,
    );
  }
}
