/**
 * What is known of the request under way, in every part of its work: how it ended is noted where that is
 * understood, and reported once, when all of its work is done. Nothing may be decided by it.
 */
import { AsyncLocalStorage } from 'node:async_hooks';
import type { AnyMiddlewareArgs, Middleware } from '@slack/bolt';
import { withReference } from '../../reference.ts';

type RequestKind = 'command' | 'button' | 'form' | 'message' | 'home' | 'other';

/** Who counts requests. Gets codes and kinds only, never an id of a person, team, channel or workspace. */
export interface RequestMeter {
  requestHandled(kind: RequestKind, outcome: 'done' | 'refused' | 'failed', durationSeconds: number): void;
  /** A refusal that somebody has read, by its code. */
  refused(code: string): void;
  /** A failure that nobody foresaw, by its code. */
  failed(code: string): void;
  /** A request at the HTTP door that was not the platform's. */
  turnedAway(reason: string): void;
}

interface RequestScope {
  outcome: 'done' | 'refused' | 'failed';
  readonly meter: RequestMeter | undefined;
}

const underWay = new AsyncLocalStorage<RequestScope>();

export function noteRefusal(code: string): void {
  const scope = underWay.getStore();
  if (!scope) return;
  scope.outcome = 'refused';
  scope.meter?.refused(code);
}

export function noteFailure(code: string): void {
  const scope = underWay.getStore();
  if (!scope) return;
  scope.outcome = 'failed';
  scope.meter?.failed(code);
}

/** Gives each request its reference and its scope. */
export function scopedRequests(meter: RequestMeter | undefined): Middleware<AnyMiddlewareArgs> {
  return async ({ body, next }) => {
    const scope: RequestScope = { outcome: 'done', meter };
    const beganMs = performance.now();
    await withReference(() =>
      underWay.run(scope, async () => {
        try {
          await next();
        } catch (error) {
          scope.outcome = 'failed';
          throw error;
        } finally {
          meter?.requestHandled(kindOf(body), scope.outcome, (performance.now() - beganMs) / 1_000);
        }
      }),
    );
  };
}

function kindOf(body: unknown): RequestKind {
  const { command, type, event } = body as { command?: unknown; type?: unknown; event?: { type?: unknown } };
  if (typeof command === 'string') return 'command';
  if (type === 'block_actions') return 'button';
  if (type === 'view_submission') return 'form';
  if (event?.type === 'message' || event?.type === 'app_mention') return 'message';
  if (event?.type === 'app_home_opened') return 'home';
  return 'other';
}
