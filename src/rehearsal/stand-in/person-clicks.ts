/** What a person presses, in a message or on the Home page. Forms have no buttons but their own. */
import type { BotLink } from './bot-link.ts';
import type { JsonObject, Outcome } from './page-state.ts';
import { messageClickPayload, viewClickPayload } from './payloads.ts';
import { failed } from './person-talk.ts';
import { elementsOf } from './shapes/check-blocks.ts';
import type { Stage } from './stage.ts';
import type { Person } from './workspace.ts';

export type ClickPlace = { ts: string; channel: string } | { viewId: string };

export interface ClickOptions {
  /** Needed when several blocks hold a button of this action id. */
  blockId?: string;
  /** Which of several buttons with the same action id. */
  value?: string;
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
    const surface = 'viewId' in where ? this.#onHome(person, where.viewId) : this.#inMessage(person, where);
    if (!surface) return refused('That message or form is not there any more.');
    const [action, second] = actionsOf(surface.blocks, actionId, options);
    if (!action) return refused(`There is nothing called ${actionId} to click here.`);
    if (second) return refused(`There are several called ${actionId}: tell which block.`);
    const actionTs = this.#stage.log.nextTs();
    const reply = await this.#bot.sendInteraction(surface.payload({ ...action, action_ts: actionTs }));
    return reply.ok ? { ok: true } : failed(reply);
  }

  #inMessage(person: Person, where: { ts: string; channel: string }) {
    const stage = this.#stage;
    const place = stage.workspace.placeOf(person.id, where.channel);
    const message = place && stage.log.find(place.id, where.ts);
    if (!place || !message || (message.ephemeralFor ?? person.id) !== person.id) return undefined;
    return {
      blocks: message.blocks,
      payload: (action: JsonObject) => {
        const key = stage.responseUrls.make({ userId: person.id, channelId: place.id, ts: message.ts });
        const responseUrl = `${stage.url}/respond/${key}`;
        const triggerId = stage.triggers.make(person.id);
        return messageClickPayload(stage, person, message, place, { action, triggerId, responseUrl });
      },
    };
  }

  #onHome(person: Person, viewId: string) {
    const stage = this.#stage;
    const view = stage.surfaces.homeOf(person.id);
    if (view?.id !== viewId) return undefined;
    return {
      blocks: view.blocks,
      payload: (action: JsonObject) =>
        viewClickPayload(stage, person, view, { action, triggerId: stage.triggers.make(person.id) }),
    };
  }
}

/** The entries in `actions` for all buttons that could be meant. */
function actionsOf(
  blocks: readonly JsonObject[],
  actionId: string,
  { blockId, value }: ClickOptions,
): JsonObject[] {
  const named = blocks
    .filter((block) => blockId === undefined || block.block_id === blockId)
    .flatMap((block) => elementsOf(block).map((element) => ({ block_id: block.block_id, ...element })))
    .filter((element: JsonObject) => element.type === 'button' && element.action_id === actionId);
  const ofValue = named.filter((element: JsonObject) => element.value === value);
  return named.length > 1 && ofValue.length > 0 ? ofValue : named;
}

function refused(reason: string): Outcome {
  return { ok: false, reason };
}
