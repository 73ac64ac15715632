import { compareNaturally } from '../rank';
import type { Because, OptionResult } from '../result';
import type { Settings } from '../settings';
import type { Choice, Column, Group, Resource, Use } from './candidate';
import { motorKey, type PlanMotor } from './plan-motor';
import { type HoursLimit, type Job, type MotorRef, type PlanWishes, USUAL_JOBS } from './wishes';

/** What one limit of a plan is: the money of a year, or hours in it. */
export interface PlanLimit extends Resource {
  readonly kind: 'money' | 'outage' | 'crew';
  /** Place in the budget. */
  readonly year: number;
  /** The wish that it stands for; absent for money. */
  readonly of?: HoursLimit;
}

/** A motor with what may be chosen for it, and how it stands to the wishes. */
export interface Member {
  readonly motor: PlanMotor;
  readonly columns: readonly Column[];
  readonly must: boolean;
  /** Why something must be done with it; empty where nothing must. */
  readonly because: readonly Because[];
  readonly usable: boolean;
  readonly forbidden: boolean;
}

/** A fleet, its settings and the wishes as a choice. */
export interface Prepared {
  readonly choice: Choice;
  readonly limits: readonly PlanLimit[];
  /** In natural order of site and tag, by key. */
  readonly members: ReadonlyMap<string, Member>;
  readonly firstYear: number;
}

/** Brings a fleet and the wishes into the form of a choice; where wishes name what is not there or contradict each other, each such problem. */
export function prepare(
  motors: readonly PlanMotor[],
  settings: Settings,
  wishes: PlanWishes,
): Prepared | { readonly problems: readonly Because[] } {
  const sorted = [...motors].sort((a, b) => compareNaturally(a.site, b.site) || compareNaturally(a.tag, b.tag));
  const firstYear = Number(settings.asOf.slice(0, 4));
  const byKey = new Map(sorted.map((motor) => [motorKey(motor), motor]));
  const problems = problemsOf(byKey, wishes, { settings, firstYear });
  if (problems.length > 0) return { problems };
  const limits = [...moneyLimits(settings, firstYear), ...hoursLimits(wishes.limits ?? [], settings.budget.length, firstYear)];
  const about: PlanContext = {
    settings,
    wishes,
    limits,
    firstYear,
    bundled: new Set((wishes.bundles ?? []).flatMap((bundle) => bundle.motors.map(motorKey))),
  };
  const members = new Map(sorted.map((motor) => [motorKey(motor), memberOf(motor, about)]));
  return { choice: { groups: groupsOf(members, about), resources: limits }, limits, members, firstYear };
}

/** What every motor of a plan is prepared with. */
interface PlanContext {
  readonly settings: Settings;
  readonly wishes: PlanWishes;
  readonly limits: readonly PlanLimit[];
  readonly firstYear: number;
  readonly bundled: ReadonlySet<string>;
}

function moneyLimits({ budget }: Settings, firstYear: number): PlanLimit[] {
  return budget.map((limit, year) => ({ name: `the budget of ${firstYear + year}`, limit, kind: 'money', year }));
}

function hoursLimits(limits: readonly HoursLimit[], years: number, firstYear: number): PlanLimit[] {
  const found: PlanLimit[] = [];
  for (const of of limits)
    for (let year = 0; year < years; year++) {
      if (of.year !== undefined && of.year !== firstYear + year) continue;
      const where = [of.area, of.site].filter((name) => name !== undefined && name !== '').join(', ') || 'the fleet';
      if (of.outageHours !== undefined)
        found.push({
          name: `the hours of outage of ${where} in ${firstYear + year}`,
          limit: of.outageHours,
          kind: 'outage',
          year,
          of,
        });
      if (of.crewHours !== undefined)
        found.push({
          name: `the hours of the crew of ${where} in ${firstYear + year}`,
          limit: of.crewHours,
          kind: 'crew',
          year,
          of,
        });
    }
  return found;
}

type Pin = NonNullable<PlanWishes['pins']>[number];
type MustDo = NonNullable<PlanWishes['mustDo']>[number];

const same = (a: MotorRef, b: MotorRef): boolean => a.site === b.site && a.tag === b.tag;

function memberOf(motor: PlanMotor, about: PlanContext): Member {
  const { wishes, firstYear } = about;
  const forbidden = wishes.forbid?.some((each) => same(each, motor)) === true;
  const pin = wishes.pins?.find((each) => same(each, motor));
  const asked = wishes.mustDo?.find((each) => same(each, motor));
  const usable = motor.trust.level !== 'not-usable' || wishes.overrides?.some((each) => same(each, motor)) === true;
  const urgent = motor.failed || motor.safety !== undefined;
  const options = motor.options.filter((option) => stands(option, motor, usable));
  const latest = urgent ? 0 : asked?.year === undefined ? about.settings.budget.length - 1 : asked.year - firstYear;
  const must = urgent || asked !== undefined || pin !== undefined;
  const columns = forbidden
    ? []
    : options.flatMap((option) => {
        if (pin?.option !== undefined && pin.option !== option.id) return [];
        return about.settings.budget.flatMap((_, year): Column[] => {
          if (pin?.year !== undefined ? year !== pin.year - firstYear : year > latest) return [];
          const value = valueIn(option, year, about.settings);
          // Nothing is done at a loss but what must be done.
          if (!must && (value === undefined || value <= 0)) return [];
          if (!must && wishes.robust && !((motor.low?.[option.id]?.[year] ?? 0) > 0)) return [];
          return [{ option: option.id, year, value: value ?? 0, uses: usesOf(motor, option, year, about) }];
        });
      });
  // Where nothing can be bought against a breach of a safety limit, the rest may still be planned; it is listed with that reason.
  const helpless =
    motor.safety !== undefined && !motor.failed && asked === undefined && pin === undefined && columns.length === 0;
  const because = must && !helpless ? whyMust(motor, { asked, pin }) : [];
  return { motor, columns, must: must && !helpless, because, usable: usable || motor.failed, forbidden };
}

/** Every reason for which something must be done with a motor: what was found first, then what was wished. */
function whyMust(
  { failed, safety }: PlanMotor,
  { asked, pin }: { readonly asked: MustDo | undefined; readonly pin: Pin | undefined },
): Because[] {
  const reasons: Because[] = [];
  if (failed) reasons.push({ code: 'failed', text: 'It has failed.' });
  if (safety) reasons.push(safety);
  if (asked) {
    const by = asked.year === undefined ? '' : ` by ${asked.year}`;
    reasons.push({ code: 'asked-for', text: `Somebody asked that something be done with it${by}.` });
  }
  if (pin) {
    const when = pin.year === undefined ? '' : ` in ${pin.year}`;
    reasons.push({ code: 'pinned', text: `Somebody asked for ${pin.option ?? 'one of its options'}${when}.` });
  }
  return reasons;
}

/** True where an option may stand in the plan of a year: carried out now, priced, and nothing found that rules it out. */
function stands(option: OptionResult, motor: PlanMotor, usable: boolean): boolean {
  const answered = usable && motor.trust.level === 'not-usable';
  if (option.action === 'keep' || option.timing !== 'now') return false;
  // A repair for safety rests on the condition, not on figures of load.
  if (motor.safety !== undefined && option.action === 'repair') return true;
  // Whoever answers for a motor answers for its assumed load; what else rules an option out still does.
  return (
    (usable || motor.failed) &&
    !option.findings.some(({ severity, code }) => severity === 'disqualifies' && !(answered && code === 'screening-only'))
  );
}

/**
 * Worth of an option carried out in a year, by the study's objective; later years save for fewer years of the horizon.
 * Units: currency, kWh a year or kg a year times the share of the horizon that is left; for risk currency a year or as a present value, as the results state it.
 */
function valueIn(option: OptionResult, year: number, settings: Settings): number | undefined {
  const share = Math.max(0, (settings.horizonYears - year) / settings.horizonYears);
  switch (settings.objective) {
    case 'energy':
      return option.energy_saved && option.energy_saved.value * share;
    case 'emissions': {
      const byYear = option.emissions_saved_by_year;
      if (byYear) return byYear.slice(year).reduce((sum, kg) => sum + kg, 0) / settings.horizonYears;
      return option.emissions_saved && option.emissions_saved.value * share;
    }
    case 'risk':
      return option.failure_cost_change && -option.failure_cost_change.value * share;
    default:
      return option.net_present_value_by_year[year];
  }
}

/** What an option costs in a year: in nominal terms it grows with inflation. Units: currency, whole cents. */
export function costIn(option: OptionResult, year: number, { moneyTerms, inflation }: Settings): number {
  return Math.round(100 * option.cost * (moneyTerms === 'nominal' ? (1 + inflation) ** year : 1)) / 100;
}

function usesOf(motor: PlanMotor, option: OptionResult, year: number, about: PlanContext): Use[] {
  const job = jobOf(option, about.wishes.jobs);
  const uses: Use[] = [{ resource: year, amount: costIn(option, year, about.settings) }];
  about.limits.forEach((limit, resource) => {
    if (limit.kind === 'money' || limit.year !== year || !concerns(limit, motor)) return;
    // The outage of a bundle is counted once, for all of it.
    if (limit.kind === 'outage' && about.bundled.has(motorKey(motor))) return;
    const amount = limit.kind === 'outage' ? job.outageHours : job.crewHours;
    if (amount > 0) uses.push({ resource, amount });
  });
  return uses;
}

function jobOf(
  { action, rated_power_kw }: OptionResult,
  jobs: readonly Job[] = USUAL_JOBS,
): Pick<Job, 'outageHours' | 'crewHours'> {
  const fits = (job: Job) => (job.action ?? action) === action && rated_power_kw <= (job.upToKw ?? Number.POSITIVE_INFINITY);
  return jobs.find(fits) ?? { outageHours: 0, crewHours: 0 };
}

function concerns({ of = {} }: PlanLimit, motor: PlanMotor): boolean {
  return within(of, motor);
}

/** Whether a motor stands where a limit of hours holds. */
function within(limit: HoursLimit, { site, area }: PlanMotor): boolean {
  return (limit.site ?? site) === site && (limit.area ?? area) === area;
}

/** Areas that a limit could name, in words. */
function areasWords(motors: readonly PlanMotor[]): string {
  const areas = [...new Set(motors.map(({ area }) => area ?? ''))].filter((area) => area !== '');
  return areas.length === 0
    ? 'No motor states an area: leave it out to limit all together.'
    : `Areas of the fleet: ${areas.slice(0, AREAS_NAMED).join(', ')}${areas.length > AREAS_NAMED ? `, and ${areas.length - AREAS_NAMED} more` : ''}.`;
}

/** More than these would hide what is said of them. */
const AREAS_NAMED = 12;

function groupsOf(members: ReadonlyMap<string, Member>, about: PlanContext): Group[] {
  const of = (keys: readonly string[], bundle: boolean): Group => {
    const own = keys
      .flatMap((key) => members.get(key) ?? [])
      .filter(({ must, columns }) => !bundle || must || columns.length > 0);
    return {
      id: own.map(({ motor }) => motorKey(motor)).join('\n'),
      must: own.some(({ must }) => must),
      members: own.map(({ motor, columns }) => ({ id: motorKey(motor), columns })),
      ...(bundle && { once: outagesOf(own, about) }),
    };
  };
  const singles = [...members.keys()].filter((key) => !about.bundled.has(key)).map((key) => of([key], false));
  const bundles = (about.wishes.bundles ?? []).map(({ motors }) => of(motors.map(motorKey), true));
  return [...singles, ...bundles].filter((group) => group.must || group.members.some(({ columns }) => columns.length > 0));
}

/** The common outage of a bundle in each year: as long as the longest job that any of its members may get. */
function outagesOf(own: readonly Member[], about: PlanContext): NonNullable<Group['once']> {
  return about.settings.budget.map((_, year) => ({
    year,
    uses: about.limits.flatMap((limit, resource): Use[] => {
      if (limit.kind !== 'outage' || limit.year !== year) return [];
      let amount = 0;
      for (const { motor, columns } of own)
        for (const option of motor.options)
          if (concerns(limit, motor) && columns.some((column) => column.year === year && column.option === option.id))
            amount = Math.max(amount, jobOf(option, about.wishes.jobs).outageHours);
      return amount > 0 ? [{ resource, amount }] : [];
    }),
  }));
}

const named = ({ site, tag }: MotorRef): string => (site === '' ? tag : `${site} ${tag}`);

/** What of the wishes cannot be: names that are not in the fleet, and wishes that contradict each other. */
function problemsOf(
  byKey: ReadonlyMap<string, PlanMotor>,
  wishes: PlanWishes,
  { settings, firstYear }: { readonly settings: Settings; readonly firstYear: number },
): Because[] {
  const problems: Because[] = [];
  const say = (code: string, text: string): void => void problems.push({ code, text });
  const { pins = [], forbid = [], mustDo = [], bundles = [], overrides = [], limits = [] } = wishes;
  for (const each of [...pins, ...forbid, ...mustDo, ...overrides, ...bundles.flatMap(({ motors }) => motors)])
    if (!byKey.has(motorKey(each))) say('wish-unknown', `A wish of the plan names ${named(each)}, which is not in the fleet.`);
  const last = firstYear + settings.budget.length - 1;
  for (const each of [...pins, ...mustDo])
    if (each.year !== undefined && (each.year < firstYear || (pins.includes(each) && each.year > last)))
      say('wish-unknown', `${named(each)} is wanted in ${each.year}; the budget runs from ${firstYear} to ${last}.`);
  const motors = [...byKey.values()];
  limits.forEach((limit, at) => {
    // A limit on what is not there would limit nothing, and nobody would know.
    const { site, area, year } = limit;
    const where = [area && `area ${area}`, site && `site ${site}`].filter(Boolean).join(', ');
    if (where !== '' && !motors.some((motor) => within(limit, motor)))
      say('limit-unknown', `Limit of hours ${at + 1} of the plan names ${where}, where no motor stands. ${areasWords(motors)}`);
    if (year !== undefined && (year < firstYear || year > last))
      say(
        'limit-unknown',
        `Limit of hours ${at + 1} of the plan is for ${year}: give a year of the budget, from ${firstYear} to ${last}, or none for each year.`,
      );
  });
  for (const pin of pins) {
    const motor = byKey.get(motorKey(pin));
    if (motor && pin.option !== undefined && !motor.options.some(({ id }) => id === pin.option))
      say('wish-unknown', `${named(pin)} has no option ${pin.option}.`);
    if (forbid.some((each) => same(each, pin)))
      say('wishes-contradict', `${named(pin)} is both wanted in the plan and to be left alone.`);
    if (
      motor?.trust.level === 'not-usable' &&
      !motor.failed &&
      motor.safety === undefined &&
      !overrides.some((each) => same(each, pin))
    )
      say(
        'needs-override',
        `${named(pin)} is wanted, but its figures may not be used: somebody must answer for it by name, with a reason.`,
      );
  }
  const seen = new Set<string>();
  for (const each of bundles.flatMap(({ motors }) => motors)) {
    if (seen.has(motorKey(each))) say('wishes-contradict', `${named(each)} stands in bundles twice.`);
    seen.add(motorKey(each));
  }
  return problems;
}
