/**
 * A language that nobody speaks, made from the English messages: every word is 40% longer and written in letters most of
 * which English doesn't have, so that a sentence which doesn't come from the message files gives itself away, and so that a
 * longer language has room everywhere. The font of the charts has all of them.
 */
import { type Pattern, parse, serialize, type TextElement, Visitor } from '@fluent/syntax';
import { type Language, languageOf, messageFiles } from '../../src/words/language.ts';

const LOOKALIKES: Readonly<Record<string, string>> = {
  a: 'ä',
  c: 'ç',
  d: 'đ',
  e: 'é',
  f: 'ƒ',
  g: 'ğ',
  h: 'ħ',
  i: 'ï',
  j: 'ĵ',
  k: 'ķ',
  l: 'ļ',
  n: 'ñ',
  o: 'ö',
  p: 'þ',
  r: 'ŕ',
  s: 'š',
  t: 'ŧ',
  u: 'ü',
  w: 'ŵ',
  y: 'ÿ',
  z: 'ž',
};

/** Entities, markup and addresses stay. */
const TO_THE_LETTER = /<[^>]*>|&[a-z]+;|https?:\S+/;

function lengthened(word: string): string {
  const letters = [...word].map((letter) => {
    const other = LOOKALIKES[letter.toLowerCase()] ?? letter;
    return letter === letter.toLowerCase() ? other : other.toUpperCase();
  });
  return letters.join('') + 'õ'.repeat(Math.ceil(word.length * 0.4));
}

function pseudo(text: string): string {
  return text
    .split(new RegExp(`(${TO_THE_LETTER.source})`))
    .map((part, i) => (i % 2 === 0 ? part.replace(/\p{L}+/gu, lengthened) : part))
    .join('');
}

class Translate extends Visitor {
  override visitPattern(node: Pattern): void {
    // What one types stays to the letter: all between two backticks, which may be in different elements.
    let isTyped = false;
    for (const element of node.elements) {
      if (element.type !== 'TextElement') continue;
      const parts = (element as TextElement).value.split('`').map((part, i) => {
        if (i > 0) isTyped = !isTyped;
        return isTyped ? part : pseudo(part);
      });
      (element as TextElement).value = parts.join('`');
    }
    this.genericVisit(node);
  }
}

/** @param locale one of other letters, unless a test says otherwise; its plural rules must be those of English */
export function pseudoLanguage(locale = 'el'): Language {
  const sources = [...messageFiles('en-GB').values()].map((source) => {
    const resource = parse(source, {});
    new Translate().visit(resource);
    return serialize(resource, {});
  });
  return languageOf(locale, sources);
}
