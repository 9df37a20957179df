/** Asks one person, shortly before closing, whether the sprint’s goal was met. */
import type { Day } from '../../sprint/calendar.ts';
import { memberShareOf, teamShareOf } from '../../sprint/work-calendar.ts';
import type { DueSprint } from '../ports/locks.ts';
import type { Reading } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import type { NewPost } from '../posting/posts.ts';
import { facilitatorsOrMembers, todayOf } from '../team/place.ts';
import type { Member, Team } from '../team/team.ts';

/** The questions to ask now: once for each sprint that has a goal of which nobody has said whether it was met. */
export async function goalQuestions(read: Reading, due: readonly DueSprint[], now: Date): Promise<NewPost[]> {
  const unsaid = due.filter(({ sprint }) => sprint.goal.trim() !== '' && sprint.goalOutcome === undefined);
  if (unsaid.length === 0) return [];
  const people = await read.peopleOf(unsaid.map(({ team }) => team.id));
  const questions: NewPost[] = [];
  for (const { team, sprint } of unsaid) {
    const userId = whoIsAsked(team, people.get(team.id) ?? [], todayOf(team, now));
    // A sprint that was extended has another hour before closing.
    const wasAsked = await read.postAbout(sprint.id, 'goal-question');
    if (userId !== undefined && !wasAsked)
      questions.push(directPost(team, userId, { kind: 'goal-question', sprintId: sprint.id }));
  }
  return questions;
}

/**
 * The product owner, else the first facilitator by name, of those who work on the day; undefined when all of them are off.
 *
 * @param people the active ones, by name
 */
export function whoIsAsked(team: Team, people: readonly Member[], day: Day): string | undefined {
  const { productOwnerId } = team;
  const inLine = [
    ...(productOwnerId === undefined ? [] : [productOwnerId]),
    ...facilitatorsOrMembers(people),
  ];
  return inLine.find((userId) => {
    const own = people.find((person) => person.userId === userId);
    // Of a product owner who isn't on the team no days off are known.
    return (own ? memberShareOf(team, own, day) : teamShareOf(team, day)) > 0;
  });
}
