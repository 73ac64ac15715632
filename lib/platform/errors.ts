/**
 * A problem is a value: features return `Result`, screens show `text` and `remedy`, and raw error text never reaches a screen.
 */

/** Something that went wrong, in words for the person in front of the screen. */
export interface Problem {
  /** Stable name, for tests and for looking up. */
  readonly code: string;
  /** One sentence: what is the matter. */
  readonly text: string;
  /** One sentence: what to do about it. */
  readonly remedy: string;
}

export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

export function refuse(code: string, text: string, remedy: string): { readonly ok: false; readonly problem: Problem } {
  return { ok: false, problem: { code, text, remedy } };
}

/** The message of whatever was thrown. */
export function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** SQLite's number for a database that somebody else is writing to; further bits say why. */
const SQLITE_BUSY = 5;

/** Whether libsql says that somebody else is writing to the database. */
export function isBusy(error: unknown): boolean {
  return error instanceof Error && 'rawCode' in error && (Number(error.rawCode) & 0xff) === SQLITE_BUSY;
}

/** Turns an unexpected error of the database or the file system into a problem; the raw error belongs in the log. */
export function problemOf(error: unknown): Problem {
  const message = messageOf(error);
  // P1008 is what Prisma makes of it.
  const timedOut = error instanceof Error && 'code' in error && error.code === 'P1008';
  if (isBusy(error) || timedOut || /database is locked/i.test(message)) {
    return {
      code: 'database-busy',
      text: 'Somebody else is writing to the database at this moment.',
      remedy: 'Try again in a few seconds.',
    };
  }
  if (/ENOSPC|SQLITE_FULL|disk is full/i.test(message)) {
    return { code: 'disk-full', text: 'The disk is full; nothing was changed.', remedy: 'Make room on the disk and try again.' };
  }
  if (/SQLITE_CORRUPT|SQLITE_NOTADB|malformed|not a database/i.test(message)) {
    return {
      code: 'database-damaged',
      text: 'The database file is damaged.',
      remedy: 'Stop the program and restore the latest backup with `npm run restore -- FILE`.',
    };
  }
  return {
    code: 'unexpected',
    text: 'Something went wrong that the program did not foresee; nothing was changed.',
    remedy: 'Try again; if it happens again, the log of the program has the details.',
  };
}
