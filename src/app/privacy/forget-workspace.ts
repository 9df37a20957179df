/** Erases everything of one workspace at once, for the operator. Must leave every other workspace as it is. */
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { ErasedRows } from '../ports/teams.ts';

/** What a request that was under way has written in the meantime is erased as well. */
const MOST_ROUNDS = 3;

/** @returns how many rows of each table went; none where nothing is stored */
export async function forgetWorkspace(
  { store, clock }: Pick<AppDependencies, 'store' | 'clock'>,
  workspaceId: string,
): Promise<ErasedRows> {
  // First, so that no process serves it any more; the row goes last, for without it clocks would run.
  await store.transaction((tx) => tx.write.installations.revoke(workspaceId, clock.now()));
  const sums = new Map<string, number>();
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const teams = await store.read((read) => read.teamsOfWorkspace(workspaceId));
    // A transaction for each, so that nobody waits for long.
    const done: ErasedRows[] = [];
    for (const { id } of teams) {
      done.push(
        await store.transaction(async (tx) => {
          await tx.lock.team(id);
          return (await tx.read.teamById(id)) ? tx.write.retention.eraseTeam(id) : {};
        }),
      );
    }
    done.push(await store.transaction((tx) => tx.write.retention.eraseWorkspace(workspaceId)));
    const rows = done.flatMap((erased) => Object.entries(erased));
    for (const [table, count] of rows) sums.set(table, (sums.get(table) ?? 0) + count);
    if (rows.every(([, count]) => count === 0)) break;
  }
  return Object.fromEntries([...sums].filter(([, count]) => count > 0).sort());
}
