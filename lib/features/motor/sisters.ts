import { type AmongSisters, amongSisters, type Plate, type UnrankedMotor } from '@/lib/engine';
import { readShownRunId, unpackResult } from '../evaluation/data';
import type { Reader } from '../study/data';

/** Sisters that are compared at most: more say no more. */
const MOST = 60;
/** Sisters have the same rating and rated speed, but for the rounding of plates (common practice). */
const SAME = 0.03;

/** Indicators of the motor itself that like motors share; load, supply and starts are those of its place. */
const COMPARED: ReadonlySet<string> = new Set([
  'current-unbalance',
  'winding-resistance-unbalance',
  'insulation-resistance',
  'winding-temperature',
  'vibration',
  'vibration-axial',
  'vibration-1x',
  'vibration-2x',
  'vibration-twice-line',
  'bearing-temperature',
  'rotor-sideband',
  'eccentricity-sideband',
]);

/**
 * How each indicator of a motor stands among those of its sisters in the study's latest evaluation: motors of the same rating, voltage and
 * rated speed. A step over the fleet: it alters no figure of the motor.
 */
export async function readSisters(
  db: Reader,
  studyId: string,
  { motorId, plate, result }: { motorId: string; plate: Plate; result: UnrankedMotor },
): Promise<ReadonlyMap<string, AmongSisters>> {
  const own = result.condition.indicators.filter(({ id }) => COMPARED.has(id));
  const runId = own.length === 0 || plate.ratedSpeedRpm === undefined ? undefined : await readShownRunId(db, studyId);
  if (runId === undefined || plate.ratedSpeedRpm === undefined) return new Map();
  const about = (value: number) => ({ gte: value * (1 - SAME), lte: value * (1 + SAME) });
  const rows = await db.motorEvaluation.findMany({
    where: {
      runId,
      motorId: { not: motorId },
      worstBand: { not: null },
      motor: {
        ratedPowerKw: about(plate.ratedPowerKw),
        ratedSpeedRpm: about(plate.ratedSpeedRpm),
        ratedVoltageV: plate.ratedVoltageV,
      },
    },
    orderBy: { naturalKey: 'asc' },
    take: MOST,
    select: { details: true },
  });
  const sisters = rows.map((row) => unpackResult(row.details).condition.indicators);
  return new Map(
    own.flatMap(({ id, value }) => {
      const values = sisters.flatMap((indicators) =>
        indicators.filter((entry) => entry.id === id && entry.value.unit === value.unit).map((entry) => entry.value.value),
      );
      const found = amongSisters(value.value, values);
      return found ? [[id, found] as const] : [];
    }),
  );
}
