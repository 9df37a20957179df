/** Asks a facilitator, after three sprints, what becomes of something that the team tries. */
import { memberShareOf } from '../../sprint/work-calendar.ts';
import type { Transaction } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import type { NewPost } from '../posting/posts.ts';
import { facilitatorsOrMembers, todayOf } from '../team/place.ts';
import type { Sprint, Team } from '../team/team.ts';
import { triedIn } from './experiment-results.ts';

const ASKED_AFTER_SPRINTS = 3;

/**
 * One question for each experiment of which this is the third verdict: to the facilitator who kept it, else to the first by
 * name; who is off today is passed over unless all are.
 *
 * @param closed the sprint that has just closed for the first time
 */
export async function experimentQuestions(tx: Transaction, team: Team, closed: Sprint): Promise<NewPost[]> {
  const all = await tx.read.experimentsOf(team.id);
  const open = triedIn(closed, all);
  if (open.length === 0) return [];
  const sprints = await tx.read.sprintsOf(team.id);
  const due = open.filter(
    (one) => sprints.filter((sprint) => triedIn(sprint, [one]).length > 0).length === ASKED_AFTER_SPRINTS,
  );
  const people = (await tx.read.membersOf(team.id)).filter(({ isActive }) => isActive);
  const today = todayOf(team, closed.closedAt ?? new Date(0));
  const isThere = (userId: string): boolean =>
    people.some((own) => own.userId === userId && memberShareOf(team, own, today) > 0);
  const facilitators = facilitatorsOrMembers(people);
  return due.flatMap(({ id, begunBy }) => {
    const inLine = [...facilitators].sort((a, b) => Number(b === begunBy) - Number(a === begunBy));
    const asked = inLine.find(isThere) ?? inLine[0];
    const about = { kind: 'experiment-question', sprintId: closed.id, reason: id } as const;
    return asked === undefined ? [] : [directPost(team, asked, about)];
  });
}
