import type { ReactNode } from 'react';
import sheet from './sheet-page.module.css';

/** Head of a column of numbers: its name, and the unit or what it counts below. */
export function NumberHead({ name, unit }: { readonly name: ReactNode; readonly unit?: ReactNode }) {
  return (
    <th scope="col" className={sheet.number}>
      {name}
      {unit !== undefined && <span className={sheet.unit}>{unit}</span>}
    </th>
  );
}
