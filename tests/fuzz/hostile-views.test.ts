/** For everything that people may type: no message, form or answer can ping, link, hide or turn text, and none breaks a limit. */
import { globSync, readFileSync } from 'node:fs';
import { Session } from 'node:inspector/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { parseSync } from 'oxc-parser';
import { describe, expect, it } from 'vitest';
import { bundles, search } from '../support/search-width.ts';
import { everyView } from './every-view.ts';
import { harmIn } from './harm.ts';
import { HOSTILE_PIECES, hostileText } from './hostile-text.ts';

const VIEWS = join(import.meta.dirname, '../../src/slack/views');

function harmWith(text: string): [view: string, harm: string[]][] {
  return Object.entries(everyView(text))
    .map(([name, view]): [string, string[]] => [name, harmIn(view)])
    .filter(([, harm]) => harm.length > 0);
}

/** Functions that give a whole message or form, or blocks of one, to others. */
function viewFunctions(): string[] {
  return globSync('**/*.ts', { cwd: VIEWS }).flatMap((file) => {
    const text = readFileSync(join(VIEWS, file), 'utf8');
    const { program } = parseSync(file, text);
    return program.body.flatMap((statement) => {
      const declared = statement.type === 'ExportNamedDeclaration' ? statement.declaration : null;
      if (declared?.type !== 'FunctionDeclaration' || !declared.returnType) return [];
      const gives = text.slice(declared.returnType.start, declared.returnType.end);
      return /View|Block/.test(gives) ? [`${file} ${declared.id?.name}`] : [];
    });
  });
}

async function functionsThatRun(work: () => void): Promise<Set<string>> {
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: false });
  work();
  const { result } = await session.post('Profiler.takePreciseCoverage');
  await session.post('Profiler.stopPreciseCoverage');
  session.disconnect();
  const ran = result.flatMap(({ url, functions }) => {
    const file = url.split('/slack/views/')[1]?.split('?')[0];
    const called = functions.filter(({ ranges }) => (ranges[0]?.count ?? 0) > 0);
    return file === undefined ? [] : called.map(({ functionName }) => `${file} ${functionName}`);
  });
  return new Set(ran);
}

describe('every view', () => {
  it.each(bundles(HOSTILE_PIECES, 9).map((pieces) => [JSON.stringify(pieces), pieces] as const))(
    'harms nobody with %s',
    (_shown, pieces) => {
      expect(harmWith(pieces.map((piece) => `Mend ${piece} buoy`).join(' '))).toEqual([]);
    },
  );

  it('harms nobody', () => {
    fc.assert(
      fc.property(hostileText(), (text) => {
        expect(harmWith(text)).toEqual([]);
      }),
      search(12),
    );
  });

  it('is among those that are looked at', async () => {
    const views = viewFunctions();
    expect(views.length).toBeGreaterThan(60);
    const ran = await functionsThatRun(() => everyView('Mend buoy'));
    expect(views.filter((name) => !ran.has(name))).toEqual([]);
  });
});
