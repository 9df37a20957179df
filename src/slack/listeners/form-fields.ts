/** Reads what was typed and chosen in a form. A field that is not there reads as empty. */

import type { TypedAnswer } from '../../app/read-answers.ts';
import { ANSWER_PARTS, answerField, cardsField, FIELDS, INPUT, MAX_CARD_FIELDS } from '../ids.ts';
import type { Surface } from '../incoming.ts';

type Entered = Readonly<Record<string, unknown>>;

/** Anything longer can not come from the forms that the bot shows. */
const MOST_CHOICES = 500;

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

  /** Typed text, a picked time (`HH:MM`), a picked day, or the value of a chosen option. */
  text(field: string): string {
    const entered = this.#entered(field);
    const option = entered.selected_option as { value?: unknown } | null | undefined;
    const found = [entered.value, entered.selected_time, entered.selected_date, option?.value];
    return found.find((value): value is string => typeof value === 'string') ?? '';
  }

  /** Ids of chosen people, or values of chosen options. */
  choices(field: string): string[] {
    const entered = this.#entered(field);
    const options = listOf(entered.selected_options).map(
      (option) => (option as { value?: unknown } | null)?.value,
    );
    return [...listOf(entered.selected_users), ...options]
      .filter((value): value is string => typeof value === 'string')
      .slice(0, MOST_CHOICES);
  }

  /** Cards of a plan, from as many fields as they took. */
  cardLines(): string {
    return Array.from({ length: MAX_CARD_FIELDS }, (_, i) => this.text(cardsField(i + 1)))
      .filter((text) => text.trim() !== '')
      .join('\n');
  }

  /** What was said of each card; a card of which nothing was said is left out. */
  answers(): TypedAnswer[] {
    const prefix = answerField('left', '');
    const cardIds = this.#blockIds.filter((id) => id.startsWith(prefix)).map((id) => id.slice(prefix.length));
    return cardIds
      .map((cardId) => {
        const [left, worked, surprise, note] = ANSWER_PARTS.map((part) =>
          this.text(answerField(part, cardId)),
        );
        return { cardId, worked: worked ?? '', left: left ?? '', surprise: surprise ?? '', note: note ?? '' };
      })
      .filter(({ worked, left, surprise, note }) =>
        [worked, left, surprise, note].some((text) => text.trim() !== ''),
      );
  }

  takenCardIds(): string[] {
    return this.choices(FIELDS.answer.takeCardIds);
  }

  #entered(field: string): Entered {
    return Object.hasOwn(this.#values, field) ? (this.#values[field]?.[INPUT] ?? {}) : {};
  }
}

function listOf(value: unknown): unknown[] {
  return Array.isArray(value) ? value : [];
}
