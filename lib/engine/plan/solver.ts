import type { HighsSolution } from 'highs';

/** A solver of linear and integer models in the CPLEX LP text form. */
export type Solve = (model: string, options?: { readonly gap?: number; readonly seconds?: number }) => HighsSolution;

let loading: Promise<Solve> | undefined;

/** HiGHS, loaded once. Its one-shot form makes a fresh solver for each model, so that no solve can touch another. */
export function loadSolver(): Promise<Solve> {
  loading ??= import('highs').then(async ({ default: load }) => {
    const highs = await load();
    return (model: string, { gap, seconds }: { readonly gap?: number; readonly seconds?: number } = {}) =>
      highs.solve(model, {
        ...(gap !== undefined && { mip_rel_gap: gap }),
        ...(seconds !== undefined && { time_limit: seconds }),
      });
  });
  return loading;
}

/** A term of a model's text. */
export function term(factor: number, name: string): string {
  return `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`;
}

/** The solved value of a variable; 0 where the model does not have it. */
export function primal(found: HighsSolution, name: string): number {
  const column = found.Columns[name] as { readonly Primal?: number } | undefined;
  return column?.Primal ?? 0;
}
