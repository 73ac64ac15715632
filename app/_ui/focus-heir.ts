/**
 * Reference for a part of the page that goes once its button was pressed: if it has the focus then, the section that it stood in gets it, so
 * that it is not lost.
 */
export function focusHeir(part: HTMLElement | null): (() => void) | undefined {
  if (!part) return undefined;
  // Called before the part is taken out of the page; afterwards nobody knows what had the focus.
  return () => {
    if (!part.contains(document.activeElement)) return;
    const heir = part.parentElement?.closest<HTMLElement>('section, main');
    if (!heir) return;
    if (!heir.hasAttribute('tabindex')) heir.tabIndex = -1;
    heir.focus({ preventScroll: true });
  };
}

/** For a button that gives way to another one beside it: the focus stays with what holds both. */
export function keepFocus(button: HTMLElement): void {
  button.parentElement?.focus();
}
