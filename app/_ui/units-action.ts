'use server';

import { cookies } from 'next/headers';
import { type ReaderUnits, readUnits, UNITS_COOKIE } from '@/lib/features/study/reader-units';
import { KEPT_FOR_A_YEAR } from '@/lib/platform/cookie';

/** Keeps the reader's unit of shaft power for a year. */
export async function rememberUnits(units: ReaderUnits): Promise<void> {
  const jar = await cookies();
  const wanted = readUnits(units);
  if (wanted === 'kw') jar.delete(UNITS_COOKIE);
  else jar.set(UNITS_COOKIE, wanted, KEPT_FOR_A_YEAR);
}
