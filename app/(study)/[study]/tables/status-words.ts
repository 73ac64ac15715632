/** The status of a row in plain words, as counts of them are listed. */
export const STATUS_WORDS: Readonly<Record<string, string>> = {
  read: 'read in the source',
  'read-secondary': 'read in a second text',
  memory: 'from memory',
  practice: 'common practice',
  derived: 'derived',
  computed: 'computed from published coefficients',
  disagree: 'where texts disagree',
  gap: 'left empty',
  invented: 'invented',
};

/** The status of one row, with what follows from it. */
export function rowStatus(status: string): string {
  if (status === 'memory') return 'from memory: shown, not used to claim compliance';
  return STATUS_WORDS[status] ?? status;
}
