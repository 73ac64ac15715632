/** Reference that hands the focus of a part that goes to what outlives it: the nearest around it that fits `where`. */
function heirIn(where: string): (part: HTMLElement | null) => (() => void) | undefined {
  return (part) => {
    if (!part) return undefined;
    // Called before the part is taken out of the page; afterwards nobody knows what had the focus.
    return () => {
      if (!part.contains(document.activeElement)) return;
      const heir = part.parentElement?.closest<HTMLElement>(where);
      if (!heir) return;
      if (!heir.hasAttribute('tabindex')) heir.tabIndex = -1;
      heir.focus({ preventScroll: true });
    };
  };
}

/**
 * Reference for a part of the page that goes once its button was pressed: if it has the focus then, the section that it stood in gets it, so
 * that it is not lost.
 */
export const focusHeir = heirIn('section, main');

/** The same for a row whose table may go with it: the section around the table's place gets the focus. */
export const focusBeyondTable = heirIn('section:not([tabindex="0"]), main');

/** The same for a part whose section goes with it. */
export const focusMain = heirIn('main');

/** For a button that gives way to another one beside it: the focus stays with what holds both. */
export function keepFocus(button: HTMLElement): void {
  button.parentElement?.focus();
}
