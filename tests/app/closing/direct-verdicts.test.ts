import { describe, expect, test } from 'vitest';
import { chooseDirectVerdicts, directVerdicts } from '../../../src/app/closing/direct-verdicts.ts';
import { closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { recordGoal } from '../../../src/app/closing/record-goal.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import { actorOf, CHANNEL, harnessForEach, PEOPLE, type PersonName } from '../../support/app-harness.ts';

// The sprint runs from Monday 2 to Friday 13 November 2026 in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const CLOSING = '2026-11-13T17:00:00Z';
const PARTS = ['direct-verdict', 'verdict-numbers', 'verdict-cards', 'verdict-notes'];

async function running() {
  const h = harness();
  const team = await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
  const { sprint } = await h.plan(team);
  const choose = (who: PersonName, isWanted: boolean) =>
    chooseDirectVerdicts(h.deps, actorOf(who), { teamId: team.id, isWanted });
  const verdictsTo = (who: PersonName) => h.kindsTo(who).filter((kind) => PARTS.includes(kind));
  const close = async () => {
    await h.pass(CLOSING);
    // The parts below a verdict are owed once it is out.
    await h.drain();
  };
  return { h, team, sprint, choose, verdictsTo, close };
}

describe('verdicts as direct messages', () => {
  test('come to nobody who has not asked for them', async () => {
    const { verdictsTo, close } = await running();
    await close();
    expect([verdictsTo('ana'), verdictsTo('ben'), verdictsTo('dayo')]).toEqual([[], [], []]);
  });

  test('come once, with all parts in their thread, to those who want them, the product owner included', async () => {
    const { h, choose, verdictsTo, close } = await running();
    await choose('ana', true);
    await choose('dayo', true);
    await close();
    expect([verdictsTo('ana'), verdictsTo('dayo'), verdictsTo('ben')]).toEqual([PARTS, PARTS, []]);
    const sent = h.messenger.messages.filter(({ to }) => 'userId' in to && to.userId === PEOPLE.dayo);
    const [first, ...parts] = sent.filter(({ content }) => PARTS.includes(content.kind));
    expect(parts.map(({ to }) => to)).toEqual(
      PARTS.slice(1).map(() => ({ userId: PEOPLE.dayo, threadTs: first?.at.ts })),
    );
  });

  test('are brought up to date in place with the one in the channel', async () => {
    const { h, sprint, choose, verdictsTo, close } = await running();
    await choose('ana', true);
    await close();
    await recordGoal(h.deps, actorOf('dayo'), { sprintId: sprint.id, met: 'partly', note: '' });
    await h.drain();
    const [verdict] = h
      .messagesTo('ana')
      .flatMap((one) => (one.kind === 'direct-verdict' ? [one.verdict] : []));
    expect(verdict?.goalOutcome?.met).toBe('partly');
    await reopenSprint(h.deps, actorOf('ana'), { sprintId: sprint.id });
    await choose('ben', true);
    await closeSprint(h.deps, actorOf('ana'), { sprintId: sprint.id });
    await h.drain();
    await h.drain();
    expect([verdictsTo('ana'), verdictsTo('ben')]).toEqual([PARTS, PARTS]);
  });

  test('end with the choice, with leaving the team, and with another product owner', async () => {
    const { h, team, choose, verdictsTo, close } = await running();
    for (const who of ['ana', 'ben', 'dayo'] as const) await choose(who, true);
    await choose('ana', false);
    await h.setUpTeam({ productOwnerId: undefined });
    await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
    await leaveTeam(h.deps, actorOf('ben'), { teamId: team.id });
    await close();
    expect([verdictsTo('ana'), verdictsTo('ben'), verdictsTo('dayo')]).toEqual([[], [], []]);
  });

  test('stay wanted when the team is set up again', async () => {
    const { h, choose } = await running();
    await choose('ana', true);
    await choose('dayo', true);
    await h.setUpTeam({ productOwnerId: PEOPLE.dayo });
    for (const who of ['ana', 'dayo'] as const)
      expect((await directVerdicts(h.deps, actorOf(who), { place: CHANNEL })).isWanted).toBe(true);
  });
});
