'use client';

import { startTransition, useId, useState } from 'react';
import type { ReaderUnits } from '@/lib/features/study/reader-units';
import styles from './theme-choice.module.css';
import { rememberUnits } from './units-action';

const WORDS: readonly (readonly [ReaderUnits, string])[] = [
  ['kw', 'kW'],
  ['hp', 'hp'],
];

/** Two radio buttons for the unit of shaft power and ratings. Takes effect at once, is remembered for a year, and changes no file. */
export function UnitsChoice({ initial }: { readonly initial: ReaderUnits }) {
  const [units, setUnits] = useState(initial);
  const name = useId();
  const choose = (next: ReaderUnits) => {
    setUnits(next);
    startTransition(() => rememberUnits(next));
  };
  return (
    <fieldset className={styles.choice} aria-describedby={`${name}-note`}>
      <legend>Shaft power in</legend>
      {WORDS.map(([value, word]) => (
        <label key={value}>
          <input type="radio" name={name} value={value} checked={units === value} onChange={() => choose(value)} />
          {word}
        </label>
      ))}
      <span id={`${name}-note`} className="unseen">
        Ratings too. Files stay in kW.
      </span>
    </fieldset>
  );
}
