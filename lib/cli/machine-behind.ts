import { type Contribution, contributions, type Evaluation, type Model, modelOfEvaluation } from '@/lib/engine';

/** Figures that rest on the fitted machine at once: all but those of options, condition and single ways. */
export const OF_MACHINE = /^(?!options\.|condition\.|estimates\.)/;

/** The machine behind a motor's figures, and what stamps, readings and typical values do to its load. */
interface MachineBehind {
  readonly model: Model;
  readonly contributions: readonly Contribution[];
}

/** `undefined` without a usable reading. */
export function machineBehind(evaluation: Evaluation): MachineBehind | undefined {
  const model = modelOfEvaluation(evaluation);
  return model && { model, contributions: contributions(evaluation) };
}

/** The same as text: what was fitted, how wide each assumption is and why, the equations, and what their solutions leave. */
export function machineText({ model, contributions: rows }: MachineBehind): string {
  const lines = [
    'The machine behind it',
    '',
    `Fitted in ${model.fit.iterations} steps; the last moved no unknown by more than ${model.fit.residual.toExponential(1)}.`,
    '',
    'What each reading, stamp and typical value says (given ± standard uncertainty; as fitted; residual in its own deviations; load without it;',
    'share in the variance of the load):',
  ];
  for (const row of rows) {
    const { given } = row;
    const unit = given.unit === '1' ? '' : ` ${given.unit}`;
    lines.push(
      `  ${row.name} (${row.kind}): ${short(given.value)} ± ${given.u.toPrecision(2)}${unit}; ${short(row.fitted)}${unit}; ${row.residual.toFixed(1)}; ${(100 * row.loadWithout).toFixed(1)} %; ${(100 * row.share).toFixed(1)} %`,
      `      width: ${row.widthSource}`,
    );
  }
  lines.push('', 'Numbers of the circuit, per unit of rated shaft power and voltage:');
  for (const { symbol, meaning, value } of model.numbers) lines.push(`  ${symbol} = ${short(value)}  ${meaning}`);
  for (const { title, equations, valid, source, residual } of model.systems) {
    lines.push('', `${title}. Holds for: ${valid} Source: ${source}.`);
    if (residual !== undefined) lines.push(`  left by the iterative solution: ${residual.toExponential(1)}`);
    for (const { symbol, tex } of equations) lines.push(`  ${symbol} = ${tex}`);
  }
  return `${lines.join('\n')}\n`;
}

function short(value: number): string {
  return Number(value.toPrecision(5)).toString();
}
