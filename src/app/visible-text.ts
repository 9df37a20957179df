/**
 * Text as people can see it: what is invisible, reverses the reading direction or breaks a layout is taken out where
 * text comes in, before it is stored. Must not touch what can be seen: no letter, sign or emoji goes.
 */

/** Every kind of line end that is not a line feed; vertical tab and form feed included. */
const LINE_ENDS = /\r\n|[\r\v\f\u0085\u2028\u2029]/g;

/** Controls, which terminals obey and the database refuses; tab and line feed stay. */
const CONTROLS = /[^\P{Cc}\t\n]/gu;

/**
 * Invisible: soft hyphen, direction marks, overrides and isolates (unicode.org/reports/tr9), zero-width spaces, fillers,
 * deprecated format characters, annotation marks, tags. The joiners U+200C and U+200D stay: scripts and emoji need them.
 */
export const INVISIBLE =
  '\\u00ad\\u034f\\u061c\\u115f\\u1160\\u17b4\\u17b5\\u180e\\u200b\\u200e\\u200f\\u202a-\\u202e\\u2060-\\u206f\\u3164\\ufeff\\uffa0\\ufff9-\\ufffc\\ufffe\\uffff\\u{e0000}-\\u{e007f}';
const INVISIBLE_SIGNS = new RegExp(`[${INVISIBLE}]`, 'gu');

/**
 * More marks on one letter than any script needs climb over the lines above and below. One at a time: millions of them
 * in one match would exhaust the stack.
 */
const STACKED_MARKS = /(?<=\p{M}{8})\p{M}/gu;

/** Halves of signs become U+FFFD; line ends become line feeds; other controls go. */
export function visibleText(text: string): string {
  return text
    .toWellFormed()
    .replace(LINE_ENDS, '\n')
    .replace(CONTROLS, '')
    .replace(INVISIBLE_SIGNS, '')
    .replace(STACKED_MARKS, '');
}
