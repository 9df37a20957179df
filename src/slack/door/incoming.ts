/**
 * What the platform sends, as far as the bot reads it. Only the ids of people, workspaces and channels are
 * the platform's own word; everything else in a payload came from a person.
 */
import { z } from 'zod';
import { visibleText } from '../../app/visible-text.ts';

/** The platform's ids are visible ASCII; anything else would be somebody's try, and the database takes no NUL. */
const id = z
  .string()
  .max(255)
  .regex(/^[\x21-\x7e]+$/);
/** What a person typed, as it can be seen. */
const words = z.string().max(40_000).transform(visibleText);
const responseUrl = z.url({ protocol: /^https?$/ }).max(3_000);
/** An empty text is the same as none. */
export function maybe<T extends z.ZodType>(schema: T) {
  return z.preprocess((value) => (value === '' ? undefined : value), schema.optional());
}

export const slashCommand = z.looseObject({
  command: z.string().max(255),
  text: words.default(''),
  team_id: id,
  user_id: id,
  channel_id: id,
  trigger_id: id,
  response_url: maybe(responseUrl),
});

const interaction = {
  user: z.looseObject({ id }),
  /** Null in an organisation-wide installation. */
  team: z.looseObject({ id }).nullish(),
  trigger_id: maybe(id),
};

const surface = z.looseObject({
  id,
  callback_id: z.string().max(255).default(''),
  private_metadata: z.string().max(3_000).default(''),
  blocks: z.array(z.looseObject({ type: z.string(), block_id: z.string().optional() })).default([]),
  state: z
    .looseObject({ values: z.record(z.string(), z.record(z.string(), z.looseObject({}))).default({}) })
    .default({ values: {} }),
});
/** A form or a home page, with what was typed in it. */
export type Surface = z.infer<typeof surface>;

export const buttonPress = z.looseObject({
  ...interaction,
  type: z.literal('block_actions'),
  channel: z.looseObject({ id }).nullish(),
  view: z.looseObject({ id, type: z.string() }).nullish(),
  response_url: maybe(responseUrl),
  /** Where the button is: a message in a thread says which. */
  container: z.looseObject({ thread_ts: maybe(id) }).nullish(),
  actions: z.array(z.looseObject({ action_id: id, value: z.string().max(2_000).optional() })).min(1),
});

/** Chosen from the menu that the platform offers everywhere: it says of no channel, and gives nowhere to answer. */
export const globalShortcut = z.looseObject({
  ...interaction,
  type: z.literal('shortcut'),
  callback_id: z.string().max(255),
  trigger_id: id,
});

/** Chosen from the menu of a message, which may hold anything that anybody or another app posts. */
export const messageShortcut = z.looseObject({
  ...interaction,
  type: z.literal('message_action'),
  callback_id: z.string().max(255),
  trigger_id: id,
  channel: z.looseObject({ id }),
  message_ts: maybe(id),
  message: z.looseObject({ ts: maybe(id), text: maybe(words), thread_ts: maybe(id) }),
});
export type MessageShortcut = z.infer<typeof messageShortcut>;

export const formSubmission = z.looseObject({
  ...interaction,
  type: z.literal('view_submission'),
  view: surface,
});
export type FormSubmission = z.infer<typeof formSubmission>;

/** A live field of an open form was changed; a form that is under it says nothing. */
export const formChange = z.looseObject({
  ...interaction,
  type: z.literal('block_actions'),
  view: surface.extend({ type: z.literal('modal'), hash: maybe(z.string().max(255)) }),
});
export type FormChange = z.infer<typeof formChange>;

const formClosed = z.looseObject({
  ...interaction,
  type: z.literal('view_closed'),
  view: z.looseObject({ id }),
});

const anyEvent = z.looseObject({
  type: z.literal('event_callback'),
  team_id: id,
  event_id: id,
  event: z.looseObject({ type: id }),
});

/** What a message says, and who says it. */
const said = { user: maybe(id), bot_id: maybe(z.string()), text: words.optional(), thread_ts: maybe(id) };
const edited = z.looseObject({}).nullish();

/** A message that an event is about. */
const earlierMessage = z.looseObject({ ...said, edited });

export const messageEvent = anyEvent.extend({
  event: z.looseObject({
    type: z.literal('message'),
    channel: id,
    channel_type: z.string().optional(),
    ts: id,
    subtype: maybe(z.string()),
    ...said,
    /** When the message was sent that is no more. */
    deleted_ts: maybe(id),
    message: earlierMessage.nullish(),
    previous_message: earlierMessage.nullish(),
  }),
});
export type MessageEvent = z.infer<typeof messageEvent>;

/** Besides plain words: with a file, or in a thread and shown to all too. Every other subtype is a notice about a message. */
const SAID_SUBTYPES: readonly (string | undefined)[] = [undefined, 'file_share', 'thread_broadcast'];

/** Whether somebody said this just now. */
export function isSaid(subtype: string | undefined): boolean {
  return SAID_SUBTYPES.includes(subtype);
}

/** Somebody names the bot in a channel; in direct messages the platform tells of messages only. */
export const mentionEvent = anyEvent.extend({
  event: z.looseObject({
    type: z.literal('app_mention'),
    channel: id,
    ts: id,
    subtype: maybe(z.string()),
    ...said,
    edited,
  }),
});

export const homeOpened = anyEvent.extend({
  event: z.looseObject({ type: z.literal('app_home_opened'), user: id, tab: z.string().optional() }),
});

export const CHANNEL_CLOSED_EVENTS = [
  'channel_archive',
  'group_archive',
  'channel_deleted',
  'group_deleted',
] as const;
/** Of people who leave a channel, only the bot itself gets as far as a listener. */
const BOT_LEFT_EVENTS = ['channel_left', 'group_left', 'member_left_channel'] as const;
/** With another organisation. */
const SHARING_EVENTS = ['channel_shared', 'channel_unshared'] as const;
export const CHANNEL_EVENTS = [
  ...CHANNEL_CLOSED_EVENTS,
  ...BOT_LEFT_EVENTS,
  ...SHARING_EVENTS,
  'channel_id_changed',
] as const;

export const channelEvent = anyEvent.extend({
  event: z.union([
    z.looseObject({
      type: z.enum([...CHANNEL_CLOSED_EVENTS, ...BOT_LEFT_EVENTS, ...SHARING_EVENTS]),
      channel: id,
    }),
    z.looseObject({ type: z.literal('channel_id_changed'), old_channel_id: id, new_channel_id: id }),
  ]),
});

/** The bot was removed, or tokens were taken back. */
export const removalEvent = anyEvent.extend({
  event: z.discriminatedUnion('type', [
    z.looseObject({ type: z.literal('app_uninstalled') }),
    z.looseObject({
      type: z.literal('tokens_revoked'),
      tokens: z.looseObject({ bot: z.array(z.string()).default([]) }),
    }),
  ]),
});

const addressCheck = z.looseObject({ type: z.literal('url_verification'), challenge: z.string().max(1_000) });

/** The platform held events back, as there were too many; it says so once a minute. */
const eventsHeldBack = z.looseObject({ type: z.literal('app_rate_limited'), team_id: id });

interface Kind {
  /** The fields by which the listeners know it. */
  readonly marks: string;
  readonly reader: z.ZodType;
}

/** The kinds that have a type. */
const KINDS: ReadonlyMap<unknown, Kind> = new Map<unknown, Kind>([
  ['event_callback', { marks: 'event', reader: anyEvent }],
  ['block_actions', { marks: 'actions', reader: buttonPress }],
  ['shortcut', { marks: '', reader: globalShortcut }],
  ['message_action', { marks: '', reader: messageShortcut }],
  ['view_submission', { marks: '', reader: formSubmission }],
  ['view_closed', { marks: '', reader: formClosed }],
  ['url_verification', { marks: '', reader: addressCheck }],
  ['app_rate_limited', { marks: '', reader: eventsHeldBack }],
]);
const COMMAND: Kind = { marks: 'command', reader: slashCommand };
const ALL_MARKS = ['event', 'command', 'name', 'actions'];

/** Of a kind that no listener waits for, or that the platform has invented since. */
const otherInteraction = z.looseObject({ ...interaction, type: id });

function isOtherInteraction(body: Record<string, unknown>): boolean {
  return body.type !== undefined && !KINDS.has(body.type) && otherInteraction.safeParse(body).success;
}

/** Whether the platform could have sent this; everything else that has a valid signature is turned away. */
export function isFromPlatform(body: unknown): boolean {
  if (typeof body !== 'object' || body === null) return false;
  const given = body as Record<string, unknown>;
  const { marks, reader } = KINDS.get(given.type) ?? COMMAND;
  // A request with the marks of two kinds could be judged as one and done as the other.
  const isOfOneKind = ALL_MARKS.filter((mark) => given[mark] !== undefined).join() === marks;
  // Nobody does anything about another interaction, whatever it holds.
  return (isOfOneKind && reader.safeParse(body).success) || isOtherInteraction(given);
}

const plainEvent = anyEvent.extend({
  event: z.looseObject({ type: z.enum(['app_uninstalled', 'tokens_revoked']) }),
});
const heardEvent = z.union([messageEvent, mentionEvent, homeOpened, channelEvent, plainEvent]);

export function saysEventsAreHeldBack(body: unknown): boolean {
  return (body as { type?: unknown }).type === 'app_rate_limited' && eventsHeldBack.safeParse(body).success;
}

/** Whether a listener waits for this; what else the app is subscribed to is nothing that anybody here asked for. */
export function isHeard(body: unknown): boolean {
  if (isOtherInteraction(body as Record<string, unknown>) || saysEventsAreHeldBack(body)) return false;
  return (body as { event?: unknown }).event === undefined || heardEvent.safeParse(body).success;
}
