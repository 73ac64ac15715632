import { CONDITION } from './condition/findings';
import { LOAD } from './load/findings';
import { SUSPICION } from './load/suspicion';
import { PLATE } from './nameplate/findings';
import { OPTIONS } from './options/findings';
import { TRUST } from './trust/findings';

/** Every finding code of the engine by the step that makes it. */
export const FINDING_CODES = {
  plate: Object.keys(PLATE.kinds),
  load: Object.keys(LOAD.kinds),
  suspicion: Object.keys(SUSPICION.kinds),
  trust: Object.keys(TRUST.kinds),
  condition: Object.keys(CONDITION.kinds),
  options: Object.keys(OPTIONS.kinds),
} as const;
