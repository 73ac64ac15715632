import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { saveReading } from '@/lib/features/motor/actions';
import { readingForm } from '@/lib/features/motor/form-fields';
import { loadStored } from '@/lib/features/motor/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { Cautions } from '../cautions';
import { CellsForm } from '../cells-form';
import styles from '../motor.module.css';

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
}

export const metadata: Metadata = { title: 'Add a reading' };

/** A new reading of a motor, with the cautions that belong to taking it. */
export default async function AddReading({ params }: Props) {
  const { study, motor } = await params;
  const stored = await loadStored(study, motor);
  const inForce = await currentStudy(study);
  if (!stored || !inForce) notFound();
  const back = `/${study}/motor/${motor}`;
  return (
    <main id="main" className={styles.main}>
      <p className={styles.crumb}>
        <Link href={back}>
          {stored.motor.site} {stored.motor.tag}
        </Link>
      </p>
      <h1>Add a reading of {stored.motor.tag}</h1>
      <aside className={styles.caution} aria-label="Cautions">
        <Cautions />
      </aside>
      <p className={styles.soft}>Decimals with a point. An empty cell means “not read”, never zero.</p>
      <CellsForm
        action={saveReading}
        groups={readingForm(inForce.settings.currency)}
        study={study}
        motor={motor}
        version={stored.version}
        who={await loadWho()}
        submit="Save the reading"
        back={back}
      />
    </main>
  );
}
