/** What the methods of the Web API share: their shape, their arguments, how they refuse, how they page, and where the bot may act. */
import type { JsonObject } from '../page-state.ts';
import type { Tier } from '../rate-limits.ts';
import type { Stage } from '../stage.ts';
import type { PostingRule } from '../stand-in-options.ts';
import type { Conversation } from '../workspace.ts';

/** One method of the Web API. */
export interface ApiMethod {
  tier: Tier;
  /** Scope that every call needs; undefined when none, or when it depends on the conversation. */
  scope?: string;
  /** For posts: the conversation whose own limit counts. */
  limitedChannel?(args: ApiArgs, stage: Stage): string | undefined;
  /** @returns the answer without `ok`. @throws ApiFailure */
  answer(args: ApiArgs, stage: Stage): JsonObject;
}

export type ApiMethods = Record<string, ApiMethod>;

/** A call that the platform refuses: its error code, and what else its answer holds. */
export class ApiFailure extends Error {
  readonly code: string;
  readonly extra: JsonObject;

  /** @param problems sentences for `response_metadata.messages`, without the `[ERROR]` mark */
  constructor(code: string, problems: readonly string[] = [], extra: JsonObject = {}) {
    super(problems.length > 0 ? `${code}: ${problems.join('; ')}` : code);
    this.name = 'ApiFailure';
    this.code = code;
    const messages = problems.map((one) => `[ERROR] ${one}`);
    this.extra = problems.length > 0 ? { ...extra, response_metadata: { messages } } : extra;
  }
}

/**
 * Arguments of a Web API call, from a form or a JSON body. Values in a form are strings, so what is an object
 * there comes as JSON in a string; both are read in the same way.
 */
export class ApiArgs {
  readonly #given: JsonObject;

  constructor(given: JsonObject) {
    this.#given = given;
  }

  has(name: string): boolean {
    return this.#given[name] !== undefined && this.#given[name] !== null;
  }

  /** A text argument; undefined when absent. */
  text(name: string): string | undefined {
    const value = this.#given[name];
    if (value === undefined || value === null) return undefined;
    if (typeof value === 'object') throw missing(name, 'must be a string');
    return String(value);
  }

  requiredText(name: string): string {
    const value = this.text(name);
    if (value === undefined || value === '') throw missing(name, `missing required field: ${name}`);
    return value;
  }

  flag(name: string): boolean {
    return ['true', '1'].includes(String(this.#given[name]).toLowerCase());
  }

  /** A whole number from 1 on; the default when absent. Above the maximum counts as the maximum. */
  count(name: string, absent: number, max: number): number {
    const value = this.text(name);
    if (value === undefined || value === '0') return absent;
    if (!/^\d+$/.test(value)) throw new ApiFailure('invalid_limit');
    return Math.min(Number(value), max);
  }

  /** An object or list, given as such or as JSON; undefined when absent. */
  json(name: string, malformed: string): unknown {
    const value = this.#given[name];
    if (value === undefined || value === null || value === '') return undefined;
    if (typeof value !== 'string') return value;
    try {
      return JSON.parse(value) as unknown;
    } catch {
      throw new ApiFailure(malformed, malformed === 'invalid_arguments' ? [`${name} is not valid JSON`] : []);
    }
  }
}

function missing(name: string, sentence: string): ApiFailure {
  return new ApiFailure('invalid_arguments', [`${sentence} [json-pointer:/${name}]`]);
}

/** Reads the arguments in the address and in the body, which goes first. @throws ApiFailure in the platform's words */
export function argsOf(request: { query: string; contentType: string | undefined; body: Buffer }): ApiArgs {
  const { query, contentType, body } = request;
  const given = { ...Object.fromEntries(new URLSearchParams(query)), ...bodyArgs(contentType, body) };
  return new ApiArgs(given);
}

function bodyArgs(contentType: string | undefined, body: Buffer): JsonObject {
  const type = (contentType ?? '').split(';')[0]?.trim().toLowerCase();
  if (type === 'application/x-www-form-urlencoded') {
    return Object.fromEntries(new URLSearchParams(body.toString('utf8')));
  }
  if (type === 'application/json') {
    let parsed: unknown;
    try {
      parsed = JSON.parse(body.toString('utf8'));
    } catch {
      throw new ApiFailure('invalid_json');
    }
    if (typeof parsed !== 'object' || parsed === null || Array.isArray(parsed))
      throw new ApiFailure('json_not_object');
    return parsed as JsonObject;
  }
  if (body.length === 0) return {};
  throw new ApiFailure(type ? 'invalid_post_type' : 'missing_post_type');
}

interface Page<T> {
  items: T[];
  /** Empty when this was the last page. */
  nextCursor: string;
}

/**
 * Cuts a list into the page that a call asks for. Cursors name the last item seen, so that items added in between
 * neither repeat nor skip any.
 * @throws ApiFailure `invalid_cursor`, `invalid_limit`
 */
export function pageOf<T>(
  all: readonly T[],
  idOf: (item: T) => string,
  args: ApiArgs,
  { absent = 100, most = 999 } = {},
): Page<T> {
  const limit = args.count('limit', Math.min(absent, most), most);
  const cursor = args.text('cursor');
  let start = 0;
  if (cursor) {
    const after = Buffer.from(cursor, 'base64url')
      .toString('utf8')
      .replace(/^after:/, '');
    start = all.findIndex((item) => idOf(item) === after) + 1;
    if (start === 0) throw new ApiFailure('invalid_cursor');
  }
  const items = all.slice(start, start + limit);
  const last = items.at(-1);
  const more = start + limit < all.length && last !== undefined;
  return { items, nextCursor: more ? Buffer.from(`after:${idOf(last)}`).toString('base64url') : '' };
}

/** @throws ApiFailure `missing_scope`, telling which one */
export function requireScope(stage: Stage, scope: string): void {
  if (stage.scopes.has(scope)) return;
  throw new ApiFailure('missing_scope', [], { needed: scope, provided: [...stage.scopes].join(',') });
}

/** `read` or `history` scope by kind of conversation: `channels:read`, `groups:read`, `im:read`. */
export function scopeFor(conversation: Conversation, what: 'read' | 'history'): string {
  const family = conversation.kind === 'dm' ? 'im' : conversation.isPrivate ? 'groups' : 'channels';
  return `${family}:${what}`;
}

/** A conversation by its id that the bot can know of. @throws ApiFailure `channel_not_found` */
export function conversationOf(stage: Stage, id: string): Conversation {
  const found = stage.workspace.conversations.get(id);
  const hidden = found?.isPrivate && !found.memberIds.has(stage.workspace.bot.id);
  if (!found || hidden) throw new ApiFailure('channel_not_found');
  return found;
}

/** As `conversationOf`, and the id of a person opens the direct message with them. */
export function targetOf(stage: Stage, id: string): Conversation {
  const dm = stage.workspace.dmOf(id);
  // A post to somebody who has left succeeds nevertheless (github.com/slackapi/python-slack-sdk/issues/1156).
  if (dm) dm.isOpen = true;
  return dm ?? conversationOf(stage, id);
}

/** What the rule of a channel refuses, by whether the post is a reply. */
const RULES: Record<PostingRule, (isReply: boolean) => boolean> = {
  read_only_channel: () => true,
  thread_only_channel: (isReply) => !isReply,
  thread_locked: (isReply) => isReply,
  non_threadable_channel: (isReply) => isReply,
};

/** @throws ApiFailure `is_archived`, `messages_tab_disabled`, `not_in_channel` or the code of the channel's own rule */
export function requirePosting(stage: Stage, conversation: Conversation, threadTs?: string): void {
  if (conversation.isArchived) throw new ApiFailure('is_archived');
  if (conversation.kind === 'dm' && stage.options.tabsOff?.includes('messages'))
    throw new ApiFailure('messages_tab_disabled');
  const { rule } = conversation;
  if (rule && RULES[rule](threadTs !== undefined)) throw new ApiFailure(`restricted_action_${rule}`);
  const invited = conversation.memberIds.has(stage.workspace.bot.id);
  if (!invited && !stage.scopes.has('chat:write.public')) throw new ApiFailure('not_in_channel');
}
