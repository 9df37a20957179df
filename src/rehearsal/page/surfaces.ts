/** Makes the surfaces of the page: for a message, and for a form or Home page. */
import type { InputValues, JsonObject, PageState, SeenMessage, View } from '../stand-in/page-state.ts';
import { type Desk, nameOf, wordingOf } from './desk.ts';
import type { ClickTarget } from './page-api.ts';
import type { Surface } from './surface.ts';

/** Reports a click for the person at the desk. */
export type Act = (
  target: ClickTarget,
  click: { blockId: string; actionId: string; value: Parameters<Surface['act']>[2]; state: InputValues },
) => Promise<void>;

export function messageSurface(desk: Desk, state: PageState, message: SeenMessage, act: Act): Surface {
  const key = `${state.me.id}/${message.channel}/${message.ts}`;
  desk.values.seed(key, message.state);
  return surface(desk, state, key, message.blocks, { channel: message.channel, ts: message.ts }, act);
}

export function viewSurface(desk: Desk, state: PageState, view: View, act: Act): Surface {
  desk.values.seed(view.id, view.state.values);
  desk.pickedFiles.seed(view.state.values);
  const base = surface(desk, state, view.id, view.blocks, { viewId: view.id }, act);
  return { ...base, fieldErrors: desk.fieldErrors.get(view.id) ?? {} };
}

function surface(
  desk: Desk,
  state: PageState,
  key: string,
  blocks: readonly JsonObject[],
  target: ClickTarget,
  act: Act,
): Surface {
  const inputs = new Set(blocks.flatMap(inputKeys));
  desk.values.keepOnly(key, (blockId, actionId) => inputs.has(`${blockId}/${actionId}`));
  return {
    key,
    wording: wordingOf(desk, state),
    people: state.users
      .filter((user) => !user.isBot)
      .map((user) => ({ value: user.id, label: nameOf(user) })),
    places: state.channels
      .filter((channel) => channel.kind === 'channel')
      .map((channel) => ({ value: channel.id, label: `#${channel.name}` })),
    values: desk.values,
    files: {
      pick: (file) => desk.pickedFiles.pick(state.me.id, file),
      find: (id) => desk.pickedFiles.find(id),
      during: (work) => desk.pickedFiles.during(work),
    },
    fieldErrors: {},
    act: (blockId, actionId, value) => act(target, { blockId, actionId, value, state: desk.values.of(key) }),
  };
}

/** `block id/action id` of everything in a block that may hold a value. */
function inputKeys(block: JsonObject): string[] {
  const elements = Array.isArray(block.elements) ? block.elements : [];
  return [block.element, block.accessory, ...elements].flatMap((part) => {
    const actionId = (part as { action_id?: unknown } | undefined)?.action_id;
    return typeof actionId === 'string' ? [`${block.block_id}/${actionId}`] : [];
  });
}
