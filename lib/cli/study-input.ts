import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Motor, PriceList, Settings } from '@/lib/engine';
import { type HistoryOutcome, readHistory } from '@/lib/features/fleet/indicator-history';
import { issueLine } from '@/lib/features/fleet/issue-line';
import { nearestWord } from '@/lib/features/fleet/nearest';
import { type ParseOptions, type RowIssue, type SheetMotor, type StreamedFleet, streamFleet } from '@/lib/features/fleet/parse';
import { noWishes, type PlanWishesFile } from '@/lib/features/plan/wishes';
import { readPrices } from '@/lib/features/study/prices';
import { defaultSettings, readSettings } from '@/lib/features/study/settings';
import type { LoadedReference } from '@/lib/reference/load';
import type { Call } from './arguments';
import { UsageError } from './exit';
import { faultOf } from './words';

/** The study that a call is judged by. */
interface CallStudy {
  readonly settings: Settings;
  readonly prices: PriceList;
  readonly plan: PlanWishesFile;
  /** What should be said of settings and prices. */
  readonly remarks: readonly string[];
  /** Rows of the price list that were left out. */
  readonly rejectedPrices: number;
}

/**
 * Settings of a call with the price list that it names, else theirs; without settings the defaults, and without a list the shipped, invented one.
 */
export async function readStudy(call: Call, reference: LoadedReference): Promise<CallStudy> {
  const { settings, plan, remarks, pricesFile } = readCallSettings(call);
  const { decimal, delimiter, encoding } = call.priceReading;
  if (pricesFile === undefined) {
    if (saysOfPrices(call))
      throw new UsageError(
        'No price list is named that --prices-… could speak of. Name it by --prices, or by the key prices of the settings.',
      );
    return { settings, prices: reference.prices, plan, remarks, rejectedPrices: 0 };
  }
  const prices = await readPrices(
    { path: pricesFile },
    { currency: settings.currency, asOf: settings.asOf, decimal, delimiter, encoding },
  );
  if (!prices.ok) throw new UsageError(faultOf(pricesFile, prices.problem));
  const { list, warnings, rejectedRows } = prices;
  const said = [
    ...warnings.map((warning) => `${pricesFile}, ${issueLine(warning)}`),
    ...signHint(warnings, '--prices-decimal', decimal),
  ];
  if (list.prices.length === 0 && rejectedRows > 0)
    throw new UsageError([`${pricesFile}: no row of the price list can be used.`, ...said].join('\n'));
  return { settings, prices: list, plan, remarks: [...remarks, ...said], rejectedPrices: rejectedRows };
}

/** Whether a call says how its price list is written. */
export function saysOfPrices({ priceReading: { decimal, delimiter, encoding } }: Call): boolean {
  return decimal !== undefined || delimiter !== undefined || encoding !== undefined;
}

/** Settings of a call without the prices, for what is not a matter of money. */
export function readCallSettings(
  call: Call,
): Pick<CallStudy, 'settings' | 'plan' | 'remarks'> & { readonly pricesFile: string | undefined } {
  const { settings: file, prices } = call;
  if (file === undefined) return { settings: defaultSettings(), plan: noWishes(), remarks: [], pricesFile: prices };
  const read = readSettings(readText(file));
  if (!read.ok) throw new UsageError(faultOf(file, read.problem));
  return {
    settings: read.settings,
    plan: read.plan,
    remarks: read.warnings.map((warning) => `${file}: ${warning.text}`),
    pricesFile: prices ?? (read.pricesFile === undefined ? undefined : path.resolve(path.dirname(file), read.pricesFile)),
  };
}

/** How the other decimal sign is announced, where cells were refused for their signs. */
export function signHint(issues: Iterable<Pick<RowIssue, 'code'>>, option: string, decimal: string | undefined): string[] {
  const other = decimal === ',' ? 'point' : 'comma';
  for (const { code } of issues)
    if (code === 'other-decimal-sign')
      return [`If the file is written with a decimal ${other} throughout, say ${option} ${other === 'comma' ? ',' : '.'}`];
  return [];
}

/** The sheet of a call; an unreadable file ends the command with its remedy. */
export async function readFleetSheet(call: Call, options: Pick<ParseOptions, 'asOf' | 'inSight'> = {}): Promise<StreamedFleet> {
  const outcome = await streamFleet({ path: call.fleet }, { ...call.reading, ...options });
  if (!outcome.ok) throw new UsageError(faultOf(call.fleet, outcome.problem));
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
  if (!outcome.ok) throw new UsageError(faultOf(call.history, outcome.problem));
  return outcome;
}

/** The one motor that a call names by tag, and by site where the tag alone is not enough. */
export function motorOf(call: Call, parsed: Pick<StreamedFleet, 'motors' | 'header' | 'rejected'>): Motor {
  const wanted: SheetMotor[] = [];
  const tags = new Set<string>();
  for (const entry of parsed.motors) {
    tags.add(entry.motor.tag);
    if (entry.motor.tag === call.tag && (call.site === undefined || entry.motor.site === call.site)) wanted.push(entry);
  }
  const first = wanted[0];
  const rejected = rejectedOf(call, parsed);
  if (!first) {
    const near = nearestWord(call.tag ?? '', tags);
    throw new UsageError(
      [
        `No motor has the tag "${call.tag}"${call.site === undefined ? '' : ` at site "${call.site}"`} in ${call.fleet}${rejected.length > 0 ? ': what carries it was rejected' : ''}.${near === undefined || near === call.tag || rejected.length > 0 ? '' : ` Did you mean ${near}?`}`,
        ...rejected,
      ].join('\n'),
    );
  }
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
    .flatMap(({ issues }) => issues.map(issueLine));
}

const UNREADABLE: Readonly<Record<string, string>> = { ENOENT: 'there is no such file', EISDIR: 'it is a folder' };

function readText(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new UsageError(
      `${file} cannot be read: ${UNREADABLE[(error as NodeJS.ErrnoException).code ?? ''] ?? (error as Error).message}.`,
    );
  }
}
