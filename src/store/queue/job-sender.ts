/**
 * Queues deliveries inside the caller's transaction, through pg-boss. Sends only: the work is done by
 * `delivery-queue.ts`. Both share the names and settings below.
 */
import { sql } from 'drizzle-orm';
import { type Clock, type Db, type DrizzleTransactionLike, fromDrizzle, PgBoss, type Queue } from 'pg-boss';
import { directClient, type SqlSession } from '../queries/sql-session.ts';

export const QUEUE_SCHEMA = 'pgboss';
export const DELIVERY_QUEUE = 'delivery';
/** Where a delivery goes after its last attempt failed. */
export const GIVEN_UP_QUEUE = 'delivery-given-up';

const DAY_SECONDS = 86_400;

/** Who has been at a delivery for longer than this has crashed, as far as the others are concerned. */
export const DELIVERY_TIMEOUT_SECONDS = 60;

/**
 * Ten more tries after the first, each about twice as long after the last: 4 s, 8 s, … about 30 min,
 * 70 minutes in all. The timeout is long enough for a slow call, and short enough that a crash delays a post by
 * two minutes at most.
 */
const DELIVERY_SETTINGS: Omit<Queue, 'name' | 'policy'> = {
  retryLimit: 10,
  retryDelay: 4,
  retryBackoff: true,
  retryDelayMax: 1_800,
  expireInSeconds: DELIVERY_TIMEOUT_SECONDS,
  retentionSeconds: 14 * DAY_SECONDS,
  deleteAfterSeconds: DAY_SECONDS,
  deadLetter: GIVEN_UP_QUEUE,
  // The database takes commits with a notification one at a time; who has queued something wakes its own workers instead.
  notify: false,
};

/**
 * Time for the queue's timers. It goes on evenly when the machine's clock is set: by that one, a clock set back by an
 * hour would make the workers sleep for an hour. When a job is due the database decides by its own clock.
 */
export const steadyClock: Clock = {
  now: () => performance.timeOrigin + performance.now(),
  setTimeout: (work, delayMs) => setTimeout(work, delayMs),
  clearTimeout: (timer) => clearTimeout(timer as NodeJS.Timeout),
  setInterval: (work, delayMs) => setInterval(work, delayMs),
  clearInterval: (timer) => clearInterval(timer as NodeJS.Timeout),
};

export interface DeliveryJob {
  readonly postId: string;
  /** The order in which posts were recorded; only with new ones. */
  readonly entryOrder?: number;
  /** When the delivery was first queued, in ISO 8601; only with one that was put off and got a new job. */
  readonly waitingSince?: string;
}

export interface JobSender {
  /** Queues the jobs in one statement, in the session's transaction. */
  send(session: SqlSession, jobs: readonly DeliveryJob[]): Promise<void>;
  /** To be called once jobs that were sent are committed: workers of this process look at once, others within a second. */
  committed(): void;
  /** @param hear is called after each commit of jobs @returns what ends it */
  onCommitted(hear: () => void): () => void;
  stop(): Promise<void>;
}

/** How pg-boss reaches the database. */
export interface QueueConnection {
  readonly db: Db;
  readonly backend: 'postgres' | 'pglite';
}

/** Failures behind the scenes, such as a lost connection during maintenance; pg-boss goes on by itself. */
export type BackgroundErrorListener = (error: Error) => void;

/** Brings pg-boss's own tables up to date, which may take long when there is much in them. */
export async function updateQueueTables(
  connection: QueueConnection,
  onBackgroundError: BackgroundErrorListener,
): Promise<void> {
  const boss = sendingBoss(connection, onBackgroundError);
  await boss.start();
  await boss.stop({ graceful: false });
}

function sendingBoss(connection: QueueConnection, onBackgroundError: BackgroundErrorListener): PgBoss {
  const boss = new PgBoss({
    ...connection,
    schema: QUEUE_SCHEMA,
    clock: steadyClock,
    supervise: false,
    schedule: false,
    registerInstance: false,
  });
  boss.on('error', (error) => onBackgroundError(asError(error)));
  return boss;
}

/** pg-boss also reports copies of errors. */
export function asError(error: unknown): Error {
  if (error instanceof Error) return error;
  const { message, ...others } = Object(error) as { message?: unknown };
  return Object.assign(new Error(String(message)), others);
}

/** How pg-boss reaches the session's transaction. */
function within(session: SqlSession): Db {
  const direct = directClient(session);
  if (!direct) return fromDrizzle(session as unknown as DrizzleTransactionLike, sql);
  return {
    executeSql: async (text, values = []) => ({ rows: await direct.unsafe(text, values as never[]) }),
  };
}

/** Sets up the queues (creating pg-boss's own tables if need be) and gives back what sends to them. */
export async function openJobSender(
  connection: QueueConnection,
  onBackgroundError: BackgroundErrorListener,
): Promise<JobSender> {
  const boss = sendingBoss(connection, onBackgroundError);
  await boss.start();
  const there = new Set((await boss.getQueues()).map(({ name }) => name));
  // Asked first, for to create what is there costs a start on the embedded database a tenth of its time.
  if (!there.has(GIVEN_UP_QUEUE))
    await boss.createQueue(GIVEN_UP_QUEUE, { retentionSeconds: 90 * DAY_SECONDS });
  if (!there.has(DELIVERY_QUEUE)) await boss.createQueue(DELIVERY_QUEUE, DELIVERY_SETTINGS);
  await boss.updateQueue(DELIVERY_QUEUE, DELIVERY_SETTINGS);
  // Fills pg-boss's memory of the queue now. Later it would do so in the middle of a transaction, and
  // with PGlite's one connection that transaction would wait for itself.
  await boss.findJobs(DELIVERY_QUEUE, { limit: 1 });
  const listeners = new Set<() => void>();
  return {
    async send(session, jobs) {
      if (jobs.length === 0) return;
      await boss.insert(
        DELIVERY_QUEUE,
        jobs.map((data) => ({ data })),
        { db: within(session) },
      );
    },
    committed() {
      // Whoever waits for the commit is answered first: to fetch the jobs takes a tenth of what an answer takes until then.
      setImmediate(() => {
        for (const hear of listeners) hear();
      });
    },
    onCommitted(hear) {
      listeners.add(hear);
      return () => void listeners.delete(hear);
    },
    stop: () => boss.stop({ graceful: false }),
  };
}
