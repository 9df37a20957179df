/**
 * Files that people at the desk have picked for forms. The workspace takes them at once, as on the platform, and a
 * form holds their ids; so the names are kept here, and survive that a form is drawn again.
 */
import type { SeenFile, StateValues } from '../stand-in/page-state.ts';
import { sendFile } from './page-api.ts';

export class PickedFiles {
  readonly #known = new Map<string, SeenFile>();
  readonly #underWay = new Set<Promise<unknown>>();

  /** Hands a file to the workspace. @throws Error whose message can be shown */
  async pick(as: string, file: File): Promise<SeenFile> {
    const picked = await sendFile(as, file);
    this.#known.set(picked.id, picked);
    return picked;
  }

  /** Marks the work of a field that takes files in, until the field holds them. */
  async during(work: Promise<void>): Promise<void> {
    this.#underWay.add(work);
    try {
      await work;
    } finally {
      this.#underWay.delete(work);
    }
  }

  /** Resolves when no file is on its way: a form that is sent off must not leave one behind. */
  async settled(): Promise<void> {
    while (this.#underWay.size > 0) await Promise.allSettled(this.#underWay);
  }

  /** Name and size of a file; only those picked here or named by a form are known. */
  find(id: string): SeenFile | undefined {
    return this.#known.get(id);
  }

  /** Takes over the files that a form holds already. */
  seed(state: StateValues): void {
    for (const stated of Object.values(state).flatMap((actions) => Object.values(actions))) {
      const files = Array.isArray(stated.files)
        ? (stated.files as { id: string; name: string; size: number }[])
        : [];
      for (const { id, name, size } of files) this.#known.set(id, { id, name, sizeBytes: size });
    }
  }
}
