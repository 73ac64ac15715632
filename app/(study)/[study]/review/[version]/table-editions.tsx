import { loadPassports } from '@/lib/features/reference/loaders';
import styles from './version.module.css';

/** The tables behind the figures by their titles, each with the edition that was frozen; one that the program has no more by its short name. */
export function TableEditions({ tables }: { readonly tables: readonly { readonly id: string; readonly edition: string }[] }) {
  const titles = new Map(loadPassports().map(({ id, title }) => [id, title]));
  return (
    <ul className={styles.editions}>
      {tables.map(({ id, edition }) => (
        <li key={id}>
          {titles.get(id) ?? id}: {edition}
        </li>
      ))}
    </ul>
  );
}
