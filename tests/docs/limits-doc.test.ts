/** The limits that docs/operating.md names are those of the code. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MOST_LINES } from '../../src/app/csv/csv-rows.ts';
import { MOST_LINES_IN_ALL } from '../../src/app/import/read-import.ts';
import { HTTP_LIMITS } from '../../src/slack/door/http-limits.ts';
import { CLOCK_TOLERANCE_SECONDS } from '../../src/slack/door/judge-signature.ts';
import { CROWD, GRACE_MS, MOST_AT_ONCE } from '../../src/slack/door/visitors.ts';
import { DOWNLOAD_BYTES_MAX } from '../../src/slack/files/download-file.ts';
import { TURN_LIMITS } from '../../src/slack/files/reading-turns.ts';
import { IMPORT_FILES_MAX } from '../../src/slack/views/import-views.ts';

const page = readFileSync(join(import.meta.dirname, '../../docs/operating.md'), 'utf8').replace(/\s+/g, ' ');

describe('docs/operating.md', () => {
  it('names the limits of the HTTP door', () => {
    const { headerBytes, headerCount, headersMs, bodyBytes, requestMs, bodiesTogetherBytes } = HTTP_LIMITS;
    expect(CLOCK_TOLERANCE_SECONDS).toBe(5 * 60);
    expect(page).toContain(
      `Headers: ${headerBytes / 1024} KiB, ${headerCount} of them, within ${headersMs / 1000} seconds.`,
    );
    expect(page).toContain(`Body: ${bodyBytes / 1024 ** 2} MiB, within ${requestMs / 1000} seconds;`);
    expect(page).toContain(
      `together: ${bodiesTogetherBytes / 1024 ** 2} MiB. Connections: ${HTTP_LIMITS.connections} at a time, each waiting ${HTTP_LIMITS.idleMs / 1000} seconds`,
    );
    expect(page).toContain(`who has more than ${CROWD} connections from one address`);
    expect(GRACE_MS).toBe(250);
    expect(page).toContain(
      `who comes in vain ${HTTP_LIMITS.inVain} times in a minute, asks ten things before one`,
    );
    expect(MOST_AT_ONCE).toBe(10);
  });

  it('names the limits of files', () => {
    expect(IMPORT_FILES_MAX).toBe(10);
    expect(page).toContain(
      `each of ${DOWNLOAD_BYTES_MAX / 1e6} MB and ${MOST_LINES.toLocaleString('en')} lines, 100 columns, 100,000 characters a line; ${MOST_LINES_IN_ALL.toLocaleString('en')} lines in all, blank ones included.`,
    );
    const { atOnce, bytesAtOnce, waiting, bytesOfWorkspace } = TURN_LIMITS;
    expect([atOnce, waiting]).toEqual([2, 8]);
    expect(page).toContain(
      `two forms at once in a process, one of a person, together up to ${bytesAtOnce / 1e6} MB;`,
    );
    expect(page).toContain(`eight may wait, and of one workspace ${bytesOfWorkspace / 1e6} MB.`);
  });
});
