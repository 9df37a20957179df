/** Gives blocks and elements that came without an id one, as the platform does. */
import type { IdMaker } from './id-maker.ts';
import type { JsonObject } from './page-state.ts';

/** @returns a deep copy; the given blocks are left as they are. */
export function normalBlocks(blocks: readonly JsonObject[], ids: IdMaker): JsonObject[] {
  return (structuredClone(blocks) as JsonObject[]).map((block) => {
    const whole = { ...block, block_id: block.block_id ?? ids.nextShort() };
    const named = (element: unknown) => withActionId(element as JsonObject, ids);
    if (block.type === 'input') return { ...whole, element: named(block.element) };
    if (block.type === 'actions') return { ...whole, elements: (block.elements as unknown[]).map(named) };
    return block.accessory === undefined ? whole : { ...whole, accessory: named(block.accessory) };
  });
}

function withActionId(element: JsonObject, ids: IdMaker): JsonObject {
  if (element.type === 'image') return element;
  return { ...element, action_id: element.action_id ?? ids.nextShort() };
}
