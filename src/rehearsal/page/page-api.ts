/**
 * The page's calls to the rehearsal server. Every failure comes out as an Error whose message can be shown
 * to a person as it is.
 */
import type { InputValues, Outcome, PageState, SeenFile } from '../stand-in/page-state.ts';

/** What the rehearsal is about. Absent when the workspace runs without the rehearsal around it. */
export interface About {
  teamName: string;
  scenario: string;
  /** What to try first, one suggestion a line. */
  hint: string;
  /** Where a visitor looks first; the first channel when left out. */
  startPlace?: string;
  /** IANA zone of the team; the member's own zone when left out. */
  timeZone?: string;
  /** Commands to offer as examples, and others at some places, by channel id. */
  examples?: string[];
  examplesAt?: Record<string, string[]>;
  /** Names of files that a form can be given as examples, by the name of the field. */
  exampleFiles?: Record<string, string[]>;
  /** The app's shortcuts, which the platform offers wherever somebody is. */
  shortcuts?: { callbackId: string; name: string }[];
  /** By member id, their part in the team, for example `facilitator`. */
  roles?: Record<string, string>;
}

export type Span = 'hour' | 'day' | 'close';
export type ClickTarget = { channel: string; ts: string } | { viewId: string };

/** Everything that a member sees; the server picks a member when none is named. */
export function fetchState(as: string | undefined): Promise<PageState> {
  return call(`/page/state${as ? `?as=${encodeURIComponent(as)}` : ''}`);
}

/** What the rehearsal is about; undefined when the server has no rehearsal. */
export async function fetchAbout(): Promise<About | undefined> {
  const response = await reach('/page/about');
  return response.status === 404 ? undefined : answerOf<About>(response);
}

export const sendCommand = (as: string, channel: string, text: string) =>
  post<Outcome>('/page/command', { as, channel, text });
export const sendMessage = (as: string, channel: string, text: string, threadTs: string | undefined) =>
  post<Outcome>('/page/say', { as, channel, text, threadTs });
/** The app's shortcut in the menu of a message. */
export const pullMessageIn = (as: string, channel: string, ts: string) =>
  post<Outcome>('/page/message-shortcut', { as, channel, ts, callbackId: 'pull-message-in' });
export const markRead = (as: string, channel: string) => post<unknown>('/page/read', { as, channel });
/** Somebody opens the app's Home page, or their direct messages with it. */
export const openApp = (as: string, tab: 'home' | 'messages') => post<Outcome>('/page/home', { as, tab });
export const sendShortcut = (as: string, callbackId: string) =>
  post<Outcome>('/page/shortcut', { as, callbackId });
export const submitForm = (as: string, viewId: string, state: InputValues) =>
  post<Outcome>('/page/submit', { as, viewId, state });
/** An input that the app hears of at once was changed. */
export const changeForm = (as: string, viewId: string, blockId: string, state: InputValues) =>
  post<Outcome>('/page/change', { as, viewId, blockId, state });
export const closeForm = (as: string, viewId: string) => post<Outcome>('/page/close', { as, viewId });
/** Moves the calendar on. `place` is where something came in that one should see. */
export const forward = (by: Span) => post<{ did: string; place?: string }>('/page/forward', { by });

/** A file that this member picks from their machine. */
export function sendFile(as: string, file: File): Promise<SeenFile> {
  const query = new URLSearchParams({ as, name: file.name });
  const headers = { 'content-type': 'application/octet-stream' };
  return call(`/page/pick-file?${query}`, { method: 'POST', headers, body: file });
}

/** One of the files that the rehearsal has as examples. */
export async function fetchExample(name: string): Promise<File> {
  const response = await reach(`/examples/${name}`);
  if (!response.ok) throw new Error(`The rehearsal answered with status ${response.status}.`);
  return new File([await response.blob()], name);
}

interface Click {
  as: string;
  target: ClickTarget;
  blockId: string;
  actionId: string;
  value: string | undefined;
}

export const sendClick = ({ target, ...click }: Click) =>
  post<Outcome>('/page/click', { ...click, ...target });

function post<T>(path: string, body: object): Promise<T> {
  const headers = { 'content-type': 'application/json' };
  return call(path, { method: 'POST', headers, body: JSON.stringify(body) });
}

async function call<T>(path: string, init?: RequestInit): Promise<T> {
  return answerOf<T>(await reach(path, init));
}

async function reach(path: string, init?: RequestInit): Promise<Response> {
  try {
    return await fetch(path, init);
  } catch (cause) {
    throw new Error('The rehearsal does not answer. Is it still running in your terminal?', { cause });
  }
}

async function answerOf<T>(response: Response): Promise<T> {
  const answer: unknown = await response.json().catch(() => undefined);
  if (response.ok && answer !== undefined) return answer as T;
  const words = (answer as { error?: unknown } | undefined)?.error;
  throw new Error(
    typeof words === 'string' ? words : `The rehearsal answered with status ${response.status}.`,
  );
}
