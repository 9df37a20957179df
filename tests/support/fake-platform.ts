/** Stand-ins for the ports that reach outside: they remember what they were told and fail when they are told to. */

import type {
  Advice,
  ForecastAdvice,
  HistoryAdvice,
  JointAdvice,
  KeptAdvice,
  OddsAdvice,
  RangeAdvice,
} from '../../src/app/advice/advice.ts';
import type { Channel, Directory, Profile } from '../../src/app/ports/app-dependencies.ts';
import type { Charts, Picture } from '../../src/app/ports/charts.ts';
import type { Messenger, PostImage, RemovalStep } from '../../src/app/ports/messenger.ts';
import type { DeliveryFailureKind, RefusalCause } from '../../src/app/posting/delivery-failure.ts';
import { DeliveryFailure } from '../../src/app/posting/delivery-failure.ts';
import type { MessageContent } from '../../src/app/posting/post-kinds.ts';
import type { PostedAt, Recipient } from '../../src/app/posting/posts.ts';
import type { Burndown } from '../../src/sprint/burndown.ts';

/** A message as it is on the platform. */
interface StandingMessage {
  readonly workspaceId: string;
  readonly to: Recipient;
  readonly key: string;
  readonly at: PostedAt;
  content: MessageContent;
  image: PostImage | undefined;
  /** How many times it was updated in place. */
  updates: number;
}

/** What goes wrong with a call; `gotThrough`: it was done anyway. */
interface PlannedFailure {
  readonly on: 'post' | 'find' | 'update';
  readonly kind: DeliveryFailureKind;
  readonly gotThrough?: boolean;
  readonly retryAfterMs?: number;
  /** The platform's own code. */
  readonly code?: string;
  readonly because?: RefusalCause;
}

export class RecordingMessenger implements Messenger {
  readonly messages: StandingMessage[] = [];
  readonly calls: ('post' | 'find' | 'update')[] = [];
  readonly #failures: PlannedFailure[] = [];
  #posted = 0;
  /** Runs in the middle of the next call, before it is done. */
  meanwhile: (() => Promise<void>) | undefined;

  /** The next call of this kind fails so. */
  failNext(failure: PlannedFailure): void {
    this.#failures.push(failure);
  }

  async post(
    workspaceId: string,
    to: Recipient,
    key: string,
    content: MessageContent,
    image: PostImage | undefined,
    _maySend: () => boolean,
  ): Promise<PostedAt> {
    const channelId = 'channelId' in to ? to.channelId : `D-${to.userId}`;
    this.#posted += 1;
    const at = { channelId, ts: `${this.#posted}.000000` };
    await this.#call('post', () =>
      this.messages.push({ workspaceId, to, key, at, content, image, updates: 0 }),
    );
    return at;
  }

  /** Channels that people of another organisation read too. */
  readonly shared = new Set<string>();

  async isShared(_workspaceId: string, channelId: string): Promise<boolean> {
    return this.shared.has(channelId);
  }

  async find(workspaceId: string, to: Recipient, key: string): Promise<PostedAt | undefined> {
    let found: StandingMessage | undefined;
    await this.#call('find', () => {
      found = this.messages.find(
        (message) =>
          message.key === key &&
          message.workspaceId === workspaceId &&
          JSON.stringify(message.to) === JSON.stringify(to),
      );
    });
    return found?.at;
  }

  async update(
    workspaceId: string,
    at: PostedAt,
    content: MessageContent,
    image: PostImage | undefined,
    _maySend: () => boolean,
  ): Promise<void> {
    await this.#call('update', () => {
      const message = this.messages.find(
        (other) =>
          other.workspaceId === workspaceId && other.at.ts === at.ts && other.at.channelId === at.channelId,
      );
      if (!message) throw new Error(`there is no message at ${at.channelId} ${at.ts}`);
      Object.assign(message, { content, image, updates: message.updates + 1 });
    });
  }

  /** What the next removals answer, in order; when none is left, nothing was there. */
  readonly removalSteps: (RemovalStep | DeliveryFailure)[] = [];
  readonly removalsAsked: (readonly [
    workspaceId: string,
    channelId: string,
    beforeTs: string | undefined,
  ])[] = [];

  async removeOwn(workspaceId: string, channelId: string, beforeTs: string): Promise<RemovalStep> {
    this.removalsAsked.push([workspaceId, channelId, beforeTs]);
    const step = this.removalSteps.shift() ?? { removed: 0, left: 0, beforeTs, isDone: true };
    if (step instanceof DeliveryFailure) throw step;
    return step;
  }

  async #call(on: PlannedFailure['on'], work: () => void): Promise<void> {
    this.calls.push(on);
    const { meanwhile } = this;
    this.meanwhile = undefined;
    await meanwhile?.();
    const index = this.#failures.findIndex((planned) => planned.on === on);
    const [failure] = index < 0 ? [] : this.#failures.splice(index, 1);
    if (!failure || failure.gotThrough) work();
    if (failure) {
      const { retryAfterMs, because } = failure;
      throw new DeliveryFailure(failure.kind, failure.code ?? `${failure.kind}_example`, {
        ...(retryAfterMs === undefined ? {} : { retryAfterMs }),
        ...(because === undefined ? {} : { because }),
      });
    }
  }
}

/** People of one invented workspace; every channel holds all of them, but for those who are `outside`. */
export class FakeDirectory implements Directory {
  readonly people: Map<string, Profile>;
  /** Channels that are not as usual: unnamed, seen and in use. */
  readonly channels = new Map<string, Channel | undefined>();

  constructor(people: readonly Profile[]) {
    this.people = new Map(people.map((person) => [person.userId, person]));
  }

  async profile(_workspaceId: string, userId: string): Promise<Profile> {
    const person = this.people.get(userId);
    if (!person) throw new Error(`nobody is called ${userId}`);
    return person;
  }

  async channelMembers(): Promise<Profile[]> {
    return [...this.people.values()].filter(
      ({ userId, isBot, isDeactivated }) => !isBot && !isDeactivated && !this.outside.has(userId),
    );
  }

  /** Who is not in any channel. */
  readonly outside = new Set<string>();

  async notInChannel(
    _workspaceId: string,
    _channelId: string,
    userIds: readonly string[],
  ): Promise<string[]> {
    return userIds.filter((userId) => this.outside.has(userId));
  }

  async channel(_workspaceId: string, channelId: string): Promise<Channel | undefined> {
    const usual = { name: undefined, isArchived: false, isShared: false };
    return this.channels.has(channelId) ? this.channels.get(channelId) : usual;
  }
}

/** Draws nothing, and remembers what was asked of it. */
export class RecordingCharts implements Charts {
  readonly burndowns: Burndown[] = [];
  readonly advice: (Advice | JointAdvice)[] = [];

  async burndown(burndown: Burndown): Promise<{ png: Uint8Array; altText: string }> {
    this.burndowns.push(burndown);
    return { png: new Uint8Array([137, 80, 78, 71]), altText: `Burndown of ${burndown.sprintName}` };
  }

  async odds(advice: OddsAdvice): Promise<Picture> {
    return this.#advice(advice);
  }

  async range(advice: RangeAdvice): Promise<Picture> {
    return this.#advice(advice);
  }

  async forecast(advice: ForecastAdvice): Promise<Picture> {
    return this.#advice(advice);
  }

  async history(advice: HistoryAdvice): Promise<Picture> {
    return this.#advice(advice);
  }

  async kept(advice: KeptAdvice): Promise<Picture> {
    return this.#advice(advice);
  }

  async joint(advice: JointAdvice): Promise<Picture> {
    return this.#advice(advice);
  }

  #advice(advice: Advice | JointAdvice): Picture {
    this.advice.push(advice);
    const altText = `Chart of ${advice.question.about} of ${advice.team.name}`;
    return { png: new Uint8Array([137, 80, 78, 71]), altText };
  }
}
