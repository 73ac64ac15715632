'use client';

/** Prints the page. */
export function PrintButton() {
  return (
    <button type="button" data-primary onClick={() => window.print()}>
      Print
    </button>
  );
}
