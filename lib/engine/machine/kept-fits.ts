import type { Fit } from '../estimate/least-squares';
import type { Evidence } from './fit';

/** Motors on offer are few beside the motors that they may replace: so many of their fits are kept. */
const KEPT = 4000;

interface Entry {
  readonly evidence: Evidence;
  readonly fit: Fit | undefined;
}

const entries = new Map<number, Entry>();

/**
 * The fit of this evidence, worked out once for all motors that ask for the same: figures and doubts are compared to the last digit, so that
 * the answer is what working it out again would give.
 */
export function keptFit(evidence: Evidence, workOut: (evidence: Evidence) => Fit | undefined): Fit | undefined {
  const mark = markOf(evidence);
  const known = entries.get(mark);
  if (known && same(known.evidence, evidence)) return known.fit;
  const fit = workOut(evidence);
  if (entries.size >= KEPT) entries.clear();
  entries.set(mark, { evidence: { ...evidence, start: evidence.start.slice() }, fit: fit && withOwnMemory(fit) });
  return fit;
}

/** What is kept must not hold on to the room from which short-lived arrays are cut. */
function withOwnMemory(fit: Fit): Fit {
  const { unknowns, predicted, gain, jacobian } = fit;
  return {
    ...fit,
    unknowns: unknowns.slice(),
    predicted: predicted.slice(),
    gain: gain.slice(),
    jacobian: jacobian.slice(),
  };
}

/** A number by which to look up; two evidences may share it, and then only the later is kept. */
function markOf({ observations, start, rotorShare }: Evidence): number {
  let mark = rotorShare;
  for (let i = 0; i < observations.length; i++) {
    const each = observations[i];
    if (each) mark += each.value.value * (i + 1.37) + each.u * (7.1 * i + 3.3);
  }
  for (let k = 0; k < start.length; k++) mark += (start[k] ?? 0) * (2.9 * k + 1.7);
  return mark;
}

function same(a: Evidence, b: Evidence): boolean {
  if (
    a.rotorShare !== b.rotorShare ||
    a.observations.length !== b.observations.length ||
    a.conditions.length + b.conditions.length > 0
  )
    return false;
  for (let k = 0; k < a.start.length; k++) if (a.start[k] !== b.start[k]) return false;
  return a.observations.every((each, i) => {
    const other = b.observations[i];
    if (!other || each.value.value !== other.value.value || each.u !== other.u) return false;
    const [one, two] = [each.target, other.target];
    if (one.of !== two.of) return false;
    if (one.of === 'parameter') return two.of === 'parameter' && one.index === two.index;
    if ('temperature' in one) return 'temperature' in two && one.temperature === two.temperature;
    return !('voltage' in one) || ('voltage' in two && one.voltage === two.voltage);
  });
}
