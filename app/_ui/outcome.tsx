'use client';

import { useLayoutEffect, useRef } from 'react';
import { ProblemNote } from './problem-note';
import sheet from './sheet-page.module.css';

interface Props {
  /** What came of a sent form; a new object each time it is sent. */
  readonly state: {
    readonly problem?: { readonly text: string; readonly remedy: string } | undefined;
    readonly done?: string | undefined;
  };
}

/** What became of a sent form, led to when it appears: the button may stand far below. The first refused field comes before the message. */
export function Outcome({ state }: Props) {
  const place = useRef<HTMLDivElement>(null);
  // Before it is painted: a key pressed on sight of it goes on from there.
  useLayoutEffect(() => {
    if (state.problem === undefined && state.done === undefined) return;
    const refused = place.current?.closest('form, section, main')?.querySelector<HTMLElement>('[aria-invalid="true"]');
    (state.problem !== undefined && refused ? refused : place.current)?.focus();
  }, [state]);
  return (
    <div ref={place} tabIndex={-1}>
      <ProblemNote problem={state.problem} />
      <div role="status">{state.done !== undefined && <p className={sheet.done}>{state.done}</p>}</div>
    </div>
  );
}
