import { COPPER } from '../circuit/copper';
import type { MotorScope } from '../context';
import type { KnownPlate } from '../motor';
import type { Figure } from '../result';
import { type Observation, observation, testedLogarithm } from './observation';

/** Base of power, kW, of current, A, and of impedance, Ω. */
export interface Bases {
  readonly powerKw: number;
  readonly currentA: number;
  readonly impedanceOhm: number;
}

/**
 * What a bench test measured of the machine, as observations that take the place of those by stamp and by what is typical.
 *
 * The efficiency is not among them: it is the rated loss of the plate's evidence. Core loss is that of running free at rated voltage, as the
 * no-load test finds it; under load it falls with the air-gap voltage. Doubts are those that the test itself carries.
 * Source: the sections of IEEE 112 and IEC 60034-2-1 that measure each loss.
 */
export function testEvidence(scope: MotorScope, plate: KnownPlate, bases: Bases): Observation[] {
  const { tested } = plate;
  if (!tested) return [];
  const { measured, name } = tested;
  const found: Observation[] = [];
  const say = (
    id: string,
    target: Observation['target'],
    what: string,
    figure: Figure | undefined,
    base: number,
    more = 0,
  ): void => {
    if (!figure || !(figure.value > 0)) return;
    const value = testedLogarithm(scope, figure.value / base, what, `bench test “${name}”`, {
      id: `bench:${id}`,
      label: `${what} by bench test`,
      u: Math.hypot(figure.u / figure.value, more),
    });
    found.push(observation(`tested_${id}`, true, target, value));
  };
  const at = measured.stator_resistance_temp;
  if (at)
    say(
      'resistance',
      { of: 'resistance', temperature: at.value },
      'stator resistance',
      // Between terminals stand two phases of a star.
      measured.stator_resistance,
      2 * bases.impedanceOhm,
      at.u / (COPPER + at.value),
    );
  if (measured.core && measured.friction_windage) {
    say('core', { of: 'free-core' }, 'core loss', measured.core, bases.powerKw);
    say('friction', { of: 'friction' }, 'friction and windage', measured.friction_windage, bases.powerKw);
  } else say('constant', { of: 'free-constant' }, 'core loss with friction and windage', measured.constant_loss, bases.powerKw);
  say('stray', { of: 'stray' }, 'stray-load loss', measured.stray_at_rated_load, bases.powerKw);
  say('no_load_current', { of: 'free-current', voltage: 1 }, 'no-load current', measured.no_load_current, bases.currentA);
  return found;
}
