import { type Evaluation, type Motor, turnings } from '@/lib/engine';
import { spareOf, spareSentences } from '@/lib/features/ranking/spare-of';
import { formatMoney } from '@/lib/platform/format';

/** What was decided and why, the runner-up, what would turn the decision, and whether a spare is worth keeping. */
export function decisionText({ motor, decision, options, scope }: Evaluation, fleet: readonly Motor[]): string {
  const { settings } = scope;
  const study = { settings, tables: scope.tables, prices: scope.prices };
  const lines = [`Decision: ${decision.option}`, '', ...decision.because.map(({ text }) => `  ${text}`)];
  const { runnerUp, turnings: found } = turnings({ motor, study });
  const value = options.find(({ id }) => id === decision.option)?.figures.net_present_value?.value;
  if (runnerUp) {
    const own = value === undefined ? '' : `, against ${formatMoney(value, settings.currency)} of what was decided`;
    lines.push(`  Runner-up by value: ${runnerUp.words}, ${formatMoney(runnerUp.value, settings.currency)}${own}.`);
  }
  lines.push(
    ...(found.length > 0
      ? found.map(({ text }) => `  ${text}`)
      : [
          '  No price of energy, hours, cost or load within reach, and from a quarter to four times that of today, turns the decision.',
        ]),
  );
  const spare = spareOf(motor, fleet, study);
  if (spare) lines.push('', 'Spare on the shelf', '', ...spareSentences(spare).map((text) => `  ${text}`));
  return `${lines.join('\n')}\n`;
}
