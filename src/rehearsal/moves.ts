/**
 * What people do in a scenario, each as they would do it in the chat: set up the team, plan a sprint, answer, pull,
 * drop, give, reopen, be blocked and move again, be away, cancel. It knows by which number the bot calls each card. When something happens, and what
 * becomes of a refusal, is the player's business.
 */
import { ACTIONS, ANSWER_PARTS, answerField, cardsField, MAX_CARD_FIELDS } from '../slack/ids.ts';
import { ANSWER_FIELDS } from '../slack/views/answering/answer-form.ts';
import { TRY_FIELDS } from '../slack/views/experiment-views.ts';
import { EDIT_CARD_FIELDS } from '../slack/views/planning/edit-views.ts';
import { PLAN_FIELDS } from '../slack/views/planning/plan-forms.ts';
import { SETUP_FIELDS } from '../slack/views/team/team-forms.ts';
import { DEFAULT_THRESHOLDS, type Thresholds } from '../sprint/thresholds.ts';
import { say } from '../words/say.ts';
import { type Conversation, Unheard } from './conversation.ts';
import type { OfferedCard, Rehearsal } from './rehearsal.ts';
import type { Scenario, ScenarioAnswer, ScenarioCard, ScenarioEvent, ScenarioSprint } from './scenario.ts';

/** The text of a plan's field for cards must stay below the platform's limit. */
const CARD_FIELD_LENGTH = 2_900;

/** Who is off when nobody works. */
const THE_TEAM = 'team';

type ScenarioDaysOff = NonNullable<ScenarioEvent['off']>;

export class Moves {
  readonly #rehearsal: Rehearsal;
  readonly #scenario: Scenario;
  readonly #talk: Conversation;
  /** The number by which the bot calls each card of the sprint being played. */
  #cardNumbers = new Map<string, number>();
  #cardKeys = new Map<number, string>();

  constructor(rehearsal: Rehearsal, scenario: Scenario) {
    this.#rehearsal = rehearsal;
    this.#scenario = scenario;
    this.#talk = rehearsal.conversation;
  }

  /** Goes on to the cards of this sprint; returns their keys by number, kept up to date as cards are pulled in. */
  turnTo(sprint: ScenarioSprint): ReadonlyMap<number, string> {
    this.#cardNumbers = new Map(sprint.cards.map(({ key }, i) => [key, i + 1]));
    this.#cardKeys = new Map(sprint.cards.map(({ key }, i) => [i + 1, key]));
    return this.#cardKeys;
  }

  /** The number by which the bot calls the card; undefined when the sprint has no such card. */
  cardNumber(key: string): number | undefined {
    return this.#cardNumbers.get(key);
  }

  closesAt(sprint: ScenarioSprint): string {
    return sprint.closesAt ?? this.#scenario.team.closesAt ?? '17:00';
  }

  userOf(memberId: string | undefined): string {
    const [facilitatorId] = this.#rehearsal.cast.facilitatorIds;
    if (memberId === undefined) return facilitatorId;
    try {
      return this.#rehearsal.cast.userIdOf(memberId);
    } catch {
      return facilitatorId;
    }
  }

  async setUp(): Promise<void> {
    const { team, members } = this.#scenario;
    const { facilitatorIds, productOwnerId } = this.#rehearsal.cast;
    const fields = SETUP_FIELDS;
    const facilitatorId = this.userOf(undefined);
    await this.#talk.formAfter(facilitatorId, () => this.#talk.command(facilitatorId, 'setup'));
    await this.#talk.submit(facilitatorId, {
      [fields.name]: team.name,
      [fields.timeZone]: team.timeZone,
      [fields.promptAt]: team.promptAt,
      [fields.workingDays]: team.workingDays.map(String),
      [fields.memberIds]: members.map(({ id }) => this.userOf(id)),
      [fields.facilitatorIds]: [...facilitatorIds],
      [fields.productOwnerId]: productOwnerId === undefined ? [] : [productOwnerId],
    });
    await this.#setMeasures();
    for (const { id, worksOn } of members) {
      if (worksOn) await this.#talk.command(this.userOf(id), `works ${worksOn.map(weekdayWord).join(' ')}`);
    }
  }

  async #setMeasures(): Promise<void> {
    const { closesAt, scale, thresholds } = this.#scenario.team;
    if (!closesAt && !scale && Object.keys(thresholds).length === 0) return;
    const unknown = Object.keys(thresholds).filter((name) => !(name in DEFAULT_THRESHOLDS));
    if (unknown.length > 0) {
      const known = Object.keys(DEFAULT_THRESHOLDS);
      throw new Unheard(say('rehearsal-threshold-unknown', { names: unknown, known }));
    }
    const facilitatorId = this.userOf(undefined);
    await this.#talk.formAfter(facilitatorId, () => this.#talk.command(facilitatorId, 'setup measures'));
    const percents = Object.entries(thresholds as Partial<Thresholds>).map(([name, share]) => [
      name,
      String(Number(`${share}e2`)),
    ]);
    await this.#talk.submit(facilitatorId, {
      ...(closesAt ? { closesAt } : {}),
      ...(scale ? { scale: scale.join('; ') } : {}),
      ...Object.fromEntries(percents),
    });
  }

  /** A long plan is sent in as far as it fits; the form then comes back with more fields. */
  async plan(sprint: ScenarioSprint): Promise<void> {
    const texts = inPortions(sprint.cards.map((card) => this.#cardLine(card)));
    const facilitatorId = this.userOf(undefined);
    if (texts.length > MAX_CARD_FIELDS) throw new Unheard(say('rehearsal-cards-too-long'));
    for (let sent = -1; sent < texts.length; ) {
      await this.#talk.formAfter(facilitatorId, () => this.#talk.command(facilitatorId, 'plan'));
      const fits = texts.findIndex((_, i) => !this.#talk.hasField(facilitatorId, cardsField(i + 1)));
      const sending = fits < 0 ? texts.length : fits;
      if (sending <= sent) throw new Unheard(say('rehearsal-cards-fields'));
      sent = sending;
      await this.#talk.submit(facilitatorId, this.#planFields(sprint, texts.slice(0, sent)));
    }
    await this.#talk.submit(facilitatorId, {});
  }

  #planFields(sprint: ScenarioSprint, texts: readonly string[]): Record<string, string> {
    const fields = PLAN_FIELDS;
    return {
      [fields.name]: sprint.name,
      [fields.goal]: sprint.goal,
      [fields.startsOn]: sprint.startsOn,
      [fields.endsOn]: sprint.endsOn,
      [fields.closesAt]: this.closesAt(sprint),
      [fields.cards]: '',
      ...Object.fromEntries(texts.map((text, i) => [cardsField(i + 1), text])),
    };
  }

  /** A card as it is pasted: parted by tabs, with its key in front of the title. */
  #cardLine({ key, title, link, estimate, owners }: ScenarioCard): string {
    const named = /^[A-Za-z][A-Za-z0-9]{0,9}-\d{1,7}$/.test(key) ? `${key}: ${title}` : title;
    const mentions = owners.map((id) => this.#mention(id)).join(' ');
    const columns = [named.replaceAll(/\s+/g, ' '), String(estimate), mentions];
    return [...columns, ...(link === undefined ? [] : [link])].join('\t');
  }

  #mention(memberId: string): string {
    const isMember = this.#scenario.members.some(({ id }) => id === memberId);
    return isMember ? `<@${this.userOf(memberId)}>` : `@${memberId}`;
  }

  async act(event: ScenarioEvent): Promise<void> {
    if (event.off && event.by === THE_TEAM)
      return this.#off(this.userOf(undefined), event.off, `${THE_TEAM} `);
    if (event.by !== undefined && !this.#isKnown(event.by))
      throw new Unheard(say('rehearsal-no-member', { member: event.by }));
    const userId = this.userOf(event.by);
    if (event.off) return this.#off(userId, event.off, '');
    if (event.answer) return this.#answer(userId, event.on, lastOfEachCard(event.answer));
    if (event.pull) return this.#pull(userId, event.pull);
    if (event.drop)
      return this.#talk.command(userId, `drop ${this.#number(event.drop.card)} ${event.drop.reason}`);
    if (event.undrop) return this.#talk.command(userId, `undrop ${this.#number(event.undrop.card)}`);
    if (event.give) {
      const { card, to } = event.give;
      const people = to.map((id) => this.#mention(id)).join(' ');
      return this.#talk.command(userId, `give ${this.#number(card)} ${people}`);
    }
    if (event.reopen) return this.#talk.command(userId, `reopen ${this.#number(event.reopen.card)}`);
    if (event.blocked) {
      const { card, on } = event.blocked;
      return this.#talk.command(userId, `blocked ${this.#number(card)} ${on}`);
    }
    if (event.moving) return this.#talk.command(userId, `moving ${this.#number(event.moving.card)}`);
    if (event.away) return this.#away(userId, event.on);
    if (event.edit) return this.#edit(userId, event.edit);
    if (event.extend) return this.#extend(userId, event.extend);
    if (event.goalMet) return this.#talk.command(userId, `goal ${event.goalMet}`);
    if (event.try) return this.#try(userId, event.try);
    if (event.experiment) {
      const { text, then } = event.experiment;
      return this.#talk.command(userId, `experiments ${then} ${text}`);
    }
    await this.#talk.formAfter(userId, () => this.#talk.command(userId, 'cancel'));
    return this.#talk.submit(userId, {});
  }

  /** Whether somebody of the scenario has the id: a member, or a person with a role. */
  #isKnown(personId: string): boolean {
    const { members, roles } = this.#scenario;
    const isMember = members.some(({ id }) => id === personId);
    return isMember || roles?.productOwner === personId || roles?.facilitators?.includes(personId) === true;
  }

  async #edit(
    userId: string,
    { card, estimate, ...texts }: NonNullable<ScenarioEvent['edit']>,
  ): Promise<void> {
    const number = this.#number(card);
    await this.#talk.formAfter(userId, () => this.#talk.command(userId, `edit ${number}`));
    const isOffered = this.#talk.hasField(userId, EDIT_CARD_FIELDS.estimate);
    const typed = estimate === undefined || !isOffered ? {} : { estimate: String(estimate) };
    const before = this.#rehearsal.refusals.length;
    if (estimate !== undefined && !isOffered) {
      // The form no longer offers it; asked in words, the bot says why, unless that is the estimate already.
      await this.#talk.command(userId, `edit ${number} estimate ${estimate}`);
      if (this.#rehearsal.refusals.length > before || Object.keys(texts).length === 0) return;
    }
    await this.#talk.submit(userId, given({ ...texts, ...typed }));
    if (texts.key === undefined || this.#rehearsal.refusals.length > before) return;
    // From now on the card goes by its new name, in the file as well.
    const key = texts.key.trim() || card;
    this.#cardNumbers.delete(card);
    this.#cardNumbers.set(key, Number(number));
    this.#cardKeys.set(Number(number), key);
  }

  async #extend(userId: string, changed: NonNullable<ScenarioEvent['extend']>): Promise<void> {
    await this.#talk.formAfter(userId, () => this.#talk.command(userId, 'edit'));
    await this.#talk.submit(userId, given(changed));
  }

  async #try(userId: string, { text, ratio, direction }: NonNullable<ScenarioEvent['try']>): Promise<void> {
    await this.#talk.formAfter(userId, () => this.#talk.command(userId, `try ${text}`));
    const { text: what, ratio: number, direction: way } = TRY_FIELDS;
    await this.#talk.submit(userId, { [what]: text, [number]: ratio, [way]: direction });
  }

  async #off(userId: string, { from, to = from, half }: ScenarioDaysOff, whose: string): Promise<void> {
    await this.#talk.command(userId, `off ${whose}${from} to ${to}${half ? ' half' : ''}`);
  }

  /** The card's number; a key that no card has goes to the bot as a word, to be refused there. */
  #number(key: string): string {
    const number = this.#cardNumbers.get(key);
    if (number !== undefined) return String(number);
    return /^#?\d+$/.test(key) ? `key-${key}` : key;
  }

  async #pull(userId: string, card: ScenarioCard): Promise<void> {
    const before = this.#rehearsal.refusals.length;
    await this.#talk.command(userId, `pull ${this.#cardLine(card)}`);
    if (this.#rehearsal.refusals.length > before) return;
    // Somebody at the page may have pulled in cards as well.
    const number = (await this.#rehearsal.openSprint())?.records.cards.length ?? 0;
    this.#cardKeys.set(number, card.key);
    this.#cardNumbers.set(card.key, number);
  }

  async #away(userId: string, day: string): Promise<void> {
    const pressed = await this.#talk.press(userId, ACTIONS.recordAway, (value) => value.includes(day));
    if (!pressed) await this.#talk.say(userId, 'away');
  }

  /**
   * In the form that the prompt's button opens. What the form has no place for (a card that it does not
   * offer, surprise work without growth) is said in words, so that the bot can say why not.
   */
  async #answer(userId: string, day: string, answers: readonly ScenarioAnswer[]): Promise<void> {
    const offer = await this.#rehearsal.answerOffer(userId, day);
    const cards = answers.map(({ card }) => offer.get(this.#cardNumbers.get(card) ?? -1));
    const fits = answers.every((answer, i) => isForForm(answer, cards[i]));
    if (!fits) return this.#answerInWords(userId, answers);
    await this.#talk.formAfter(userId, async () => {
      const pressed = await this.#talk.press(userId, ACTIONS.openAnswerForm, (value) => value.includes(day));
      if (!pressed) await this.#talk.command(userId, `answer ${day}`);
    });
    const isOffered = ({ cardId }: OfferedCard): boolean =>
      this.#talk.hasField(userId, answerField('left', cardId));
    if (!(cards as OfferedCard[]).every(isOffered)) {
      // A form shows a few cards only; the others are answered in words.
      await this.#talk.closeForms(userId);
      return this.#answerInWords(userId, answers);
    }
    const values = answers.flatMap((answer, i) => fieldValues((cards[i] as OfferedCard).cardId, answer));
    const moreCardIds = answers.flatMap((answer, i) =>
      saysMore(answer) ? [(cards[i] as OfferedCard).cardId] : [],
    );
    const all = [...values, [ANSWER_FIELDS.moreCardIds, moreCardIds] as const];
    const fill = (): Promise<void> =>
      this.#talk.submit(
        userId,
        Object.fromEntries(all.filter(([field]) => this.#talk.hasField(userId, field))),
      );
    await fill();
    // The form is still open while it asks for more: the other fields of these cards, and why a card grew.
    for (let step = 2; step <= 3 && this.#rehearsal.standIn.viewOf(userId); step += 1) await fill();
  }

  async #answerInWords(userId: string, answers: readonly ScenarioAnswer[]): Promise<void> {
    await this.#talk.command(userId, `answer ${answers.map((one) => this.#inWords(one)).join('; ')}`);
  }

  #inWords({ card, left, worked, surprise }: ScenarioAnswer): string {
    const workedWords = worked === undefined ? '' : ` worked ${worked}`;
    return `${this.#number(card)}: ${left}${workedWords} surprise ${surprise ?? 0}`;
  }
}

/** The fields that the file gives. */
function given(fields: Readonly<Record<string, string | undefined>>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(fields).filter((field): field is [string, string] => field[1] !== undefined),
  );
}

/** A weekday as one types it. */
function weekdayWord(weekday: number): string {
  return ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'][weekday - 1] as string;
}

/** Of two answers for the same card the second corrects the first, so it is the one to give. */
function lastOfEachCard(answers: readonly ScenarioAnswer[]): ScenarioAnswer[] {
  return [...new Map(answers.map((answer) => [answer.card, answer])).values()];
}

/** Whether the answer needs other fields than the one that asks what is left. */
function saysMore({ worked, surprise = 0, note = '' }: ScenarioAnswer): boolean {
  return worked !== undefined || surprise !== 0 || note !== '';
}

/** Whether the answer can be given in the form. */
function isForForm(answer: ScenarioAnswer, card: OfferedCard | undefined): boolean {
  if (!card) return false;
  const worked = answer.worked ?? Math.max(0, card.previousLeftPoints - answer.left);
  const grows = worked + answer.left > card.previousLeftPoints;
  return (answer.surprise ?? 0) === 0 || grows || card.asksSurprise;
}

function fieldValues(cardId: string, answer: ScenarioAnswer): (readonly [string, string])[] {
  const texts = {
    left: String(answer.left),
    worked: answer.worked === undefined ? '' : String(answer.worked),
    surprise: String(answer.surprise ?? 0),
    note: answer.note ?? '',
    blocked: '',
  };
  return ANSWER_PARTS.map((part) => [answerField(part, cardId), texts[part]] as const);
}

/** Lines joined into as few texts as their length allows. */
function inPortions(lines: readonly string[]): string[] {
  const portions: string[] = [];
  for (const line of lines) {
    const joined = portions.length === 0 ? line : `${portions.at(-1)}\n${line}`;
    if (portions.length > 0 && joined.length <= CARD_FIELD_LENGTH) portions[portions.length - 1] = joined;
    else portions.push(line);
  }
  return portions;
}
