/**
 * Somebody of a team who uses the bot while things go wrong: waits a few seconds, reads what is shown, and tries again
 * after an error, a few times. Remembers what was acknowledged. Everything goes through the stand-in's own moves.
 */

import { setTimeout as wait } from 'node:timers/promises';
import type { JsonObject, Outcome, SeenMessage, View } from '../../src/rehearsal/stand-in/page-state.ts';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import { ACTIONS, answerField, COMMAND } from '../../src/slack/ids.ts';
import { ANSWER_FIELDS } from '../../src/slack/views/answering/answer-form.ts';
import { PLAN_FIELDS } from '../../src/slack/views/planning/plan-forms.ts';
import type { Act, ActBook } from './act.ts';
import type { SeededRandom } from './seeded-random.ts';

const LOOK_EVERY_MS = 40;
const PATIENCE_MS = 4_000;
/** A form that says that work goes on is believed for this long. */
const LATE_PATIENCE_MS = 20_000;
const TRIES = 4;
const PAUSE_MS = 600;

const NOTHING_RECORDED = /nothing (was|is) recorded/i;
/** Told neither that it was recorded nor that it was not. */
const NOT_CERTAIN = /not certain whether|couldn’t record this/;
/** What passes by itself, so that another try is worth it. */
const PASSING = /Something went wrong|pause|my database/;

interface PersonOptions {
  readonly standIn: StandIn;
  readonly userId: string;
  readonly channelId: string;
  readonly book: ActBook;
  readonly random: SeededRandom;
  /** True when the run is over and nobody begins anything any more. */
  readonly isOver: () => boolean;
}

interface PromptInView {
  readonly message: SeenMessage;
  readonly sprintId: string;
}

export class Person {
  readonly #options: PersonOptions;
  readonly #said = new Set<string>();

  constructor(options: PersonOptions) {
    this.#options = options;
  }

  get userId(): string {
    return this.#options.userId;
  }

  /** Whether the day's prompt has come. */
  isAsked(day: string): boolean {
    return this.#promptOf(day) !== undefined;
  }

  /** Answers for one card in the form, growth explained if it is asked for. */
  async answerInForm(day: string): Promise<void> {
    const prompt = this.#promptOf(day);
    if (!prompt) return;
    const { standIn, userId } = this.#options;
    const { sprintId } = prompt;
    let act: Act | undefined;
    for (let tried = 0; tried < TRIES && !this.#options.isOver(); tried += 1) {
      await this.#closeForms();
      const at = { ts: prompt.message.ts, channel: prompt.message.channel };
      await standIn.click(userId, at, ACTIONS.openAnswerForm);
      const form = await this.#until(() => this.#formOf('answer-form'));
      if (!form) {
        await this.#pause();
        continue;
      }
      act ??= this.#newAnswer(form, day, sprintId);
      if (!act) return;
      tryAgain(act);
      if (!this.#fillAnswer(form, act)) return;
      if (await this.#submitted(act, form)) return;
      await this.#pause();
    }
  }

  /** Answers in words, for the first card of the list. */
  async answerInWords(day: string): Promise<void> {
    const prompt = this.#promptOf(day);
    if (!prompt) return;
    const { book, userId, channelId, random, isOver } = this.#options;
    const [leftPoints, workedPoints] = [random.whole(0, 8) / 2, random.whole(0, 6) / 2];
    const words = `1: ${leftPoints} worked ${workedPoints}`;
    const key = `${day} words ${words}`;
    if (this.#said.has(key)) return;
    this.#said.add(key);
    const act = book.begin({
      kind: 'answer',
      userId,
      channelId,
      day,
      sprintId: prompt.sprintId,
      leftPoints,
      workedPoints,
    });
    for (let tried = 0; tried < TRIES && !isOver(); tried += 1) {
      tryAgain(act);
      const before = new Set(this.#seen().map(({ ts }) => ts));
      await this.#options.standIn.say(userId, 'dm', words);
      const reply = await this.#until(
        () =>
          this.#toldIn(prompt.message, act) ??
          this.#newIn(before, (text) => /^Recorded for/.test(text) && !tellsOf(act, text)),
      );
      act.lastWords = reply?.text ?? '';
      if (reply && /^Recorded for/.test(reply.text)) {
        act.state = 'acknowledged';
        return;
      }
      if (reply && !NOTHING_RECORDED.test(reply.text)) return;
      if (reply && /grew/.test(reply.text)) return this.#explain(act, reply, prompt.message);
      act.state = reply ? 'denied' : 'open';
      await this.#pause();
    }
  }

  async #explain(act: Act, asked: SeenMessage, prompt: SeenMessage): Promise<void> {
    const { standIn, userId } = this.#options;
    for (let tried = 0; tried < TRIES && !this.#options.isOver(); tried += 1) {
      tryAgain(act);
      const at = { ts: asked.ts, channel: asked.channel };
      await standIn.click(userId, at, ACTIONS.growthAllSurprise);
      const shown = await this.#until(() => {
        const now = this.#messages().find(({ ts }) => ts === asked.ts);
        return now && now.text !== asked.text ? now : undefined;
      });
      act.lastWords = shown?.text ?? '';
      if (shown && /^Recorded/.test(shown.text)) {
        const isTold = tellsOf(act, shown.text) || (await this.#until(() => this.#toldIn(prompt, act)));
        if (isTold) act.state = 'acknowledged';
        return;
      }
      if (shown) return;
      await this.#pause();
    }
  }

  /** One click on the prompt. */
  async press(kind: 'unchanged' | 'away', day: string): Promise<void> {
    const prompt = this.#promptOf(day);
    if (!prompt) return;
    const { standIn, book, userId, channelId, isOver } = this.#options;
    const act = book.begin({ kind, userId, channelId, day, sprintId: prompt.sprintId });
    const actionId = kind === 'unchanged' ? ACTIONS.recordUnchanged : ACTIONS.recordAway;
    for (let tried = 0; tried < TRIES && !isOver(); tried += 1) {
      const message = this.#messages().find(({ ts }) => ts === prompt.message.ts);
      // Somebody's other answer has taken the button away.
      if (!message || !buttonsOf(message).some(({ action_id }) => action_id === actionId)) return;
      tryAgain(act);
      await standIn.click(userId, { ts: message.ts, channel: message.channel }, actionId);
      const shown = await this.#until(() => {
        const now = this.#messages().find(({ ts }) => ts === message.ts);
        return now && /^Recorded for/.test(now.text) ? now : undefined;
      });
      act.lastWords = shown?.text ?? '';
      if (shown) {
        act.state = 'acknowledged';
        return;
      }
      await this.#pause();
    }
  }

  /** Types a command until its reply shows that it was done or refused. */
  async type(
    kind: 'pull' | 'drop' | 'reopen',
    words: string,
    typed: string,
    day: string,
    done: RegExp,
  ): Promise<void> {
    const { standIn, book, userId, channelId, isOver } = this.#options;
    const act = book.begin({ kind, userId, channelId, day, words });
    for (let tried = 0; tried < TRIES && !isOver(); tried += 1) {
      tryAgain(act);
      const reply = await this.#reply(
        () => standIn.command(userId, channelId, `${COMMAND} ${typed}`),
        // Of a status that was asked for before.
        (text) => /^Chart: /.test(text),
      );
      act.lastWords = reply?.text ?? '';
      if (reply && done.test(reply.text)) {
        act.state = 'acknowledged';
        return;
      }
      // A refusal may be right because the try before was carried out: that the card is dropped, or its key taken.
      if (reply) act.state = NOTHING_RECORDED.test(reply.text) ? 'denied' : 'open';
      // A refusal is an answer; only an error is worth another try.
      if (reply && !PASSING.test(reply.text)) return;
      await this.#pause();
    }
  }

  /** Looks how the sprint is going; nothing depends on it. */
  async look(): Promise<void> {
    const { standIn, userId, channelId } = this.#options;
    await this.#reply(() => standIn.command(userId, channelId, `${COMMAND} status`));
  }

  /** Sets the team up in its channel. */
  async setUp(fields: Record<string, string | readonly string[]>): Promise<boolean> {
    return this.#throughForm(`${COMMAND} setup`, 'setup-form', fields, undefined);
  }

  /** Plans a sprint: form, preview, commitment. */
  async plan(name: string, day: string, fields: Record<string, string>): Promise<boolean> {
    const { book, userId, channelId } = this.#options;
    const act = book.begin({ kind: 'plan', userId, channelId, day, words: name });
    return this.#throughForm(`${COMMAND} plan`, 'plan-form', { [PLAN_FIELDS.name]: name, ...fields }, act);
  }

  /** Closes the running sprint before its time. */
  async close(day: string): Promise<void> {
    const { book, userId, channelId } = this.#options;
    const act = book.begin({ kind: 'close', userId, channelId, day });
    await this.#throughForm(`${COMMAND} close`, 'close-form', {}, act);
  }

  async #throughForm(
    command: string,
    callbackId: string,
    fields: Record<string, string | readonly string[]>,
    act: Act | undefined,
  ): Promise<boolean> {
    const { standIn, userId, channelId } = this.#options;
    for (let tried = 0; tried < TRIES; tried += 1) {
      await this.#closeForms();
      if (act) tryAgain(act);
      const before = new Set(this.#seen().map(({ ts }) => ts));
      await standIn.command(userId, channelId, command);
      const form = await this.#until(() => this.#formOf(callbackId) ?? this.#newIn(before));
      if (form && 'callback_id' in form) {
        standIn.fill(userId, form.id as string, fields);
        if (await this.#submitted(act, form as View)) return true;
      } else if (form) {
        if (act) act.lastWords = (form as SeenMessage).text;
        // Refused: there is nothing to plan or close, which may well be because it was done the time before.
        const { text } = form as SeenMessage;
        if (!PASSING.test(text) && !/too long/.test(text)) return act !== undefined;
      }
      await this.#pause();
    }
    return false;
  }

  /**
   * Sends a form off until it is gone or says what is wrong with it; answers its further steps.
   * @returns whether there is an end to it, good or bad; false: open it once more and try again
   */
  async #submitted(act: Act | undefined, form: View): Promise<boolean> {
    const { standIn, userId } = this.#options;
    const settle = (state: Act['state'], words: string): true => {
      if (act) Object.assign(act, { state, lastWords: words });
      return true;
    };
    let view = form;
    for (let tried = 0; tried < TRIES; tried += 1) {
      const outcome: Outcome = await standIn.submit(userId, view.id);
      if (!outcome.ok) {
        if (act) act.lastWords = outcome.reason;
        if (outcome.fieldErrors) {
          const words = Object.values(outcome.fieldErrors).join(' ');
          return settle(NOT_CERTAIN.test(words) ? 'open' : 'denied', words);
        }
        await this.#pause();
        if (standIn.viewOf(userId)?.id !== view.id) return false;
        continue;
      }
      let next = standIn.viewOf(userId);
      if (next && titleOf(next) === 'Still working') {
        next = await this.#until(() => {
          const now = standIn.viewOf(userId);
          return now && titleOf(now) !== 'Still working' ? now : undefined;
        }, LATE_PATIENCE_MS);
        if (!next) {
          if (act) act.lastWords = 'Still working';
          return false;
        }
        if (titleOf(next) === 'Done') return settle('acknowledged', 'Done');
      }
      if (!next) return settle('acknowledged', 'the form closed');
      const words = JSON.stringify(next.blocks);
      if (titleOf(next) === 'That went wrong' || titleOf(next) === 'Not done') {
        const isRefused = titleOf(next) === 'Not done' && !NOT_CERTAIN.test(words);
        settle(NOTHING_RECORDED.test(words) || isRefused ? 'denied' : 'open', words);
        return titleOf(next) === 'Not done';
      }
      if (next.callback_id === 'answer-form' && act) {
        this.#fillAnswer(next, act);
        this.#fillSurprise(next);
      }
      view = next;
    }
    return false;
  }

  #newAnswer(form: View, day: string, sprintId: string): Act | undefined {
    const { book, userId, channelId, random } = this.#options;
    const cardIds = form.blocks.flatMap(({ block_id }) => {
      const [, cardId] = /^left:(.+)$/.exec(String(block_id)) ?? [];
      return cardId === undefined ? [] : [cardId];
    });
    if (cardIds.length === 0) return undefined;
    const cardId = random.pick(cardIds);
    const [leftPoints, workedPoints] = [random.whole(0, 10) / 2, random.whole(0, 6) / 2];
    const key = `${day} ${cardId} ${leftPoints} ${workedPoints}`;
    if (this.#said.has(key)) return undefined;
    this.#said.add(key);
    const said = { cardId, leftPoints, workedPoints };
    return book.begin({ kind: 'answer', userId, channelId, day, sprintId, ...said });
  }

  #fillAnswer(form: View, { cardId = '', leftPoints, workedPoints }: Act): boolean {
    const { standIn, userId } = this.#options;
    const fields = new Set(form.blocks.map(({ block_id }) => block_id));
    if (!fields.has(answerField('left', cardId))) return false;
    standIn.fill(userId, form.id, {
      [answerField('left', cardId)]: String(leftPoints),
      ...(fields.has(answerField('worked', cardId))
        ? { [answerField('worked', cardId)]: String(workedPoints) }
        : { [ANSWER_FIELDS.moreCardIds]: [cardId] }),
    });
    return true;
  }

  #fillSurprise(form: View): void {
    const { standIn, userId } = this.#options;
    for (const { block_id } of form.blocks) {
      if (String(block_id).startsWith('surprise:')) {
        const optional = form.blocks.find((block) => block.block_id === block_id)?.optional;
        if (optional !== true) standIn.fill(userId, form.id, { [String(block_id)]: '0.5' });
      }
    }
  }

  /** @param isForAnother whether a text answers something that was said before, and comes only now */
  async #reply(
    move: () => Promise<unknown>,
    isForAnother: (text: string) => boolean = () => false,
  ): Promise<SeenMessage | undefined> {
    const before = new Set(this.#seen().map(({ ts }) => ts));
    await move();
    return this.#until(() => this.#newIn(before, isForAnother));
  }

  /** What the bot has said to this person alone, in reply to something. */
  #newIn(
    before: ReadonlySet<string>,
    isForAnother: (text: string) => boolean = () => false,
  ): SeenMessage | undefined {
    const fresh = this.#seen().filter(({ ts, text }) => !before.has(ts) && !isForAnother(text));
    if (fresh.length === 0) return undefined;
    // What the clock has caused, such as a reminder, is no reply.
    const posts = new Set(
      this.#options.standIn.allPosts().flatMap(({ ts, metadata }) => (metadata ? [ts] : [])),
    );
    return fresh.find(({ ts }) => !posts.has(ts));
  }

  /** The prompt, once it shows this answer. */
  #toldIn(prompt: SeenMessage, act: Act): SeenMessage | undefined {
    const now = this.#messages().find(({ ts }) => ts === prompt.ts);
    return now && /^Recorded for/.test(now.text) && tellsOf(act, now.text) ? now : undefined;
  }

  #seen(): SeenMessage[] {
    const { standIn, userId, channelId } = this.#options;
    const inChannel = standIn.messagesOf(userId, channelId).filter(({ ephemeral }) => ephemeral);
    return [...inChannel, ...this.#messages()].filter(({ byBot }) => byBot);
  }

  #messages(): SeenMessage[] {
    return this.#options.standIn.messagesOf(this.#options.userId, 'dm');
  }

  #promptOf(day: string): PromptInView | undefined {
    for (const message of this.#messages().toReversed()) {
      for (const { action_id, value } of buttonsOf(message)) {
        if (action_id !== ACTIONS.openAnswerForm) continue;
        const meant = JSON.parse(String(value)) as { sprintId: string; day?: string };
        if (meant.day === day) return { message, sprintId: meant.sprintId };
      }
    }
    return undefined;
  }

  #formOf(callbackId: string): View | undefined {
    const form = this.#options.standIn.viewOf(this.#options.userId);
    return form?.callback_id === callbackId ? form : undefined;
  }

  async #closeForms(): Promise<void> {
    const { standIn, userId } = this.#options;
    for (let form = standIn.viewOf(userId); form; form = standIn.viewOf(userId)) {
      await standIn.closeView(userId, form.id);
    }
  }

  async #until<T>(look: () => T | undefined, patienceMs = PATIENCE_MS): Promise<T | undefined> {
    for (let waitedMs = 0; ; waitedMs += LOOK_EVERY_MS) {
      const seen = look();
      if (seen !== undefined || waitedMs >= patienceMs) return seen;
      await wait(LOOK_EVERY_MS);
    }
  }

  async #pause(): Promise<void> {
    await wait(PAUSE_MS * (0.5 + this.#options.random.next()));
  }
}

/** Whether the text holds the numbers of this answer. */
function tellsOf({ leftPoints, workedPoints }: Act, text: string): boolean {
  const left = leftPoints === 0 ? 'nothing' : `${leftPoints} points?`;
  return new RegExp(`worked ${workedPoints}, ${left} left`).test(text);
}

/** What was said before is not about this try. */
function tryAgain(act: Act): void {
  act.tries += 1;
  act.state = 'open';
}

function titleOf(view: View): string {
  return String((view.title as JsonObject | undefined)?.text ?? '');
}

function buttonsOf({ blocks }: SeenMessage): JsonObject[] {
  return blocks.flatMap((block) => (block.type === 'actions' ? (block.elements as JsonObject[]) : []));
}
