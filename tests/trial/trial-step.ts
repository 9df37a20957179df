/** One call of the trial: what the documents say of it, what came, and how the two compare. */
import type { WebAPICallResult, WebClient } from '@slack/web-api';

export interface TrialStep {
  /** The call and what is special about it; names nobody. */
  readonly what: string;
  /** What the documents promise: `ok`, or error codes of which any will do. Nothing where they leave it open. */
  readonly expected: readonly string[];
  /** @returns what came: `ok`, the platform’s error code, or a measurement. @throws NotTried; a refused call */
  run(): Promise<string>;
}

/** The step can’t be tried: a place or a person is not named, or an earlier call failed. */
export class NotTried extends Error {
  override readonly name = 'NotTried';
  readonly code = 'not-tried';
}

export interface StepResult {
  readonly what: string;
  readonly expected: readonly string[];
  readonly came: string;
  readonly verdict: 'as expected' | 'DIFFERS' | 'measured' | 'not tried';
}

/** Runs the steps one after the other, since later ones use what earlier ones made. */
export async function* runSteps(steps: readonly TrialStep[]): AsyncGenerator<StepResult> {
  for (const { what, expected, run } of steps) {
    try {
      const came = await run().catch(codeOf);
      const agrees = expected.some((one) => came === one);
      const verdict = expected.length === 0 ? 'measured' : agrees ? 'as expected' : 'DIFFERS';
      yield { what, expected, came, verdict };
    } catch (error) {
      if (!(error instanceof NotTried)) throw error;
      yield { what, expected, came: error.message, verdict: 'not tried' };
    }
  }
}

/** As the report prints it: three lines, and no token, name or id. */
export function printedResult(result: StepResult, number: number): string {
  const expected = result.expected.length === 0 ? 'not documented' : result.expected.join(' or ');
  return [
    `${String(number).padStart(2)}  ${result.what}`,
    `    expected: ${expected}`,
    `    came:     ${result.came} (${result.verdict})`,
  ].join('\n');
}

/** @returns `ok` when the call was carried out. @throws what the client throws */
export async function okOf(call: Promise<WebAPICallResult>): Promise<string> {
  await call;
  return 'ok';
}

/**
 * The code of a refused call. Messages are left out, since they may quote a token or an address.
 *
 * @throws NotTried as it is
 */
export function codeOf(error: unknown): string {
  if (error instanceof NotTried) throw error;
  const { code, data, statusCode } = error as {
    code?: unknown;
    data?: { error?: unknown };
    statusCode?: unknown;
  };
  for (const found of [data?.error, code]) {
    if (typeof found === 'string' && /^[A-Za-z_]{1,60}$/.test(found)) {
      return typeof statusCode === 'number' ? `${found}, status ${statusCode}` : found;
    }
  }
  return 'an answer that can’t be read';
}

/** What the steps share. */
export interface TrialWorld {
  readonly client: WebClient;
  /** A client with a token that no workspace knows. */
  readonly stranger: WebClient;
  /** A public channel that the bot is in. */
  readonly channelId: string;
  /** The person who runs the trial; in the channel. */
  readonly personId: string;
  /** A public channel that the bot is not in. */
  readonly otherChannelId: string | undefined;
  /** A private channel that the bot is not in. */
  readonly privateChannelId: string | undefined;
  readonly deactivatedId: string | undefined;
  /** What to press is sent as a message with buttons; undefined without a way to hear of it. */
  readonly presses: Presses | undefined;
  /** A picture with words that a person can read. */
  readonly picture: Uint8Array;
  wait(ms: number): Promise<unknown>;
  /** Messages to delete at the end. */
  readonly posted: { channel: string; ts: string }[];
  /** The uploaded picture, once it can be shown. */
  pictureId: string | undefined;
}

/** One press of a button of the trial. */
export interface Press {
  readonly triggerId: string;
  readonly responseUrl: string;
  readonly value: string;
}

export interface Presses {
  /** @returns the first press of this button from now on. @throws NotTried when nobody presses it for three minutes */
  next(actionId: string): Promise<Press>;
}

/** @throws NotTried when the value is missing */
export function needed<T>(value: T | undefined, why: string): T {
  if (value === undefined) throw new NotTried(why);
  return value;
}

/** Posts, and notes the message for deletion. @throws what the client throws */
export async function post(
  world: TrialWorld,
  content: Record<string, unknown>,
): Promise<{ channel: string; ts: string; text: string }> {
  const answer = await world.client.apiCall('chat.postMessage', { channel: world.channelId, ...content });
  const { channel, ts, message } = answer as { channel?: string; ts?: string; message?: { text?: string } };
  if (!channel || !ts) throw new NotTried('the answer names no message');
  world.posted.push({ channel, ts });
  return { channel, ts, text: message?.text ?? '' };
}

export const section = (text: string) => ({ type: 'section', text: { type: 'mrkdwn', text } });
