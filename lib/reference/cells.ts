/**
 * The kinds of cell in a reference table, as zod schemas from text to value. The issue message completes the sentence "'…' ".
 * Numbers are written plainly: sign, digits, one decimal point. A decimal comma or an exponent is damage.
 */
import { z } from 'zod';

const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

type Parsed = { readonly ok: true; readonly value: number } | { readonly ok: false; readonly message: string };

function parseNumber(text: string, low: number, high: number, whole: boolean): Parsed {
  if (text === '') return { ok: false, message: 'is empty, where a number must stand' };
  if (!PLAIN_NUMBER.test(text)) return { ok: false, message: 'is not a number' };
  const value = Number(text);
  if (whole && !Number.isInteger(value)) return { ok: false, message: 'is not a whole number' };
  if (value < low || value > high) return { ok: false, message: `is not between ${low} and ${high}` };
  return { ok: true, value };
}

/** A number within `low` and `high`, both included. */
export function number(low: number, high: number) {
  return z.transform((text: string, context): number => {
    const parsed = parseNumber(text, low, high, false);
    if (parsed.ok) return parsed.value;
    context.addIssue({ code: 'custom', message: parsed.message });
    return z.NEVER;
  });
}

/** A number, or nothing: an empty cell is "not known", never zero. */
export function numberOrEmpty(low: number, high: number) {
  return z.transform((text: string, context): number | undefined => {
    if (text === '') return undefined;
    const parsed = parseNumber(text, low, high, false);
    if (parsed.ok) return parsed.value;
    context.addIssue({ code: 'custom', message: parsed.message });
    return z.NEVER;
  });
}

/** One of a closed list of words. */
export function word<const W extends string>(...words: readonly W[]) {
  return z.enum(words, { error: `is none of the words ${words.join(', ')}` });
}

/** One of a closed list of words, or nothing. */
export function wordOrEmpty<const W extends string>(...words: readonly W[]) {
  return z
    .enum([...words, ''] as const, { error: `is none of the words ${words.join(', ')}` })
    .transform((text): W | undefined => words.find((w) => w === text));
}

/** Text that must not be empty. */
export const text = z.string().min(1, { error: 'is empty, where text must stand' });

/** Text, or nothing. */
export const textOrEmpty = z.transform((value: string): string | undefined => (value === '' ? undefined : value));

/** Percentage from 0 to 100. */
export const percent = number(0, 100);

/** Rated output in kW, 10 W to 100 MW. */
export const kilowatts = number(0.01, 100_000);

/** Rated output in hp, 0.01 hp to 100 000 hp. */
export const horsepower = number(0.01, 100_000);

/** Number of poles, 2 to 48. */
export const poles = z.transform((cell: string, context): number => {
  const parsed = parseNumber(cell, 2, 48, true);
  if (parsed.ok && parsed.value % 2 === 0) return parsed.value;
  context.addIssue({ code: 'custom', message: parsed.ok ? 'is not an even number of poles' : parsed.message });
  return z.NEVER;
});

/** Rated frequency, 50 or 60 Hz. */
export const frequency = word('50', '60').transform((value): 50 | 60 => (value === '50' ? 50 : 60));

export const enclosure = word('open', 'enclosed');
