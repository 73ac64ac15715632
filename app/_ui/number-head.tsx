import type { ReactNode } from 'react';
import { Head } from './head';
import sheet from './sheet-page.module.css';

interface Props {
  readonly name: ReactNode;
  readonly unit?: ReactNode;
  readonly className?: string | undefined;
}

/** Head of a column of numbers: its name, and the unit or what it counts below. */
export function NumberHead({ name, unit, className }: Props) {
  return (
    <Head className={className === undefined ? sheet.number : `${sheet.number} ${className}`}>
      {name}
      {unit !== undefined && <span className={sheet.unit}>{unit}</span>}
    </Head>
  );
}
