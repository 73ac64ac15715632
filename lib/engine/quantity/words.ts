/** How the sentences of the engine write numbers. They are English: thousands in groups of three with a comma, a true minus (U+2212). */

type Format = (value: number) => string;

/** Making a format takes far longer than using it, and looking one up by its options longer too: each kind keeps its own by their number of digits. */
function formats(options: (digits: number) => Intl.NumberFormatOptions): (digits: number) => Format {
  const made: Format[] = [];
  return (digits) => {
    made[digits] ??= new Intl.NumberFormat('en', { signDisplay: 'negative', ...options(digits) }).format;
    return made[digits];
  };
}

const UP_TO_DECIMALS = formats((digits) => ({ maximumFractionDigits: digits }));
const DECIMALS = formats((digits) => ({ minimumFractionDigits: digits, maximumFractionDigits: digits }));
const SIGNIFICANT = formats((digits) => ({ maximumSignificantDigits: digits }));

function say(value: number, format: Format): string {
  return format(value).replace('-', '−');
}

/** A number with all digits that it has: `1,785.5`. */
export function written(value: number): string {
  return say(value, UP_TO_DECIMALS(20));
}

/** A number with so many decimals: `8,274`. */
export function fixed(value: number, decimals: number): string {
  return say(value, DECIMALS(decimals));
}

/** A number with so many significant digits, without zeros at its end: `1,790`. */
export function rounded(value: number, digits: number): string {
  return say(value, SIGNIFICANT(digits));
}

/** Chances below this are not told apart. */
const LEAST_CHANCE = 0.001;

/** How often something happens by chance: `12 times in 100`, `once in 250 times`, `less than once in 1,000 times`. */
export function oftenWords(chance: number): string {
  if (chance < LEAST_CHANCE) return `less than once in ${fixed(1 / LEAST_CHANCE, 0)} times`;
  return chance < 0.015 ? `once in ${rounded(1 / chance, 2)} times` : `${fixed(100 * chance, 0)} times in 100`;
}

/** A short name of the results in words: `input power` for `input-power`. */
export function spaced(id: string): string {
  return id.replaceAll('-', ' ');
}
