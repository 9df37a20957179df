/**
 * What goes wrong, and when: drawn from the seed alone, before the run begins, so that the same seed brings the same
 * faults at the same moments. Knows nothing of how a fault is made.
 */
import { type SeededRandom, seededRandom } from './seeded-random.ts';

/** How a call of the bot to the platform goes wrong. */
export type ApiTrouble =
  | { readonly kind: 'slow-down'; readonly retryAfterSeconds: number }
  | { readonly kind: 'error-before' }
  | { readonly kind: 'error-after' }
  | { readonly kind: 'cut-before' }
  | { readonly kind: 'cut-after' }
  /** Carried out, but answered only when the caller has given up. */
  | { readonly kind: 'no-answer' }
  | { readonly kind: 'slow'; readonly delayMs: number };

/** How a request of the platform to the bot goes wrong. */
export type RequestTrouble =
  /** Delivered to two processes at once. */
  | 'twice'
  /** Carried out, but the answer is lost, and it is delivered once more to another process. */
  | 'again-after-lost-answer'
  /** Carried out, but the person sees an error. */
  | 'answer-lost'
  /** Later ones overtake it. */
  | 'overtaken';

type Fault =
  | { readonly kind: 'kill'; readonly bot: number; readonly downMs: number }
  | { readonly kind: 'stop'; readonly bot: number; readonly downMs: number }
  | { readonly kind: 'freeze'; readonly bot: number; readonly forMs: number }
  | { readonly kind: 'database-restart'; readonly how: 'orderly' | 'crash'; readonly downMs: number }
  | { readonly kind: 'database-cut' }
  | { readonly kind: 'database-half-close' }
  | { readonly kind: 'database-away'; readonly forMs: number }
  | { readonly kind: 'database-silent'; readonly forMs: number }
  | { readonly kind: 'database-slow'; readonly forMs: number; readonly delayMs: number }
  /** All connections end, and new ones lead to what is no primary any more, even when there is one again. */
  | { readonly kind: 'database-read-only'; readonly forMs: number }
  /** This share of all that writes finds no room. */
  | { readonly kind: 'database-full'; readonly forMs: number; readonly share: number }
  | {
      readonly kind: 'api';
      readonly forMs: number;
      readonly share: number;
      readonly methods: readonly string[];
      readonly trouble: ApiTrouble;
    }
  | {
      readonly kind: 'requests';
      readonly forMs: number;
      readonly share: number;
      readonly trouble: RequestTrouble;
    }
  /** `bot` undefined: all of them. */
  | {
      readonly kind: 'clock';
      readonly bot: number | undefined;
      readonly forMs: number;
      readonly aheadMs: number;
    };

export type ScheduledFault = Fault & { readonly atMs: number };

/** Mean time between two faults. */
const MEAN_GAP_MS = 2_000;
const HOUR_MS = 3_600_000;

type Maker = (random: SeededRandom, bots: number) => Fault;

/** Each fault with how often it comes, relative to the others. */
const MAKERS: readonly (readonly [weight: number, make: Maker])[] = [
  [4, (random, bots) => ({ kind: 'kill', bot: random.whole(0, bots - 1), downMs: random.whole(100, 4_000) })],
  [1, (random, bots) => ({ kind: 'stop', bot: random.whole(0, bots - 1), downMs: random.whole(100, 2_000) })],
  [
    1,
    (random, bots) => ({ kind: 'freeze', bot: random.whole(0, bots - 1), forMs: random.whole(500, 6_000) }),
  ],
  [
    1,
    (random) => ({
      kind: 'database-restart',
      how: random.pick(['orderly', 'crash'] as const),
      downMs: random.whole(0, 3_000),
    }),
  ],
  [2, () => ({ kind: 'database-cut' })],
  [1, () => ({ kind: 'database-half-close' })],
  [
    1,
    (random) => ({
      kind: 'database-away',
      // For long now and then: by then everybody has asked for it in vain, on each connection.
      forMs: random.chance(0.25) ? random.whole(10_000, 25_000) : random.whole(500, 4_000),
    }),
  ],
  [1, (random) => ({ kind: 'database-silent', forMs: random.whole(500, 5_000) })],
  [
    1,
    (random) => ({
      kind: 'database-slow',
      forMs: random.whole(1_000, 4_000),
      delayMs: random.whole(20, 200),
    }),
  ],
  [1, (random) => ({ kind: 'database-read-only', forMs: random.whole(500, 6_000) })],
  [
    1,
    (random) => ({
      kind: 'database-full',
      forMs: random.whole(1_000, 8_000),
      share: random.pick([0.1, 0.5, 1]),
    }),
  ],
  [10, apiFault],
  [
    4,
    (random) => ({
      kind: 'requests',
      forMs: random.whole(1_000, 5_000),
      share: random.pick([0.3, 0.6, 1]),
      trouble: random.pick([
        'twice',
        'twice',
        'again-after-lost-answer',
        'answer-lost',
        'overtaken',
      ] as const),
    }),
  ],
  [
    2,
    (random, bots) => ({
      kind: 'clock',
      bot: random.chance(0.3) ? undefined : random.whole(0, bots - 1),
      forMs: random.whole(1_000, 6_000),
      aheadMs: random.pick([HOUR_MS, HOUR_MS, -HOUR_MS]),
    }),
  ],
];

function apiFault(random: SeededRandom): Fault {
  const trouble = random.pick<ApiTrouble>([
    { kind: 'slow-down', retryAfterSeconds: random.whole(1, 4) },
    { kind: 'error-before' },
    { kind: 'error-after' },
    { kind: 'cut-before' },
    { kind: 'cut-after' },
    { kind: 'no-answer' },
    { kind: 'slow', delayMs: random.whole(200, 2_500) },
  ]);
  const methods = random.pick([
    ['chat.postMessage'],
    ['chat.postMessage', 'chat.update'],
    ['conversations.history', 'conversations.replies', 'conversations.open'],
    ['files.getUploadURLExternal', 'files.completeUploadExternal', 'files.info'],
    ['views.open', 'views.update', 'chat.postEphemeral'],
    [],
  ]);
  return {
    kind: 'api',
    forMs: random.whole(1_000, 8_000),
    share: random.pick([0.3, 0.7, 1]),
    methods,
    trouble,
  };
}

/** @param forMs how long faults may begin; @param bots how many processes there are */
export function faultSchedule(seed: number, forMs: number, bots: number): ScheduledFault[] {
  const random = seededRandom(seed);
  const all = MAKERS.reduce((sum, [weight]) => sum + weight, 0);
  const faults: ScheduledFault[] = [];
  for (let atMs = 1_000; ; ) {
    atMs += Math.round(MEAN_GAP_MS * (0.25 + 1.5 * random.next()));
    if (atMs >= forMs) return faults;
    let left = random.next() * all;
    const [, make] =
      MAKERS.find(([weight]) => {
        left -= weight;
        return left < 0;
      }) ?? (MAKERS[0] as (typeof MAKERS)[number]);
    faults.push({ ...make(random, bots), atMs });
  }
}

/** A line for people: what it is, without when. */
export function faultWords(fault: Fault): string {
  const { kind, ...details } = fault as Fault & { atMs?: number };
  const { atMs: _, ...rest } = details as Record<string, unknown>;
  const words = Object.entries(rest).map(
    ([name, value]) => `${name}=${typeof value === 'object' ? JSON.stringify(value) : value}`,
  );
  return [kind, ...words].join(' ');
}
