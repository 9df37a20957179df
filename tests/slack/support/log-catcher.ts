/** A log that is kept to be looked at. */

import { createLogger } from '../../../src/logger.ts';
import type { LogLevelName } from '../../../src/setting-rules.ts';

export function logCatcher(level: LogLevelName = 'info') {
  const lines: string[] = [];
  const logger = createLogger({ level, destination: { write: (line: string) => void lines.push(line) } });
  return {
    logger,
    /** Everything logged so far, as it would be in a file. */
    text: () => lines.join(''),
    entries: () => lines.map((line) => JSON.parse(line) as Record<string, unknown> & { msg: string }),
  };
}
