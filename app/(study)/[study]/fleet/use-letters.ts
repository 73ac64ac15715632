import { useEffect, useRef } from 'react';

type Letter = '/' | '?' | 'f' | 'o' | 'c';

const LETTERS: readonly Letter[] = ['/', '?', 'f', 'o', 'c'];

/** Keys of a single letter, as long as nothing is being typed. */
export function useLetters(on: boolean, act: (letter: Letter) => void): void {
  const latest = useRef(act);
  useEffect(() => {
    latest.current = act;
  });
  useEffect(() => {
    if (!on) return;
    const press = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented) return;
      const { target } = event;
      if (target instanceof HTMLElement && target.closest('input:not([type="checkbox"]), textarea, select, dialog') !== null)
        return;
      const letter = LETTERS.find((each) => each === event.key);
      if (letter === undefined) return;
      event.preventDefault();
      latest.current(letter);
    };
    document.addEventListener('keydown', press);
    return () => document.removeEventListener('keydown', press);
  }, [on]);
}
