import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import { Head } from '@/app/_ui/head';
import { CELL, GROUP, ROW, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { bySettingOrder } from '@/lib/features/setup/setting-words';
import type { Content } from '@/lib/features/sign-off/loaders';
import { counted, formatStated } from '@/lib/platform/format';
import { SettingHead } from './setting-head';
import { SettingValue } from './setting-value';
import { TableEditions } from './table-editions';

const UNCHANGED = 'as the study began';

/** The assumptions that carry the money, as they were frozen, each with its source and date; prices and tables with theirs. */
export function Assumptions({ content }: { readonly content: Content }) {
  const { settings, tables, settings_changes: changes, prices } = content;
  const { schema: _of, ...assumed } = settings;
  const lines = Object.entries(assumed)
    .flatMap(([name, value]) =>
      typeof value === 'object' && value !== null && !Array.isArray(value)
        ? Object.entries(value).map(([inner, each]) => [`${name}.${inner}`, each] as const)
        : [[name, value] as const],
    )
    .sort(([a], [b]) => bySettingOrder(a, b));
  const source = (key: string): string => {
    if (changes === undefined) return 'not kept with this version';
    const found = changes.find((each) => each.key === key) ?? changes.find((each) => each.key === key.split('.')[0]);
    if (!found) return UNCHANGED;
    return `${found.by} (name not verified), ${formatStated(found.at.slice(0, 10))}${found.why ? `: ${found.why}` : ''}`;
  };
  const unchanged = lines.filter(([name]) => source(name) === UNCHANGED).length;
  return (
    <section className={sheet.section} aria-labelledby="assumptions">
      <h2 id="assumptions">Assumptions</h2>
      <FoldOnPhone what={`${counted(unchanged, 'setting')} ${UNCHANGED}`} nothing={unchanged === 0}>
        <ScrollRegion label="Settings as frozen">
          <table {...TABLE} className={`${sheet.table} ${sheet.lines}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Setting</Head>
                <Head>As frozen</Head>
                <Head>From whom and when</Head>
              </tr>
            </thead>
            <tbody {...GROUP}>
              {lines.map(([name, value]) => (
                <tr key={name} {...ROW} data-folds={source(name) === UNCHANGED || undefined}>
                  <SettingHead name={name} />
                  <td {...CELL} className={sheet.free}>
                    <SettingValue name={name} value={value} />
                  </td>
                  <td {...CELL} className={sheet.named}>
                    {source(name)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      </FoldOnPhone>
      <h3>Prices</h3>
      <ul>
        {priceSources(prices).map(([words, count]) => (
          <li key={words}>
            {counted(count, 'price')}: {words}
          </li>
        ))}
      </ul>
      <h3>Tables</h3>
      <TableEditions tables={tables} />
    </section>
  );
}

/** Where prices are from and of which day, with how many there are of each. */
function priceSources({ invented, prices = [] }: Content['prices']): readonly (readonly [string, number])[] {
  const found = new Map<string, number>();
  for (const { source, date } of prices) {
    const from = source ?? (invented ? 'the shipped list, which is invented' : 'no source stated');
    const words = `${from}, ${date === undefined ? 'no date stated' : formatStated(date)}`;
    found.set(words, (found.get(words) ?? 0) + 1);
  }
  return [...found];
}
