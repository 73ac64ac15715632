import { catalogue, kind } from '../quantity/catalogue';
import { LIVE } from '../quantity/cautions';
import { fixed } from '../quantity/words';
import { shortRating } from './ratings';

const whole = (value: number): string => fixed(value, 0);
const moreOf = (saved: number, unit: string): string => `${whole(Math.abs(saved))} ${unit} ${saved > 0 ? 'less' : 'more'}`;

/** Items of a price list whose names are no words. */
const ITEM_WORDS: Readonly<Record<string, string>> = {
  'removal-install': 'removal and installation',
  'frame-adapter': 'frame adapter',
  'bearing-job': 'bearing job',
};
const itemWords = (item: string): string => ITEM_WORDS[item] ?? item;

/** Findings about options: what could not be valued, what to check before acting, how a value came about. */
export const OPTIONS = catalogue({
  'hours-unknown': kind<Record<string, never>>({
    severity: 'warning',
    text: () => 'Neither hours a year nor a duty profile are known, so no energy, money or payback is given.',
    cause: 'The columns hours_per_year and duty_profile are empty.',
    next: 'Ask the operators for the hours a year, or read an hour meter twice a few weeks apart.',
  }),
  'too-small-for-duty': kind<{ rated_power_kw: number }>({
    severity: 'note',
    text: (e) =>
      `A motor of ${shortRating(e.rated_power_kw)} kW cannot carry the duty: it asks for more than its breakdown torque.`,
    cause: 'The highest load of the duty is far above this rating.',
    next: 'Nothing: the rating is not weighed. Check the highest step of the duty if this surprises.',
  }),
  'duty-beyond-breakdown': kind<{ rated_power_kw: number }>({
    severity: 'warning',
    text: (e) =>
      `The duty asks for more than the breakdown torque of this ${shortRating(e.rated_power_kw)} kW motor, so that nothing can be computed for a year.`,
    cause: 'A fraction of the duty is written in per cent, or refers to another load than the reading’s.',
    next: 'Check duty_profile: fractions refer to the load of the reading on its row, or to rated power without one.',
  }),
  'screening-only': kind<{ assumed_load: number }>({
    severity: 'disqualifies',
    text: (e) =>
      `No usable reading: the option is screened at an assumed load of ${whole(e.assumed_load * 100)} % and does not enter a plan.`,
    cause: 'The motor has no reading that may be used.',
    next: `Measure the motor at its usual load first: input power, three currents and voltages, and speed. ${LIVE}`,
  }),
  'failed-at-assumed-load': kind<{ assumed_load: number }>({
    severity: 'note',
    text: (e) =>
      `The motor has failed and was never measured: its options are weighed at an assumed load of ${whole(e.assumed_load * 100)} %.`,
    cause: 'A failed motor cannot be measured any more.',
    next: 'Estimate the load from the process, and enter a duty profile in fractions of rated power.',
  }),
  'invented-price': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'Prices come from a list that is invented for demonstration.',
    cause:
      'The study names no price list of its own, or one whose source says that it is invented; what no quotation covers is priced by it.',
    next: 'Name your price list in the settings, or enter quoted_price and quoted_repair.',
  }),
  'no-price': kind<{ rated_power_kw: number }>({
    severity: 'warning',
    text: (e) => `The price list has no premium motor from which a price at ${e.rated_power_kw.toFixed(1)} kW follows.`,
    cause: 'No line of the list has the item motor and the class premium or IE3.',
    next: 'Add such lines to the price list, or enter quoted_price.',
  }),
  'no-repair-price': kind<{ rated_power_kw: number }>({
    severity: 'warning',
    text: (e) =>
      `The price list has no repair from which a price at ${e.rated_power_kw.toFixed(1)} kW follows; options that rest on it are left out.`,
    cause: 'No line of the list has the item rewind or bearing-job that is asked for.',
    next: 'Add such lines to the price list, or enter quoted_repair.',
  }),
  'price-incomplete': kind<{ item: string }>({
    severity: 'note',
    text: (e) => `The price list has no line for ${e.item}; it is not in the cost.`,
    cause: 'The list holds prices of motors and repairs alone.',
    next: 'Add the item to the price list, with a price of 0 if it costs nothing here.',
  }),
  'price-extrapolated': kind<{ item: string; rated_power_kw: number }>({
    severity: 'note',
    text: (e) =>
      `The price of the ${itemWords(e.item)} at ${e.rated_power_kw.toFixed(1)} kW lies beyond the ratings of the list and was carried on from its end.`,
    cause: 'The list does not reach so far.',
    next: 'Ask for a quotation at this rating.',
  }),
  'schedule-unknown': kind<{ site: string }>({
    severity: 'note',
    text: () =>
      'The tariff of the site has prices by the hour, but the hours of operation are not known: the motor is taken to run evenly around the week.',
    cause: 'The column schedule is empty.',
    next: 'Enter the hours of operation, such as Mo-Fr 06:00-22:00.',
  }),
  'schedule-unreadable': kind<{ problem: string; remedy: string }>({
    severity: 'warning',
    text: (e) => `${e.problem} The motor is taken to run evenly around the week.`,
    cause: 'The column schedule holds something else than days and times.',
    next: (e) => e.remedy,
  }),
  'hours-beyond-schedule': kind<{ hours_per_year: number; scheduled_hours: number }>({
    severity: 'note',
    text: (e) =>
      `The motor is stated to run ${whole(e.hours_per_year)} hours a year, but its schedule has ${whole(e.scheduled_hours)}; the schedule only says when, the hours how long.`,
    cause: 'One of the two columns is out of date, or holidays and overtime were counted.',
    next: 'Compare hours_per_year with schedule and mend the wrong one.',
  }),
  'ratchet-holds-demand': kind<{ first_year_share: number }>({
    severity: 'note',
    text: (e) =>
      `In the first year ${e.first_year_share <= 0 ? 'none' : `only ${whole(100 * e.first_year_share)} %`} of the demand saving is billed${e.first_year_share < 0 ? `, and less demand costs ${whole(-100 * e.first_year_share)} % of it by the blocks` : ''}: the old peak still sets the billed demand.`,
    cause: 'The tariff bills a share of the highest demand of the months before.',
    next: 'Count on the demand saving from the second year on; the cash flow does so.',
  }),
  'tax-without-depreciation': kind<{ tax_rate: number }>({
    severity: 'note',
    text: (e) =>
      `Tax of ${whole(e.tax_rate * 100)} % is taken on yearly savings; the relief by depreciation is not counted, so the value is on the low side.`,
    cause: 'The settings state a tax rate but no depreciation.',
    next: 'State the depreciation in the settings, such as straight-line over 7 years; finance knows the method.',
  }),
  'not-in-service': kind<{ status: string }>({
    severity: 'note',
    text: (e) => `The motor is marked ${e.status}: it uses no energy, and no option is weighed.`,
    cause: 'The status says that it does not run.',
    next: 'Set the status to running when it is put to work.',
  }),
  'failed-must-act': kind<Record<string, never>>({
    severity: 'warning',
    text: () => 'The motor has failed: it cannot be kept as it is.',
    cause: 'The status says failed.',
    next: 'Choose between repair and replacement; both are valued below against what the policy would do.',
  }),
  'nothing-spent': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'Nothing is spent and nothing saved, so there is no payback and no rate of return.',
    cause: 'To keep the motor is the baseline that the others are valued against.',
    next: 'Compare the other options with zero.',
  }),
  'no-saving': kind<{ action: string; money_saved: number; energy_saved: number; currency: string }>({
    severity: 'note',
    text: (e) =>
      whole(e.energy_saved) === '0' && whole(e.money_saved) === '0'
        ? 'The option saves nothing in a year, so it has no payback.'
        : `The option saves nothing: a year takes ${moreOf(e.energy_saved, 'kWh')} and ${moreOf(e.money_saved, e.currency)}, so it has no payback.`,
    cause: (e) =>
      e.action === 'repair'
        ? 'A repair brings a motor back to what it was, a rewind to a little less.'
        : 'The efficiency is no better at this load, the hours are few, or a faster shaft takes what the efficiency gives.',
    next: (e) =>
      e.action === 'repair'
        ? 'Judge the repair by what the condition calls for, and compare it with a new motor.'
        : 'Look at the load, the hours and the speed of the new motor.',
  }),
  'never-paid-back': kind<{ years: number; discount_rate: number; kind: string; net_present_value: number }>({
    severity: 'note',
    text: (e) =>
      `At a discount rate of ${(e.discount_rate * 100).toFixed(1)} % the savings do not pay the cost back within ${e.years} years${e.net_present_value > 0 ? '; what is left of the motor then makes it worth its cost' : ''}.`,
    cause: 'The yearly saving after tax is small against the cost.',
    next: (e) =>
      e.kind === 'change-now'
        ? 'Look at the option again when the motor fails: then only the difference to a repair counts.'
        : e.net_present_value > 0
          ? 'Ask whether the motor will still be of use at the horizon before relying on the value.'
          : 'Leave it at what the policy does at a failure, unless something beside the money speaks for this option.',
  }),
  'no-rate-of-return': kind<{ most_spent: number }>({
    severity: 'note',
    text: (e) =>
      e.most_spent > 0
        ? 'The cash flow has no rate of return between −99 % and 10,000 % a year: too little comes back, or too much.'
        : 'In no year is more spent than comes in, so there is no rate of return.',
    cause: 'A rate of return needs an outlay and savings in proportion to it.',
    next: 'Judge by the net present value.',
  }),
  'several-rates-of-return': kind<{ rates: string }>({
    severity: 'note',
    text: (e) => `The cash flow has several rates of return (${e.rates}), so none is given.`,
    cause: 'The flow changes sign more than once.',
    next: 'Judge by the net present value.',
  }),
  'rate-of-a-loan': kind<{ rate: number }>({
    severity: 'note',
    text: (e) =>
      `The cash flow takes in first and pays out later: its rate of ${fixed(e.rate * 100, 1)} % a year is that of a loan, not of a return, and is not given.`,
    cause:
      'What is spared at the start, a repair or a purchase, is more than the option costs; dearer years follow, or less is left in the end.',
    next: 'Judge by the net present value.',
  }),
  'no-extra-cost': kind<{ spent: number }>({
    severity: 'note',
    text: (e) =>
      e.spent > 0
        ? 'What the option costs beyond what would be done anyway is no more than what is left of it at the horizon, so there is no ratio of savings to investment.'
        : 'The option costs no more than what would be done anyway, so there is no ratio of savings to investment.',
    cause: (e) =>
      e.spent > 0
        ? 'The motor keeps much of its price to the horizon.'
        : 'The repair that is spared, or a rebate, covers the cost.',
    next: 'Judge by the net present value.',
  }),
  'place-unknown': kind<{ what: string; assumed: string }>({
    severity: 'note',
    text: (e) => `A smaller rating is weighed, and ${e.what}: at most ${e.assumed} assumed.`,
    cause: 'The cells altitude_m or ambient_c are empty.',
    next: 'Fill them in where the place is high or hot.',
  }),
  'check-before': kind<{ check: string; detail: string }>({
    severity: 'warning',
    text: (e) => `Check before acting: ${e.detail}.`,
    cause: 'The sheet does not say enough, or says that an ordinary foot-mounted premium motor may not fit.',
    next: 'Have the fit, the starting duty and the certificates confirmed by the maker or a licensed engineer before ordering.',
  }),
  'speed-eats-saving': kind<{ speed_change: number; without_speed: number; saved: number }>({
    severity: 'note',
    text: (e) =>
      e.saved < 0
        ? `The new motor turns ${e.speed_change.toFixed(0)} r/min faster; that takes all ${whole(e.without_speed)} kWh a year that the efficiency saves, and ${whole(-e.saved)} kWh more.`
        : `The new motor turns ${e.speed_change.toFixed(0)} r/min faster; of ${whole(e.without_speed)} kWh a year saved by efficiency ${whole(e.saved)} kWh are left.`,
    cause: 'Fans and pumps take power with the cube of the speed, and premium motors slip less.',
    next: 'Choose a motor of like full-load speed, change the sheave, or trim the impeller; then the whole saving stays.',
  }),
  'speed-held': kind<{ drive_loss: number }>({
    severity: 'note',
    text: (e) =>
      `A drive holds the speed, so a new motor that slips less takes no more power; the drive’s own loss, about ${(100 * e.drive_loss).toFixed(1)} % of what it gives at the highest step (typical), stays as it is and is in neither motor’s energy.`,
    cause: 'The motor is fed or controlled by an adjustable-speed drive.',
    next: 'Have the maker confirm that the new motor’s insulation and bearings suit a drive, and check its rated current against the drive’s.',
  }),
  'load-curve-unknown': kind<{ curve: string; known: string }>({
    severity: 'warning',
    text: (e) =>
      `The column load_curve names “${e.curve}”, which the settings do not have; the torque law of the kind of machine, or the stated exponent, was taken.`,
    cause: (e) =>
      e.known === ''
        ? 'The settings hold no load curves.'
        : `The settings know ${e.known}; the name is misspelt or missing there.`,
    next: 'Correct load_curve in the fleet sheet, or add the curve to the load curves of the settings.',
  }),
  'load-law-twice': kind<{ curve: string; exponent: number }>({
    severity: 'warning',
    text: (e) => `Both load_curve (${e.curve}) and load_torque_exponent (${e.exponent}) are stated; the curve was taken.`,
    cause: 'The two columns came from different sheets.',
    next: 'Empty one of load_curve and load_torque_exponent.',
  }),
  'load-curve-left': kind<{ curve: string; speed_pct: number; from_pct: number; to_pct: number }>({
    severity: 'note',
    text: (e) =>
      `At ${e.speed_pct.toFixed(1)} % of rated speed the load curve ${e.curve}, which goes from ${e.from_pct} to ${e.to_pct} %, has no points; its law at the end was carried on.`,
    cause: 'A motor below rated load, or one that slips less, turns faster than at rated speed.',
    next: 'Add points to the curve up to the synchronous speed.',
  }),
  'starter-to-match': kind<{ from_a: number; to_a: number }>({
    severity: 'note',
    text: (e) =>
      `Rated current goes from ${e.from_a.toPrecision(3)} to about ${e.to_a.toPrecision(3)} A, so the overload relay must be set anew or changed.`,
    cause: 'Relay, fuses and breaker were chosen for the present rating.',
    next: 'Have a licensed electrician set the relay to the new plate and check fuses, breaker and capacitors by the local code.',
  }),
  'frame-to-match': kind<{ from: string; named: string; to: string; height: string; shaft: string; needs: string }>({
    severity: 'note',
    text: (e) => `The frame goes from ${e.from}${e.named} to ${e.to}${e.height}${e.shaft}.`,
    cause: 'Another rating comes in another frame: feet, shaft and coupling differ. Which frame it is, is from memory.',
    next: (e) => `Have ${e.needs} and the alignment quoted with the motor, by the maker’s drawing.`,
  }),
  'frame-stays': kind<{ frame: string }>({
    severity: 'note',
    text: (e) => `The rating comes in the same frame ${e.frame}: feet, shaft height and shaft end stay.`,
    cause: 'Neighbouring ratings share a frame. Which frame it is, is from memory.',
    next: 'Compare with the maker’s drawing; align anew.',
  }),
  'frame-not-listed': kind<{ from: string; rated_power_kw: number }>({
    severity: 'note',
    text: (e) =>
      `Whether a motor of ${shortRating(e.rated_power_kw)} kW fits in place of frame ${e.from} is not known: no table holds its frame.`,
    cause: 'Frames are assigned to standard ratings of 2 to 8 poles up to a size; beyond, each maker has its own.',
    next: 'Ask the maker for the shaft height and the shaft end before base and coupling are priced.',
  }),
  'power-factor-moves': kind<{ from: number; to: number }>({
    severity: 'note',
    text: (e) => `At the highest step the power factor goes from ${e.from.toFixed(2)} to ${e.to.toFixed(2)}.`,
    cause: 'A motor nearer to its rating takes less magnetising current for its power.',
    next: 'Look at capacitors at the motor, which may be too large for the new one, and at the charge for reactive power.',
  }),
  'smaller-saves-no-more': kind<{ beyond_same_rating: number }>({
    severity: 'note',
    text: (e) =>
      e.beyond_same_rating > 0
        ? `The smaller rating saves only ${whole(e.beyond_same_rating)} kWh a year beyond a premium motor of the present rating.`
        : `The smaller rating takes ${whole(-e.beyond_same_rating)} kWh a year more than a premium motor of the present rating.`,
    cause:
      'The efficiency of present motors is nearly flat from half to full load, and a smaller motor often slips more and has a lower class value.',
    next: 'Choose the smaller rating for its price or power factor, not for energy.',
  }),
  'peak-load-unknown': kind<{ highest_load_kw: number }>({
    severity: 'note',
    text: (e) => `The highest load is taken as the ${e.highest_load_kw.toFixed(1)} kW that was measured or stated in the duty.`,
    cause: 'The column peak_load_kw is empty.',
    next: 'Ask the process owner for the highest load ever demanded before choosing another rating.',
  }),
  'class-outside-table': kind<{ rated_power_kw: number; poles: number }>({
    severity: 'note',
    text: (e) =>
      `The table of premium efficiencies does not hold ${e.rated_power_kw.toFixed(1)} kW with ${e.poles} poles; its nearest row was taken.`,
    cause: 'The efficiency classes are defined for a range of ratings and poles.',
    next: 'Ask the maker for the efficiency of the motor on offer.',
  }),
  'class-unknown': kind<{ rated_power_kw: number }>({
    severity: 'warning',
    text: (e) => `No table gives the premium efficiency at ${e.rated_power_kw.toFixed(1)} kW; the option is left out.`,
    cause: 'The tables of the study do not hold the class at this frequency.',
    next: 'Check frequency and standards in the settings.',
  }),
  'stop-cost-unknown': kind<Record<string, never>>({
    severity: 'note',
    text: () => 'The condition raises the risk of an unplanned stop, but what a stop costs is not known.',
    cause: 'The column unplanned_stop_cost is empty.',
    next: 'Ask production what an unplanned stop costs, and whether a standby takes over.',
  }),
  'amount-too-large': kind<Record<string, never>>({
    severity: 'warning',
    text: () => 'An amount of money is too large to be kept exactly, so the option is not valued.',
    cause: 'A price, a quotation or a setting has too many digits.',
    next: 'Check prices, quotations and settings.',
  }),
});
