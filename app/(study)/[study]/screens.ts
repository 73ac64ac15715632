/** The screens of a study in the order in which they stand in the margin; a new one adds its line. */
export const SCREENS: readonly { readonly segment: string; readonly label: string }[] = [
  { segment: 'fleet', label: 'Fleet' },
  { segment: 'ranking', label: 'Ranking' },
  { segment: 'plan', label: 'Plan' },
  { segment: 'trust', label: 'Trust' },
  { segment: 'review', label: 'Review' },
  { segment: 'worklist', label: 'Worklist' },
  { segment: 'import', label: 'Import' },
  { segment: 'bench', label: 'Bench test' },
  { segment: 'setup', label: 'Setup' },
  { segment: 'history', label: 'History' },
  { segment: 'method', label: 'Method' },
  { segment: 'tables', label: 'Tables' },
];
