import type { JsonObject } from '../page-state.ts';
import type { Tier } from '../rate-limits.ts';
import type { Stage } from '../stage.ts';
import type { ApiArgs } from './api-args.ts';

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
