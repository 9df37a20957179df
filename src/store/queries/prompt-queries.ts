/** Reads and writes prompts: that one exists is decided by the unique key of sprint, member and day. */
import { and, asc, eq, getTableColumns, inArray, or, type SQL, type SQLWrapper, sql } from 'drizzle-orm';
import type { PromptReading, PromptWriting } from '../../app/ports/sprints.ts';
import type { Prompt } from '../../app/team/team.ts';
import { waitForAll } from '../../app/wait-for-all.ts';
import type { JobSender } from '../queue/job-sender.ts';
import { posts, prompts } from '../schema.ts';
import { frozenChange, frozenSelect } from './frozen-statement.ts';
import { raiseWantedVersion } from './post-queries.ts';
import { rowsAsJson, type SqlSession, statementsOf } from './sql-session.ts';

function promptFrom(row: typeof prompts.$inferSelect): Prompt {
  return {
    ...row,
    postId: row.postId ?? undefined,
    reminderPostId: row.reminderPostId ?? undefined,
    lastCallPostId: row.lastCallPostId ?? undefined,
    answeredAt: row.answeredAt ?? undefined,
  };
}

const PROMPT = frozenSelect(
  getTableColumns(prompts),
  sql`from ${prompts} where ${prompts.sprintId} = ${sql.placeholder('sprint')}
    and ${prompts.userId} = ${sql.placeholder('user')} and ${prompts.day} = ${sql.placeholder('day')}`,
);

const PROMPTS_OF_PERSON = frozenSelect(
  getTableColumns(prompts),
  sql`from ${prompts} where ${prompts.sprintId} = ${sql.placeholder('sprint')}
    and ${prompts.userId} = ${sql.placeholder('user')} order by ${prompts.day}`,
);

/** Looked up day by day: the database takes any list for a hundred days, and would rather read all prompts that there are. */
const PROMPTS_OF_DAYS = frozenSelect(
  getTableColumns(prompts),
  sql`from json_to_recordset(${sql.placeholder('wanted')}::json) as wanted(sprint_id text, day date)
    cross join lateral (select * from ${prompts} as of_day
      where of_day.sprint_id = wanted.sprint_id and of_day.day = wanted.day offset 0) as prompts
    order by ${prompts.sprintId}, ${prompts.day}, ${prompts.userId}`,
);

/** Whether a prompt was asked by the post, reminded of by it or called last. */
function isAbout(postId: SQLWrapper): SQL {
  return sql`${postId} in (${prompts.postId}, ${prompts.reminderPostId}, ${prompts.lastCallPostId})`;
}

const PROMPTS_OF_POST = frozenSelect(
  getTableColumns(prompts),
  sql`from ${prompts} where ${prompts.postId} = ${sql.placeholder('post')}
    or ${prompts.reminderPostId} = ${sql.placeholder('post')} or ${prompts.lastCallPostId} = ${sql.placeholder('post')}
    order by ${prompts.sprintId}`,
);

const ADD = frozenChange(
  { sprintId: prompts.sprintId, userId: prompts.userId, day: prompts.day, postId: prompts.postId },
  sql`insert into ${prompts} (sprint_id, user_id, day, state, post_id)
    select "sprintId", "userId", day, 'asked', "postId" from json_to_recordset(${sql.placeholder('asked')}::json)
      as asked("sprintId" text, "userId" text, day date, "postId" text)
    on conflict (sprint_id, user_id, day) do nothing`,
);

/** A day that was met before anybody asked stays so: the answer rate counts it. */
const SET_STATE = frozenChange(
  { postId: posts.id },
  sql`with met as (
      insert into ${prompts} (sprint_id, user_id, day, state, answered_at)
      values (${sql.placeholder('sprint')}, ${sql.placeholder('user')}, ${sql.placeholder('day')},
        ${sql.placeholder('state')}, ${sql.placeholder('answeredAt')})
      on conflict (sprint_id, user_id, day) do update
        set state = excluded.state, answered_at = case when ${prompts.postId} is null
          then least(${prompts.answeredAt}, excluded.answered_at) else excluded.answered_at end
      returning post_id, reminder_post_id, last_call_post_id)
    ${raiseWantedVersion} from met where ${posts.id} in (post_id, reminder_post_id, last_call_post_id)`,
);

export function promptReading(session: SqlSession): PromptReading {
  return {
    async promptOf(sprintId, userId, day) {
      const [row] = await PROMPT(session, { sprint: sprintId, user: userId, day });
      return row && promptFrom(row);
    },

    async promptsOfPerson(sprintId, userId) {
      return (await PROMPTS_OF_PERSON(session, { sprint: sprintId, user: userId })).map(promptFrom);
    },

    async promptsOf(days) {
      if (days.length === 0) return [];
      const wanted = JSON.stringify(days.map(({ sprintId, day }) => ({ sprint_id: sprintId, day })));
      return (await PROMPTS_OF_DAYS(session, { wanted })).map(promptFrom);
    },

    async promptsByPost(workspaceId, at) {
      // By what the post is about, so that a reminder and a last call lead to the prompt as well.
      const rows = await session
        .select({ prompt: prompts })
        .from(posts)
        .innerJoin(
          prompts,
          or(
            and(
              eq(prompts.sprintId, posts.sprintId),
              eq(prompts.userId, posts.subjectUserId),
              eq(prompts.day, posts.subjectDay),
            ),
            isAbout(posts.id),
          ),
        )
        .where(
          and(
            eq(posts.workspaceId, workspaceId),
            eq(posts.postedChannelId, at.channelId),
            eq(posts.postedTs, at.ts),
            inArray(posts.kind, ['daily-prompt', 'reminder', 'last-call']),
          ),
        )
        .orderBy(asc(prompts.sprintId));
      return rows.map(({ prompt }) => promptFrom(prompt));
    },

    async promptsOfPost(postId) {
      return (await PROMPTS_OF_POST(session, { post: postId })).map(promptFrom);
    },
  };
}

export function promptWriting(session: SqlSession, sender: JobSender): PromptWriting {
  return {
    async insert(asked) {
      if (asked.length === 0) return [];
      const inserted = await ADD(session, { asked: rowsAsJson(asked) });
      return inserted.map((row) => ({ ...row, postId: row.postId ?? undefined }));
    },

    async setState(prompt, state, at) {
      const { sprintId, userId, day, postId, reminderPostId, lastCallPostId } = prompt;
      const answeredAt = state === 'asked' ? null : at.toISOString();
      const posted = [postId, reminderPostId, lastCallPostId].flatMap((id) => id ?? []);
      const [refreshed] = await waitForAll([
        SET_STATE(session, { sprint: sprintId, user: userId, day, state, answeredAt }),
        sender.send(
          session,
          posted.map((id) => ({ postId: id })),
        ),
      ]);
      return refreshed.length;
    },

    async called(kind, called) {
      const column = kind === 'reminder' ? 'reminderPostId' : 'lastCallPostId';
      const name = kind === 'reminder' ? 'reminder_post_id' : 'last_call_post_id';
      for (const rows of statementsOf(called)) {
        await session
          .insert(prompts)
          .values(
            rows.map(({ sprintId, userId, day, postId }) => ({
              ...{ sprintId, userId, day, state: 'asked' as const },
              [column]: postId,
            })),
          )
          .onConflictDoUpdate({
            target: [prompts.sprintId, prompts.userId, prompts.day],
            set: { [column]: sql.raw(`excluded.${name}`) },
          });
      }
    },
  };
}
