/**
 * People and conversations of the workspace. Holds who may see what; must not hold messages or forms.
 */
import type { PostingRule, StandInOptions, StandInUser } from './stand-in-options.ts';

export interface Person {
  id: string;
  name: string;
  realName: string;
  timeZone: string;
  isBot: boolean;
  deleted: boolean;
  isGuest: boolean;
  /** Their own workspace, which for outsiders is another one. */
  teamId: string;
}

export interface Conversation {
  id: string;
  /** `directmessage` for direct messages, as the platform names them in commands. */
  name: string;
  kind: 'channel' | 'dm';
  isPrivate: boolean;
  isArchived: boolean;
  /** With another organisation. */
  isShared: boolean;
  memberIds: Set<string>;
  rule?: PostingRule;
  /** Of a direct message: whether it has been opened. */
  isOpen: boolean;
  /** The person on the other side of a direct message with the bot. */
  partnerId?: string;
}

export class Workspace {
  readonly teamId: string;
  readonly teamName: string;
  readonly teamDomain: string;
  readonly bot: Person;
  readonly botId: string;
  readonly appId = 'A0STANDIN';
  readonly people = new Map<string, Person>();
  readonly conversations = new Map<string, Conversation>();

  constructor(options: StandInOptions) {
    this.teamId = options.teamId ?? 'T0STANDIN';
    this.teamName = options.teamName ?? 'Rehearsal';
    this.teamDomain = this.teamName.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
    const botUserId = options.botUserId ?? 'U0LOADLINE';
    this.botId = `B${botUserId.slice(1)}`;
    this.bot = personOf(this.teamId, {
      id: botUserId,
      name: 'loadline',
      realName: 'Loadline',
      isBot: true,
    });
    for (const user of options.users) this.people.set(user.id, personOf(this.teamId, user));
    this.people.set(this.bot.id, this.bot);
    for (const channel of options.channels) {
      const memberIds = new Set(channel.memberIds);
      if (channel.botIsMember ?? true) memberIds.add(this.bot.id);
      for (const id of memberIds)
        if (!this.people.has(id)) throw new Error(`unknown member ${id} of #${channel.name}`);
      this.conversations.set(channel.id, {
        id: channel.id,
        name: channel.name,
        kind: 'channel',
        isPrivate: channel.isPrivate ?? false,
        isArchived: channel.isArchived ?? false,
        isShared: [...memberIds].some((id) => this.isOutsider(this.people.get(id) as Person)),
        isOpen: true,
        memberIds,
        ...(channel.rule ? { rule: channel.rule } : {}),
      });
    }
    for (const person of this.people.values()) {
      // People who have left keep theirs. Outsiders have none: the app isn't installed in their workspace.
      if (person.isBot || this.isOutsider(person)) continue;
      const id = `D${person.id.replace(/^[UW]/, '')}`;
      const memberIds = new Set([person.id, this.bot.id]);
      const dm = { id, name: 'directmessage', kind: 'dm' as const, isPrivate: true };
      const state = { isArchived: false, isShared: false, isOpen: false };
      this.conversations.set(id, { ...dm, ...state, memberIds, partnerId: person.id });
    }
  }

  /** A person who can act; throws when there is none, because only a caller's mistake leads here. */
  actor(userId: string): Person {
    const person = this.people.get(userId);
    if (!person || person.isBot || person.deleted) throw new Error(`nobody here has the id ${userId}`);
    return person;
  }

  /** The first person who can act, for a page that names nobody. */
  anyone(): Person {
    const first = [...this.people.values()].find((person) => !person.isBot && !person.deleted);
    if (!first) throw new Error('nobody is here');
    return first;
  }

  isOutsider({ teamId }: Person): boolean {
    return teamId !== this.teamId;
  }

  dmOf(userId: string): Conversation | undefined {
    return [...this.conversations.values()].find((one) => one.partnerId === userId);
  }

  /** What a person means by a place: a conversation's id, or `dm` for their talk with the bot. */
  placeOf(userId: string, place: string): Conversation | undefined {
    const found = place === 'dm' ? this.dmOf(userId) : this.conversations.get(place);
    return found?.memberIds.has(userId) ? found : undefined;
  }

  conversationsOf(userId: string): Conversation[] {
    return [...this.conversations.values()].filter((one) => one.memberIds.has(userId));
  }
}

function personOf(teamId: string, user: StandInUser): Person {
  return {
    id: user.id,
    name: user.name,
    realName: user.realName ?? user.name,
    timeZone: user.timeZone ?? 'Etc/UTC',
    isBot: user.isBot ?? false,
    deleted: user.deleted ?? false,
    isGuest: user.isGuest ?? false,
    teamId: user.outsideTeamId ?? teamId,
  };
}
