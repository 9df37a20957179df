/**
 * The plan form's fields for pasted cards. The platform's text field holds 3,000 characters, which 100
 * cards outgrow, so there are several; their texts are put together line by line.
 */
import type { InputBlock } from '@slack/types';
import { cardsField, MAX_CARD_FIELDS } from '../ids.ts';
import { TEXT_INPUT_MAX_LENGTH, textField } from './form-inputs.ts';

/** How many fields there are before anything has been typed. */
const FIELDS_AT_FIRST = 3;

export function cardTextFields(cards: string): InputBlock[] {
  const texts = textsFor(cards);
  const count = Math.min(MAX_CARD_FIELDS, Math.max(FIELDS_AT_FIRST, texts.length + 1));
  return Array.from({ length: count }, (_, i) => {
    const isFirst = i === 0;
    return textField({
      field: cardsField(i + 1),
      label: isFirst ? 'Cards, one a line' : `More cards (${i + 1} of ${count} fields)`,
      hint: isFirst
        ? 'title, estimate, @owner. Rows pasted from a spreadsheet work as well. A title may begin with a key such as LP-7. No cards: leave it empty.'
        : `If they do not all fit above: a field holds 3,000 characters. Lines are counted on through all fields.`,
      optional: true,
      multiline: true,
      initial: texts[i],
    });
  });
}

/** Splits the text at line ends into pieces that a field holds; a longer line, which no card needs, is cut. */
function textsFor(cards: string): string[] {
  const texts: string[] = [];
  for (const line of cards.split('\n')) {
    const last = texts.at(-1);
    const joined = last === undefined ? line : `${last}\n${line}`;
    if (last !== undefined && joined.length <= TEXT_INPUT_MAX_LENGTH) texts[texts.length - 1] = joined;
    else texts.push(line);
  }
  return texts;
}
