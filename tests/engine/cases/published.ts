import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { PerPhase } from '../../simulator/per-phase';

/** One worked example from outside: inputs, printed results with their rounding, and the values recomputed from the data. */
export interface PublishedCase {
  readonly id: string;
  readonly source: { readonly author?: string; readonly title: string; readonly section?: string };
  /** `read` in a stored copy, or from `memory`. */
  readonly status: 'read' | 'memory';
  readonly inputs: Readonly<Record<string, { readonly value: unknown; readonly unit: string }>>;
  readonly expected: Readonly<
    Record<string, { readonly value: number; readonly unit: string; readonly tolerance_rel?: number; readonly tolerance_abs?: number; readonly reason: string }>
  >;
  readonly recomputed: Readonly<Record<string, number>>;
  /** False where the printed figure does not follow from the data; the note has the arithmetic. */
  readonly agrees: boolean;
  readonly note?: string;
}

/** Reads the cases of one data file beside this module. */
export function readCases(file: string): PublishedCase[] {
  return JSON.parse(readFileSync(fileURLToPath(new URL(file, import.meta.url)), 'utf8')) as PublishedCase[];
}

/** A numeric input of a case by name. */
export function given(published: PublishedCase, name: string): number {
  const value = published.inputs[name]?.value;
  if (typeof value !== 'number') throw new Error(`${published.id} has no number ${name}`);
  return value;
}

/** Results of a case as our formulas give them, in the units of the case; a key left out must be named in `elsewhere`. */
export type Recipe = (published: PublishedCase) => Readonly<Record<string, number>>;

/**
 * Compares each case with our result: where the source agrees with itself, with the printed figure within its rounding; always with the
 * value recomputed from the same data to 1e-6. A case that disagrees is kept: its printed figure must differ from ours.
 */
export function checkCases(file: string, recipes: Readonly<Record<string, Recipe>>, elsewhere: Readonly<Record<string, readonly string[]>> = {}): void {
  const cases = readCases(file);
  describe(`published cases in ${file}`, () => {
    it('has a recipe for each case, and a case for each recipe', () => {
      expect(Object.keys(recipes).sort()).toEqual(cases.map((published) => published.id).sort());
    });
    for (const published of cases) {
      const recipe = recipes[published.id];
      if (!recipe) continue;
      const source = [published.source.author, published.source.title, published.source.section].filter(Boolean).join(', ');
      it(`${published.id}: ${source}`, () => {
        const ours = recipe(published);
        const left = elsewhere[published.id] ?? [];
        for (const key of Object.keys(published.expected)) {
          if (left.includes(key)) continue;
          const value = ours[key];
          expect(value, `${published.id} ${key} has a result or is named as taken elsewhere`).toBeTypeOf('number');
          const recomputed = published.recomputed[key];
          if (recomputed !== undefined) expect(Math.abs((value ?? Number.NaN) - recomputed) / Math.max(Math.abs(recomputed), 1e-12), `${key} recomputed`).toBeLessThan(1e-6);
        }
        const differences = Object.entries(published.expected)
          .filter(([key]) => !left.includes(key))
          .map(([key, printed]) => {
            const tolerance = Math.max(printed.tolerance_abs ?? 0, (printed.tolerance_rel ?? 0) * Math.abs(printed.value));
            return { key, off: Math.abs((ours[key] ?? Number.NaN) - printed.value) - tolerance };
          });
        if (published.agrees) for (const { key, off } of differences) expect(off, `${key} within the rounding of the source`).toBeLessThanOrEqual(1e-9);
        else expect(differences.some(({ off }) => off > 0), 'a case that disagrees must really differ').toBe(true);
      });
    }
  });
}

/** The circuit of a textbook's case in its ohms; what the text leaves out stays out. */
export function circuitOf(c: PublishedCase): PerPhase {
  const optional = (name: string) => (c.inputs[name] === undefined ? undefined : given(c, name));
  const xm = optional('x_m');
  const rCore = optional('r_core');
  return {
    r1: given(c, 'r1'),
    x1: given(c, 'x1'),
    r2: given(c, 'r2'),
    x2: given(c, 'x2'),
    ...(xm !== undefined && { xm }),
    ...(rCore !== undefined && { rCore }),
  };
}

