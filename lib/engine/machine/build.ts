import { AT } from '../circuit/parameters';
import type { MotorScope } from '../context';
import type { Fit } from '../estimate/least-squares';
import { solved } from '../formula/apply';
import type { KnownPlate } from '../motor';
import { PLATE } from '../nameplate/findings';
import { typicalSlip } from '../nameplate/speed';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity, scaleParts } from '../quantity/quantity';
import { copied } from '../room';
import { doubtsOf, type Evidence, fitEvidence, type MachineModel, modelOf } from './fit';
import { keptFit } from './kept-fits';
import type { CompletedPlate, Machine } from './model';
import { logarithm, observation } from './observation';
import { operatingPoint } from './operate';
import { baseCurrent, plateEvidence } from './plate-evidence';

/** A machine fitted to its plate alone, with what it was fitted to. */
export interface PlateMachine {
  readonly machine: Machine;
  readonly evidence: Evidence;
  readonly fit: Fit;
  readonly findings: readonly Finding[];
}

/**
 * The machine that a plate, tests written on it and what is typical describe: the weighted least-squares fit of the circuit's parameters.
 *
 * Where stamps and typical values determine no more than the parameters, the rated point is reproduced exactly; stamps that contradict each
 * other share the misfit by their doubts.
 * Source: JCGM 102 for the fit; the circuit as in {@link circuitFromRatedPoint}.
 */
export function buildMachine(scope: MotorScope, plate: KnownPlate, completed: CompletedPlate, prefix: string): PlateMachine {
  const { evidence: full, findings } = plateEvidence(scope, plate, completed, prefix);
  const base = { powerKw: completed.ratedPower.value, currentA: baseCurrent(completed) };
  const fitted = (tried: Evidence, said: readonly Finding[]): PlateMachine | undefined => {
    // A motor on offer is the same for many that it may replace.
    const fit = prefix === '' ? fitEvidence(tried) : keptFit(tried, fitEvidence);
    const model = fit && modelOf(scope, doubtsOf(fit, tried.observations), tried.rotorShare, base, prefix);
    const machine = model && machineOf(scope, completed, model, prefix);
    return fit && machine ? { machine, evidence: tried, fit, findings: said } : undefined;
  };
  const found = fitted(full, findings);
  if (found) return found;
  // Stamps so far apart that no circuit fits them: what is typical describes the machine, and the plate is named. A code letter would leave no
  // leakage but its own and a stamped power factor no magnetising current, so that neither is looked at.
  const named = [...findings, PLATE.make('plate-fits-no-machine', {})];
  const { observations: bare } = plateEvidence(
    scope,
    { ...plate, codeLetter: undefined },
    { ...completed, origins: { ...completed.origins, powerFactor: 'assumed' } },
    prefix,
  ).evidence;
  const typical: Evidence = { ...full, observations: bare.filter(({ evidence }) => !evidence).concat(essential(bare)) };
  const machine = fitted(typical, named) ?? fitted(withTypicalSlip(scope, typical, completed, prefix), named);
  if (!machine) throw new Error('no circuit fits a typical motor of this rating');
  return machine;
}

/** Losses and slip are always needed, stamped or not. */
function essential(observations: Evidence['observations']): Evidence['observations'] {
  return observations.filter(
    ({ evidence, target }) =>
      evidence && (target.of === 'rated-loss' || (target.of === 'parameter' && target.index !== AT.leakage)),
  );
}

/** The evidence with the slip that the loss would bring in an ordinary motor, where a stamped one asks for more loss than there is. */
function withTypicalSlip(scope: MotorScope, evidence: Evidence, completed: CompletedPlate, prefix: string): Evidence {
  const { slip } = typicalSlip(scope, { ...completed, prefix });
  const start = copied(evidence.start);
  start[AT.slip] = Math.log(slip.value);
  return {
    ...evidence,
    start,
    observations: evidence.observations.map((each) =>
      each.target.of === 'parameter' && each.target.index === AT.slip
        ? observation('typical_slip', false, each.target, logarithm(scope, slip, 1, `${prefix}rated slip`))
        : each,
    ),
  };
}

/** A machine with its rated losses and its plate as the fit finds them. */
export function machineOf(
  scope: MotorScope,
  completed: CompletedPlate,
  model: MachineModel,
  prefix: string,
): Machine | undefined {
  const log = model.parameters[AT.rise];
  const logSlip = model.parameters[AT.slip];
  if (!log || !logSlip) return undefined;
  const rise = Math.exp(log.value);
  const ratedRise: Quantity<'K'> = solved(
    scope,
    { unit: 'K', value: rise, parts: scaleParts(log.parts, rise) },
    { label: `${prefix}rise at rated load`, tex: '\\Delta t_r = e^{\\theta_t}', residual: 0, source: 'Parameter of the machine' },
    { logarithm: log },
  );
  const shell: Machine = { plate: completed, model, ratedRise, rated: NO_LOSSES };
  const point = operatingPoint(scope, shell, exact(1, '1'), {
    voltageRatio: exact(1, '1'),
    ambient: exact(25, 'K'),
  });
  if (!point) return undefined;
  return {
    model,
    ratedRise,
    rated: point.losses,
    plate: {
      ...completed,
      ratedSpeed: point.speed,
      ratedSlip: point.slip,
      efficiency: point.efficiency,
      powerFactor: point.powerFactor,
      ratedCurrent: point.current,
      magnetisingShare: magnetisingShare(scope, model),
    },
  };
}

const NOTHING = exact(0, 'kW');
const NO_LOSSES = {
  stator: NOTHING,
  rotor: NOTHING,
  core: NOTHING,
  frictionWindage: NOTHING,
  stray: NOTHING,
  total: NOTHING,
} as const;

/** Magnetising current over rated current, both of the fitted circuit; its doubt is that of the magnetising current alone. */
function magnetisingShare(scope: MotorScope, model: MachineModel): Quantity<'1'> {
  const { magnetising, current } = model.circuit;
  const value = magnetising / current;
  const log = model.parameters[AT.magnetising];
  const quantity: Quantity<'1'> = { unit: '1', value, parts: scaleParts(log?.parts ?? { at: [], by: [] }, value) };
  return solved(
    scope,
    quantity,
    { label: 'magnetising current over rated current', tex: 'i_0 = I_m / I_r', residual: 0, source: 'Fitted circuit' },
    log ? { logarithm: log } : {},
  );
}
