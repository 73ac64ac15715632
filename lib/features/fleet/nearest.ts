/**
 * The known name that a misspelt one was probably meant to be: the one with the fewest letters to change, else the
 * one that shares most of its parts (`payback_years` for `max_simple_payback_years`); nothing if none is close.
 */
export function nearestWord(word: string, known: Iterable<string>): string | undefined {
  const wanted = word.trim().toLowerCase();
  if (wanted.length > 100) return undefined;
  const candidates = [...known];
  let best: string | undefined;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  for (const candidate of candidates) {
    const distance = editDistance(wanted, candidate.toLowerCase(), least);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best ?? sharingParts(wanted, candidates);
}

/** At least half of the parts of the longer name must be shared. */
function sharingParts(wanted: string, candidates: readonly string[]): string | undefined {
  const parts = new Set(wanted.split(/[^a-z0-9]+/));
  let best: string | undefined;
  let most = 0;
  for (const candidate of candidates) {
    const own = candidate.toLowerCase().split('_');
    const share = own.filter((part) => parts.has(part)).length / Math.max(own.length, parts.size);
    if (share >= 0.5 && share > most) {
      most = share;
      best = candidate;
    }
  }
  return best;
}

/** Number of letters to insert, delete or replace; given up when it reaches `limit`. */
function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let previous = Array.from({ length: b.length + 1 }, (_, at) => at);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = (previous[j - 1] ?? limit) + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(replaced, (previous[j] ?? limit) + 1, (current[j - 1] ?? limit) + 1));
    }
    previous = current;
  }
  return previous[b.length] ?? limit;
}
