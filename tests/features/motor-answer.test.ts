import { describe, expect, it } from 'vitest';
import { evaluateMotor, type Motor, motorResult, type UnrankedMotor } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { type AnswerInput, answerOf, callsOf } from '@/lib/features/motor/answer';
import { alsoRead, readBy } from '@/lib/features/motor/reading-words';
import { figureWords, ratingWords } from '@/lib/features/motor/words';
import { defaultSettings } from '@/lib/features/study/settings';
import { formatFigure } from '@/lib/platform/format';
import { loadTables } from '@/lib/reference/load';

const fleet = new Map(generateDemo({ asOf: '2026-01-01' }).map(({ motor }) => [motor.tag, motor]));
const { tables, prices } = loadTables();
const context = { settings: { ...defaultSettings(), asOf: '2026-01-01' }, tables, prices };

function motorOf(tag: string): Motor {
  const motor = fleet.get(tag);
  if (!motor) throw new Error(`${tag} is in the demonstration`);
  return motor;
}

function inputOf(motor: Motor, stored = motor.readings.length): AnswerInput {
  const evaluation = evaluateMotor(motor, context);
  const { currency, horizonYears } = context.settings;
  return { motor, result: motorResult(evaluation), calls: callsOf(evaluation), stored, currency, horizonYears };
}

const answer = (tag: string) => answerOf(inputOf(motorOf(tag)));
const decided = (result: UnrankedMotor) => result.options.find((option) => option.id === result.decision.option);
const amount = (value: number) => Math.round(value).toLocaleString('en-US');

describe('the answer of a motor', () => {
  it('of one that pays at once: cost, saving with its interval, payback', () => {
    const option = decided(inputOf(motorOf('N-1')).result);
    if (!option?.money_saved || !option.simple_payback) throw new Error('it pays');
    const saved = formatFigure(option.money_saved).text;
    expect(saved).toMatch(/ ± /);
    expect(answer('N-1')).toBe(
      `Replace it now: this costs ${amount(option.cost)}\u202fUSD and saves ${saved} a year, back in ${formatFigure({ ...option.simple_payback, unit: 'years' }).text}.`,
    );
    expect(answer('C-7')).toMatch(/^Replace it now by a smaller motor of \d+\u202fhp: /);
  });

  it('of a failed one: against the repair, so that difference, saving and payback agree', () => {
    const { result } = inputOf(motorOf('N-5'));
    const option = decided(result);
    const repaired = result.options.find((other) => other.action === 'repair');
    const more = (option?.cost ?? 0) - (repaired?.cost ?? 0);
    expect(answer('N-5')).toMatch(/^It has failed: replace it rather than repair it\./);
    expect(answer('N-5')).toContain(`${amount(more)}\u202fUSD more than the repair`);
    expect(more / (option?.money_saved?.value ?? 0)).toBeCloseTo(option?.simple_payback?.value ?? 0, 2);
    expect(answer('N-5')).not.toContain('assumed');
    expect(answer('N-6')).toContain('the figures rest on an assumed one');
  });

  it('of one that condition sends to the repair: which indicator, and no word of money that it buys', () => {
    expect(answer('D-6')).toMatch(/^Repair it now: the winding resistance unbalance is beyond its limit\. The work costs/);
    expect(answer('E-5')).toMatch(/are beyond their limits/);
    expect(answer('Q-1')).toMatch(/^Do not start it: the insulation resistance at 40 °C is beyond its limit\. Repair it now\./);
    for (const tag of ['D-6', 'Q-1', 'J-1']) expect(answer(tag)).not.toMatch(/saves|−/);
  });

  it('of one that is not known: measure first, and whether it ever was', () => {
    expect(answer('K-3')).toBe('Measure it first: it was never measured, so nobody knows its load.');
    expect(answer('B-2')).toMatch(/^Measure it again first: its one reading gives no usable load\.$/);
    const left = { ...motorOf('B-4'), readings: [] };
    expect(answerOf(inputOf(left, 1))).toBe('Measure it again first: all its readings are left out.');
  });

  it('of one that uses nothing, and of one without hours', () => {
    expect(answer('X-1')).toBe('A spare: it uses no energy, so there is nothing to decide.');
    expect(answer('X-2')).toBe('Retired: it uses no energy, so there is nothing to decide.');
    expect(answer('X-3')).toMatch(/^Keep it for now: its hours a year are not known/);
    expect(answer('U-1')).toBe('Keep it: no other motor pays within the policy.');
  });

  it('names one thing to do for every motor of the demonstration, in whole sentences and without absent numbers', () => {
    for (const motor of fleet.values()) {
      const text = answerOf(inputOf(motor));
      expect(text, motor.tag).toMatch(
        /^(Replace|Repair|Keep|Measure|Make the checks|It has failed|A spare|Retired|Do not start|Have it|The )/,
      );
      expect(text, motor.tag).toMatch(/\.$/);
      expect(text, motor.tag).not.toMatch(/undefined|NaN|—|\.\./);
    }
  });
});

describe('words', () => {
  it('write a rating as catalogues do, in the unit of the plate', () => {
    // 300 hp are 223.7 kW (1 hp = 0.7457 kW, IEEE 100).
    expect(ratingWords(223.7, 'hp')).toBe('300\u202fhp');
    expect(ratingWords(223.7, 'kW')).toBe('224\u202fkW');
    expect(ratingWords(0.5593, 'hp')).toBe('0.75\u202fhp');
  });

  it('name what was read beside power, and by whom, with units', () => {
    const motor = motorOf('Q-1');
    const reading = motor.readings.at(-1);
    if (!reading) throw new Error('it was read');
    const also = alsoRead(motor, reading);
    expect(also).toContain('insulation resistance 1.6\u202fMΩ');
    expect(also.join()).not.toMatch(/input power|voltage ab|undefined/);
    expect(readBy({ ...reading, takenBy: 'A', instrument: 'B', note: undefined })).toBe('A, B');
  });
});

describe('the words of a figure', () => {
  it('name an option by what it does, and other figures by their parts', () => {
    const titles = new Map([['replace-now-18.6-premium', 'Replace by 25 hp premium, now']]);
    expect(figureWords('options.replace-now-18.6-premium.simple_payback', titles)).toBe(
      'simple payback of “Replace by 25 hp premium, now”',
    );
    expect(figureWords('options.repair-now.cost', titles)).toBe('cost of “repair-now”');
    expect(figureWords('losses.friction_windage', titles)).toBe('losses: friction windage');
    expect(figureWords('efficiency', titles)).toBe('efficiency');
  });
});
