import type { Screened } from '@/lib/engine';
import { screenedText } from '@/lib/features/ranking/measure-words';
import { ABSENT } from '@/lib/platform/format';
import { NumberHead } from './number-head';
import { CELL } from './row-roles';
import sheet from './sheet-page.module.css';

/** Heads of the two columns of {@link SavedCells}: what a measure saves in energy and in money. */
export function SavedHeads({ currency }: { readonly currency: string }) {
  return (
    <>
      <NumberHead name={ENERGY} unit={UNIT} />
      <NumberHead name={MONEY} unit={`${currency} a year`} />
    </>
  );
}

const ENERGY = 'Energy saved';
const MONEY = 'Money saved';
const UNIT = 'kWh a year';

interface Saved {
  readonly energy: Screened | undefined;
  readonly money: Screened | undefined;
  readonly currency: string;
}

/** What a measure saves in energy and in money, each with the head of its column for where that does not show. */
export function SavedCells({ energy, money, currency }: Saved) {
  return (
    <>
      <ScreenedCell screened={energy} head={`${ENERGY}, ${UNIT}`} />
      <ScreenedCell screened={money} head={`${MONEY}, ${currency} a year`} />
    </>
  );
}

/** A cell with a screened figure: the likely value above the range that its assumptions allow. */
function ScreenedCell({ screened, head }: { readonly screened: Screened | undefined; readonly head: string }) {
  const { likely, range } = screened ? screenedText(screened) : { likely: ABSENT };
  return (
    <td {...CELL} className={sheet.number} data-unit={head}>
      {likely}
      {range !== undefined && <span className={sheet.unit}>{range}</span>}
    </td>
  );
}
