import type { Plant } from './plants';

/** Faults in condition readings. */
export const CONDITION_PLANTS: readonly Plant[] = [];
