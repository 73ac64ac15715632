'use server';

import { cookies } from 'next/headers';
import { KEPT_FOR_A_YEAR } from '@/lib/platform/cookie';
import { readTheme, THEME_COOKIE, type Theme } from './theme';

/** Keeps the reader's choice of colours for a year. */
export async function rememberTheme(theme: Theme): Promise<void> {
  const jar = await cookies();
  const wanted = readTheme(theme);
  if (wanted === 'system') jar.delete(THEME_COOKIE);
  else jar.set(THEME_COOKIE, wanted, KEPT_FOR_A_YEAR);
}
