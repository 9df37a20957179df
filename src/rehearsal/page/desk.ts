/** What the page knows at the moment: who one is, where one looks, and the last state that was fetched. */
import type { PageChannel, PageState, PageUser, SeenFile, StateValues } from '../stand-in/page-state.ts';
import { KeptValues } from './kept-values.ts';
import type { Wording } from './mrkdwn-dom.ts';
import { type About, sendFile } from './page-api.ts';

/** The app's Home page, as a place beside the channels. */
export const HOME = 'home';
/** The member's direct messages with the app: everybody has their own. */
export const DIRECT = 'dm';

export interface Desk {
  me: string | undefined;
  /** Id of a channel, `DIRECT` or `HOME`. */
  place: string | undefined;
  /** The message whose thread one reads; undefined for the place as a whole. */
  thread: string | undefined;
  state: PageState | undefined;
  about: About | undefined;
  values: KeptValues;
  pickedFiles: PickedFiles;
  /** Unread messages of each member, by member id. */
  unreadByMember: Map<string, number>;
  /** By form id, what was wrong with each field at the last attempt. */
  fieldErrors: Map<string, Record<string, string>>;
  /** Shows every message as its text fallback. */
  asText: boolean;
}

/** A desk at the place that the address names (`#as=U1&at=C1`). */
export function openDesk(address: string): Desk {
  const wanted = new URLSearchParams(address.replace(/^#/, ''));
  return {
    me: wanted.get('as') ?? undefined,
    place: wanted.get('at') ?? undefined,
    thread: undefined,
    state: undefined,
    about: undefined,
    values: new KeptValues(),
    pickedFiles: new PickedFiles(),
    unreadByMember: new Map(),
    fieldErrors: new Map(),
    asText: false,
  };
}

/** The channel or direct messages one looks at; undefined on the Home page and for a place that is not there. */
export function placeAt(desk: Desk, state: PageState): PageChannel | undefined {
  return state.channels.find((channel) => placeKey(channel) === desk.place);
}

/** How the page's address names a place. */
export function placeKey(channel: PageChannel): string {
  return channel.kind === 'dm' ? DIRECT : channel.id;
}

/** The zone that times are shown in. */
export function zoneOf(desk: Desk, state: PageState): string {
  return desk.about?.timeZone ?? state.me.timeZone;
}

/** Names for the ids in messages. An unknown id stays as it is. */
export function wordingOf(desk: Desk, state: PageState): Wording {
  return {
    timeZone: zoneOf(desk, state),
    userName: (id) => nameOf(state.users.find((user) => user.id === id)) ?? id,
    channelName: (id) => state.channels.find((channel) => channel.id === id)?.name ?? id,
  };
}

/** The name that people go by. */
export function nameOf(user: PageUser): string;
export function nameOf(user: PageUser | undefined): string | undefined;
export function nameOf(user: PageUser | undefined): string | undefined {
  return user && (user.realName || user.name);
}

/**
 * Files that people at the desk have picked for forms. The workspace takes them at once, as on the platform, and a
 * form holds their ids; so the names are kept here, and survive that a form is drawn again.
 */
export class PickedFiles {
  readonly #known = new Map<string, SeenFile>();
  readonly #underWay = new Set<Promise<unknown>>();

  /** Hands a file to the workspace. @throws Error whose message can be shown */
  async pick(as: string, file: File): Promise<SeenFile> {
    const picked = await sendFile(as, file);
    this.#known.set(picked.id, picked);
    return picked;
  }

  /** Marks the work of a field that takes files in; a form is not sent off before the field holds them. */
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
