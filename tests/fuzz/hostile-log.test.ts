/** Everything that gets into the log, at any level: one call is one line of JSON, and it shows what it holds. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeError } from '../../src/logger.ts';
import { LOG_LEVELS } from '../../src/setting-rules.ts';
import { boltLogger } from '../../src/slack/bolt-logger.ts';
import { logCatcher } from '../slack/support/log-catcher.ts';
import { search } from '../support/search-width.ts';
import { hostileText } from './hostile-text.ts';

const LEVELS = LOG_LEVELS.filter((level) => level !== 'silent');
/** Unescaped, each of these is obeyed by a terminal, ends a line for some reader, turns text, or is not seen. */
const RAW = /[\p{Cc}\p{Zl}\p{Zp}\p{Cf}\p{Cs}\u115f\u1160\u3164\uffa0]/u;
const LONGEST_LINE = 64 * 1024;

/** An error as somebody could make it: every part of it is text from outside. */
function hostileError(text: string, depth: number): Error {
  const options = depth > 0 ? { cause: hostileError(text, depth - 1) } : {};
  const error = Object.assign(new Error(text, options), { code: text, name: text });
  if (depth === 1) error.stack = text;
  return error;
}

function linesOf(write: (log: ReturnType<typeof logCatcher>) => void): string[] {
  const log = logCatcher('trace');
  write(log);
  expect(log.text().endsWith('\n')).toBe(true);
  return log.text().slice(0, -1).split('\n');
}

/** Exactly one entry, well formed, of the level that was meant. */
function expectOneEntry(lines: readonly string[], level: string): Record<string, unknown> {
  expect(lines).toHaveLength(1);
  const [line = ''] = lines;
  expect(line).not.toMatch(RAW);
  expect(line.length).toBeLessThan(LONGEST_LINE);
  const entry = JSON.parse(line) as Record<string, unknown>;
  expect(entry.level).toBe(level);
  return entry;
}

const anyText = fc.oneof(
  hostileText(40_000),
  fc.constantFrom('", "level": "fatal", "x": "', '%s %d %o %j', '\\', '\n{"level":"fatal","msg":"forged"}\n'),
);

describe('one call is one line', () => {
  it.each(LEVELS)('at level %s, with any text in message, fields and error', (level) => {
    fc.assert(
      fc.property(anyText, (text) => {
        const entry = expectOneEntry(
          linesOf(({ logger }) => logger[level]({ during: text, err: hostileError(text, 3) }, text)),
          level,
        );
        if (text.length <= 1_000) expect(entry).toMatchObject({ during: text, msg: text });
      }),
      search(300),
    );
  });

  it('from the platform’s libraries too', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const lines = linesOf(({ logger }) => boltLogger(logger).error(text, hostileError(text, 1)));
        expectOneEntry(lines, 'error');
      }),
      search(300),
    );
  });
});

describe('an error in the log', () => {
  it('shows where it came from, and none of its message’s lines as such a place', () => {
    const error = new Error('what Ana typed:\n    at home (file:///ana.ts:1:1)\nat sea');
    const { at, message } = describeError(error) as { at: string[]; message: string };
    expect(at.join('\n')).not.toMatch(/home|sea/);
    expect(at[0]).toContain('hostile-log.test.ts');
    expect(message).toContain('at home');
  });

  it('shows no place at all when its message was changed since', () => {
    const error = new Error('first\n    at home');
    // It is taken when it is first asked for.
    expect(error.stack).toContain('home');
    error.message = 'second';
    expect(describeError(error).at).toEqual([]);
  });

  it('is cut where it has no end', () => {
    const { message, kind } = describeError(hostileError('x'.repeat(1_000_000), 0)) as Record<string, string>;
    expect(message).toMatch(/^x{1000}… \(1000000 characters\)$/);
    expect(kind).toMatch(/^x{100}…/);
  });
});
