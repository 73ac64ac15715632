import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import type { Motor, StudyContext } from '@/lib/engine';
import { evaluateBlock } from './evaluate-block';
import type { Block } from './evaluate-worker';
import type { ShapeName, Shapes } from './result-shape';
import { Helpers } from './worker-threads';

/** Motors in one block: small enough to spread evenly, large enough that handing over costs nothing. */
const BLOCK = 125;

/** For fewer motors than these a helper takes longer to start than it saves. */
const WORTH_A_HELPER = 750;

/** Finished blocks that may wait for an earlier one, for each thread. */
const AHEAD = 4;

/** How the results of a fleet are taken in, and whether to stop early. */
interface Taking<Name extends ShapeName> {
  /** Takes a block of results; blocks come in order. A promise is waited for before the next block is taken. */
  readonly take: (results: Shapes[Name]) => void | Promise<void>;
  /** Asked before each block is taken; true ends the run early. */
  readonly cancelled?: () => boolean | Promise<boolean>;
}

/** Evaluates motors in order, block by block, on this thread and on helpers beside it. The results do not depend on their number. */
export class FleetEvaluation<Name extends ShapeName> {
  readonly #study: StudyContext;
  readonly #shape: Name;
  readonly #jobs: number;
  readonly #helpers: Helpers;
  readonly #finished = new Map<number, Shapes[Name]>();

  /** @param jobs threads that may be at work, this one included. */
  constructor(study: StudyContext, { jobs, shape }: { readonly jobs: number; readonly shape: Name }) {
    this.#study = study;
    this.#shape = shape;
    this.#jobs = jobs;
    // Helpers are started with this shape, so their results have it.
    this.#helpers = new Helpers({ study, shape }, ({ number, results }) => this.#finished.set(number, results as Shapes[Name]));
  }

  /** Tells how many motors there are as far as is known; helpers get ready while the rest is being read. */
  expect(motors: number): void {
    this.#helpers.grow(Math.min(this.#jobs - 1, Math.floor(motors / WORTH_A_HELPER)));
  }

  /**
   * Evaluates the motors, which are asked for only when it is their turn.
   * @returns false when it was cancelled.
   */
  async run(motors: Iterable<Motor>, { take, cancelled }: Taking<Name>): Promise<boolean> {
    const blocks = blocksOf(motors);
    let started = 0;
    let taken = 0;
    let all = false;
    const nextBlock = (): Block | undefined => {
      if (all || started > taken + AHEAD * this.#jobs) return undefined;
      const next = blocks.next();
      if (next.done) all = true;
      return next.done ? undefined : { number: started++, motors: next.value };
    };
    for (;;) {
      await turnOfTheLoop();
      this.#helpers.check();
      while (this.#helpers.hasRoom) {
        const block = nextBlock();
        if (block === undefined) break;
        this.#helpers.give(block);
      }
      const results = this.#finished.get(taken);
      if (results !== undefined) {
        if (await cancelled?.()) return false;
        this.#finished.delete(taken++);
        await take(results);
        continue;
      }
      const own = nextBlock();
      if (own !== undefined) this.#finished.set(own.number, evaluateBlock(own.motors, this.#study, this.#shape));
      else if (all && taken === started) return true;
      else await this.#helpers.listen();
    }
  }

  /** Lets the helpers go. */
  async close(): Promise<void> {
    await this.#helpers.close();
  }
}

function* blocksOf(motors: Iterable<Motor>): Generator<readonly Motor[], undefined> {
  let block: Motor[] = [];
  for (const motor of motors) {
    block.push(motor);
    if (block.length < BLOCK) continue;
    yield block;
    block = [];
  }
  if (block.length > 0) yield block;
}

/** Evaluates a fleet that is all there. @returns false when it was cancelled. */
export async function evaluateFleet<Name extends ShapeName>(
  motors: readonly Motor[],
  study: StudyContext,
  { jobs, shape, ...taking }: Taking<Name> & { readonly jobs: number; readonly shape: Name },
): Promise<boolean> {
  const evaluation = new FleetEvaluation(study, { jobs, shape });
  try {
    evaluation.expect(motors.length);
    return await evaluation.run(motors, taking);
  } finally {
    await evaluation.close();
  }
}
