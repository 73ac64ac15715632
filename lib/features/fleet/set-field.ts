/** Sets a field of an object that is being put together from columns; the columns' declarations have tied key and type. */
export function setField(target: object, key: string, value: unknown): void {
  (target as Record<string, unknown>)[key] = value;
}
