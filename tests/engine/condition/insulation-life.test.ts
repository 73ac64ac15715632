import { describe, expect, it } from 'vitest';
import { evaluateMotor, type Motor, motorResult } from '@/lib/engine';
import { derive } from '@/lib/engine/explain/derivation';
import { figuresOf } from '@/lib/engine/explain/figures';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const { tables, prices } = loadTables();
const study = { settings: defaultSettings(), tables, prices };
const PATH = 'condition.indicators.insulation-life';
const fleet: readonly Motor[] = generateDemo({ asOf: study.settings.asOf }).map(({ motor }) => motor);

const found = fleet.flatMap((motor) => {
  const indicator = motorResult(evaluateMotor(motor, study)).condition.indicators.find(({ id }) => id === 'insulation-life');
  const { margin, value } = indicator ?? {};
  // Of a temperature known to a kelvin or so the limits are all but even, and go without saying.
  return margin && value && (value.low !== undefined || margin.u > 2) ? [{ motor, value, margin }] : [];
});

describe('the limits of a life that halves for each 10 K', () => {
  it('lie above nothing, and as far apart as the limits of the temperature are (US DOE Motor Systems Tip Sheet 3: halves for each 10 K)', () => {
    expect(found.length).toBeGreaterThan(20);
    for (const { value, margin } of found) {
      const { low = Number.NaN, high = Number.NaN } = value;
      expect(low).toBeGreaterThan(0);
      // Ten kelvins up halve it, ten down double it: as many halvings below the value as doublings above.
      expect(Math.log2(high / value.value)).toBeCloseTo(Math.log2(value.value / low), 6);
      // The margin is the same doubt on the scale of temperature; 1.96 of it on each side (JCGM 100, table G.1).
      expect(10 * Math.log2(high / low)).toBeCloseTo(2 * 1.96 * margin.u, 2);
    }
  });

  it('stand in the derivation as in the results', () => {
    const [one] = found;
    if (!one) throw new Error('no motor has a life of its insulation');
    const evaluation = evaluateMotor(one.motor, study, new Map());
    const quantity = figuresOf(evaluation).get(PATH);
    const limits = quantity && derive(evaluation, PATH, quantity)?.limits;
    expect(limits?.low).toBeCloseTo(one.value.low ?? Number.NaN, 6);
    expect(limits?.high).toBeCloseTo(one.value.high ?? Number.NaN, 6);
  });
});
