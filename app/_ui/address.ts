/** The address of a page with what is asked of it, in the order given; what is not asked is left out. */
export function addressOf(path: string, asked: Readonly<Record<string, string | undefined>>): string {
  const query = new URLSearchParams(
    Object.entries(asked).flatMap(([name, value]) => (value === undefined ? [] : [[name, value]])),
  ).toString();
  return query === '' ? path : `${path}?${query}`;
}
