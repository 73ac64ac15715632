import { MINUTES_PER_DAY, type Week, WHOLE_WEEK, weekOf } from './week';

/** A schedule that was understood, or what is wrong with it and what would make it right. */
type ScheduleOutcome =
  | { readonly ok: true; readonly week: Week }
  | { readonly ok: false; readonly text: string; readonly remedy: string };

const DAYS = ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'] as const;

const REMEDY =
  'Write days and times such as Mo-Fr 06:00-22:00; Sa 06:00-14:00, with days Mo, Tu, We, Th, Fr, Sa, Su and times up to 24:00.';

/** Longest text that is looked at. */
const LONGEST = 500;

const read = new Map<string, ScheduleOutcome>();

/**
 * Reads hours of operation: parts joined by semicolons, each with days (`Mo-Fr`, `Sa,Su`; all when absent) and times (`06:00-22:00`,
 * several joined by commas; the whole day when absent). A span that ends before it begins runs into the next day. Parts add up.
 *
 * Strict: what cannot be read is refused with the remedy, never guessed. Texts that were read before are remembered.
 */
export function readSchedule(text: string): ScheduleOutcome {
  const known = read.get(text);
  if (known) return known;
  const outcome = parse(text);
  // A fleet has a handful of schedules; a sheet where each motor has its own must not fill the memory.
  if (read.size < 1000) read.set(text, outcome);
  return outcome;
}

/** Hours of the week of a text that was checked before; all of them without a text. */
export function weekWhen(when: string | undefined): Week {
  if (when === undefined) return WHOLE_WEEK;
  const outcome = readSchedule(when);
  if (!outcome.ok) throw new Error(`hours that were not checked: ${outcome.text}`);
  return outcome.week;
}

function refuse(part: string, why: string): ScheduleOutcome {
  return { ok: false, text: `The hours “${part}” cannot be read: ${why}.`, remedy: REMEDY };
}

function parse(text: string): ScheduleOutcome {
  if (text.length > LONGEST) return refuse(`${text.slice(0, 40)}…`, `they have more than ${LONGEST} characters`);
  const spans: [number, number][] = [];
  for (const raw of text.split(';')) {
    const part = raw
      .trim()
      .replaceAll(/\s*([,-])\s*/g, '$1')
      .replaceAll('–', '-');
    if (part === '') return refuse(text.trim(), 'a part of them is empty');
    const words = part.split(/\s+/);
    const [first = '', second] = words;
    if (words.length > 2) return refuse(part, 'a part has days and times, with one space between');
    const timesFirst = /^\d/.test(first);
    if (timesFirst && second !== undefined) return refuse(part, 'the days come before the times');
    const days = readDays(timesFirst ? 'Mo-Su' : first);
    if (typeof days === 'string') return refuse(part, days);
    const times = readTimes(timesFirst ? first : second);
    if (typeof times === 'string') return refuse(part, times);
    for (const day of days)
      for (const [from, to] of times) spans.push([day * MINUTES_PER_DAY + from, day * MINUTES_PER_DAY + to]);
  }
  return { ok: true, week: weekOf(spans) };
}

function readDays(text: string): number[] | string {
  const days: number[] = [];
  for (const span of text.split(',')) {
    const [from = '', to = from, more] = span.split('-');
    const first = dayNumber(from);
    const last = dayNumber(to);
    if (first < 0) return `${from === '' ? 'a day is missing' : `${from} is no day`}`;
    if (last < 0 || more !== undefined) return `${to === '' ? 'a day is missing' : `${more ?? to} is no day`}`;
    for (let day = first; ; day = (day + 1) % DAYS.length) {
      days.push(day);
      if (day === last) break;
    }
  }
  return days;
}

function dayNumber(word: string): number {
  return DAYS.findIndex((day) => day.toLowerCase() === word.toLowerCase());
}

function readTimes(text: string | undefined): [number, number][] | string {
  if (text === undefined) return [[0, MINUTES_PER_DAY]];
  const spans: [number, number][] = [];
  for (const span of text.split(',')) {
    const match = /^(\d{2}):(\d{2})-(\d{2}):(\d{2})$/.exec(span);
    if (!match) return `${span} is no span of times`;
    const [from, to] = [minutes(match[1], match[2]), minutes(match[3], match[4])];
    if (from === undefined || to === undefined || from === MINUTES_PER_DAY) return `${span} has a time that no day has`;
    if (from === to) return `${span} begins when it ends`;
    spans.push([from, to > from ? to : to + MINUTES_PER_DAY]);
  }
  return spans;
}

function minutes(hours: string | undefined, rest: string | undefined): number | undefined {
  const [h, m] = [Number(hours), Number(rest)];
  const all = 60 * h + m;
  return m > 59 || all > MINUTES_PER_DAY ? undefined : all;
}
