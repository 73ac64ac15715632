import { CONDITION } from '@/lib/engine/condition/findings';
import { LOAD } from '@/lib/engine/load/findings';
import { SUSPICION } from '@/lib/engine/load/suspicion';
import { PLATE } from '@/lib/engine/nameplate/findings';
import { OPTIONS } from '@/lib/engine/options/findings';
import { TRUST } from '@/lib/engine/trust/findings';

/** Every finding code of the engine, from the catalogues that make them. */
export const FINDING_CODES: readonly string[] = [PLATE, LOAD, SUSPICION, TRUST, CONDITION, OPTIONS].flatMap(({ kinds }) =>
  Object.keys(kinds),
);
