const FORM = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?(Z|[+-]\d{2}:?\d{2})?)?$/;

/**
 * Reads a date, or a date and time, in the extended form of ISO 8601: `2026-03-14`, `2026-03-14T09:30`,
 * `2026-03-14T09:30:15+02:00`. A space may stand for the T. Gives the text back with a T and a colon in the
 * offset, or `undefined` when it is no such date or the day does not exist. Years 1900 to 2199.
 */
export function readDate(text: string): string | undefined {
  const match = FORM.exec(text);
  if (match === null) return undefined;
  const [, year = '', month = '', day = '', hour, minute, second, fraction, offset] = match;
  if (Number(year) < 1900 || Number(year) > 2199 || !dayExists(Number(year), Number(month), Number(day))) return undefined;
  const date = `${year}-${month}-${day}`;
  if (hour === undefined || minute === undefined) return date;
  if (Number(hour) > 23 || Number(minute) > 59 || Number(second ?? 0) > 59) return undefined;
  const zone =
    offset === undefined || offset === 'Z' || offset.includes(':') ? offset : `${offset.slice(0, 3)}:${offset.slice(3)}`;
  if (zone !== undefined && zone !== 'Z' && (Number(zone.slice(1, 3)) > 14 || Number(zone.slice(4)) > 59)) return undefined;
  const seconds = second === undefined ? '' : `:${second}`;
  return `${date}T${hour}:${minute}${seconds}${fraction === undefined ? '' : `.${fraction}`}${zone ?? ''}`;
}

function dayExists(year: number, month: number, day: number): boolean {
  if (month < 1 || month > 12 || day < 1) return false;
  return day <= new Date(Date.UTC(year, month, 0)).getUTCDate();
}

const hasOffset = (text: string): boolean => /(?:Z|[+-]\d{2}:\d{2})$/.test(text);

/** Instant for sorting, in milliseconds; site time counts as if it were UTC, a date alone as its midnight. */
export function instantOf(takenAt: string): number {
  return Date.parse(takenAt.length === 10 || hasOffset(takenAt) ? takenAt : `${takenAt}Z`);
}

/** Equal for two texts that mean the same time; a date alone, site time and a time with offset never meet. */
export function timeKey(takenAt: string): string {
  if (takenAt.length === 10) return takenAt;
  return `${hasOffset(takenAt) ? 'z' : 's'}${instantOf(takenAt)}`;
}
