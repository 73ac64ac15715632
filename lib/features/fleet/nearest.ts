/** The known word closest to a misspelt one, if any is close enough to be worth asking about. */
export function nearestWord(word: string, known: Iterable<string>): string | undefined {
  const wanted = word.trim().toLowerCase();
  let best: string | undefined;
  let least = Math.max(1, Math.floor(wanted.length / 3)) + 1;
  if (wanted.length > 100) return undefined;
  for (const candidate of known) {
    const distance = editDistance(wanted, candidate.toLowerCase(), least);
    if (distance < least) {
      least = distance;
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
