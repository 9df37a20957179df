/**
 * Judges a run by its evidence: each due prompt asked exactly once, each acknowledged answer stored once, each verdict
 * posted once and up to date, reminders and last calls once at most, conservation for every card, nothing left undone.
 * Reckons by itself and uses none of the bot's rules.
 */
import type { Act } from './act.ts';
import type { AnswerRow, Evidence, PostRow } from './evidence.ts';

export interface Finding {
  /** Which rule was broken. */
  readonly rule: string;
  readonly what: string;
}

type Rule = (evidence: Evidence) => string[];

const RULES: Readonly<Record<string, Rule>> = {
  'no post is there twice': doubledPosts,
  'each due prompt is asked exactly once': prompts,
  'no reminder or last call twice': repeatedCalls,
  'each closed sprint has one verdict, up to date': verdicts,
  'each acknowledged answer is stored once': acknowledgedAnswers,
  'no answer is stored twice': repeatedAnswers,
  'what else was acknowledged is there': acknowledgedActs,
  'nobody is told that nothing was recorded when it was': untrueWords,
  'conservation holds': conservation,
  'nothing is left undone': unfinished,
  'no process ends by itself': ({ deaths }) => [...deaths],
};

export function audit(evidence: Evidence): Finding[] {
  return Object.entries(RULES).flatMap(([rule, broken]) => broken(evidence).map((what) => ({ rule, what })));
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  return Map.groupBy(items, keyOf);
}

function doubledPosts({ messages, posts }: Evidence): string[] {
  const kinds = new Map(posts.map(({ id, kind }) => [id, kind]));
  return [...groupBy(messages, ({ key }) => key)].flatMap(([key, standing]) => [
    ...(standing.length > 1
      ? [
          `${kinds.get(key)} ${key} stands ${standing.length} times: ${standing.map(({ ts }) => ts).join(', ')}`,
        ]
      : []),
    ...(kinds.has(key) ? [] : [`a message carries the key ${key}, which no post has`]),
  ]);
}

function prompts({ prompts, posts, messages, duePrompts }: Evidence): string[] {
  const keyOf = (of: { sprintId: string; userId: string; day: string }) =>
    `${of.sprintId} ${of.userId} ${of.day}`;
  const known = new Set(prompts.map(keyOf));
  const postOf = new Map(posts.map((post) => [post.id, post]));
  const posted = new Set(messages.map(({ key }) => key));
  const asking = groupBy(
    posts.filter(({ kind }) => kind === 'daily-prompt'),
    ({ sprintId, userId, day }) => `${sprintId} ${userId} ${day}`,
  );
  return [
    ...duePrompts.filter((due) => !known.has(keyOf(due))).map((due) => `never asked: ${keyOf(due)}`),
    ...[...asking].flatMap(([key, all]) => (all.length > 1 ? [`asked ${all.length} times: ${key}`] : [])),
    ...prompts.flatMap((prompt) => {
      // Somebody who answers unasked has a prompt without a post.
      if (prompt.postId === undefined) return [];
      const post = postOf.get(prompt.postId);
      if (!post) return [`without its post: ${keyOf(prompt)}`];
      // Held up until its day had passed, it is not asked any more.
      if (post.state === 'skipped')
        return posted.has(post.id) ? [`skipped, yet it is there: ${keyOf(prompt)}`] : [];
      return posted.has(post.id)
        ? []
        : [`recorded and not on the platform (${post.state}): ${keyOf(prompt)}`];
    }),
  ];
}

function repeatedCalls({ posts }: Evidence): string[] {
  const calls = posts.filter(({ kind }) => kind === 'reminder' || kind === 'last-call');
  return [
    ...groupBy(calls, ({ kind, sprintId, userId, day }) => `${kind} ${sprintId} ${userId} ${day}`),
  ].flatMap(([key, all]) => (all.length > 1 ? [`${all.length} times: ${key}`] : []));
}

function verdicts({ sprints, posts, messages }: Evidence): string[] {
  const textOf = new Map(messages.map(({ key, text }) => [key, text]));
  return sprints
    .filter(({ state }) => state === 'closed')
    .flatMap(({ id, name }) => {
      const about = posts.filter((post) => post.kind === 'verdict' && post.sprintId === id);
      const [verdict] = about;
      if (!verdict || about.length > 1) return [`${name} has ${about.length} verdicts`];
      const text = textOf.get(verdict.id);
      if (text === undefined) return [`the verdict of ${name} was not posted (${verdict.state})`];
      if (verdict.shouldSay === undefined || saysTheSame(text, verdict.shouldSay)) return [];
      return [
        `the verdict of ${name} is out of date. It says:\n${text}\nIt should say:\n${verdict.shouldSay}`,
      ];
    });
}

/** Lines that depend on the hour or on the chart's own words, or say how much was cut off. */
const PASSING = /^(Chart:|Buttons:|The message itself has|.*Next: )/;

/** Whether two texts of a post hold the same numbers; a longer description of its chart cuts one of them short. */
function saysTheSame(one: string, other: string): boolean {
  const [mine, theirs] = [one, other].map((text) => text.split('\n').filter((line) => !PASSING.test(line)));
  if (!mine || !theirs) return false;
  const both = Math.min(mine.length, theirs.length);
  return both > 0 && mine.slice(0, both).join('\n') === theirs.slice(0, both).join('\n');
}

/** Rows that say what somebody said of that card on that day. */
function rowsOf(act: Act, answers: readonly AnswerRow[]): AnswerRow[] {
  return answers.filter(
    (row) =>
      row.userId === act.userId &&
      row.day === act.day &&
      row.sprintId === act.sprintId &&
      (act.cardId === undefined || row.cardId === act.cardId) &&
      row.leftPoints === act.leftPoints &&
      row.workedPoints === act.workedPoints,
  );
}

const actWords = ({
  id,
  kind,
  userId,
  day,
  leftPoints,
  workedPoints,
  words,
  tries,
  lastWords,
}: Act): string =>
  `${kind} ${id} by ${userId} on ${day} (${
    kind === 'answer' ? `left ${leftPoints}, worked ${workedPoints}` : (words ?? '')
  }; ${tries} tries; told: ${lastWords.slice(0, 160)})`;

function acknowledgedAnswers({ acts, answers }: Evidence): string[] {
  return acts
    .filter(({ kind, state }) => kind === 'answer' && state === 'acknowledged')
    .filter((act) => rowsOf(act, answers).length === 0)
    .map((act) => `lost: ${actWords(act)}`);
}

function repeatedAnswers({ acts, answers }: Evidence): string[] {
  const byId = new Map(answers.map((row) => [row.id, row]));
  const same = (a: AnswerRow, b: AnswerRow): boolean =>
    a.leftPoints === b.leftPoints &&
    a.workedPoints === b.workedPoints &&
    a.surprisePoints === b.surprisePoints;
  return [
    ...answers.flatMap((row) => {
      const before = row.supersedesId === undefined ? undefined : byId.get(row.supersedesId);
      return before && same(before, row) ? [`${row.id} corrects ${before.id} and says the same`] : [];
    }),
    ...acts
      .filter(({ kind }) => kind === 'answer')
      .flatMap((act) => {
        // In words, the same numbers may be meant for another card on another try.
        const stored = act.cardId === undefined ? 0 : rowsOf(act, answers).length;
        const said = acts.filter((other) => saysTheSameOf(other, act)).length;
        return stored > said ? [`stored ${stored} times: ${actWords(act)}`] : [];
      }),
  ];
}

/** Words name a card by its place in a list, so that they may mean any. */
function saysTheSameOf(other: Act, act: Act): boolean {
  return (
    other.kind === 'answer' &&
    other.userId === act.userId &&
    other.day === act.day &&
    other.leftPoints === act.leftPoints &&
    other.workedPoints === act.workedPoints &&
    (other.cardId === undefined || other.cardId === act.cardId)
  );
}

function acknowledgedActs({ acts, cards, prompts, sprints }: Evidence): string[] {
  const isThere = ({ kind, userId, day, sprintId, words }: Act): boolean => {
    switch (kind) {
      case 'pull':
        return cards.some(({ title }) => title === words);
      case 'drop':
        return cards.some(({ dropReason }) => dropReason === words);
      case 'plan':
        return sprints.some(({ name }) => name === words);
      case 'unchanged':
      case 'away':
        return prompts.some(
          (one) =>
            one.sprintId === sprintId && one.userId === userId && one.day === day && one.state !== 'asked',
        );
      default:
        return true;
    }
  };
  return acts
    .filter((act) => act.state === 'acknowledged' && !isThere(act))
    .map((act) => `lost: ${actWords(act)}`);
}

function untrueWords({ acts, answers, cards }: Evidence): string[] {
  return acts
    .filter(({ state }) => state === 'denied')
    .filter((act) => {
      if (act.kind === 'answer') return rowsOf(act, answers).length > 0;
      if (act.kind === 'pull') return cards.some(({ title }) => title === act.words);
      if (act.kind === 'drop') return cards.some(({ dropReason }) => dropReason === act.words);
      return false;
    })
    .map(actWords);
}

/**
 * For each closed sprint the posted sums must be those of its cards: what was worked, the surprise work that was named,
 * and a drift that makes estimate + surprise + drift = worked + left.
 */
function conservation({ sprints, cards, answers }: Evidence): string[] {
  const inForce = answersInForce(answers);
  return sprints.flatMap(({ id, name, state, result }) => {
    // The sums of a reopened sprint are of its last closing; what was answered since is not in them.
    if (!result || state === 'open') return [];
    const own = cards.filter(({ sprintId }) => sprintId === id);
    const ownIds = new Set(own.map((card) => card.id));
    const given = inForce.filter(({ cardId }) => ownIds.has(cardId));
    const estimates = (origin: string): number =>
      sum(own.filter((card) => card.origin === origin).map(({ estimatePoints }) => estimatePoints));
    const left = sum(
      own.map(
        (card) => given.findLast(({ cardId }) => cardId === card.id)?.leftPoints ?? card.estimatePoints,
      ),
    );
    const worked = sum(given.map(({ workedPoints }) => workedPoints ?? 0));
    const surprisePoints = sum(
      own.map((card) =>
        surpriseOf(
          card.estimatePoints,
          given.filter(({ cardId }) => cardId === card.id),
        ),
      ),
    );
    const [commitmentPoints, pulledInPoints] = [estimates('planned'), estimates('pulled-in')];
    const expected = {
      commitmentPoints,
      pulledInPoints,
      surprisePoints,
      driftPoints: worked + left - commitmentPoints - pulledInPoints - surprisePoints,
      workedPoints: worked,
      loadPoints: commitmentPoints + pulledInPoints + surprisePoints,
    };
    return Object.entries(expected).flatMap(([field, value]) => {
      const stored = Number(result[field as keyof typeof result]);
      return stored === value ? [] : [`${field} of ${name} is ${stored}, and its cards add up to ${value}`];
    });
  });
}

/**
 * Of what was said to be surprise work, what can be: a correction of an earlier answer, or a co-owner's, may since have
 * taken away the growth that it was part of.
 */
function surpriseOf(estimatePoints: number, given: readonly AnswerRow[]): number {
  let [left, surprise] = [estimatePoints, 0];
  for (const answer of given) {
    const worked = answer.workedPoints ?? Math.max(0, left - answer.leftPoints);
    const growth = worked + answer.leftPoints - left;
    const most = Math.max(0, growth);
    const least = growth < 0 ? Math.max(growth, -surprise) : 0;
    surprise += Math.min(most, Math.max(least, answer.surprisePoints));
    left = answer.leftPoints;
  }
  return surprise;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}

/** By day; within a day a correction takes the place of the answer that it corrects. */
function answersInForce(answers: readonly AnswerRow[]): AnswerRow[] {
  const superseded = new Set(answers.map(({ supersedesId }) => supersedesId));
  const byId = new Map(answers.map((row) => [row.id, row]));
  const firstOrder = (row: AnswerRow): number => {
    const before = row.supersedesId === undefined ? undefined : byId.get(row.supersedesId);
    return before ? firstOrder(before) : row.order;
  };
  return answers
    .filter(({ id }) => !superseded.has(id))
    .sort((a, b) => a.day.localeCompare(b.day) || firstOrder(a) - firstOrder(b));
}

function unfinished({ posts, jobs }: Evidence): string[] {
  const isDone = ({ state, sentVersion, wantedVersion }: PostRow): boolean =>
    state === 'skipped' || (state === 'sent' && sentVersion === wantedVersion);
  return [
    ...posts
      .filter((post) => !isDone(post))
      .map(
        ({ kind, id, state, sentVersion, wantedVersion, lastError }) =>
          `${kind} ${id} is ${state}, version ${sentVersion} of ${wantedVersion}${lastError ? `, after ${lastError}` : ''}`,
      ),
    ...jobs
      .filter(({ queue, state }) => state !== 'failed' || queue !== 'delivery')
      .map(({ queue, state, count }) => `${count} deliveries are ${state} in ${queue}`),
  ];
}
