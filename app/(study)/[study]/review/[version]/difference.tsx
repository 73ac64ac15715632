import Link from 'next/link';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { nameOf, optionWords } from '@/lib/features/plan/words';
import { settingValue } from '@/lib/features/setup/setting-words';
import type { Difference as Found } from '@/lib/features/sign-off/loaders';
import { formatCount, formatMoney, formatStated } from '@/lib/platform/format';
import { SettingHead } from './setting-head';

interface Props {
  readonly study: string;
  readonly number: number;
  readonly difference: Found;
  readonly currency: string;
}

/** What changed since the version before, and why as far as it was said. */
export function Difference({ study, number, difference, currency }: Props) {
  const { settings, engine, tables, pricesChanged, items } = difference;
  const { motorsAdded, motorsRemoved, motorsChanged, wishesAdded, wishesDropped } = difference;
  const facts = [
    engine && `The engine went from ${engine.from} to ${engine.to}.`,
    tables.length > 0 && `Other editions of tables: ${tables.join(', ')}.`,
    pricesChanged && 'The price list changed.',
    motorsAdded.length > 0 && `Motors added: ${names(motorsAdded)}.`,
    motorsRemoved.length > 0 && `Motors removed: ${names(motorsRemoved)}.`,
    motorsChanged.length > 0 && `Plate, readings or tests changed of: ${names(motorsChanged)}.`,
    ...wishesAdded.map((wish) => `Wished since: ${wish}.`),
    ...wishesDropped.map((wish) => `Taken back: ${wish}.`),
  ].filter((fact) => typeof fact === 'string');
  const place = (at: { readonly year: number; readonly option: string; readonly cost: number } | undefined) =>
    at === undefined
      ? 'not funded'
      : `${at.year}: ${optionWords(at.option)} for ${formatMoney(at.cost, currency, undefined, true)}`;
  const none = facts.length === 0 && settings.length === 0 && items.length === 0;
  return (
    <section className={sheet.section} aria-labelledby="difference">
      <h2 id="difference">What changed since version {number}</h2>
      <p className="screen-only">
        <Link href={`/${study}/review/${number}`}>Version {number}</Link>
      </p>
      {none && <p>Nothing: the same inputs gave the same programme.</p>}
      {facts.length > 0 && (
        <ul>
          {facts.map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
      )}
      {settings.length > 0 && (
        <ScrollRegion label="Settings that changed">
          <table className={sheet.table}>
            <thead>
              <tr>
                <th scope="col">Setting</th>
                <th scope="col">Before</th>
                <th scope="col">Now</th>
                <th scope="col">By whom, and why</th>
              </tr>
            </thead>
            <tbody>
              {settings.map(({ key, from, to, by, at, why }) => (
                <tr key={key}>
                  <SettingHead name={key} />
                  <td>{settingValue(key, from)}</td>
                  <td>{settingValue(key, to)}</td>
                  <td>
                    {by === undefined ? 'not said' : `${by} on ${formatStated((at ?? '').slice(0, 10))}${why ? `: ${why}` : ''}`}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      {items.length > 0 && (
        <ScrollRegion label="Motors that are planned otherwise">
          <table className={sheet.table}>
            <thead>
              <tr>
                <th scope="col">Motor</th>
                <th scope="col">Before</th>
                <th scope="col">Now</th>
                <th scope="col">Why it is out</th>
              </tr>
            </thead>
            <tbody>
              {items.map(({ site, tag, before, after, because }) => (
                <tr key={`${site} ${tag}`}>
                  <th scope="row">{nameOf({ site, tag })}</th>
                  <td>{place(before)}</td>
                  <td>{place(after)}</td>
                  <td>{because ?? ''}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
    </section>
  );
}

/** Names that are listed, and how many more there are. */
const LISTED = 12;

function names(all: readonly string[]): string {
  const rest = all.length - LISTED;
  return rest > 0 ? `${all.slice(0, LISTED).join(', ')} and ${formatCount(rest)} more` : all.join(', ');
}
