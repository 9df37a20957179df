/** The words of an answer, as they are compared. */
import { parsePoints } from '../../sprint/points.ts';
import { withoutEnds } from '../cards/card-link.ts';

/** A tick, as it is or as the platform writes it out. */
const TICK = /:(?:white_check_mark|heavy_check_mark|ballot_box_with_check):|[✔☑✅]\uFE0F?/gu;
/** Other signs, likewise (`:tada:`), and smileys of letters. */
const EMOJI =
  /:[a-z][a-z0-9_+-]{1,40}:|(?:(?!✅)\p{Extended_Pictographic}|[\u{1F3FB}-\u{1F3FF}]|\u200D|\uFE0F)+|(?<=\s)[:;]-?[()D](?=\s|$)/giu;
/** Before a number that is no more than about right. */
const ABOUT = /[~∼≈](?=\s?[\d½])/g;
/** Between a card and what is said of it, or between what was and what is left, with or without spaces around it. */
const SIGNS = /->|=>|[→=:]/g;
const FULL_STOPS = new Set('.!');
export const SIGNED_NUMBER = /^[-−]?\d/;

/** In small letters, with one kind of apostrophe, and without full stops at the end. */
export function plainly(text: string): string {
  return wordsOf(text).join(' ').toLowerCase().replaceAll("'", '’');
}

export function wordsOf(text: string): string[] {
  const plain = text.replace(TICK, ' ✅ ').replace(EMOJI, ' ').replace(ABOUT, '').trim();
  return withoutEnds(plain, FULL_STOPS, 'end').replace(SIGNS, ' $& ').trim().split(/\s+/);
}

export function isNumber(typed: string): boolean {
  return parsePoints(typed) !== undefined;
}
