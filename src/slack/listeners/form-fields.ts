/** Reads what was typed and chosen in a form. A field that is not there reads as empty. */

import type { TypedAnswer } from '../../app/answering/read-answers.ts';
import { visibleText } from '../../app/visible-text.ts';
import { StaleControl } from '../button-values.ts';
import type { Surface } from '../door/incoming.ts';
import { type SentFile, sentFile } from '../files/download-file.ts';
import {
  ANSWER_PARTS,
  type AnswerPart,
  answerField,
  cardsField,
  INPUT,
  MAX_CARD_FIELDS,
  planTicksField,
} from '../ids.ts';

type Entered = Readonly<Record<string, unknown>>;

/** Anything longer can't come from the forms that the bot shows. */
const MOST_CHOICES = 500;
/** docs.slack.dev/reference/block-kit/block-elements/file-input-element */
const MOST_FILES = 10;
/** What a text field of the platform holds (docs.slack.dev/reference/block-kit/block-elements/plain-text-input-element). */
const MOST_CHARACTERS = 3_000;
/** Ids of people and values of options are visible ASCII. */
const ID = /^[\x21-\x7e]{1,255}$/;

export class FormFields {
  readonly #values: Readonly<Record<string, Readonly<Record<string, Entered>>>>;
  readonly #blockIds: readonly string[];

  constructor(form: Surface) {
    this.#values = form.state.values;
    this.#blockIds = form.blocks.flatMap(({ type, block_id }) =>
      type === 'input' && block_id !== undefined ? [block_id] : [],
    );
  }

  /** `block_id`s of the inputs that the form showed, in order. */
  get blockIds(): readonly string[] {
    return this.#blockIds;
  }

  /**
   * Typed text as it can be seen, a picked time (`HH:MM`), a picked day, or the value of a chosen option.
   *
   * @throws StaleControl for more than a field can hold: the platform did not send it.
   */
  text(field: string): string {
    const entered = this.#entered(field);
    const option = entered.selected_option as { value?: unknown } | null | undefined;
    const found = [entered.value, entered.selected_time, entered.selected_date, option?.value];
    const text = found.find((value): value is string => typeof value === 'string') ?? '';
    if (text.length > MOST_CHARACTERS) throw new StaleControl('overfull field');
    return visibleText(text);
  }

  /** Ids of chosen people, or values of chosen options. */
  choices(field: string): string[] {
    const entered = this.#entered(field);
    const options = listOf(entered.selected_options).map(
      (option) => (option as { value?: unknown } | null)?.value,
    );
    return [...listOf(entered.selected_users), ...options]
      .filter((value): value is string => typeof value === 'string' && ID.test(value))
      .slice(0, MOST_CHOICES);
  }

  /** Files that were picked, in order. */
  files(field: string): SentFile[] {
    return listOf(this.#entered(field).files)
      .slice(0, MOST_FILES)
      .flatMap((value) => sentFile(field, value) ?? []);
  }

  /** Cards of a plan, from as many fields as they took. */
  cardLines(): string {
    return Array.from({ length: MAX_CARD_FIELDS }, (_, i) => this.text(cardsField(i + 1)))
      .filter((text) => text.trim() !== '')
      .join('\n');
  }

  /** Numbers of the cards that are ticked in a plan's preview. */
  tickedCards(): string[] {
    return this.#blockIds.flatMap((_, i) => this.choices(planTicksField(i + 1)));
  }

  /** What was said of each card; a card of which nothing was said is left out. */
  answers(): TypedAnswer[] {
    const prefix = answerField('left', '');
    const cardIds = this.#blockIds.filter((id) => id.startsWith(prefix)).map((id) => id.slice(prefix.length));
    return cardIds
      .map((cardId) => {
        const texts = ANSWER_PARTS.map((part) => [part, this.text(answerField(part, cardId))]);
        return { cardId, ...(Object.fromEntries(texts) as Record<AnswerPart, string>) };
      })
      .filter((answer) => ANSWER_PARTS.some((part) => answer[part].trim() !== ''));
  }

  #entered(field: string): Entered {
    return Object.hasOwn(this.#values, field) ? (this.#values[field]?.[INPUT] ?? {}) : {};
  }
}

function listOf(value: unknown): unknown[] {
  return Array.isArray(value) ? value : [];
}
