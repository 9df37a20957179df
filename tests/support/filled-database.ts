/** A database with something in every table that people's work fills, and a way to compare two of them. */
import { sql } from 'drizzle-orm';
import type { Database } from '../../src/store/database.ts';
import { aCard, aChange, aMember, anAnswer, aPost, aResult, savedSprint } from '../store/store-examples.ts';
import { rowsOf } from './rows-of.ts';

const AT = new Date('2026-11-03T09:15:00Z');

/** Two posts wait to be delivered. @returns the sprint that is open */
export async function fillDatabase(database: Database): Promise<{ sprintId: string }> {
  const { team, sprint } = await savedSprint(database);
  const cards = [aCard(sprint.id, 1, { title: 'Räum den Steg, 積荷 “\\n”; $$--' }), aCard(sprint.id, 2)];
  const [first, second] = cards as [(typeof cards)[0], (typeof cards)[0]];
  const answer = anAnswer(first.id, { note: "it's\ta\nnote" });
  await database.store.transaction(async (tx) => {
    await tx.write.teams.saveMembers(team.id, [
      aMember(),
      aMember({ userId: 'U-ben', name: 'Ben', isActive: false }),
    ]);
    await tx.write.cards.insert(cards);
    const by = { userId: 'U-ana', day: '2026-11-03', at: AT };
    await tx.write.cards.changeOwners([{ card: second, ownerIds: ['U-ben'], by }]);
    await tx.write.cards.insertFacts([answer]);
    await tx.write.cards.insertFacts([anAnswer(first.id, { leftPoints: 2, supersedesId: answer.id })]);
    await tx.write.cards.insertFacts([aChange(second.id, 'drop')]);
    const prompt = { sprintId: sprint.id, userId: 'U-ana', day: '2026-11-03' };
    const post = aPost(sprint.id, {
      recipient: { userId: 'U-ana' },
      subject: { kind: 'daily-prompt', ...prompt },
    });
    await tx.write.prompts.insert([{ ...prompt, postId: post.id }]);
    // Before the post is there, so that nothing has to be brought up to date.
    await tx.write.prompts.setState({ ...prompt, postId: undefined }, 'answered', AT);
    await tx.write.posts.add([post, aPost(sprint.id)]);
    await tx.write.results.insert(aResult(sprint.id, 8));
    await tx.write.teams.save({ ...team, baselineSprintId: sprint.id });
    await tx.drafts.save(team.id, 'U-ana', {
      teamId: team.id,
      awayDays: '',
      name: 'Draft',
      goal: '',
      startsOn: '2026-11-16',
      endsOn: '2026-11-27',
      closesAt: '17:00',
      cards: 'Tar the hull, 3',
    });
    await tx.events.remember('Ev-1', AT);
  });
  return { sprintId: sprint.id };
}

type Rows = readonly Record<string, unknown>[];

/** Every row of every table of ours, and the queued deliveries; table by table, in a fixed order. */
export async function contentOf(database: Database): Promise<Record<string, Rows>> {
  const tables = await rowsOf<{ name: string }>(
    database,
    sql`select table_name as name from information_schema.tables
      where table_schema = 'loadline' and table_type = 'BASE TABLE' order by 1`,
  );
  const content: Record<string, Rows> = {};
  for (const { name } of tables) {
    const rows = await rowsOf<{ row: Record<string, unknown> }>(
      database,
      sql`select to_jsonb(t) as row from loadline.${sql.identifier(name)} as t order by to_jsonb(t)::text`,
    );
    content[name] = rows.map(({ row }) => row);
  }
  content.queue = await rowsOf(
    database,
    sql`select name, data, state::text as state, retry_limit from pgboss.job order by name, data::text`,
  );
  return content;
}

/** The tables of the first release. */
export const FIRST_TABLES = [
  'answers',
  'card_changes',
  'card_owners',
  'cards',
  'members',
  'plan_drafts',
  'posts',
  'prompts',
  'seen_events',
  'sprint_results',
  'sprints',
  'teams',
] as const;
