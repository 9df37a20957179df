/** A team in which Ben has left a trace of every kind: by others, by himself, by prompts and by posts. */
import { sql } from 'drizzle-orm';
import { shareAdvice } from '../../../src/app/advice/ask-advice.ts';
import { recordAway } from '../../../src/app/answering/record-answers.ts';
import { keepBody } from '../../../src/app/bodies/keep-bodies.ts';
import { dropCard, reopenCard } from '../../../src/app/cards/change-cards.ts';
import { takeCards } from '../../../src/app/cards/change-owners.ts';
import { pullCards } from '../../../src/app/cards/pull-cards.ts';
import { cancelSprint } from '../../../src/app/closing/end-sprint.ts';
import { recordGoal } from '../../../src/app/closing/record-goal.ts';
import { endExperiment } from '../../../src/app/experiments/end-experiment.ts';
import { tryExperiment } from '../../../src/app/experiments/try-experiment.ts';
import { recordValue } from '../../../src/app/history/record-value.ts';
import { editCard } from '../../../src/app/planning/edit-card.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import type { Team } from '../../../src/app/team/team.ts';
import { openHomePage } from '../../../src/app/watching/home-page.ts';
import { shareStatus } from '../../../src/app/watching/sprint-status.ts';
import { actorOf, CHANNEL, type Harness, PEOPLE } from '../../support/app-harness.ts';

export const NOW = '2026-10-30T12:00:00Z';
const ben = actorOf('ben');

/** What shows Ben in any place: his id, his name, and words that only he wrote. */
export const BENS_WORDS = [PEOPLE.ben, 'Ben Ode', 'ben’s own words'];

export interface BusyTeam {
  readonly team: Team;
  readonly closedId: string;
  readonly cancelledId: string;
  readonly openId: string;
}

/** One sprint closed, one cancelled, one running in its second day. */
export async function busyTeam(h: Harness): Promise<BusyTeam> {
  const both = {
    facilitatorIds: [PEOPLE.ana, PEOPLE.ben],
    memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi],
    productOwnerId: PEOPLE.ben,
  };
  const team = await h.setUpTeam(both);
  const { sprint } = await h.plan(team, { goal: 'Ferries berth, says Ben Ode', startsOn: '2026-11-02' });
  await h.pass('2026-11-02T09:15:00Z');
  await h.answer('ben', sprint.id, '2026-11-02', {
    1: { left: '6', surprise: '1', note: 'Ben’s own words: wet rope' },
    3: { left: '1' },
  });
  await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '5', note: 'Ben’s own words, corrected' } });
  await h.answer('chi', sprint.id, '2026-11-02', { 3: { left: '0', note: 'with <@UBEN|ben> and Ben  Ode' } });
  await h.pass('2026-11-02T12:15:00Z');
  await pullCards(h.deps, ben, { place: CHANNEL, text: 'Fog horn for <@UBEN>, 3, @Ben' });
  await dropCard(h.deps, ben, { place: CHANNEL, reference: '2', reason: 'Ben’s own words' });
  await reopenCard(h.deps, ben, { place: CHANNEL, reference: '3' });
  await editCard(h.deps, ben, { place: CHANNEL, reference: '1', edit: { title: 'Tide table of Ben Ode' } });
  await editCard(h.deps, ben, { place: CHANNEL, reference: '1', edit: { title: 'Tide table' } });
  await recordGoal(h.deps, ben, { place: CHANNEL, line: 'partly Ben’s own words' });
  await shareStatus(h.deps, ben, { sprintId: sprint.id });
  await h.drain();
  await h.pass('2026-11-03T09:15:00Z');
  await recordAway(h.deps, ben, { sprintId: sprint.id, day: '2026-11-03' });
  await h.pass('2026-11-13T17:00:00Z');
  await recordValue(h.deps, ben, { place: CHANNEL, value: '1200', sprint: undefined });
  await shareAdvice(h.deps, ben, { teamId: team.id, question: { about: 'history' } });

  const [ana, number] = [actorOf('ana'), { ratio: 'keptShare', direction: 'up' } as const];
  await keepBody(h.deps, ben, { teamId: team.id, name: 'Lights of Ben Ode', leftPoints: 80 });
  await tryExperiment(h.deps, ben, { teamId: team.id, text: 'Pair with Ben Ode', ...number });
  await endExperiment(h.deps, ana, { place: CHANNEL, reference: '1', outcome: 'drop' });
  await tryExperiment(h.deps, ana, { teamId: team.id, text: 'Small cards', ...number });
  await endExperiment(h.deps, ben, { place: CHANNEL, reference: '1', outcome: 'keep' });

  h.set('2026-11-16T08:00:00Z');
  const second = await h.plan(team, { name: 'Quay 2', startsOn: '2026-11-16', endsOn: '2026-11-20' });
  await h.pass('2026-11-16T09:15:00Z');
  await cancelSprint(h.deps, ben, { sprintId: second.sprint.id, reason: 'Ben’s own words' });

  h.set('2026-11-23T08:00:00Z');
  const third = await h.plan(team, { name: 'Quay 3', startsOn: '2026-11-23', endsOn: '2026-12-04' });
  await h.pass('2026-11-23T09:15:00Z');
  await h.answer('ben', third.sprint.id, '2026-11-23', { 1: { left: '4', note: 'Ben’s own words' } });
  await h.answer('chi', third.sprint.id, '2026-11-23', { 2: { left: '1' } });
  await takeCards(h.deps, ben, { place: CHANNEL, words: '2' });
  const draft = h.planInput(team, { name: 'Quay 4', startsOn: '2026-12-07', endsOn: '2026-12-18' });
  await previewPlan(h.deps, actorOf('ana'), draft);
  await previewPlan(h.deps, ben, draft);
  await openHomePage(h.deps, ben);
  // The next day's prompt waits to be sent; a delivery of the day before failed and says what it had in hand.
  h.set('2026-11-24T09:15:00Z');
  await h.tick();
  await h.database.session.execute(sql`update pgboss.job set output = '{"message": "params: UBEN, ben ode"}'
    where id = (select id from pgboss.job limit 1)`);
  return { team, closedId: sprint.id, cancelledId: second.sprint.id, openId: third.sprint.id };
}
