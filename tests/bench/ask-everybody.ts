/** Records and queues the prompts of all members of an installation, who are due in the same minute. */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import postgres from 'postgres';
import { runDueWork } from '../../src/app/clock/ask-members.ts';
import { FakeDirectory } from '../support/fake-platform.ts';
import { START_FLAGS } from './app-process.ts';
import { openBenchDatabase } from './bench-database.ts';
import { statementsDuring } from './count-statements.ts';
import { type Filling, fillTeams } from './fill-teams.ts';

export interface Asked {
  readonly tookMs: number;
  readonly statements: number;
  readonly plainMs: number;
  /** Memory of this process, which does it, as it was now and then. */
  readonly memoryMb: readonly number[];
}

const LOOK_EVERY_MS = 50;
const BYTES_PER_MB = 2 ** 20;

const ASKING_PROCESS = fileURLToPath(new URL('./asking-process.ts', import.meta.url));

/** In a process of its own with the flags of the bot's start, so that its memory is what the bot would need. */
export async function askEverybodyApart(databaseUrl: string, filling: Filling): Promise<Asked> {
  const child = fork(ASKING_PROCESS, { execArgv: [...START_FLAGS, '--disable-warning=ExperimentalWarning'] });
  const answered = once(child, 'message');
  const failed = once(child, 'exit').then(([code]) => {
    throw new Error(`Those who ask ended with code ${code}.`);
  });
  // Once it has answered, it only ends.
  failed.catch(() => undefined);
  child.send({ databaseUrl, filling });
  const [asked] = await Promise.race([answered, failed]);
  return asked as Asked;
}

export async function askEverybody(databaseUrl: string, filling: Filling): Promise<Asked> {
  const members = filling.teams * filling.membersATeam;
  const database = await openBenchDatabase(databaseUrl);
  const client = postgres(databaseUrl, { max: 1, onnotice: () => undefined });
  try {
    await fillTeams(databaseUrl, filling);
    const memoryMb: number[] = [];
    const look = setInterval(() => memoryMb.push(process.memoryUsage.rss() / BYTES_PER_MB), LOOK_EVERY_MS);
    let served = 0;
    let tookMs = 0;
    const statements = await statementsDuring(databaseUrl, async () => {
      const beganMs = performance.now();
      served = await runDueWork({
        store: database.store,
        clock: { now: () => new Date() },
        directory: new FakeDirectory([]),
      });
      tookMs = performance.now() - beganMs;
    });
    clearInterval(look);
    const [owed] =
      await client`select count(*)::int as posts, (select count(*)::int from loadline.prompts) as prompts,
      (select count(*)::int from pgboss.job where name = 'delivery') as jobs from loadline.posts`;
    if (
      served !== filling.teams ||
      [owed?.posts, owed?.prompts, owed?.jobs].some((count) => count !== members)
    )
      throw new Error(`${served} sprints were served: ${JSON.stringify(owed)}`);
    return { tookMs, statements, memoryMb, plainMs: await plainInsert(client, members) };
  } finally {
    await client.end();
    await database.close();
  }
}

async function plainInsert(client: postgres.Sql, members: number): Promise<number> {
  await client`create table bare_prompts (user_id text not null, day date not null, primary key (user_id, day))`;
  const beganMs = performance.now();
  await client`insert into bare_prompts select 'U' || m, current_date from generate_series(1, ${members}::int) as m`;
  return performance.now() - beganMs;
}
