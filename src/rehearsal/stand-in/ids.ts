/** Ids that look like the platform's. */
import type { JsonObject } from './page-state.ts';

export class IdMaker {
  #count = 0;

  /** `next('V')` gives `V0000001AB`-like ids: unique within one stand-in, in order of making. */
  next(letter: string): string {
    this.#count += 1;
    return `${letter}${(36 ** 5 + this.#count).toString(36).toUpperCase().padStart(9, '0')}`;
  }

  nextShort(): string {
    this.#count += 1;
    return (36 ** 3 + this.#count).toString(36);
  }

  /** A deep copy of blocks, in which blocks and elements that came without an id have one. */
  withIds(blocks: readonly JsonObject[]): JsonObject[] {
    const named = (element: JsonObject) => ({ ...element, action_id: element.action_id ?? this.nextShort() });
    return (structuredClone(blocks) as JsonObject[]).map((block) => {
      const whole = { ...block, block_id: block.block_id ?? this.nextShort() };
      if (block.type === 'input') return { ...whole, element: named(block.element as JsonObject) };
      if (block.type === 'actions')
        return { ...whole, elements: (block.elements as JsonObject[]).map(named) };
      const accessory = block.accessory as JsonObject | undefined;
      return accessory && accessory.type !== 'image' ? { ...whole, accessory: named(accessory) } : whole;
    });
  }
}
