import type { ReactNode } from 'react';

interface Props {
  readonly label: string;
  readonly children: ReactNode;
}

/** One of the facts at the head of a report: its name, and the figure. */
export function Fact({ label, children }: Props) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}
