/** A team in a channel that is shared with another workspace, with a guest as a member, to the verdict. Everything is real but the platform. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import { recordAnswers } from '../../src/app/answering/record-answers.ts';
import { emptyDatabase } from '../support/databases.ts';
import { DISTRIBUTION, ManyWorkspacesBot, NORTH } from '../support/many-workspaces-bot.ts';

const ELSEWHERE = 'T0ELSEWHERE';
let bot: ManyWorkspacesBot;
beforeEach(async () => {
  bot = await ManyWorkspacesBot.start(await emptyDatabase('PGlite'), '2026-11-02T07:00:00Z', DISTRIBUTION, {
    users: [
      { id: 'U0ANA', name: 'ana' },
      { id: 'U0BEN', name: 'ben', isGuest: true },
      { id: 'U0OLU', name: 'olu', outsideTeamId: ELSEWHERE },
    ],
    channels: [{ id: 'C0TEAM', name: 'team', memberIds: ['U0ANA', 'U0BEN', 'U0OLU'] }],
  });
  await bot.install(NORTH);
});
afterEach(() => bot.stop());

const ben = { workspaceId: NORTH, userId: 'U0BEN' };
const standIn = () => bot.platform.standIn(NORTH);
const olusView = () => bot.textsIn(NORTH, 'C0TEAM', 'U0OLU');

it('the guest is asked, answers, and the verdict counts it; the outsider is on no team', async () => {
  const team = await bot.setUpTeam(NORTH);
  const members = await bot.deps.store.read((read) => read.membersOf(team.id));
  expect(members.map(({ userId }) => userId).sort()).toEqual(['U0ANA', 'U0BEN']);
  const sprint = await bot.plan(NORTH, team.id, 'Tide table, 5, @ben');
  await bot.pass('2026-11-02T09:15:00Z');
  expect(bot.textsIn(NORTH, 'D0BEN', 'U0BEN').at(-1)).toContain('Tide table');
  const { cards } = await bot.deps.store.read((read) => read.recordsOf(sprint.id));
  const answer = { cardId: cards[0]?.id as string, worked: '', left: '0', surprise: '', note: '' };
  await recordAnswers(bot.deps, ben, { sprintId: sprint.id, day: '2026-11-02', answers: [answer] });
  await bot.pass('2026-11-13T17:00:00Z');
  expect(olusView().join('\n')).toMatch(/Harbour 12: kept/);
});

it('the outsider who mentions the bot reads the help, and otherwise why it can do no more', async () => {
  await bot.setUpTeam(NORTH);
  for (const word of ['status', 'setup', 'plan', '']) {
    await standIn().say('U0OLU', 'C0TEAM', `<@U0LOADLINE> ${word}`);
    await bot.settle();
    expect([word, olusView().at(-1)]).toEqual([
      word,
      expect.stringContaining('You belong to another workspace'),
    ]);
  }
  await standIn().say('U0OLU', 'C0TEAM', '<@U0LOADLINE> help');
  await bot.settle();
  expect(olusView().at(-1)).toContain('/loadline status');
});

it('a form that an outsider or a guest may not send stays open with what was typed, and says why', async () => {
  await standIn().command('U0ANA', 'C0TEAM', '/loadline setup');
  await bot.settle();
  const viewId = standIn().viewOf('U0ANA')?.id as string;
  standIn().fill('U0ANA', viewId, { name: 'Night shift', acceptsShared: ['yes'] });
  const is = (fields: object) => {
    bot.platform.answers.set('users.info', { ok: true, user: { id: 'U0ANA', team_id: NORTH, ...fields } });
    bot.set(new Date(bot.deps.clock.now().getTime() + 6 * 60_000).toISOString());
  };
  const sent = async () => {
    const outcome = await standIn().submit('U0ANA', viewId);
    return outcome.ok ? [] : Object.values(outcome.fieldErrors ?? {});
  };
  is({ team_id: ELSEWHERE });
  expect(await sent()).toContainEqual(expect.stringContaining('belong'));
  is({ is_restricted: true });
  expect(await sent()).toContainEqual(expect.stringContaining('guest'));
  bot.platform.answers.clear();
  is({});
  bot.platform.answers.clear();
  expect(await sent()).toEqual([]);
  await bot.settle();
  const team = await bot.deps.store.read((read) => read.teamByChannel(NORTH, 'C0TEAM'));
  expect(team).toMatchObject({ name: 'Night shift' });
});

it('the form in a shared channel says what others would read, and isn’t sent without a yes to that', async () => {
  await standIn().command('U0ANA', 'C0TEAM', '/loadline setup');
  await bot.settle();
  const view = standIn().viewOf('U0ANA');
  expect(JSON.stringify(view)).toContain('People of another organisation read this channel too.');
  expect(await standIn().submit('U0ANA', view?.id as string)).toMatchObject({ ok: false });
  expect(await bot.deps.store.read((read) => read.teamByChannel(NORTH, 'C0TEAM'))).toBeUndefined();
});

it('a channel that is shared later gets nothing before a yes, and then what waited', async () => {
  standIn().setShared('C0TEAM', false);
  const team = await bot.setUpTeam(NORTH);
  standIn().setShared('C0TEAM', true);
  const toldLast = async () => {
    await bot.settle();
    return bot.textsIn(NORTH, 'D0ANA').at(-1);
  };
  await expect.poll(toldLast).toContain('I post nothing in the channel');
  const before = olusView();
  bot.set('2026-11-02T07:05:00Z');
  await bot.plan(NORTH, team.id, 'Tide table, 5, @ben');
  await bot.settle();
  expect(olusView()).toEqual(before);
  await bot.setUpTeam(NORTH);
  await bot.settle();
  expect(olusView().slice(before.length).join('\n')).toContain('Tide table');
});
