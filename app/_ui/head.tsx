import type { ReactNode } from 'react';
import { HEAD } from './row-roles';

interface Props {
  readonly className?: string | undefined;
  readonly children: ReactNode;
}

/** Head of a column in a table that becomes lines on a phone. */
export function Head({ className, children }: Props) {
  return (
    <th {...HEAD} scope="col" className={className}>
      {children}
    </th>
  );
}
