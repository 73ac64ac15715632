import sheet from '@/app/_ui/sheet-page.module.css';
import { nameOf } from '@/lib/features/plan/words';
import type { Programme } from '@/lib/features/sign-off/loaders';

/** Who let motors in whose figures may not be used, and why: what a reviewer has to see first. */
export function Overrides({ programme }: { readonly programme: Programme }) {
  const items = programme.years.flatMap(({ year, items }) => items.map((item) => ({ year, ...item })));
  const let_in = items.filter(({ override }) => override !== undefined);
  const waiting =
    programme.method === 'plan'
      ? programme.wishes.filter(
          ({ kind, site, tag }) => kind === 'override' && !let_in.some((item) => item.site === site && item.tag === tag),
        )
      : [];
  return (
    <section className={sheet.section} aria-labelledby="overrides">
      <h2 id="overrides">Overrides</h2>
      {let_in.length === 0 && waiting.length === 0 ? (
        <p>None: every funded motor has figures that may be used, or must be seen to.</p>
      ) : (
        <ul>
          {let_in.map(({ site, tag, year, override }) => (
            <li key={`${site} ${tag}`} className={sheet.caution}>
              <strong>{nameOf({ site, tag })}</strong>, funded in {year} though its figures may not be used: {override?.reason} (
              {override?.by}, name not verified)
            </li>
          ))}
          {waiting.map(({ site, tag, by, reason }) => (
            <li key={`${site} ${tag}`}>
              {nameOf({ site, tag })} was let in and is not funded: {reason} ({by}, name not verified)
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
