/**
 * What a person clicks or chooses, in a message, a form or on the Home page.
 */
import type { BotLink } from './bot-link.ts';
import { fileJson } from './file-json.ts';
import { entryOf, holdsValue, optionOf, type PickedFiles } from './input-state.ts';
import type { InputValue, InputValues, JsonObject, Outcome, StateValues } from './page-state.ts';
import { messageClickPayload, viewClickPayload } from './payloads.ts';
import { failed } from './person-talk.ts';
import { elementsOf } from './shapes/check-blocks.ts';
import type { Stage } from './stage.ts';

export type ClickPlace = { ts: string; channel: string } | { viewId: string };

export interface ClickOptions {
  /** Needed when several blocks hold an element of this action id. */
  blockId?: string;
  /** What was chosen or typed; for a button: which of several with the same action id, by its value. */
  value?: InputValue;
  /** What was put into other inputs of the same surface meanwhile. */
  state?: InputValues;
}

interface Target {
  block: JsonObject;
  element: JsonObject;
}

export class PersonClicks {
  readonly #stage: Stage;
  readonly #bot: BotLink;

  constructor(stage: Stage, bot: BotLink) {
    this.#stage = stage;
    this.#bot = bot;
  }

  async click(
    userId: string,
    where: ClickPlace,
    actionId: string,
    options: ClickOptions = {},
  ): Promise<Outcome> {
    const person = this.#stage.workspace.actor(userId);
    const surface = 'viewId' in where ? this.#inView(userId, where.viewId) : this.#inMessage(userId, where);
    if (!surface) return { ok: false, reason: 'That message or form is not there any more.' };
    try {
      const picked = pickedBy(userId, this.#stage);
      putIn(surface.blocks, surface.state, options.state ?? {}, picked);
      const target = targetOf(surface.blocks, actionId, options);
      const action = actionOf(target, surface.state, options.value, picked, this.#stage.log.nextTs());
      this.#stage.changed();
      const reply = await this.#bot.sendInteraction(surface.payload(person, action));
      return reply.ok ? { ok: true } : failed(reply);
    } catch (error) {
      return { ok: false, reason: `${error instanceof Error ? error.message : error}.` };
    }
  }

  #inMessage(userId: string, where: { ts: string; channel: string }) {
    const stage = this.#stage;
    const place = stage.workspace.placeOf(userId, where.channel);
    const message = place && stage.log.find(place.id, where.ts);
    if (!place || !message || (message.ephemeralFor ?? userId) !== userId) return undefined;
    return {
      blocks: message.blocks,
      state: stage.messageStates.of(userId, message),
      payload: (person: Parameters<typeof messageClickPayload>[1], action: JsonObject) => {
        const key = stage.responseUrls.make({ userId, channelId: place.id, ts: message.ts });
        const responseUrl = `${stage.url}/respond/${key}`;
        const triggerId = stage.triggers.make(userId);
        return messageClickPayload(stage, person, message, place, { action, triggerId, responseUrl });
      },
    };
  }

  #inView(userId: string, viewId: string) {
    const stage = this.#stage;
    const view = [stage.surfaces.topOf(userId), stage.surfaces.homeOf(userId)].find(
      (one) => one?.id === viewId,
    );
    if (!view) return undefined;
    return {
      blocks: view.blocks,
      state: view.state.values,
      payload: (person: Parameters<typeof viewClickPayload>[1], action: JsonObject) => {
        const triggerId = stage.triggers.make(userId, view.type === 'modal' ? view.id : undefined);
        return viewClickPayload(stage, person, view, { action, triggerId });
      },
    };
  }
}

/** Files that this person has picked, as the platform describes them in forms. */
export function pickedBy(userId: string, stage: Stage): PickedFiles {
  return (id) => {
    const file = stage.files.get(id);
    return file?.userId === userId ? fileJson(file, stage) : undefined;
  };
}

/**
 * Puts values into inputs, all or none.
 * @throws Error when there is no such input or it does not offer the value
 */
export function putIn(
  blocks: readonly JsonObject[],
  state: StateValues,
  values: InputValues,
  picked: PickedFiles,
): void {
  const entries = Object.entries(values).flatMap(([blockId, byAction]) =>
    Object.entries(byAction).map(([actionId, value]) => {
      const block = blocks.find((one) => one.block_id === blockId);
      const element = block && elementsOf(block).find((one) => one.action_id === actionId);
      if (!element || !holdsValue(element)) throw new Error(`there is no input ${blockId} ${actionId}`);
      return { blockId, actionId, entry: entryOf(element, value, picked) };
    }),
  );
  for (const { blockId, actionId, entry } of entries) {
    state[blockId] ??= {};
    state[blockId][actionId] = entry;
  }
}

function targetOf(blocks: readonly JsonObject[], actionId: string, options: ClickOptions): Target {
  const named = blocks
    .filter((block) => options.blockId === undefined || block.block_id === options.blockId)
    .flatMap((block) => elementsOf(block).map((element) => ({ block, element })))
    .filter(({ element }) => element.action_id === actionId);
  const ofValue = named.filter(({ element }) => element.type === 'button' && element.value === options.value);
  const [target, second] = named.length > 1 && ofValue.length > 0 ? ofValue : named;
  if (!target) throw new Error(`There is nothing called ${actionId} to click here`);
  if (second) throw new Error(`There are several called ${actionId}: tell which block`);
  if (target.block.type === 'input' && target.block.dispatch_action !== true) {
    throw new Error(`${actionId} is sent with its form, not by itself`);
  }
  return target;
}

/** The entry in `actions`; what was chosen is kept in the state of the surface as well. */
function actionOf(
  target: Target,
  state: StateValues,
  value: InputValue | undefined,
  picked: PickedFiles,
  actionTs: string,
): JsonObject {
  const { block, element } = target;
  const [blockId, actionId] = [String(block.block_id), String(element.action_id)];
  const common = { type: element.type, block_id: blockId, action_id: actionId, action_ts: actionTs };
  if (element.type === 'button') {
    const own = Object.fromEntries(['text', 'value', 'url', 'style'].map((key) => [key, element[key]]));
    return { ...common, ...own };
  }
  if (element.type === 'overflow') return { ...common, selected_option: optionOf(element, String(value)) };
  state[blockId] ??= {};
  if (value !== undefined) state[blockId][actionId] = entryOf(element, value, picked);
  return { ...state[blockId][actionId], ...common };
}
