/** Bodies of work that a team keeps go out with its export, and come in with an import elsewhere. */
import { describe, expect, test } from 'vitest';
import type { KeptAdvice } from '../../../src/app/advice/advice.ts';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { endBody, type KeepInput, keepBody, renameBody } from '../../../src/app/bodies/keep-bodies.ts';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import { endForm } from '../../../src/app/team/end-team.ts';
import type { Actor, Team } from '../../../src/app/team/team.ts';
import { dayPlus } from '../../../src/sprint/calendar.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach } from '../../support/app-harness.ts';
import { importPast, pastSprintsOf } from '../past-sprints.ts';
import { type Files, GOOD, give, imported, previewed, teamOf, wrongWith } from './giving-files.ts';

// Lisbon is on UTC in winter.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ANA = actorOf('ana');
const ELSEWHERE = actorOf('ana', 'W2');

async function exported(h: Harness, actor: Actor): Promise<Files> {
  const { files } = await exportSprints(h.deps, actor, CHANNEL);
  return Object.fromEntries(files.map(({ fileName, bytes }) => [fileName, Buffer.from(bytes).toString()]));
}

async function importedBy(h: Harness, actor: Actor, team: Team, given: Files) {
  const files = Object.entries(given).map(([fileName, text]) => ({ fileName, text }));
  const first = await importSprints(h.deps, actor, { teamId: team.id, files, seen: undefined });
  if (first.kind !== 'preview') throw new Error('imported without a preview');
  expect(first.preview.problems).toEqual([]);
  const { fingerprint: seen } = first.preview;
  const second = await importSprints(h.deps, actor, { teamId: team.id, files, seen });
  if (second.kind !== 'imported') throw new Error('only previewed');
  return second.imported;
}

const keep = (h: Harness, name: string, leftPoints: number, more: Partial<KeepInput> = {}) =>
  keepBody(h.deps, ANA, { place: CHANNEL, name, leftPoints, ...more } as KeepInput);

const asked = async (h: Harness, actor: Actor) =>
  (await askAdvice(h.deps, actor, { place: CHANNEL }, { about: 'kept' })) as KeptAdvice;

/** A team of two weeks with four kept bodies, one of them done; the first sprint closed after the first was said. */
async function aTeamThatKeeps() {
  const h = harness();
  const team = await h.setUpTeam();
  await importPast(h, team, pastSprintsOf(Array.from({ length: 4 }, () => ({}))));
  await keep(h, 'Harbour lights', 80, { growth: { points: 2, mostPoints: 4.5 } });
  await keep(h, '=Bells, "old" and new', 20.5);
  await keep(h, 'Ropes for <@UBEN>', 5, { growth: { points: 0 } });
  const startsOn = '2026-11-02';
  h.set(`${startsOn}T08:00:00Z`);
  const { sprint } = await h.plan(team, { name: 'Quay 1', startsOn, endsOn: dayPlus(startsOn, 4) });
  await h.pass(`${sprint.endsOn}T17:00:00Z`);
  h.set('2026-11-09T10:00:00Z');
  await keep(h, 'Buoys', 60, { sharePercent: 12.5, turn: 1 });
  await keep(h, 'Harbour lights', 71);
  await endBody(h.deps, ANA, { place: CHANNEL, reference: 'Ropes', how: 'done' });
  return h;
}

describe('bodies of work in an export', () => {
  test('have their order, growth and share, and each telling of their dates, and name no person', async () => {
    const h = await aTeamThatKeeps();
    const files = await exported(h, ANA);
    expect(files['bodies.csv']?.split('\r\n')).toEqual([
      '\uFEFFbody,to do,turn,growth,growth at most,share,kept on,number,said on,done on',
      'Buoys,60,1,,,0.125,2026-11-09,,2026-11-09,',
      'Harbour lights,71,2,2,4.5,,2026-10-30,,2026-11-09,',
      `"'=Bells, ""old"" and new",20.5,3,,,,2026-10-30,,2026-10-30,`,
      'Ropes for somebody,5,,0,,,2026-10-30,,2026-10-30,2026-11-09',
      '',
    ]);
    const dates = files['dates.csv']?.split('\r\n') ?? [];
    expect(dates[0]).toBe(
      '\uFEFFbody,kept on,number,told on,to do,sprints since,optimistic,likely,pessimistic',
    );
    expect(dates.slice(1).map((line) => line.split(',').slice(0, 6).join(','))).toEqual([
      'Buoys,2026-11-09,,2026-11-09,60,0',
      'Harbour lights,2026-10-30,,2026-10-30,80,0',
      'Harbour lights,2026-10-30,,2026-11-06,80,1',
      'Harbour lights,2026-10-30,,2026-11-09,71,0',
      expect.stringMatching(/^"'=Bells/),
      expect.stringMatching(/^"'=Bells/),
      expect.stringMatching(/^"'=Bells/),
      'Ropes for somebody,2026-10-30,,2026-10-30,5,0',
      'Ropes for somebody,2026-10-30,,2026-11-06,5,1',
      'Ropes for somebody,2026-10-30,,2026-11-09,5,1',
      '',
    ]);
    expect(Object.values(files).join('')).not.toContain('UBEN');
  });

  test('are left out where a team keeps none', async () => {
    const { h, team } = await teamOf(harness());
    await imported(h, team, { a: GOOD });
    expect(Object.keys(await exported(h, ANA))).not.toContain('bodies.csv');
  });

  test('come out alone of a team without a sprint', async () => {
    const { h } = await teamOf(harness());
    await keep(h, 'Harbour lights', 80);
    expect((await exported(h, ANA))['bodies.csv']).toContain(
      'Harbour lights,80,1,,,,2026-10-30,,2026-10-30,',
    );
    // So who ends the team is offered it.
    expect(await endForm(h.deps, ANA, CHANNEL)).toMatchObject({ canBeExported: true });
  });
});

describe('bodies of work in an import', () => {
  test('are the same elsewhere, with the same forecast and past dates, and come out of there byte for byte', async () => {
    const h = await aTeamThatKeeps();
    const files = await exported(h, ANA);
    const there = await h.setUpTeam({}, ELSEWHERE);
    const done = await importedBy(h, ELSEWHERE, there, files);
    expect(done.bodies.map(({ name }) => name)).toEqual([
      'Buoys',
      'Harbour lights',
      '=Bells, "old" and new',
      'Ropes for somebody',
    ]);
    expect(await exported(h, ELSEWHERE)).toEqual(files);
    const told = ({ bodies, done: finished }: KeptAdvice) => ({
      // What is told goes by the team's own sprints, which were imported with everything they left.
      bodies: bodies.map(({ body: { name, leftPoints, sharePercent }, sprintsSinceSaid, told: before }) => ({
        ...{ name, leftPoints, sharePercent, sprintsSinceSaid },
        told: before.map(({ bodyId: _, ...rest }) => rest),
      })),
      done: finished.map(({ told: before }) => before.map(({ bodyId: _, ...rest }) => rest)),
    });
    expect(told(await asked(h, ELSEWHERE))).toEqual(told(await asked(h, ANA)));
    // Of the bells nobody has said anything since the sprint that closed on the sixth.
    expect((await asked(h, ELSEWHERE)).bodies.map((kept) => kept.sprintsSinceSaid)).toEqual([0, 0, 1]);
  });

  test('are told apart where several had one name and were kept on one day, and come out of there byte for byte', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await importPast(h, team, pastSprintsOf(Array.from({ length: 4 }, () => ({}))));
    await keep(h, 'Bells', 20);
    await endBody(h.deps, ANA, { place: CHANNEL, reference: 'Bells', how: 'done' });
    await keep(h, 'bells', 30);
    await endBody(h.deps, ANA, { place: CHANNEL, reference: 'bells', how: 'done' });
    await keep(h, 'bells', 35);
    await keep(h, 'Buoys', 40);
    h.set('2026-11-09T10:00:00Z');
    await keep(h, 'bells', 25);
    await endBody(h.deps, ANA, { place: CHANNEL, reference: 'bells', how: 'done' });
    await renameBody(h.deps, ANA, { place: CHANNEL, reference: 'Buoys', name: 'Bells' });
    const files = await exported(h, ANA);
    const there = await h.setUpTeam({}, ELSEWHERE);
    await importedBy(h, ELSEWHERE, there, files);
    expect(await exported(h, ELSEWHERE)).toEqual(files);
    const dates = files['dates.csv']?.split('\r\n').map((line) => line.split(',').slice(0, 5).join(','));
    expect(dates).toContain('Bells,2026-10-30,2,2026-10-30,20');
    expect(dates).toContain('bells,2026-10-30,4,2026-11-09,25');
    const again = await previewed(h, team, files);
    expect(again).toMatchObject({
      bodies: [],
      bodiesLeftOut: ['Bells', 'Bells', 'bells', 'bells'].map((name) => ({ name, why: 'known' })),
      problems: [],
    });
  });

  test('keep names of their own where only the person in them told them apart', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await keep(h, `Ropes ${'and '.repeat(11)}<@UBEN>`, 5);
    await keep(h, `Ropes ${'and '.repeat(11)}<@UCHI>`, 6);
    const files = await exported(h, ANA);
    const there = await h.setUpTeam({}, ELSEWHERE);
    const { bodies } = await importedBy(h, ELSEWHERE, there, files);
    expect(bodies.map(({ name }) => name)).toEqual([
      `Ropes ${'and '.repeat(11)}somebody`,
      `Ropes ${'and '.repeat(11)}somebo (2)`,
    ]);
    expect(await exported(h, ELSEWHERE)).toEqual(files);
    expect(await previewed(h, team, files)).toMatchObject({ bodies: [], problems: [] });
  });

  test('come in without any sprint, and not a second time', async () => {
    const { h, team } = await teamOf(harness());
    const files = { 'plans.csv': 'Body of work;to do\nHarbour lights;80\nBells;20,5' };
    const done = await imported(h, team, files);
    expect(done).toMatchObject({ sprints: [], bodies: [{ leftPoints: 80 }, { leftPoints: 20.5 }] });
    const again = await previewed(h, team, files);
    const bodiesLeftOut = ['Harbour lights', 'Bells'].map((name) => ({ name, why: 'known' }));
    expect(again).toMatchObject({ bodies: [], bodiesLeftOut, problems: [] });
    expect((await give(h, team, files, again.fingerprint)).kind).toBe('preview');
  });

  test('are as many that are done as a team keeps, the latest of them, wherever they come from', async () => {
    const { h, team } = await teamOf(harness());
    const lines = Array.from({ length: 250 }, (_, i) => `Body ${i},5,${dayPlus('2025-01-01', i)}`);
    const files = { a: `body,to do,done on\n${lines.join('\n')}\n"Bells",20,` };
    const done = await imported(h, team, files);
    expect(done.bodies.map(({ name }) => name).slice(0, 2)).toEqual(['Bells', 'Body 50']);
    expect(done.bodiesLeftOut).toEqual(
      Array.from({ length: 50 }, (_, i) => ({ name: `Body ${i}`, why: 'long-done' })),
    );
    // What is done from now on takes the place of what was done first.
    await endBody(h.deps, ANA, { place: CHANNEL, reference: 'Bells', how: 'done' });
    const kept = await h.read((read) => read.bodiesOf(team.id));
    expect(kept).toHaveLength(200);
    expect(kept.map(({ name }) => name)).not.toContain('Body 50');
    expect(kept.map(({ name }) => name)).toContain('Bells');
    const there = await h.setUpTeam({}, ELSEWHERE);
    const all = await exported(h, ANA);
    expect((await importedBy(h, ELSEWHERE, there, all)).bodiesLeftOut).toEqual([]);
    expect(await exported(h, ELSEWHERE)).toEqual(all);
    const more = await previewed(h, team, { a: 'body,to do,done on\nRopes,5,2026-10-01' });
    expect(more).toMatchObject({ bodies: [], bodiesLeftOut: [{ name: 'Ropes', why: 'long-done' }] });
  });

  test('are counted where very many are left out, since nobody reads their names', async () => {
    const { h, team } = await teamOf(harness());
    const lines = Array.from({ length: 720 }, (_, i) => `Body ${i},5,${dayPlus('2024-01-01', i)}`);
    const preview = await previewed(h, team, { a: `body,to do,done on\n${lines.join('\n')}` });
    expect([preview.bodies.length, preview.bodiesLeftOut.length, preview.bodiesUntold]).toEqual([
      200, 500, 20,
    ]);
  });

  test('follow those that the team keeps already', async () => {
    const { h, team } = await teamOf(harness());
    await keep(h, 'Bells', 10);
    await imported(h, team, { a: 'body,to do,turn\nRopes,5,2\nharbour  LIGHTS,80,1\nbells,99,3' });
    const bodies = await h.read((read) => read.bodiesOf(team.id));
    expect(bodies.map(({ name, leftPoints, place }) => [name, leftPoints, place])).toEqual([
      ['Bells', 10, 1],
      ['harbour LIGHTS', 80, 2],
      ['Ropes', 5, 3],
    ]);
  });

  test('are previewed anew when somebody kept another one meanwhile', async () => {
    const { h, team } = await teamOf(harness());
    const files = { a: 'body,to do\nRopes,5' };
    const { fingerprint } = await previewed(h, team, files);
    const first = h.deps.store.transaction.bind(h.deps.store);
    let isKept = false;
    const store = {
      ...h.deps.store,
      read: h.deps.store.read.bind(h.deps.store),
      transaction: async (work: Parameters<typeof first>[0]) => {
        if (!isKept) {
          isKept = true;
          await keep(h, 'Ropes', 7);
        }
        return first(work);
      },
    } as typeof h.deps.store;
    const input = { teamId: team.id, files: [{ fileName: 'a', text: files.a }], seen: fingerprint };
    expect((await importSprints({ ...h.deps, store }, ANA, input)).kind).toBe('preview');
    expect(await h.read((read) => read.bodiesOf(team.id))).toHaveLength(1);
  });
});

describe('what is wrong with bodies of work in a file', () => {
  const BODY = 'body,to do,turn,growth,growth at most,share,kept on,said on,done on';

  test.each([
    ['12,5,,,,,,,', '2: “body” must be a name of at most 60 characters with a letter in it.'],
    ['Bells,0,,,,,,,', '2: “to do” must be more than 0 and at most 20,000.'],
    ['Bells,20000.5,,,,,,,', '2: “to do” must be more than 0 and at most 20,000.'],
    ['Bells,,,,,,,,', '2: “to do” is empty; every line needs it.'],
    ['Bells,5,,4,2,,,,', '2: “growth at most” is 2, which is less than “growth”, 4.'],
    ['Bells,5,,,2,,,,', '2: “growth at most” goes with “growth”; fill that in as well.'],
    ['Bells,5,,20001,,,,,', '2: “growth” and “growth at most” may be 20,000 at most.'],
    [
      'Bells,5,,,,0.001,,,',
      '2: “share” must be 0.01 or more; leave it empty for work that waits for its turn.',
    ],
    ['Bells,5,,,,,2026-11-30,,', '2: “kept on” is 2026-11-30, a day that hasn’t come yet.'],
    ['Bells,5,,,,,2026-10-02,2026-10-01,', '2: “said on” is 2026-10-01, before it was kept on 2026-10-02.'],
    ['Bells,5,,,,,2026-10-02,,2026-10-01', '2: “done on” is 2026-10-01, before it was kept on 2026-10-02.'],
    ['Bells,5,,,,,,,\nbells,6,,,,,,,', '3: bells is already on line 2 of bodies.csv.'],
    ['Bells,5,1,,,,,,\nRopes,6,1,,,,,,', '3: Bells, on line 2 of bodies.csv, has the same turn, 1.'],
    [
      'Bells,5,,,,60%,,,\nRopes,6,,,,0.4,,,\nBuoys,6,,,,,,,',
      '3: the shares of the sprints come to 100% with it; together they may be 100% at most, and less while another body waits for its turn.',
    ],
  ])('%s', async (line, words) => {
    const wrong = await wrongWith(harness(), { 'bodies.csv': `${BODY}\n${line}` });
    expect(wrong).toEqual([words]);
  });

  test('are more than a team can keep', async () => {
    const lines = Array.from({ length: 11 }, (_, i) => `Body ${'abcdefghijk'[i]},5`);
    expect(await wrongWith(harness(), { a: `body,to do\n${lines.join('\n')}` })).toEqual([
      '12: the team would keep 11 bodies of work to do; 10 is the most. Take some out of the file, or mark what is done.',
    ]);
  });

  const DATES = 'body,told on,to do,sprints since,optimistic,likely,pessimistic';
  const withDates = (lines: string) => ({
    'bodies.csv': 'body,to do,kept on\nBells,5,2026-01-05',
    'dates.csv': `${DATES}\n${lines}`,
  });

  test.each([
    ['Ropes,2026-01-05,5,,,,', '2: the file of bodies of work has no “Ropes”.'],
    ['Bells,0987-01-05,5,,,,', '2: “told on” is 0987-01-05, before 1990-01-01; is the year right?'],
    ['Bells,2026-11-05,5,,,,', '2: “told on” is 2026-11-05, a day that hasn’t come yet.'],
    ['Bells,2026-01-05,0,,,,', '2: “to do” must be more than 0 and at most 20,000.'],
    [
      'Bells,2026-01-05,5,,2026-02-02,2026-02-01,',
      '2: the likely date can’t come before the optimistic one or without it, nor the pessimistic one before or without the likely date.',
    ],
    [
      'Bells,2026-01-05,5,,,2026-02-01,',
      '2: the likely date can’t come before the optimistic one or without it, nor the pessimistic one before or without the likely date.',
    ],
    [
      'Bells,2026-01-05,5,,,,\nbells,2026-01-05,6,,,,',
      '3: what was told of bells on 2026-01-05 is already on line 2 of dates.csv.',
    ],
  ])('told: %s', async (line, words) => {
    expect(await wrongWith(harness(), withDates(line))).toEqual([words]);
  });

  test('are dates without the bodies that they are of', async () => {
    const { 'dates.csv': dates } = withDates('Bells,2026-01-05,5,,,,');
    expect(await wrongWith(harness(), { 'dates.csv': dates })).toEqual([
      'undefined: it goes with a file of bodies of work; give “bodies.csv” as well.',
    ]);
  });
});
