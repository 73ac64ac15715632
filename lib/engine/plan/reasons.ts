import type { Because } from '../result';
import type { Member } from './prepare';

/** Why a motor is in no year of the plan and not among those at failure. @param robust whether options must be worth it in the low case too. */
export function reasonLeftOut({ motor, columns, usable, forbidden }: Member, robust: boolean): Because {
  if (forbidden) return { code: 'forbidden', text: 'Somebody asked that this motor be left alone.' };
  if (motor.safety !== undefined && columns.length === 0)
    return {
      code: 'safety-without-option',
      text: `${motor.safety.text} Nothing that could be done is priced: act on it outside this plan.`,
    };
  if (!usable)
    return {
      code: 'not-usable',
      text: 'Its figures may not be used; it can enter only if somebody answers for it by name, with a reason.',
    };
  if (columns.length > 0)
    return {
      code: 'beyond-budget',
      text: 'It would be worth doing, but the money and the hours bring more elsewhere in every year of the budget.',
    };
  const changes = motor.options.filter(({ action }) => action !== 'keep');
  if (changes.length === 0)
    return { code: 'no-option', text: 'Nothing but keeping it stands to choice: it is not in service, or nothing is priced.' };
  if (changes.every(({ findings }) => findings.some(({ severity }) => severity === 'disqualifies')))
    return { code: 'ruled-out', text: 'Every option of it is ruled out by a finding.' };
  if (changes.every((option) => option.net_present_value === undefined))
    return { code: 'no-value', text: 'No saving can be worked out for it: hours, load or a price are missing.' };
  if (robust && changes.some((option) => (option.net_present_value?.value ?? 0) > 0))
    return { code: 'not-robust', text: 'It would be worth doing, but not in the low case of prices and hours as well.' };
  return { code: 'not-worth-it', text: 'No option of it is worth more than going on as now.' };
}
