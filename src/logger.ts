/**
 * The log: JSON lines through pino. Must not let out a token, nor what people typed: errors are reduced to
 * their kind, code and place, and a failed query's parameters are cut off. A text can't break its line, hide anything in it,
 * turn the reading direction, or be endless.
 */
import pino, { type DestinationStream, type LogFn, type Logger } from 'pino';
import { codeOf, errorChain } from './error-chain.ts';
import { currentReference } from './reference.ts';
import type { LogLevelName } from './setting-rules.ts';

export type { Logger } from 'pino';

/** The platform's tokens, wherever they turn up in a text. */
const TOKEN = /\bx(?:ox[a-z]|app|oxe\.xox[a-z])-[\w-]+/g;
/** A database driver appends the query's parameters to its message; those are people's words. */
const QUERY_PARAMETERS = /\n?params: [\s\S]*/;
const PASSWORD_IN_URL = /(\/\/[^\s:/@]+:)[^\s@/]+@/g;

/** JSON escapes controls below a space by itself; the rest of what a terminal obeys or nobody sees is escaped here. */
const UNSEEN = /[\u007f-\u009f\u115f\u1160\u3164\uffa0\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/gu;
const TEXT_MAX_LENGTH = 1_000;
const NAME_MAX_LENGTH = 100;
const FRAME_MAX_LENGTH = 300;
const MOST_FRAMES = 8;

interface LoggerOptions {
  readonly level: LogLevelName;
  /** Standard output when left out. */
  readonly destination?: DestinationStream;
}

export function createLogger({ level, destination }: LoggerOptions): Logger {
  const options = {
    level,
    base: null,
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label: string) => ({ level: label }), log: shortFields },
    mixin: referenceField,
    serializers: { err: (error: unknown) => describeError(error) },
    hooks: { logMethod: limited(shortMessage), streamWrite: escapeUnseen },
  };
  return destination === undefined ? pino(options) : pino(options, destination);
}

/** A line of what operators must be able to answer for, under a stable `event`; refusals among them can't flood the log. */
export function noteSecurity(logger: Logger, event: { readonly event: string }): void {
  logger.info({ ...event, ...(event.event.endsWith('-refused') && { refused: true }) }, 'Security event.');
}

function escapeUnseen(line: string): string {
  return line.replace(UNSEEN, (sign) =>
    Array.from(
      { length: sign.length },
      (_, i) => `\\u${sign.charCodeAt(i).toString(16).padStart(4, '0')}`,
    ).join(''),
  );
}

function short(text: string, maxLength: number = TEXT_MAX_LENGTH): string {
  return text.length <= maxLength ? text : `${text.slice(0, maxLength)}… (${text.length} characters)`;
}

/** Errors are shortened where they are described. */
function shortFields(fields: Record<string, unknown>): Record<string, unknown> {
  const entries = Object.entries(fields).map(([name, value]) => [
    name,
    typeof value === 'string' ? short(value) : value,
  ]);
  return Object.fromEntries(entries);
}

interface Window {
  count: number;
  readonly most: number;
}

type LogMethod = (this: Logger, given: Parameters<LogFn>, method: LogFn, level: number) => void;

const WARN = 40;
/** Of the same message and reason, in the same workspace where one is named, so many lines a minute. */
const MOST_LINES = 60;
const WINDOW_MS = 60_000;
/**
 * Whatever warns as often as this in a minute lasts: a database without room, asked every second, wrote 90 MB of log in a day, on
 * what may be the same disk.
 */
const LASTING_LINES = 30;
const FEW_LINES = 3;
/** Others' libraries make messages of their own. */
const MOST_KINDS = 1_000;

/**
 * What strangers or a broken database can cause as often as they like must not fill the disk: of warnings, and of lines
 * with `refused: true`, only so many are written; a last line says how many were left out.
 */
function limited(write: LogMethod): LogMethod {
  const windows = new Map<string, Window>();

  /** Counts lines of a kind for a minute. While warnings go on at that pace, hardly any is written of the next. */
  function open(
    kind: string,
    most: number,
    isLasting: boolean,
    tellLeftOut: (leftOut: number) => void,
  ): Window {
    const window: Window = { count: 0, most };
    windows.set(kind, window);
    setTimeout(() => {
      windows.delete(kind);
      if (window.count > most) tellLeftOut(window.count - most);
      if (isLasting && window.count >= LASTING_LINES) open(kind, FEW_LINES, isLasting, tellLeftOut);
    }, WINDOW_MS).unref();
    return window;
  }

  return function (given, method, level) {
    const [details, message] = given as [unknown, unknown];
    const { refused, ...fields } = Object(details) as Record<string, unknown>;
    if (level !== WARN && refused !== true) return write.call(this, given, method, level);
    const text = typeof details === 'string' ? details : String(message);
    // One tenant's refusals must not hide another's.
    const names = windows.size < MOST_KINDS ? ['event', 'reason', 'workspaceId'] : ['event', 'reason'];
    const same = Object.fromEntries(
      names.flatMap((name) => (typeof fields[name] === 'string' ? [[name, fields[name]]] : [])),
    );
    const kind = JSON.stringify([text, same]);
    const known = windows.get(kind);
    if (!known && windows.size >= 2 * MOST_KINDS) return;
    const isLasting = refused !== true && same.event === undefined;
    const window =
      known ??
      open(kind, MOST_LINES, isLasting, (leftOut) =>
        write.call(this, [{ leftOut, ...same }, text] as never, method, level),
      );
    window.count += 1;
    if (window.count <= window.most) write.call(this, given, method, level);
  };
}

function shortMessage(this: Logger, given: Parameters<LogFn>, method: LogFn): void {
  const args = given.map((arg: unknown) => (typeof arg === 'string' ? short(arg) : arg));
  method.apply(this, args as Parameters<LogFn>);
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
export function describeError(thrown: unknown): Record<string, unknown> {
  return errorChain(thrown)
    .map(describeOne)
    .reduceRight((cause, outer) => ({ ...outer, cause }));
}

function describeOne(error: unknown): Record<string, unknown> {
  if (!(error instanceof Error)) return { kind: typeof error };
  const code = codeOf(error);
  return {
    kind: short(String(error.name), NAME_MAX_LENGTH),
    ...(code !== undefined && { code: short(code, NAME_MAX_LENGTH) }),
    message: short(withoutSecrets(error.message)),
    at: framesOf(error),
  };
}

/** Only the frames: the head of a stack repeats the message, whose lines may look like frames. */
function framesOf({ stack = '', message }: Error): string[] {
  const at = stack.indexOf(message);
  // The message was changed after the stack was taken, so it is unknown where its lines end.
  if (at < 0) return [];
  return stack
    .slice(at + message.length)
    .split('\n')
    .filter((line) => /^\s*at /.test(line))
    .slice(0, MOST_FRAMES)
    .map((line) => short(line, FRAME_MAX_LENGTH));
}
