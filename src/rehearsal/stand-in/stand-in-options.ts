import { NEEDED_SCOPES } from '../../slack/workspaces/manifest-needs.ts';
import type { JsonObject } from './page-state.ts';

/** A person (or another bot) of the workspace. */
export interface StandInUser {
  id: string;
  /** Handle without the at sign; `@name` typed in a message or command becomes a mention. */
  name: string;
  realName?: string;
  /** IANA zone, `Etc/UTC` when left out. */
  timeZone?: string;
  isBot?: boolean;
  deleted?: boolean;
  isGuest?: boolean;
  /** Of another workspace that shares the channels which the person is in. */
  outsideTeamId?: string;
}

/** A channel's own rule about posts; the platform's error code is `restricted_action_` and this. */
export type PostingRule =
  | 'read_only_channel'
  | 'thread_only_channel'
  | 'thread_locked'
  | 'non_threadable_channel';

export interface StandInChannel {
  id: string;
  name: string;
  memberIds: readonly string[];
  /** Whether the bot has been invited; true when left out. */
  botIsMember?: boolean;
  isPrivate?: boolean;
  isArchived?: boolean;
  rule?: PostingRule;
}

/** Something that goes wrong with one Web API call, for tests of delivery. */
export interface Fault {
  /** Wait before anything else. */
  delayMs?: number;
  /** Cut the connection `before` the call is applied, or `after`: then the caller can't know that it was. */
  dropConnection?: 'before' | 'after';
  /** Answer with this status (and `body`) and do not apply the call, unless `applied` says so. */
  status?: number;
  /** Answer with this and do not apply the call, unless `applied` says so. */
  body?: JsonObject;
  headers?: Record<string, string>;
  /** Apply the call, though the answer says otherwise. */
  applied?: boolean;
  /** Wait after the call was applied and before it is answered. */
  answerDelayMs?: number;
}

/** A route that the host adds under `/page/`. What it throws reaches the page as `{error: message}`. */
export type PageRoute = (input: JsonObject) => Promise<unknown> | unknown;

export interface StandInOptions {
  signingSecret: string;
  botToken: string;
  teamId?: string;
  teamName?: string;
  botUserId?: string;
  users: readonly StandInUser[];
  channels: readonly StandInChannel[];
  /** Simulated time: stamps messages and events. */
  now(): Date;
  /** Real time in ms: expires triggers and response URLs, signs requests. `Date.now` when left out. */
  realNowMs?(): number;
  /** Scopes granted to the bot; all that Loadline asks for when left out. */
  scopes?: readonly string[];
  /** Commands the app has registered; `/loadline` when left out. */
  commands?: readonly string[];
  /** `{scale: 10}` allows ten times the platform's rates. Enforced as documented when left out. */
  rateLimits?: 'enforced' | 'off' | { scale: number };
  /** @param sent the arguments, as they came */
  faultFor?(method: string, sent: string): Fault | undefined;
  /** How long the app has to answer a request; the platform's 3,000 when left out. */
  ackLimitMs?: number;
  /** How long the app may open a form after an interaction; the platform's 3,000 when left out. */
  triggerLifeMs?: number;
  /** Waits before an event that failed is sent again; the platform's 0, 60,000 and 300,000 when left out. */
  eventRetryDelaysMs?: readonly number[];
  /** How long after its upload a picture can't be shown yet; 0 when left out. The platform takes about a second. */
  fileReadyAfterMs?: number;
  /** Parts of the app that the workspace can't open. */
  tabsOff?: readonly ('home' | 'messages')[];
  /** How old a message may be for its author to change it; for ever when left out. */
  editWindowMs?: number;
  /** Whether reading messages is limited as for an app that is sold outside the platform's marketplace. */
  isHistoryRestricted?: boolean;
  /** Extra routes of the page, by method and path: `'POST /page/forward'`. */
  routes?: Record<string, PageRoute>;
  /** Folder of the web page. */
  pageDir?: URL;
  /** Port on 127.0.0.1; a free one when left out. */
  port?: number;
}

/** Scopes that the app manifest asks for. */
export const LOADLINE_SCOPES: readonly string[] = Object.keys(NEEDED_SCOPES);
