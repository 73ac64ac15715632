import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { Content } from '@/lib/features/sign-off/loaders';

/** The assumptions that carry the money, as they were frozen, and the tables with their editions. */
export function Assumptions({ content }: { readonly content: Content }) {
  const { settings, tables } = content;
  const lines = Object.entries(settings).flatMap(([name, value]) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.entries(value).map(([inner, each]) => [`${name}, ${inner}`, each] as const)
      : [[name, value] as const],
  );
  return (
    <section className={sheet.section} aria-labelledby="assumptions">
      <h2 id="assumptions">Assumptions</h2>
      <ScrollRegion label="Settings as frozen">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Setting</th>
              <th scope="col">As frozen</th>
            </tr>
          </thead>
          <tbody>
            {lines.map(([name, value]) => (
              <tr key={name}>
                <th scope="row">{name.replaceAll('_', ' ')}</th>
                <td>{shown(value)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <h3>Tables</h3>
      <ul>
        {tables.map(({ id, edition }) => (
          <li key={id}>
            {id}: {edition}
          </li>
        ))}
      </ul>
    </section>
  );
}

function shown(value: unknown): string {
  if (value === null || (Array.isArray(value) && value.length === 0)) return 'none';
  if (Array.isArray(value) && value.every((each) => typeof each !== 'object')) return value.join(', ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}
