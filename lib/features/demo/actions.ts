'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { database } from '@/lib/platform/db';
import type { Problem } from '@/lib/platform/errors';
import { wakeRunner } from '../evaluation/runner';
import { ensureDemo } from './mutations';

/** What the button shows when the demonstration could not be opened. */
export interface DemoState {
  readonly problem?: Problem;
}

/** Opens the demonstration, making it if there is none. */
export async function openDemo(_: DemoState): Promise<DemoState> {
  const opened = await ensureDemo(database());
  if (!opened.ok) return { problem: opened.problem };
  wakeRunner();
  revalidatePath('/', 'layout');
  redirect(`/${opened.value.id}/fleet`);
}
