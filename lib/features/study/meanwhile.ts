/** Field of a form with what it was opened on, cell by cell as JSON. */
export const OPENED_ON = 'opened_on';

/** A form's cells with what somebody else saved since it was opened. */
interface Joined {
  /** Cells that this form changed, as typed; all others as they are now. */
  readonly cells: ReadonlyMap<string, string>;
  /** Cells that both changed, each to another value, with the value of now. */
  readonly clashes: ReadonlyMap<string, string>;
}

/**
 * Joins a form that was open for a while with what has been saved since, so that whoever saves last takes back only what they saw: a cell
 * that was left as it was shown keeps its value of now. Pure; `shown` is what the form was opened on, an absent cell of it counts as seen.
 */
export function joinCells(
  typed: ReadonlyMap<string, string>,
  shown: ReadonlyMap<string, string> | undefined,
  now: ReadonlyMap<string, string>,
): Joined {
  const cells = new Map<string, string>();
  const clashes = new Map<string, string>();
  for (const [key, text] of typed) {
    const current = now.get(key) ?? '';
    const seen = shown?.get(key) ?? current;
    const touched = text.trim() !== seen.trim();
    cells.set(key, touched ? text : current);
    if (touched && current !== seen && current.trim() !== text.trim()) clashes.set(key, current);
  }
  return { cells, clashes };
}

/** What a form says it was opened on ({@link OPENED_ON}); `undefined` where it says nothing that can be read. */
export function openedOn(form: FormData): ReadonlyMap<string, string> | undefined {
  try {
    const read: unknown = JSON.parse(String(form.get(OPENED_ON) ?? ''));
    if (typeof read !== 'object' || read === null) return undefined;
    return new Map(Object.entries(read).flatMap(([key, value]) => (typeof value === 'string' ? [[key, value]] : [])));
  } catch {
    return undefined;
  }
}

/** Whether what a form was opened on is no longer what holds; a form that does not say on what it was opened is taken at its word. */
export function changedMeanwhile(shown: ReadonlyMap<string, string> | undefined, now: ReadonlyMap<string, string>): boolean {
  if (shown === undefined) return false;
  return [...shown.keys(), ...now.keys()].some((key) => (shown.get(key) ?? '') !== (now.get(key) ?? ''));
}

/** What is said where a form is not saved, since somebody else has changed what it holds; `what` begins the sentence. */
export function meanwhileProblem(what: string): { readonly text: string; readonly remedy: string } {
  return {
    text: `${what} has been changed by somebody else since the page was opened; nothing was saved.`,
    remedy: 'Save again to have yours in its place, or load the page again to see the other.',
  };
}

/** What a form was opened on where it is saved as a whole, not cell by cell. */
export function asWhole(value: unknown): Readonly<Record<string, string>> {
  return { whole: JSON.stringify(value) };
}

/** The texts of a form by the names of their fields. */
export function typedOf(form: FormData): Readonly<Record<string, string>> {
  return Object.fromEntries([...form].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value] as const] : [])));
}
