import { describe, expect, it } from 'vitest';
import { type DecideInput, type Decision, decide } from '@/lib/engine/decide/decide';
import { keepsPolicy } from '@/lib/engine/decide/limits';
import { moneyWords, type REASONS } from '@/lib/engine/decide/reasons';
import { money, npv, POOR, PRICES, payback, type Trial, weigh } from '../options/weighing';
import { SETTINGS } from '../support/study';

type Way = Partial<Pick<DecideInput, 'trust' | 'mustAct'>>;

/** Weighs and decides as the evaluation does. */
function decided(trial: Trial = {}, way: Way = {}): Decision & { weighed: ReturnType<typeof weigh> } {
  const weighed = weigh(trial);
  const decision = decide({
    options: weighed.options,
    trust: way.trust ?? 'sound',
    callsForRepair: trial.calls ?? [],
    mustAct: way.mustAct ?? false,
    motor: weighed.motor,
    settings: weighed.study.settings,
  });
  return { ...decision, weighed };
}

const codes = (decision: Decision): string[] => decision.because.map((reason) => reason.code);
const policy = (changes: Partial<typeof SETTINGS.policy>) => ({ policy: { ...SETTINGS.policy, ...changes } });

/** A poor motor with a cheap replacement: well within policy. */
const CHEAP: Trial = { ...POOR, plate: { ...POOR.plate, quotedPrice: 2500 } };
/** The same with too few hours to pay back now. */
const SELDOM: Trial = { ...POOR, hours: 3000 };
/** The first at low load, so that smaller ratings are weighed too. */
const LOW: Trial = { ...CHEAP, load: 0.3, plate: { ...CHEAP.plate, peakLoadKw: 13 } };

/** A situation for each reason. */
const CASES: Readonly<Record<keyof typeof REASONS, readonly [Trial, Way?]>> = {
  'out-of-service': [{ plate: { status: 'retired' } }],
  failed: [{ plate: { status: 'failed' } }],
  'highest-value': [{ ...CHEAP, plate: { ...CHEAP.plate, status: 'failed' } }],
  'value-unknown': [{ plate: { status: 'failed' }, hours: undefined }],
  'safety-limit': [CHEAP, { mustAct: true }],
  'condition-calls-for-repair': [{ calls: ['bearing-job'] }],
  'repair-not-priced': [{ calls: ['rewind'], prices: PRICES.filter((line) => line.item !== 'rewind') }],
  'replacement-beats-repair': [{ ...CHEAP, calls: ['rewind'] }],
  'measure-first': [CHEAP, { trust: 'not-usable' }],
  'within-policy': [CHEAP],
  'within-policy-beyond-repair': [{ ...CHEAP, calls: ['rewind'] }],
  'check-before': [{ ...CHEAP, plate: { ...CHEAP.plate, hazardousLocation: true } }],
  'pays-at-failure': [SELDOM],
  'usual-serves-better': [{ ...SELDOM, hours: 100, plate: { ...SELDOM.plate, quotedPrice: 9000 } }],
  'payback-too-long': [SELDOM],
  'probability-too-low': [{ ...CHEAP, settings: policy({ minProbability: 0.9999 }), loadDoubt: 0.2 }],
  'value-not-positive': [{ ...CHEAP, settings: { taxRate: 1, ...policy({ minProbability: 0 }) } }],
  'saves-nothing': [{ plate: { nominalEfficiencyPct: 96 } }],
  'duty-impossible': [{ steps: [[60, 5000]] }],
  'hours-unknown': [{ hours: undefined }],
  'not-priced': [{ prices: [] }],
  'trust-provisional': [CHEAP, { trust: 'provisional' }],
};

describe('reasons', () => {
  it.each(Object.entries(CASES))('%s is given where it should be, in a sentence', (code, [trial, way]) => {
    const decision = decided(trial, way);
    const reason = decision.because.find((one) => one.code === code);
    expect(codes(decision)).toContain(code);
    expect(reason?.text).toMatch(/[.]$/);
    // Nor by a column: what is ranked anew in the browser has no labels to put in its place.
    for (const one of decision.because) expect(one.text).not.toMatch(/NaN|undefined|Infinity|[a-z]_[a-z]/);
  });
  it('name what the policy would do at a failure, and never missing hours where the hours are known', () => {
    const waits: Trial = { ...LOW, hours: 1500, plate: { ...LOW.plate, quotedPrice: undefined } };
    const text = (atFailure: 'repair' | 'replace') =>
      decided({ ...waits, settings: policy({ atFailure, maxSimplePaybackYears: 0.1 }) }).because.find(
        ({ code }) => code === 'pays-at-failure',
      )?.text;
    expect(text('repair')).toContain('in place of the usual repair');
    expect(text('replace')).toContain('in place of a premium motor of the present rating');
    expect(codes(decided({ steps: [[60, 5000]] }))).not.toContain('hours-unknown');
  });
  it.each(Object.entries(CASES))(
    '%s: the decision names an option of the list, with a reason and a finite rank',
    (_, [trial, way]) => {
      const decision = decided(trial, way);
      const named = decision.weighed.options.find((option) => option.id === decision.option);
      expect(named).toMatchObject({ action: decision.action, timing: decision.timing });
      expect(decision.because.length).toBeGreaterThan(0);
      expect(Number.isFinite(decision.ranking.value)).toBe(true);
    },
  );
  it('carry the numbers: payback, limit and what is missing', () => {
    const text = decided(SELDOM).because.find((reason) => reason.code === 'payback-too-long')?.text ?? '';
    const years = payback(weigh(SELDOM).option('replace', 'now'));
    expect(text).toContain(`${years.toFixed(1)} years`);
    expect(text).toContain(`${(years - 3).toFixed(1)} years more than the policy’s 3.0 years`);
  });
  it('say of a saving near zero that its payback is beyond a hundred years, not how far', () => {
    const dear: Trial = { ...SELDOM, hours: 100, plate: { ...SELDOM.plate, quotedPrice: 90_000 } };
    expect(payback(weigh(dear).option('replace', 'now'))).toBeGreaterThan(100);
    const text = decided(dear).because.find((reason) => reason.code === 'payback-too-long')?.text;
    expect(text).toMatch(/would pay back in more than 100 years, where the policy allows 3\.0 years\.$/);
  });
  it('write money in groups of three with a true minus', () => {
    expect([moneyWords(1234567.4, 'USD'), moneyWords(-999.6, 'EUR'), moneyWords(-0.2, 'USD'), moneyWords(12, 'USD')]).toEqual([
      '1,234,567 USD',
      '−1,000 EUR',
      '0 USD',
      '12 USD',
    ]);
  });
});

describe('order of the rules', () => {
  it('spares and retired motors rank with the others, without usable readings with those not usable', () => {
    const spare: Trial = { plate: { status: 'spare' } };
    expect(decided(spare).ranking.group).toBe(1);
    expect(decided(spare, { trust: 'not-usable' }).ranking.group).toBe(2);
  });
  it('spares and retired motors are kept', () => {
    for (const status of ['spare', 'retired'] as const)
      expect(decided({ plate: { status } }, { mustAct: true }).option).toBe('keep');
  });
  it('a failed motor gets what has the highest value, whatever the trust; it is never kept when something is priced', () => {
    const good = decided({ ...CHEAP, plate: { ...CHEAP.plate, status: 'failed' } }, { trust: 'not-usable' });
    expect([good.action, good.timing, good.ranking.group]).toEqual(['replace', 'now', 0]);
    const poor = decided({ hours: 500, plate: { status: 'failed', quotedPrice: 9000 } });
    expect([poor.action, poor.ranking.value]).toEqual(['repair', 0]);
    expect(decided({ hours: undefined, plate: { status: 'failed' } }).action).toBe('repair');
    expect(decided({ prices: [], plate: { status: 'failed' } }).option).toBe('keep');
  });
  it('condition calls for repair whatever the energy says, unless a replacement within policy is worth more', () => {
    // Beyond the rewind a motor of 9000 costs more than its saving pays back in three years.
    expect(decided({ ...SELDOM, plate: { ...POOR.plate, quotedPrice: 9000 }, calls: ['rewind'] }).action).toBe('repair');
    const better = decided({ ...CHEAP, calls: ['rewind'] });
    expect([better.action, better.timing, better.ranking.group]).toEqual(['replace', 'now', 0]);
    const unsure = decided({ ...CHEAP, calls: ['rewind'] }, { trust: 'not-usable' });
    expect([unsure.action, unsure.ranking.group]).toEqual(['repair', 2]);
    const capped = decided({ ...CHEAP, plate: { ...CHEAP.plate, hazardousLocation: true }, calls: ['rewind'] });
    expect(capped.action).toBe('repair');
  });
  it('a repair that is done anyway is taken off what the replacement in its place must pay back', () => {
    // 37.285 kW: a motor of 3728.50, bearings of 200 × 3.7285^log10(4.5), removal and installation of 300 to either.
    const bearings = 200 * 3.7285 ** Math.log10(4.5);
    const trial: Trial = { ...POOR, prices: PRICES, calls: ['bearing-job'] };
    const full = weigh(trial).option('replace', 'now');
    expect(payback(full)).toBeCloseTo(4028.5 / money(full), 6);
    expect(full.beyondRepair?.payback).toBeCloseTo((3728.5 - bearings) / money(full), 6);
    // With so many hours the whole takes 3.3 years and what it costs beyond the bearings some 2.6.
    const hours = (8000 * payback(full)) / 3.3;
    const free = { ...SETTINGS, demandPricePerKwMonth: 0, policy: { ...SETTINGS.policy, minProbability: 0.5 } };
    const atHours = (calls: NonNullable<Trial['calls']>) => decided({ ...trial, hours, calls, settings: free });
    const spared = atHours(['bearing-job']);
    expect(spared.action).toBe('replace');
    expect(codes(spared)).toEqual(['condition-calls-for-repair', 'replacement-beats-repair', 'within-policy-beyond-repair']);
    expect(atHours([]).timing).toBe('at-failure');
    // After a rewind the old motor takes more, which the replacement saves as well: by hand the difference of the two years.
    const rewound = weigh({ ...trial, calls: ['rewind'] }).option('replace', 'now');
    const { oldRepaired, option, repairNow, investment } = rewound.workings?.worths ?? {};
    const worth = (of: typeof option) => of?.quantity.value ?? Number.NaN;
    expect(rewound.beyondRepair?.payback).toBeCloseTo(
      (worth(investment) - worth(repairNow)) / (worth(oldRepaired) - worth(option)),
      6,
    );
    expect(weigh(POOR).option('replace', 'now').beyondRepair).toBeUndefined();
    expect(weigh(trial).option('replace', 'at-failure').beyondRepair).toBeUndefined();
  });
  it('a safety limit comes first among the reasons', () => {
    expect(codes(decided({ calls: ['bearing-job'] }, { mustAct: true }))[0]).toBe('safety-limit');
  });
  it('readings that may not be used: measure first, last in the ranking', () => {
    const decision = decided(CHEAP, { trust: 'not-usable' });
    expect([decision.option, decision.ranking.group]).toEqual(['keep', 2]);
  });
  it('an option that is only screened never wins', () => {
    expect(decided({ ...CHEAP, screeningOnly: true, measured: false }).action).toBe('keep');
  });
  it('within policy the highest value wins, in group 0 by that value', () => {
    const decision = decided(LOW);
    const now = decision.weighed.options.filter((option) => option.timing === 'now' && option.action !== 'keep');
    expect(now.length).toBe(3);
    const highest = Math.max(...now.map(npv));
    expect(decision.ranking).toEqual({ group: 0, value: highest });
    expect(now.find((option) => option.id === decision.option && npv(option) === highest)).toBeDefined();
  });
  it('an option to be checked first ranks below those within policy, and is named with its checks', () => {
    const decision = decided({ ...CHEAP, plate: { ...CHEAP.plate, mounting: 'flange' } });
    expect([decision.action, decision.timing, decision.ranking.group]).toEqual(['replace', 'now', 1]);
    expect(decision.because[0]?.code).toBe('check-before');
    expect(decision.because[0]?.text).toContain('flange');
    // With an unknown starting duty the smaller ratings are capped, the same rating is not.
    const duty = decided({ ...LOW, plate: { ...LOW.plate, drivenMachine: 'conveyor' } });
    expect([duty.action, duty.ranking.group]).toEqual(['replace', 0]);
  });
  it('what does not pay now may pay at failure; what pays never is kept, ranked by its best alternative', () => {
    const later = decided(SELDOM);
    expect([later.action, later.timing, later.ranking.group]).toEqual(['replace', 'at-failure', 1]);
    expect(later.ranking.value).toBeGreaterThan(0);
    const never = decided({ plate: { nominalEfficiencyPct: 96 } });
    expect([never.option, never.ranking.group]).toEqual(['keep', 1]);
    expect(never.ranking.value).toBeLessThan(0);
  });
  it('limits of the policy are kept at their very edge', () => {
    const years = payback(weigh(CHEAP).option('replace', 'now'));
    const chance = { minProbability: 0 };
    expect(decided({ ...CHEAP, settings: policy({ maxSimplePaybackYears: years, ...chance }) }).timing).toBe('now');
    expect(decided({ ...CHEAP, settings: policy({ maxSimplePaybackYears: years * 0.999, ...chance }) }).timing).toBe(
      'at-failure',
    );
  });
  it('a smaller motor can win, and names both ratings in words', () => {
    const decision = decided({ ...LOW, plate: { ...LOW.plate, quotedPrice: 20000 } });
    expect(decision.action).toBe('resize');
    expect(decision.because[0]?.text).toMatch(/A premium motor of (20|25) hp \(1[48][.]\d kW\)/);
  });
});

describe('the limits of the policy', () => {
  const { policy } = SETTINGS;
  const on = { payback: policy.maxSimplePaybackYears, probability: policy.minProbability, value: 0.01 };
  it('hold for an option that lies on them', () => {
    expect(keepsPolicy(on, policy)).toBe(true);
  });
  it.each([
    ['a longer payback', { payback: on.payback + 1e-9 }],
    ['no payback', { payback: undefined }],
    ['a smaller chance', { probability: on.probability - 1e-9 }],
    ['a chance that is not known', { probability: undefined }],
    ['nothing gained', { value: 0 }],
    ['a value that is not known', { value: undefined }],
  ])('do not hold for %s', (_, change) => {
    expect(keepsPolicy({ ...on, ...change }, policy)).toBe(false);
  });
});
