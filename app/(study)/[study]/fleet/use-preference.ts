import { useCallback, useEffect, useState } from 'react';

/** Something that this browser remembers of its reader; `fallback` until it is known, and where nothing may be stored. */
export function usePreference<T>(
  name: string,
  fallback: T,
  read: (value: unknown) => T | undefined,
): readonly [T, (value: T) => void] {
  const [value, setValue] = useState(fallback);
  useEffect(() => {
    try {
      const text = window.localStorage.getItem(name);
      const known = text === null ? undefined : read(JSON.parse(text));
      if (known !== undefined) setValue(known);
    } catch {
      // No storage, or something strange in it: the fallback serves.
    }
  }, [name, read]);
  const change = useCallback(
    (next: T) => {
      setValue(next);
      try {
        window.localStorage.setItem(name, JSON.stringify(next));
      } catch {
        // It holds for this visit only.
      }
    },
    [name],
  );
  return [value, change] as const;
}

export const readFlag = (value: unknown): boolean | undefined => (typeof value === 'boolean' ? value : undefined);
export const readNames = (value: unknown): readonly string[] | undefined =>
  Array.isArray(value) && value.every((name) => typeof name === 'string') ? value : undefined;
