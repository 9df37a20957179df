/** Somebody who leaves the company in the middle of a sprint, with everything real but the platform. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { emptyDatabase } from '../support/databases.ts';
import { ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';

let bot: ManyWorkspacesBot;
beforeEach(async () => {
  bot = await ManyWorkspacesBot.start(await emptyDatabase('PGlite'), '2026-11-02T07:00:00Z');
  await bot.install(NORTH);
});
afterEach(() => bot.stop());

const bensMessages = () => bot.textsIn(NORTH, 'D0BEN', 'U0BEN');
const anasMessages = () => bot.textsIn(NORTH, 'D0ANA', 'U0ANA');

/** Ben owns the only card; people are asked at 09:15 UTC. */
async function runningSprint(): Promise<{ teamId: string }> {
  const team = await bot.setUpTeam(NORTH);
  await bot.plan(NORTH, team.id, 'Tide table, 5, @ben');
  await bot.pass('2026-11-02T09:15:00Z');
  return { teamId: team.id };
}

describe('a leaver', () => {
  it('is asked no more, although the platform would take the messages, and the facilitator gets the card', async () => {
    const { teamId } = await runningSprint();
    const before = bensMessages().length;
    expect(before).toBeGreaterThan(0);
    bot.platform.standIn(NORTH).setDeactivated('U0BEN', true);
    await bot.pass('2026-11-03T09:15:00Z');
    expect(bensMessages()).toHaveLength(before);
    expect(anasMessages().at(-1)).toMatch(/Tide table|needs? an owner/);
    const people = await bot.deps.store.read((read) => read.peopleOf([teamId]));
    expect(
      people
        .get(teamId)
        ?.map(({ userId }) => userId)
        .sort(),
    ).toEqual(['U0ANA', 'U0CHI']);
  });

  it.each(['missing_scope', 'ratelimited', 'user_not_visible', 'fatal_error'])(
    'stays as long as the platform only answers %s',
    async (error) => {
      await runningSprint();
      const before = bensMessages().length;
      bot.platform.standIn(NORTH).setDeactivated('U0BEN', true);
      bot.platform.answers.set('users.info', { ok: false, error });
      await bot.pass('2026-11-03T09:15:00Z');
      expect(bensMessages()).toHaveLength(before + 1);
    },
  );
});
