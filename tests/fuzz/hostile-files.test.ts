/**
 * Files that somebody gives to an import, by accident or to do harm: each is previewed or refused in words and in a
 * bounded time, and nothing gets into the database that nobody may be shown.
 */
import { sql } from 'drizzle-orm';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { MOST_CHARACTERS } from '../../src/app/csv/csv-rows.ts';
import { decodeText } from '../../src/app/csv/decode-text.ts';
import type { ImportPreview } from '../../src/app/import/import-reading.ts';
import { Refusal } from '../../src/app/refusal.ts';
import type { Team } from '../../src/app/team/team.ts';
import { importPreviewView } from '../../src/slack/views/import-views.ts';
import { GOOD, give, HEADER } from '../app/import/giving-files.ts';
import { expectFormFits } from '../slack/views/view-checks.ts';
import { type Harness, openHarness } from '../support/app-harness.ts';
import { rowsOf } from '../support/rows-of.ts';
import { search } from '../support/search-width.ts';
import { harmIn, textsIn } from './harm.ts';
import { HOSTILE_PIECES, hostileText, UNWANTED } from './hostile-text.ts';

/** For the largest file that is read; what took the square of the time would take hours. */
const LONGEST_MS = 10_000;

const CARDS = [
  'sprint,first day,key,title,estimate,came in,origin,left,points worked,surprise',
  'Harbour 1,2026-01-05,LP-1,Tide table,5,2026-01-05,planned,0,6,1',
  'Harbour 1,2026-01-05,LP-2,Crane log,3,2026-01-05,planned,0,3,0',
].join('\n');

let harness: Harness;
let team: Team;
beforeAll(async () => {
  harness = await openHarness({ now: '2026-11-02T08:00:00Z' });
  team = await harness.setUpTeam();
});

/** As the form gives it: what is no text was refused before. */
async function import_(bytes: Uint8Array, fileName = 'past.csv'): Promise<ImportPreview | undefined> {
  const text = decodeText(bytes);
  if (text === undefined) return undefined;
  try {
    const outcome = await give(harness, team, { [fileName]: text });
    if (outcome.kind !== 'preview') throw new Error('imported without a preview');
    const view = importPreviewView(outcome.preview, { round: 2, files: [], texts: ['', '', ''] });
    expectFormFits(view);
    expect(harmIn(view)).toEqual([]);
    return outcome.preview;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return undefined;
  }
}

const bytesOf = (text: string, encoding: BufferEncoding = 'utf8'): Buffer => Buffer.from(text, encoding);

/** A good file with some bytes cut out, put in, or put otherwise. */
const damaged = fc
  .record({
    file: fc.constantFrom(GOOD, CARDS),
    encoding: fc.constantFrom('utf8' as const, 'utf16le' as const, 'latin1' as const),
    at: fc.nat({ max: 1_000 }),
    cut: fc.nat({ max: 40 }),
    put: fc.oneof(
      fc.uint8Array({ maxLength: 8 }),
      fc
        .constantFrom(...HOSTILE_PIECES, '"', '""', '\r', ';', '\ufeff', '\u0000')
        .map((text) => bytesOf(text)),
    ),
  })
  .map(({ file, encoding, at, cut, put }) => {
    const bytes = bytesOf(encoding === 'utf16le' ? `\ufeff${file}` : file, encoding);
    const place = at % bytes.length;
    return Buffer.concat([bytes.subarray(0, place), put, bytes.subarray(place + cut)]);
  });

describe('a file', () => {
  it('of any bytes is previewed or refused', async () => {
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 500 }),
      hostileText().map((text) => bytesOf(text)),
      damaged,
    );
    await fc.assert(
      fc.asyncProperty(bytes, async (given) => {
        await import_(given);
      }),
      search(300),
    );
  });

  it('of any name is previewed or refused', async () => {
    await fc.assert(
      fc.asyncProperty(hostileText(100), async (name) => {
        await import_(bytesOf(`${GOOD}\nx,y`), name);
      }),
      search(150),
    );
  });

  it('brings nothing into the database that nobody may be shown, with anything in its cells', async () => {
    const searched = search(150);
    let imported = 0;
    const cell = hostileText(150).map((text) => `"${text.replaceAll('"', '""')}"`);
    await fc.assert(
      fc.asyncProperty(cell, cell, async (name, header) => {
        const day = new Date(Date.UTC(2010, 0, 1 + 2 * imported)).toISOString().slice(0, 10);
        const text = `${HEADER},${header}\n${name},${day},${day},20,2,1,18,21,x`;
        const files = { 'sprints.csv': text };
        const first = await give(harness, team, files);
        if (first.kind !== 'preview' || first.preview.problems.length > 0) return;
        const second = await give(harness, team, files, first.preview.fingerprint);
        if (second.kind === 'imported') imported += 1;
      }),
      searched,
    );
    expect(imported).toBeGreaterThan(searched.numRuns / 10);
    const rows = await rowsOf<{ row: unknown }>(
      harness.database,
      sql`select to_jsonb(s) as row from loadline.sprints s`,
    );
    expect(rows.flatMap(({ row }) => textsIn(row)).filter((text) => UNWANTED.test(text))).toEqual([]);
  });
});

describe('the largest file', () => {
  const filled = (text: string): string =>
    text.repeat(Math.ceil(MOST_CHARACTERS / text.length)).slice(0, MOST_CHARACTERS);

  it.each<[string, string]>([
    ['one word', filled('a')],
    ['line ends', filled('\n')],
    ['commas', filled(',')],
    ['quotes', filled('"')],
    ['open quotes', filled('"\n')],
    ['quotes in the wrong place', filled('a"b,')],
    ['spaces', filled(' ')],
    ['formulas', `${HEADER}\n${filled("'''=")}`],
    ['a name without end', `${HEADER}\n${filled('Harbour ')}`],
    ['sprints without dates', `${HEADER}\n${filled('x,,,,,,,\n')}`],
    [
      'the same sprint over and over',
      `${HEADER}\n${filled('Harbour 1,2026-01-05,2026-01-16,20,2,1,18,21\n')}`,
    ],
    [
      'cards of one sprint',
      `${CARDS}\n${filled('Harbour 1,2026-01-05,LP-1,Tide table,5,2026-01-05,planned,0,6,1\n')}`,
    ],
    ['blank lines', `${HEADER}\n${filled('\n')}`],
    ['blank lines of another kind', `${HEADER}\n${filled('\r')}`],
    ['lines of one cell', `${HEADER}\n${filled('x\n')}`],
    ['as many lines of one cell as are looked at', `${HEADER}\n${'x\n'.repeat(199_990)}`],
    ['lines of separators only', `${HEADER}\n${filled(',\n')}`],
    ['marks on one letter', `${HEADER}\n${filled('\u0301')}`],
    ['signs that grow when they are made alike', `${HEADER}\n${filled('\ufdfa')}`],
  ])('is read or refused in time: %s', async (_what, text) => {
    const before = process.cpuUsage();
    await import_(bytesOf(text.slice(0, MOST_CHARACTERS)));
    const { user, system } = process.cpuUsage(before);
    expect((user + system) / 1_000).toBeLessThan(LONGEST_MS);
  });
});
