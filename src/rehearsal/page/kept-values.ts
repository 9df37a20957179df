/**
 * Keeps what was typed or chosen, by surface, block and action, while messages and forms are redrawn.
 * As on the platform, an input keeps its value as long as its block id and action id stay.
 */
import type { InputValue, InputValues, StateValues } from '../stand-in/page-state.ts';

export class KeptValues {
  readonly #bySurface = new Map<string, InputValues>();

  /** The kept value, or else `initial`, which is kept from now on. */
  start(surface: string, blockId: string, actionId: string, initial: InputValue): InputValue {
    const kept = this.#bySurface.get(surface)?.[blockId]?.[actionId];
    if (kept !== undefined) return kept;
    this.set(surface, blockId, actionId, initial);
    return initial;
  }

  set(surface: string, blockId: string, actionId: string, value: InputValue): void {
    const values = this.#bySurface.get(surface) ?? {};
    values[blockId] = { ...values[blockId], [actionId]: value };
    this.#bySurface.set(surface, values);
  }

  /** Everything kept for a surface. */
  of(surface: string): InputValues {
    return this.#bySurface.get(surface) ?? {};
  }

  /** Takes over what the workspace knows already, without touching what was put in here. */
  seed(surface: string, state: StateValues): void {
    for (const [blockId, actions] of Object.entries(state)) {
      for (const [actionId, stated] of Object.entries(actions)) {
        this.start(surface, blockId, actionId, inputValueOf(stated));
      }
    }
  }

  /** Forgets the values of inputs that are gone; `isThere` says so by block id and action id. */
  keepOnly(surface: string, isThere: (blockId: string, actionId: string) => boolean): void {
    for (const [blockId, actions] of Object.entries(this.of(surface))) {
      for (const actionId of Object.keys(actions)) if (!isThere(blockId, actionId)) delete actions[actionId];
    }
  }

  forget(surface: string): void {
    this.#bySurface.delete(surface);
  }
}

type Option = { value: string };

/** The plain value inside one entry of the platform's state object; null when the input is empty. */
export function inputValueOf(stated: Record<string, unknown>): InputValue {
  for (const [name, held] of Object.entries(stated)) {
    if (name === 'type' || held === null || held === undefined) continue;
    if (name === 'selected_option') return (held as Option).value;
    if (name === 'selected_options') return (held as Option[]).map((option) => option.value);
    if (name === 'files') return (held as { id: string }[]).map((file) => file.id);
    if (name === 'value' || name.startsWith('selected_')) return held as InputValue;
  }
  return null;
}
