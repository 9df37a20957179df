/**
 * The local stand-in for the chat platform: a workspace in memory that speaks the platform's HTTP protocol both
 * ways and refuses what the platform would refuse. For rehearsals and tests; it listens on this machine only.
 */
import { EventEmitter } from 'node:events';
import { BotLink } from './bot-link.ts';
import { HttpServer } from './http-server.ts';
import type { InputValue, InputValues, JsonObject, Outcome, SeenMessage, View } from './page-state.ts';
import { eventEnvelope, sharedEvent } from './payloads.ts';
import { type ClickOptions, type ClickPlace, PersonClicks } from './person-clicks.ts';
import { PersonForms } from './person-forms.ts';
import { failed, PersonTalk } from './person-talk.ts';
import { limitsClock, RateLimits } from './rate-limits.ts';
import { allPosts, messagesOf, type Post, ReadMarks } from './seen.ts';
import { buildStage, type Stage } from './stage.ts';
import type { StandInOptions } from './stand-in-options.ts';

export interface StandIn {
  /** `http://127.0.0.1:PORT`; the Web API client takes `${url}/api/`, a browser `${url}/`. */
  readonly url: string;
  /** Address to which commands, interactions and events go. */
  connectBot(url: string): void;
  /** Sends the handshake that the platform sends to a new address. */
  verifyBot(): Promise<Outcome>;
  /** `typed` begins with the command: `/loadline status`. `channelId` may be `dm`, here and below. */
  command(userId: string, channelId: string, typed: string): Promise<Outcome>;
  /** @param threadTs the message to reply to */
  say(userId: string, channelId: string, typed: string, threadTs?: string): Promise<Outcome>;
  click(userId: string, where: ClickPlace, actionId: string, options?: ClickOptions): Promise<Outcome>;
  /** A file that a person picks from their machine. @returns its id, for `fill` */
  pickFile(userId: string, name: string, bytes: Uint8Array): string;
  /** Puts values into the form on top, by action id or block id. @throws Error when an id means no input */
  fill(userId: string, viewId: string, values: Record<string, InputValue>): void;
  /** Changes one input, as a person does before they send the form off. */
  change(userId: string, viewId: string, blockId: string, state: InputValues): Promise<Outcome>;
  submit(userId: string, viewId: string, state?: InputValues): Promise<Outcome>;
  closeView(userId: string, viewId: string): Promise<Outcome>;
  openHome(userId: string, tab?: 'home' | 'messages'): Promise<Outcome>;
  /** Chosen from the menu that is offered everywhere. */
  shortcut(userId: string, callbackId: string): Promise<Outcome>;
  /** The same from the menu of a message. */
  messageShortcut(userId: string, channelId: string, ts: string, callbackId: string): Promise<Outcome>;
  /** Somebody leaves the company, or comes back. */
  setDeactivated(userId: string, isDeactivated: boolean): void;
  /** Another organisation is let into a channel, or out of it again; the bot hears of it. */
  setShared(channelId: string, isShared: boolean): void;
  /** The form on top; undefined when none is open. */
  viewOf(userId: string): View | undefined;
  homeOf(userId: string): View | undefined;
  /** What this person sees in a place, their own ephemeral messages included; oldest first. */
  messagesOf(userId: string, channelId: string): SeenMessage[];
  /** Every message so far, by anyone, in order. */
  allPosts(): Post[];
  /** Bytes of an uploaded file; undefined when there is none. */
  fileOf(id: string): Buffer | undefined;
  /** Calls back whenever something visible changed. @returns a function that ends it */
  on(event: 'change', listener: () => void): () => void;
  stop(): Promise<void>;
}

export async function startStandIn(options: StandInOptions): Promise<StandIn> {
  const emitter = new EventEmitter().setMaxListeners(0);
  const changed = () => void emitter.emit('change');
  const stage = buildStage(options, changed);
  const bot = new BotLink(stage);
  stage.announce = (event) => bot.announce(eventEnvelope(stage, event));
  const talk = new PersonTalk(stage, bot);
  const clicks = new PersonClicks(stage, bot);
  const forms = new PersonForms(stage, bot);
  const marks = new ReadMarks();
  const server = new HttpServer({
    stage,
    limits: limitsOf(options, stage),
    marks,
    talk,
    clicks,
    forms,
    emitter,
  });
  stage.url = await server.listen(options.port ?? 0);

  return {
    url: stage.url,
    connectBot: (url) => bot.connect(url),
    verifyBot: async () => {
      const reply = await bot.verify();
      return reply.ok ? { ok: true } : failed(reply);
    },
    command: (userId, channelId, typed) => talk.command(userId, channelId, typed),
    say: (userId, channelId, typed, threadTs) => talk.say(userId, channelId, typed, threadTs),
    click: (userId, where, actionId, more) => clicks.click(userId, where, actionId, more),
    pickFile: (userId, name, bytes) => forms.pickFile(userId, name, Buffer.from(bytes)).id,
    fill: (userId, viewId, values) => forms.fill(userId, viewId, values),
    change: (userId, viewId, blockId, state) => forms.change(userId, viewId, blockId, state),
    submit: (userId, viewId, state) => forms.submit(userId, viewId, state),
    closeView: (userId, viewId) => forms.close(userId, viewId),
    openHome: (userId, tab) => talk.openHome(userId, tab),
    shortcut: (userId, callbackId) => talk.shortcut(userId, callbackId),
    messageShortcut: (userId, channelId, ts, callbackId) =>
      talk.messageShortcut(userId, channelId, ts, callbackId),
    setDeactivated: (userId, isDeactivated) => {
      const person = stage.workspace.people.get(userId);
      if (!person) throw new Error(`nobody here has the id ${userId}`);
      person.deleted = isDeactivated;
      stage.changed();
    },
    setShared: (channelId, isShared) => {
      const channel = stage.workspace.conversations.get(channelId);
      if (!channel) throw new Error(`no channel here has the id ${channelId}`);
      channel.isShared = isShared;
      bot.announce(eventEnvelope(stage, sharedEvent(channelId, isShared)));
      stage.changed();
    },
    viewOf: (userId) => copy(stage.surfaces.topOf(userId)),
    homeOf: (userId) => copy(stage.surfaces.homeOf(userId)),
    messagesOf: (userId, channelId) => messagesOf(stage, userId, channelId),
    allPosts: () => allPosts(stage),
    fileOf: (id) => stage.files.get(id)?.bytes,
    on: (event, listener) => {
      emitter.on(event, listener);
      return () => void emitter.off(event, listener);
    },
    stop: async () => {
      await bot.stop();
      await server.stop();
    },
  };
}

function limitsOf(options: StandInOptions, stage: Stage): RateLimits {
  const setting = options.rateLimits ?? 'enforced';
  const scale = setting === 'off' ? Number.POSITIVE_INFINITY : setting === 'enforced' ? 1 : setting.scale;
  return new RateLimits(
    limitsClock(stage.realNowMs, () => options.now().getTime()),
    scale,
  );
}

function copy<T extends JsonObject>(value: T | undefined): T | undefined {
  return value && structuredClone(value);
}
