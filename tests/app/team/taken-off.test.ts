/** Whom a facilitator takes off a team hears it once, from the bot: by whom, and what becomes of cards and record. */
import { describe, expect, test } from 'vitest';
import { addGuests, removeGuests } from '../../../src/app/team/guests.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, PEOPLE } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-11-02T12:00:00Z');
const ana = actorOf('ana');

function told(h: Harness, who: 'ana' | 'ben' | 'chi' | 'dayo') {
  return h.messagesTo(who).filter(({ kind }) => kind === 'taken-off');
}

const WITHOUT_BEN = { memberIds: [PEOPLE.ana, PEOPLE.chi] };

describe('a member whom a facilitator takes off the team', () => {
  test('reads who did it, and what becomes of cards and record, once', async () => {
    const h = harness();
    await h.plan(await h.setUpTeam());
    await h.saveTeam(WITHOUT_BEN);
    await h.drain();
    await h.saveTeam({ ...WITHOUT_BEN, name: 'Tugs' });
    await h.drain();
    const [content, ...more] = told(h, 'ben');
    expect(more).toEqual([]);
    expect(content && postMessage(content).text.split('\n')).toEqual([
      'You aren’t on Tugboats any more',
      `<@${PEOPLE.ana}> took you off the team, so I won’t ask you about its cards any more. An open card that you shared stays with its other owners; one that was yours alone needs another owner, which I tell the facilitators.`,
      'What you have answered stays in the team’s record. To see what is stored about you, or to have it erased, type /loadline privacy.',
    ]);
    expect([...told(h, 'ana'), ...told(h, 'chi')]).toEqual([]);
  });

  test('reads that they stay its product owner', async () => {
    const h = harness();
    await h.setUpTeam({ productOwnerId: PEOPLE.ben });
    await h.saveTeam({ ...WITHOUT_BEN, productOwnerId: PEOPLE.ben });
    await h.drain();
    const [content] = told(h, 'ben');
    expect(content && postMessage(content).text).toContain('You are still the team’s product owner.');
  });

  test('reads nothing where they were put back before it could be said', async () => {
    const h = harness();
    await h.setUpTeam();
    await h.saveTeam(WITHOUT_BEN);
    await h.saveTeam({});
    await h.drain();
    expect(told(h, 'ben')).toEqual([]);
  });
});

test('who takes themselves off, or leaves, is told nothing of it', async () => {
  const h = harness();
  const team = await h.setUpTeam();
  await leaveTeam(h.deps, actorOf('chi'), { teamId: team.id });
  await h.saveTeam({ memberIds: [PEOPLE.ben], facilitatorIds: [PEOPLE.ben] });
  await h.drain();
  expect([...told(h, 'ana'), ...told(h, 'chi')]).toEqual([]);
});

test('a guest who is taken out of the sprint reads it as well', async () => {
  const h = harness();
  await h.plan(await h.setUpTeam());
  const guest = { place: CHANNEL, words: `<@${PEOPLE.dayo}>` };
  await addGuests(h.deps, ana, guest);
  await removeGuests(h.deps, ana, guest);
  await h.drain();
  expect(told(h, 'dayo')).toHaveLength(1);
});
