/**
 * Every metric of the bot, with the functions that count. Only this room knows the metrics library.
 * No label may carry the id or name of a person, team, channel or workspace: a reader of the metrics is not
 * always somebody who may read the data.
 */
import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';

/** From a click to a form that took as long as the platform waits, and what was answered late. */
const REQUEST_BUCKETS_SECONDS = [0.01, 0.025, 0.05, 0.1, 0.2, 0.3, 0.5, 1, 2, 3, 5, 10, 30];
/** Prompts go out at the speed that the platform allows: seconds for a team, an hour for a very large install. */
const PROMPT_BUCKETS_SECONDS = [5, 15, 30, 60, 120, 300, 600, 1_800, 3_600, 14_400];
const CALL_BUCKETS_SECONDS = [0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30];

/** More kinds of error than this in one process: the rest is counted together, so that they don't each make a series. */
const MOST_CODES = 200;
const OTHER_CODE = 'other';
const CODE = /^[A-Za-z0-9][A-Za-z0-9_.-]{0,59}$/;

/** A prompt that reaches its member later than this after its time counts as late. */
export const LATE_AFTER_SECONDS = 300;

export type PostHow = 'new' | 'update';
type RequestOutcome = 'done' | 'refused' | 'failed';
export type MetPrompt = 'answered' | 'unchanged' | 'away';

interface BuildFacts {
  readonly version: string;
  readonly nodeVersion: string;
  readonly database: string;
}

export function createMetrics(build: BuildFacts) {
  const register = new Registry();
  const registers = [register];
  collectDefaultMetrics({ register });

  const counter = <Label extends string = never>(
    name: string,
    help: string,
    labelNames: readonly Label[] = [],
  ) => new Counter<Label>({ name: `loadline_${name}`, help, labelNames: [...labelNames], registers });
  const gauge = (name: string, help: string, labelNames: readonly string[] = []) =>
    new Gauge({ name: `loadline_${name}`, help, labelNames: [...labelNames], registers });
  const histogram = (name: string, help: string, buckets: number[], labelNames: readonly string[] = []) =>
    new Histogram({ name: `loadline_${name}`, help, buckets, labelNames: [...labelNames], registers });

  gauge('build_info', 'Always 1; the labels say what runs.', ['version', 'node', 'database']).set(
    { version: build.version, node: build.nodeVersion, database: build.database },
    1,
  );

  const takesIn = gauge(
    'database_takes_in',
    '0 while the database has no room, is read-only or has no connection left, else 1; as of the last look, at each tick.',
  );
  takesIn.set(1);

  const promptsDue = counter('prompts_due_total', 'Daily prompts whose time had come.');
  const promptsAsked = counter('prompts_asked_total', 'Daily prompts recorded and queued; each once.');
  const promptsSent = counter('prompts_sent_total', 'Daily prompts that reached their member.');
  const promptsLate = counter(
    'prompts_late_total',
    `Daily prompts that reached their member more than ${LATE_AFTER_SECONDS} s after the team's prompt time.`,
  );
  const promptDelay = histogram(
    'prompt_delay_seconds',
    "From the team's prompt time until the prompt reached its member.",
    PROMPT_BUCKETS_SECONDS,
  );
  const promptsAnswered = counter(
    'prompts_answered_total',
    'Daily prompts met, by how; an answer that is corrected counts again.',
    ['how'],
  );

  const postsDelivered = counter(
    'posts_delivered_total',
    'Posts sent (new) or brought up to date (update).',
    ['kind', 'how'],
  );
  const attemptsFailed = counter(
    'post_attempts_failed_total',
    "Attempts to deliver a post that did not succeed, by what is known of the post and the platform's code.",
    ['outcome', 'code'],
  );
  const attemptDuration = histogram(
    'post_attempt_duration_seconds',
    'One attempt to deliver a post, upload of its chart included.',
    CALL_BUCKETS_SECONDS,
    ['how'],
  );
  const retries = counter('delivery_retries_total', 'Deliveries put off to be tried again, by reason.', [
    'reason',
  ]);
  const dead = counter('posts_dead_total', 'Posts that will never be delivered, by reason.', ['reason']);

  const requestDuration = histogram(
    'request_duration_seconds',
    'From a request coming in until all of its work was done, by kind of request.',
    REQUEST_BUCKETS_SECONDS,
    ['kind'],
  );
  const requests = counter('requests_total', 'Requests from the platform, by kind and outcome.', [
    'kind',
    'outcome',
  ]);
  const refusals = counter('refusals_total', 'Refusals that people were shown, by code.', ['code']);
  const errors = counter('errors_total', 'Unexpected failures that people were shown, by code.', ['code']);
  const turnedAway = counter(
    'requests_turned_away_total',
    "Requests at the HTTP door that were not the platform's, by reason.",
    ['reason'],
  );

  const databaseErrors = counter('database_errors_total', 'Transactions that the database failed, by code.', [
    'code',
  ]);
  const transactionDuration = histogram(
    'transaction_duration_seconds',
    'Transactions, those that failed included.',
    [0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10],
  );
  const ticks = counter('clock_ticks_total', 'Ticks of the clock that does what is due, by outcome.', [
    'outcome',
  ]);
  const passed = counter(
    'passed_over_total',
    'Sprints, teams and imports for which the clock could not do what was due, at each try.',
  );
  const lastTick = gauge('clock_last_tick_timestamp_seconds', 'When a tick last ended well, in Unix time.');

  // So that a rate can be taken from the first event on, and an alert finds its series.
  for (const how of ['answered', 'unchanged', 'away']) promptsAnswered.inc({ how }, 0);
  for (const reason of ['refused', 'given-up']) dead.inc({ reason }, 0);
  for (const reason of ['failed', 'postponed']) retries.inc({ reason }, 0);
  for (const outcome of ['done', 'failed']) ticks.inc({ outcome }, 0);

  const codes = {
    attempt: boundedCodes(),
    refusal: boundedCodes(),
    error: boundedCodes(),
    database: boundedCodes(),
  };
  return {
    register,

    promptsRecorded(dueCount: number, askedCount: number): void {
      promptsDue.inc(dueCount);
      promptsAsked.inc(askedCount);
    },
    promptSent(delaySeconds: number | undefined): void {
      promptsSent.inc();
      if (delaySeconds === undefined) return;
      promptDelay.observe(Math.max(0, delaySeconds));
      if (delaySeconds > LATE_AFTER_SECONDS) promptsLate.inc();
    },
    promptMet: (how: MetPrompt): void => promptsAnswered.inc({ how }),

    postDelivered(kind: string, how: PostHow, durationSeconds: number): void {
      postsDelivered.inc({ kind, how });
      attemptDuration.observe({ how }, durationSeconds);
    },
    postAttemptFailed(how: PostHow, outcome: string, code: string, durationSeconds: number): void {
      attemptsFailed.inc({ outcome, code: codes.attempt(code) });
      attemptDuration.observe({ how }, durationSeconds);
      if (outcome === 'refused') dead.inc({ reason: 'refused' });
    },
    deliveryRetried: (reason: 'failed' | 'postponed'): void => retries.inc({ reason }),
    deliveryGivenUp: (): void => dead.inc({ reason: 'given-up' }),

    requestHandled(kind: string, outcome: RequestOutcome, durationSeconds: number): void {
      requests.inc({ kind, outcome });
      requestDuration.observe({ kind }, durationSeconds);
    },
    refused: (code: string): void => refusals.inc({ code: codes.refusal(code) }),
    failed: (code: string): void => errors.inc({ code: codes.error(code) }),
    turnedAway: (reason: string): void => turnedAway.inc({ reason }),

    databaseFailed: (code: string): void => databaseErrors.inc({ code: codes.database(code) }),
    databaseLooked: (isTakingIn: boolean): void => takesIn.set(isTakingIn ? 1 : 0),
    transactionEnded: (durationSeconds: number): void => transactionDuration.observe(durationSeconds),

    passedOver: (): void => passed.inc(),
    ticked(isGood: boolean, atSeconds: number): void {
      ticks.inc({ outcome: isGood ? 'done' : 'failed' });
      if (isGood) lastTick.set(atSeconds);
    },
  };
}

export type Metrics = ReturnType<typeof createMetrics>;

/** Makes codes fit to be a label: short, plain, and of a bounded number. One for each metric, for it remembers them. */
function boundedCodes(): (code: string) => string {
  const known = new Set<string>();
  return (code) => {
    if (known.has(code)) return code;
    if (!CODE.test(code) || known.size >= MOST_CODES) return OTHER_CODE;
    known.add(code);
    return code;
  };
}
