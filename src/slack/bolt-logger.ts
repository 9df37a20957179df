/**
 * Hands what the platform's libraries log to the bot's own log. Their debug lines hold whole requests with
 * people's words, so they are passed on at trace level only.
 */
import { LogLevel } from '@slack/bolt';
import type { Logger as LibraryLogger } from '@slack/web-api';
import { describeError, type Logger, withoutSecrets } from '../logger.ts';

export function boltLogger(logger: Logger): LibraryLogger {
  let name = 'platform';
  const write =
    (level: 'trace' | 'info' | 'warn' | 'error') =>
    (...parts: unknown[]) => {
      // To look through whole requests that nobody logs took 2 % of a status with its chart.
      if (!logger.isLevelEnabled(level)) return;
      const error = parts.find((part) => part instanceof Error);
      const words = parts.filter((part) => typeof part === 'string').join(' ');
      logger[level]({ part: name, ...(error ? { err: describeError(error) } : {}) }, withoutSecrets(words));
    };
  return {
    debug: write('trace'),
    // Connections opened and closed: worth knowing when looking for something, not every day.
    info: (...parts) => logger.debug({ part: name }, withoutSecrets(parts.filter(isText).join(' '))),
    warn: write('warn'),
    error: write('error'),
    setLevel() {},
    getLevel: () => (logger.isLevelEnabled('trace') ? LogLevel.DEBUG : LogLevel.INFO),
    setName(given) {
      name = given;
    },
  };
}

function isText(part: unknown): part is string {
  return typeof part === 'string';
}
