/**
 * Open forms and Home pages. A person's forms lie on a stack of three at most; only the top one is seen.
 * Must not judge a view's content: that is checked before it comes here.
 */
import { stateOf } from './form-inputs.ts';
import type { IdMaker } from './ids.ts';
import type { JsonObject, View } from './page-state.ts';
import type { Workspace } from './workspace.ts';

/** docs.slack.dev/surfaces/modals: up to three views at a time. */
const STACK_MAX = 3;

export class Surfaces {
  readonly #ids: IdMaker;
  readonly #workspace: Workspace;
  readonly #now: () => Date;
  readonly #stacks = new Map<string, View[]>();
  readonly #homes = new Map<string, View>();

  constructor(ids: IdMaker, workspace: Workspace, now: () => Date) {
    this.#ids = ids;
    this.#workspace = workspace;
    this.#now = now;
  }

  stackOf(userId: string): readonly View[] {
    return this.#stacks.get(userId) ?? [];
  }

  topOf(userId: string): View | undefined {
    return this.stackOf(userId).at(-1);
  }

  homeOf(userId: string): View | undefined {
    return this.#homes.get(userId);
  }

  /** A view wherever it is, under others or on a Home page. */
  find(isWanted: (view: View) => boolean): View | undefined {
    return [...[...this.#stacks.values()].flat(), ...this.#homes.values()].find(isWanted);
  }

  hasRoom(userId: string): boolean {
    return this.stackOf(userId).length < STACK_MAX;
  }

  /** Puts a form on top of the person's stack. The caller has checked that there is room. */
  push(userId: string, given: JsonObject): View {
    const stack = this.#stacks.get(userId) ?? [];
    const view = this.#describe(given, stack);
    this.#stacks.set(userId, [...stack, view]);
    return view;
  }

  /** Closes everything and shows this form alone. */
  open(userId: string, given: JsonObject): View {
    this.#stacks.delete(userId);
    return this.push(userId, given);
  }

  /** Shows other content in the same view; what was typed stays where the ids stay. */
  update(view: View, given: JsonObject): View {
    const blocks = this.#ids.withIds(given.blocks as JsonObject[]);
    const fresh = { ...contentOf(given), blocks, state: { values: stateOf(blocks, view.state.values) } };
    Object.assign(view, fresh, { hash: this.#hash() });
    return view;
  }

  publishHome(userId: string, given: JsonObject): View {
    const present = this.#homes.get(userId);
    if (present) return this.update(present, given);
    const view = this.#describe(given, []);
    this.#homes.set(userId, view);
    return view;
  }

  /** Takes the top form away. */
  pop(userId: string): void {
    this.#stacks.set(userId, this.stackOf(userId).slice(0, -1));
  }

  clear(userId: string): void {
    this.#stacks.delete(userId);
  }

  #describe(given: JsonObject, stack: readonly View[]): View {
    const id = this.#ids.next('V');
    const blocks = this.#ids.withIds(given.blocks as JsonObject[]);
    const state = { values: stateOf(blocks) };
    const place = { previous_view_id: stack.at(-1)?.id ?? null, root_view_id: stack[0]?.id ?? id };
    const team = { team_id: this.#workspace.teamId, app_installed_team_id: this.#workspace.teamId };
    const app = { app_id: this.#workspace.appId, bot_id: this.#workspace.botId };
    return { id, ...team, ...contentOf(given), blocks, state, hash: this.#hash(), ...place, ...app };
  }

  #hash(): string {
    return `${Math.floor(this.#now().getTime() / 1000)}.${this.#ids.nextShort()}`;
  }
}

function contentOf(given: JsonObject) {
  const title = given.title === undefined ? {} : { title: given.title };
  return {
    ...title,
    type: given.type as 'modal' | 'home',
    callback_id: String(given.callback_id ?? ''),
    private_metadata: String(given.private_metadata ?? ''),
    external_id: String(given.external_id ?? ''),
    submit: given.submit ?? null,
    close: given.close ?? null,
    clear_on_close: given.clear_on_close ?? false,
    notify_on_close: given.notify_on_close ?? false,
    submit_disabled: given.submit_disabled ?? false,
  };
}
