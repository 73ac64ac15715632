import type { PrismaClient, Tx } from '@/lib/platform/db';
import type { ViewEntry } from './schema';

/** A reader's own views of a screen and those that others share, by name. */
export async function readViews(
  db: PrismaClient | Tx,
  studyId: string,
  screen: string,
  owner: string,
): Promise<readonly ViewEntry[]> {
  const rows = await db.savedView.findMany({
    where: { studyId, screen, OR: [{ owner }, { shared: true }] },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ id, name, query, shared, owner: whose }) => ({ id, name, query, shared, own: whose === owner }));
}
