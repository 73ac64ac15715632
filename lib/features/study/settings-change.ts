/** One key of the settings as an act changed it; `undefined` where there was, or is, none. */
export interface ChangedKey {
  /** As the history names it; the keys of policy and accuracy with a point. */
  readonly key: string;
  readonly from: unknown;
  readonly to: unknown;
}

type SettingsFile = Readonly<Record<string, unknown>>;

const NESTED: ReadonlySet<string> = new Set(['policy', 'accuracy']);

/** The keys of a settings file with their values, those of policy and accuracy one by one. */
export function flatSettings(file: SettingsFile): Map<string, unknown> {
  const found = new Map<string, unknown>();
  for (const [key, value] of Object.entries(file)) {
    if (NESTED.has(key) && typeof value === 'object' && value !== null) {
      for (const [inner, part] of Object.entries(value)) found.set(`${key}.${inner}`, part);
    } else found.set(key, value);
  }
  return found;
}

/** Those of the changed keys that no longer have the value which the act gave them. */
export function changedSince(file: SettingsFile, facts: readonly ChangedKey[]): string[] {
  const now = flatSettings(file);
  return facts.filter(({ key, to }) => JSON.stringify(now.get(key)) !== JSON.stringify(to)).map(({ key }) => key);
}

/** The settings file in which the changed keys have their former values. */
export function withFormer(file: SettingsFile, facts: readonly ChangedKey[]): SettingsFile {
  const former: Record<string, unknown> = { ...file };
  for (const { key, from } of facts) {
    const [outer = '', inner] = key.split('.');
    if (inner === undefined) former[outer] = from;
    else former[outer] = { ...Object(former[outer]), [inner]: from };
  }
  return former;
}
