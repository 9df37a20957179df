import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endBody, keepBody } from '../../../src/app/bodies/keep-bodies.ts';
import { cancelSprint, closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import type { PastSprint } from '../../../src/app/history/past-sprint.ts';
import {
  closedCards,
  commitmentPast,
  knownVelocities,
  pastSprints,
  projectionHistory,
  pulledInCards,
} from '../../../src/app/history/team-history.ts';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import type { Actor, Team } from '../../../src/app/team/team.ts';
import { dayPlus } from '../../../src/sprint/calendar.ts';
import { actorOf, CHANNEL, type Harness, openHarness } from '../../support/app-harness.ts';
import type { RandomSprint } from './random-team.ts';
import { anySprint, historyOf, recordHistory } from './random-team.ts';

// Lisbon is on UTC in winter; in summer its day begins at 23:00 UTC, which no time here comes near.
const NOW = '2026-10-30T12:00:00Z';
const FROM = '2025-01-06';
const ELSEWHERE: Actor = actorOf('ana', 'W2');

async function exported(h: Harness, actor: Actor): Promise<Record<string, string>> {
  const { files } = await exportSprints(h.deps, actor, CHANNEL);
  return Object.fromEntries(
    files.map(({ fileName, bytes }) => [fileName, Buffer.from(bytes).toString('utf8')]),
  );
}

async function imported(h: Harness, actor: Actor, team: Team, files: Record<string, string>): Promise<void> {
  const input = {
    teamId: team.id,
    files: Object.entries(files).map(([fileName, text]) => ({ fileName, text })),
  };
  const first = await importSprints(h.deps, actor, { ...input, seen: undefined });
  if (first.kind !== 'preview') throw new Error('imported without a preview');
  expect(first.preview.problems).toEqual([]);
  const second = await importSprints(h.deps, actor, { ...input, seen: first.preview.fingerprint });
  expect(second.kind).toBe('imported');
}

/** What the statistics read, without who and where. */
function comparable(past: readonly PastSprint[]): object[] {
  return past.map(({ sprintId: _id, teamId: _team, importedAt: _at, ...rest }) => rest);
}

describe('what is exported can be imported elsewhere', () => {
  test('where a sprint was called off and planned anew under its name, from the same day on', async () => {
    const h = await openHarness({ now: '2026-11-02T08:00:00Z' });
    const here = await h.setUpTeam();
    const plan = { name: 'Quay 1', startsOn: '2026-11-02', endsOn: '2026-11-06' };
    const { sprint } = await h.plan(here, plan);
    await cancelSprint(h.deps, actorOf('ana'), { sprintId: sprint.id, reason: 'A wrong list' });
    await h.plan(here, { ...plan, name: 'quay  1' });
    await h.pass('2026-11-06T17:00:00Z');
    const files = await exported(h, actorOf('ana'));
    expect(files['sprints.csv']?.split('\r\n').slice(1, 3)).toEqual([
      expect.stringMatching(/^Quay 1 \(2\),.*,cancelled,/),
      expect.stringMatching(/^quay 1,.*,closed,/),
    ]);
    await imported(h, ELSEWHERE, await h.setUpTeam({}, ELSEWHERE), files);
    expect((await exported(h, ELSEWHERE))['cards.csv']?.match(/^quay 1,/gm)).toHaveLength(3);
  });

  test('where it is still the day before', async () => {
    const h = await openHarness({ now: '2026-11-02T08:00:00Z' });
    const here = await h.setUpTeam({ timeZone: 'Pacific/Auckland' });
    const { sprint } = await h.plan(here, { name: 'Quay 1', startsOn: '2026-11-02', endsOn: '2026-11-13' });
    // It is Friday the sixth there by now, and Thursday in Lisbon.
    await h.pass('2026-11-05T12:00:00Z');
    await closeSprint(h.deps, actorOf('ana'), { sprintId: sprint.id });
    const team = { place: CHANNEL };
    await keepBody(h.deps, actorOf('ana'), { ...team, name: 'Bells', leftPoints: 5 });
    await keepBody(h.deps, actorOf('ana'), { ...team, name: 'Ropes', leftPoints: 8 });
    await endBody(h.deps, actorOf('ana'), { ...team, reference: 'Bells', how: 'done' });
    const files = await exported(h, actorOf('ana'));
    expect(files['sprints.csv']).toContain(',closed,2026-11-06,');
    const there = await h.setUpTeam({ timeZone: 'Europe/Lisbon' }, ELSEWHERE);
    await imported(h, ELSEWHERE, there, files);
    expect(await exported(h, ELSEWHERE)).toEqual(files);
    // And from there on, where it is earlier still.
    const third = actorOf('ana', 'W3');
    await imported(h, third, await h.setUpTeam({ timeZone: 'Pacific/Honolulu' }, third), files);
    expect(await exported(h, third)).toEqual(files);
  });

  test('where a text is as long as it may be, and would be longer with “somebody” in place of a person', async () => {
    const h = await openHarness({ now: '2026-11-02T08:00:00Z' });
    const here = await h.setUpTeam();
    const full = (length: number) => '<@U1>'.repeat(length / 5);
    await h.plan(here, {
      name: full(80),
      goal: full(500),
      startsOn: '2026-11-02',
      endsOn: '2026-11-06',
      // In a title it is kept with the name.
      cards: `${'@Ben Ode '.repeat(22)}@x, 5, @Ben\n=${'x'.repeat(199)}, 3, @Ben`,
    });
    await keepBody(h.deps, actorOf('ana'), { place: CHANNEL, name: `x${full(55)}`, leftPoints: 5 });
    await h.pass('2026-11-06T17:00:00Z');
    const files = await exported(h, actorOf('ana'));
    expect(Object.values(files).join('')).not.toMatch(/U1|Ben Ode/);
    await imported(h, ELSEWHERE, await h.setUpTeam({}, ELSEWHERE), files);
    expect(await exported(h, ELSEWHERE)).toEqual(files);
  });

  test('in several parts where it is more than an import takes at once', async () => {
    const h = await openHarness({ now: NOW });
    const here = await h.setUpTeam();
    const header = 'name,first day,last day,commitment,finished';
    const lines = Array.from({ length: 1_003 }, (_, i) => {
      const day = dayPlus('1995-01-02', 7 * i);
      return `Quay ${i},${day},${dayPlus(day, 4)},20,18`;
    });
    for (const some of [lines.slice(0, 1_000), lines.slice(1_000)]) {
      await imported(h, actorOf('ana'), here, { 'sprints.csv': [header, ...some].join('\n') });
    }
    await keepBody(h.deps, actorOf('ana'), { place: CHANNEL, name: 'Bells', leftPoints: 5 });
    const files = await exported(h, actorOf('ana'));
    const names = ['sprints', 'cards', 'answers', 'changes'];
    const [first, second] = [names.map((name) => `${name}.csv`), names.map((name) => `${name}-2.csv`)];
    expect(Object.keys(files)).toEqual([...first, ...second, 'bodies-2.csv', 'dates-2.csv']);
    const there = await h.setUpTeam({}, ELSEWHERE);
    const part = (of: (name: string) => boolean) =>
      Object.fromEntries(Object.entries(files).filter(([name]) => of(name)));
    await imported(
      h,
      ELSEWHERE,
      there,
      part((name) => !name.includes('-2')),
    );
    await imported(
      h,
      ELSEWHERE,
      there,
      part((name) => name.includes('-2')),
    );
    expect(await exported(h, ELSEWHERE)).toEqual(files);
  });

  test('and comes out of there byte for byte the same, with the same statistics', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(anySprint, { minLength: 1, maxLength: 4 }),
        async (sprints: RandomSprint[]) => {
          const h = await openHarness({ now: NOW });
          const here = await h.setUpTeam();
          const there = await h.setUpTeam({}, ELSEWHERE);
          await h.write((tx) => recordHistory(tx, historyOf(here, FROM, sprints)));
          const files = await exported(h, actorOf('ana'));
          await imported(h, ELSEWHERE, there, files);
          expect(await exported(h, ELSEWHERE)).toEqual(files);

          const mine = await h.write((tx) => pastSprints(tx, here));
          const theirs = await h.write((tx) => pastSprints(tx, there));
          expect(comparable(theirs)).toEqual(comparable(mine));
          expect(commitmentPast(theirs)).toEqual(commitmentPast(mine));
          expect(closedCards(theirs)).toEqual(closedCards(mine));
          expect(pulledInCards(theirs)).toEqual(pulledInCards(mine));
          expect(knownVelocities(theirs)).toEqual(knownVelocities(mine));
          for (const elapsedShare of [0, 0.3, 0.5, 0.8, 1]) {
            const renamed = theirs.map((sprint) => ({ ...sprint, teamId: here.id }));
            expect(await projectionHistory(renamed, elapsedShare)).toEqual(
              await projectionHistory(mine, elapsedShare),
            );
          }
        },
      ),
      { numRuns: 8 },
    );
  });
});
