/** `npm run own-record` as an operator runs it, on a database in which sprints were watched. The sprints are simulated. */
import { expect, it } from 'vitest';
import type { NewPastSprint } from '../../src/app/history/past-sprint.ts';
import { scoreOwnRecord } from '../../src/operator/own-record.ts';
import { dayPlus } from '../../src/sprint/calendar.ts';
import { simulatedSprints } from '../forecast/simulated-team.ts';
import { aSprint, aTeam } from '../store/store-examples.ts';
import { withPostgres } from '../support/databases.ts';
import { pastRatios } from '../support/past-ratios.ts';

it('scores both models on what the installation has seen, names no team, and changes nothing', async () => {
  const own = await withPostgres();
  const environment = {
    LOADLINE_BOT_TOKEN: 'xoxb-0-test',
    LOADLINE_APP_TOKEN: 'xapp-0-test',
    DATABASE_URL: own.databaseUrl,
  };
  const run = (...args: string[]) => scoreOwnRecord(args, environment);
  try {
    expect((await run()).stdout).toContain('Nothing to score yet');
    const database = await own.open();
    const team = aTeam({ name: 'Polaris tugs' });
    await database.store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      for (const [i, seen] of simulatedSprints({ seed: 1, sprints: 12, rule: 'queues' }).entries()) {
        const startsOn = dayPlus('2026-01-05', 14 * i);
        const at = new Date(`${dayPlus(startsOn, 11)}T17:00:00Z`);
        const sprint = aSprint(team.id, {
          startsOn,
          endsOn: dayPlus(startsOn, 11),
          closesAtInstant: at,
          state: 'closed',
          closedAt: at,
          nextPromptAt: undefined,
          lastCallAt: undefined,
        });
        await tx.write.sprints.insert(sprint);
        await tx.write.history.savePastSprint({
          sprintId: sprint.id,
          teamId: team.id,
          workspaceId: team.workspaceId,
          endsOn: sprint.endsOn,
          workingDays: 10,
          memberDays: 40,
          commitmentPoints: seen.trace[0]?.cardPoints ?? 0,
          pulledInPoints: 0,
          surprisePoints: 0,
          workedPoints: undefined,
          committedFinishedPoints: seen.velocityPoints,
          ratios: pastRatios({}),
          cards: [],
          recordedAt: at,
          ...seen,
        } as NewPastSprint);
      }
    });
    await database.close();

    const { code, stdout = '' } = await run();
    expect(code).toBe(0);
    expect(stdout.split('\n')).toEqual([
      expect.stringContaining('after the first 6, all teams together'),
      ...[0, 30, 50, 80].map((percent) =>
        expect.stringMatching(
          new RegExp(
            `^At ${percent}% of the time \\(6 sprints\\): the guess was off by [\\d.]+ points by sums .*nearer\\.$`,
          ),
        ),
      ),
    ]);
    expect(stdout).not.toContain('Polaris');
    const { own: scores } = JSON.parse((await run('--json')).stdout ?? '') as { own: { scored: number }[] };
    expect(scores.map(({ scored }) => scored)).toEqual([6, 6, 6, 6]);
    expect(await run('all')).toEqual({ code: 2, stderr: expect.stringContaining('npm run own-record') });
  } finally {
    await own.drop();
  }
});
