import { ChartPartLoad } from '@/app/_ui/chart-part-load';
import { ChartWhiskers } from '@/app/_ui/chart-whiskers';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { atShaft, shaftUnit } from '@/lib/features/study/reader-units';
import { formatFigure } from '@/lib/platform/format';
import { Evidence } from './evidence';
import { Losses } from './losses';
import styles from './motor.module.css';
import { Torque } from './torque';

const WAYS: Readonly<Record<string, string>> = {
  'input-power': 'by input power',
  slip: 'by speed (slip)',
  current: 'by current',
  circuit: 'by the circuit',
  'loss-segregation': 'by its losses',
  'air-gap-torque': 'by its torque',
  combined: 'all together',
};

/** The ways to the load, the losses, efficiency and torque, and what each stamp and reading contributes. */
export function HowHard({ page, here }: { readonly page: MotorPage; readonly here: string }) {
  const { result, curve, units, torque, powerFactor } = page;
  const { shaft_power, load_fraction, efficiency } = result;
  return (
    <>
      <div className={styles.columns}>
        <div>
          {shaft_power && result.estimates.length > 0 && (
            <ChartWhiskers
              sentence={`Shaft power by each way to it; together ${formatFigure(atShaft(shaft_power, units)).text}.`}
              unit={`shaft power, ${shaftUnit(units)}`}
              rows={result.estimates.map((estimate) => ({
                label: WAYS[estimate.method] ?? estimate.method,
                figure: atShaft(estimate.shaft_power, units),
                used: estimate.used,
                bold: estimate.method === 'combined',
                why: estimate.why.join('; '),
              }))}
            />
          )}
          <Losses result={result} here={here} />
        </div>
        <div>
          {curve.length > 0 && load_fraction && efficiency && (
            <ChartPartLoad
              sentence={`Efficiency and power factor over load; it was read at ${formatFigure(load_fraction, { percent: true }).text}.`}
              curve={curve}
              load={load_fraction}
              efficiency={efficiency}
              powerFactor={powerFactor}
            />
          )}
        </div>
      </div>
      <Torque torque={torque} />
      <Evidence page={page} here={here} />
    </>
  );
}
