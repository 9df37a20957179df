/** How many messages a member gets from the bot in a month of two sprints, one who answers and one who is silent. */
import { Harness } from '../support/app-harness.ts';
import { BEFORE_THE_MONTH, playMonth, WORKING_DAYS_OF_MONTH } from '../support/month-of-messages.ts';
import { openBenchDatabase, startBenchDatabases } from './bench-database.ts';
import type { Bench, BenchRow } from './bench-row.ts';
import { benchRow } from './bench-row.ts';

const MEMBERS = [
  { who: 'ben', name: 'messages a month to a member who answers', most: WORKING_DAYS_OF_MONTH + 2 },
  {
    who: 'chi',
    name: 'messages a month to a member who never does',
    // A reminder on each day that asks, which the two first mornings don't.
    most: WORKING_DAYS_OF_MONTH + (WORKING_DAYS_OF_MONTH - 2) + 2,
  },
] as const;

export const messagesBench: Bench = {
  name: 'messages',
  takesSeconds: 30,
  async run(): Promise<BenchRow[]> {
    const databases = await startBenchDatabases();
    try {
      const database = await openBenchDatabase(await databases.create());
      const got = await playMonth(new Harness(database, BEFORE_THE_MONTH));
      await database.close();
      return MEMBERS.map(({ who, name, most }) =>
        benchRow({
          name,
          unit: 'messages',
          value: got.filter((of) => of.who === who).reduce((sum, { kinds }) => sum + kinds.length, 0),
          baseline: 'one each working day',
          baselineValue: WORKING_DAYS_OF_MONTH,
          bound: { of: 'value', atMost: most },
        }),
      );
    } finally {
      await databases.stop();
    }
  },
};
