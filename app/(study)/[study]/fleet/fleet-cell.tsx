import Link from 'next/link';
import { BandMark } from '@/app/_ui/band-mark';
import { TrustMark } from '@/app/_ui/trust-mark';
import { BAND_WORDS, type FleetColumn, TRUST_WORDS } from '@/lib/features/results/fleet-columns';
import { wordOf } from '@/lib/features/results/fleet-filter';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { ABSENT, COVERAGE_FACTOR, decimalsFor, formatFigure, formatNumber } from '@/lib/platform/format';
import styles from './fleet.module.css';

/** How a column of numbers is set: digits after the decimal sign for which there is room, and the width of the interval. */
export interface NumberSetting {
  readonly locale: string;
  /** The reader's decimal sign. */
  readonly point: string;
  readonly places: number;
  /** Characters of the widest interval, with its sign. */
  readonly intervalWidth: number;
}

const SAMPLE = 400;
const MOST_PLACES = 3;

/** Room for a column's digits, from a sample of its rows. */
export function settingOf(rows: readonly FleetRow[], column: FleetColumn, locale: string): NumberSetting {
  const point = new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ?? '.';
  let places = 0;
  let intervalWidth = 0;
  const step = Math.max(1, Math.floor(rows.length / SAMPLE));
  for (let at = 0; at < rows.length; at += step) {
    const row = rows[at];
    if (row === undefined) continue;
    const value = column.value(row);
    if (typeof value !== 'number') continue;
    const doubt = column.doubt?.(row);
    const text = doubt === undefined ? plainText(value, column, locale) : '';
    const decimals = doubt === undefined ? (text.split(point)[1]?.length ?? 0) : decimalsFor(COVERAGE_FACTOR * doubt);
    places = Math.max(places, Math.min(MOST_PLACES, decimals));
    if (doubt !== undefined) {
      const { plusMinus } = formatFigure({ value, u: doubt, unit: '' }, { locale });
      intervalWidth = Math.max(intervalWidth, (plusMinus?.length ?? 0) + Math.max(0, places - Math.max(0, decimals)));
    }
  }
  return { locale, point, places, intervalWidth: intervalWidth + 2 };
}

function plainText(value: number, column: FleetColumn, locale: string): string {
  if (column.plain === true) return String(value);
  if (column.decimals !== undefined) return formatNumber(value, column.decimals, locale);
  return formatFigure({ value, u: 0, unit: '' }, { locale }).value;
}

/** Digits that are not there, so that decimal signs stand in line; nobody sees or hears them. */
function Padding({ text, setting }: { readonly text: string; readonly setting: NumberSetting }) {
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
}: {
  readonly row: FleetRow;
  readonly column: FleetColumn;
  readonly setting: NumberSetting;
  readonly href: string;
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
  const doubt = column.doubt?.(row);
  if (doubt === undefined) {
    const text = plainText(value, column, setting.locale);
    return (
      <>
        {text}
        <Padding text={text} setting={setting} />
        {column.doubt && <span className={styles.interval} style={{ minWidth: `${setting.intervalWidth}ch` }} />}
      </>
    );
  }
  const text = formatFigure({ value, u: doubt, unit: '' }, { locale: setting.locale });
  return (
    <>
      {text.value}
      <Padding text={text.value} setting={setting} />
      <span className={styles.interval} style={{ minWidth: `${setting.intervalWidth}ch` }}>
        {text.plusMinus !== undefined && (
          <>
            {' '}
            ± {text.plusMinus}
            <Padding text={text.plusMinus} setting={setting} />
          </>
        )}
      </span>
    </>
  );
}

function keyOf<Words extends object>(words: Words, value: string): keyof Words | undefined {
  return value in words ? (value as keyof Words) : undefined;
}

/** A figure in words, with its limits: `load 54 ± 3 %: 51 to 57 %`. For the line under the table. */
export function cellInWords(row: FleetRow, column: FleetColumn, unit: string, locale: string): string {
  const value = column.value(row);
  if (value === undefined) return `${ABSENT} (${column.absent ?? 'not known'})`;
  if (typeof value === 'string') return wordOf(column, value);
  const doubt = column.doubt?.(row);
  if (doubt === undefined) return `${plainText(value, column, locale)}${unit === '' ? '' : `\u202f${unit}`}`;
  const text = formatFigure({ value, u: doubt, unit }, { locale });
  return text.range === undefined ? text.text : `${text.text}, that is ${text.range} at 95 %`;
}
