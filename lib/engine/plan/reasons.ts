import type { Because } from '../result';
import type { Column } from './candidate';
import type { PlanMotor } from './plan-motor';

/** Why a motor is in no year of the plan and not among those at failure. */
export function reasonLeftOut(
  motor: PlanMotor,
  about: { readonly usable: boolean; readonly forbidden: boolean; readonly columns: readonly Column[] },
): Because {
  if (about.forbidden) return { code: 'forbidden', text: 'Somebody asked that this motor be left alone.' };
  if (!about.usable)
    return {
      code: 'not-usable',
      text: 'Its figures may not be used; it can enter only if somebody answers for it by name, with a reason.',
    };
  if (about.columns.length > 0)
    return {
      code: 'beyond-budget',
      text: 'It would be worth doing, but the money brings more elsewhere in every year of the budget.',
    };
  const changes = motor.options.filter(({ action }) => action !== 'keep');
  if (changes.length === 0)
    return { code: 'no-option', text: 'Nothing but keeping it stands to choice: it is not in service, or nothing is priced.' };
  if (changes.every(({ findings }) => findings.some(({ severity }) => severity === 'disqualifies')))
    return { code: 'ruled-out', text: 'Every option of it is ruled out by a finding.' };
  if (changes.every((option) => option.net_present_value === undefined))
    return { code: 'no-value', text: 'No saving can be worked out for it: hours, load or a price are missing.' };
  return { code: 'not-worth-it', text: 'No option of it is worth more than going on as now.' };
}
