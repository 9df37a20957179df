/**
 * The log: JSON lines through pino. Must not let out a token, nor what people typed: errors are reduced to
 * their kind, code and place, and a failed query's parameters are cut off.
 */
import pino, { type DestinationStream, type Logger } from 'pino';
import type { LogLevelName } from './config.ts';
import { currentReference } from './reference.ts';

export type { Logger } from 'pino';

/** The platform's tokens, wherever they turn up in a text. */
const TOKEN = /\bx(?:ox[a-z]|app|oxe\.xox[a-z])-[\w-]+/g;
/** A database driver appends the query's parameters to its message; those are people's words. */
const QUERY_PARAMETERS = /\n?params: [\s\S]*/;
const PASSWORD_IN_URL = /(\/\/[^\s:/@]+:)[^\s@/]+@/g;

/** Beyond this, a chain of causes is a loop. */
const DEEPEST_CAUSE = 5;

export interface LoggerOptions {
  readonly level: LogLevelName;
  /** Standard output when left out. */
  readonly destination?: DestinationStream;
}

export function createLogger({ level, destination }: LoggerOptions): Logger {
  const options = {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label: string) => ({ level: label }) },
    mixin: referenceField,
    serializers: { err: (error: unknown) => describeError(error) },
  };
  return destination === undefined ? pino(options) : pino(options, destination);
}

function referenceField(): { reference?: string } {
  const reference = currentReference();
  return reference === undefined ? {} : { reference };
}

/** A text without tokens, passwords and query parameters. */
export function withoutSecrets(text: string): string {
  return text.replace(QUERY_PARAMETERS, '').replace(TOKEN, 'x…').replace(PASSWORD_IN_URL, '$1…@');
}

/** What an operator needs of an error: kind, code, message and where it came from, causes included. */
export function describeError(error: unknown, depth = 0): Record<string, unknown> {
  if (!(error instanceof Error)) return { kind: typeof error };
  const { code } = error as { code?: unknown };
  return {
    kind: error.name,
    ...(typeof code === 'string' ? { code } : {}),
    message: withoutSecrets(error.message),
    // Only the frames: the head of a stack repeats the message.
    at: (error.stack ?? '')
      .split('\n')
      .filter((line) => line.trimStart().startsWith('at '))
      .slice(0, 8),
    ...(error.cause !== undefined && depth < DEEPEST_CAUSE
      ? { cause: describeError(error.cause, depth + 1) }
      : {}),
  };
}
