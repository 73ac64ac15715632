/** Exit codes of the command line (contracts, section 3). */
export const EXIT = { done: 0, internal: 1, usage: 2, rejectedRows: 3, refused: 4 } as const;

/** A wrong call or an unreadable file: the sentence goes to standard error and the command ends with code 2. */
export class UsageError extends Error {}
