import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const css = readFileSync('app/_ui/tokens.css', 'utf8');

/** Light and dark colour of a token. */
function token(name: string): { light: string; dark: string } {
  const match = new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}), (#[0-9a-f]{6})\\)`).exec(css);
  if (match?.[1] === undefined || match[2] === undefined) throw new Error(`There is no token ${name}.`);
  return { light: match[1], dark: match[2] };
}

/** Relative luminance, WCAG 2.2, "Relevant definitions". */
function luminance(colour: string): number {
  const channel = (start: number): number => {
    const value = Number.parseInt(colour.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}

function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

test('the ratio of black on white is 21 (WCAG 2.2, "contrast ratio"), and #767676 on white is 4.54 (W3C, technique G18 tools)', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
});

// WCAG 2.2: 1.4.3 wants 4.5 for text, 1.4.11 wants 3 for marks and borders of controls.
const GROUNDS = ['page', 'raised', 'hover', 'selected'];
const cases = [
  ...['ink', 'soft-ink', 'accent', 'caution', 'stop'].flatMap((name) => GROUNDS.map((ground) => [name, ground, 4.5] as const)),
  ...['stator', 'rotor', 'core', 'friction-windage', 'stray'].flatMap((name) =>
    ['page', 'raised'].map((ground) => [`loss-${name}`, ground, 3] as const),
  ),
  ['on-accent', 'accent', 4.5] as const,
];

test.each(cases)('%s on %s: at least %d in light and dark', (name, ground, least) => {
  expect(contrast(token(name).light, token(ground).light)).toBeGreaterThanOrEqual(least);
  expect(contrast(token(name).dark, token(ground).dark)).toBeGreaterThanOrEqual(least);
});
