import type { ReactNode } from 'react';
import sheet from '@/app/_ui/sheet-page.module.css';

/** Up to so many motors the button above them is near. */
const FEW = 5;

interface Props {
  readonly study: string;
  /** How many motors stand in the form, and whether other pages have more of them. */
  readonly count: number;
  readonly isPart: boolean;
  readonly children: ReactNode;
}

/** Makes a round sheet of the motors that are ticked in it. */
export function RoundForm({ study, count, isPart, children }: Props) {
  return (
    <form action={`/${study}/trust/round`} aria-label="Round sheet">
      {count > 0 && (
        <p className="screen-only">
          <button type="submit" data-primary>
            Make a round sheet
          </button>{' '}
          <span className={sheet.soft}>
            of the motors that are ticked {isPart ? 'on this page' : 'here'}, to print and take along
          </span>
        </p>
      )}
      {children}
      {/* After a long list the way back up is long. */}
      {count > FEW && (
        <p className="screen-only">
          <button type="submit">Make a round sheet of what is ticked</button>
        </p>
      )}
    </form>
  );
}
