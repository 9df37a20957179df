/** Asks one person what a sprint was worth, some working days after its end. */
import { type Day, dayPlus } from '../../sprint/calendar.ts';
import { workingDaysOf } from '../../sprint/work-calendar.ts';
import { whoIsAsked } from '../closing/ask-goal.ts';
import type { DueSprint } from '../ports/locks.ts';
import type { Reading } from '../ports/store.ts';
import { directPost } from '../posting/post-kinds.ts';
import type { NewPost } from '../posting/posts.ts';
import { todayOf } from '../team/place.ts';
import type { Team } from '../team/team.ts';
import type { PastSprint } from './past-sprint.ts';

/** For how many working days after its day a question is still asked, because nobody could be asked or the bot was down. */
const MAY_BE_LATE = 5;

/**
 * The questions to ask now: once for each sprint without a value, at the prompt time of a sprint that runs then. Imported
 * sprints are left out.
 */
export async function valueQuestions(
  read: Reading,
  asking: readonly DueSprint[],
  now: Date,
): Promise<NewPost[]> {
  const teams = new Map(asking.map(({ team }) => [team.id, team]));
  const wanting = [...teams.values()].filter(({ valueAfterDays }) => valueAfterDays !== undefined);
  if (wanting.length === 0) return [];
  const people = await read.peopleOf(wanting.map(({ id }) => id));
  const questions: NewPost[] = [];
  for (const team of wanting) {
    const today = todayOf(team, now);
    const userId = whoIsAsked(team, people.get(team.id) ?? [], today);
    if (userId === undefined) continue;
    for (const past of await read.pastSprintsOf(team.id)) {
      if (!isDue(team, past, today) || (await read.postAbout(past.sprintId, 'value-question'))) continue;
      questions.push(directPost(team, userId, { kind: 'value-question', sprintId: past.sprintId }));
    }
  }
  return questions;
}

function isDue(team: Team, { endsOn, recordedValue, importedAt }: PastSprint, today: Day): boolean {
  const { valueAfterDays: after } = team;
  if (after === undefined || recordedValue !== undefined || importedAt !== undefined) return false;
  // A team works on one day a week at least.
  if (endsOn < dayPlus(today, -7 * (after + MAY_BE_LATE))) return false;
  const worked = workingDaysOf(team, dayPlus(endsOn, 1), today).length;
  return worked >= after && worked <= after + MAY_BE_LATE;
}
