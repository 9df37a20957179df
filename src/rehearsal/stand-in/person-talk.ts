/**
 * What a person types: commands and messages; and their looking at the Home page.
 */
import { ApiFailure, scopeFor } from './api/api-method.ts';
import type { BotLink, Reply } from './bot-link.ts';
import type { Message } from './message-log.ts';
import type { JsonObject, Outcome } from './page-state.ts';
import {
  commandFields,
  eventEnvelope,
  mentionEvent,
  messageEvent,
  messageShortcutPayload,
  shortcutPayload,
} from './payloads.ts';
import { respondIn } from './response-posts.ts';
import type { Stage } from './stage.ts';
import type { Conversation, Workspace } from './workspace.ts';

/** Mentions of people and channels that were written out already stay as they are. */
const MENTION = /(<@[A-Z0-9]+(?:\|[^>]*)?>|<#[A-Z0-9]+(?:\|[^>]*)?>)/;

export class PersonTalk {
  readonly #stage: Stage;
  readonly #bot: BotLink;

  constructor(stage: Stage, bot: BotLink) {
    this.#stage = stage;
    this.#bot = bot;
  }

  /** `/loadline status` in a place. The words after the command reach the app as typed, mentions marked. */
  async command(userId: string, channelId: string, typed: string): Promise<Outcome> {
    const stage = this.#stage;
    const person = stage.workspace.actor(userId);
    const place = stage.workspace.placeOf(userId, channelId);
    if (!place) return notThere();
    const [, command = '', text = ''] = /^(\S+)\s*([\s\S]*)$/.exec(typed.trim()) ?? [];
    if (!(stage.options.commands ?? ['/loadline']).includes(command)) {
      return { ok: false, reason: `${command || 'That'} is not a command of this workspace.` };
    }
    if (stage.workspace.isOutsider(person))
      return { ok: false, reason: `${command} is not a command of your workspace.` };
    if (!stage.scopes.has('commands')) return { ok: false, reason: 'The app may not have commands here.' };
    const responsePlace = { userId, channelId: place.id, ts: undefined };
    const reply = await this.#bot.sendCommand(
      commandFields(stage, person, place, {
        command,
        text: typedText(text.trim(), stage.workspace, true),
        triggerId: stage.triggers.make(userId),
        responseUrl: `${stage.url}/respond/${stage.responseUrls.make(responsePlace)}`,
      }),
    );
    if (!reply.ok) return failed(reply);
    if (reply.body === undefined) return { ok: true };
    try {
      respondIn(responsePlace, reply.body, stage);
      return { ok: true };
    } catch (error) {
      if (!(error instanceof ApiFailure)) throw error;
      return { ok: false, reason: `The app's answer was refused: ${error.message}.` };
    }
  }

  /**
   * A message, or a reply under one. The app hears it when it has been invited and may read that kind of place, or is
   * mentioned.
   */
  async say(userId: string, channelId: string, typed: string, threadTs?: string): Promise<Outcome> {
    const { workspace, log } = this.#stage;
    workspace.actor(userId);
    const place = workspace.placeOf(userId, channelId);
    if (!place) return notThere();
    if (place.isArchived) return { ok: false, reason: 'This channel is archived.' };
    if (typed.trim() === '') return { ok: false, reason: 'There is nothing to send.' };
    const first = threadTs === undefined ? undefined : log.find(place.id, threadTs);
    if (threadTs !== undefined && (!first || first.ephemeralFor !== undefined))
      return { ok: false, reason: 'Nobody can reply to that message.' };
    const text = typedText(typed, workspace, false);
    const thread = first ? { threadTs: first.threadTs ?? first.ts } : {};
    const message = log.add({ text, blocks: [], channelId: place.id, userId, byBot: false, ...thread });
    this.#stage.changed();
    return this.hear(message, place);
  }

  /** Tells the app of a message if it would hear of it. */
  async hear(message: Message, place: Conversation): Promise<Outcome> {
    const stage = this.#stage;
    const { bot } = stage.workspace;
    if (!place.memberIds.has(bot.id)) return { ok: true };
    const events: JsonObject[] = [];
    // In direct messages no mention is told of.
    const isMention = place.kind === 'channel' && message.text.includes(`<@${bot.id}>`);
    if (isMention && stage.scopes.has('app_mentions:read')) events.push(mentionEvent(stage, message, place));
    if (stage.scopes.has(scopeFor(place, 'history'))) events.push(messageEvent(stage, message, place));
    for (const event of events) {
      const reply = await this.#bot.sendEvent(eventEnvelope(stage, event));
      if (!reply.ok) return failed(reply);
    }
    return { ok: true };
  }

  /** The person chooses a shortcut of the app from the menu that is offered everywhere. */
  async shortcut(userId: string, callbackId: string): Promise<Outcome> {
    const stage = this.#stage;
    const person = stage.workspace.actor(userId);
    if (stage.workspace.isOutsider(person))
      return { ok: false, reason: 'Your workspace has no such shortcut.' };
    if (!stage.scopes.has('commands')) return { ok: false, reason: 'The app may not have shortcuts here.' };
    const reply = await this.#bot.sendInteraction(shortcutPayload(stage, person, callbackId));
    return reply.ok ? { ok: true } : failed(reply);
  }

  /** The person chooses a shortcut of the app from the menu of a message; those that one person alone sees have none. */
  async messageShortcut(userId: string, channelId: string, ts: string, callbackId: string): Promise<Outcome> {
    const stage = this.#stage;
    const person = stage.workspace.actor(userId);
    const place = stage.workspace.placeOf(userId, channelId);
    const message = place && stage.log.find(place.id, ts);
    if (!place || !message || message.ephemeralFor !== undefined)
      return { ok: false, reason: 'That message has no menu.' };
    if (stage.workspace.isOutsider(person))
      return { ok: false, reason: 'Your workspace has no such shortcut.' };
    if (!stage.scopes.has('commands')) return { ok: false, reason: 'The app may not have shortcuts here.' };
    const key = stage.responseUrls.make({ userId, channelId: place.id, ts });
    const chosen = {
      callbackId,
      triggerId: stage.triggers.make(userId),
      responseUrl: `${stage.url}/respond/${key}`,
    };
    const payload = messageShortcutPayload(stage, person, message, place, chosen);
    const reply = await this.#bot.sendInteraction(payload);
    return reply.ok ? { ok: true } : failed(reply);
  }

  /** The person opens the bot's Home page, or the direct messages with it. Only the page comes with what it shows. */
  async openHome(userId: string, tab: 'home' | 'messages' = 'home'): Promise<Outcome> {
    const stage = this.#stage;
    stage.workspace.actor(userId);
    const view = tab === 'home' ? stage.surfaces.homeOf(userId) : undefined;
    const reply = await this.#bot.sendEvent(
      eventEnvelope(stage, {
        type: 'app_home_opened',
        user: userId,
        channel: stage.workspace.dmOf(userId)?.id,
        tab,
        event_ts: stage.log.nextTs(),
        ...(view ? { view } : {}),
      }),
    );
    return reply.ok ? { ok: true } : failed(reply);
  }
}

/** The outcome of a request that the app did not take. */
export function failed(reply: Reply & { ok: false }): Outcome {
  return { ok: false, reason: `${reply.reason[0]?.toUpperCase()}${reply.reason.slice(1)}.` };
}

function notThere(): Outcome {
  return { ok: false, reason: 'You are not in that channel.' };
}

/**
 * What the platform makes of text that a person types in a message or a command: `&`, `<` and `>` are escaped,
 * handles become mentions. docs.slack.dev/messaging/formatting-message-text
 * @param withNames commands carry the handle beside the id (`<@U1|ana>`), messages the id alone
 */
export function typedText(typed: string, workspace: Workspace, withNames: boolean): string {
  return typed
    .split(MENTION)
    .map((part, index) => (index % 2 === 1 ? part : mentionsOf(escaped(part), workspace, withNames)))
    .join('');
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}

function mentionsOf(text: string, workspace: Workspace, withNames: boolean): string {
  const people = new Map([...workspace.people.values()].map((person) => [person.name.toLowerCase(), person]));
  return text.replaceAll(
    /(^|[\s,;(])@([\p{L}\p{N}._-]*[\p{L}\p{N}_-])/gu,
    (whole, before: string, name: string) => {
      const person = people.get(name.toLowerCase());
      if (!person) return whole;
      return `${before}<@${person.id}${withNames ? `|${person.name}` : ''}>`;
    },
  );
}
