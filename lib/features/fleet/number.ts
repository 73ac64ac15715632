/**
 * The one reader of numbers that people type or export: sheets, price lists, settings forms.
 * It reads a number or refuses it in words; it never changes one in silence.
 */

export type DecimalSign = '.' | ',';

export type NumberRefusalCode =
  | 'no-number'
  | 'placeholder'
  | 'spreadsheet-error'
  | 'formula-text'
  | 'not-finite'
  | 'percent-sign'
  | 'foreign-digits'
  | 'other-minus'
  | 'hexadecimal'
  | 'grouped-thousands'
  | 'other-decimal-sign'
  | 'text-beside-number'
  | 'not-a-number'
  | 'number-too-large'
  | 'number-too-small';

export interface NumberRefusal {
  readonly ok: false;
  readonly code: NumberRefusalCode;
  /** One sentence: what is wrong with the text. */
  readonly text: string;
  /** One sentence: what would be read. */
  readonly remedy: string;
}

type NumberReading = { readonly ok: true; readonly value: number } | NumberRefusal;

const POINT_NUMBER = /^[+\-\u2212]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+\-\u2212]?\d+)?$/;
const COMMA_NUMBER = /^[+\-\u2212]?(?:\d+(?:,\d+)?|,\d+)(?:[eE][+\-\u2212]?\d+)?$/;
const SHOWN_LENGTH = 60;

/**
 * Reads a number written in ASCII digits with an optional sign (`+`, `-`, `−`), the declared decimal sign and an
 * optional exponent (`1e3`). Spaces around it do not count. Grouped thousands, units, per cent signs, other digits,
 * hexadecimal numbers and words are refused. Negative zero is read as zero.
 */
export function readNumber(text: string, { decimal }: { readonly decimal: DecimalSign }): NumberReading {
  const trimmed = text.trim();
  if (!(decimal === '.' ? POINT_NUMBER : COMMA_NUMBER).test(trimmed)) return refuse(whyNot(trimmed, decimal), trimmed, decimal);
  const plain = trimmed.replaceAll('\u2212', '-').replace(',', '.');
  const value = Number(plain);
  if (!Number.isFinite(value)) return refuse('number-too-large', trimmed, decimal);
  if (value === 0) return /[1-9]/.test(mantissa(plain)) ? refuse('number-too-small', trimmed, decimal) : { ok: true, value: 0 };
  return { ok: true, value };
}

function mantissa(plain: string): string {
  return plain.split(/e/i, 1)[0] ?? plain;
}

/** Which refusal fits a text that is no number under this decimal sign: the most particular one first. */
function whyNot(text: string, decimal: DecimalSign): NumberRefusalCode {
  if (text === '') return 'no-number';
  if (/^#[A-Z/0!?_]+$/i.test(text)) return 'spreadsheet-error';
  if (/^[-–—−?.]+$/.test(text) || /^(n\/?a|n\.a\.|none|nil|null|unknown|tbd|tbc)$/i.test(text)) return 'placeholder';
  if (text.startsWith('=')) return 'formula-text';
  if (/^[+\-−]?(nan|inf|infinity|∞)$/i.test(text)) return 'not-finite';
  if (/\p{Nd}/u.test(text.replace(/[0-9]/g, ''))) return 'foreign-digits';
  if (/^[^\p{L}]*\d\s*[%‰]$/u.test(text)) return 'percent-sign';
  if (/^[–—‐‑‒﹣－]\s*[\d.,]/.test(text)) return 'other-minus';
  if (/^[+\-−]?0x[0-9a-f]+$/i.test(text)) return 'hexadecimal';
  return whyNotDigits(text.replace(/^[+\-−]\s*/, ''), decimal);
}

function whyNotDigits(unsigned: string, decimal: DecimalSign): NumberRefusalCode {
  const other = decimal === '.' ? ',' : '.';
  if (/^\d+(?:[.,'’_\s]\d+)+$/.test(unsigned)) {
    const separators = unsigned.replace(/\d/g, '');
    const [, after = ''] = unsigned.split(other);
    return separators === other && after.length !== 3 ? 'other-decimal-sign' : 'grouped-thousands';
  }
  return /\d/.test(unsigned) ? 'text-beside-number' : 'not-a-number';
}

/** What is said of a number that is refused, by the code of it. */
export const REFUSALS: Record<
  NumberRefusalCode,
  (shown: string, decimal: DecimalSign) => readonly [text: string, remedy: string]
> = {
  'no-number': () => ['Nothing is written where a number belongs.', 'Write the number.'],
  placeholder: (shown) => [
    `${shown} stands where a number belongs.`,
    'Leave the cell empty if the value is not known, or name this word as one that means empty.',
  ],
  'spreadsheet-error': (shown) => [
    `${shown} is an error that the spreadsheet shows in place of a value.`,
    'Repair the formula, or put the value itself into the cell.',
  ],
  'formula-text': (shown) => [`${shown} is a formula, not a number.`, 'Put the value itself into the cell.'],
  'not-finite': (shown) => [`${shown} is not a finite number.`, 'Write the number, or leave the cell empty if it is not known.'],
  'percent-sign': (shown) => [
    `${shown} carries a per cent sign.`,
    'Write the number alone: the column name says whether it is in per cent.',
  ],
  'foreign-digits': (shown) => [
    `${shown} is written in digits other than 0 to 9.`,
    'Write it in the digits 0 to 9 of the plain keyboard.',
  ],
  'other-minus': (shown) => [`${shown} starts with a dash that is no minus sign.`, 'Write the minus sign of the keyboard.'],
  hexadecimal: (shown) => [`${shown} is a hexadecimal number.`, 'Write it in decimal digits.'],
  'grouped-thousands': (shown, decimal) => [
    `${shown} groups its digits, which cannot be told safely from decimals.`,
    `Write all digits together, with ${decimal === '.' ? 'a point' : 'a comma'} only before decimals; if the other sign marks the decimals, say so for the whole sheet.`,
  ],
  'other-decimal-sign': (shown, decimal) => [
    `${shown} uses ${decimal === '.' ? 'a comma' : 'a point'} where this sheet's decimal sign is ${decimal === '.' ? 'a point' : 'a comma'}.`,
    `Write decimals with ${decimal === '.' ? 'a point' : 'a comma'}, or say that the whole sheet uses ${decimal === '.' ? 'the comma' : 'the point'}.`,
  ],
  'text-beside-number': (shown) => [
    `${shown} holds more than a number.`,
    'Write the number alone: the unit stands in the column name, remarks belong into a note.',
  ],
  'not-a-number': (shown) => [`${shown} is not a number.`, 'Write a number, or leave the cell empty if it is not known.'],
  'number-too-large': (shown) => [`${shown} is larger than any number that can be computed with.`, 'Check the exponent.'],
  'number-too-small': (shown) => [
    `${shown} is so small that it would become zero.`,
    'Check the exponent, or write 0 if zero is meant.',
  ],
};

function refuse(code: NumberRefusalCode, trimmed: string, decimal: DecimalSign): NumberRefusal {
  const [text, remedy] = REFUSALS[code](shown(trimmed), decimal);
  return { ok: false, code, text, remedy };
}

/** A cell's text as sentences quote it: on one line and cut to a bearable length. */
export function shown(text: string): string {
  const oneLine = text.replace(/[\s\p{Cc}]+/gu, ' ').trim();
  return `“${oneLine.length > SHOWN_LENGTH ? `${oneLine.slice(0, SHOWN_LENGTH)}…` : oneLine}”`;
}
