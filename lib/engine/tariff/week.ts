/** Hours of a week as spans of minutes from Monday 00:00, in order and apart. */
export type Week = readonly (readonly [from: number, to: number])[];

export const MINUTES_PER_DAY = 1440;
const MINUTES_PER_WEEK = 7 * MINUTES_PER_DAY;

/** Every hour of the week. */
export const WHOLE_WEEK: Week = [[0, MINUTES_PER_WEEK]];

/** Spans put in order, overlapping ones joined; what runs beyond Sunday goes on on Monday. */
export function weekOf(spans: readonly (readonly [number, number])[]): Week {
  const inside: [number, number][] = [];
  for (const [from, to] of spans) {
    if (to <= MINUTES_PER_WEEK) inside.push([from, to]);
    else inside.push([from, MINUTES_PER_WEEK], [0, to - MINUTES_PER_WEEK]);
  }
  inside.sort(([a], [b]) => a - b);
  const joined: [number, number][] = [];
  for (const [from, to] of inside) {
    const last = joined[joined.length - 1];
    if (last && from <= last[1]) last[1] = Math.max(last[1], to);
    else if (to > from) joined.push([from, to]);
  }
  return joined;
}

/** The hours that two weeks have in common. */
export function common(a: Week, b: Week): Week {
  const found: (readonly [number, number])[] = [];
  for (const [from, to] of a)
    for (const [start, end] of b) {
      const low = Math.max(from, start);
      const high = Math.min(to, end);
      if (low < high) found.push([low, high]);
    }
  return found;
}

/** The hours of one week that are not in another. */
export function without(a: Week, b: Week): Week {
  let left = a;
  for (const [start, end] of b)
    left = left.flatMap(([from, to]) => {
      const parts: (readonly [number, number])[] = [];
      if (from < Math.min(to, start)) parts.push([from, Math.min(to, start)]);
      if (Math.max(from, end) < to) parts.push([Math.max(from, end), to]);
      return parts;
    });
  return left;
}

/** Hours in a week. */
export function hoursOf(week: Week): number {
  let minutes = 0;
  for (const [from, to] of week) minutes += to - from;
  return minutes / 60;
}

/** Days of each month of a common year. */
const DAYS: readonly number[] = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export const MONTHS = 12;

/** Hours of a month (0 to 11) that fall into the week's hours: weekdays are spread evenly over the year, holidays count as their weekday. */
export function hoursInMonth(week: Week, month: number): number {
  return (hoursOf(week) * (DAYS[month] ?? 0)) / 7;
}
