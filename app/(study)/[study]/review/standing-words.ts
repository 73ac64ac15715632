import type { VersionEntry } from '@/lib/features/sign-off/loaders';

/** What became of a version, as one word or two. */
export const STANDING_WORDS: Readonly<Record<VersionEntry['standing'], string>> = {
  open: 'waiting for review',
  signed: 'signed',
  returned: 'returned',
  rejected: 'rejected after it was signed',
};
