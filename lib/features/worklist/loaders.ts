import { compareNaturally } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { readWorklist } from './data';
import type { ApartItem, WorkItem, Worklist } from './schema';

/** The motors of a study that need a person; `undefined` before the first evaluation. */
export async function loadWorklist(studyId: string): Promise<Worklist | undefined> {
  return readWorklist(database().read, studyId);
}

type Placed = Pick<WorkItem | ApartItem, 'site' | 'area'>;

/** The places of a list in the order of names, and the place of each of its motors: its area, and its site where there are several. */
export function placesOf({ items, apart }: Worklist): {
  readonly places: readonly string[];
  readonly placeOf: (item: Placed) => string;
} {
  const all: readonly Placed[] = [...items, ...apart];
  const several = new Set(all.map(({ site }) => site)).size > 1;
  const placeOf = ({ site, area }: Placed): string => [several ? site : '', area ?? 'No area'].filter(Boolean).join(' / ');
  return { places: [...new Set(all.map(placeOf))].sort(compareNaturally), placeOf };
}
