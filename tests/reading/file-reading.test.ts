/** Files are read in a thread of their own, to the same result as in this one, and nobody is held up meanwhile. */
import { describe, expect, it } from 'vitest';
import type { ImportQuestion } from '../../src/app/import/import-reading.ts';
import type { FileReading } from '../../src/app/ports/file-reading.ts';
import type { ImportPiece } from '../../src/app/ports/imports.ts';
import { fileReading } from '../../src/reading/file-reading.ts';
import { largestImport } from '../bench/import-files.ts';
import { team } from '../slack/support/samples.ts';
import { readHere } from '../support/read-here.ts';

const context: ImportQuestion['context'] = {
  team,
  existing: [],
  existingBodies: [],
  today: '2026-11-30',
  now: new Date('2026-11-30T09:00:00Z'),
  byUserId: 'UANA',
};
const SPRINTS = 'name,first day,last day,commitment\nLock 1,2026-01-05,2026-01-09,8\n';
const CARDS =
  'sprint,card,title,estimate,state\nLock 1,1,Tide table,5,finished\nLock 1,2,Crane log,3,finished\n';
const files = [
  { fileName: 'sprints.csv', text: SPRINTS },
  { fileName: 'cards.csv', field: 'files', bytes: new TextEncoder().encode(CARDS) },
];
const copied = () => files.map((file) => ('bytes' in file ? { ...file, bytes: file.bytes?.slice() } : file));

async function readBy(reading: FileReading, question: ImportQuestion) {
  return reading.imports(question, async ({ reading: read, pieces }) => {
    const all: ImportPiece[] = [];
    for await (const piece of pieces()) all.push(piece);
    const again: ImportPiece[] = [];
    for await (const piece of pieces()) again.push(piece);
    const rowsOf = ({ sprints, cards, facts }: ImportPiece) => [sprints.length, cards.length, facts.length];
    expect(again.map(rowsOf)).toEqual(all.map(rowsOf));
    return { read, rows: all.map(rowsOf) };
  });
}

describe('an import', () => {
  it('is read in the thread as it is read here, and comes in pieces once it was seen', async () => {
    const first = await readBy(fileReading, { files: copied() as never, context, seen: undefined });
    expect(first).toEqual(await readBy(readHere, { files: copied() as never, context, seen: undefined }));
    expect(first.rows).toEqual([]);
    const seen = first.read?.preview.fingerprint;
    const second = await readBy(fileReading, { files: copied() as never, context, seen });
    expect(second.read?.mayImport).toBe(true);
    expect(second.rows).toEqual([[1, 2, 2]]);
  });

  it('of many cards lets the loop turn while it is read, and is handed over', async () => {
    const given = largestImport(100, 400_000).map(({ name, content }) => ({
      fileName: name,
      field: 'files',
      bytes: new Uint8Array(content),
    }));
    let turns = 0;
    const turning = setInterval(() => {
      turns += 1;
    }, 1);
    const { preview } = await fileReading.imports(
      { files: given, context, seen: undefined },
      async ({ reading }) => reading as NonNullable<typeof reading>,
    );
    clearInterval(turning);
    expect(turns).toBeGreaterThan(3);
    // They were handed over: nobody holds them twice.
    expect(given.map(({ bytes }) => bytes.byteLength)).toEqual([0, 0, 0, 0]);
    expect(preview).toMatchObject({ problems: [], cards: 3_000 });
  });

  it('is refused by the name of the file that is no text', async () => {
    const noText = { fileName: 'sheet.csv', field: 'files', bytes: new Uint8Array([0x50, 0x4b, 3, 4, 0]) };
    await expect(
      fileReading.imports({ files: [noText], context, seen: undefined }, async () => undefined),
    ).rejects.toMatchObject({
      code: 'file-unreadable',
      details: { field: 'files', fileName: 'sheet.csv', why: 'not text' },
    });
  });

  it('says how many problems it leaves out when everything is wrong', async () => {
    const wrong = Array.from({ length: 5_000 }, (_, i) => `Lock ${i},soon,2026-01-09,8`).join('\n');
    const text = `name,first day,last day,commitment\n${wrong}`;
    const { read } = await readBy(fileReading, {
      files: [{ fileName: 'a.csv', text }],
      context,
      seen: undefined,
    });
    expect(read?.preview.problems).toHaveLength(500);
    expect(read?.preview).toMatchObject({ problemsUntold: 4_500, badLines: 5_000 });
  });
});

describe('cards and values', () => {
  it('are read in the thread as they are read here', async () => {
    const cards = { file: { fileName: 'c.csv', text: CARDS }, people: [], columns: undefined };
    expect(await fileReading.cards(cards)).toEqual(await readHere.cards(cards));
    const values = {
      file: { fileName: 'v.csv', text: 'sprint,value\nLock 1,8\n' },
      sprints: [
        {
          sprintId: 's1',
          name: 'Lock 1',
          startsOn: '2026-01-05',
          endsOn: '2026-01-09',
          recordedValue: undefined,
        },
      ],
    };
    const read = await fileReading.values(values);
    expect(read).toEqual(await readHere.values(values));
    expect(read.values).toHaveLength(1);
  });
});
