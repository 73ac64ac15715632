import path from 'node:path';

/** A number with its noun, such as `1 row` and `2 rows`. */
export function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}

/** What is wrong with a file, under its path as it was given; its bare name is not said twice. */
export function faultOf(file: string, { text, remedy }: { readonly text: string; readonly remedy: string }): string {
  const name = path.basename(file);
  const said = text.startsWith(`${name} `) ? `${file}${text.slice(name.length)}` : `${file}: ${text}`;
  return `${said} ${remedy}`;
}
