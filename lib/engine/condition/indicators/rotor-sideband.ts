import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Plate } from '../../motor';
import type { Finding } from '../../quantity/finding';
import { exact, type Quantity } from '../../quantity/quantity';
import { CONDITION } from '../findings';
import type { Indicator, IndicatorInput, Judgement } from '../indicator';
import { bandAt, exceeds, limitOf, limitRow } from '../limit';
import { type Neighbours, sidebandNeighbours } from '../lines/sideband-neighbours';
import { INSTRUMENT, read, words } from './shared';
import { signatureGate } from './signature-gate';

/** The correction to full load leaves out inertia and interbar currents, and is not used below this load fraction (own derivation). */
const CORRECTION_FROM = 0.4;

/** Bars that a sideband level at full load speaks of. `level` in dB below the line component, positive. */
function estimatedBars(scope: MotorScope, level: Quantity<'dB'>, bars: number, polePairs: number): Quantity<'1'> {
  return apply(scope, C.broken_bars, {
    bars: exact(bars, '1'),
    level,
    decade: exact(20, 'dB'),
    pole_pairs: exact(polePairs, '1'),
  });
}

/**
 * Pole-pass sidebands of the rotor cage, corrected to full load; with a known bar count as estimated broken bars.
 * Gate: not below half load. An estimated count, a single sideband, or one that cannot be told from another line of the drive train goes
 * no further than `near`.
 * Source: Thomson and Fenger 2001 (from memory) for the bars; correction by own derivation; bands of bars our own scale.
 */
export const rotorSideband: Indicator = {
  id: 'rotor-sideband',
  title: 'Rotor cage',
  needs: ['rotor_sideband_db'],
  limits: ['E1a', 'E1b', 'bars-no-sign', 'bars-likely', 'sideband-no-sign', 'sideband-likely'],
  present: ({ reading }) => reading.rotorSidebandDb !== undefined && reading.rotorSidebandDb > 0,
  judge(scope, input) {
    const { reading, motor, machine, loadFraction } = input;
    if (reading.rotorSidebandDb === undefined) return { value: undefined, findings: [] };
    const level = read(scope, {
      value: reading.rotorSidebandDb,
      unit: 'dB',
      label: 'pole-pass sidebands, dB below the line',
      row: reading.row,
      error: INSTRUMENT.levelDb,
      id: 'sideband',
    });
    const bars = motor.plate.rotorBars;
    const gate = signatureGate(scope, loadFraction, 'rotor sideband', CORRECTION_FROM);
    const judged =
      bars === undefined
        ? byLevel(scope, atFullLoad(scope, input, level))
        : byBars(scope, atFullLoad(scope, input, level), bars, machine.plate.poles / 2);
    const { value, band, margin, limit, source, status, findings: own } = judged;
    if (!gate.open) return { value: level, limit, source, status, findings: gate.findings };
    const neighbours = sidebandNeighbours(scope, input);
    const capped = caps(motor.plate, reading.rotorSidebandSides === 'one', neighbours);
    const final = capped.length > 0 && band === 'beyond' ? 'near' : band;
    const findings = [...gate.findings, ...own, ...capped];
    return {
      value,
      band: final,
      margin,
      limit,
      source,
      status,
      findings,
      callsFor: final === 'beyond' ? 'rewind' : undefined,
      weight: gate.weight,
      sharedWith: neighbours?.causes,
    };
  },
};

/** The level at full load; as read where the load is full, or where nobody knows it. */
function atFullLoad(scope: MotorScope, { machine, loadFraction }: IndicatorInput, level: Quantity<'dB'>): Quantity<'dB'> {
  if (!loadFraction || loadFraction.value >= 1 || loadFraction.value < CORRECTION_FROM) return level;
  const correction = apply(scope, C.sideband_correction, {
    decade: exact(20, 'dB'),
    load_fraction: loadFraction,
    magnetising_share: machine.plate.magnetisingShare,
  });
  return apply(scope, C.sideband_at_full_load, { level, correction });
}

/** Judged by estimated bars. */
function byBars(scope: MotorScope, level: Quantity<'dB'>, count: number, polePairs: number): Judgement {
  const noSign = limitOf(scope, 'bars-no-sign');
  const likely = limitOf(scope, 'bars-likely');
  const value = estimatedBars(scope, level, count, polePairs);
  const judged = bandAt(value, { ...likely, unit: 'bars' }, 'rotor cage', {
    beyond: !exceeds(likely.value, value.value),
    near: !exceeds(noSign.value, value.value),
  });
  const formula = limitRow(scope, 'E2');
  return {
    ...judged,
    value,
    limit: `no sign below ${words(noSign.value)} bars, likely fault from ${words(likely.value)} bars`,
    source: `${formula.source}; ${likely.source}`,
    // The weaker of the two: bands of our own stand on a formula that was remembered.
    status: formula.status,
  };
}

/** Judged by general levels, for want of a bar count. */
function byLevel(scope: MotorScope, value: Quantity<'dB'>): Judgement {
  const noSign = limitOf(scope, 'sideband-no-sign');
  const likely = limitOf(scope, 'sideband-likely');
  const judged = bandAt(value, likely, 'rotor cage', {
    beyond: exceeds(likely.value, value.value),
    near: exceeds(noSign.value, value.value),
  });
  return {
    band: judged.band,
    margin: judged.margin,
    findings: [...judged.findings, CONDITION.make('bars-unknown', {})],
    value,
    limit: `no sign from ${words(noSign.value)} dB down, likely fault below ${words(likely.value)} dB, at full load`,
    source: likely.source,
    status: likely.status,
  };
}

/** What keeps the verdict from going further than `near`. */
function caps(plate: Plate, oneSide: boolean, neighbours: Neighbours | undefined): Finding[] {
  const findings: Finding[] = [];
  if (neighbours)
    findings.push(
      CONDITION.make('sideband-not-unique', { lines: neighbours.meanings.join('; '), resolution: neighbours.resolutionHz }),
    );
  if (oneSide) findings.push(CONDITION.make('sideband-one-side', {}));
  const sure = plate.rotorBarsSource === 'counted' || plate.rotorBarsSource === 'manufacturer';
  if (plate.rotorBars !== undefined && !sure) findings.push(CONDITION.make('bars-estimated', { bars: plate.rotorBars }));
  return findings;
}
