import { canonicalJson } from '@/lib/platform/hash';
import type { Programme } from '../plan/programme';
import { nameOf } from '../plan/words';
import { flatSettings } from '../study/settings-change';
import type { Content } from './content';

/** One motor of which two versions say different things; absent: not funded. */
export interface MovedItem {
  readonly site: string;
  readonly tag: string;
  readonly before?: { readonly year: number; readonly option: string; readonly cost: number };
  readonly after?: { readonly year: number; readonly option: string; readonly cost: number };
  /** Why it is not funded any more, or why its figures changed. */
  readonly because?: string;
}

/** What differs between two versions. */
export interface Difference {
  readonly settings: readonly {
    readonly key: string;
    readonly from: unknown;
    readonly to: unknown;
    /** Who changed it last before the later version was frozen, and why. */
    readonly by?: string;
    readonly at?: string;
    readonly why?: string;
  }[];
  readonly engine?: { readonly from: string; readonly to: string };
  readonly tables: readonly string[];
  readonly pricesChanged: boolean;
  readonly motorsAdded: readonly string[];
  readonly motorsRemoved: readonly string[];
  /** Motors whose plate, readings or tests differ. */
  readonly motorsChanged: readonly string[];
  readonly items: readonly MovedItem[];
  readonly wishesAdded: readonly string[];
  readonly wishesDropped: readonly string[];
}

/** What differs between two frozen versions, and what the later one knows of why. */
export function compareVersions(before: Content, after: Content): Difference {
  const [from, to] = [flatSettings(before.settings), flatSettings(after.settings)];
  const text = (value: unknown) => (value === undefined ? '' : canonicalJson(value));
  const settings = [...new Set([...from.keys(), ...to.keys()])]
    .filter((key) => text(from.get(key)) !== text(to.get(key)))
    .map((key) => {
      const change = after.settings_changes?.find((each) => each.key === key);
      return {
        key,
        from: from.get(key),
        to: to.get(key),
        ...(change && { by: change.by, at: change.at, ...(change.why !== undefined && { why: change.why }) }),
      };
    });
  const [old, now] = [motorsOf(before), motorsOf(after)];
  const [funded, funds] = [fundedOf(before.programme), fundedOf(after.programme)];
  const changed = [...now].filter(([name, motor]) => old.has(name) && old.get(name) !== motor).map(([name]) => name);
  const items = [...new Set([...funded.keys(), ...funds.keys()])].flatMap((key): MovedItem[] => {
    const [was, is] = [funded.get(key), funds.get(key)];
    if (was && is && text(was) === text(is)) return [];
    const [site = '', tag = ''] = key.split('\n');
    const out = after.programme.left_out.find((each) => each.site === site && each.tag === tag)?.because.text;
    const waits =
      after.programme.method === 'plan' && after.programme.at_failure.some((each) => each.site === site && each.tag === tag);
    const because = is ? undefined : (out ?? (waits ? 'It is changed once it fails.' : undefined));
    return [{ site, tag, ...(was && { before: was }), ...(is && { after: is }), ...(because !== undefined && { because }) }];
  });
  const [wished, wishes] = [wishesOf(before.programme), wishesOf(after.programme)];
  const editions = (content: Content) => new Map(content.tables.map(({ id, edition }) => [id, edition]));
  const tables = editions(before);
  return {
    settings,
    ...(before.engine !== after.engine && { engine: { from: before.engine, to: after.engine } }),
    tables: [...editions(after)].filter(([id, edition]) => tables.get(id) !== edition).map(([id]) => id),
    pricesChanged: text(before.prices) !== text(after.prices),
    motorsAdded: [...now.keys()].filter((name) => !old.has(name)),
    motorsRemoved: [...old.keys()].filter((name) => !now.has(name)),
    motorsChanged: changed,
    items,
    wishesAdded: wishes.filter((wish) => !wished.includes(wish)),
    wishesDropped: wished.filter((wish) => !wishes.includes(wish)),
  };
}

function motorsOf({ motors }: Content): ReadonlyMap<string, string> {
  return new Map(
    motors.flatMap((motor) => {
      if (typeof motor !== 'object' || motor === null || !('tag' in motor)) return [];
      const site = 'site' in motor ? String(motor.site) : '';
      return [[nameOf({ site, tag: String(motor.tag) }), canonicalJson(motor)] as const];
    }),
  );
}

function fundedOf({
  years,
}: Programme): ReadonlyMap<string, { readonly year: number; readonly option: string; readonly cost: number }> {
  return new Map(
    years.flatMap(({ year, items }) =>
      items.map(({ site, tag, option, cost }) => [`${site}\n${tag}`, { year, option, cost }] as const),
    ),
  );
}

function wishesOf(programme: Programme): readonly string[] {
  if (programme.method !== 'plan') return [];
  return programme.wishes.map(({ site, tag, kind, option, year, bundle, by, reason }) => {
    const name = nameOf({ site, tag });
    const what = {
      pinned: `${option} in ${year}`,
      forbidden: 'left alone',
      must: 'must be done',
      together: `together as ${bundle}`,
      override: `let in: ${reason}`,
    }[kind];
    return `${name}: ${what} (${by})`;
  });
}
