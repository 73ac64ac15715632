/** A key that stands twice in one object of a JSON text, with the lines of both. */
interface RepeatedKey {
  /** Its place, such as `policy.at_failure`; places in a list count from 0, as elsewhere in the words about settings. */
  readonly path: string;
  readonly lines: readonly [first: number, second: number];
}

interface Open {
  readonly path: string;
  /** Lines of the keys so far; absent in a list. */
  readonly keys?: Map<string, number>;
  /** The key or place that comes now. */
  now: string;
  index: number;
}

const TOKEN = /"(?:[^"\\]|\\.)*"|[{}[\],:\n]/g;

/**
 * The first key that stands twice in one object. A parser of JSON takes the last of them without a word, so that the other, which someone has
 * written and may read, holds nothing. Valid for: a text that has been parsed as JSON. Keys are compared as they are meant, whatever their escapes.
 */
export function repeatedKey(text: string): RepeatedKey | undefined {
  const open: Open[] = [];
  let line = 1;
  let last = '';
  for (const [token] of text.matchAll(TOKEN)) {
    if (token === '\n') {
      line += 1;
      continue;
    }
    const inside = open.at(-1);
    if (token === '{' || token === '[') {
      const path = inside === undefined ? '' : place(inside);
      open.push({ path, ...(token === '{' && { keys: new Map<string, number>() }), now: token === '{' ? '' : '0', index: 0 });
    } else if (token === '}' || token === ']') open.pop();
    else if (token === ',' && inside && !inside.keys) {
      inside.index += 1;
      inside.now = String(inside.index);
    } else if (token === ':' && inside?.keys) {
      const key: unknown = JSON.parse(last);
      inside.now = String(key);
      const first = inside.keys.get(inside.now);
      if (first !== undefined) return { path: place(inside), lines: [first, line] };
      inside.keys.set(inside.now, line);
    } else last = token;
  }
  return undefined;
}

function place({ path, now }: Open): string {
  return path === '' ? now : `${path}.${now}`;
}

/** What is said of it. */
export function repeatedWords({ path, lines: [first, second] }: RepeatedKey): { readonly text: string; readonly remedy: string } {
  const where = first === second ? `in line ${first}` : `in lines ${first} and ${second}`;
  return {
    text: `${path} stands twice, ${where}, and only one can hold.`,
    remedy: 'Keep the one that is meant, and remove the other.',
  };
}
