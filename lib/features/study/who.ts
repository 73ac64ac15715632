import { cookies } from 'next/headers';
import { KEPT_FOR_A_YEAR } from '@/lib/platform/cookie';
import { whoSchema } from './schema';

const COOKIE = 'who';

/** The name typed last in this browser; empty at first. */
export async function loadWho(): Promise<string> {
  const parsed = whoSchema.safeParse(decode((await cookies()).get(COOKIE)?.value ?? ''));
  return parsed.success ? parsed.data : '';
}

/** Keeps the name for the next form, for a year. For server actions. */
export async function rememberWho(name: string): Promise<void> {
  (await cookies()).set(COOKIE, encodeURIComponent(name), KEPT_FOR_A_YEAR);
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}
