/**
 * The platform's limits on calls, as token buckets: one a method, and one a channel for posts.
 * Rates: docs.slack.dev/apis/web-api/rate-limits. Time is given as data.
 * Bursts: the platform tolerates some and does not say how many; here a minute's worth of calls to a method, and
 * POST_BURST posts in a row to one channel (our own reading).
 */

/** `history` is tier 3, or tier 1 for an app that is sold outside the platform's marketplace. */
export type Tier = 1 | 2 | 3 | 4 | 'post' | 'history' | 'none';

const CALLS_A_MINUTE: Record<Exclude<Tier, 'none'>, number> = {
  1: 1,
  2: 20,
  3: 50,
  4: 100,
  post: 300,
  history: 50,
};
const POSTS_A_CHANNEL_A_MINUTE = 60;
const POST_BURST = 5;

interface Bucket {
  tokens: number;
  atMs: number;
}

export class RateLimits {
  readonly #nowMs: () => number;
  readonly #scale: number;
  readonly #buckets = new Map<string, Bucket>();

  /** @param scale multiplies every rate and burst; Infinity switches the limits off. */
  constructor(nowMs: () => number, scale = 1) {
    this.#nowMs = nowMs;
    this.#scale = scale;
  }

  /**
   * Counts one call.
   * @param channelId for posts only
   * @returns undefined when the call may go on, else whole seconds for `Retry-After`. A refused call is not counted.
   */
  take(method: string, tier: Tier, channelId?: string): number | undefined {
    if (tier === 'none' || this.#scale === Number.POSITIVE_INFINITY) return undefined;
    const perMinute = CALLS_A_MINUTE[tier] * this.#scale;
    const wanted = [{ key: method, perMinute, burst: perMinute }];
    if (channelId !== undefined) {
      wanted.push({
        key: `${method} ${channelId}`,
        perMinute: POSTS_A_CHANNEL_A_MINUTE * this.#scale,
        burst: POST_BURST * this.#scale,
      });
    }
    const waitsMs = wanted.map((one) => this.#waitMs(one.key, one.perMinute, one.burst));
    const waitMs = Math.max(...waitsMs);
    if (waitMs > 0) return Math.max(1, Math.ceil(waitMs / 1000));
    for (const one of wanted) this.#bucket(one.key, one.perMinute, one.burst).tokens -= 1;
    return undefined;
  }

  #waitMs(key: string, perMinute: number, burst: number): number {
    const { tokens } = this.#bucket(key, perMinute, burst);
    return tokens >= 1 ? 0 : ((1 - tokens) * 60_000) / perMinute;
  }

  #bucket(key: string, perMinute: number, burst: number): Bucket {
    const nowMs = this.#nowMs();
    const bucket = this.#buckets.get(key) ?? { tokens: burst, atMs: nowMs };
    const gained = (Math.max(0, nowMs - bucket.atMs) * perMinute) / 60_000;
    bucket.tokens = Math.min(burst, bucket.tokens + gained);
    bucket.atMs = Math.max(nowMs, bucket.atMs);
    this.#buckets.set(key, bucket);
    return bucket;
  }
}

/**
 * A clock for the limits of a rehearsal: it moves on by the one that went further since the last look, the real or
 * the simulated time. So calls that lie a simulated day apart are a day apart, while a burst within one simulated
 * moment still has to keep to the limits in real time.
 */
export function limitsClock(realNowMs: () => number, simulatedNowMs: () => number): () => number {
  let real = realNowMs();
  let simulated = simulatedNowMs();
  let elapsedMs = 0;
  return () => {
    const [nextReal, nextSimulated] = [realNowMs(), simulatedNowMs()];
    elapsedMs += Math.max(0, nextReal - real, nextSimulated - simulated);
    [real, simulated] = [nextReal, nextSimulated];
    return elapsedMs;
  };
}
