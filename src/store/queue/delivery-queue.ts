/**
 * Works off the queued deliveries. Knows nothing of posts but their ids: what a delivery does, and
 * whether it was done before, is the handler's business, for a job may run twice (after a crash, or
 * when its process was too slow).
 */
import { type Job, type JobResult, type JobWithMetadata, PgBoss } from 'pg-boss';
import type { DeliveryOutcome } from '../../app/posting/deliver.ts';
import {
  asError,
  type BackgroundErrorListener,
  DELIVERY_QUEUE,
  type DeliveryJob,
  GIVEN_UP_QUEUE,
  QUEUE_SCHEMA,
  type QueueConnection,
  steadyClock,
} from './job-sender.ts';

interface DeliveryAttempt {
  /** True when a failure now is the last: the job then goes to those given up. */
  readonly isLast: boolean;
}

/**
 * Delivers a post, or says when to try again (which does not count as a failure: a rate limit, say). An
 * error means that it failed and should be tried again, later and later.
 */
export type DeliveryHandler = (postId: string, attempt: DeliveryAttempt) => Promise<DeliveryOutcome>;

export interface DeliveryQueue {
  /** Starts working in the background, until `stop`. */
  work(handler: DeliveryHandler): Promise<void>;
  /**
   * Works one delivery after the other, until nothing is due now; new posts in the order in which they were
   * recorded, then those to be brought up to date, except that of more than 200 in one transaction any 200 come first.
   * Deliveries that wait for a retry are left for later.
   *
   * @returns how many attempts were made.
   */
  drain(handler: DeliveryHandler): Promise<number>;
  /** Queues one delivery again with all its attempts, and forgets that it was given up. */
  queueAgain(postId: string): Promise<void>;
  /**
   * Stops working. Graceful: what is in hand is finished, within 20 seconds. What is not finished is
   * handed back and tried again within seconds, by any process that works then.
   */
  stop(options: { readonly graceful: boolean }): Promise<void>;
}

/** What the queue needs of a database. */
export interface QueueHost {
  readonly queueConnection: QueueConnection;
  /** @param hear is called after each commit of deliveries by this process @returns what ends it */
  onJobsCommitted(hear: () => void): () => void;
  readonly onBackgroundError: BackgroundErrorListener;
}

/** Deliveries at once in this process. */
const CONCURRENCY = 10;
const DRAIN_BATCH = 200;
const STOP_TIMEOUT_MS = 20_000;

/** An error without its baggage: job records are stored, and a client's error may carry a token. */
function plainError(error: unknown): { name: string; message: string; code: string | undefined } {
  const { name, message, code } = error as { name?: unknown; message?: unknown; code?: unknown };
  return {
    name: String(name ?? 'Error'),
    // A failed query names its parameters, and these may be anybody's id or words.
    message: String(message ?? error).replace(/\nparams:[\s\S]*$/, ''),
    code: code === undefined ? undefined : String(code),
  };
}

function inOrder(a: Job<DeliveryJob>, b: Job<DeliveryJob>): number {
  const [first, second] = [a, b].map(({ data }) => data.entryOrder ?? Number.MAX_VALUE) as [number, number];
  return first - second;
}

/** Starts the queue's upkeep: expired and failed deliveries come up again, old records are removed. */
export async function openQueue(host: QueueHost): Promise<DeliveryQueue> {
  const boss = new PgBoss({
    ...host.queueConnection,
    schema: QUEUE_SCHEMA,
    clock: steadyClock,
    registerInstance: false,
    // The sender has set up the tables.
    migrate: false,
    schedule: false,
    // A crashed process's deliveries are noticed this often, once they have expired.
    superviseIntervalSeconds: 15,
    monitorIntervalSeconds: 15,
    warningQueueSize: 100_000,
  });
  boss.on('error', (error) => host.onBackgroundError(asError(error)));
  await boss.start();
  let stopping = false;
  let draining: Promise<unknown> = Promise.resolve();
  let hearNoMore = (): void => undefined;

  /** Runs the handler; a delivery to be tried after a while gets a new job in place of this one. */
  async function attempt(handler: DeliveryHandler, job: JobWithMetadata<DeliveryJob>): Promise<void> {
    const outcome = await handler(job.data.postId, { isLast: job.retryCount >= job.retryLimit });
    if ('done' in outcome) return;
    // Before this job is completed: a crash in between doubles the job, which is harmless. The other
    // way round it would lose it.
    const startAfter = Math.max(1, Math.ceil(outcome.retryAfterMs / 1_000));
    const waitingSince = job.data.waitingSince ?? job.createdOn.toISOString();
    // The new job goes on counting where this one was, or what always fails would never be given up.
    const retryLimit = Math.max(0, job.retryLimit - job.retryCount);
    await boss.send(DELIVERY_QUEUE, { ...job.data, waitingSince }, { startAfter, retryLimit });
  }

  async function settleEach(
    handler: DeliveryHandler,
    jobs: readonly JobWithMetadata<DeliveryJob>[],
  ): Promise<JobResult[]> {
    return Promise.all(
      jobs.map(async (job): Promise<JobResult> => {
        try {
          await attempt(handler, job);
          return { id: job.id, status: 'completed' };
        } catch (error) {
          return { id: job.id, status: 'failed', output: plainError(error) };
        }
      }),
    );
  }

  async function drainAll(handler: DeliveryHandler): Promise<number> {
    let attempts = 0;
    while (!stopping) {
      const jobs = await boss.fetch<DeliveryJob>(DELIVERY_QUEUE, {
        batchSize: DRAIN_BATCH,
        includeMetadata: true,
      });
      if (jobs.length === 0) break;
      for (const job of jobs.sort(inOrder)) {
        if (stopping) {
          await boss.fail(DELIVERY_QUEUE, job as Job, { message: 'stopped before its turn' });
          continue;
        }
        attempts += 1;
        try {
          await attempt(handler, job);
          await boss.complete(DELIVERY_QUEUE, job as Job);
        } catch (error) {
          await boss.fail(DELIVERY_QUEUE, job as Job, plainError(error));
        }
      }
    }
    return attempts;
  }

  return {
    async work(handler) {
      const worker = await boss.work<DeliveryJob, unknown, { perJobResults: true; includeMetadata: true }>(
        DELIVERY_QUEUE,
        {
          perJobResults: true,
          includeMetadata: true,
          batchSize: CONCURRENCY,
          burstWhenBatchFull: true,
          // Finds what falls due, and what other processes queue and have no time for.
          pollingIntervalSeconds: 1,
        } as never,
        ((jobs: JobWithMetadata<DeliveryJob>[]) => settleEach(handler, jobs)) as never,
      );
      hearNoMore = host.onJobsCommitted(() => boss.notifyWorker(worker));
    },

    drain(handler) {
      const drained = draining.then(() => drainAll(handler));
      draining = drained.catch(() => undefined);
      return drained;
    },

    async queueAgain(postId) {
      // The new job first: a crash in between leaves two, which is harmless.
      await boss.send(DELIVERY_QUEUE, { postId } satisfies DeliveryJob);
      const given = await boss.findJobs<DeliveryJob>(GIVEN_UP_QUEUE, { queued: true, data: { postId } });
      if (given.length > 0)
        await boss.deleteJob(
          GIVEN_UP_QUEUE,
          given.map(({ id }) => id),
        );
    },

    async stop({ graceful }) {
      stopping = true;
      hearNoMore();
      await draining;
      await boss.stop({ graceful, timeout: STOP_TIMEOUT_MS });
    },
  };
}
