import type { Screened } from '@/lib/engine';
import { ABSENT, formatFigure } from '@/lib/platform/format';
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

/** A screened figure in words: as many digits as the range that its assumptions allow deserves. */
export function screenedText({ low, likely, high }: Screened): { readonly likely: string; readonly range: string | undefined } {
  const text = formatFigure({ value: likely, u: 0, low, high, unit: '1' });
  return { likely: text.value, range: text.low === undefined ? undefined : `${text.low} to ${text.high}` };
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
