/** What a solve came to. */
interface Solved {
  /** `limit` where it ran out of branches: the values are the best found, if any. */
  readonly status: 'optimal' | 'limit' | 'none';
  readonly objective: number;
  /** What no solution of the model passes; of a model with whole numbers. */
  readonly dualBound: number;
  /** By name; empty where no solution was found. */
  readonly values: ReadonlyMap<string, number>;
}

/** A solver of linear and integer models in the CPLEX LP text form. */
export type Solve = (model: string, options?: { readonly gap?: number; readonly nodes?: number }) => Solved;

let loading: Promise<Solve> | undefined;

/** HiGHS, loaded once. A fresh model is made for each solve, so that no solve can touch another. */
export function loadSolver(): Promise<Solve> {
  loading ??= import('highs').then(async ({ default: load }) => {
    const highs = await load();
    const { optimal, infeasible, unboundedOrInfeasible } = highs.constants.modelStatus;
    return (text: string, { gap, nodes }: { readonly gap?: number; readonly nodes?: number } = {}): Solved => {
      const model = highs.createModel();
      try {
        model.options.set({
          output_flag: false,
          ...(gap !== undefined && { mip_rel_gap: gap }),
          ...(nodes !== undefined && { mip_max_nodes: nodes }),
        });
        model.readModel({ format: 'lp', data: text });
        const { modelStatus } = model.run();
        const objective = model.getObjectiveValue();
        // The primal solution status is 2 where there is a feasible one.
        const solved = modelStatus === optimal || Number(model.info.get('primal_solution_status')) === 2;
        if (!solved || modelStatus === infeasible || modelStatus === unboundedOrInfeasible)
          return { status: 'none', objective, dualBound: Number.NaN, values: new Map() };
        const values = new Map<string, number>();
        model.getSolution().colValue.forEach((value, index) => {
          if (value !== 0) values.set(model.getColName(index), value);
        });
        const dualBound = Number(model.info.get('mip_dual_bound'));
        return { status: modelStatus === optimal ? 'optimal' : 'limit', objective, dualBound, values };
      } finally {
        model.dispose();
      }
    };
  });
  return loading;
}

/** A term of a model's text. */
export function term(factor: number, name: string): string {
  return `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`;
}

/** The solved value of a variable; 0 where the model does not have it. */
export function primal(found: Solved, name: string): number {
  return found.values.get(name) ?? 0;
}
