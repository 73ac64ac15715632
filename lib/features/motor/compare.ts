import { evaluateMotor, type Motor, motorResult, type StudyContext } from '@/lib/engine';
import { formatFigure } from '@/lib/platform/format';
import type { FigureChange } from './schema';

/** What a change of a motor did to its main figures, each before and after, those alone that moved. */
export function figureChanges(before: Motor, after: Motor, context: StudyContext): FigureChange[] {
  const old = words(before, context);
  const now = words(after, context);
  return [...now]
    .map(([name, text]) => ({ name, before: old.get(name) ?? '—', after: text }))
    .filter((change) => change.before !== change.after);
}

function words(motor: Motor, context: StudyContext): Map<string, string> {
  const result = motorResult(evaluateMotor(motor, context));
  const option = result.options.find((candidate) => candidate.id === result.decision.option);
  const figure = (value: Parameters<typeof formatFigure>[0] | undefined, percent = false) =>
    value ? formatFigure(value, { percent }).text : '—';
  return new Map([
    ['Load', figure(result.load_fraction, true)],
    ['Shaft power', figure(result.shaft_power)],
    ['Efficiency', figure(result.efficiency, true)],
    ['Total loss', figure(result.losses?.total)],
    ['Trust', result.trust.level.replace('-', ' ')],
    [
      'Decision',
      `${result.decision.action}${result.decision.action === 'keep' ? '' : result.decision.timing === 'now' ? ' now' : ' at failure'}`,
    ],
    ['Money saved a year', figure(option?.money_saved)],
    ['Net present value', figure(option?.net_present_value)],
  ]);
}
