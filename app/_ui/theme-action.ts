'use server';

import { cookies } from 'next/headers';
import { readTheme, THEME_COOKIE, type Theme } from './theme';

const YEAR_S = 365 * 24 * 3600;

/** Keeps the reader's choice of colours for a year. */
export async function rememberTheme(theme: Theme): Promise<void> {
  const jar = await cookies();
  const wanted = readTheme(theme);
  if (wanted === 'system') jar.delete(THEME_COOKIE);
  else jar.set(THEME_COOKIE, wanted, { path: '/', maxAge: YEAR_S, sameSite: 'lax', httpOnly: true });
}
