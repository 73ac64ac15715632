import Link from 'next/link';
import { motorKey } from '@/lib/features/plan/loaders';
import { nameOf } from '@/lib/features/plan/words';
import sheet from './sheet-page.module.css';

interface Props {
  readonly study: string;
  /** Ids that the motors have in the study now, by site and tag. */
  readonly motorIds: ReadonlyMap<string, string>;
  readonly motor: { readonly site: string; readonly tag: string };
}

/** A motor as the head of its row, with the way to its page while the study has it. */
export function MotorCell({ study, motorIds, motor }: Props) {
  const id = motorIds.get(motorKey(motor));
  return (
    <th scope="row" className={sheet.nowrap}>
      {id === undefined ? (
        nameOf(motor)
      ) : (
        <Link href={`/${study}/motor/${id}`} prefetch={false}>
          {nameOf(motor)}
        </Link>
      )}
    </th>
  );
}
