/**
 * The bundled font, and what it can draw. The fonts of the machine are never asked: they differ from host to host, and an
 * empty box in place of a letter says nothing.
 */
import { createRequire } from 'node:module';

/** Atkinson Hyperlegible, under a name of our own, so that one installed on the machine never takes its place. */
export const chartFont = 'Loadline Chart';

/** Absolute paths of the regular and the bold cut. Throws when the package is not installed. */
export function chartFontFiles(): string[] {
  const { resolve } = createRequire(import.meta.url);
  return ['400Regular/AtkinsonHyperlegible_400Regular.ttf', '700Bold/AtkinsonHyperlegible_700Bold.ttf'].map(
    (file) => resolve(`@expo-google-fonts/atkinson-hyperlegible/${file}`),
  );
}

/** What Atkinson Hyperlegible holds of Latin letters, punctuation and signs; from its own character map. */
const inFont = new RegExp(
  `^[${[
    String.raw`\u0020-\u007e\u00a0-\u0107\u010a-\u0113\u0116-\u011b\u011e-\u0123\u0126\u0127\u012a\u012b`,
    String.raw`\u012e\u012f\u0131\u0136\u0137\u013b-\u013e\u0141-\u0148\u0150-\u0155\u0158-\u015b\u015e-\u0165`,
    String.raw`\u016a\u016b\u016e-\u0173\u0178-\u017e\u0218-\u021b`,
    String.raw`\u2013\u2014\u2018-\u201a\u201c-\u201e\u2020-\u2022\u2026\u2030\u2039\u203a\u20ac\u2122\u2212`,
  ].join('')}]$`,
  'u',
);

/** Letters, digits and accents: without them a name is another name. */
const carriesMeaning = /[\p{L}\p{N}\p{M}]/u;

/** Marks that only turn the sign before them into an emoji. */
const emojiPresentation = /[\ufe0e\ufe0f\u20e3]/u;

/**
 * The text on one line, without signs that the font lacks (an emoji, say).
 * Undefined when the font lacks a letter or digit of it, or when nothing is left: half a name would mislead,
 * so the caller leaves the name out of the picture. The message around the picture still holds it in full.
 */
export function drawableText(text: string): string | undefined {
  let kept = '';
  for (const character of text.normalize('NFC')) {
    if (inFont.test(character)) kept += character;
    else if (emojiPresentation.test(character)) continue;
    else if (carriesMeaning.test(character)) return undefined;
    else kept += ' ';
  }
  const oneLine = kept.replace(/\s+/g, ' ').trim();
  return oneLine === '' ? undefined : oneLine;
}
