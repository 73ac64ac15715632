import { cookies } from 'next/headers';
import { loadUnits } from '@/lib/features/study/loaders';
import styles from './reader-choices.module.css';
import { readTheme, THEME_COOKIE } from './theme';
import { ThemeChoice } from './theme-choice';
import { UnitsChoice } from './units-choice';

/** What a reader chooses for themselves, study after study: colours and the unit of shaft power. */
export async function ReaderChoices() {
  const theme = readTheme((await cookies()).get(THEME_COOKIE)?.value);
  return (
    <div className={styles.choices}>
      <UnitsChoice initial={await loadUnits()} />
      <ThemeChoice initial={theme} />
    </div>
  );
}
