import Link from 'next/link';
import { motorKey } from '@/lib/features/plan/loaders';
import { nameOf } from '@/lib/features/plan/words';
import { ROW_HEAD } from './row-roles';
import sheet from './sheet-page.module.css';

interface Props {
  readonly study: string;
  /** Ids that the motors have in the study now, by site and tag. */
  readonly motorIds: ReadonlyMap<string, string>;
  readonly motor: { readonly site: string; readonly tag: string };
}

/** A motor as the head of its row, with the way to its page while the study has it. */
export function MotorCell(props: Props) {
  return (
    <th {...ROW_HEAD} scope="row" className={sheet.motor}>
      <MotorName {...props} />
    </th>
  );
}

/** A motor by its tag, and by its site where the study has several; it leads to its page while the study has it. */
export function MotorName({ study, motorIds, motor }: Props) {
  const id = motorIds.get(motorKey(motor));
  const name = severalSites(motorIds) ? nameOf(motor) : motor.tag;
  if (id === undefined) return name;
  return (
    <Link href={`/${study}/motor/${id}`} prefetch={false}>
      {name}
    </Link>
  );
}

const SEVERAL = new WeakMap<ReadonlyMap<string, string>, boolean>();

/** Whether motors stand at more than one site, so that their tags alone do not name them. */
function severalSites(motorIds: ReadonlyMap<string, string>): boolean {
  const known = SEVERAL.get(motorIds);
  if (known !== undefined) return known;
  const found = new Set([...motorIds.keys()].map((key) => key.slice(0, key.indexOf('\n')))).size > 1;
  SEVERAL.set(motorIds, found);
  return found;
}
