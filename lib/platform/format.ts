/**
 * The one formatter of the program: numbers in the reader's locale, figures with their interval, money and dates. Used on the
 * server and in the browser; it holds no state. Minus is U+2212, the unit follows a narrow no-break space (U+202F).
 */
import { minorDigits } from './money';

/** A figure of the results: value, standard uncertainty (k = 1), unit; 95 % limits where they are not value ± 1.96 u. */
export interface ShownFigure {
  readonly value: number;
  readonly u: number;
  readonly unit: string;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** The pieces of a shown figure, so that screens can set them apart. */
export interface FigureText {
  readonly value: string;
  /** `2.3`: the half-width of the 95 % interval; absent without uncertainty or where the limits are not symmetrical. */
  readonly plusMinus?: string;
  /** The 95 % limits; absent without uncertainty. */
  readonly low?: string;
  readonly high?: string;
  /** As shown: `kW`, `%`, empty for a bare number. */
  readonly unit: string;
  /** `41.7 ± 2.3 kW`, or `41.7 (39.0 to 45.2) kW` where the limits are not symmetrical. */
  readonly text: string;
  /** `39.4 to 44.0 kW`, for whiskers; absent without uncertainty. */
  readonly range?: string;
}

export interface FigureOptions {
  readonly locale?: string | undefined;
  /** Shows a fraction (unit `1`) in per cent. */
  readonly percent?: boolean | undefined;
  /** Digits after the decimal sign, where a column fixes them; else as many as the interval deserves. */
  readonly decimals?: number | undefined;
}

/** Normal quantile for 95 %: k = 1.96 (JCGM 100:2008, table G.1). */
export const COVERAGE_FACTOR = 1.96;

/** What stands for an absent value; its reason belongs beside it. */
export const ABSENT = '—';

const MINUS = '\u2212';
const NARROW_SPACE = '\u202f';
const DEFAULT_LOCALE = 'en-US';
/** Significant digits of a value that has no uncertainty. */
const PLAIN_DIGITS = 4;

const formatters = new Map<string, Intl.NumberFormat>();

function formatter(locale: string, decimals: number): Intl.NumberFormat {
  const key = `${locale} ${decimals}`;
  const known = formatters.get(key);
  if (known !== undefined) return known;
  const made = new Intl.NumberFormat(locale, {
    numberingSystem: 'latn',
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
  formatters.set(key, made);
  return made;
}

/** A number times a power of ten, by its decimal form as written, so that nothing is lost to binary fractions. */
function shift(value: number, places: number): number {
  const [mantissa = '0', exponent = '0'] = value.toExponential().split('e');
  return Number(`${mantissa}e${Number(exponent) + places}`);
}

/** Rounds to a power of ten: `decimals` may be negative (-1: tens). Halves go away from zero in the decimal form as written. */
function roundTo(value: number, decimals: number): number {
  const rounded = shift(Math.round(shift(Math.abs(value), decimals)), -decimals);
  return value < 0 ? -rounded : rounded;
}

/**
 * A number with a fixed count of digits after the decimal sign; a negative count rounds to tens, hundreds, …
 * A value that rounds to zero has no sign.
 */
export function formatNumber(value: number, decimals: number, locale: string = DEFAULT_LOCALE): string {
  if (!Number.isFinite(value)) return ABSENT;
  const places = Math.max(-100, Math.min(100, decimals));
  const rounded = roundTo(value, places);
  const text = formatter(locale, Math.max(0, Math.min(20, places))).format(rounded === 0 ? 0 : Math.abs(rounded));
  return rounded < 0 ? `${MINUS}${text}` : text;
}

/** The power of ten of the leading digit. */
function leading(value: number): number {
  return Number(value.toExponential().split('e')[1]);
}

/**
 * Digits after the decimal sign that leave two significant digits of an expanded uncertainty; negative: tens, hundreds.
 * JCGM 100:2008 (GUM), 7.2.6: at most two significant digits, and the value rounded to agree with them.
 */
export function decimalsFor(expanded: number): number {
  if (!(expanded > 0) || !Number.isFinite(expanded)) return 0;
  // The rounded value decides: 0.0996 becomes 0.10.
  return 1 - leading(Number(expanded.toPrecision(2)));
}

/** Decimals for a value that has no uncertainty: four significant digits, without zeros at the end. */
function plainDecimals(value: number): number {
  if (value === 0) return 0;
  const text = Math.abs(value).toPrecision(PLAIN_DIGITS);
  const [mantissa = '', exponent = '0'] = Number(text).toExponential().split('e');
  return Math.max(0, (mantissa.split('.')[1]?.length ?? 0) - Number(exponent));
}

/** A number as written and its unit, with the space that belongs between: no line ends there. */
export function withUnit(text: string, unit: string): string {
  return unit === '' ? text : `${text}${NARROW_SPACE}${unit}`;
}

/** Limits that lie as far on both sides within this share of their width are shown as ±. */
const SLIGHT = 0.02;

/** The 95 % limits of a figure: its own, else value ± 1.96 u, with ten significant digits as all figures of the results. */
export function limitsOf95({ value, u, low, high }: Pick<ShownFigure, 'value' | 'u' | 'low' | 'high'>): {
  readonly low: number;
  readonly high: number;
} {
  const half = COVERAGE_FACTOR * u;
  return { low: low ?? Number((value - half).toPrecision(10)), high: high ?? Number((value + half).toPrecision(10)) };
}

/** A figure with its 95 % interval in as many digits as the interval deserves. */
export function formatFigure(figure: ShownFigure, options: FigureOptions = {}): FigureText {
  const locale = options.locale ?? DEFAULT_LOCALE;
  const scale = options.percent === true ? 100 : 1;
  const unit = options.percent === true ? '%' : figure.unit === '1' ? '' : figure.unit;
  const value = figure.value * scale;
  const within = limitsOf95(figure);
  const [low, high] = [within.low * scale, within.high * scale];
  if (!(high > low)) {
    const text = formatNumber(value, options.decimals ?? plainDecimals(value), locale);
    return { value: text, unit, text: withUnit(text, unit) };
  }
  const half = (high - low) / 2;
  const even = Math.abs((low + high) / 2 - value) <= SLIGHT * (high - low);
  const decimals = options.decimals ?? decimalsFor(half);
  const show = (number: number): string => formatNumber(number, decimals, locale);
  const limits = { low: show(low), high: show(high) };
  const range = withUnit(`${limits.low} to ${limits.high}`, unit);
  if (!even) {
    return {
      value: show(value),
      ...limits,
      unit,
      range,
      text: withUnit(`${show(value)} (${limits.low} to ${limits.high})`, unit),
    };
  }
  const plusMinus = show(half);
  return { value: show(value), plusMinus, ...limits, unit, range, text: withUnit(`${show(value)} ± ${plusMinus}`, unit) };
}

/** A number as somebody stated it, with the decimals that it has, at most six. */
export function formatAsStated(value: number, locale: string = DEFAULT_LOCALE): string {
  return formatNumber(value, Math.min(6, String(value).split('.')[1]?.length ?? 0), locale);
}

/** A share of one in per cent, with its sign. */
export function formatPercent(share: number, decimals = 0, locale: string = DEFAULT_LOCALE): string {
  return withUnit(formatNumber(100 * share, decimals, locale), '%');
}

/** What may stand behind a number in a sentence and belongs to it; a currency is three capitals. */
const BELONGING = /(\d) (?=(?:%|±|°C|K|[kM]?Wh?|kvarh?|hp|k?V|A|Hz|r\/min|mm\/s|N·m|k?Ω|MΩ|GΩ|[A-Z]{3})(?![\w’-]))/g;

/** A sentence in which no line ends between a number and its unit: those of the engine are written with plain spaces, for files and terminals. */
export function unparted(sentence: string): string {
  return sentence.replace(BELONGING, `$1${NARROW_SPACE}`).replace(/± (?=\d)/g, `±${NARROW_SPACE}`);
}

/** A whole number, such as a count. */
export function formatCount(count: number, locale: string = DEFAULT_LOCALE): string {
  return formatNumber(count, 0, locale);
}

/** A count with its noun, whose plural ends in s: `1 motor`, `1,200 motors`. */
export function counted(count: number, noun: string, locale: string = DEFAULT_LOCALE): string {
  return `${formatCount(count, locale)} ${noun}${count === 1 ? '' : 's'}`;
}

/** The words as a sentence begins. */
export function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A title or label as it stands within a sentence. */
export function uncapitalised(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/**
 * Money with the code of its currency, as figures with a doubt and the sentences of the engine have it; in whole units unless minor ones are asked for.
 * @param amount in units of the currency (not minor units).
 */
export function formatMoney(amount: number, currency: string, locale: string = DEFAULT_LOCALE, minor = false): string {
  return Number.isFinite(amount) ? withUnit(formatAmount(amount, currency, locale, minor), currency) : ABSENT;
}

/** The same without its currency, for a column that has it in its head. */
export function formatAmount(amount: number, currency: string, locale: string = DEFAULT_LOCALE, minor = false): string {
  return formatNumber(amount, minor ? minorDigits(currency) : 0, locale);
}

/** The date of a stated time (ISO 8601 text): `2026-03-14`, with `09:30` after it where a time was stated. Site time as written. */
export function formatStated(iso: string): string {
  const match = /^(\d{4}-\d{2}-\d{2})(?:[T ](\d{2}:\d{2}))?/.exec(iso);
  if (match?.[1] === undefined) return iso;
  return match[2] === undefined || match[2] === '00:00' ? match[1] : `${match[1]} ${match[2]}`;
}

/** An instant set by the program, as `2026-03-14 09:30` in a time zone. */
export function formatInstant(at: Date, timeZone = 'UTC'): string {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).formatToParts(at);
  const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((each) => each.type === type)?.value ?? '';
  return `${part('year')}-${part('month')}-${part('day')} ${part('hour')}:${part('minute')}`;
}

/** Bytes in words: `12.3 MB` (10^6). */
export function formatBytes(bytes: number, locale: string = DEFAULT_LOCALE): string {
  const units = ['B', 'kB', 'MB', 'GB'] as const;
  let amount = bytes;
  let step = 0;
  while (amount >= 999.5 && step < units.length - 1) {
    amount /= 1000;
    step += 1;
  }
  return withUnit(formatNumber(amount, step === 0 || amount >= 99.95 ? 0 : 1, locale), units[step] ?? 'B');
}

/** The first usable locale of an `Accept-Language` header; American English when there is none. */
export function readerLocale(acceptLanguage: string | null): string {
  for (const entry of (acceptLanguage ?? '').split(',')) {
    const tag = entry.split(';')[0]?.trim() ?? '';
    if (!/^[a-z]{2,3}(-[a-z0-9]{2,8})*$/i.test(tag)) continue;
    try {
      const [supported] = Intl.NumberFormat.supportedLocalesOf(tag);
      if (supported !== undefined) return supported;
    } catch {
      // Well-formed by its letters, not by the standard: the next one may do.
    }
  }
  return DEFAULT_LOCALE;
}
