/**
 * The same morning as in `morning-bench.ts` for a hundred thousand members in two hundred workspaces, up to the point where
 * all is recorded and queued: what is delivered from then on is a matter of the platform's limits, workspace by workspace.
 */
import { askEverybodyApart } from './ask-everybody.ts';
import { startBenchDatabases } from './bench-database.ts';
import { type Bench, type BenchRow, benchRow } from './bench-row.ts';
import { COUNTING_STATEMENTS } from './count-statements.ts';
import type { Filling } from './fill-teams.ts';

const FILLING: Filling = {
  teams: 12_500,
  workspaces: 200,
  membersATeam: 8,
  cardsAMember: 1,
  answeredDays: 1,
  pastSprints: 1,
  prompted: false,
};
const MEMBERS = FILLING.teams * FILLING.membersATeam;

export const largeMorningBench: Bench = {
  name: 'large-morning',
  takesSeconds: 180,
  async run(): Promise<BenchRow[]> {
    const databases = await startBenchDatabases(COUNTING_STATEMENTS);
    try {
      const { tookMs, plainMs, memoryMb } = await askEverybodyApart(await databases.create(), FILLING);
      const inFirstThird = memoryMb.slice(0, Math.ceil(memoryMb.length / 3));
      return [
        benchRow({
          name: `${MEMBERS} prompts due at once in ${FILLING.workspaces} workspaces, recorded and queued`,
          unit: 's',
          value: tookMs / 1_000,
          baseline: 'one INSERT of as many rows',
          baselineValue: plainMs / 1_000,
          bound: { of: 'value', atMost: 40 },
        }),
        benchRow({
          name: 'most memory meanwhile',
          unit: 'MB',
          value: Math.max(...memoryMb),
          baseline: 'most memory in the first third of that time',
          baselineValue: Math.max(...inFirstThird),
          bound: { of: 'ratio', atMost: 1.2 },
        }),
      ];
    } finally {
      await databases.stop();
    }
  },
};
