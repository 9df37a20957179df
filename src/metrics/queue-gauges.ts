/**
 * What waits to be delivered, read from the database whenever the metrics are read. When the database does
 * not answer in time, the figures are NaN rather than repeated: an old age would look like a good one.
 */
import { Gauge, type Registry } from 'prom-client';

interface QueueState {
  /** Deliveries that wait, those put off included. */
  readonly waitingCount: number;
  /** How long the oldest of them has been waiting; 0 when none is. */
  readonly oldestSeconds: number;
  /** Deliveries set aside after they failed for the last time. */
  readonly givenUpCount: number;
  /** Posts that wait for a facilitator's yes. */
  readonly heldBackCount: number;
}

/** Less than the ten seconds after which a reader of the metrics gives up by default. */
const READ_LIMIT_MS = 3_000;

export function watchQueue(
  register: Registry,
  read: () => Promise<QueueState>,
  readLimitMs = READ_LIMIT_MS,
): void {
  let underWay: Promise<QueueState | undefined> | undefined;
  // All gauges are read at once, and share one look into the database.
  const shared = (): Promise<QueueState | undefined> => {
    underWay ??= within(readLimitMs, read)
      .catch(() => undefined)
      .finally(() => {
        underWay = undefined;
      });
    return underWay;
  };
  const gauge = (name: string, help: string, reading: (state: QueueState | undefined) => number) =>
    new Gauge({
      name: `loadline_${name}`,
      help,
      registers: [register],
      async collect() {
        this.set(reading(await shared()));
      },
    });
  gauge('database_up', '1 when the database answered while the metrics were read, else 0.', (state) =>
    state ? 1 : 0,
  );
  gauge(
    'queue_age_seconds',
    'How long the oldest undelivered post has been waiting; NaN without a database.',
    (state) => state?.oldestSeconds ?? Number.NaN,
  );
  gauge(
    'queue_posts',
    'Deliveries that wait, those put off included.',
    (state) => state?.waitingCount ?? Number.NaN,
  );
  gauge(
    'queue_given_up_posts',
    'Deliveries set aside after they failed for the last time.',
    (state) => state?.givenUpCount ?? Number.NaN,
  );
  gauge(
    'held_back_posts',
    'Posts that wait since another organisation reads their channel, until a facilitator says yes or moves the team.',
    (state) => state?.heldBackCount ?? Number.NaN,
  );
}

async function within<T>(limitMs: number, work: () => Promise<T>): Promise<T> {
  const { promise: tooLate, reject } = Promise.withResolvers<never>();
  const timer = setTimeout(() => reject(new Error('too late')), limitMs);
  try {
    return await Promise.race([work(), tooLate]);
  } finally {
    clearTimeout(timer);
  }
}
