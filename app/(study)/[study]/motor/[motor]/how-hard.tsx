import Link from 'next/link';
import { ChartLossStack } from '@/app/_ui/chart-loss-stack';
import { ChartPartLoad } from '@/app/_ui/chart-part-load';
import { ChartTorqueSpeed } from '@/app/_ui/chart-torque-speed';
import { ChartWhiskers } from '@/app/_ui/chart-whiskers';
import { FigureText } from '@/app/_ui/figure';
import { FoldOnPhone } from '@/app/_ui/fold-on-phone';
import type { Figure, LossesByCause, NoTorqueSpeed, TorqueSpeed } from '@/lib/engine';
import { readingDates } from '@/lib/features/fleet/reading-dates';
import { standingWords } from '@/lib/features/motor/contribution-words';
import type { MotorPage } from '@/lib/features/motor/loaders';
import { atShaft, shaftUnit } from '@/lib/features/study/reader-units';
import { formatFigure, formatNumber } from '@/lib/platform/format';
import { Contributions } from './contributions';
import styles from './motor.module.css';

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
  const evidence = page.contributions.filter(({ kind }) => kind !== 'typical');
  const { shaft_power, load_fraction, efficiency, losses, input_power } = result;
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
          {losses && (
            <ChartLossStack
              sentence={
                input_power
                  ? `Of ${formatFigure(input_power).text} taken from the line, ${formatFigure(losses.total).text} are lost.`
                  : `${formatFigure(losses.total).text} are lost.`
              }
              losses={losses}
            />
          )}
          {losses && result.losses_by_cause && <Causes causes={result.losses_by_cause} total={losses.total} here={here} />}
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
      {evidence.length > 0 && (
        <>
          <h3>What each reading and stamp contributes</h3>
          <p>{standingWords(evidence, readingDates(result.readings))}</p>
          <FoldOnPhone what={`All ${evidence.length} readings and stamps`} nothing={evidence.length < 2}>
            <p data-folds className={styles.soft}>
              {(result.losses_by_cause?.drive ?? result.losses_by_cause?.harmonics) !== undefined &&
                'Input power stands here less what the waveform of the supply adds to the losses. '}
              The heaviest in the load’s doubt come first. A miss beyond 2 deserves a look, beyond 3 the value or an assumption is
              wrong. What is taken for typical stands, with its source, behind{' '}
              <Link href={`${here}/why?figure=load_fraction#machine`} prefetch={false}>
                how the load is known
              </Link>
              .
            </p>
            <div data-folds>
              <Contributions
                label="Table of what each reading and stamp contributes"
                rows={evidence}
                dates={readingDates(page.result.readings)}
              />
            </div>
          </FoldOnPhone>
        </>
      )}
    </>
  );
}

/** What of the losses the supply causes; nothing where nothing of it was read. */
function Causes({ causes, total, here }: { readonly causes: LossesByCause; readonly total: Figure; readonly here: string }) {
  const named = CAUSES.flatMap(({ id, words }) => {
    const figure = causes[id];
    return figure ? [{ id, words, figure }] : [];
  });
  if (named.length === 0) return null;
  return (
    <p>
      Of these{' '}
      {named.map(({ id, words, figure }, index) => (
        <span key={id}>
          {index > 0 && ', '}
          <FigureText
            name={words}
            figure={figure}
            why={`${here}/why?figure=losses_by_cause.${id}`}
            instead={figure.value < SLIGHT * total.value ? NEXT_TO_NOTHING : undefined}
          />{' '}
          by {words}
        </span>
      ))}
      ; the rest is that of a balanced sine.
    </p>
  );
}

/** A cause below this share of the total loss is not worth its digits. */
const SLIGHT = 0.002;
const NEXT_TO_NOTHING = { short: 'next to nothing', long: 'next to nothing' } as const;

const CAUSES = [
  { id: 'unbalance', words: 'the unbalance of the voltages' },
  { id: 'harmonics', words: 'the distortion of the voltage' },
  { id: 'drive', words: 'the waveform of the drive (a published range, from memory)' },
] as const;

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
