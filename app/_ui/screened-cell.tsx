import type { Screened } from '@/lib/engine';
import { ABSENT, formatNumber } from '@/lib/platform/format';
import sheet from './sheet-page.module.css';

/** A cell with a screened figure: the likely value above the range that its assumptions allow. */
export function ScreenedCell({ screened }: { readonly screened: Screened | undefined }) {
  if (!screened) return <td className={sheet.number}>{ABSENT}</td>;
  const { low, likely, high } = screened;
  return (
    <td className={sheet.number}>
      {formatNumber(likely, 0)}
      {low !== high && (
        <span className={sheet.unit}>
          {formatNumber(low, 0)} to {formatNumber(high, 0)}
        </span>
      )}
    </td>
  );
}
