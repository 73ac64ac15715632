import { describe, expect, it } from 'vitest';
import { evaluateMotor, motorResult } from '@/lib/engine';
import type { Step } from '@/lib/engine/formula/apply';
import type { Quantity } from '@/lib/engine/quantity/quantity';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

/** With a trace nothing is kept: each motor on offer is worked out for the motor that asks. That is what kept ones are compared with. */
describe('motors on offer that are kept for a study', () => {
  const reference = loadTables();
  const studyOf = () => ({ settings: defaultSettings(), tables: reference.tables, prices: reference.prices });
  const motors = generateDemo({ asOf: '2026-01-01', seed: 4711 })
    .map(({ motor }) => motor)
    .slice(0, 60);

  it('give every motor the figures, doubts and sources that it has when they are worked out for it alone', () => {
    const study = studyOf();
    let offered = 0;
    for (const motor of motors) {
      const kept = evaluateMotor(motor, study);
      const alone = evaluateMotor(motor, study, new Map<Quantity, Step>());
      offered += kept.options.filter(({ action }) => action === 'replace' || action === 'resize').length;
      // As text, since the results are to be the same to the last digit.
      expect(JSON.stringify(motorResult(kept))).toBe(JSON.stringify(motorResult(alone)));
      expect(kept.scope.sources.list).toEqual(alone.scope.sources.list);
    }
    expect(offered).toBeGreaterThan(motors.length);
  });

  it('do not depend on the motors evaluated before', () => {
    const forwards = studyOf();
    const backwards = studyOf();
    const one = motors.map((motor) => JSON.stringify(motorResult(evaluateMotor(motor, forwards))));
    const other = motors.toReversed().map((motor) => JSON.stringify(motorResult(evaluateMotor(motor, backwards))));
    expect(other.toReversed()).toEqual(one);
  });

  it('are worked out anew under other settings', () => {
    const study = studyOf();
    const nema = { ...study, settings: { ...study.settings, standards: 'nema' as const } };
    const iec = { ...study, settings: { ...study.settings, standards: 'iec' as const } };
    const efficiencies = (of: typeof study): (number | undefined)[] =>
      motors.flatMap((motor) => evaluateMotor(motor, of).options.map(({ nominalEfficiencyPct }) => nominalEfficiencyPct));
    const first = efficiencies(nema);
    efficiencies(iec);
    expect(efficiencies(nema)).toEqual(first);
    expect(efficiencies(iec)).not.toEqual(first);
  });
});
