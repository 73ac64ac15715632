import type { Screened } from '@/lib/engine';
import { screenedText } from '@/lib/features/ranking/measure-words';
import { ABSENT } from '@/lib/platform/format';
import { NumberHead } from './number-head';
import sheet from './sheet-page.module.css';

/** Heads of the two columns of {@link ScreenedCell}: what a measure saves in energy and in money. */
export function SavedHeads({ currency }: { readonly currency: string }) {
  return (
    <>
      <NumberHead name="Energy saved" unit="kWh a year" />
      <NumberHead name="Money saved" unit={`${currency} a year`} />
    </>
  );
}

/** A cell with a screened figure: the likely value above the range that its assumptions allow. */
export function ScreenedCell({ screened }: { readonly screened: Screened | undefined }) {
  if (!screened) return <td className={sheet.number}>{ABSENT}</td>;
  const { likely, range } = screenedText(screened);
  return (
    <td className={sheet.number}>
      {likely}
      {range !== undefined && <span className={sheet.unit}>{range}</span>}
    </td>
  );
}
