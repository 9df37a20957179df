import { describe, expect, it } from 'vitest';
import type { Advice } from '../../../src/app/advice/advice.ts';
import { hasChart } from '../../../src/app/advice/advice-chart.ts';
import { adviceValue, decodeValue, placeValue } from '../../../src/slack/button-values.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import {
  adviceDetailsMessage,
  adviceMessage,
  sharedAdviceMessage,
} from '../../../src/slack/views/advice-message.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import {
  cardsOf,
  forecastAdvice,
  historyAdvice,
  oddsAdvice,
  pastSprint,
  rangeAdvice,
  STEADY,
} from './advice-examples.ts';
import { buttonsOf, wordsIn } from './view-checks.ts';
import { ANA, team } from './view-examples.ts';

const asFacilitator = (advice: Advice): Advice => ({ ...advice, askerIsFacilitator: true });
const text = (advice: Advice): string => adviceMessage(advice).text;
const details = (advice: Advice): string => adviceDetailsMessage(advice).text;
const leadOf = (advice: Advice): string => text(advice).split('\n')[0] ?? '';
const labels = (advice: Advice): string[] =>
  buttonsOf(adviceMessage(advice).blocks).map(({ label }) => label);

/** Sprints given as commitment, finished of it, pulled in, surprise work. */
const sprints = (rows: readonly (readonly number[])[]) =>
  rows.map(([commitment = 0, finished = 0, pulledIn = 0, surprise = 0], place) =>
    pastSprint(place, { commitment, finished, pulledIn, surprise }),
  );

const PULLS_IN_TOO_EARLY = sprints([
  [30, 20, 10],
  [28, 18, 9],
  [32, 22, 8],
  [30, 19, 11],
]);
const WAVERING = sprints([
  [30, 30, 20],
  [28, 8, 0],
  [32, 32, 15],
  [30, 12, 0],
  [25, 25, 20],
  [30, 10, 0],
]);
const HARDLY_FINISHING = sprints([
  [30, 0, 0, 1],
  [28, 0, 5],
  [32, 2, 0],
  [30, 0, 4],
]);

/** Sixteen sprints; from the ninth on the team keeps more and pulls in more. */
const CHANGED = sprints(
  Array.from({ length: 16 }, (_, i) => (i < 8 ? [20, 10 + (i % 2), 1] : [20, 18 + (i % 2), 6 + (i % 3)])),
);

describe('the commitment range', () => {
  it('leads with one number and its chances, then what serves beside it, its basis and what it doesn’t know', () => {
    expect(text(rangeAdvice(STEADY, 6))).toMatchInlineSnapshot(`
      "At 23 points: 9 in 10 to keep it, 5 in 10 to finish everything, 1 in 10 to run out of work. Your last commitment was 21.
      21 to 23 points serve you: of 10 sprints at least 8 are kept, 5 finished whole, at most 2 out of work.
      Kept: 80% or more finished. Out of work: over 20% pulled in.
      Scaled to 44 member-days: Mon 30 Nov to Fri 11 Dec, 5 members and 6 days off or away.
      Only you see this. These numbers are about the plan: don’t use them to appraise anyone or to compare teams.
      Buttons: Share in the channel, How it’s made, Other points or days away, Surprise odds"
    `);
    expect(details(rangeAdvice(STEADY, 6))).toMatchInlineSnapshot(`
      "At 23 points: 9 in 10 to keep it, 5 in 10 to finish everything, 1 in 10 to run out of work. Your last commitment was 21.
      It’s the largest number that serves you, and never needs more than you’ve finished before. Where none is finished whole in every second sprint, it’s the smallest that serves you otherwise. Where none serves both, it’s the one at which keeping it and not running out of work are about as likely.
      Based on your latest 9 sprints with a commitment, 4 of them imported. The last 3:
      • Harbour 9: 21 committed, 21 of them finished, 8 pulled in, velocity 29
      • Harbour 8: 24 committed, 23 of them finished, 4 pulled in, velocity 27
      • Harbour 7: 22 committed, 22 of them finished, 6 pulled in, velocity 28
      In 2 of 9 sprints surprise work went above its ceiling of 20%, which by itself makes a sprint missed. No commitment changes that; /loadline odds shows which card sizes to look into first.
      What this doesn’t know
      • In 4 of 9 sprints it isn’t recorded how much of the commitment was finished.
      • For 4 of 9 sprints it isn’t known who was there, so as many as in the sprints around them are assumed.
      • It assumes that a new member does as much as the others, and that the way of working stays as it is.
      • It takes all pulled-in work as a sign of spare time, which urgent work isn’t.
      Only you see this."
    `);
  });

  it('tells the chances of the commitment that was asked about before the one to start from', () => {
    const asked = rangeAdvice(STEADY, 6);
    const told = text({ ...asked, question: { about: 'range', points: 28 } });
    expect(told.split('\n').slice(0, 2).join('\n')).toMatchInlineSnapshot(
      `
      "At 28 points: 6 in 10 to keep it, 1 in 10 to finish everything, 1 in 10 to run out of work.
      The number to start from is 23: 9 in 10 to keep it, 5 in 10 to finish everything, 1 in 10 to run out of work."
    `,
    );
    const theSame = text({ ...asked, question: { about: 'range', points: 23 } });
    expect(theSame).toMatch(/^At 23 points: 9 in 10 to keep it/);
    expect(theSame).not.toContain('The number to start from');
    expect(leadOf({ ...rangeAdvice([]), question: { about: 'range', points: 28 } })).toBe(
      leadOf(rangeAdvice([])),
    );
  });

  it('of sprints that wander too far says that no commitment serves both, and what would help', () => {
    const chances = text(rangeAdvice(WAVERING)).split('\n').slice(0, 3);
    const ends = details(rangeAdvice(WAVERING)).split('\n').slice(1, 3);
    expect([...chances, ...ends].join('\n')).toMatchInlineSnapshot(`
      "At 25 points: 6 in 10 to keep it, 5 in 10 to finish everything, 4 in 10 to run out of work. Your last commitment was 30.
      No commitment serves both: your sprints differ too much, or are too few. They finished 8 to 50 points: ask why.
      Kept: 80% or more finished. Out of work: over 20% pulled in.
      It’s the largest number that serves you, and never needs more than you’ve finished before. Where none is finished whole in every second sprint, it’s the smallest that serves you otherwise. Where none serves both, it’s the one at which keeping it and not running out of work are about as likely.
      Up to 10 points, you keep it in 8 of 10 sprints or more; from 46 points on, you run out of work in 2 of 10 or fewer."
    `);
  });

  it('of a team that pulls in before it finishes says so, and to commit to what it finishes', () => {
    expect(text(rangeAdvice(PULLS_IN_TOO_EARLY)).split('\n').slice(0, 2).join('\n')).toMatchInlineSnapshot(`
      "At 19 points: 9 in 10 to keep it, 6 in 10 to finish everything, 9 in 10 to run out of work. Your last commitment was 30.
      No commitment serves both: in 4 of 4 sprints, work came in while committed work was open. Finish that first."
    `);
  });

  it('of a team that hardly finishes anything gives no number', () => {
    expect(text(rangeAdvice(HARDLY_FINISHING)).split('\n').slice(0, 2).join('\n')).toMatchInlineSnapshot(`
      "No range. No commitment would be kept: too often, hardly any of it was finished.
      Look at what keeps cards from being finished before you look at the size of the commitment. Smaller cards, and fewer of them started at once, are a good beginning."
    `);
  });

  it('leaves surprise work out where it doesn’t count in the verdict', () => {
    const advice = { ...rangeAdvice(STEADY, 6), surpriseInVerdict: false };
    expect(details(advice)).not.toContain('surprise work');
  });

  it('says what isn’t known, and gives no number where it isn’t known what was finished', () => {
    const silent = STEADY.map((sprint) => ({ ...sprint, pulledInPoints: undefined }));
    expect(text(rangeAdvice(silent)).split('\n').slice(0, 3).join('\n')).toMatchInlineSnapshot(`
      "At 26 points: 8 in 10 to keep it, 5 in 10 to finish everything. Your last commitment was 21.
      How likely you are to run out of work isn’t known. This needs 3 closed sprints in which pulled-in work was recorded; there are 0.
      Kept: 80% or more finished."
    `);
    const unfinished = STEADY.map((sprint) => ({
      ...sprint,
      velocityPoints: undefined,
      committedFinishedPoints: undefined,
    }));
    expect(leadOf(rangeAdvice(unfinished))).toBe(
      'No range yet. This needs 3 closed sprints in which the finished work was recorded; there are 0.',
    );
  });

  it.each([
    [0, 'there are 0'],
    [1, 'there is 1'],
    [2, 'there are 2'],
  ])('of %d sprints is refused with what is missing and how to get it', (count, there) => {
    const words = text(rangeAdvice(STEADY.slice(0, count)));
    expect(words.split('\n')[0]).toBe(
      `No range yet. This needs 3 closed sprints with a commitment; ${there}.`,
    );
    expect(words).toContain('/loadline import');
  });

  it('says so when nobody is there', () => {
    expect(leadOf(rangeAdvice(STEADY, 50))).toBe('No range. Nobody is there to work in the coming sprint.');
  });

  it('says half a day, one day and no day away in words', () => {
    expect(text(rangeAdvice(STEADY, 0.5))).toContain('0.5 days off or away');
    expect(text(rangeAdvice(STEADY, 1))).toContain('1 day off or away');
    expect(text(rangeAdvice(STEADY, 0))).toContain('no days off known');
    expect(text(rangeAdvice(STEADY))).toContain('no days off known');
  });
});

describe('surprise odds', () => {
  it('lead with the size that tends most to hold surprises, then each size, how to read it and what to do', () => {
    expect(text(oddsAdvice(STEADY))).toMatchInlineSnapshot(`
      "Cards of 8 points hold surprise work about 6 times in 10. When they do, 2.5 points is typical.
      Cards that held surprise work, by size
      • 13 points: 1 of 1 card (67%, span 28% to 96%)
      • 8 points: 10 of 16 cards (63%)
      • 3 points: 3 of 25 cards (12%)
      • 1 point: 0 of 20 cards (0%)
      Before you commit to a card of a size that often holds surprises: ask what could turn up in it, split it, or timebox a first look inside.
      Only you see this. These numbers are about the plan: don’t use them to appraise anyone or to compare teams.
      Buttons: Share in the channel, How it’s made, Commitment range"
    `);
    expect(details(oddsAdvice(STEADY))).toMatchInlineSnapshot(`
      "Cards of 8 points hold surprise work about 6 times in 10. When they do, 2.5 points is typical.
      Cards that held surprise work, by size
      • 1 point: 0 of 20 cards (0%, span 0% to 16%)
      • 3 points: 3 of 25 cards (12%, span 4% to 30%); typically 1 point
      • 8 points: 10 of 16 cards (63%, span 39% to 82%); typically 2.5 points, span 2 to 3
      • 13 points: 1 of 1 card; borrowed 67%, span 28% to 96%; typically 5 points
      A span holds the truth 19 times in 20. “Typically” is how much surprise work there was when there was any. “Borrowed” marks sizes of fewer than 12 cards: their share leans on the other sizes until they have a history of their own.
      Based on 62 cards of 5 closed sprints; 14 of them held surprise work (23%). Of 4 more sprints, the cards aren’t known.
      What this doesn’t know
      • What the cards are: a new part of the system and an old one look alike at the same size.
      • What wasn’t called surprise work when a card grew: growth put down to the estimate isn’t counted.
      • What changes from here on: a team that splits its big cards changes its odds.
      Only you see this."
    `);
  });

  it('say of a size with few cards that they are borrowed', () => {
    const few = [
      pastSprint(0, {
        commitment: 20,
        finished: 20,
        cards: [...cardsOf(1, 20, []), ...cardsOf(8, 2, [3, 4])],
      }),
    ];
    expect(leadOf(oddsAdvice(few))).toMatch(
      /^Cards of 8 points probably hold surprise work about \d times in 10, going by 2 cards and the other sizes; anything from \d+% to \d+% is possible\. When they did, it was about 3\.5 points\.$/,
    );
    expect(details(oddsAdvice(few))).toMatch(/• 8 points: 2 of 2 cards; borrowed \d+%, span \d+% to \d+%/);
  });

  it('say so when no card held any', () => {
    const calm = [pastSprint(0, { commitment: 20, finished: 20, cards: cardsOf(3, 14, []) })];
    expect(leadOf(oddsAdvice(calm))).toBe(
      'No surprise work so far: none of the 14 cards of your closed sprints held any.',
    );
    expect(details(oddsAdvice(calm))).toContain('• 3 points: 0 of 14 cards (0%, span 0% to 22%)\n');
  });

  it('are refused without a card of a closed sprint, with where they come from', () => {
    expect(text(oddsAdvice(STEADY.slice(0, 3)))).toMatchInlineSnapshot(`
      "No odds yet: no card of a closed sprint is known.
      You don’t have to do anything: when a sprint closes here, each of its cards counts. Until then, ask about every big card what could turn up in it.
      Only you see this.
      Buttons: Commitment range"
    `);
  });
});

describe('the forecast', () => {
  it('leads with the likely date between the other two, then which to promise, the margins and what it doesn’t know', () => {
    expect(text(forecastAdvice(STEADY, 200, 5))).toMatchInlineSnapshot(`
      "200 points: likely by 2 April 2027 (50%), optimistic 15 February (15%), pessimistic 26 July (85%).
      Promise the pessimistic date. If somebody needs an earlier one, talk about doing less of the work, not about doing it faster.
      Based on your latest 9 sprints, the recent ones most. Their pace comes to 27.4 points in the first coming sprint. The work is assumed to grow by 5 points with each sprint.
      Only you see this. These numbers are about the plan: don’t use them to appraise anyone or to compare teams.
      Buttons: Share in the channel, How it’s made, Change the numbers, History"
    `);
    expect(details(forecastAdvice(STEADY, 200, 5))).toMatchInlineSnapshot(`
      "200 points: likely by 2 April 2027 (50%), optimistic 15 February (15%), pessimistic 26 July (85%).
      • Optimistic: 15 February 2027, in the 6th sprint. 15% chance: fine to hope for, not to plan with.
      • Likely: 2 April 2027, in the 9th sprint. 50% chance: it could just as well be later as sooner.
      • Pessimistic: 26 July 2027, in the 18th sprint. 85% chance: this is the one to promise.
      Based on your latest 9 sprints, the recent ones most. Their pace comes to 27.4 points in the first coming sprint. Of 9 known closed sprints, 4 were imported. Work on it begins on 30 November 2026, with a new sprint every 14 days. The work is assumed to grow by 5 points with each sprint. The chances allow for how 5 such forecasts would have come out before. A date in the middle of a sprint means that the work is done when that sprint ends.
      How far off the team was so far
      • Commitments: what was finished, pulled-in work included, was typically 125% of the commitment, and 106% to 137% in 8 of 10 sprints (from 9).
      • Estimates: typically 93% accurate, and 82% to 94% over all 5 sprints, which are too few to say what is usual. The rest up to 100% is the part of the load by which estimates were off.
      What this doesn’t know
      • How much of a sprint goes to other work. It assumes that everything your sprints finish belongs to these points.
      • Whether these points are the same size as those in your past sprints.
      • Who will join or leave, and days off that nobody has entered yet; those that are known are counted.
      Only you see this."
    `);
  });

  it('leaves out a year only where another date has named it', () => {
    expect(leadOf(forecastAdvice(STEADY))).toBe(
      '120 points: likely by 27 January 2027 (50%), optimistic 10 January (15%), pessimistic 5 March (85%).',
    );
    expect(leadOf(forecastAdvice(STEADY, 60))).toBe(
      '60 points: likely by 29 December 2026 (50%), optimistic 20 December (15%), pessimistic 15 January 2027 (85%).',
    );
  });

  it('leads with the chance by a day where one was asked about, in at most 120 words', () => {
    const words = text(forecastAdvice(STEADY, 200, 'measured', '2027-06-30'));
    expect(words.split('\n').slice(0, 4)).toMatchInlineSnapshot(`
      [
        "200 points by 30 June 2027: 80% chance. By then, 169 points are what to count on (85%), and 330 points an even chance (50%).",
        "200 points: likely by 4 April 2027 (50%), optimistic 16 February (15%), pessimistic 3 August (85%).",
        "Promise the pessimistic date. If somebody needs an earlier one, talk about doing less of the work, not about doing it faster.",
        "Based on your latest 9 sprints, the recent ones most. Their pace comes to 27.4 points in the first coming sprint. The work is assumed to grow by 5.4 points with each sprint. Say “growing 0” if it’s settled.",
      ]
    `);
    const [said = ''] = words.split('Only you see this');
    expect(said.split(/\s+/).length).toBeLessThanOrEqual(120);
  });

  it('says how much can be done by a day where that alone was asked, with as much to go by', () => {
    const amounts = forecastAdvice(STEADY, 'none', 'measured', '2027-06-30');
    expect(text(amounts)).toMatchInlineSnapshot(`
      "By 30 June 2027, 169 points are what to count on (85%), and 330 points an even chance (50%).
      Promise no more than 169 points. If somebody needs more by then, talk about which part is worth having first.
      Based on your latest 9 sprints, the recent ones most. Their pace comes to 27.4 points in the first coming sprint. The work is assumed to grow by 5.4 points with each sprint. Say “growing 0” if it’s settled.
      Only you see this. These numbers are about the plan: don’t use them to appraise anyone or to compare teams.
      Buttons: Share in the channel, How it’s made, Change the numbers, History"
    `);
    expect(details(amounts)).toMatchInlineSnapshot(`
      "By 30 June 2027, 169 points are what to count on (85%), and 330 points an even chance (50%).
      Based on your latest 9 sprints, the recent ones most. Their pace comes to 27.4 points in the first coming sprint. Of 9 known closed sprints, 4 were imported. Work on it begins on 30 November 2026, with a new sprint every 14 days. The work is assumed to grow by 5.4 points with each sprint. In 8 of 10 cases that is 4.5 to 6.3. So much of what you take in comes after planning, by your last 9 sprints. Say “growing 0” if it’s settled. The chances allow for how 5 such forecasts would have come out before.
      How far off the team was so far
      • Commitments: what was finished, pulled-in work included, was typically 125% of the commitment, and 106% to 137% in 8 of 10 sprints (from 9).
      • Estimates: typically 93% accurate, and 82% to 94% over all 5 sprints, which are too few to say what is usual. The rest up to 100% is the part of the load by which estimates were off.
      What this doesn’t know
      • How much of a sprint goes to other work. It assumes that everything your sprints finish belongs to these points.
      • Whether these points are the same size as those in your past sprints.
      • Who will join or leave, and days off that nobody has entered yet; those that are known are counted.
      • Whether this work grows as yours did so far. Cards that you pull in from the same backlog are no growth, and can’t be told apart.
      Only you see this."
    `);
    expect(hasChart(amounts)).toBe(false);
    const buttons = buttonsOf(adviceMessage({ ...amounts, askerMayKeep: true }).blocks);
    expect(buttons.map(({ actionId }) => actionId)).not.toContain(ACTIONS.keepForecast);
    expect(text(forecastAdvice(STEADY, 'none', 900, '2026-12-02'))).toContain('Promise nothing by then');
    expect(leadOf(forecastAdvice(STEADY.slice(0, 2), 'none', 0, '2027-06-30'))).toBe(
      'No forecast yet. This needs 3 closed sprints; there are 2.',
    );
  });

  it('promises nothing where the pessimistic date lies beyond the horizon', () => {
    const words = text(forecastAdvice(STEADY, 1000, 15));
    expect(words.split('\n')[0]).toMatch(/^1,000 points: likely by .*, no pessimistic date\.$/);
    expect(words).toContain('There is no date to promise.');
    expect(words).not.toContain('Promise the pessimistic date');
    expect(words).toContain('half of the effort or more only keeps up with it');
  });

  it('gives no date where there is none, and says when the work grows faster than it is finished', () => {
    expect(leadOf(forecastAdvice(STEADY, 20_000))).toBe('20,000 points: no date within 130 sprints.');
    expect(text(forecastAdvice(STEADY, 1000, 40))).toContain('faster than it gets finished');
  });

  it('below three sprints is refused with what is missing and how to get it', () => {
    expect(text(forecastAdvice(STEADY.slice(0, 2)))).toMatchInlineSnapshot(`
      "No forecast yet. This needs 3 closed sprints; there are 2.
      Every sprint that closes here adds one. You don’t have to wait: a facilitator can bring in past sprints with /loadline import.
      How far off commitments and estimates usually are is known from 5 sprints on.
      Only you see this.
      Buttons: Change the numbers, History"
    `);
  });

  it('is refused when the latest sprints finished nothing', () => {
    const idle = sprints([[10], [10], [10]]);
    expect(leadOf(forecastAdvice(idle))).toBe(
      'No forecast. None of the latest 3 sprints finished any points.',
    );
  });
});

describe('the history', () => {
  it('of one sprint shows its numbers and no means of them', () => {
    expect(text(historyAdvice(STEADY.slice(0, 1)))).toMatch(/^• Pull-in ratio: 25%$/m);
    expect(text(historyAdvice(STEADY.slice(0, 1)))).not.toContain('mean');
    expect(text(historyAdvice(STEADY.slice(0, 2)))).toMatch(/^• Pull-in ratio: .*%, mean \d+%$/m);
  });

  it('without a signal says that the ups and downs are ordinary, and which lines are crossed anyway', () => {
    expect(text(historyAdvice(STEADY))).toMatchInlineSnapshot(`
      "No signal: the ups and downs of your 9 sprints are ordinary variation.
      Ordinary doesn’t mean on target. Often crossed lately: pull-in ratio (above its ceiling of 20% in 5 of 8) and plan share (below its floor of 80% in 6 of 8). That takes a change in how the team plans or works.
      Latest sprint
      • Kept share: 100%, mean 98%
      • Surprise ratio: 9.5%, mean 13%
      • Pull-in ratio: 38.1%, mean 25%
      • Velocity growth: 116%, mean 107%
      Goals met: 4 of 6, 1 partly; commitments kept: 5.
      Only you see this. These numbers are about the plan: don’t use them to appraise anyone or to compare teams.
      Buttons: Share in the channel, How it’s made, Commitment range, What we try"
    `);
    expect(details(historyAdvice(STEADY))).toMatchInlineSnapshot(`
      "No signal: the ups and downs of your 9 sprints are ordinary variation.
      Latest sprint, and what is usual
      • Kept share: 100%. Mean 98% of 5 sprints. Never below its floor of 80% in the last 5 sprints.
      • Surprise ratio: 9.5%. Mean 13%, usually 0% to 37%: ordinary variation. Above its ceiling of 20% in 2 of the last 8 sprints.
      • Pull-in ratio: 38.1%. Mean 25%, usually 0% to 60%: ordinary variation. Above its ceiling of 20% in 5 of the last 8 sprints.
      • Plan share: 67.7%. Mean 73%, usually 53% to 92%: ordinary variation. Below its floor of 80% in 6 of the last 8 sprints.
      • Estimate accuracy: 93.5%. Mean 91% of 5 sprints. Never below its floor of 80% in the last 5 sprints.
      • On-scale share: 75%. Mean 75% of 5 sprints.
      • Finish share: 93.5%. Mean 91% of 5 sprints.
      • Velocity growth: 116%. Mean 107%, usually 93% to 120%: ordinary variation.
      “Usually” shows how far a number goes up and down without any special cause. A signal is a value far outside of that, or 6 sprints in a row that clearly differ from those before. One unusual value may be chance. What is usual for a number is known from 8 sprints on.
      Velocity growth is compared with Harbour 1: 100% is what that sprint finished. In Harbour 9 the recorded value was 190% of that in Harbour 6, and velocity was 107.4%: a point brought 176.9% of what it brought then.
      How far off the team was so far
      • Commitments: what was finished, pulled-in work included, was typically 125% of the commitment, and 106% to 137% in 8 of 10 sprints (from 9).
      • Estimates: typically 93% accurate, and 82% to 94% over all 5 sprints, which are too few to say what is usual. The rest up to 100% is the part of the load by which estimates were off.
      This covers 9 closed sprints, from 5 January to 8 May 2026. 4 were imported. Cancelled sprints are left out.
      What this doesn’t know
      • What changed. A signal says that something did, not what or why: only the team can say.
      • Whether ordinary variation is good enough. That is what floors and ceilings are for.
      • Whether one growth caused the other. Value often comes sprints after the work, and depends on much else.
      Only you see this."
    `);
  });

  it('leads with a signal', () => {
    const jump = sprints([
      ...Array.from({ length: 11 }, (_, i) => [20, 19 + (i % 2), 1, 1 + (i % 2)]),
      [20, 19, 1, 12],
    ]);
    const only = historyAdvice(jump);
    const surpriseOnly = { ...only, ratios: only.ratios.filter(({ ratio }) => ratio === 'surpriseRatio') };
    expect(leadOf(surpriseOnly)).toMatch(
      /^There is a signal\. Your surprise ratio of 60% is far above what is usual for you \(0% to \d+%\)\.$/,
    );
  });

  it('with several signals names them all, says the first in a sentence, and asks what was different', () => {
    // Seen as soon as five of six are higher.
    const seen = historyAdvice(CHANGED.slice(0, 13));
    const words = text(seen);
    expect(words.split('\n')[0]).toMatch(/^Signals in \d numbers: kept share, .* and velocity growth\.$/);
    expect(details(seen).match(/^• Your /gm)).toHaveLength(Number(/Signals in (\d)/.exec(words)?.[1]));
    expect(words).toContain('• Your kept share has risen: 86% on average in the last 6 sprints, 52% before.');
    expect(words).toContain('Ask the team what was different');
  });

  it('of a change that was seen before says what changed, and what is usual since', () => {
    expect(text(historyAdvice(CHANGED)).split('\n')[0]).toMatch(
      /^No new signal since kept share, .* and velocity growth changed\.$/,
    );
    expect(details(historyAdvice(CHANGED))).toMatch(
      /• Kept share: 95%\. Mean 8\d%, usually .*: ordinary variation\. That’s over the 9 sprints since it changed; the mean was 52% before\./,
    );
  });

  it('counts crossed lines over the latest eight sprints only', () => {
    const [kept, , pullIn] = historyAdvice(CHANGED).ratios;
    expect([kept?.crossedAt.length, pullIn?.crossedAt.length]).toEqual([8, 8]);
    const words = details(historyAdvice(CHANGED));
    expect(words).toMatch(/• Kept share: .* Never below its floor of 80% in the last 8 sprints\./);
    expect(words).toMatch(/• Pull-in ratio: .* Above its ceiling of 20% in all of the last 8 sprints\./);
  });

  it('below eight sprints says that it is too early for signals, and still shows the numbers', () => {
    const words = text(historyAdvice(STEADY.slice(0, 5)));
    expect(words.split('\n')[0]).toBe(
      'Too early to tell a signal from ordinary variation: that takes 8 sprints, and there are 5.',
    );
    const lines = details(historyAdvice(STEADY.slice(0, 5)));
    expect(lines).toContain(
      '• Pull-in ratio: 28.6%. Mean 24% of 5 sprints. Above its ceiling of 20% in 3 of the last 5 sprints.',
    );
    expect(lines).toContain('• Kept share: 100%. This is the first sprint with this number.');
  });

  it('says which number the latest sprint lacks, and which one all of them lack', () => {
    const noPlan = [...STEADY, pastSprint(9, { commitment: 0, finished: 0, pulledIn: 12 })];
    expect(details(historyAdvice(noPlan))).toContain(
      '• Pull-in ratio: none in the latest sprint. There was no commitment. Mean',
    );
    const imported = STEADY.slice(0, 3);
    expect(details(historyAdvice(imported))).toContain('• Kept share: not known from these sprints.');
  });

  it('without a sprint says how to get one', () => {
    expect(text(historyAdvice([]))).toMatchInlineSnapshot(`
      "No history yet: no sprint has closed.
      Every sprint that closes here adds one. You don’t have to wait: a facilitator can bring in past sprints with /loadline import.
      Only you see this.
      Buttons: Commitment range, What we try"
    `);
  });

  it('shows value growth only as far as values were recorded', () => {
    const without = STEADY.map((sprint) => ({ ...sprint, recordedValue: undefined }));
    expect(details(historyAdvice(without))).toContain('/loadline value');
    const first = STEADY.map((sprint, i) => ({ ...sprint, recordedValue: i === 3 ? 500 : undefined }));
    expect(details(historyAdvice(first))).toContain(
      'Value growth is compared with Harbour 4; record the value of later sprints to see it.',
    );
    const nothing = STEADY.map((sprint) => ({ ...sprint, recordedValue: 0 }));
    expect(details(historyAdvice(nothing))).toContain('has a value above 0');
  });
});

const ANSWERS: [name: string, advice: Advice][] = [
  ['range', rangeAdvice(STEADY, 6)],
  ['odds', oddsAdvice(STEADY)],
  ['forecast', forecastAdvice(STEADY)],
  ['history', historyAdvice(STEADY)],
];

const REFUSED: [name: string, advice: Advice][] = [
  ['range', rangeAdvice([])],
  ['odds', oddsAdvice([])],
  ['forecast', forecastAdvice([])],
  ['history', historyAdvice([])],
];

describe.each(ANSWERS)('an answer about %s', (about, advice) => {
  it('can be shared, with its very question in the button', () => {
    const [share] = buttonsOf(adviceMessage(advice).blocks);
    expect(share).toMatchObject({ label: 'Share in the channel', actionId: ACTIONS.shareAdvice });
    expect(decodeValue(adviceValue, share?.value)).toEqual({ teamId: team.id, question: advice.question });
  });

  it('cautions against judging people and comparing teams, shared or not', () => {
    for (const words of [text(advice), sharedAdviceMessage(advice, ANA).text]) {
      expect(words).toContain('don’t use them to appraise anyone or to compare teams');
    }
  });

  it('fits one screen of a phone: at most 120 words and one picture', () => {
    const view = adviceMessage(asFacilitator(advice), { fileId: 'F1', altText: 'A picture.' });
    expect(wordsIn(adviceMessage(asFacilitator(advice)))).toBeLessThanOrEqual(120);
    expect(view.blocks.filter(({ type }) => type === 'image')).toHaveLength(1);
  });

  it('says how it was made and what it doesn’t know behind a button, to the person who asks', () => {
    for (const view of [adviceMessage(advice), sharedAdviceMessage(advice, ANA)]) {
      const button = buttonsOf(view.blocks).find(({ actionId }) => actionId === ACTIONS.explainAdvice);
      expect(button?.label).toBe('How it’s made');
      expect(decodeValue(adviceValue, button?.value)?.question).toEqual(advice.question);
      expect(view.text).not.toContain('What this doesn’t know');
    }
    expect(details(advice).split('\n')[0]).toBe(leadOf(advice));
    expect(details(advice)).toContain('What this doesn’t know');
    expect(details(advice)).toContain('Only you see this.');
  });

  it('shared, is the same answer with who shared it and when, and no button but the one for the details', () => {
    const shared = postMessage({ kind: 'shared-advice', advice, byUserId: ANA });
    expect(buttonsOf(shared.blocks).map(({ actionId }) => actionId)).toEqual([ACTIONS.explainAdvice]);
    expect(shared.text).toContain(
      `Shared by <@${ANA}> on 16 November 2026. Ask any time with /loadline ${about}.`,
    );
    expect(shared.text).not.toContain('Only you');
    expect(shared.text.split('\n')[0]).toBe(leadOf(advice));
    expect(shared.blocks.slice(0, -2)).toEqual(adviceMessage(advice).blocks.slice(0, -2));
  });
});

describe.each(REFUSED)('an answer about %s that too little is known for', (_about, advice) => {
  it('can not be shared and shows no caution about numbers that are not there', () => {
    expect(labels(asFacilitator(advice))).not.toContain('Share in the channel');
    expect(text(advice)).not.toContain('appraise');
  });
});

describe('an answer from a history of any kind', () => {
  const histories = Object.entries({ STEADY, WAVERING, PULLS_IN_TOO_EARLY, HARDLY_FINISHING, CHANGED });
  it.each(histories)('of %s is as short', (_name, past) => {
    for (const advice of [
      rangeAdvice(past, 6),
      oddsAdvice(past),
      forecastAdvice(past, 1_000, 15),
      historyAdvice(past),
    ]) {
      expect(wordsIn(adviceMessage(asFacilitator(advice)))).toBeLessThanOrEqual(120);
    }
  });
});

describe('what comes next', () => {
  it('is planning for facilitators, from the range and the odds', () => {
    for (const advice of [rangeAdvice(STEADY), oddsAdvice(STEADY)]) {
      expect(labels(advice)).not.toContain('Plan a sprint');
      const plan = buttonsOf(adviceMessage(asFacilitator(advice)).blocks).at(-1);
      expect(plan).toMatchObject({ label: 'Plan a sprint', actionId: 'open-plan-form' });
      expect(decodeValue(placeValue, plan?.value)).toEqual({ channelId: team.channelId });
    }
  });

  it('is to ask again with other numbers, from the range and the forecast', () => {
    const change = buttonsOf(adviceMessage(rangeAdvice(STEADY, 6)).blocks)[2];
    expect(change).toMatchObject({ label: 'Other points or days away', actionId: ACTIONS.changeRange });
    expect(decodeValue(adviceValue, change?.value)?.question).toEqual({ about: 'range', awayDays: 6 });
    const numbers = buttonsOf(adviceMessage(forecastAdvice(STEADY, 60, 2.5)).blocks)[2];
    expect(numbers).toMatchObject({ label: 'Change the numbers', actionId: ACTIONS.changeForecast });
    expect(decodeValue(adviceValue, numbers?.value)?.question).toEqual({
      about: 'forecast',
      backlogPoints: 60,
      growthPoints: 2.5,
    });
  });
});
