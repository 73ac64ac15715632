import { readNumber } from '../fleet/number';

/** Rates and shares are fractions in files and in the database, and per cent in the forms: here alone one becomes the other. */

/** The decimal point moved by so many places, digit by digit, so that a value comes back as it was. */
function moved(value: number, places: number): string {
  const [digits = '', exponent = '0'] = String(value).split('e');
  const number = Number(`${digits}e${Number(exponent) + places}`);
  // More digits than a number tells apart: the text has them all the same.
  return Number(`${number}e${-places}`) === value ? String(number) : `${digits}e${Number(exponent) + places}`;
}

/** A fraction as the forms show it, without the sign. */
export function asPerCent(fraction: number): string {
  return moved(fraction, 2);
}

/** The fraction that was typed in per cent, with or without the sign; or why it cannot be read. */
export function readPerCent(text: string): number | { readonly refusal: string } {
  const bare = text.replace(/\s*%\s*$/, '');
  const read = readNumber(bare, { decimal: '.' });
  if (!read.ok) return { refusal: `${read.text} ${read.remedy}` };
  const [digits = '', exponent = '0'] = bare.replace('\u2212', '-').trim().toLowerCase().split('e');
  return Number(`${digits}e${Number(exponent.replace('\u2212', '-')) - 2}`);
}

/** What the schema of the file says of a fraction, with its figures in per cent; the place before the colon has figures of its own. */
export function sayInPerCent(sentence: string): string {
  const at = sentence.indexOf(': ');
  return (
    sentence.slice(0, Math.max(at, 0)) +
    sentence.slice(Math.max(at, 0)).replace(/-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/g, (figure) => `${asPerCent(Number(figure))} %`)
  );
}
