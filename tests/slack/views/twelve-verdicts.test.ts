/** Twelve sprints with a cause that was planted: the verdict leads with it, and says nothing that a coach would deny. */
import { describe, expect, it } from 'vitest';
import type { RecordedFact } from '../../../src/app/team/team.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import { retroMessage } from '../../../src/slack/views/retro-message.ts';
import type { WorkTime } from '../../../src/sprint/evidence.ts';
import { ANA, BEN, card, fact, retroOf, verdictOf } from './view-examples.ts';

// The sprint's working days: Mon 2 to Fri 13 November 2026.
type Said = [
  card: number,
  november: number,
  left: number,
  more?: { worked?: number; surprise?: number; note?: string },
];

interface Crafted {
  /** Estimates of the committed cards, 1 for the first. */
  readonly planned: readonly number[];
  /** Cards that came later: their numbers go on. */
  readonly pulledIn?: readonly (readonly [estimate: number, november: number])[];
  readonly said?: readonly Said[];
  readonly dropped?: readonly (readonly [card: number, november: number])[];
  readonly blocked?: readonly (readonly [card: number, november: number])[];
  readonly time?: WorkTime;
}

const november = (day: number): string => `2026-11-${String(day).padStart(2, '0')}`;

function crafted({ planned, pulledIn = [], said = [], dropped = [], blocked = [], time }: Crafted) {
  const cards = [
    ...planned.map((estimatePoints, i) => card(i + 1, { estimatePoints })),
    ...pulledIn.map(([estimatePoints, day], i) =>
      card(planned.length + i + 1, { estimatePoints, origin: 'pulled-in', enteredOn: november(day) }),
    ),
  ];
  let order = 0;
  const next = (cardNumber: number, day: number) => {
    order += 1;
    return { order, cardId: `card-${cardNumber}`, day: november(day) };
  };
  const answers = said.map(([number, day, leftPoints, { worked, surprise = 0, note = '' } = {}]) => {
    const { order: at, ...about } = next(number, day);
    return fact(at, { ...about, leftPoints, workedPoints: worked, surprisePoints: surprise, note });
  });
  const other = (kind: 'drop' | 'blocked', number: number, day: number): RecordedFact => {
    const { order: at, ...about } = next(number, day);
    const { workedPoints, leftPoints, surprisePoints, ...rest } = fact(at, about) as RecordedFact & {
      kind: 'answer';
    };
    return { ...rest, kind };
  };
  const facts = [
    ...answers,
    ...dropped.map(([number, day]) => other('drop', number, day)),
    ...blocked.map(([number, day]) => other('blocked', number, day)),
  ];
  const verdict = verdictOf(cards, facts, {}, time);
  return {
    leadingNoteId: verdict.leadingNoteId,
    post: postMessage({ kind: 'verdict', verdict }).text,
    retro: retroMessage(retroOf(cards, facts, {}, verdict)).text,
    thread: (['verdict-numbers', 'verdict-cards', 'verdict-notes'] as const)
      .map((kind) => postMessage({ kind, verdict }).text)
      .join('\n'),
  };
}

const SPRINTS: Readonly<Record<string, [Crafted, leadingNoteId: string, phrase: string]>> = {
  'one large card': [
    {
      planned: [13, 3, 3, 2, 5],
      said: [
        [2, 3, 0],
        [3, 5, 0],
        [4, 6, 0],
        [5, 10, 0],
        [1, 11, 5.5, { worked: 11, surprise: 3.5 }],
        [1, 12, 2],
      ],
    },
    'kept-share-low',
    'All that stayed unfinished is one card, LP-1 Card 1: 2 points left, after 3.5 points of surprise work.',
  ],
  'many open cards': [
    {
      planned: [3, 3, 3, 3, 3, 3],
      said: [[1, 5, 0], ...[2, 3, 4, 5, 6].map((number): Said => [number, 12, 2])],
    },
    'kept-share-low',
    '5 of 6 committed cards were still open on the last morning.',
  ],
  'late pull-ins': [
    {
      planned: [5, 5, 5, 5],
      pulledIn: [
        [3, 12],
        [3, 12],
      ],
      said: [
        [1, 4, 0],
        [2, 6, 0],
        [3, 11, 0],
        [4, 13, 0],
        [5, 13, 0],
      ],
    },
    'pull-in-ratio-high',
    '6 of 6 points pulled in came late, from Thu 12 Nov on, while committed cards were still open.',
  ],
  blocks: [
    {
      planned: [5, 5, 8],
      said: [
        [1, 5, 0],
        [2, 10, 0],
        [3, 3, 7],
      ],
      blocked: [[3, 4]],
    },
    'kept-share-low',
    'was blocked on 8 evenings',
  ],
  'a changed plan': [
    {
      planned: [5, 5, 5, 5],
      pulledIn: [[8, 6]],
      said: [
        [1, 5, 0],
        [2, 10, 0],
        [5, 12, 0],
      ],
      dropped: [
        [3, 6],
        [4, 6],
      ],
    },
    'kept-share-low',
    'The plan changed: 2 committed cards with 10 points were dropped, and cards with 8 points came in after planning.',
  ],
  'a very good sprint': [
    {
      planned: [5, 5, 3, 3],
      said: [
        [1, 4, 0],
        [2, 6, 0],
        [3, 9, 0],
        [4, 11, 0],
      ],
    },
    'went-well',
    'All 4 committed cards were finished by Wed 11 Nov, 2 working days before the end. No card grew.',
  ],
  'no plan': [
    { planned: [], pulledIn: [[3, 4]], said: [[1, 6, 0]] },
    'no-plan',
    'There was no commitment, so there was nothing to keep.',
  ],
  'all dropped': [
    {
      planned: [5, 3, 2],
      dropped: [
        [1, 4],
        [2, 5],
        [3, 5],
      ],
    },
    'kept-share-low',
    'All that wasn’t finished is 3 committed cards with 10 points that were dropped.',
  ],
  'nothing finished': [
    { planned: [5, 5, 5, 5], said: [1, 2, 3, 4].map((number): Said => [number, 10, 3]) },
    'kept-share-low',
    '4 of 4 committed cards were still open on the last morning.',
  ],
  'surprise work above its ceiling, with everything finished': [
    {
      planned: [5, 5, 5, 5],
      said: [
        [1, 4, 6, { worked: 4, surprise: 5 }],
        [1, 6, 0],
        [2, 9, 0],
        [3, 10, 0],
        [4, 12, 0],
      ],
    },
    'surprise-ratio-high',
    'missed for its surprise work alone. Finished 20 of 20 points committed (100%).',
  ],
  'estimate drift alone': [
    {
      planned: [5, 5, 5, 5],
      said: [
        [1, 4, 5, { worked: 4 }],
        [2, 6, 5, { worked: 3 }],
        [1, 9, 0],
        [2, 11, 0],
        [3, 12, 2],
        [4, 12, 2],
      ],
    },
    'kept-share-low',
    'Nobody called it surprise work: the same work was larger than estimated.',
  ],
  'a part-time team on holiday': [
    {
      planned: [3, 3, 3, 3, 3, 3],
      said: [
        [1, 4, 0],
        [2, 5, 0],
        [3, 6, 0],
        [4, 10, 0],
        [5, 12, 2],
        [6, 12, 2],
      ],
      time: { memberDays: 14, usualMemberDays: 21 },
    },
    'kept-share-low',
    '7 of the team’s 21 usual member-days were days off or away. Did the commitment allow for that?',
  ],
};

describe.each(Object.entries(SPRINTS))('a verdict on %s', (_what, [sprint, leadingNoteId, phrase]) => {
  const { post, thread, retro, leadingNoteId: led } = crafted(sprint);

  it('leads with the cause', () => {
    expect(led).toBe(leadingNoteId);
    expect(post).toContain(phrase);
  });

  it('asks at most two questions, names nobody, and is read at one look', () => {
    expect(post.match(/\?/g)?.length ?? 0).toBeLessThanOrEqual(2);
    expect(`${post}\n${thread}`).not.toMatch(new RegExp(`${ANA}|${BEN}`));
    expect(post.split('\n').length).toBeLessThanOrEqual(14);
    expect(thread.match(/ordinary variation/g)?.length ?? 0).toBeLessThanOrEqual(1);
  });

  it('has a retrospective with the cause, one or two questions, nobody’s name, on one screen', () => {
    const [cause] = phrase.split('. ');
    expect(retro).toContain(cause);
    expect(retro).toMatch(/To talk about\n1\. .*\?/);
    expect(retro.match(/\?/g)?.length).toBeLessThanOrEqual(2);
    expect(retro).not.toMatch(new RegExp(`${ANA}|${BEN}`));
    expect(retro.split('\n').length).toBeLessThanOrEqual(20);
  });

  it('never advises to spend less time on estimates, nor blames time that was spent', () => {
    expect(`${post}\n${thread}`).not.toContain('90 seconds');
    expect(post).not.toContain('What else took the team’s time?');
  });
});

describe('the words that members gave', () => {
  it('are below the verdict by card, without who gave them and without private notes', () => {
    const { post, thread } = crafted({
      planned: [5, 5],
      said: [
        [1, 4, 6, { worked: 1, surprise: 2, note: 'The tables come in two formats' }],
        [2, 5, 6, { worked: 1, surprise: 2, note: 'private: I had overlooked it' }],
        [2, 6, 5, { worked: 1, note: 'Nothing new' }],
      ],
    });
    expect(thread).toContain(
      'What came up, in the team’s words\n• LP-1 Card 1, Wed 4 Nov: The tables come in two formats\n',
    );
    expect(thread).not.toMatch(/overlooked|Nothing new/);
    expect(post).not.toContain('two formats');
  });
});

describe('what a verdict must not say', () => {
  it('of a sprint that finished everything: that something stayed unfinished', () => {
    const [sprint] = SPRINTS['surprise work above its ceiling, with everything finished'] ?? [];
    const { post } = crafted(sprint as Crafted);
    expect(post).not.toMatch(/unfinished|not finished|still open/);
    expect(post).toContain('All of the surprise work came in one card, LP-1 Card 1.');
  });

  it('of two unfinished cards of one size: that one of them is the cause', () => {
    const { post } = crafted({
      planned: [5, 5, 5],
      said: [
        [1, 4, 0],
        [2, 12, 4],
        [3, 12, 4],
      ],
    });
    expect(post).not.toContain('One card holds');
  });

  it('of cards that were nearly done: that the team worked too little', () => {
    const { post } = crafted({
      planned: [3, 3, 3, 3, 3, 3],
      said: [
        [1, 4, 0],
        [2, 5, 0],
        [3, 6, 0],
        [4, 9, 0],
        [5, 12, 1],
        [6, 12, 1],
      ],
    });
    expect(post).toContain('The 2 cards not finished had 2 points left of their 6.');
  });

  it('of cards that grew within their size on the scale: that estimates were off by 0 points', () => {
    const { thread } = crafted({
      planned: [5, 5],
      said: [
        [1, 4, 3, { worked: 3 }],
        [1, 6, 0],
        [2, 9, 0],
      ],
    });
    expect(thread).not.toContain('off by 0 points');
    expect(thread).toContain('100% (every card is within its size on the scale)');
    expect(thread).toContain(
      'LP-1 Card 1: estimate 5, true size 6 (estimate drift +1); within its size on the scale',
    );
    expect(thread).toContain('100% (2 of 2 finished cards within their size on the scale)');
  });

  it('of a velocity below the baseline: that it is growth', () => {
    const { thread } = crafted({
      planned: [5, 3],
      said: [
        [1, 4, 0],
        [2, 9, 0],
      ],
    });
    expect(thread).toContain('Velocity against the baseline\n66.7% (33.3% below Harbour 1)');
    expect(thread).not.toContain('Velocity growth');
  });

  it('of a sprint without a plan: that its plan share was low', () => {
    const [sprint] = SPRINTS['no plan'] ?? [];
    const { thread } = crafted(sprint as Crafted);
    expect(thread).not.toContain('The plan share is');
    expect(thread).toContain(
      'Cards with 3 points came in as the sprint went on, and 3 points were finished.',
    );
    expect(thread).toContain('What kept the team from planning?');
  });
});
