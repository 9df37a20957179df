import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../../src/rehearsal/page/style.css', import.meta.url), 'utf8');

/** Colours by name in one `:root` rule: the first is for light, the second for dark surroundings. */
function palette(rule: string): Record<string, string> {
  return Object.fromEntries(
    [...rule.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, hex]) => [name, hex]),
  );
}

const [light = '', dark = ''] = [...css.matchAll(/:root \{([^}]*)\}/g)].map(([, rule]) => rule);
const PALETTES = [
  ['light', palette(light)],
  ['dark', palette(dark)],
] as const;

/** Relative luminance and contrast ratio as WCAG 2.2 defines them (w3.org/TR/WCAG22, "relative luminance"). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

const TEXT_PAIRS = [
  ...['paper', 'page', 'shade', 'wash'].flatMap((ground) => [
    ['ink', ground],
    ['faint', ground],
    ['sea', ground],
  ]),
  ['lead', 'page'],
  ['lead', 'paper'],
  ['on-sea', 'sea'],
  ['page', 'lead'],
];

describe.each(PALETTES)('the %s colours', (_name, colours) => {
  const colour = (name: string): string => {
    const hex = colours[name];
    if (!hex) throw new Error(`style.css has no colour --${name}`);
    return hex;
  };

  // WCAG 2.2, success criterion 1.4.3: text at least 4.5 : 1.
  it.each(TEXT_PAIRS)('let %s be read on %s', (text = '', ground = '') => {
    expect(contrast(colour(text), colour(ground))).toBeGreaterThanOrEqual(4.5);
  });

  // WCAG 2.2, success criterion 1.4.11: outlines of controls at least 3 : 1.
  it.each(['paper', 'page'])('let the outline of a control be seen on %s', (ground) => {
    expect(contrast(colour('edge'), colour(ground))).toBeGreaterThanOrEqual(3);
  });
});

it('contrast is measured as published: black on white 21 : 1, #767676 on white 4.54 : 1', () => {
  // The second is the well-known lightest grey that passes on white (W3C, technique G18 and its examples; from memory).
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
});
