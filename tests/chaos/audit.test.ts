/** The auditor of chaos runs finds what it is there to find: each fault planted by itself into evidence without fault. */
import { describe, expect, it } from 'vitest';
import type { Act } from './act.ts';
import { audit } from './audit.ts';
import type { Evidence } from './evidence.ts';

const DAY = '2026-01-05';
const SPRINT = 's1';

const ANSWER = {
  id: 'a1',
  cardId: 'c1',
  sprintId: SPRINT,
  userId: 'U0BEN',
  day: DAY,
  order: 1,
  workedPoints: 2,
  leftPoints: 4,
  surprisePoints: 0.5,
  supersedesId: undefined,
} as const;

const ACT: Act = {
  id: 1,
  kind: 'answer',
  userId: 'U0BEN',
  channelId: 'C1',
  day: DAY,
  sprintId: SPRINT,
  cardId: 'c1',
  leftPoints: 4,
  workedPoints: 2,
  state: 'acknowledged',
  tries: 1,
  lastWords: 'the form closed',
};

function post(id: string, kind: string, more: Partial<Evidence['posts'][number]> = {}) {
  return {
    id,
    kind,
    sprintId: SPRINT,
    userId: 'U0BEN',
    day: DAY,
    state: 'sent',
    wantedVersion: 1,
    sentVersion: 1,
    lastError: undefined,
    shouldSay: undefined,
    ...more,
  };
}

const VERDICT = post('p-verdict', 'verdict', { userId: undefined, day: undefined, shouldSay: 'Kept.' });

/** A sprint of one card of 5 points that grew by one, asked about, answered and closed. */
const FAULTLESS: Evidence = {
  messages: [
    { key: 'p-prompt', channelId: 'D0BEN', ts: '1.1', text: 'What is left?' },
    { key: 'p-reminder', channelId: 'D0BEN', ts: '1.2', text: 'Reminder' },
    { key: 'p-verdict', channelId: 'C1', ts: '1.3', text: 'Kept.' },
  ],
  posts: [post('p-prompt', 'daily-prompt'), post('p-reminder', 'reminder'), VERDICT],
  prompts: [{ sprintId: SPRINT, userId: 'U0BEN', day: DAY, state: 'answered', postId: 'p-prompt' }],
  answers: [ANSWER],
  cards: [
    {
      id: 'c1',
      sprintId: SPRINT,
      title: 'Tide table',
      estimatePoints: 5,
      origin: 'planned',
      dropReason: undefined,
    },
  ],
  sprints: [
    {
      id: SPRINT,
      name: 'Tugboats 1',
      channelId: 'C1',
      state: 'closed',
      result: {
        commitmentPoints: 5,
        pulledInPoints: 0,
        surprisePoints: 0.5,
        driftPoints: 0.5,
        workedPoints: 2,
        loadPoints: 5.5,
      },
    },
  ],
  jobs: [],
  acts: [ACT],
  duePrompts: [{ sprintId: SPRINT, userId: 'U0BEN', day: DAY }],
  deaths: [],
};

const firstMessage = FAULTLESS.messages[0] as Evidence['messages'][number];

const PLANTED: readonly (readonly [fault: string, rule: string, evidence: Partial<Evidence>])[] = [
  [
    'a doubled prompt',
    'no post is there twice',
    { messages: [...FAULTLESS.messages, { ...firstMessage, ts: '9.9' }] },
  ],
  [
    'a message that no post accounts for',
    'no post is there twice',
    { messages: [...FAULTLESS.messages, { ...firstMessage, key: 'nobody' }] },
  ],
  ['a prompt that was never recorded', 'each due prompt is asked exactly once', { prompts: [] }],
  [
    'a prompt that never reached the platform',
    'each due prompt is asked exactly once',
    { messages: FAULTLESS.messages.slice(1) },
  ],
  [
    'two prompts for one day',
    'each due prompt is asked exactly once',
    {
      posts: [...FAULTLESS.posts, post('p-again', 'daily-prompt')],
      messages: [...FAULTLESS.messages, { ...firstMessage, key: 'p-again' }],
    },
  ],
  [
    'a second reminder',
    'no reminder or last call twice',
    { posts: [...FAULTLESS.posts, post('p-again', 'reminder')] },
  ],
  [
    'a missing verdict',
    'each closed sprint has one verdict, up to date',
    { posts: FAULTLESS.posts.slice(0, 2) },
  ],
  [
    'a second verdict',
    'each closed sprint has one verdict, up to date',
    { posts: [...FAULTLESS.posts, { ...VERDICT, id: 'p-again' }] },
  ],
  [
    'a verdict that says what was true before',
    'each closed sprint has one verdict, up to date',
    { posts: [...FAULTLESS.posts.slice(0, 2), { ...VERDICT, shouldSay: 'Missed.' }] },
  ],
  ['a lost answer', 'each acknowledged answer is stored once', { answers: [{ ...ANSWER, leftPoints: 5 }] }],
  [
    'an answer that was stored twice',
    'no answer is stored twice',
    { answers: [ANSWER, { ...ANSWER, id: 'a2', order: 2, supersedesId: 'a1' }] },
  ],
  [
    'a card that was acknowledged and is not there',
    'what else was acknowledged is there',
    { acts: [{ ...ACT, kind: 'pull', words: 'Pulled 1' }] },
  ],
  [
    'an answer that is there though its member was told otherwise',
    'nobody is told that nothing was recorded when it was',
    { acts: [{ ...ACT, state: 'denied' }] },
  ],
  [
    'posted sums that are not those of the cards',
    'conservation holds',
    { answers: [{ ...ANSWER, surprisePoints: 1 }] },
  ],
  [
    'a post that waits for ever',
    'nothing is left undone',
    { posts: [...FAULTLESS.posts.slice(0, 2), { ...VERDICT, wantedVersion: 2 }] },
  ],
  [
    'a delivery that waits for ever',
    'nothing is left undone',
    { jobs: [{ queue: 'delivery', state: 'retry', count: 1 }] },
  ],
  [
    'a delivery that was given up',
    'nothing is left undone',
    { jobs: [{ queue: 'delivery-given-up', state: 'created', count: 1 }] },
  ],
  ['a process that died of its own', 'no process ends by itself', { deaths: ['bot 1'] }],
];

describe('the auditor', () => {
  it('holds the sums of a reopened sprint to nothing before it closes again', () => {
    const [sprint] = FAULTLESS.sprints as [Evidence['sprints'][number]];
    const answers = [{ ...ANSWER, surprisePoints: 1 }];
    const conservation = (state: string) =>
      audit({ ...FAULTLESS, answers, sprints: [{ ...sprint, state }] }).some(
        ({ rule }) => rule === 'conservation holds',
      );
    expect([conservation('open'), conservation('closed'), conservation('cancelled')]).toEqual([
      false,
      true,
      true,
    ]);
  });

  it('finds nothing where nothing is wrong', () => {
    expect(audit(FAULTLESS)).toEqual([]);
  });

  it.each(PLANTED)('finds %s', (_fault, rule, change) => {
    expect(audit({ ...FAULTLESS, ...change }).map((finding) => finding.rule)).toContain(rule);
  });

  it('accepts a verdict that differs only in the hour and the words of its chart', () => {
    const text = (chart: string, next: string) => `Missed.\n${chart}\nLoad 12.\nMon to Wed. Next: ${next}`;
    const verdict = { ...VERDICT, shouldSay: text('Chart: –', 'plan.') };
    const posted = (said: string) => ({
      posts: [...FAULTLESS.posts.slice(0, 2), verdict],
      messages: [
        ...FAULTLESS.messages.slice(0, 2),
        { key: 'p-verdict', channelId: 'C1', ts: '1.3', text: said },
      ],
    });
    expect(audit({ ...FAULTLESS, ...posted(text('Chart: 3 of 5.', 'reopen until Thu.')) })).toEqual([]);
    expect(audit({ ...FAULTLESS, ...posted(text('Chart: –', 'plan.').replace('12', '13')) })).toHaveLength(1);
  });

  it('accepts a missing prompt that was held up until its day had passed, unless it was posted anyway', () => {
    const posts = [
      post('p-prompt', 'daily-prompt', { state: 'skipped', sentVersion: 0 }),
      ...FAULTLESS.posts.slice(1),
    ];
    const messages = FAULTLESS.messages.slice(1);
    expect(audit({ ...FAULTLESS, posts, messages })).toEqual([]);
    expect(audit({ ...FAULTLESS, posts }).map(({ rule }) => rule)).toEqual([
      'each due prompt is asked exactly once',
    ]);
  });
});
