import type { JsonObject } from '../page-state.ts';

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
