/** What is worked out when it is first asked for, and then kept; what it is worked out from is let go. */
export function once<T>(workOut: () => T): () => T {
  let todo: (() => T) | undefined = workOut;
  let found: T;
  return () => {
    if (todo) {
      found = todo();
      todo = undefined;
    }
    return found;
  };
}
