/** A sign of a relation with an index, as `f_r`, and what stands before it. */
const INDEXED = /^(.*?\b[a-z])_([a-z]+)\b(.*)$/s;

/** A relation, or a sentence on it, with its signs set as such: the index of `f_r` stands lower. */
export function Signs({ text }: { readonly text: string }) {
  const [, before, index, rest] = INDEXED.exec(text) ?? [];
  if (before === undefined || rest === undefined) return text;
  return (
    <>
      {before}
      <sub>{index}</sub>
      <Signs text={rest} />
    </>
  );
}
