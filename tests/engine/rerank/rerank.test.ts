import { describe, expect, it } from 'vitest';
import { type Evaluation, evaluateMotor, type Motor, type Settings, type StudyContext } from '@/lib/engine';
import { moved, type Question } from '@/lib/engine/explain/lever';
import { ranksOf } from '@/lib/engine/rank';
import { type MovableMotor, movableOf } from '@/lib/engine/rerank/movable';
import { type Moves, neutralMoves, type Reranked, rerank, rerankable } from '@/lib/engine/rerank/rerank';
import { generateDemo } from '@/lib/features/demo/generate';
import { study as studyOf } from '../support/study';
import { WITH_RATCHET } from '../tariff/tariffs';

/** Invented motors of every kind, failed ones and unusable readings among them. */
const FLEET: readonly Motor[] = generateDemo({ asOf: '2026-01-01' }).map((entry) => entry.motor);
const SITE = FLEET[0]?.site ?? '';

const STUDIES: readonly { readonly name: string; readonly settings: Partial<Settings> }[] = [
  { name: 'the defaults', settings: {} },
  {
    name: 'tax, depreciation, rebates with caps and failure cost inside',
    settings: {
      taxRate: 0.25,
      depreciation: { method: 'declining-balance', years: 7 },
      includeFailureCost: true,
      rebates: [{ action: 'replace', perKw: 10, perKwh: 0.02, cap: 900, capShare: 0.3 }],
    },
  },
  { name: 'replacement at failure, a tariff with a ratchet, growing prices', settings: atTariff() },
];

function atTariff(): Partial<Settings> {
  const policy = { ...studyOf().settings.policy, atFailure: 'replace' as const };
  return { policy, tariffs: { [SITE]: WITH_RATCHET }, energyPriceEscalation: 0.02, moneyTerms: 'nominal', inflation: 0.03 };
}

/** As the browser has it: only what text can carry. */
const asText = (motors: readonly MovableMotor[]): MovableMotor[] => JSON.parse(JSON.stringify(motors));

function evaluateAll(motors: readonly Motor[], study: StudyContext): Evaluation[] {
  return motors.map((motor) => evaluateMotor(motor, study));
}

/** Values up to this are noise of sums taken in another order: motors that differ by less may change places. */
const NOISE = 1e-5;

function inWords(reasons: Reranked['decision']['because']): { code: string; text: string }[] {
  return reasons.map(({ code, text }) => ({ code, text }));
}

function expectSame(found: readonly Reranked[], evaluations: readonly Evaluation[], exactly: boolean): void {
  const ranks = ranksOf(
    evaluations.map(({ motor, decision }) => ({ site: motor.site, tag: motor.tag, ranking: decision.ranking })),
  );
  expect(found.length).toBe(evaluations.length);
  for (const each of found) {
    const evaluation = evaluations[each.index];
    if (!evaluation) throw new Error('a motor too many');
    const { decision, options, motor } = evaluation;
    const option = options.find(({ id }) => id === decision.option);
    expect(each.decision.option, motor.tag).toBe(decision.option);
    expect(inWords(each.decision.because), motor.tag).toEqual(inWords(decision.because));
    if (exactly) expect(each.rank, motor.tag).toBe(ranks[each.index]);
    else {
      const held = evaluations[ranks.indexOf(each.rank)]?.decision.ranking;
      expect(held?.group, motor.tag).toBe(decision.ranking.group);
      expect(Math.abs((held?.value ?? 0) - decision.ranking.value), motor.tag).toBeLessThan(NOISE);
    }
    const pairs = [
      [each.value, option?.figures.net_present_value?.value],
      [each.moneySaved, option?.figures.money_saved?.value],
      [each.payback, option?.figures.simple_payback?.value],
      [each.odds, option?.probabilityWithinPolicy],
      [each.cost, option?.figures.cost.value],
    ] as const;
    for (const [a, b] of pairs) {
      expect(a === undefined, motor.tag).toBe(b === undefined);
      if (a !== undefined && b !== undefined) expect(Math.abs(a - b), motor.tag).toBeLessThanOrEqual(NOISE + 1e-8 * Math.abs(b));
    }
  }
}

describe.each(STUDIES)('ranking again under $name', ({ settings }) => {
  const study = studyOf(settings);
  const base = evaluateAll(FLEET, study);
  const fleet = rerankable(asText(base.map(movableOf)), study.settings);
  const neutral = neutralMoves(study.settings);

  it('is the stored ranking when nothing is moved', () => {
    expectSame(rerank(fleet, neutral), base, true);
  });

  // Each lever is moved in the sheet, the prices or the settings, and every motor evaluated again from its plate and readings.
  const cases: readonly [string, Partial<Moves>, (question: Question) => Question][] = [
    ['energy half as dear again', { energyPrice: 1.5 }, (question) => moved(question, 'energy-price', 1.5)],
    ['half the hours', { hours: 0.5 }, (question) => moved(question, 'hours', 0.5)],
    ['all bought for 30 % less', { cost: 0.7 }, (question) => moved(question, 'cost', 0.7)],
    ['a rate of 15 %', { discountRate: 0.15 }, (question) => moved(question, 'discount-rate', 0.15)],
    [
      'all at once',
      { energyPrice: 0.8, hours: 0.9, cost: 1.2, discountRate: 0.03 },
      (question) => moved(moved(moved(moved(question, 'energy-price', 0.8), 'hours', 0.9), 'cost', 1.2), 'discount-rate', 0.03),
    ],
  ];
  it.each(cases)('is that of a new evaluation with %s', (_name, moves, change) => {
    const again = FLEET.map((motor) => {
      const question = change({ motor, study });
      return evaluateMotor(question.motor, question.study);
    });
    expectSame(rerank(fleet, { ...neutral, ...moves }), again, false);
  });
});

describe('moves', () => {
  const study = studyOf();
  const fleet = rerankable(evaluateAll(FLEET, study).map(movableOf), study.settings);
  const neutral = neutralMoves(study.settings);
  const sum = (moves: Partial<Moves>) =>
    rerank(fleet, { ...neutral, ...moves }).filter(({ decision }) => decision.action === 'replace' && decision.timing === 'now')
      .length;

  it('dearer energy, more hours and cheaper motors never replace fewer motors now', () => {
    for (const lever of ['energyPrice', 'hours'] as const) expect(sum({ [lever]: 1.3 })).toBeGreaterThanOrEqual(sum({}));
    expect(sum({ cost: 0.7 })).toBeGreaterThanOrEqual(sum({}));
    expect(sum({ energyPrice: 3 })).toBeGreaterThan(sum({}));
  });

  it('lets no motor run longer than a leap year', () => {
    const once = rerank(fleet, { ...neutral, hours: 4 });
    const more = rerank(fleet, { ...neutral, hours: 40 });
    const most = fleet.motors.map(({ hours }) => hours ?? 0);
    for (const { index, moneySaved } of once)
      if ((most[index] ?? 0) >= 8784 / 4) expect(more.find((each) => each.index === index)?.moneySaved).toBe(moneySaved);
  });

  it('ranks an empty fleet', () => {
    expect(rerank(rerankable([], study.settings), neutral)).toEqual([]);
  });
});
