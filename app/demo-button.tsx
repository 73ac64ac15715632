'use client';

import { useActionState } from 'react';
import { ProblemNote } from '@/app/_ui/problem-note';
import { type DemoState, openDemo } from '@/lib/features/demo/actions';

const NOTHING: DemoState = {};

/** Opens the demonstration; making it takes a moment the first time. */
export function DemoButton({ primary }: { readonly primary: boolean }) {
  const [state, open, working] = useActionState(openDemo, NOTHING);
  return (
    <form action={open}>
      <ProblemNote problem={state.problem} />
      <button type="submit" aria-disabled={working} {...(primary ? { 'data-primary': true } : {})}>
        {working ? 'Opening…' : 'Open the demonstration'}
      </button>
    </form>
  );
}
