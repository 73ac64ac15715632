import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadRound } from '@/lib/features/trust/loaders';
import { LONGEST_ROUND, roundMotors } from '@/lib/features/trust/schema';
import { formatCount } from '@/lib/platform/format';
import { PrintButton } from './print-button';
import styles from './round.module.css';
import { RoundCautions } from './round-cautions';
import { RoundMotorBlock } from './round-motor-block';

export const metadata: Metadata = { title: 'Round sheet' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** A sheet to take along: for each chosen motor the readings wanted, blank, with what to expect. */
export default async function RoundScreen({ params, searchParams }: Props) {
  const { study } = await params;
  const round = await loadRound(study, roundMotors((await searchParams).m));
  if (!round) notFound();
  if (round.motors.length === 0) {
    return (
      <main id="main" className={sheet.main}>
        <h1>Round sheet</h1>
        <p>
          No motor was ticked. <Link href={`/${study}/trust`}>Tick those to visit</Link>, then make the sheet again.
        </p>
      </main>
    );
  }
  const count = formatCount(round.motors.length);
  const stops = round.motors.map(({ id }) => id);
  return (
    <main id="main" className={sheet.main}>
      <p className="screen-only">
        <Link href={`/${study}/trust`}>Trust</Link>
      </p>
      <h1>Round sheet</h1>
      <p>
        {round.name}
        {round.demo ? ' (invented figures)' : ''}, as of {round.asOf}:{' '}
        {round.motors.length === 1 ? 'one motor' : `${count} motors`},{' '}
        {round.motors.some(({ site }) => site !== '') ? 'by site and area' : 'by area'}.
      </p>
      {round.leftOut > 0 && (
        <p>
          {formatCount(round.leftOut)} more were ticked; a sheet holds {LONGEST_ROUND} at most.
        </p>
      )}
      <p className={`${styles.tools} screen-only`}>
        <PrintButton /> <span className={sheet.soft}>A4 or Letter; black and white will do.</span>
      </p>
      <RoundCautions />
      <p className={styles.sign}>
        <span>Name</span>
        <span>Date</span>
        <span>Instruments</span>
      </p>
      <p className={sheet.soft}>
        What to expect holds at the load said with each motor, 95 times in 100. A reading outside: look at range, phase and
        connection, and read once more; if it stays, write it down as it is, with a word why. Read voltages, currents, power and
        speed within a minute of one another, at a steady load.
      </p>
      {/* A table for paper's sake: its head is printed again on every page. */}
      <table className={styles.pages} role="presentation">
        <thead>
          <tr>
            <td className={`${styles.head} print-only`}>
              Qualified persons only: live panels, turning shafts, stored charge. Never open a current-transformer secondary;
              guards stay on; lock out before contact. Local codes and licensed practice decide.
            </td>
          </tr>
        </thead>
        <tbody>
          {round.motors.map((motor) => (
            <tr key={motor.id}>
              <td className={styles.frame}>
                <RoundMotorBlock motor={motor} study={study} round={stops} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </main>
  );
}
