import type { z } from 'zod';
import type { Database } from '@/lib/platform/db';
import type { viewForm } from './schema';

/** Keeps a view under its name; one of the same name and owner is replaced. */
export async function keepView(db: Database, view: z.infer<typeof viewForm>, owner: string): Promise<void> {
  const { studyId, screen, name, query, shared } = view;
  await db.write(async (tx) => {
    await tx.savedView.upsert({
      where: { studyId_screen_owner_name: { studyId, screen, owner, name } },
      create: { studyId, screen, name, query, shared, owner },
      update: { query, shared },
    });
  });
}

/** Removes one of a reader's own views; returns whether there was one. */
export async function removeView(db: Database, studyId: string, id: string, owner: string): Promise<boolean> {
  return db.write(async (tx) => (await tx.savedView.deleteMany({ where: { id, studyId, owner } })).count > 0);
}
