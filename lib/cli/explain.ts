import { type Derivation, derive, type Evaluation, evaluateMotor, figuresOf, INDICATOR_PATH, type Verdict } from '@/lib/engine';
import { LIMIT_STATUS_WORDS, marginWords } from '@/lib/features/condition/words';
import { loadTables } from '@/lib/reference/load';
import type { Call } from './arguments';
import { decisionText } from './decision-text';
import { EXIT, UsageError } from './exit';
import { machineBehind, machineText, OF_MACHINE } from './machine-behind';
import { openOutput } from './output';
import { motorOf, readFleetSheet, readStudy, strayTariffs } from './study-input';
import { readCallTests } from './tests-by-tag';

/** Figures that are explained when none is named, from the answer down. */
const USUAL = ['load_fraction', 'shaft_power', 'efficiency', 'losses.total'] as const;

/** Prints how figures of one motor came about, step by step down to stamps and meters. */
export async function explain(call: Call): Promise<number> {
  const reference = loadTables();
  const study = await readStudy(call, reference);
  const tests = await readCallTests(call, reference);
  const fleet = await readFleetSheet(call, { asOf: study.settings.asOf });
  const motors = [...fleet.motors];
  const motor = tests.join(motorOf(call, { ...fleet, motors }));
  for (const remark of study.remarks) console.error(remark);
  const sites = new Set(motors.map((entry) => entry.motor.site));
  for (const stray of strayTariffs(call, study.settings, sites)) console.error(stray);
  const context = { settings: study.settings, tables: reference.tables, prices: study.prices };
  const evaluation = evaluateMotor(motor, context, new Map());
  const figures = figuresOf(evaluation);
  const paths = call.figure === undefined ? USUAL.filter((path) => figures.has(path)) : [call.figure];
  if (call.figure === undefined && paths.length === 0) {
    throw new UsageError(
      `${call.tag} has no usable reading, so no load was computed. Figures that it has: ${[...figures.keys()].join(', ')}.`,
    );
  }
  const derivations = paths.map((path) => {
    const quantity = figures.get(path);
    const derivation = quantity && derive(evaluation, path, quantity);
    if (!derivation) throw new UsageError(`${call.tag} has no figure "${path}". It has: ${[...figures.keys()].join(', ')}.`);
    return derivation;
  });
  const output = openOutput(call.out);
  const machine = paths.some((path) => OF_MACHINE.test(path)) ? machineBehind(evaluation) : undefined;
  if (call.format === 'json') {
    const all = derivations.map((derivation, index) =>
      machine && OF_MACHINE.test(paths[index] ?? '') ? { ...derivation, machine } : derivation,
    );
    output.write(`${JSON.stringify(all, undefined, 1)}\n`);
  } else {
    const condition = call.figure === undefined ? conditionText(evaluation) : '';
    const blocks = [...derivations.map(asText), ...(machine ? [machineText(machine)] : []), ...(condition ? [condition] : [])];
    if (call.figure === undefined || call.figure.startsWith('options.'))
      blocks.push(
        decisionText(
          evaluation,
          motors.map((entry) => tests.join(entry.motor)),
        ),
      );
    output.write(blocks.join('\n'));
  }
  output.finish();
  return EXIT.done;
}

function number(value: number): string {
  return Number(value.toPrecision(6)).toString();
}

/** How an indicator stands against its limit, in two or more lines. */
function verdictLines({ band, margin, limit, source, status, findings }: Verdict): string[] {
  return [
    `${band ?? 'no verdict'}${margin ? `, ${marginWords(margin)}` : ''}`,
    `limit: ${limit} (${source}; ${LIMIT_STATUS_WORDS[status] ?? status})`,
    ...findings.map(({ text }) => text),
  ];
}

/** What is left to the limit of each indicator; empty without one. */
function conditionText(evaluation: Evaluation): string {
  const lines = evaluation.condition.indicators.flatMap(({ id, title, value }) => {
    const { verdict } = derive(evaluation, `${INDICATOR_PATH}${id}`, value) ?? {};
    return verdict ? [`${title} (${INDICATOR_PATH}${id})`, ...verdictLines(verdict).map((line) => `  ${line}`)] : [];
  });
  return lines.length === 0 ? '' : `Condition, each indicator against its limit\n\n${lines.join('\n')}\n`;
}

/** A derivation as indented text: each step once, later mentions by its number. */
function asText(derivation: Derivation): string {
  const lines: string[] = [`${derivation.figure}`, ''];
  for (const step of derivation.steps) {
    lines.push(
      `[${step.id}] ${step.title} = ${number(step.value)} ${step.unit === '1' ? '' : `${step.unit} `}(u ${step.u.toPrecision(2)})`,
    );
    if (step.text !== undefined) lines.push(`      ${step.text}`, `    = ${step.textNumbers}`);
    if (step.residual !== undefined && step.tex !== undefined)
      lines.push(`      ${step.tex}`, `      residual ${step.residual.toExponential(1)}`);
    for (const input of step.inputs) lines.push(`      ${input.name}: ${input.meaning} [${input.step}]`);
    lines.push(`      ${step.kind === 'leaf' ? `${step.origin}: ` : 'source: '}${step.source}`);
  }
  const { limits, verdict } = derivation;
  if (verdict) lines.push('', ...verdictLines(verdict));
  if (limits) {
    const how = limits.drawn ? ', by 10,000 draws' : '';
    const wider =
      limits.widened === undefined
        ? ''
        : `; u in the results is ${limits.widened.toPrecision(2)}, since they are wider than first order says`;
    lines.push('', `95 % limits: ${number(limits.low)} to ${number(limits.high)}${how}${wider}`);
  }
  if (derivation.doubts.length > 0) {
    lines.push('', 'Where the doubt comes from:');
    for (const doubt of derivation.doubts) lines.push(`  ${(doubt.share * 100).toFixed(1).padStart(5)} %  ${doubt.label}`);
  }
  return `${lines.join('\n')}\n`;
}
