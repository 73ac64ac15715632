import { createHash } from 'node:crypto';

/** SHA-256 of text or bytes, in hex. */
export function sha256(content: string | Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/**
 * SHA-256 over the content of plain data, whatever the order of its keys. Absent members (`undefined`) do not count.
 * @param value plain data: text, numbers, booleans, null, lists, objects; whole numbers beyond 2^53 as bigint.
 */
export function contentHash(value: unknown): string {
  return sha256(canonical(value));
}

/**
 * The one JSON text of plain data: members in order of their names, absent ones left out, no spaces. Parsed and written again it stays the same.
 * @throws TypeError on a whole number as bigint, which JSON does not have.
 */
export function canonicalJson(value: unknown): string {
  return canonical(
    JSON.parse(
      JSON.stringify(value, (_, member: unknown) => {
        if (typeof member === 'bigint') throw new TypeError('JSON has no bigint.');
        return member;
      }),
    ),
  );
}

function canonical(value: unknown): string {
  if (typeof value === 'bigint') return `${value.toString()}n`;
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item ?? null)).join(',')}]`;
  if (typeof value === 'object' && value !== null) {
    const members = Object.entries(value)
      .filter(([, member]) => member !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([name, member]) => `${JSON.stringify(name)}:${canonical(member)}`);
    return `{${members.join(',')}}`;
  }
  return JSON.stringify(value ?? null);
}
