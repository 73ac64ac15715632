import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { saveReading } from '@/lib/features/motor/actions';
import { readingForm, wantedFirst } from '@/lib/features/motor/form-fields';
import { loadInstrumentNames, loadStored } from '@/lib/features/motor/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { loadRoundStop, loadWantedColumns } from '@/lib/features/trust/loaders';
import { readingAddress, roundMotors } from '@/lib/features/trust/schema';
import { formatCount } from '@/lib/platform/format';
import { Cautions } from '../cautions';
import { CellsForm } from '../cells-form';
import styles from '../motor.module.css';

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export const metadata: Metadata = { title: 'Add a reading' };

/** A new reading of a motor, with the cautions that belong to taking it. */
export default async function AddReading({ params, searchParams }: Props) {
  const { study, motor } = await params;
  const stored = await loadStored(study, motor);
  const inForce = await currentStudy(study);
  if (!stored || !inForce) notFound();
  const back = `/${study}/motor/${motor}`;
  const stops = roundMotors((await searchParams).m);
  const stop = await loadRoundStop(study, stops, motor);
  const sheet = `/${study}/trust/round?${new URLSearchParams(stops.map((id) => ['m', id]))}`;
  const form = readingForm(inForce.settings.currency, await loadInstrumentNames(study));
  const groups = wantedFirst(form, await loadWantedColumns(study, motor));
  return (
    <main id="main" className={styles.main}>
      <p className={styles.crumb}>
        <Link href={back}>
          {stored.motor.site} {stored.motor.tag}
        </Link>
      </p>
      <h1>Add a reading of {stored.motor.tag}</h1>
      {stop && (
        <p>
          Motor {formatCount(stop.at)} of {formatCount(stop.of)} on the round.{' '}
          <Link href={`${sheet}#${motor}`} prefetch={false}>
            What to expect, on the round sheet
          </Link>
        </p>
      )}
      <aside className={styles.caution} aria-label="Cautions">
        <Cautions />
      </aside>
      <p className={styles.soft}>
        Decimals with a point. An empty cell means “not read”, never zero.
        {groups.some(({ folded }) => folded) && ' What this motor is to be read for comes first; all else is folded below it.'}
      </p>
      <CellsForm
        action={saveReading}
        groups={groups}
        study={study}
        motor={motor}
        version={stored.version}
        who={await loadWho()}
        submit="Save the reading"
        back={back}
        {...(stop && {
          onwards: stop.next
            ? { href: readingAddress(study, stop.next.id, stops), words: `Next on the round: ${stop.next.tag}` }
            : { href: sheet, words: 'That was the last motor of the round; back to its sheet' },
        })}
      />
    </main>
  );
}
