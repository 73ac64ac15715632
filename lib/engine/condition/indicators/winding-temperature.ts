import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { bandBelow } from '../limit';
import { read, words } from './shared';

/**
 * Winding temperature against its insulation class. By resistance the class limit stands less the hot-spot allowance of 10 K, by embedded
 * detector it stands as it is; a surface reading never judges.
 * Source: NEMA MG 1 12.43 (read in a secondary text); hot-spot allowance from memory.
 */
export const windingTemperature: Indicator = {
  id: 'winding-temperature',
  title: 'Winding temperature',
  needs: ['winding_temp_c', 'winding_temp_method', 'insulation_class'],
  limits: [],
  present: (reading) => reading.windingTempC !== undefined,
  judge(scope, { reading, motor }) {
    const temperature = reading.windingTempC ?? 0;
    const value = read(scope, {
      value: temperature,
      unit: '°C',
      label: 'winding temperature',
      row: reading.row,
      errorPct: 3,
      id: 'winding-temperature',
    });
    const table = scope.tables.classTemperatures;
    const row = table.rows.find((entry) => entry.thermalClass === motor.plate.insulationClass);
    const base = { value, source: `${table.title} (${table.edition})`, status: row?.status ?? ('read-secondary' as const) };
    if (reading.windingTempMethod === 'surface')
      return {
        ...base,
        limit: 'not judged from the surface',
        findings: [CONDITION.make('temperature-surface', { temperature })],
      };
    if (!row || reading.windingTempMethod === undefined)
      return { ...base, limit: 'depends on class and method', findings: [CONDITION.make('temperature-class-unknown', {})] };
    const allowed = reading.windingTempMethod === 'resistance' ? row.maxTempC - 10 : row.maxTempC;
    const limit = { id: 'class', value: allowed, unit: '°C', source: base.source, status: base.status };
    const judged = bandBelow(value, limit, 'winding temperature');
    // A winding may sit close to its class for decades: near begins 10 K below, the step that halves life.
    const band = judged.band === 'near' && temperature < allowed - 10 && judged.findings.length === 0 ? 'within' : judged.band;
    return {
      ...base,
      limit: `at most ${words(allowed)} °C (class ${row.thermalClass}, by ${reading.windingTempMethod})`,
      band,
      findings: judged.findings,
    };
  },
};
