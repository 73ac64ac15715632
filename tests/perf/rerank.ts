import { evaluateMotor } from '@/lib/engine';
import { type MovableMotor, movableOf } from '@/lib/engine/rerank/movable';
import { neutralMoves, rerank, rerankable } from '@/lib/engine/rerank/rerank';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { type Measure, medianOf } from './engine';

/** Ranking 10,000 invented motors again at other prices, as the browser does it; and what the data for it weigh. */
export function rerankTimes(): Measure[] {
  const { tables, prices } = loadTables();
  const study = { settings: { ...defaultSettings(), asOf: '2026-01-01' }, tables, prices };
  const motors: MovableMotor[] = [];
  for (let seed = 1; motors.length < 10_000; seed++)
    for (const { motor } of generateDemo({ asOf: '2026-01-01', seed }))
      motors.push(movableOf(evaluateMotor({ ...motor, tag: `${motor.tag}/${seed}` }, study)));
  const text = JSON.stringify(motors);
  const read: MovableMotor[] = JSON.parse(text);
  const fleet = rerankable(read, study.settings);
  const neutral = neutralMoves(study.settings);
  let turn = 0;
  // A new rate each time, since a rate that was there already would find its plans made.
  const at = () => rerank(fleet, { ...neutral, energyPrice: 1.2, cost: 0.9, discountRate: 0.05 + 0.0001 * turn++ });
  at();
  return [
    { what: 'ranking 10,000 motors at other prices, hours, costs and rate', value: medianOf(9, at), unit: 'ms', bar: '100' },
    { what: 'making them ready, once', value: medianOf(3, () => void rerankable(read, study.settings)), unit: 'ms' },
    { what: 'reading their text, once', value: medianOf(3, () => void JSON.parse(text)), unit: 'ms' },
    { what: 'weight of their text', value: text.length / 1e6, unit: 'MB' },
  ];
}

/* Run alone: npm run perf -- rerank */
if (process.argv[1]?.endsWith('rerank.ts'))
  for (const { what, value, unit } of rerankTimes()) console.log(`${what.padEnd(74)} ${value.toPrecision(3)} ${unit}`);
