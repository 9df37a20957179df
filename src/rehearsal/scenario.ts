/**
 * Scenario files: a team, its sprints and what people say in them. This module reads and checks the form of
 * a file; whether the bot takes what is in it is for the conversations to find out.
 */
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { isTimeOfDay, isTimeZone } from '../app/clock/local-time.ts';
import { DIRECTIONS, OUTCOMES } from '../app/experiments/experiment.ts';
import { isDay } from '../sprint/calendar.ts';
import { RATIO_IDS, type RatioId } from '../sprint/sprint-ratios.ts';
import type { Messages } from '../words/message-arguments.ts';
import { say } from '../words/say.ts';

const day = z.string().refine(isDay, { error: () => say('scenario-day') });
const time = z.string().refine(isTimeOfDay, { error: () => say('scenario-time') });
const word = z.string().min(1, { error: () => say('scenario-empty-text') });
const isWeekday = { error: () => say('scenario-weekday') };
const weekday = z.number(isWeekday).refine((value) => [1, 2, 3, 4, 5, 6, 7].includes(value), isWeekday);
const yes = z.literal(true, { error: () => say('scenario-true') });
const notEmpty = { error: () => say('scenario-empty-list') };
const timeZone = z.string().refine(isTimeZone, {
  error: ({ input }) => say('scenario-zone', { zone: String(input) }),
});

const card = z.object({
  key: word,
  title: z.string(),
  link: z.string().optional(),
  estimate: z.number(),
  owners: z.array(word).default([]),
});

const answer = z.object({
  card: word,
  worked: z.number().optional(),
  left: z.number(),
  surprise: z.number().optional(),
  note: z.string().optional(),
});

const event = z
  .object({
    on: day,
    by: word.optional(),
    answer: z.array(answer).min(1, notEmpty).optional(),
    pull: card.optional(),
    drop: z.object({ card: word, reason: z.string().default('') }).optional(),
    undrop: z.object({ card: word }).optional(),
    give: z.object({ card: word, to: z.array(word) }).optional(),
    reopen: z.object({ card: word }).optional(),
    blocked: z.object({ card: word, on: z.string().default('') }).optional(),
    moving: z.object({ card: word }).optional(),
    away: yes.optional(),
    off: z.object({ from: day, to: day.optional(), half: z.boolean().optional() }).optional(),
    cancel: yes.optional(),
    edit: z
      .object({
        card: word,
        title: z.string().optional(),
        link: z.string().optional(),
        key: z.string().optional(),
        estimate: z.number().optional(),
      })
      .optional(),
    extend: z
      .object({ endsOn: day.optional(), closesAt: time.optional() })
      .refine(({ endsOn, closesAt }) => endsOn !== undefined || closesAt !== undefined, {
        error: () => say('scenario-extend-nothing'),
      })
      .optional(),
    goalMet: z.enum(['yes', 'partly', 'no'], { error: () => say('scenario-goal-met') }).optional(),
    try: z
      .object({
        text: word,
        ratio: z.enum(RATIO_IDS as [RatioId, ...RatioId[]], {
          error: () => say('scenario-ratio', { ratios: RATIO_IDS }),
        }),
        direction: z.enum(DIRECTIONS, { error: () => say('scenario-direction') }),
      })
      .optional(),
    experiment: z
      // biome-ignore lint/suspicious/noThenProperty: the file’s own word; its value is never a function
      .object({ text: word, then: z.enum(OUTCOMES, { error: () => say('scenario-outcome') }) })
      .optional(),
  })
  .superRefine((value, context) => {
    const kinds = EVENT_KINDS.filter((kind) => value[kind] !== undefined);
    if (kinds.length === 0) context.addIssue(say('scenario-event-none', { kinds: EVENT_KINDS }));
    else if (kinds.length > 1) {
      context.addIssue(say('scenario-event-several', { kinds: EVENT_KINDS, found: kinds }));
    } else if (value.by === undefined && !OF_FACILITATOR.includes(kinds[0] ?? '')) {
      context.addIssue(say('scenario-event-nobody'));
    }
  });

const EVENT_KINDS = [
  'answer',
  'pull',
  'drop',
  'undrop',
  'give',
  'reopen',
  'blocked',
  'moving',
  'away',
  'off',
  'cancel',
  'edit',
  'extend',
  'goalMet',
  'try',
  'experiment',
] as const;

/** What a facilitator says, when nobody is named. */
const OF_FACILITATOR: readonly string[] = ['cancel', 'edit', 'extend', 'goalMet', 'try', 'experiment'];

const scenario = z
  .object({
    team: z.object({
      name: word,
      timeZone,
      promptAt: time.default('09:15'),
      closesAt: time.optional(),
      workingDays: z.array(weekday).min(1, notEmpty).default([1, 2, 3, 4, 5]),
      scale: z.array(z.number()).optional(),
      thresholds: z.record(z.string(), z.number()).default({}),
    }),
    members: z
      .array(z.object({ id: word, name: word, worksOn: z.array(weekday).min(1, notEmpty).optional() }))
      .min(1, notEmpty),
    roles: z
      .object({ facilitators: z.array(word).min(1, notEmpty).optional(), productOwner: word.optional() })
      .optional(),
    sprints: z
      .array(
        z.object({
          name: word,
          goal: z.string().default(''),
          startsOn: day,
          endsOn: day,
          closesAt: time.optional(),
          cards: z.array(card),
          events: z.array(event).default([]),
        }),
      )
      .min(1, notEmpty),
  })
  .superRefine(({ members }, context) => {
    const ids = members.map(({ id }) => id);
    const twice = ids.find((id, i) => ids.indexOf(id) !== i);
    if (twice !== undefined) context.addIssue(say('scenario-member-twice', { member: twice }));
  });

export type Scenario = z.infer<typeof scenario>;
export type ScenarioSprint = Scenario['sprints'][number];
export type ScenarioEvent = ScenarioSprint['events'][number];
export type ScenarioCard = z.infer<typeof card>;
export type ScenarioAnswer = z.infer<typeof answer>;

/** The file can't be played; `problems` says why, for the person who wrote it. */
export class ScenarioError extends Error {
  override readonly name = 'ScenarioError';
  readonly code = 'bad-scenario';
  readonly problems: readonly string[];

  constructor(source: string, problems: readonly string[], cause?: unknown) {
    super([say('scenario-refused', { file: source }), ...problems.map((one) => `- ${one}`)].join('\n'), {
      cause,
    });
    this.problems = problems;
  }
}

/** What is missing or of the wrong type; other problems have messages of their own. */
function wrongType({ code, expected, input }: { code?: string; expected?: unknown; input?: unknown }) {
  if (code !== 'invalid_type') return undefined;
  if (input === undefined) return say('scenario-missing');
  return say('scenario-type', { expected: expected as Messages['scenario-type']['expected'] });
}

/**
 * @param onUnread hears of fields that are not known and have no effect; they do not stop the play.
 * @throws ScenarioError with every problem found
 */
export function parseScenario(
  text: string,
  source: string,
  onUnread: (paths: readonly string[]) => void = () => undefined,
): Scenario {
  let json: unknown;
  try {
    // Some editors put a mark in front of the text.
    json = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (cause) {
    throw new ScenarioError(source, [say('scenario-no-json', { reason: (cause as Error).message })], cause);
  }
  const read = scenario.safeParse(json, { error: wrongType });
  if (read.success) {
    const unread = unreadFields(json, read.data);
    if (unread.length > 0) onUnread(unread);
    return read.data;
  }
  const problems = read.error.issues.map(({ path, message }) =>
    say('scenario-problem', { place: path.join('.') || say('scenario-whole-file'), problem: message }),
  );
  throw new ScenarioError(source, problems);
}

/** @throws ScenarioError, also when the file can't be read */
export async function readScenario(
  file: string | URL,
  onUnread?: (paths: readonly string[]) => void,
): Promise<Scenario> {
  const source = file instanceof URL ? file.pathname : file;
  const text = await readFile(file, 'utf8').catch((cause: unknown) => {
    throw new ScenarioError(
      source,
      [say('scenario-unreadable', { reason: (cause as Error).message })],
      cause,
    );
  });
  return parseScenario(text, source, onUnread);
}

/**
 * Finds the fields of a file that nobody reads, which are most often misspelled.
 *
 * @param given what was in the file.
 * @param read what was made of it; it lacks the fields that are not known.
 * @returns paths such as `sprints.0.events.3.answer.0.suprise`
 */
export function unreadFields(given: unknown, read: unknown, path: readonly string[] = []): string[] {
  if (typeof given !== 'object' || given === null || typeof read !== 'object' || read === null) return [];
  return Object.entries(given).flatMap(([name, value]) => {
    const here = [...path, name];
    return Object.hasOwn(read, name)
      ? unreadFields(value, (read as Record<string, unknown>)[name], here)
      : [here.join('.')];
  });
}
