import type { GridFocus } from '@/app/_ui/table-grid-column';

/** The place in the list that was left for a motor's page, so that coming back leads to it again. */

const NAME = 'lossbook.fleet.place';

export function leavePlace(study: string, place: GridFocus): void {
  try {
    window.sessionStorage.setItem(NAME, JSON.stringify({ study, ...place }));
  } catch {
    // Without storage the list begins at its top.
  }
}

export function placeLeft(study: string): GridFocus | undefined {
  try {
    const text = typeof window === 'undefined' ? null : window.sessionStorage.getItem(NAME);
    if (text === null) return undefined;
    const { study: of, rowId, columnId }: Partial<Record<string, unknown>> = JSON.parse(text);
    return of === study && typeof rowId === 'string' && typeof columnId === 'string' ? { rowId, columnId } : undefined;
  } catch {
    return undefined;
  }
}

export function forgetPlace(): void {
  try {
    window.sessionStorage.removeItem(NAME);
  } catch {
    // There was nothing to forget.
  }
}
