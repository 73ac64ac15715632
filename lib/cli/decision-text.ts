import { atTheMargin, type Evaluation, type Measure, type Motor, measuresOf, measuresOfWorth, turnings } from '@/lib/engine';
import { marginSentences } from '@/lib/features/motor/margin-words';
import { rateText, stepWords } from '@/lib/features/motor/worth-words';
import { afterTheOthers, screenedText, worthwhile, worthwhileTogether } from '@/lib/features/ranking/measure-words';
import { interacting } from '@/lib/features/ranking/measures';
import { spareOf, spareSentences } from '@/lib/features/ranking/spare-of';
import { formatMoney } from '@/lib/platform/format';

/** What was decided and why, the runner-up, what would turn the decision, what else is worth a look, and whether a spare is worth keeping. */
export function decisionText(evaluation: Evaluation, fleet: readonly Motor[]): string {
  const { motor, decision, options, scope } = evaluation;
  const { settings } = scope;
  const study = { settings, tables: scope.tables, prices: scope.prices };
  const lines = [`Decision: ${decision.option}`, '', ...decision.because.map(({ text }) => `  ${text}`)];
  const { runnerUp, turnings: found } = turnings({ motor, study });
  const value = options.find(({ id }) => id === decision.option)?.figures.net_present_value?.value;
  if (runnerUp) {
    const own = value === undefined ? '' : `, against ${formatMoney(value, settings.currency)} of what was decided`;
    const more = value !== undefined && runnerUp.value > value;
    lines.push(
      `  ${more ? 'Worth more, but held back by the policy, the trust or a check' : 'Runner-up by value'}: ${runnerUp.words}, ${formatMoney(runnerUp.value, settings.currency)}${own}.`,
    );
  }
  lines.push(
    ...(found.length > 0
      ? found.map(({ text }) => `  ${text}`)
      : [
          '  No price of energy, hours, cost or load from a quarter to four times today’s turns the decision, as far as the year’s hours and the motor’s rating allow.',
        ]),
  );
  const margin = marginSentences(atTheMargin(evaluation), settings.currency);
  lines.push('', 'What a saving is worth here', '', ...margin.map((text) => `  ${text}`));
  lines.push(...byEveryMeasure(evaluation), ...alsoWorth(evaluation));
  const spare = spareOf(motor, fleet, study);
  if (spare) lines.push('', 'Spare on the shelf', '', ...spareSentences(spare).map((text) => `  ${text}`));
  return `${lines.join('\n')}\n`;
}

/** Rates, ratio and life-cycle cost of each option, and what each dearer one adds; nothing without options that have a value. */
function byEveryMeasure({ options, scope: { settings } }: Evaluation): string[] {
  const { baseline, options: measured, steps } = measuresOfWorth(options, settings);
  if (measured.length === 0) return [];
  const { currency, horizonYears } = settings;
  const money = (amount: number) => formatMoney(amount, currency);
  const lines = measured.map(({ id, internalRate, modifiedRate, adjustedRate, lifeCycleCost }) => {
    const rates = (
      [
        ['rate of return', internalRate],
        ['modified', modifiedRate],
        ['adjusted', adjustedRate],
      ] as const
    ).map(([name, stated]) => `${name} ${rateText(stated) ?? 'none'}`);
    const reasons = [internalRate, modifiedRate, adjustedRate].flatMap((stated) =>
      stated.kind === 'value' ? [] : [stated.text],
    );
    return [
      `  ${id}: ${rates.join(', ')}${lifeCycleCost === undefined ? '' : `; life-cycle cost ${money(lifeCycleCost)}`}.`,
      ...new Set(reasons),
    ].join(' ');
  });
  if (baseline)
    lines.push(`  Doing only what is done anyway costs ${money(baseline.total)} over ${horizonYears} years, as of today.`);
  const found = steps.increments.map((step) => `  ${stepWords(step, (id) => id, currency)}`);
  return ['', 'The options by every measure', '', ...lines, '', 'What each dearer option adds', '', ...found];
}

/** Measures beside another motor, each with what it saves, costs and pays back; nothing without any. */
function alsoWorth(evaluation: Evaluation): string[] {
  const { settings } = evaluation.scope;
  const found = measuresOf(evaluation);
  if (found.measures.length === 0) return [];
  const joint = interacting({ found });
  const lines = found.measures.flatMap((measure) => [
    `  ${sentences(measure.text, savedText(measure, settings.currency) && `Saves ${savedText(measure, settings.currency)}.`)}`,
    `    ${sentences(worthwhile(measure, settings).words, joint.includes(measure.id) ? afterTheOthers(measure) : '')}`,
    `    ${measure.assumed}`,
  ]);
  if (joint.length > 1)
    lines.push(
      `  Together, each acting on what those before it leave, they save ${savedText({ energySaved: found.energySavedTogether, moneySaved: found.moneySavedTogether }, settings.currency)}.`,
      `    ${worthwhileTogether(found, settings).words}`,
    );
  return [
    '',
    'Also worth a look: screening estimates for the motor as it is, in no plan; with another motor they must be reckoned again',
    '',
    ...lines,
  ];
}

function sentences(...parts: readonly (string | undefined)[]): string {
  return parts.filter((part) => part !== undefined && part !== '').join(' ');
}

/** What is saved a year, likely and between its two ends; empty for nothing. */
function savedText({ energySaved, moneySaved }: Pick<Measure, 'energySaved' | 'moneySaved'>, currency: string): string {
  const parts = [
    [energySaved, 'kWh'],
    [moneySaved, currency],
  ] as const;
  const words = parts.flatMap(([saved, unit]) => {
    if (!saved) return [];
    const { likely, range } = screenedText(saved);
    return [`${likely} ${unit}${range === undefined ? '' : ` (${range})`}`];
  });
  return words.length === 0 ? '' : `${words.join(' and ')} a year`;
}
