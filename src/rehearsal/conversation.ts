/**
 * What a person can do in the workspace, put together from the stand-in's single moves: type a command, fill
 * a form, click a button. Goes through the bot's real conversations only; it never calls a use case.
 */
import { COMMAND } from '../slack/ids.ts';
import { say } from '../words/say.ts';
import { TEAM_CHANNEL_ID } from './cast.ts';
import type { InputValue, JsonObject, Outcome, SeenMessage, View } from './stand-in/page-state.ts';
import type { StandIn } from './stand-in/stand-in.ts';

/** The bot did not let something through; `words` is what the person read. */
export class Unheard extends Error {
  override readonly name = 'Unheard';
  readonly words: string;

  constructor(words: string) {
    super(words);
    this.words = words;
  }
}

export class Conversation {
  readonly #standIn: StandIn;
  readonly #idle: () => Promise<unknown>;

  /** @param idle resolves when the bot has done what it was asked: it acknowledges first and works after */
  constructor(standIn: StandIn, idle: () => Promise<unknown>) {
    this.#standIn = standIn;
    this.#idle = idle;
  }

  /** Waits for a move to be worked off. @throws Unheard when the platform or the form did not let it through */
  async #hear(move: Promise<Outcome>): Promise<void> {
    const outcome = await move;
    await this.#idle();
    if (outcome.ok) return;
    const beside = Object.values(outcome.fieldErrors ?? {});
    throw new Unheard(beside.length > 0 ? beside.join(' ') : outcome.reason);
  }

  /** Types the command in the team's channel. @throws Unheard */
  async command(userId: string, words: string): Promise<void> {
    await this.#hear(this.#standIn.command(userId, TEAM_CHANNEL_ID, `${COMMAND} ${words}`));
  }

  /** Says something to the bot in direct messages. @throws Unheard */
  async say(userId: string, words: string): Promise<void> {
    await this.#hear(this.#standIn.say(userId, 'dm', words));
  }

  /**
   * Makes a move that opens a form, and gives back the form.
   *
   * @throws Unheard with what the bot said instead, when none opened
   */
  async formAfter(userId: string, move: () => Promise<void>): Promise<View> {
    const before = this.#standIn.viewOf(userId);
    if (before) await this.#standIn.closeView(userId, before.id);
    const seen = this.#ephemeral(userId).length;
    await move();
    const form = this.#standIn.viewOf(userId);
    if (form) return form;
    const said = this.#ephemeral(userId).slice(seen);
    throw new Unheard(said.at(-1)?.text ?? say('rehearsal-silent'));
  }

  #ephemeral(userId: string): SeenMessage[] {
    const places = [TEAM_CHANNEL_ID, 'dm'];
    return places.flatMap((place) => this.#standIn.messagesOf(userId, place)).filter(({ byBot }) => byBot);
  }

  /** Whether the open form has a field of this name. */
  hasField(userId: string, field: string): boolean {
    const form = this.#standIn.viewOf(userId);
    return form?.blocks.some((block) => block.block_id === field) ?? false;
  }

  /** Fills fields of the open form by name, and sends it. @throws Unheard with the words beside the fields */
  async submit(userId: string, values: Record<string, InputValue>): Promise<void> {
    const form = this.#standIn.viewOf(userId);
    if (!form) throw new Unheard(say('rehearsal-no-form'));
    this.#standIn.fill(userId, form.id, values);
    await this.#hear(this.#standIn.submit(userId, form.id));
  }

  /** Closes all open forms, as a person does who gives up. */
  async closeForms(userId: string): Promise<void> {
    for (let form = this.#standIn.viewOf(userId); form; form = this.#standIn.viewOf(userId)) {
      await this.#standIn.closeView(userId, form.id);
    }
  }

  /** Presses the latest button with this action, in the person's direct messages or a channel; false when there is none. */
  async press(
    userId: string,
    actionId: string,
    accept: (value: string) => boolean = () => true,
    place = 'dm',
  ): Promise<boolean> {
    for (const message of this.#standIn.messagesOf(userId, place).toReversed()) {
      const button = buttonsOf(message.blocks).find(
        ({ action_id, value }) => action_id === actionId && accept(String(value ?? '')),
      );
      if (!button) continue;
      const { ts, channel } = message;
      await this.#hear(this.#standIn.click(userId, { ts, channel }, actionId, { blockId: button.blockId }));
      return true;
    }
    return false;
  }
}

function buttonsOf(blocks: readonly JsonObject[]): (JsonObject & { readonly blockId: string })[] {
  return blocks.flatMap(({ elements, accessory, block_id }) => {
    const buttons = [...((elements as JsonObject[] | undefined) ?? []), ...(accessory ? [accessory] : [])];
    return buttons.map((button) => ({ ...(button as JsonObject), blockId: String(block_id) }));
  });
}
