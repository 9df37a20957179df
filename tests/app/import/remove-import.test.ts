import { describe, expect, test } from 'vitest';
import { askAdvice } from '../../../src/app/advice/ask-advice.ts';
import { closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { tryExperiment } from '../../../src/app/experiments/try-experiment.ts';
import { nameBaseline } from '../../../src/app/history/name-baseline.ts';
import { recordValue } from '../../../src/app/history/record-value.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import { previewRemoval, removalForm, removeImport } from '../../../src/app/import/remove-import.ts';
import type { Team } from '../../../src/app/team/team.ts';
import {
  actorOf,
  CHANNEL,
  type Harness,
  harnessForEach,
  PEOPLE,
  refusalOf,
} from '../../support/app-harness.ts';

const harness = harnessForEach('2026-11-20T12:00:00Z');
const ana = actorOf('ana');

/** Two sprints, the first with a card that was answered for. */
const SPRINTS = [
  'name,first day,last day,commitment,finished,surprise',
  'Harbour 1,2026-01-05,2026-01-16,5,5,1',
  'Harbour 2,2026-01-19,2026-01-30,22,22,0',
].join('\n');
const CARDS = 'sprint,card,title,estimate,came in\nHarbour 1,1,Tide table,5,planned';
const ANSWERS = [
  'sprint,card,day,worked,left,surprise',
  'Harbour 1,1,2026-01-06,3,3,1',
  'Harbour 1,1,2026-01-07,3,0,0',
].join('\n');

async function importAll(h: Harness, team: Team, ...texts: string[]) {
  const files = texts.map((text, i) => ({ fileName: `${i}.csv`, text }));
  const first = await importSprints(h.deps, ana, { teamId: team.id, files, seen: undefined });
  const seen = first.kind === 'preview' ? first.preview.fingerprint : undefined;
  if (first.kind === 'preview') expect(first.preview.problems).toEqual([]);
  return importSprints(h.deps, ana, { teamId: team.id, files, seen });
}

async function withImported() {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  await importAll(h, team, SPRINTS, CARDS, ANSWERS);
  const past = () => h.write((tx) => pastSprints(tx, team));
  const [first, second] = await past();
  if (!first || !second) throw new Error('not imported');
  const input = { teamId: team.id, sprintId: first.sprintId };
  const names = async () => (await past()).map(({ name }) => name);
  return { h, team, first, second, input, past, names };
}

describe('an imported sprint', () => {
  test('is offered, the latest first', async () => {
    const { h } = await withImported();
    const { sprints, leftOut } = await removalForm(h.deps, ana, CHANNEL);
    expect([sprints.map(({ name }) => name), leftOut]).toEqual([['Harbour 2', 'Harbour 1'], 0]);
  });

  test('is asked about once, with what goes', async () => {
    const { h, input, names } = await withImported();
    expect(await previewRemoval(h.deps, ana, input)).toMatchObject({
      sprint: { name: 'Harbour 1', commitmentPoints: 5 },
      sprintsLeft: 1,
    });
    expect(await names()).toEqual(['Harbour 1', 'Harbour 2']);
  });

  test('goes with its cards, answers and recorded values; the channel hears who took it out', async () => {
    const { h, team, input, names } = await withImported();
    await recordValue(h.deps, actorOf('dayo'), {
      teamId: team.id,
      value: '5',
      sprint: { sprintId: input.sprintId },
    });
    await removeImport(h.deps, ana, input);
    expect(await names()).toEqual(['Harbour 2']);
    expect(await h.read((read) => read.recordsOf(input.sprintId))).toEqual({ cards: [], facts: [] });
    expect((await h.read((read) => read.sprintsOf(team.id))).map(({ name }) => name)).toEqual(['Harbour 2']);
    await h.drain();
    const byUserId = PEOPLE.ana;
    expect(h.messagesTo(CHANNEL)).toMatchObject([
      { kind: 'import-removed', byUserId, sprintName: 'Harbour 1' },
    ]);
  });

  test('no longer counts for what the history says', async () => {
    const { h, input } = await withImported();
    const sprintsIn = async () => {
      const advice = await askAdvice(h.deps, ana, { place: CHANNEL }, { about: 'history' });
      return JSON.stringify(advice).includes('Harbour 1');
    };
    expect(await sprintsIn()).toBe(true);
    await removeImport(h.deps, ana, input);
    expect(await sprintsIn()).toBe(false);
  });

  test('leaves an experiment that began after it, as one that began after the sprint before', async () => {
    const { h, team, first, second } = await withImported();
    const change = { text: 'Plan fewer cards', ratio: 'keptShare', direction: 'up' } as const;
    await tryExperiment(h.deps, ana, { teamId: team.id, ...change });
    const begunAfter = async () =>
      (await h.read((read) => read.experimentsOf(team.id))).map(({ afterSprintId }) => afterSprintId);
    expect(await begunAfter()).toEqual([second.sprintId]);
    await removeImport(h.deps, ana, { teamId: team.id, sprintId: second.sprintId });
    expect(await begunAfter()).toEqual([first.sprintId]);
    await removeImport(h.deps, ana, { teamId: team.id, sprintId: first.sprintId });
    expect(await begunAfter()).toEqual([undefined]);
  });

  test('can be imported again with a correction', async () => {
    const { h, team, input, past } = await withImported();
    await removeImport(h.deps, ana, input);
    const outcome = await importAll(h, team, SPRINTS.replace('16,5,5,1', '16,8,6,0'));
    expect(outcome).toMatchObject({ kind: 'imported', imported: { sprints: [{ name: 'Harbour 1' }] } });
    expect((await past())[0]).toMatchObject({ name: 'Harbour 1', commitmentPoints: 8, velocityPoints: 6 });
  });

  test('stays while it is the named baseline', async () => {
    const { h, team, input, names } = await withImported();
    await nameBaseline(h.deps, ana, { teamId: team.id, sprint: { sprintId: input.sprintId } });
    const refused = { sprintName: 'Harbour 1', why: 'named-baseline' };
    expect(await refusalOf(removeImport(h.deps, ana, input), 'sprint-stays')).toEqual(refused);
    expect(await names()).toEqual(['Harbour 1', 'Harbour 2']);
  });
});

test('a sprint that was run here is never taken out', async () => {
  const { h, team } = await withImported();
  const { sprint } = await h.plan(team, { startsOn: '2026-11-20', endsOn: '2026-11-27' });
  const input = { teamId: team.id, sprintId: sprint.id };
  expect((await refusalOf(removeImport(h.deps, ana, input), 'sprint-not-closed')).state).toBe('open');
  await closeSprint(h.deps, ana, { sprintId: sprint.id });
  const refused = { sprintName: sprint.name, why: 'run-here' };
  expect(await refusalOf(previewRemoval(h.deps, ana, input), 'sprint-stays')).toEqual(refused);
  expect(await refusalOf(removeImport(h.deps, ana, input), 'sprint-stays')).toEqual(refused);
  expect((await removalForm(h.deps, ana, CHANNEL)).sprints.map(({ name }) => name)).toEqual([
    'Harbour 2',
    'Harbour 1',
  ]);
});
