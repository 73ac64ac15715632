/** The status of a row in plain words. */
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
