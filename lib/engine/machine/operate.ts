import { PARAMETERS } from '../circuit/parameters';
import { ALL_ROWS, BALANCED_ROWS, OF_POINT, POINT_COLUMNS, POINT_SLOPES, pointSlopes } from '../circuit/point-slopes';
import { type Solution, solveAtPower, type Terminals } from '../circuit/solve';
import type { MotorScope } from '../context';
import { apply, leaf, solved } from '../formula/apply';
import * as M from '../generated/machine';
import * as N from '../generated/nameplate';
import { EXACT, Later, PartsTable, type Quantity, scaleParts } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';
import { doubles } from '../room';
import type { MachineModel } from './fit';
import type { Machine, OperatingPoint } from './model';
import { HEAT } from './predict';

/** Conditions of an operating point beside its load. */
export interface Conditions {
  /** Terminal voltage over rated voltage; 1 when not known. */
  readonly voltageRatio: Quantity<'1'>;
  /** Winding temperature in °C when it was measured (resistance or embedded detector). */
  readonly windingTemperature?: Quantity<'K'> | undefined;
  /** Ambient temperature in °C; 25 assumed when not measured. */
  readonly ambient?: Quantity<'K'> | undefined;
  /** Supply frequency over rated frequency; 1 when not given. */
  readonly frequencyRatio?: number | undefined;
  /** Negative-sequence voltage over rated voltage; 0 when not given. */
  readonly negativeSequence?: number | undefined;
  /** What a fit found the winding to be hotter than reckoned, in units of {@link HEAT} K. */
  readonly heat?: Quantity<'1'> | undefined;
  /** Loss that the waveform of the supply adds: counted with the stray-load loss. */
  readonly extraLoss?: Quantity<'kW'> | undefined;
}

/** Ambient temperature where none was read: 25 °C with 6 K of doubt (common practice). */
export function assumedAmbient(scope: MotorScope): Quantity<'K'> {
  return leaf(scope, {
    value: 25,
    unit: 'K',
    label: 'ambient temperature, °C',
    origin: 'assumed',
    source: 'common practice: 25 °C where no ambient was read',
    doubts: [{ id: 'ambient', label: 'ambient temperature assumed', u: 6 }],
  });
}

/** How much hotter or cooler than reckoned winding and rotor may be, K: reckoned from ambient, or from a measured winding (common practice). */
const HEAT_RECKONED = 8;
const HEAT_MEASURED = 4;

/** The unknown heat of a reading as a quantity around zero, in units of {@link HEAT} K. */
export function heatOf(scope: MotorScope, row: number, windingMeasured: boolean): Quantity<'1'> {
  return leaf(scope, {
    value: 0,
    unit: '1',
    label: 'winding and rotor hotter than reckoned, in tens of kelvins',
    origin: 'assumed',
    source: 'common practice: 8 K where the temperature is reckoned, 4 K where the winding was measured',
    doubts: [
      {
        id: `row ${row}:heat`,
        label: 'temperature of winding and rotor',
        u: (windingMeasured ? HEAT_MEASURED : HEAT_RECKONED) / HEAT,
      },
    ],
  });
}

/**
 * Losses, input, efficiency, speed and current of a machine at a load.
 *
 * Units: load fraction 1 = rated output; losses in kW, current in A. The doubts of the machine's parameters and of the conditions are
 * carried to first order through the solved circuit.
 * Valid for: free running up to the breakdown torque; `undefined` beyond it.
 * Source: the exact per-phase circuit, see {@link solveAtPower}; losses as IEEE 112-2017 clause 5 and IEC 60034-2-1 clause 6 name them.
 */
export function operatingPoint(
  scope: MotorScope,
  machine: Machine,
  loadFraction: Quantity<'1'>,
  conditions: Conditions,
): OperatingPoint | undefined {
  const { plate, model } = machine;
  const ambient = conditions.ambient ?? assumedAmbient(scope);
  const found = solveWithDoubt(machine, loadFraction, conditions, ambient);
  if (!found) return undefined;
  const { base, slopes, doubts } = found;
  const inputs = scope.trace ? inputsOf(model, loadFraction, conditions, ambient) : {};
  const figure = <U extends Unit>(of: keyof typeof OF_POINT, unit: U, scale: number, what: Statement): Quantity<U> => {
    const quantity = new Later(unit, base[of] * scale, () => doubts().sum(slopes(), OF_POINT[of] * POINT_COLUMNS, scale));
    if (!scope.trace) return quantity;
    const source = 'exact per-phase circuit at the terminal voltage';
    return solved(scope, quantity, { ...what, residual: base.residual, source }, inputs);
  };
  const kw = model.base.powerKw;
  const stator = figure('stator', 'kW', kw, STATEMENTS.stator);
  const rotor = figure('rotor', 'kW', kw, STATEMENTS.rotor);
  const core = figure('core', 'kW', kw, STATEMENTS.core);
  const frictionWindage = figure('friction', 'kW', kw, STATEMENTS.friction);
  const strayOfSine = figure('stray', 'kW', kw, STATEMENTS.stray);
  const { extraLoss } = conditions;
  const stray = extraLoss ? apply(scope, M.stray_with_extra_loss, { stray: strayOfSine, extra_loss: extraLoss }) : strayOfSine;
  const slip = figure('slip', '1', 1, STATEMENTS.slip);
  const shaftPower = apply(scope, M.shaft_power_at_load, { load_fraction: loadFraction, rated_power: plate.ratedPower });
  const total = apply(scope, M.total_loss, { stator, rotor, core, friction_windage: frictionWindage, stray });
  const frequency = conditions.frequencyRatio ?? 1;
  const synchronousSpeed: Quantity<'r/min'> =
    frequency === 1 ? plate.synchronousSpeed : { unit: 'r/min', value: plate.synchronousSpeed.value * frequency, parts: EXACT };
  return {
    loadFraction,
    shaftPower,
    slip,
    losses: { stator, rotor, core, frictionWindage, stray, total },
    unbalanceLoss: conditions.negativeSequence ? figure('unbalance', 'kW', kw, STATEMENTS.unbalance) : undefined,
    extraLoss,
    current: figure('current', 'A', model.base.currentA, STATEMENTS.current),
    powerFactor: figure('powerFactor', '1', 1, STATEMENTS.powerFactor),
    windingTemperature: figure('winding', 'K', 1, STATEMENTS.winding),
    inputPower: apply(scope, M.input_power, { shaft_power: shaftPower, total_loss: total }),
    efficiency: apply(scope, M.efficiency, { shaft_power: shaftPower, total_loss: total }),
    speed: apply(scope, N.speed_from_slip, { synchronous_speed: synchronousSpeed, slip }),
  };
}

/**
 * A solved point with its derivatives and the doubts of what it hangs on, column by column; both are worked out when first needed, which for
 * many points is never.
 */
interface SolvedPoint {
  readonly base: Solution;
  readonly slopes: () => Float64Array;
  readonly doubts: () => PartsTable;
}

function solveWithDoubt(
  { model }: Machine,
  loadFraction: Quantity<'1'>,
  conditions: Conditions,
  ambient: Quantity<'K'>,
  rows?: readonly number[],
): SolvedPoint | undefined {
  const at: Terminals = {
    load: loadFraction.value,
    voltage: conditions.voltageRatio.value,
    frequency: conditions.frequencyRatio ?? 1,
    ambient: ambient.value,
    winding: conditions.windingTemperature?.value,
    hotter: (conditions.heat?.value ?? 0) * HEAT,
    negativeSequence: conditions.negativeSequence ?? 0,
    near: undefined,
  };
  const base = solveAtPower(model.circuit, at);
  if (!base) return undefined;
  let slopes: Float64Array | undefined;
  let doubts: PartsTable | undefined;
  return {
    base,
    slopes: () => {
      if (!slopes) {
        slopes = doubles(POINT_SLOPES);
        pointSlopes(model.circuit, model.slopes(), at, base, slopes, rows ?? (at.negativeSequence ? ALL_ROWS : BALANCED_ROWS));
      }
      return slopes;
    },
    doubts: () => {
      doubts ??= new PartsTable([
        ...model.parameters.map(({ parts }) => parts),
        loadFraction.parts,
        conditions.voltageRatio.parts,
        (conditions.windingTemperature ?? ambient).parts,
        conditions.heat ? scaleParts(conditions.heat.parts, HEAT) : EXACT,
      ]);
      return doubts;
    },
  };
}

const SLIP_ALONE = [OF_POINT.slip] as const;

/** Slip alone at a load: what meeting a load's torque asks for; `undefined` beyond the breakdown torque. */
export function slipAtLoad(
  scope: MotorScope,
  machine: Machine,
  loadFraction: Quantity<'1'>,
  conditions: Conditions,
): Quantity<'1'> | undefined {
  const ambient = conditions.ambient ?? assumedAmbient(scope);
  const found = solveWithDoubt(machine, loadFraction, conditions, ambient, SLIP_ALONE);
  if (!found) return undefined;
  const { base, slopes, doubts } = found;
  return new Later('1', base.slip, () => doubts().sum(slopes(), OF_POINT.slip * POINT_COLUMNS, 1));
}

interface Statement {
  readonly label: string;
  readonly tex: string;
}

const STATEMENTS = {
  stator: { label: 'Stator loss', tex: 'P_1 = 3 I_1^2 R_1(t)' },
  rotor: { label: 'Rotor loss', tex: 'P_2 = 3 I_2^2 R_2(t) = s\\, P_\\delta' },
  core: { label: 'Core loss', tex: 'P_{fe} = P_{fe,r} (E/E_r)^2' },
  friction: { label: 'Friction and windage', tex: 'P_{fw} = P_{fw,r} (n/n_r)^2' },
  stray: { label: 'Stray-load loss', tex: 'P_{LL} = P_{LL,r} (I_2/I_{2,r})^2' },
  unbalance: { label: 'Loss by unbalance of the supply', tex: "P_u = 3 I_-^2 (R_1 + R_2'')" },
  slip: { label: 'Slip', tex: 'P + P_{fw} + P_{LL} = 3 I_2^2 R_2 \\frac{1-s}{s}' },
  current: { label: 'Line current', tex: '\\underline{I}_1 = \\underline{I}_2 + \\underline{I}_m + \\underline{I}_{fe}' },
  powerFactor: { label: 'Power factor', tex: '\\cos\\varphi = \\frac{P_{in}}{3 V I_1}' },
  winding: { label: 'Winding temperature, °C', tex: 't = t_a + \\Delta t_r \\frac{\\Sigma P}{\\Sigma P_r}' },
} as const satisfies Record<string, Statement>;

function inputsOf(
  model: MachineModel,
  loadFraction: Quantity<'1'>,
  conditions: Conditions,
  ambient: Quantity<'K'>,
): Readonly<Record<string, Quantity>> {
  const inputs: Record<string, Quantity> = { load_fraction: loadFraction, voltage_ratio: conditions.voltageRatio };
  if (conditions.windingTemperature) inputs.winding_temperature = conditions.windingTemperature;
  else inputs.ambient = ambient;
  if (conditions.heat) inputs.heat = conditions.heat;
  PARAMETERS.forEach((name, k) => {
    const parameter = model.parameters[k];
    if (parameter) inputs[name.replaceAll('-', '_')] = parameter;
  });
  return inputs;
}
