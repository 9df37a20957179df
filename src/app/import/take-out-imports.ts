/** Takes out what was prepared for an import and never brought in, a sprint or body of work at a time, so that nobody waits for it. */
import type { AppDependencies } from '../ports/app-dependencies.ts';

/** No import takes so long. */
const LEFT_AFTER_MS = 60 * 60_000;

export async function takeOut({ store }: Pick<AppDependencies, 'store'>, asideId: string): Promise<number> {
  let gone = 0;
  while (await store.transaction((tx) => tx.aside.takeOut(asideId))) gone += 1;
  return gone;
}

/** What processes left behind that ended in the middle of an import. @returns how many sprints and bodies */
export async function takeOutLeftImports(deps: Pick<AppDependencies, 'store' | 'clock'>): Promise<number> {
  const before = new Date(deps.clock.now().getTime() - LEFT_AFTER_MS);
  const left = await deps.store.transaction((tx) => tx.aside.leftBefore(before));
  let gone = 0;
  for (const asideId of left) gone += await takeOut(deps, asideId);
  return gone;
}
