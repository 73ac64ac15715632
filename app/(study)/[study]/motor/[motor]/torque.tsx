import { ChartTorqueSpeed } from '@/app/_ui/chart-torque-speed';
import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import type { NoTorqueSpeed, TorqueSpeed } from '@/lib/engine';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { formatNumber } from '@/lib/platform/format';
import styles from './motor.module.css';

/** Torque of the motor and of its load over speed, or why it cannot be drawn. */
export function Torque({ torque }: Pick<MotorPage, 'torque'>) {
  return (
    <>
      <h3>Torque</h3>
      {torque.ok ? (
        <>
          <ChartTorqueSpeed sentence={torqueSentence(torque.value)} curve={torque.value} />
          <p className={styles.soft}>
            {TORQUE_NOTE} {notDrawn(torque.value)}
          </p>
          <FoldOnPhone what="Why it is rough there">
            <p data-folds className={styles.soft}>
              {TORQUE_ROUGH}
            </p>
          </FoldOnPhone>
        </>
      ) : (
        <p className={styles.soft}>{NO_TORQUE[torque.why]}</p>
      )}
    </>
  );
}

function torqueSentence({ point, breakdown, exponent, exponentStated, curveName }: TorqueSpeed): string {
  const law =
    curveName !== undefined
      ? `by the points of the load curve “${curveName}” of the settings, moved up or down to pass through this load`
      : exponent === 0
        ? 'the same at every speed'
        : `with the ${ORDINALS[exponent] ?? `${exponent}th`} power of the speed`;
  const times = formatNumber(breakdown.torque / point.torque, 1);
  return `It could carry ${times} times its present torque before it stalls. The load’s torque is taken ${law}${exponentStated && curveName === undefined ? ', as stated' : ''}.`;
}

const ORDINALS: Readonly<Record<number, string>> = { 1: 'first', 2: 'second', 3: 'third' };

const TORQUE_NOTE =
  'From the circuit fitted to this motor, at the voltage and temperature of the reading. Between standstill and breakdown (dashed) it is rough: neither a start nor the setting of a relay may rest on it.';

const TORQUE_ROUGH =
  'Real cages start with more resistance and less leakage than they run with, and so with a multiple of the torque drawn here; the dip of the pull-up torque is not known from a circuit.';

/** Where the curve begins, unless at standstill. */
function notDrawn({ rough }: TorqueSpeed): string {
  const from = rough[0]?.speed ?? 0;
  return from > 0
    ? `Below ${formatNumber(from, 0)}\u202fr/min the circuit gives no torque at all, which no cage does: nothing is drawn there.`
    : '';
}

const NO_TORQUE: Readonly<Record<NoTorqueSpeed, string>> = {
  'no-load-known': 'No torque curve: the load is not known.',
  'drive-fed': 'No torque curve: a drive feeds the motor, and moves the curve with its voltage and frequency.',
  synchronous: 'No torque curve: a synchronous motor runs at one speed.',
  'wound-rotor': 'No torque curve: a wound-rotor motor starts on its resistors, which the sheet does not know.',
  'not-solved': 'No torque curve: the circuit has no solution at some speeds.',
};
