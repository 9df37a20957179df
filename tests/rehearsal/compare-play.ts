/**
 * Holds a play against the independent reckoning and against what posts must be like; every difference is a
 * sentence. It decides nothing: a play without differences gives an empty list.
 */
import type { PlayedPost, PlayedSprint, PlayResult } from '../../src/rehearsal/play-result.ts';
import type { Scenario } from '../../src/rehearsal/scenario.ts';
import type { ReckonedSprint } from './independent-reckoning.ts';
import { reckon } from './independent-reckoning.ts';
import { wallClock } from './local-instants.ts';

/** Ratios may differ by rounding, nothing else may. */
const TOLERANCE = 1e-12;

const FAILED_TESTS: Record<string, string> = { keptShare: 'kept', surpriseRatio: 'surprise' };

export function differences(scenario: Scenario, played: PlayResult): string[] {
  const expected = reckon(scenario);
  const found: string[] = [];
  const check = (what: string, is: unknown, shouldBe: unknown): void => {
    if (!isSame(is, shouldBe)) found.push(`${what} is ${show(is)}, not ${show(shouldBe)}`);
  };
  const refused = played.refusals.map(({ event }) => JSON.stringify(event));
  const toRefuse = expected.refused.map((event) => JSON.stringify(event));
  for (const event of onlyIn(refused, toRefuse)) {
    const words = played.refusals.find((refusal) => JSON.stringify(refusal.event) === event)?.words;
    found.push(`refused without a reason: ${event}: ${words}`);
  }
  for (const event of onlyIn(toRefuse, refused)) found.push(`should have been refused: ${event}`);
  for (const { event, words } of played.refusals) {
    if (words.trim().length < 10) found.push(`refused without words: ${JSON.stringify(event)}`);
  }
  check('number of sprints', played.sprints.length, expected.sprints.length);
  for (const [i, reckoned] of expected.sprints.entries()) {
    const sprint = played.sprints[i];
    if (!sprint) continue;
    compareSprint(sprint, reckoned, (what, is, shouldBe) => check(`${sprint.name}: ${what}`, is, shouldBe));
    found.push(...promptProblems(sprint, reckoned, scenario));
  }
  for (const post of [...played.posts, ...played.sprints.flatMap(({ posts }) => posts)]) {
    found.push(...textProblems(post));
  }
  return found;
}

type Check = (what: string, is: unknown, shouldBe: unknown) => void;

function compareSprint(sprint: PlayedSprint, reckoned: ReckonedSprint, check: Check): void {
  for (const [name, value] of Object.entries(reckoned.numbers)) {
    const is = (sprint as unknown as Record<string, unknown>)[name];
    const isUndefined = typeof (is as { undefined?: unknown })?.undefined === 'string';
    check(name, isUndefined ? undefined : is === undefined ? 'missing' : is, value);
  }
  check('name', sprint.name, reckoned.sprint.name);
  check('state', sprint.state, reckoned.cancelled ? 'cancelled' : 'closed');
  check('last day', sprint.endsOn, reckoned.endsOn);
  check('goal', sprint.goalMet, reckoned.goalMet);
  check(
    'experiments',
    sprint.experiments.map(({ text }) => text),
    reckoned.experiments.map(({ text }) => text),
  );
  for (const [i, shouldBe] of reckoned.experiments.entries()) {
    for (const [part, is] of Object.entries(sprint.experiments[i] ?? {})) {
      const isUndefined = typeof is?.undefined === 'string';
      check(
        `experiment ${i}, ${part}`,
        isUndefined ? undefined : is,
        shouldBe[part as keyof typeof shouldBe],
      );
    }
  }
  check('verdict', sprint.verdict, reckoned.verdict);
  check('reopenable until', sprint.reopenableUntil, reckoned.reopenableUntil);
  check('failed tests', sprint.failedTests.map((id) => FAILED_TESTS[id] ?? id).sort(), reckoned.failed);
  for (const [part, crossed] of NOTES) {
    const hasNote = sprint.noteIds.some((id) => id.includes(part));
    check(`a note on ${crossed}`, hasNote, reckoned.crossed.includes(crossed));
  }
  check(
    'cards',
    sprint.cards.map(({ key }) => key),
    reckoned.cards.map(({ key }) => key),
  );
  for (const [i, card] of reckoned.cards.entries()) {
    const is = sprint.cards[i];
    if (!is) continue;
    const shouldBe: Partial<typeof is> = {
      title: card.title.trim().replaceAll(/\s+/g, ' '),
      link: card.link,
      origin: card.pulledIn ? 'pulled-in' : 'planned',
      estimatePoints: card.estimate / 2,
      workedPoints: card.worked / 2,
      leftPoints: card.left / 2,
      growthPoints: (card.surprise + card.drift) / 2,
      surprisePoints: card.surprise / 2,
      driftPoints: card.drift / 2,
      trueSizePoints: (card.worked + card.left) / 2,
      state: card.dropped ? 'dropped' : card.finished ? 'finished' : 'open',
    };
    for (const [name, value] of Object.entries(shouldBe)) {
      check(`${card.key} ${name}`, is[name as keyof typeof is], value);
    }
    check(`${card.key} owners`, [...is.owners].sort(), [...card.owners].sort());
  }
}

/** Parts of the ids of notes, and the threshold or habit that each belongs to. */
const NOTES = [
  ['pull-in', 'pull-in'],
  ['plan-share', 'plan-share'],
  ['accuracy-low', 'accuracy-low'],
  ['accuracy-high', 'accuracy-high'],
  ['carry-over', 'carry-over'],
  ['answer-rate', 'answers'],
] as const;

/** What is wrong with a sprint's prompts, reminders, last calls and verdict post. */
function promptProblems(sprint: PlayedSprint, reckoned: ReckonedSprint, { team }: Scenario): string[] {
  const found: string[] = [];
  const counts = new Map<string, number>();
  const count = (kind: string, member: string, day: string): void => {
    const key = `${kind} for ${member} on ${day}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
    if (counts.get(key) === 2) found.push(`${sprint.name}: a second ${key}`);
  };
  const prompted = new Set<string>();
  const called = new Set<string>();
  for (const post of sprint.posts) {
    if (post.onlyForThem || !('member' in post.to)) continue;
    const atMs = Date.parse(post.at);
    const [day = '', time] = wallClock(atMs, team.timeZone).split(' ');
    const first = post.earlierTexts[0] ?? post.text;
    const kind = KINDS.find(([, start]) => start.test(first))?.[0];
    if (!kind) continue;
    const key = `${post.to.member} ${day}`;
    count(kind, post.to.member, day);
    if (kind === 'prompt' || kind === 'list') {
      if ((kind === 'list') !== (day === reckoned.firstMorning)) {
        found.push(`${sprint.name}: ${kind} for ${key}`);
      }
      prompted.add(key);
      const dueMs = reckoned.prompts.get(key);
      if (dueMs === undefined) found.push(`${sprint.name}: no prompt was due for ${key} (${time})`);
      else if (dueMs !== atMs) {
        found.push(`${sprint.name}: prompt for ${key} at ${post.at}, not ${new Date(dueMs).toISOString()}`);
      }
    } else if (kind === 'last call') {
      called.add(key);
      if (!reckoned.lastCalls.has(key)) found.push(`${sprint.name}: no last call was due for ${key}`);
    } else if (reckoned.heard.has(key)) {
      found.push(`${sprint.name}: ${kind} for ${key}, who had spoken`);
    } else if (reckoned.idle.has(key)) {
      found.push(`${sprint.name}: ${kind} for ${key}, who has no open card: ${first.slice(0, 120)}`);
    }
    if (kind !== 'prompt' && reckoned.off.has(key))
      found.push(`${sprint.name}: ${kind} for ${key}, who is off`);
    if (!team.workingDays.includes(isoWeekday(day))) {
      found.push(`${sprint.name}: ${kind} for ${key}, a day off`);
    }
  }
  for (const [key, atMs] of reckoned.prompts) {
    if (!prompted.has(key)) {
      found.push(`${sprint.name}: no prompt for ${key} at ${new Date(atMs).toISOString()}`);
    }
  }
  for (const key of reckoned.lastCalls) {
    if (!called.has(key)) found.push(`${sprint.name}: no last call for ${key}`);
  }
  const verdicts = sprint.posts.filter(
    (post) => 'channel' in post.to && !post.onlyForThem && VERDICT.test(post.text.slice(sprint.name.length)),
  );
  const wanted = reckoned.cancelled ? 0 : 1;
  if (verdicts.length !== wanted) found.push(`${sprint.name}: ${verdicts.length} verdict posts`);
  for (const { at } of verdicts) {
    if (Date.parse(at) !== reckoned.closesAtMs) {
      found.push(`${sprint.name}: verdict at ${at}, not ${new Date(reckoned.closesAtMs).toISOString()}`);
    }
  }
  return found;
}

/** What follows the sprint's name on the first line of a verdict. */
const VERDICT = /^[^\n]*: (?:kept|missed|no plan)\b/;

const KINDS = [
  ['list', /^\w{3} \d{1,2} \w{3,4}: .* begins/],
  ['prompt', /^\w{3} \d{1,2} \w{3,4}: what is left/],
  ['reminder', /^Reminder:/],
  ['last call', /^Last call:/],
] as const;

function isoWeekday(day: string): number {
  return new Date(`${day}T00:00:00Z`).getUTCDay() || 7;
}

/** Signs that a value or a person's words got into a text as they should not. */
function textProblems(post: PlayedPost): string[] {
  const everywhere = [/\bundefined\b/, /\bNaN\b/, /\[object/, /\bInfinity\b/];
  return [
    ...[post.text, ...post.earlierTexts].flatMap((text) =>
      signsIn(text, [...everywhere, /<!(?:channel|here|everyone)/]),
    ),
    // An alternative text is plain, so nobody is called by it.
    ...post.altTexts.flatMap((text) => signsIn(text, everywhere)),
  ];
}

function signsIn(text: string, signs: readonly RegExp[]): string[] {
  return signs.filter((sign) => sign.test(text)).map((sign) => `${sign} in a post: ${text}`);
}

function onlyIn(these: readonly string[], those: readonly string[]): string[] {
  const rest = [...those];
  return these.filter((one) => {
    const at = rest.indexOf(one);
    if (at >= 0) rest.splice(at, 1);
    return at < 0;
  });
}

function isSame(is: unknown, shouldBe: unknown): boolean {
  if (typeof is === 'number' && typeof shouldBe === 'number') {
    return is === shouldBe || Math.abs(is - shouldBe) <= TOLERANCE * Math.max(1, Math.abs(shouldBe));
  }
  return JSON.stringify(is) === JSON.stringify(shouldBe);
}

function show(value: unknown): string {
  return value === undefined ? 'undefined' : JSON.stringify(value);
}
