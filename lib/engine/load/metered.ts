import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as L from '../generated/load';
import * as N from '../generated/nameplate';
import type { CompletedPlate, Machine } from '../machine/model';
import type { Plate, Reading } from '../motor';
import type { Finding } from '../quantity/finding';
import { exact, type MeteredKind, type Quantity } from '../quantity/quantity';
import { sequenceMagnitudes } from '../quantity/sequence';
import type { Unit } from '../quantity/unit';
import { driveEfficiencyAtInput } from './drive';
import { LOAD } from './findings';
import { extraLoss, type SupplyLoss, supplyLoss } from './supply-loss';

/** A reading after the plausibility checks: what may be used of it, each value with its meter's doubt. */
export interface Metered {
  readonly row: number;
  readonly voltage?: Quantity<'V'> | undefined;
  readonly voltageRatio: Quantity<'1'>;
  /** The same where the motor runs at rated frequency, at which options are compared: behind a drive, that of rated flux. */
  readonly voltageRatioAtRatedFrequency: Quantity<'1'>;
  readonly current?: Quantity<'A'> | undefined;
  /** Input power less what the waveform of the supply adds to the losses: what a circuit on a sine would take. */
  readonly inputPower?: Quantity<'kW'> | undefined;
  readonly supplyLoss: SupplyLoss;
  readonly speed?: Quantity<'r/min'> | undefined;
  readonly synchronousSpeed: Quantity<'r/min'>;
  /** Supply over rated frequency. */
  readonly frequencyRatio: number;
  /** Negative-sequence voltage over rated voltage; 0 where the three were not read. */
  readonly negativeSequence: number;
  /** True where slip and current mean what they mean on a sinusoidal supply. */
  readonly onLine: boolean;
  readonly windingTemperature?: Quantity<'K'> | undefined;
  readonly ambient?: Quantity<'K'> | undefined;
  readonly findings: readonly Finding[];
}

/** A meter's value; its error is rectangular (GUM 4.3.7) and one for all readings by the same instrument. */
function meter<U extends Unit>(
  scope: MotorScope,
  given: { value: number; unit: U; what: string; reading: Reading; halfWidth: number; kind: MeteredKind },
): Quantity<U> {
  const { instrument } = given.reading;
  return leaf(scope, {
    value: given.value,
    unit: given.unit,
    label: given.what,
    origin: 'metered',
    source: `reading in row ${given.reading.row}`,
    doubts: [
      {
        id: `${instrument ?? 'meter'}:${given.kind}`,
        label: `${given.what}: class of the ${instrument ?? 'meter'}`,
        u: given.halfWidth / Math.sqrt(3),
        rectangular: true,
        meter: { instrument, reads: given.kind },
      },
    ],
  });
}

/** Checks one reading against the plate and turns what may be used into quantities. */
export function meterReading(
  scope: MotorScope,
  plate: Plate,
  machine: Pick<Machine, 'plate' | 'model'>,
  reading: Reading,
): Metered {
  const findings: Finding[] = [];
  const row = reading.row;
  const accuracy = scope.settings.accuracy;
  const driveFed = plate.driveFed === true || reading.readingsAt === 'drive-input' || reading.readingsAt === 'drive-output';
  const atOutput = reading.readingsAt === 'drive-output';
  const onLine = !driveFed || outputFrequency(reading);
  if (driveFed) findings.push(onLine ? LOAD.make('drive-fed-losses', { row }) : LOAD.make('drive-without-frequency', { row }));
  const usesMotorTerminals = !driveFed || atOutput;

  const voltage = usesMotorTerminals && !driveFed ? usableVoltage(scope, plate, reading, findings) : undefined;
  const current =
    usesMotorTerminals && reading.currentA !== undefined && reading.currentA > 0
      ? meter(scope, {
          value: reading.currentA,
          unit: 'A',
          what: 'line current',
          reading,
          kind: 'current',
          halfWidth: ((reading.currentAccuracyPct ?? accuracy.currentPct) / 100) * reading.currentA,
        })
      : undefined;
  const asRead = usablePower(scope, plate, machine, reading, { voltage, current }, findings);
  const added = supplyLoss(scope, plate, machine, reading, driveFed);
  const extra = extraLoss(added);
  // An input below the extra loss is below that of running free as well: it is found impossible as it stands.
  const power =
    asRead && extra && asRead.value > extra.value
      ? apply(scope, L.input_without_extra_loss, { input_power: asRead, extra_loss: extra })
      : asRead;
  const frequency = supplyFrequency(scope, machine, reading, driveFed, findings);
  const synchronousSpeed = apply(scope, N.synchronous_speed, { frequency, poles: exact(machine.plate.poles, 'pole') });
  const speed =
    onLine && plate.machineKind !== 'synchronous'
      ? usableSpeed(scope, plate, reading, synchronousSpeed.value, findings)
      : undefined;
  const frequencyRatio = onLine ? frequency.value / machine.plate.ratedFrequency.value : 1;
  const assumed = (value: number): Quantity<'1'> =>
    leaf(scope, {
      value,
      unit: '1',
      label: 'voltage ratio',
      origin: 'assumed',
      source: driveFed
        ? 'rated flux kept by the drive: volts in proportion to frequency up to the rated one (common practice)'
        : 'rated voltage assumed',
      doubts: [{ id: `row ${row}:voltage-assumed`, label: 'voltage not read', u: 0.03 * value }],
    });
  const atRatedFrequency = voltage
    ? apply(scope, L.voltage_ratio, { voltage, rated_voltage: machine.plate.ratedVoltage })
    : assumed(1);
  const slowed = driveFed && !voltage && frequencyRatio < 1;
  if (!voltage && !driveFed) findings.push(LOAD.make('voltage-assumed', { row, rated_voltage: plate.ratedVoltageV }));
  const { ambient, windingTemperature } = temperatures(scope, reading, findings);
  return {
    row,
    voltage,
    voltageRatio: slowed ? assumed(frequencyRatio) : atRatedFrequency,
    voltageRatioAtRatedFrequency: atRatedFrequency,
    // The field of a synchronous motor sets its reactive current: amperes say nothing of its load.
    current: onLine && plate.machineKind !== 'synchronous' ? current : undefined,
    inputPower: power,
    supplyLoss: added,
    speed,
    synchronousSpeed,
    frequencyRatio,
    negativeSequence:
      voltage && reading.voltagesV ? (sequenceMagnitudes(reading.voltagesV)?.negative ?? 0) / plate.ratedVoltageV : 0,
    onLine,
    ambient,
    windingTemperature,
    findings,
  };
}

function usableVoltage(scope: MotorScope, plate: Plate, reading: Reading, findings: Finding[]): Quantity<'V'> | undefined {
  const value = reading.voltageV;
  if (value === undefined || value <= 0) return undefined;
  const rated = plate.ratedVoltageV;
  const ratio = value / rated;
  if (Math.abs(ratio * Math.sqrt(3) - 1) < 0.07) {
    findings.push(LOAD.make('voltage-phase-for-line', { row: reading.row, voltage: value, rated_voltage: rated }));
    return undefined;
  }
  if (ratio < 0.8 || ratio > 1.2) {
    findings.push(LOAD.make('voltage-far-from-plate', { row: reading.row, voltage: value, rated_voltage: rated }));
    return undefined;
  }
  const halfWidth = ((reading.voltageAccuracyPct ?? scope.settings.accuracy.voltagePct) / 100) * value;
  return meter(scope, { value, unit: 'V', what: 'line-to-line voltage', reading, kind: 'voltage', halfWidth });
}

function usablePower(
  scope: MotorScope,
  plate: Plate,
  machine: { readonly plate: CompletedPlate },
  reading: Reading,
  other: { voltage: Quantity<'V'> | undefined; current: Quantity<'A'> | undefined },
  findings: Finding[],
): Quantity<'kW'> | undefined {
  const row = reading.row;
  const factor = readPowerFactor(plate, reading, findings);
  const apparent = other.voltage && other.current ? N.apparent_power.f(other.voltage.value, other.current.value) : undefined;
  const read = reading.inputPowerKw;
  if (read === undefined) {
    if (factor === undefined || !other.voltage || !other.current || factor <= 0) return undefined;
    const power_factor = leaf(scope, {
      value: factor,
      unit: '1',
      label: 'power factor',
      origin: 'metered',
      source: `reading in row ${row}`,
      doubts: [
        {
          id: `${reading.instrument ?? 'meter'}:power-factor`,
          label: 'reading of the power factor',
          u: 0.015,
          meter: { instrument: reading.instrument, reads: 'power-factor' },
        },
      ],
    });
    return apply(scope, N.power_from_current, { voltage: other.voltage, current: other.current, power_factor });
  }
  const ratedInput = machine.plate.ratedPower.value / machine.plate.efficiency.value;
  if (read <= 0) {
    findings.push(LOAD.make('power-negative', { row, input_power: read }));
    return undefined;
  }
  if (read > 2 * ratedInput) {
    findings.push(LOAD.make('power-impossible', { row, input_power: read, rated_input: ratedInput }));
    return undefined;
  }
  if (apparent !== undefined && read > apparent * 1.05) {
    findings.push(LOAD.make('power-above-apparent', { row, input_power: read, apparent_power: apparent }));
    return undefined;
  }
  if (apparent !== undefined && factor !== undefined && Math.abs(read / apparent - Math.abs(factor)) > 0.08) {
    findings.push(
      LOAD.make('power-factor-contradicts', { row, read: Math.round(factor * 100), computed: (100 * read) / apparent }),
    );
  }
  const halfWidth = ((reading.powerAccuracyPct ?? scope.settings.accuracy.powerPct) / 100) * read;
  const measured = meter(scope, { value: read, unit: 'kW', what: 'input power', reading, kind: 'power', halfWidth });
  if (reading.readingsAt !== 'drive-input') return measured;
  return apply(scope, L.power_behind_drive, {
    drive_input_power: measured,
    drive_efficiency: driveEfficiencyAtInput(scope, plate.ratedPowerKw, read / ratedInput),
  });
}

function readPowerFactor(plate: Plate, reading: Reading, findings: Finding[]): number | undefined {
  const pct = reading.powerFactorPct;
  if (pct === undefined || pct === 0) return undefined;
  if (Math.abs(pct) <= 1) {
    findings.push(LOAD.make('power-factor-typed-as-fraction', { row: reading.row, read: pct }));
    return undefined;
  }
  if (Math.abs(pct) > 100) return undefined;
  // What a drive takes from the mains may lead, and so may a synchronous motor.
  if (pct < 0 && plate.machineKind !== 'synchronous' && reading.readingsAt !== 'drive-input') {
    findings.push(LOAD.make('reading-value-impossible', { row: reading.row, column: 'power_factor_pct', value: pct }));
    return undefined;
  }
  return pct / 100;
}

function usableSpeed(
  scope: MotorScope,
  plate: Plate,
  reading: Reading,
  synchronous: number,
  findings: Finding[],
): Quantity<'r/min'> | undefined {
  const value = reading.shaftSpeedRpm;
  if (value === undefined) return undefined;
  const halfWidth = reading.speedAccuracyRpm ?? scope.settings.accuracy.speedRpm;
  if (value > synchronous + halfWidth) {
    findings.push(LOAD.make('speed-above-synchronous', { row: reading.row, speed: value, synchronous_speed: synchronous }));
    return undefined;
  }
  if (value < synchronous * (plate.designLetter === 'D' || plate.machineKind === 'wound-rotor' ? 0.7 : 0.88)) {
    findings.push(LOAD.make('speed-not-the-motors', { row: reading.row, speed: value, synchronous_speed: synchronous }));
    return undefined;
  }
  return meter(scope, { value, unit: 'r/min', what: 'shaft speed', reading, kind: 'speed', halfWidth });
}

/** A mains is 50 or 60 Hz, and a plate may be of the other: beyond a quarter either way it is none. */
const MAINS_RATIO = 1.25;

/** Hertz within which a frequency at a drive's input is that of the mains. */
const MAINS_WANDER = 1;

/** True where the frequency read is the drive's output: one read at its input is, unless it is that of a mains. */
function outputFrequency({ frequencyHz, readingsAt }: Reading): boolean {
  if (frequencyHz === undefined) return false;
  return readingsAt !== 'drive-input' || [50, 60].every((mains) => Math.abs(frequencyHz - mains) > MAINS_WANDER);
}

/** Supply frequency: read, else rated with the usual wander of a large grid. */
function supplyFrequency(
  scope: MotorScope,
  machine: { readonly plate: CompletedPlate },
  reading: Reading,
  driveFed: boolean,
  findings: Finding[],
): Quantity<'Hz'> {
  const read = reading.frequencyHz;
  const rated = machine.plate.ratedFrequency.value;
  const isMains = read !== undefined && read < rated * MAINS_RATIO && read > rated / MAINS_RATIO;
  if (read !== undefined && !driveFed && !isMains)
    findings.push(LOAD.make('frequency-not-the-mains', { row: reading.row, frequency: read, rated_frequency: rated }));
  if (read !== undefined && read > 0 && (driveFed ? outputFrequency(reading) : isMains)) {
    return meter(scope, {
      value: read,
      unit: 'Hz',
      what: 'frequency',
      reading,
      kind: 'frequency',
      halfWidth: 0.01,
    });
  }
  return leaf(scope, {
    value: rated,
    unit: 'Hz',
    label: 'supply frequency',
    origin: 'assumed',
    source: 'rated frequency; a large grid wanders by a few hundredths of a hertz (common practice)',
    doubts: [{ id: `row ${reading.row}:frequency-assumed`, label: 'frequency not read', u: driveFed ? 0 : 0.02 }],
  });
}

/** Kelvin by which a thermometer on a running winding may read below the air around it. */
const COLDER = 3;

function temperatures(scope: MotorScope, reading: Reading, findings: Finding[]): Pick<Metered, 'windingTemperature' | 'ambient'> {
  const winding = reading.windingTempMethod === 'surface' ? undefined : reading.windingTempC;
  const { ambientC } = reading;
  if (winding !== undefined && ambientC !== undefined && winding < ambientC - COLDER) {
    findings.push(LOAD.make('reading-value-impossible', { row: reading.row, column: 'winding_temp_c', value: winding }));
    return { windingTemperature: undefined, ambient: undefined };
  }
  const of = (value: number, label: string, id: string, u: number): Quantity<'K'> =>
    leaf(scope, {
      value,
      unit: 'K',
      label,
      origin: 'metered',
      source: `reading in row ${reading.row}`,
      doubts: [{ id: `row ${reading.row}:${id}`, label, u }],
    });
  return {
    windingTemperature:
      winding === undefined || winding < -40 || winding > 300
        ? undefined
        : of(winding, 'winding temperature, °C', 'winding-temperature', 3),
    ambient:
      reading.ambientC === undefined || reading.ambientC < -60 || reading.ambientC > 90
        ? undefined
        : of(reading.ambientC, 'ambient temperature, °C', 'ambient', 1),
  };
}
