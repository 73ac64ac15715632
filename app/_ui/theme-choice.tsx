'use client';

import { startTransition, useId, useState } from 'react';
import type { Theme } from './theme';
import { rememberTheme } from './theme-action';
import styles from './theme-choice.module.css';

const WORDS: readonly (readonly [Theme, string])[] = [
  ['system', 'As the computer'],
  ['light', 'Light'],
  ['dark', 'Dark'],
];

/** Three radio buttons: light, dark, or as the computer has it. Takes effect at once and is remembered for a year. */
export function ThemeChoice({ initial }: { readonly initial: Theme }) {
  const [theme, setTheme] = useState(initial);
  // Two of these may stand on a page, one of them for narrow screens.
  const name = useId();
  const choose = (next: Theme) => {
    setTheme(next);
    if (next === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = next;
    startTransition(() => rememberTheme(next));
  };
  return (
    <fieldset className={styles.choice}>
      <legend>Colours</legend>
      {WORDS.map(([value, word]) => (
        <label key={value}>
          <input type="radio" name={name} value={value} checked={theme === value} onChange={() => choose(value)} />
          {word}
        </label>
      ))}
    </fieldset>
  );
}
