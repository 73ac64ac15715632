import type { Database } from './db';

interface Kept<Answer> {
  readonly db: Pick<Database, 'version'>;
  readonly version: number;
  readonly question: string;
  readonly answer: Promise<Answer>;
}

/**
 * Keeps what was answered last, for what takes long and rests on the database alone: the same question has the same answer until anything in
 * the database changes. Who asks while it is worked out waits for the same one. What failed, or is not worth keeping, is tried again.
 */
export class LastAnswer<Answer> {
  #kept: Kept<Answer> | undefined;

  ask(
    { db, question }: { readonly db: Pick<Database, 'version'>; readonly question: string },
    answer: () => Promise<Answer>,
    isWorthKeeping: (answer: Answer) => boolean = () => true,
  ): Promise<Answer> {
    // Asked for before anything is read: what is written meanwhile makes the next number another one.
    const version = db.version();
    const last = this.#kept;
    if (last?.db === db && last.version === version && last.question === question) return last.answer;
    const kept = { db, version, question, answer: answer() };
    this.#kept = kept;
    const forget = (): void => {
      if (this.#kept === kept) this.#kept = undefined;
    };
    kept.answer.then((found) => {
      if (!isWorthKeeping(found)) forget();
    }, forget);
    return kept.answer;
  }
}
