import Link from 'next/link';
import { setArchived } from '@/lib/features/study/actions';
import type { StudyEntry } from '@/lib/features/study/loaders';
import { counted, formatInstant } from '@/lib/platform/format';
import styles from './page.module.css';
import { RemoveForm } from './remove-form';

/** The studies there are, each with what it holds and the way to put it aside. */
export function StudyList({ studies }: { readonly studies: readonly StudyEntry[] }) {
  return (
    <ul className={styles.studies}>
      {studies.map((study) => (
        <li key={study.id} className={styles.entry}>
          <div>
            <Link className={styles.open} href={`/${study.id}/${study.motors === 0 ? 'import' : 'fleet'}`}>
              {study.name}
            </Link>
            {study.demo && <span className={styles.invented}> demonstration, invented figures</span>}
            <p className={styles.note}>
              {counted(study.motors, 'motor')}, {counted(study.readings, 'reading')}; changed {formatInstant(study.updatedAt)} UTC
            </p>
          </div>
          <form action={setArchived}>
            <input type="hidden" name="study" value={study.id} />
            <input type="hidden" name="archived" value="yes" />
            <button type="submit">
              {study.demo ? 'Remove the demonstration' : 'Put aside'}
              {!study.demo && <span className="unseen"> {study.name}</span>}
            </button>
          </form>
        </li>
      ))}
    </ul>
  );
}

/** Studies that were put aside: back into the list, or gone for good. */
export function ArchivedList({ studies }: { readonly studies: readonly StudyEntry[] }) {
  return (
    <ul className={styles.studies}>
      {studies.map((study) => (
        <li key={study.id} className={styles.entry}>
          <div>
            {study.name}
            <p className={styles.note}>
              {counted(study.motors, 'motor')}
              {study.archivedAt === undefined ? '' : `; put aside ${formatInstant(study.archivedAt)} UTC`}
            </p>
          </div>
          <div className={styles.buttons}>
            <form action={setArchived}>
              <input type="hidden" name="study" value={study.id} />
              <input type="hidden" name="archived" value="no" />
              <button type="submit">
                Bring back<span className="unseen"> {study.name}</span>
              </button>
            </form>
            <RemoveForm study={study.id} name={study.name} />
          </div>
        </li>
      ))}
    </ul>
  );
}
