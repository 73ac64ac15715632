import type { Evaluation } from '../../evaluate';
import { apply } from '../../formula/apply';
import * as L from '../../generated/lines';
import * as N from '../../generated/nameplate';
import type { Motor } from '../../motor';
import type { Finding } from '../../quantity/finding';
import { exact, standardUncertainty } from '../../quantity/quantity';
import { figure, tidy } from '../../result-figure';
import { fittingBarCounts, type ObservedFits } from './bar-counts';
import { expectedLines } from './expected';
import { LINES } from './findings';
import type { Line } from './line';
import type { CoincidenceResult, LineResult, LineTable, PartedAtResult } from './line-result';
import { isBelted } from './mechanical';
import { rotationOf } from './rotation';
import { type Coincidence, candidatesFor, coincidences, type PartingPoint, SIDEBAND_STEPS } from './separation';

/**
 * Expected lines of one motor: at the reading that carries a spectrum, else at the latest with a speed, else at the latest with a load.
 * Without any speed the table is empty and names what is missing.
 */
export function lineTable(evaluation: Evaluation): LineTable {
  const { motor, machine, scope } = evaluation;
  const chosen = readingFor(evaluation);
  const base = { site: motor.site, tag: motor.tag };
  const rotation = chosen && rotationOf(scope, machine, chosen);
  if (!chosen || !rotation) {
    const column = chosen && !chosen.metered.onLine ? 'frequency_hz' : 'shaft_speed_rpm';
    const missing = [{ column, adds: 'every line' }, ...missingColumns(motor)];
    return { ...base, lines: [], coincide: [], observed: [], bar_counts: [], missing, findings: [] };
  }
  const { reading, point } = chosen;
  const { plate, lineGeometry } = motor;
  const currency = scope.settings.currency;
  const speed = chosen.metered.speed ?? point?.speed;
  const polePass = apply(scope, L.pole_pass, {
    supply: rotation.supply,
    shaft: rotation.shaft,
    poles: exact(rotation.poles, '1'),
  });
  const needed = polePass.value > 0 ? L.resolution_needed.f(polePass.value, SIDEBAND_STEPS) : undefined;
  const resolutionHz = reading.spectrumResolutionHz ?? needed ?? 0;
  const given = { machine, rotation, resolutionHz };
  const lines = expectedLines(scope, plate, lineGeometry, rotation);
  const observedHz = reading.observedLinesHz ?? [];
  const slip = apply(scope, N.slip_fraction, {
    synchronous_speed: chosen.metered.synchronousSpeed,
    shaft_speed: speed ?? chosen.metered.synchronousSpeed,
  });
  return {
    ...base,
    row: reading.row,
    ...(reading.takenAt !== undefined && { taken_at: reading.takenAt }),
    ...(point && { load_fraction: figure(point.loadFraction, currency) }),
    ...(speed && { speed: figure(speed, currency), slip: figure(slip, currency) }),
    supply_frequency: figure(rotation.supply, currency),
    pole_pass: figure(polePass, currency),
    resolution: { value_hz: tidy(resolutionHz), known: reading.spectrumResolutionHz === undefined ? 'assumed' : 'read' },
    ...(needed !== undefined && { sidebands_need: { resolution_hz: tidy(needed), record_s: tidy(L.record_length.f(needed)) } }),
    lines: lines.map((line) => lineResult(line, currency)),
    coincide: coincidences(lines, given).map(coincidenceResult),
    observed: observedHz.map((frequency) => ({
      frequency_hz: frequency,
      may_be: candidatesFor(frequency, lines, resolutionHz).map((line) => line.id),
    })),
    bar_counts:
      plate.machineKind === 'cage' && !countIsSure(motor)
        ? fittingBarCounts(scope, { ...given, observedHz, bars: plate.rotorBars, slots: plate.statorSlots }).map((fits) =>
            barFits(fits, currency),
          )
        : [],
    missing: missingColumns(motor),
    findings: findingsOf(motor, {
      measured: rotation.measured,
      speed,
      resolutionHz,
      needed,
      stated: reading.spectrumResolutionHz,
    }),
  };
}

type Read = Evaluation['readings'][number];

/** The latest reading with a spectrum and a speed; else with a speed; else with a load. */
function readingFor({ readings }: Evaluation): Read | undefined {
  const carries = ({ reading }: Read) => reading.observedLinesHz !== undefined || reading.spectrumResolutionHz !== undefined;
  return (
    readings.findLast((read) => carries(read) && (read.metered.speed ?? read.point) !== undefined) ??
    readings.findLast((read) => read.metered.speed !== undefined) ??
    readings.findLast((read) => read.point !== undefined) ??
    readings.at(-1)
  );
}

/** True when the bars were counted, or the count comes from the maker. */
function countIsSure({ plate }: Pick<Motor, 'plate'>): boolean {
  return plate.rotorBars !== undefined && (plate.rotorBarsSource === 'counted' || plate.rotorBarsSource === 'manufacturer');
}

function missingColumns({ plate, lineGeometry }: Motor): { column: string; adds: string }[] {
  const belted = isBelted(plate);
  const rows: readonly (readonly [boolean, string, string])[] = [
    [plate.rotorBars === undefined && plate.machineKind === 'cage', 'rotor_bars', 'slot lines, static and dynamic eccentricity'],
    [plate.statorSlots === undefined, 'stator_slots', 'passing of the stator slots'],
    [belted && lineGeometry?.motorSheaveMm === undefined, 'motor_sheave_mm', 'belt passing'],
    [belted && lineGeometry?.beltLengthMm === undefined, 'belt_length_mm', 'belt passing'],
    [
      belted && plate.speedRatio === undefined && lineGeometry?.drivenSheaveMm === undefined,
      'driven_sheave_mm',
      'speed of the driven shaft',
    ],
    [plate.coupling === 'gear' && lineGeometry?.gearTeeth === undefined, 'gear_teeth', 'gear mesh and the shaft beyond'],
    [lineGeometry?.bearingDe === undefined, 'bearing_de', 'defects of the drive-end bearing'],
    [lineGeometry?.bearingNde === undefined, 'bearing_nde', 'defects of the other bearing'],
  ];
  return rows.filter(([missing]) => missing).map(([, column, adds]) => ({ column, adds }));
}

function findingsOf(
  motor: Motor,
  given: {
    measured: boolean;
    speed: (Parameters<typeof standardUncertainty>[0] & { value: number }) | undefined;
    resolutionHz: number;
    needed: number | undefined;
    stated: number | undefined;
  },
): Finding[] {
  const { speed, needed, resolutionHz } = given;
  const { rotorBars } = motor.plate;
  return [
    ...(given.measured || !speed
      ? []
      : [LINES.make('lines-speed-estimated', { speed: speed.value, u: standardUncertainty(speed) })]),
    ...(given.stated === undefined ? [LINES.make('lines-resolution-assumed', { resolution: resolutionHz })] : []),
    ...(needed !== undefined && given.stated !== undefined && resolutionHz > needed * (1 + 1e-9)
      ? [LINES.make('lines-resolution-coarse', { resolution: resolutionHz, needed, record: L.record_length.f(needed) })]
      : []),
    ...(rotorBars !== undefined && !countIsSure(motor) ? [LINES.make('lines-bars-not-counted', { bars: rotorBars })] : []),
  ];
}

function lineResult(line: Line, currency: string): LineResult {
  const { id, spectrum, cause, meaning, relation, source, status } = line;
  return { id, spectrum, cause, meaning, relation, frequency: figure(line.frequency, currency), source, status };
}

function partedAt(point: PartingPoint | undefined): { parted_at?: PartedAtResult } {
  return point ? { parted_at: { speed_rpm: tidy(point.speedRpm), load_fraction: tidy(point.loadFraction) } } : {};
}

function coincidenceResult(found: Coincidence): CoincidenceResult {
  return {
    spectrum: found.first.spectrum,
    lines: [found.first.id, found.second.id],
    apart_hz: tidy(found.apartHz),
    needed_hz: tidy(found.neededHz),
    ...(found.resolutionHz !== undefined && { resolution_hz: tidy(found.resolutionHz) }),
    always: found.together,
    ...partedAt(found.partedAt),
  };
}

function barFits({ observedHz, fits }: ObservedFits, currency: string): LineTable['bar_counts'][number] {
  return {
    frequency_hz: observedHz,
    fits: fits.map((fit) => ({
      bars: fit.bars,
      line: fit.line.id,
      relation: fit.line.relation,
      frequency: figure(fit.line.frequency, currency),
      off_hz: tidy(fit.offHz),
      stated: fit.stated,
      always: fit.together,
      ...partedAt(fit.partedAt),
    })),
  };
}
