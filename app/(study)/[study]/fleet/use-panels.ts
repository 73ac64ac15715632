import { type RefObject, useRef, useState } from 'react';
import { useLetters } from './use-letters';
import { readFlag, usePreference } from './use-preference';

/** What the page can open in a window above itself; `change` is about the selected motors, all others about the list. */
export type Panel = 'filter' | 'order' | 'columns' | 'views' | 'take' | 'keys' | 'change';

/** Which window is open above the page. */
export interface Panels {
  readonly panel: Panel | undefined;
  readonly open: (panel: Panel) => void;
  readonly close: () => void;
  /** The field that a letter brings the focus to. */
  readonly search: RefObject<HTMLInputElement | null>;
  /** Whether single letters open windows, as the reader wished. */
  readonly letters: boolean;
  readonly setLetters: (on: boolean) => void;
}

/** The windows of the page: one at a time, opened by buttons and, if the reader likes, by letters. */
export function usePanels(): Panels {
  const [panel, setPanel] = useState<Panel>();
  const [letters, setLetters] = usePreference('lossbook.letters', true, readFlag);
  const search = useRef<HTMLInputElement>(null);
  useLetters(letters && panel === undefined, (letter) => {
    if (letter === '/') search.current?.focus();
    else setPanel(({ '?': 'keys', f: 'filter', o: 'order', c: 'columns' } as const)[letter]);
  });
  return { panel, open: setPanel, close: () => setPanel(undefined), search, letters, setLetters };
}
