import type { MotorScope } from '../../context';
import { apply, leaf } from '../../formula/apply';
import * as C from '../../generated/condition';
import { NORMAL_FACTOR } from '../../quantity/coverage';
import { exact, type Quantity, standardUncertainty, withValue } from '../../quantity/quantity';
import type { Indicator, IndicatorInput } from '../indicator';
import { bandAt, exceeds, limitOf, NEAR } from '../limit';
import { INSTRUMENT, read, words } from './shared';

/** Ambient where none was read, °C, and how far the air at a motor may lie from it (common practice). */
const AMBIENT = { usualC: 30, u: 6 } as const;
/** Doubt of a winding temperature worked out from losses, K (common practice). */
const ESTIMATE_U_K = 6;
/** Mean of the winding to its hottest spot, K (NEMA MG 1 12.43, read in a second text). */
const HOT_SPOT_K = 10;
/** How far an estimated temperature counts as evidence beside a measured one. */
const ESTIMATE_WEIGHT = 0.5;

/**
 * Life of the insulation at this temperature as a multiple of its life at the highest temperature of its class: it halves for each 10 K
 * (limit F1). By the measured winding temperature, else by one estimated from the losses, which goes no further than near. To compare, never
 * to forecast. Needs the insulation class. Source: US DOE Motor Systems Tip Sheets 3 and 7 (read).
 */
export const insulationLife: Indicator = {
  id: 'insulation-life',
  title: 'Insulation life at this temperature',
  needs: ['insulation_class', 'winding_temp_c'],
  limits: ['F1', 'life-at-class'],
  present: ({ reading, turning }, plate) =>
    plate.insulationClass !== undefined &&
    plate.driveFed !== true &&
    (turning?.point !== undefined || (reading.windingTempC !== undefined && measuring(reading.windingTempMethod))),
  judge(scope, input) {
    const row = scope.tables.classTemperatures.rows.find((entry) => entry.thermalClass === input.motor.plate.insulationClass);
    const hottest = row && hottestSpot(scope, input);
    if (!row || !hottest) return { value: undefined, findings: [] };
    const halving = limitOf(scope, 'F1');
    const limit = limitOf(scope, 'life-at-class');
    const excess: Quantity<'K'> = {
      unit: 'K',
      value: hottest.temperature.value - row.maxTempC,
      parts: hottest.temperature.parts,
    };
    const value = apply(scope, C.insulation_life_share, { excess, halving: exact(halving.value, 'K') });
    // Limits and verdict come from the scale of temperature, where the doubt is even: on that of life it is skewed beyond use.
    const half = NORMAL_FACTOR * standardUncertainty(excess);
    const lifeAt = (kelvin: number) => C.insulation_life_share.f(kelvin, halving.value);
    const edgeC = row.maxTempC - halving.value * Math.log2(limit.value);
    const judged = bandAt(hottest.temperature, { ...limit, value: edgeC, unit: '°C' }, 'temperature of the insulation', {
      beyond: exceeds(hottest.temperature.value, edgeC),
      near: exceeds(hottest.temperature.value, edgeC + halving.value * Math.log2(NEAR)),
    });
    const measured = hottest.measured;
    return {
      value,
      limits: { low: lifeAt(excess.value + half), high: lifeAt(excess.value - half) },
      band: !measured && judged.band === 'beyond' ? 'near' : judged.band,
      margin: judged.margin,
      limit: `at least ${words(limit.value)} times the life at ${words(row.maxTempC)} °C (class ${row.thermalClass}${measured ? '' : ', temperature estimated from the losses'})`,
      source: `${limit.source}; ${halving.source}`,
      status: limit.status,
      findings: measured ? judged.findings : [],
      weight: measured ? 1 : ESTIMATE_WEIGHT,
    };
  },
};

function measuring(method: string | undefined): boolean {
  return method === 'resistance' || method === 'embedded';
}

/** Temperature of the hottest spot, °C. */
function hottestSpot(
  scope: MotorScope,
  { reading, machine, turning }: IndicatorInput,
): { temperature: Quantity<'°C'>; measured: boolean } | undefined {
  const offset = (from: Quantity<'°C'>, kelvin: number): Quantity<'°C'> => withValue(from, from.value + kelvin);
  if (reading.windingTempC !== undefined && measuring(reading.windingTempMethod)) {
    const measured = read(scope, {
      value: reading.windingTempC,
      unit: '°C',
      label: 'winding temperature',
      row: reading.row,
      error: INSTRUMENT.temperatureK,
      id: 'winding-temperature',
    });
    return { measured: true, temperature: offset(measured, reading.windingTempMethod === 'resistance' ? HOT_SPOT_K : 0) };
  }
  const point = turning?.point;
  if (!point) return undefined;
  const known = reading.ambientC !== undefined;
  const ambient = leaf(scope, {
    value: reading.ambientC ?? AMBIENT.usualC,
    unit: '°C',
    label: 'temperature of the cooling air',
    origin: known ? 'metered' : 'assumed',
    source: known ? `reading in row ${reading.row}` : 'common practice',
    doubts: [
      { id: `row ${reading.row}:ambient-life`, label: 'temperature of the cooling air', u: known ? 1 : AMBIENT.u },
      { id: `row ${reading.row}:temperature-by-losses`, label: 'winding temperature worked out from losses', u: ESTIMATE_U_K },
    ],
  });
  const mean = apply(scope, C.winding_temperature_by_losses, {
    ambient,
    rated_rise: machine.ratedRise,
    losses: point.losses.total,
    rated_losses: machine.rated.total,
  });
  return { measured: false, temperature: offset(mean, HOT_SPOT_K) };
}
