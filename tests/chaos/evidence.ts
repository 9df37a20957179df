/** What the auditor judges: what is on the platform, in the database, and in people's memory. Reads only. */
import postgres from 'postgres';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import type { Act } from './act.ts';
import type { DuePrompt } from './expectations.ts';

/** A message of the bot that carries a post's key. */
interface PostedMessage {
  readonly key: string;
  readonly channelId: string;
  readonly ts: string;
  readonly text: string;
}

export interface PostRow {
  readonly id: string;
  readonly kind: string;
  readonly sprintId: string | undefined;
  readonly userId: string | undefined;
  readonly day: string | undefined;
  readonly state: string;
  readonly wantedVersion: number;
  readonly sentVersion: number;
  readonly lastError: string | undefined;
  /** What it should say by the state of the database, where that is known; undefined otherwise. */
  readonly shouldSay: string | undefined;
}

interface PromptRow {
  readonly sprintId: string;
  readonly userId: string;
  readonly day: string;
  readonly state: string;
  readonly postId: string | undefined;
}

export interface AnswerRow {
  readonly id: string;
  readonly cardId: string;
  readonly sprintId: string;
  readonly userId: string;
  readonly day: string;
  readonly order: number;
  readonly workedPoints: number | undefined;
  readonly leftPoints: number;
  readonly surprisePoints: number;
  readonly supersedesId: string | undefined;
}

interface CardRow {
  readonly id: string;
  readonly sprintId: string;
  readonly title: string;
  readonly estimatePoints: number;
  readonly origin: string;
  readonly dropReason: string | undefined;
}

interface SprintRow {
  readonly id: string;
  readonly name: string;
  readonly channelId: string;
  readonly state: string;
  /** The sums of its latest result; undefined before it was closed. */
  readonly result:
    | {
        readonly commitmentPoints: number;
        readonly pulledInPoints: number;
        readonly surprisePoints: number;
        readonly driftPoints: number;
        readonly workedPoints: number;
        readonly loadPoints: number;
      }
    | undefined;
}

export interface Evidence {
  readonly messages: readonly PostedMessage[];
  readonly posts: readonly PostRow[];
  readonly prompts: readonly PromptRow[];
  readonly answers: readonly AnswerRow[];
  readonly cards: readonly CardRow[];
  readonly sprints: readonly SprintRow[];
  /** Deliveries that are neither done nor forgotten, by state. */
  readonly jobs: readonly { readonly queue: string; readonly state: string; readonly count: number }[];
  readonly acts: readonly Act[];
  readonly duePrompts: readonly DuePrompt[];
  /** Ends that nobody had asked for, of processes that had come up. */
  readonly deaths: readonly string[];
}

export function postedMessages(standIn: StandIn): PostedMessage[] {
  return standIn.allPosts().flatMap(({ metadata, channelId, ts, text }) => {
    const key = (metadata?.event_payload as { key?: unknown } | undefined)?.key;
    return typeof key === 'string' ? [{ key, channelId, ts, text }] : [];
  });
}

type Tables = Pick<Evidence, 'prompts' | 'answers' | 'cards' | 'sprints' | 'jobs'> & {
  readonly posts: readonly Omit<PostRow, 'shouldSay'>[];
};

/** The columns are named here as the fields are, so that rows need no copying. */
export async function readTables(databaseUrl: string): Promise<Tables> {
  const sql = postgres(databaseUrl, { max: 1, onnotice: () => undefined });
  const rows = async <Row>(query: string): Promise<Row[]> =>
    (await sql.unsafe(query)).map(
      (row) =>
        Object.fromEntries(Object.entries(row).map(([name, value]) => [name, value ?? undefined])) as Row,
    );
  try {
    return {
      posts:
        await rows(`select id, kind, sprint_id "sprintId", subject_user_id "userId", subject_day::text "day", state,
        wanted_version "wantedVersion", sent_version "sentVersion", last_error "lastError"
        from loadline.posts order by entry_order`),
      prompts:
        await rows(`select sprint_id "sprintId", user_id "userId", day::text "day", state, post_id "postId"
        from loadline.prompts`),
      answers: await rows(`select a.id, a.card_id "cardId", c.sprint_id "sprintId", a.member_id "userId",
        a.day::text "day", a.fact_order::integer "order", a.worked_points::float8 "workedPoints",
        a.left_points::float8 "leftPoints", a.surprise_points::float8 "surprisePoints", a.supersedes_id "supersedesId"
        from loadline.answers a join loadline.cards c on c.id = a.card_id order by a.fact_order`),
      cards:
        await rows(`select c.id, c.sprint_id "sprintId", c.title, c.estimate_points::float8 "estimatePoints",
        c.origin, d.note "dropReason" from loadline.cards c
        left join loadline.card_changes d on d.card_id = c.id and d.kind = 'drop'`),
      sprints: await rows(`select s.id, s.name, t.channel_id "channelId", s.state, (
          select json_build_object('commitmentPoints', r.commitment_points, 'pulledInPoints', r.pulled_in_points,
            'surprisePoints', r.surprise_points, 'driftPoints', r.drift_points, 'workedPoints', r.worked_points,
            'loadPoints', r.load_points)
          from loadline.sprint_results r where r.sprint_id = s.id order by r.version desc limit 1) "result"
        from loadline.sprints s join loadline.teams t on t.id = s.team_id`),
      jobs: await rows(`select name "queue", state::text "state", count(*)::integer "count" from pgboss.job
        where name like 'delivery%' and state in ('created', 'retry', 'active', 'failed') group by 1, 2`),
    };
  } finally {
    await sql.end();
  }
}
