import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { savePlate } from '@/lib/features/motor/actions';
import { plateForm } from '@/lib/features/motor/form-fields';
import { loadStored } from '@/lib/features/motor/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { CellsForm } from '../cells-form';
import styles from '../motor.module.css';

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
}

export const metadata: Metadata = { title: 'Change the plate' };

/** The plate and the driven load of a motor, to be changed. */
export default async function EditPlate({ params }: Props) {
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
      <h1>Change the plate of {stored.motor.tag}</h1>
      <p className={styles.soft}>
        Decimals with a point. An empty cell means “not known”, never zero. Every change stands in the history with your name.
      </p>
      <CellsForm
        action={savePlate}
        groups={plateForm(stored.motor, inForce.settings.currency)}
        study={study}
        motor={motor}
        version={stored.version}
        who={await loadWho()}
        submit="Save the plate"
        back={back}
      />
    </main>
  );
}
