/** The kinds of decision that a fleet can be filtered by, in the order of urgency; ids are those of the fleet's filter. */
export const DECISIONS: readonly { readonly id: string; readonly action: string; readonly timing: string }[] = [
  { id: 'repair-now', action: 'repair', timing: 'now' },
  { id: 'replace-now', action: 'replace', timing: 'now' },
  { id: 'resize-now', action: 'resize', timing: 'now' },
  { id: 'replace-at-failure', action: 'replace', timing: 'at-failure' },
  { id: 'resize-at-failure', action: 'resize', timing: 'at-failure' },
  { id: 'keep', action: 'keep', timing: 'now' },
];

export function decisionWords(action: string, timing: string): string {
  return action === 'keep' ? 'keep' : `${action} ${timing === 'now' ? 'now' : 'at failure'}`;
}
