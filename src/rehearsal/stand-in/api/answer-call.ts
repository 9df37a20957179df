/**
 * Answers one Web API call: token, limits, scopes, then the method. Faults that a test ordered come first.
 * Errors come with status 200 and `ok: false`, as the platform sends them; only rate limits use a status.
 */
import { setTimeout as wait } from 'node:timers/promises';
import type { JsonObject } from '../page-state.ts';
import type { RateLimits, Tier } from '../rate-limits.ts';
import type { Stage } from '../stage.ts';
import {
  type ApiArgs,
  ApiFailure,
  type ApiMethod,
  type ApiMethods,
  argsOf,
  requireScope,
} from './api-method.ts';
import { chatMethods } from './chat-methods.ts';
import { conversationMethods } from './conversation-methods.ts';
import { fileMethods } from './file-methods.ts';
import { peopleMethods } from './people-methods.ts';
import { viewMethods } from './view-methods.ts';

const METHODS: ApiMethods = {
  ...chatMethods,
  ...viewMethods,
  ...peopleMethods,
  ...conversationMethods,
  ...fileMethods,
};

interface ApiRequest {
  method: string;
  /** Arguments in the address, as calls by GET have them. */
  query: string;
  contentType: string | undefined;
  authorization: string | undefined;
  body: Buffer;
}

/** `drop` means: cut the connection instead of answering. */
type ApiAnswer = 'drop' | { status: number; headers: Record<string, string>; body: JsonObject };

export async function answerCall(request: ApiRequest, stage: Stage, limits: RateLimits): Promise<ApiAnswer> {
  const fault = stage.options.faultFor?.(request.method, request.body.toString());
  if (fault?.delayMs) await wait(fault.delayMs);
  if (fault?.dropConnection === 'before') return 'drop';
  const isForged = fault?.status !== undefined || fault?.body !== undefined;
  const answer = isForged && !fault.applied ? undefined : applyCall(request, stage, limits);
  if (fault?.answerDelayMs) await wait(fault.answerDelayMs, undefined, { ref: false });
  if (fault?.dropConnection === 'after') return 'drop';
  if (answer && !isForged) return answer;
  const body = fault?.body ?? { ok: false, error: 'internal_error' };
  return { status: fault?.status ?? 200, headers: fault?.headers ?? {}, body };
}

function applyCall(request: ApiRequest, stage: Stage, limits: RateLimits): ApiAnswer {
  const method = Object.hasOwn(METHODS, request.method) ? METHODS[request.method] : undefined;
  const headers: Record<string, string> = { 'x-oauth-scopes': [...stage.scopes].join(',') };
  if (method?.scope) headers['x-accepted-oauth-scopes'] = method.scope;
  try {
    const args = argsOf(request);
    requireToken(request, args, stage);
    if (!method) throw new ApiFailure('unknown_method', [], { req_method: request.method });
    const waitSeconds = limits.take(
      request.method,
      tierOf(method, stage),
      method.limitedChannel?.(args, stage),
    );
    if (waitSeconds !== undefined) {
      const body = { ok: false, error: 'ratelimited' };
      return { status: 429, headers: { ...headers, 'retry-after': String(waitSeconds) }, body };
    }
    return { status: 200, headers, body: { ok: true, ...applyMethod(method, args, stage) } };
  } catch (error) {
    if (error instanceof ApiFailure) {
      return { status: 200, headers, body: { ok: false, error: error.code, ...error.extra } };
    }
    const messages = [
      `[ERROR] the stand-in itself failed: ${error instanceof Error ? error.message : error}`,
    ];
    return {
      status: 200,
      headers,
      body: { ok: false, error: 'internal_error', response_metadata: { messages } },
    };
  }
}

function tierOf({ tier }: ApiMethod, stage: Stage): Tier {
  return tier === 'history' && stage.options.isHistoryRestricted ? 1 : tier;
}

function applyMethod(method: ApiMethod, args: ApiArgs, stage: Stage): JsonObject {
  if (method.scope) requireScope(stage, method.scope);
  return method.answer(args, stage);
}

function requireToken(request: ApiRequest, args: ApiArgs, stage: Stage): void {
  const bearer = /^Bearer (.+)$/i.exec(request.authorization ?? '')?.[1];
  const token = bearer ?? args.text('token');
  if (!token) throw new ApiFailure('not_authed');
  if (token !== stage.options.botToken) throw new ApiFailure('invalid_auth');
}
