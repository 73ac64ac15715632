import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import { exact, type Quantity } from '../../quantity/quantity';
import type { Band } from '../../result';
import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { read } from './shared';
import { signatureGate } from './signature-gate';

/** Levels at full load in place of a bar count: no sign from 54 dB down, likely fault below 45 dB (common practice; 45 dB from memory). */
const NO_SIGN_DB = 54;
const LIKELY_DB = 45;

/** Bands in estimated bars: no sign below a quarter, likely crack, joint or bar from a half on (own scale). */
const NO_SIGN_BARS = 0.25;
const LIKELY_BARS = 0.5;

/** Bars that a sideband level at full load speaks of. `level` in dB below the line component, positive. */
export function estimatedBars(scope: MotorScope, level: Quantity<'dB'>, bars: number, polePairs: number): Quantity<'1'> {
  return apply(scope, C.broken_bars, {
    bars: exact(bars, '1'),
    level,
    decade: exact(20, 'dB'),
    pole_pairs: exact(polePairs, '1'),
  });
}

/**
 * Pole-pass sidebands of the rotor cage, corrected to full load; with a known bar count as estimated broken bars.
 * Gate: not below half load. An estimated count or a single sideband goes no further than `near`.
 * Source: Thomson and Fenger 2001 (from memory) for the bars; correction by own derivation.
 */
export const rotorSideband: Indicator = {
  id: 'rotor-sideband',
  title: 'Rotor cage',
  needs: ['rotor_sideband_db'],
  limits: ['E1a', 'E1b', 'E2'],
  present: (reading) => reading.rotorSidebandDb !== undefined && reading.rotorSidebandDb > 0,
  judge(scope, { reading, motor, machine, loadFraction }) {
    const level = read(scope, {
      value: reading.rotorSidebandDb ?? 0,
      unit: 'dB',
      label: 'pole-pass sidebands, dB below the line',
      row: reading.row,
      errorPct: 3,
      id: 'sideband',
    });
    const source = scope.tables.limits.rows.find((row) => row.id === 'E2')?.source ?? '';
    const counted = motor.plate.rotorBars;
    const limit =
      counted === undefined
        ? `no sign from ${NO_SIGN_DB} dB down, likely fault below ${LIKELY_DB} dB, at full load`
        : `no sign below ${NO_SIGN_BARS} bars, likely fault from ${LIKELY_BARS} bars`;
    const base = {
      limit,
      source: counted === undefined ? 'common practice' : source,
      status: counted === undefined ? ('practice' as const) : ('memory' as const),
    };
    const gate = signatureGate(scope, loadFraction, 'rotor sideband');
    if (!gate.open || !loadFraction) return { ...base, value: level, findings: gate.findings };
    const correction = apply(scope, C.sideband_correction, {
      decade: exact(20, 'dB'),
      load_fraction: loadFraction,
      magnetising_share: machine.plate.magnetisingShare,
    });
    const atFullLoad = loadFraction.value >= 1 ? level : apply(scope, C.sideband_at_full_load, { level, correction });
    const findings = [...gate.findings];
    if (reading.rotorSidebandSides === 'one') findings.push(CONDITION.make('sideband-one-side', {}));
    let value: Quantity = atFullLoad;
    let band: Band;
    if (counted === undefined) {
      findings.push(CONDITION.make('bars-unknown', {}));
      band = atFullLoad.value >= NO_SIGN_DB ? 'within' : atFullLoad.value >= LIKELY_DB ? 'near' : 'beyond';
    } else {
      const bars = estimatedBars(scope, atFullLoad, counted, machine.plate.poles / 2);
      value = bars;
      band = bars.value < NO_SIGN_BARS ? 'within' : bars.value < LIKELY_BARS ? 'near' : 'beyond';
      if (motor.plate.rotorBarsSource !== 'counted' && motor.plate.rotorBarsSource !== 'manufacturer')
        findings.push(CONDITION.make('bars-estimated', { bars: counted }));
    }
    const capped =
      reading.rotorSidebandSides === 'one' ||
      (counted !== undefined && motor.plate.rotorBarsSource !== 'counted' && motor.plate.rotorBarsSource !== 'manufacturer');
    const final: Band = capped && band === 'beyond' ? 'near' : band;
    return { ...base, value, band: final, findings, callsFor: final === 'beyond' ? 'rewind' : undefined };
  },
};
