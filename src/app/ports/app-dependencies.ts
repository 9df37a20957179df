/** What the use cases need from outside. Adapters implement it; the use cases know nothing else. */
import type { Calendars } from './calendars.ts';
import type { Charts } from './charts.ts';
import type { FileReading } from './file-reading.ts';
import type { Messenger } from './messenger.ts';
import type { Store } from './store.ts';

export interface Clock {
  now(): Date;
}

/** What every use case may use. */
export interface AppDependencies {
  readonly store: Store;
  readonly clock: Clock;
  readonly directory: Directory;
  readonly calendars: Calendars;
  readonly files: FileReading;
  readonly charts: Charts;
  readonly messenger: Messenger;
  /** To whom the operator has left it to set teams up; undefined: anybody in a channel. */
  readonly setUpUsers?: SetUpUsers | undefined;
}

/** Those who may set teams up. */
interface SetUpUsers {
  /** Whoever administers the workspace. */
  readonly admins: boolean;
  readonly userIds: readonly string[];
}

/** What the platform knows of a person. */
export interface Profile {
  readonly userId: string;
  readonly name: string;
  /** IANA name; undefined when the platform does not say. */
  readonly timeZone: string | undefined;
  readonly isBot: boolean;
  readonly isDeactivated: boolean;
  /** Administers the workspace, or owns it. */
  readonly isAdmin: boolean;
  /** Let into some channels of the workspace only. */
  readonly isGuest: boolean;
  /** Of another workspace, which shares a channel with this one. */
  readonly isOutsider: boolean;
}

/** What the platform knows of a channel that the bot can post in. */
export interface Channel {
  readonly name: string | undefined;
  readonly isArchived: boolean;
  /** With another organisation, or one is invited: its people read what is posted there. */
  readonly isShared: boolean;
}

/** What the use cases need to know of people and channels. */
export interface Directory {
  profile(workspaceId: string, userId: string): Promise<Profile>;
  /** People in a channel, bots and deactivated ones left out; nobody when there are more than a team's. */
  channelMembers(workspaceId: string, channelId: string): Promise<Profile[]>;
  /** Which of these people are not in the channel, bots and deactivated ones among them. */
  notInChannel(workspaceId: string, channelId: string, userIds: readonly string[]): Promise<string[]>;
  /** Undefined: the bot can't see it, for example a private channel that it was not invited to. */
  channel(workspaceId: string, channelId: string): Promise<Channel | undefined>;
}
