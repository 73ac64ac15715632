import Link from 'next/link';
import { BandMark } from '@/app/_ui/band-mark';
import { TrustMark } from '@/app/_ui/trust-mark';
import { type FleetColumn, figureIn, type Showing } from '@/lib/features/results/fleet-column';
import { BAND_WORDS, TRUST_WORDS } from '@/lib/features/results/fleet-columns';
import { wordOf } from '@/lib/features/results/fleet-filter';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { shownUnit } from '@/lib/features/results/shown-columns';
import { ABSENT, formatFigure, formatNumber } from '@/lib/platform/format';
import styles from './fleet.module.css';

/** How a column is set: for numbers the digits after the decimal sign for which there is room, and the widths. */
interface ColumnSetting {
  readonly showing: Showing;
  /** The reader's decimal sign. */
  readonly point: string;
  readonly places: number;
  /** Characters of the widest interval, with its sign. */
  readonly intervalWidth: number;
  /** Whether any interval is not as far on both sides: then they stand in line on the left. */
  readonly uneven: boolean;
  /** Width of the column in digits, beside its padding: that of its widest cell or of its head, within limits. */
  readonly digits: number;
}

const SAMPLE = 120;
const MOST_PLACES = 2;
/** An average letter is somewhat narrower than a digit. */
const LETTER = 0.86;
/** Tags are set bold, and are never cut: they tell motors apart. */
const BOLD = 1.4;
const WIDEST = 34;
/** Of an interval in words a fifth are spaces and brackets, narrower than digits. */
const NARROW = 0.9;
/** Letters that the mark before a word takes up. */
const MARK_LETTERS: Readonly<Record<string, number>> = { trust: 2.5, band: 4 };

/** How a column is set, from a sample of its rows. */
export function settingOf(rows: readonly FleetRow[], column: FleetColumn, showing: Showing): ColumnSetting {
  const { locale } = showing;
  const point = new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ?? '.';
  let places = 0;
  let whole = 1;
  let letters = 0;
  let wholeInterval = 0;
  let widestUneven = 0;
  const step = Math.max(1, Math.floor(rows.length / SAMPLE));
  for (let at = 0; at < rows.length; at += column.kind === 'number' ? step : 1) {
    const row = rows[at];
    if (row === undefined) continue;
    const value = column.value(row);
    if (typeof value === 'string') letters = Math.max(letters, (column.words?.[value] ?? value).length);
    if (typeof value !== 'number') continue;
    const instead = column.instead?.(row, showing);
    if (instead) {
      letters = Math.max(letters, instead.short.length);
      continue;
    }
    const { text, interval, uneven } = numberTexts(row, value, { column, locale });
    const [before = '', after = ''] = text.split(point);
    whole = Math.max(whole, before.length);
    places = Math.max(places, Math.min(MOST_PLACES, after.length));
    if (uneven) widestUneven = Math.max(widestUneven, interval.length);
    else wholeInterval = Math.max(wholeInterval, (interval.split(point)[0] ?? '').length);
  }
  const digits = places === 0 ? 0 : places + 1;
  const intervalWidth = Math.max(wholeInterval === 0 ? 0 : wholeInterval + digits, widestUneven && widestUneven * NARROW + 1);
  const own =
    column.kind === 'number'
      ? Math.max(whole + digits + intervalWidth, letters * LETTER)
      : (letters + (MARK_LETTERS[column.id] ?? 0)) * LETTER * (column.id === 'tag' ? BOLD : 1);
  const head = Math.max(column.name.length + 1.5, column.unit.length) * LETTER;
  return { showing, point, places, intervalWidth, uneven: widestUneven > 0, digits: Math.min(WIDEST, Math.max(own, head)) };
}

interface NumberTexts {
  readonly text: string;
  /** `± 2.1`, or `(39.0 to 45.2)` where it is not as far on both sides; empty where there is none. */
  readonly interval: string;
  readonly uneven: boolean;
}

/** A number and its interval as shown. */
function numberTexts(
  row: FleetRow,
  value: number,
  { column, locale }: { readonly column: FleetColumn; readonly locale: string },
): NumberTexts {
  const figure = figureIn(row, column, locale);
  if (!figure) return { text: plainText(value, column, locale), interval: '', uneven: false };
  const { value: text, plusMinus, low, high } = figure;
  if (plusMinus !== undefined) return { text, interval: `± ${plusMinus}`, uneven: false };
  return low === undefined ? { text, interval: '', uneven: false } : { text, interval: `(${low} to ${high})`, uneven: true };
}

function plainText(value: number, column: FleetColumn, locale: string): string {
  if (column.plain === true) return String(value);
  if (column.decimals !== undefined) return formatNumber(value, column.decimals, locale);
  return formatFigure({ value, u: 0, unit: '' }, { locale }).value;
}

/** Digits that are not there, so that decimal signs stand in line; nobody sees or hears them. */
function Padding({ text, setting }: { readonly text: string; readonly setting: ColumnSetting }) {
  const { places, point } = setting;
  const decimals = text.split(point)[1]?.length ?? 0;
  if (decimals >= places) return null;
  const missing = `${decimals === 0 ? point : ''}${'0'.repeat(places - decimals)}`;
  return <span className={styles.padding} aria-hidden="true" data-missing={missing} />;
}

/** A cell of the fleet's table. */
export function FleetCell({
  row,
  column,
  setting,
  href,
  stacked,
}: {
  readonly row: FleetRow;
  readonly column: FleetColumn;
  readonly setting: ColumnSetting;
  readonly href: string;
  /** Alone on its line, without a head: the name and the unit stand beside the number. */
  readonly stacked: boolean;
}) {
  const value = column.value(row);
  if (column.id === 'tag') {
    return (
      <Link href={href} prefetch={false} tabIndex={-1} className={styles.tag}>
        {row.tag}
      </Link>
    );
  }
  if (value === undefined) {
    return (
      <span className={styles.absent} title={column.absent}>
        {ABSENT}
        <span className="unseen">{column.absent}</span>
      </span>
    );
  }
  if (typeof value === 'string') {
    if (column.id === 'trust') return <TrustMark level={keyOf(TRUST_WORDS, value)} />;
    if (column.id === 'band') return <BandMark band={keyOf(BAND_WORDS, value)} />;
    return column.kind === 'word' ? wordOf(column, value) : value;
  }
  const instead = column.instead?.(row, setting.showing);
  if (instead) {
    return (
      <span title={instead.long}>
        <span aria-hidden="true">{instead.short}</span>
        <span className="unseen">{instead.long}</span>
      </span>
    );
  }
  const { text, interval, uneven } = numberTexts(row, value, { column, locale: setting.showing.locale });
  if (stacked) {
    return (
      <span>
        {column.name.toLowerCase()} {text}
        {interval !== '' && <span className={styles.soft}> {interval}</span>}
        <span className={styles.soft}>{`\u202f${column.unit}`}</span>
      </span>
    );
  }
  return (
    <>
      {text}
      <Padding text={text} setting={setting} />
      {column.doubt && (
        <span
          className={setting.uneven ? `${styles.interval} ${styles.uneven}` : styles.interval}
          style={{ minWidth: `${setting.intervalWidth}ch` }}
        >
          {interval !== '' && (
            <>
              {' '}
              {interval}
              {!uneven && !setting.uneven && <Padding text={interval} setting={setting} />}
            </>
          )}
        </span>
      )}
    </>
  );
}

function keyOf<Words extends object>(words: Words, value: string): keyof Words | undefined {
  return value in words ? (value as keyof Words) : undefined;
}

/** A figure in words, with its limits: `load 54 ± 3 %: 51 to 57 %`. For the line under the table. */
export function cellInWords(row: FleetRow, column: FleetColumn, showing: Showing): string {
  const { locale } = showing;
  const unit = shownUnit(column, showing.currency);
  const value = column.value(row);
  if (value === undefined) return `${ABSENT} (${column.absent ?? 'not known'})`;
  if (typeof value === 'string') return wordOf(column, value);
  const instead = column.instead?.(row, showing);
  if (instead) return instead.long;
  const text = figureIn(row, column, locale, unit);
  if (!text) return `${plainText(value, column, locale)}${unit === '' ? '' : `\u202f${unit}`}`;
  return text.range === undefined ? text.text : `${text.text}, that is ${text.range} at 95 %`;
}
