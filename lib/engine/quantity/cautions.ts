/** Cautions that stand beside what someone is sent to do. */
export const LIVE = 'Qualified persons only, with the panel’s shock and arc-flash boundaries respected.';
export const DEAD =
  'Isolate, lock out and prove dead first; disconnect drives, capacitors and arresters; afterwards discharge the winding for 15 minutes or four times the test, whichever is longer.';
export const UNCOUPLED =
  'Secure the key, keep within the starts the maker allows, and do not run cylindrical-roller bearings without load for long.';
