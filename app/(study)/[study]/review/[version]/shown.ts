/** A value of the settings as a person reads it. */
export function shown(value: unknown): string {
  if (value === undefined || value === null || (Array.isArray(value) && value.length === 0)) return 'none';
  if (Array.isArray(value) && value.every((each) => typeof each !== 'object')) return value.join(', ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}
