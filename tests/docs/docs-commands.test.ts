/** What the pages tell people to type works, and what they list is what the code knows. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readConfig } from '../../src/config.ts';
import { createLogger } from '../../src/logger.ts';
import { playScenario } from '../../src/rehearsal/play-file.ts';
import { parseScenario } from '../../src/rehearsal/scenario.ts';
import { newPgliteImage } from '../support/databases.ts';

const ROOT = join(import.meta.dirname, '../..');
const PAGES = [
  'README.md',
  'DEVELOPERS.md',
  'docs/operating.md',
  'docs/rehearsal.md',
  'docs/ratios.md',
  'docs/forecasts.md',
  'docs/import-export.md',
  'docs/privacy.md',
];

const page = (name: string): Promise<string> => readFile(join(ROOT, name), 'utf8');

describe('the pages', () => {
  it('name only scripts that exist', async () => {
    const { scripts } = JSON.parse(await page('package.json')) as { scripts: Record<string, string> };
    const texts = await Promise.all(PAGES.map(page));
    const named = texts.flatMap((text) =>
      [...text.matchAll(/npm run (?:--silent )?([\w:-]+)/g)].map(([, name]) => name as string),
    );
    expect(named.length).toBeGreaterThan(8);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it('link only to files that exist', async () => {
    for (const name of PAGES) {
      const links = [...(await page(name)).matchAll(/\]\((?!https?:)([^)#]+)/g)].map(
        ([, target]) => target as string,
      );
      for (const link of links) {
        const file = join(ROOT, name, '..', link);
        // A folder can't be read as a file, which is a different error from a missing one.
        await expect(readFile(file).catch((error: NodeJS.ErrnoException) => error.code)).resolves.not.toBe(
          'ENOENT',
        );
      }
    }
  });

  it('show a scenario file that plays to its end without a refusal', async () => {
    const example = /```json\n([\s\S]*?)```/.exec(await page('docs/rehearsal.md'))?.[1] as string;
    const scenario = parseScenario(example, 'docs/rehearsal.md');
    const logger = createLogger({ level: 'error', destination: process.stderr });
    const { sprints, refusals } = await playScenario({
      scenario,
      logger,
      memoryImage: await newPgliteImage(),
    });
    expect(refusals).toEqual([]);
    // By hand: 5 + 3 committed, quay-1 finished, quay-2 dropped, quay-3 reopened: 5 of 8; surprise 2 of 8.
    expect(sprints[0]).toMatchObject({
      commitmentPoints: 8,
      pulledInPoints: 1,
      blockedCardDays: 1,
      keptShare: 5 / 8,
      surpriseRatio: 2 / 8,
      verdict: 'missed',
    });
    const posted = JSON.stringify(sprints[0]?.posts.map(({ text }) => text));
    expect(posted).toContain('<https://tracker.example/quay-2|quay-2 Tide chart>');
  });

  it('list every setting that the program reads, with its default', async () => {
    const rows = [...(await page('docs/operating.md')).matchAll(/^\| `([A-Z_]+)` \|.*\| (.*) \|$/gm)];
    const source = await page('src/config.ts');
    const read = new Set(
      [...source.matchAll(/^\s*([A-Z_]{4,}):|\{ ([A-Z_]{4,}): /gm)].map(([, a, b]) => a ?? b),
    );
    expect(new Set(rows.map(([, name]) => name))).toEqual(read);
    const config = readConfig({ LOADLINE_BOT_TOKEN: 'xoxb-1', LOADLINE_APP_TOKEN: 'xapp-1' });
    const defaults = new Map(rows.map(([, name, value]) => [name, value?.replaceAll('`', '')]));
    expect(String(config.port)).toBe(defaults.get('PORT'));
    expect(config.dataFolder).toBe(defaults.get('LOADLINE_DATA_FOLDER'));
    expect(config.logLevel).toBe(defaults.get('LOG_LEVEL'));
    expect(config.transport.mode).toBe(defaults.get('LOADLINE_MODE'));
  });
});
