'use client';

import { useEffect } from 'react';

interface Props {
  /** At the foot of each sheet; without quotation marks and backslashes. */
  readonly foot: string;
  /** At the head of each sheet, for what nobody may overlook. */
  readonly head?: string;
}

/** Words in the margins of each sheet of paper, where no text can run into them. Nothing on the screen. */
export function PageFoot({ foot, head }: Props) {
  useEffect(() => {
    // A page's margin takes its words from a style sheet alone; one made by a script needs no leave for inline styles.
    const box = (place: string, text: string, font: string) =>
      `@${place} { content: "${text.replaceAll(/["\\\n]/g, ' ')}"; font: ${font}; white-space: nowrap; }`;
    const boxes = [
      box('bottom-left', foot, '7pt monospace'),
      ...(head === undefined ? [] : [box('top-center', head, 'bold 10pt sans-serif')]),
    ];
    const margin = new CSSStyleSheet();
    margin.replaceSync(`@media print { @page { ${boxes.join(' ')} } @page wide { ${boxes.join(' ')} } }`);
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, margin];
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== margin);
    };
  }, [foot, head]);
  return null;
}
