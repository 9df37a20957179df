import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import { decodeText } from '../../../src/app/csv/decode-text.ts';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import { recordValue } from '../../../src/app/history/record-value.ts';
import { importValues } from '../../../src/app/import/import-values.ts';
import { badLines } from '../../../src/words/import.ts';
import { actorOf, CHANNEL, harnessForEach, PEOPLE, refusalOf } from '../../support/app-harness.ts';
import { rowsOf } from '../../support/rows-of.ts';
import { importPast, pastSprintsOf } from '../past-sprints.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');
const dayo = actorOf('dayo');

async function withPast(
  past: readonly Partial<PastSprint>[] = ['Harbour 1', 'Harbour 2', 'Harbour 3'].map((name) => ({ name })),
) {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  const sprints = await importPast(h, team, pastSprintsOf(past));
  const give = (text: string, seen?: string, actor = dayo) =>
    importValues(h.deps, actor, { teamId: team.id, file: { fileName: 'values.csv', text }, seen });
  const preview = async (text: string) => {
    const outcome = await give(text);
    if (outcome.kind !== 'preview') throw new Error('it was recorded unseen');
    return outcome.preview;
  };
  const record = async (text: string) => give(text, (await preview(text)).fingerprint);
  const values = async () =>
    (await h.read((read) => read.pastSprintsOf(team.id))).map(({ recordedValue }) => recordedValue);
  return { h, team, sprints, give, preview, record, values };
}

describe('values of several sprints from a file', () => {
  test('are shown first, and recorded when they are given again', async () => {
    const { give, preview, values } = await withPast();
    const text = 'sprint,value\r\nharbour  3,1200\r\nHarbour 1,-3.5\r\n';
    const { values: shown, problems, fingerprint } = await preview(text);
    expect(shown.map(({ sprint, value }) => [sprint.name, value])).toEqual([
      ['Harbour 1', -3.5],
      ['Harbour 3', 1200],
    ]);
    expect(problems).toEqual([]);
    expect(await values()).toEqual([undefined, undefined, undefined]);
    expect(await give(text, fingerprint)).toMatchObject({ kind: 'recorded', recorded: { same: 0 } });
    expect(await values()).toEqual([-3.5, undefined, 1200]);
  });

  test('replace what was recorded before, which is kept; the same value adds nothing', async () => {
    const { h, record, preview, values, sprints } = await withPast();
    await record('sprint,value\nHarbour 1,5\nHarbour 2,7');
    const { values: shown, same } = await preview('sprint,value\nHarbour 1,6\nHarbour 2,7');
    expect(shown.map(({ sprint, value }) => [sprint.recordedValue, value])).toEqual([[5, 6]]);
    expect(same).toBe(1);
    await record('sprint,value\nHarbour 1,6\nHarbour 2,7');
    expect(await values()).toEqual([6, 7, undefined]);
    const rows = await rowsOf(
      h.database,
      sql`select value, recorded_by from loadline.recorded_values
        where sprint_id in (${sprints[0]?.sprintId}, ${sprints[1]?.sprintId}) order by value`,
    );
    expect(rows).toEqual([5, 6, 7].map((value) => ({ value, recorded_by: PEOPLE.dayo })));
  });

  test('are shown anew when somebody recorded another one in between', async () => {
    const { h, team, give, preview, values } = await withPast();
    const text = 'sprint,value\nHarbour 1,5';
    const { fingerprint } = await preview(text);
    const sprint = { sprintName: 'Harbour 1' };
    await recordValue(h.deps, actorOf('ana'), { teamId: team.id, sprint, value: '8' });
    expect(await give(text, fingerprint)).toMatchObject({
      kind: 'preview',
      preview: { values: [{ value: 5, sprint: { recordedValue: 8 } }] },
    });
    expect(await values()).toEqual([8, undefined, undefined]);
  });

  test.each([
    [
      'with a byte order mark and quotes',
      '\uFEFF"Sprint name","Recorded-Value"\r\n"Harbour 2","1,200"\r\n',
      1200,
    ],
    ['with semicolons and a decimal comma', 'Sprint;Wert;Value\nHarbour 2;x;1200,50\n', 1200.5],
    ['with tabs, and columns in another order', 'VALUE\tsprint\n€ 7\tHarbour 2', 7],
    ['with blank lines and without a last line end', '\n\nname,value\n\nHarbour 2,0\n,', 0],
    ['with old line ends', 'sprint,value\rHarbour 2,12\r', 12],
  ])('are read from a file %s', async (_what, text, value) => {
    const { record, values } = await withPast();
    await record(text);
    expect(await values()).toEqual([undefined, value, undefined]);
  });

  test('may come in the file of sprints that an export gave, in which some have none', async () => {
    const { h, record, preview, values } = await withPast([
      { name: 'Harbour 1', recordedValue: 4 },
      { name: 'Harbour 2' },
      { name: 'Harbour 3' },
    ]);
    const { files } = await exportSprints(h.deps, actorOf('ana'), CHANNEL);
    const text = decodeText(files[0]?.bytes as Uint8Array) as string;
    expect(await preview(text)).toMatchObject({ values: [], same: 1, without: 2, problems: [] });
    const names = text.split('\r\n')[0]?.replace('\uFEFF', '').split(',') ?? [];
    const filled = text
      .split('\r\n')
      .map((line) =>
        line.startsWith('Harbour 3')
          ? line
              .split(',')
              .map((cell, i) => (names[i] === 'value' ? '9' : cell))
              .join(',')
          : line,
      )
      .join('\r\n');
    await record(filled);
    expect(await values()).toEqual([4, undefined, 9]);
  });

  test('of sprints that have the same name need the first day', async () => {
    const { sprints, preview, record, values } = await withPast([{ name: 'Harbour' }, { name: 'Harbour' }]);
    const { problems } = await preview('sprint,value\nHarbour,5');
    expect(badLines({ problems }).join()).toContain('several sprints are called “Harbour”');
    await record(`sprint,first day,value\nHarbour,${sprints[1]?.startsOn},5`);
    expect(await values()).toEqual([undefined, 5]);
  });

  test.each([
    ['Harbour 9,5', 'line 3', 'the team has no closed sprint called “Harbour 9”.'],
    ['harbour 1,7', 'line 3', 'Harbour 1 is already on line 2.'],
    ['Harbour 2,much', 'line 3', '“much” isn’t a number'],
    [',7', 'line 3', 'sprint'],
    ['Harbour 2,7,8', 'line 3', '3 cells'],
    ['"Harbour 2,7', 'line 3', ''],
  ])('are all left out while one line is wrong, which is named: %s', async (line, place, why) => {
    const { give, preview, values } = await withPast();
    const text = `sprint,value\nHarbour 1,5\n${line}`;
    const { values: shown, problems, fingerprint } = await preview(text);
    expect(shown).toEqual([]);
    const [said, ...others] = badLines({ problems });
    expect(others).toEqual([]);
    expect(said).toContain(`values.csv, ${place}`);
    expect(said).toContain(why);
    await give(text, fingerprint);
    expect(await values()).toEqual([undefined, undefined, undefined]);
  });

  test('are left out where a row has none, and counted', async () => {
    const { preview } = await withPast();
    const text = 'sprint,value\nHarbour 1,5\nHarbour 2;7\nHarbour 3,\n';
    expect(await preview(text)).toMatchObject({ values: [{ value: 5 }], without: 2, problems: [] });
  });

  test('are asked for by a day that no sprint of the name began on', async () => {
    const { preview } = await withPast();
    const { problems } = await preview('sprint,first day,value\nHarbour 1,2020-01-06,5');
    expect(badLines({ problems }).join()).toContain(
      'no closed sprint called “Harbour 1” with the first day 2020-01-06',
    );
  });

  test.each([
    ['', 'empty'],
    ['Harbour 1,5\nHarbour 2,7', 'Its first line must name at least: sprint, value'],
    ['sprint,worth\nHarbour 1,5', 'it has no column “value”'],
    ['PK\u0003\u0004', 'isn’t a CSV file'],
    ['sprint,value,value\nHarbour 1,5,6', 'two columns mean the same'],
  ])('are not read from a file that is none of values: %j', async (text, why) => {
    const { preview, values } = await withPast();
    const { problems, values: shown } = await preview(text);
    expect(badLines({ problems }).join()).toContain(why);
    expect(shown).toEqual([]);
    expect(await values()).toEqual([undefined, undefined, undefined]);
  });

  test('are recorded by the product owner and facilitators only', async () => {
    const { give } = await withPast();
    const text = 'sprint,value\nHarbour 1,5';
    await refusalOf(give(text, undefined, actorOf('ben')), 'not-a-value-keeper');
    expect(await give(text, undefined, actorOf('ana'))).toMatchObject({ kind: 'preview' });
  });
});
