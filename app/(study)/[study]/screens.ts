/** The screens of a study in the order in which they stand in the margin; a new one adds its line. */
export const SCREENS: readonly { readonly segment: string; readonly label: string }[] = [
  { segment: 'fleet', label: 'Fleet' },
  { segment: 'import', label: 'Import' },
];
