/**
 * A text whose plain order is the order in which people count: A2 before A13, whatever the case, accents last.
 * Runs of digits become their length and their digits without leading zeros; ties (P-2 and P-02) are broken by the text itself.
 * The order is by code point of the letters, so that SQLite, PostgreSQL (collation "C") and JavaScript agree.
 * @param parts site first, then tag.
 */
export function naturalKey(...parts: readonly string[]): string {
  return parts.map((part) => `${fold(part)}\u0001${part}`).join('\u0002');
}

function fold(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[0-9]+/g, (digits) => {
      const bare = digits.replace(/^0+(?=\d)/, '');
      // The length as one character: runs of more than 74 digits share the last place and are ordered by their digits.
      return `${String.fromCharCode(0x30 + Math.min(bare.length, 74))}${bare}`;
    });
}
