import { describe, expect, it } from 'vitest';
import type { VerdictContent } from '../../../src/app/closing/verdict-content.ts';
import type { ExperimentResult } from '../../../src/app/experiments/experiment-results.ts';
import type { TeamChange } from '../../../src/app/team/team-changes.ts';
import { decodeValue, sprintValue } from '../../../src/slack/button-values.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import { verdictMessage } from '../../../src/slack/views/verdict-message.ts';
import { verdictNotesMessage } from '../../../src/slack/views/verdict-thread.ts';
import { undefinedBecause } from '../../../src/sprint/undefined-value.ts';
import { suggestionOf } from '../../../src/words/experiments.ts';
import { experiment } from '../support/samples.ts';
import { buttonsOf, mrkdwnTexts } from './view-checks.ts';
import {
  ANA,
  BEN,
  card,
  fact,
  keptVerdict,
  linesOf,
  missedVerdict,
  noPlanVerdict,
  plan,
  statusOf,
  team,
  verdictOf,
} from './view-examples.ts';

const trying = (text: string, result: Partial<ExperimentResult> = {}): ExperimentResult => ({
  experiment: { ...experiment, text },
  before: 0.3,
  now: 0.125,
  beyondOrdinary: undefined,
  ...result,
});
const TRIED = [
  trying('Ask one more question'),
  trying('Split cards of 8', { before: undefined }),
  trying('Two on a card', { beyondOrdinary: true }),
  trying('Nothing is pulled in early', { now: undefinedBecause('no-commitment'), beyondOrdinary: false }),
];
const chart = { fileId: 'F0CHART', altText: 'Burndown of Harbour 12: 3 points left.' };

describe('team set up', () => {
  it('says what will happen, who takes part, what comes next, and what to be careful about', () => {
    const people = { memberIds: [ANA, BEN], facilitatorIds: [BEN], sprintName: undefined };
    expect(
      postMessage({ kind: 'team-set-up', team: { ...team, productOwnerId: ANA }, ...people }).text,
    ).toMatchInlineSnapshot(`
      "Harbour is set up with 2 members
      On working days of a sprint (Monday to Friday), at 09:15 (Europe/Lisbon), I ask each member in a direct message what is left on their cards. When the sprint ends I post here whether the commitment was kept, and why.
      Members: <@U0ANA>, <@U0BEN>
      Facilitators: <@U0BEN>
      Product owner: <@U0ANA>
      Everybody can see what is stored about them, get a copy and be erased: /loadline privacy. The details of past sprints are kept for good.
      Next: a facilitator plans a sprint with /loadline plan. What else there is: /loadline help.
      These numbers are about the team’s plan, not about people: don’t use them to appraise anyone or to compare teams. Asking people about their work every day may be regulated where you are. Before you switch this on, check local law and works agreements, and ask the person responsible for data protection."
    `);
  });
});

describe('team taken over', () => {
  it('asks for no plan where a sprint is planned or running', () => {
    const people = { memberIds: [ANA, BEN], facilitatorIds: [BEN] };
    const { text } = postMessage({ kind: 'team-set-up', team, ...people, sprintName: 'Harbour 12' });
    expect(text).toContain('Harbour 12 goes on as it was planned.');
    expect(text).not.toContain('plans a sprint');
  });
});

describe('team changed', () => {
  const text = (changes: readonly TeamChange[]) =>
    postMessage({ kind: 'team-changed', team, byUserId: BEN, changes }).text;

  it('says in a line what is another now, and what it was', () => {
    expect(text([{ part: 'promptAt', was: '09:15', became: '10:00' }])).toMatchInlineSnapshot(`
      "<@U0BEN> changed the settings of Harbour.
      • When to ask each day: 09:15 → 10:00"
    `);
  });

  it('has a line for each setting and threshold, by the label of its field', () => {
    expect(
      text([
        { part: 'name', was: 'Harbour', became: 'Pier' },
        { part: 'members', was: 2, became: 3, joined: ANA },
        { part: 'members', was: 3, became: 2, joined: '' },
        { part: 'facilitators', was: ANA, became: `${ANA} ${BEN}` },
        { part: 'productOwner', was: '', became: ANA },
        { part: 'workingDays', was: '1 2 3 4 5', became: '1 2 3 4' },
        { part: 'retentionMonths', was: '13', became: '' },
        { part: 'weeklyLine', was: 'no', became: 'yes' },
        { part: 'scale', was: '1, 2, 3', became: '1, 2, 3, 5' },
        { part: 'keptShareAtLeast', was: '0.8', became: '0.285' },
      ]),
    ).toMatchInlineSnapshot(`
      "<@U0BEN> changed the settings of Harbour.
      • Team name: Harbour → Pier
      • Members: 2 → 3, with <@U0ANA> new
      • Members: 3 → 2
      • Facilitators: <@U0ANA> → <@U0ANA>, <@U0BEN>
      • Product owner: none → <@U0ANA>
      • Working days: Monday to Friday → Monday to Thursday
      • How many months to keep the details of a sprint: 13 → no limit
      • Whether the channel gets a line on the sprint each Friday: No → Yes
      • Planning scale: 1, 2, 3 → 1, 2, 3, 5
      • Kept share at least (%): 80 → 28.5"
    `);
  });

  it('says that something was changed, also when nobody knows any more what and by whom', () => {
    const erased = { kind: 'team-changed', team, byUserId: 'erased', changes: [] } as const;
    expect(postMessage(erased).text).toMatchInlineSnapshot(`"somebody changed the settings of Harbour."`);
  });
});

describe('plan', () => {
  it('leads with the commitment and lists the cards with their owners', () => {
    expect(postMessage({ kind: 'plan', plan }).text).toMatchInlineSnapshot(`
      "Harbour 12: the team commits to 18 points on 4 cards
      Goal: Skippers see tides before they book a berth.
      Mon 2 Nov to Fri 13 Nov. It closes by itself on Fri 13 Nov at 17:00 (Europe/Lisbon). Planned by <@U0BEN>.
      1. LP-1 Import tide tables: 5 points (<@U0ANA>)
      2. LP-2 Show tides in the berth calendar: 8 points (<@U0ANA>, <@U0BEN>)
      3. LP-3 Print the harbour map: 2 points (<@U0BEN>)
      4. Warn of low water: 3 points (nobody yet)
      Work that comes in later: /loadline pull. How it is going: /loadline status."
    `);
  });

  it('says what a sprint without cards means', () => {
    expect(
      postMessage({ kind: 'plan', plan: { ...plan, cards: [], commitmentPoints: 0 } }).text,
    ).toMatchInlineSnapshot(`
      "Harbour 12 begins without a plan
      Goal: Skippers see tides before they book a berth.
      Mon 2 Nov to Fri 13 Nov. It closes by itself on Fri 13 Nov at 17:00 (Europe/Lisbon). Planned by <@U0BEN>.
      There is no commitment, so every card that comes in counts as pulled-in work: /loadline pull."
    `);
  });
});

describe('verdict', () => {
  it('says where it was closed early', () => {
    const early = postMessage({
      kind: 'verdict',
      verdict: { ...missedVerdict, closedEarlyOn: '2026-11-05' },
    });
    expect(early.text).toContain(
      'Closed early, on Thu 5 Nov; planned for Mon 2 Nov to Fri 13 Nov. All numbers',
    );
  });

  it('says which sprint comes next, or to plan it', () => {
    const next = (verdict: VerdictContent) => postMessage({ kind: 'verdict', verdict }).text;
    expect(next(missedVerdict)).toContain('Next: plan the coming sprint with /loadline plan.');
    const coming = {
      name: 'Harbour 13',
      startsOn: '2026-11-14',
      overtaken: [],
    } as const;
    const planned = next({ ...missedVerdict, nextSprint: coming });
    expect(planned).toContain('Next: Harbour 13, from Sat 14 Nov.');
    expect(planned).not.toContain('/loadline plan');
    const overtaken = missedVerdict.cards.slice(0, 1);
    expect(next({ ...missedVerdict, nextSprint: { ...coming, overtaken } })).toContain(
      'Next: Harbour 13, from Sat 14 Nov. Finished by now, but planned there with points: LP-1 Import tide tables. As long as nobody has answered for them there, a facilitator can set them to 0: /loadline edit 1.',
    );
  });

  it('of a missed sprint is one look: what was finished, four numbers with their limits, why, and one thing to try', () => {
    expect(postMessage({ kind: 'verdict', verdict: missedVerdict }, chart).text).toMatchInlineSnapshot(`
      "Harbour 12: missed. Finished 13 of 18 points committed (72.2%).
      Goal: Skippers see tides before they book a berth.
      Finished: 13 of 18 points committed, 72.2%: below the floor of 80%
      Surprise work: 2 points, 11.1% of the commitment (ceiling 20%); estimate drift +1
      Pulled in: 3 points, 16.7% of the commitment (ceiling 20%)
      Velocity: 16 points, 133.3% of Harbour 1 (baseline)
      3 points of work went into cards pulled in from Wed 4 Nov on, while 5 points of the commitment stayed unfinished. One card holds 3 of the 5 points not finished, Warn of low water: 3 points left. Could the pulled-in work have waited?
      One thing to try: Before you pull a card in, ask whether everything committed is safe.
      Mon 2 Nov to Fri 13 Nov. All numbers, cards and notes are in this post’s thread. Next: plan the coming sprint with /loadline plan. If a number is wrong, a facilitator can reopen the sprint until Sat 14 Nov at 17:00 (Europe/Lisbon).
      Buttons: Try this, Retrospective, Reopen for corrections
      Chart: Burndown of Harbour 12: 3 points left."
    `);
  });

  it('has its numbers, cards and notes in its thread, a message each', () => {
    expect(postMessage({ kind: 'verdict-numbers', verdict: missedVerdict }).text).toMatchInlineSnapshot(`
      "Harbour 12: all numbers
      Kept share
      72.2% (13 of 18 points committed)
      Surprise ratio
      11.1% (2 points of surprise work)
      Pull-in ratio
      16.7% (3 points pulled in)
      Plan share
      78.3% (18 of 23 points of load planned)
      Estimate accuracy
      91.3% (estimates off by 2 points)
      On-scale share
      66.7% (2 of 3 finished cards within their size on the scale)
      Finish share
      84.2% (16 points finished, 19 worked)
      Velocity against the baseline
      133.3% (33.3% above Harbour 1)
      Load 23 points: 18 committed, 3 pulled in, 2 surprise work. Velocity 16 points."
    `);
    expect(postMessage({ kind: 'verdict-cards', verdict: missedVerdict }).text).toMatchInlineSnapshot(`
      "Harbour 12: the cards
      Cards that turned out larger or smaller
      • LP-1 Import tide tables: estimate 5, true size 7 (surprise work +2)
      • LP-2 Show tides in the berth calendar: estimate 8, true size 9 (estimate drift +1); within its size on the scale
      What came up, in the team’s words
      • LP-1 Import tide tables, Wed 4 Nov: The tables come in two formats
      Pulled in after planning
      • LP-5 Repair the tide gauge: 3 points, finished
      Dropped
      • LP-3 Print the harbour map: 2 points – The printer has left the quay
      Not finished
      • Warn of low water: 3 points left (estimate 3)"
    `);
    expect(postMessage({ kind: 'verdict-notes', verdict: missedVerdict }).text).toMatchInlineSnapshot(`
      "Harbour 12: notes
      The kept share is 72.2%, 7.8 percentage points below its floor of 80%.
      3 points of work went into cards pulled in from Wed 4 Nov on, while 5 points of the commitment stayed unfinished. One card holds 3 of the 5 points not finished, Warn of low water: 3 points left. Could the pulled-in work have waited?
      Try next: Before you pull a card in, ask whether everything committed is safe.
      The plan share is 78.3%, 1.7 percentage points below its floor of 80%.
      3 of 3 points pulled in came while committed cards were still open. All of the surprise work came in one card, LP-1 Import tide tables. Could it have been planned, or did it come from outside?
      Try next: Agree who lets work in, and keep room for what can’t be planned."
    `);
  });

  it('says in the thread when there is nothing to say any more', () => {
    const nothing = { ...keptVerdict, notes: [] };
    expect(postMessage({ kind: 'verdict-cards', verdict: nothing }).text).toContain(
      'Every card was finished at the size of its estimate',
    );
    expect(postMessage({ kind: 'verdict-notes', verdict: nothing }).text).toContain('No number crossed');
  });

  it('of a kept sprint says what went well, and what to do again', () => {
    expect(
      postMessage({ kind: 'verdict', verdict: { ...keptVerdict, leadingNoteId: 'went-well' } }).text,
    ).toMatchInlineSnapshot(`
      "Harbour 12: kept. Finished 13 of 13 points committed (100%).
      Goal: Skippers see tides before they book a berth.
      Finished: 13 of 13 points committed, 100% (floor 80%)
      Surprise work: 0 points, 0% of the commitment (ceiling 20%)
      Pulled in: 0 points, 0% of the commitment (ceiling 20%)
      Velocity: 13 points, 108.3% of Harbour 1 (baseline)
      Both committed cards were finished by Wed 11 Nov, 2 working days before the end. No card grew.
      One thing to try: Ask at the retrospective what made it hold, and do that again.
      Mon 2 Nov to Fri 13 Nov. All numbers, cards and notes are in this post’s thread. Next: plan the coming sprint with /loadline plan. If a number is wrong, a facilitator can reopen the sprint until Sat 14 Nov at 17:00 (Europe/Lisbon).
      Buttons: Try this, Retrospective, Reopen for corrections"
    `);
  });

  it('has at most 12 lines, with three things that are tried as well', () => {
    for (const verdict of [missedVerdict, keptVerdict, noPlanVerdict]) {
      const view = verdictMessage({ ...verdict, experiments: TRIED, reopened: 'closed-again', version: 2 });
      const lines = view.text.split('\n').filter((line) => !line.startsWith('Buttons:'));
      expect(lines.length).toBeLessThanOrEqual(12);
    }
  });

  it('says of what is tried what the number was and is, and how far that is ordinary: those that began last, as far as there is room', () => {
    const inPost = verdictMessage({ ...keptVerdict, experiments: TRIED }).text;
    expect(inPost.split('\n').filter((line) => line.startsWith('Trying:'))).toMatchInlineSnapshot(`
      [
        "Trying: Split cards of 8 (surprise ratio down). 12.5% now; no sprint to compare with.",
        "Trying: Two on a card (surprise ratio down). 30% before, 12.5% now: more than ordinary variation.",
        "Trying: Nothing is pulled in early (surprise ratio down). 30% before, no number now: ordinary variation.",
      ]
    `);
    const inThread = verdictNotesMessage({ ...keptVerdict, experiments: TRIED }).text;
    expect(inThread).toContain('What the team is trying');
    for (const { experiment } of TRIED) expect(inThread).toContain(experiment.text);
  });

  it('offers to keep its one thing to try, with the number of its leading note', () => {
    const { text, ratio, direction } = suggestionOf(missedVerdict);
    const view = verdictMessage(missedVerdict);
    expect(view.text).toContain(`One thing to try: ${text}`);
    expect([ratio, direction]).toEqual(['keptShare', 'up']);
    expect(view.text).toContain('Buttons: Try this');
    expect(verdictMessage({ ...missedVerdict, reopened: 'open' }).text).not.toContain('Try this');
    expect(suggestionOf(noPlanVerdict).ratio).toBeUndefined();
  });

  it('of a kept sprint says so in its first sentence', () => {
    expect(verdictMessage(keptVerdict).text.split('\n')[0]).toMatchInlineSnapshot(
      `"Harbour 12: kept. Finished 13 of 13 points committed (100%)."`,
    );
  });

  it('of a sprint without a commitment has notes of its own', () => {
    expect(verdictMessage(noPlanVerdict).text).toMatchInlineSnapshot(`
      "Harbour 12: no plan. There was no commitment. Finished: 3 points.
      Goal: Skippers see tides before they book a berth.
      Finished: 3 points, nothing committed
      Surprise work: 0 points
      Pulled in: 3 points
      Velocity: 3 points, 25% of Harbour 1 (baseline)
      There was no commitment, so there was nothing to keep. What kept the team from planning?
      One thing to try: Commit to what the team can finish, even if it is little: /loadline plan.
      Mon 2 Nov to Fri 13 Nov. All numbers, cards and notes are in this post’s thread. Next: plan the coming sprint with /loadline plan. If a number is wrong, a facilitator can reopen the sprint until Sat 14 Nov at 17:00 (Europe/Lisbon).
      Buttons: Try this, Retrospective, Reopen for corrections"
    `);
  });

  it('shows a share beside its threshold with as many decimals as it takes to tell them apart', () => {
    // 799.5 of 1000 points lie half a tenth of a percent below 80%.
    const cards = [card(1, { estimatePoints: 799.5 }), card(2, { estimatePoints: 200.5 })];
    const [lead, , failed] = verdictMessage(
      verdictOf(cards, [fact(1, { cardId: 'card-1', day: '2026-11-05', leftPoints: 0 })]),
    ).text.split('\n');
    expect(lead).toBe('Harbour 12: missed. Finished 799.5 of 1,000 points committed (79.95%).');
    expect(failed).toBe('Finished: 799.5 of 1,000 points committed, 79.95%: below the floor of 80%');
  });

  it('names every failed test', () => {
    const grown = fact(1, {
      cardId: 'card-1',
      day: '2026-11-05',
      workedPoints: 0,
      leftPoints: 7,
      surprisePoints: 2,
    });
    const text = verdictMessage(verdictOf([card(1)], [grown])).text;
    expect(text).toContain('missed. Finished 0 of 5 points committed (0%), with 2 points of surprise work.');
    expect(text).toContain('0%: below the floor of 80%');
    expect(text).toContain('40% of the commitment: above the ceiling of 20%');
  });

  it('missed for its surprise work alone says so', () => {
    const grown = fact(1, {
      cardId: 'card-1',
      day: '2026-11-05',
      workedPoints: 7,
      leftPoints: 0,
      surprisePoints: 2,
    });
    expect(verdictMessage(verdictOf([card(1)], [grown])).text.split('\n')[0]).toBe(
      'Harbour 12: missed for its surprise work alone. Finished 5 of 5 points committed (100%).',
    );
  });

  it('names nobody', () => {
    for (const kind of ['verdict', 'verdict-numbers', 'verdict-cards', 'verdict-notes'] as const) {
      const texts = mrkdwnTexts(postMessage({ kind, verdict: missedVerdict }, chart).blocks).join('\n');
      expect(texts).not.toContain('<@');
    }
  });

  it('shows the chart with its words', () => {
    expect(verdictMessage(missedVerdict, chart).blocks).toContainEqual({
      type: 'image',
      slack_file: { id: 'F0CHART' },
      alt_text: chart.altText,
    });
  });

  it('can be reopened while there is time, in each reader’s own zone', () => {
    const view = verdictMessage(missedVerdict);
    const button = buttonsOf(view.blocks).find(({ actionId }) => actionId === ACTIONS.reopenSprint);
    expect(decodeValue(sprintValue, button?.value)).toEqual({ sprintId: 'sprint-12' });
    // 1794675600 is 2026-11-14T17:00:00Z (date -u -d @1794675600).
    expect(mrkdwnTexts(view.blocks).join()).toContain(
      '<!date^1794675600^{date_short} at {time}|Sat 14 Nov at 17:00 (Europe/Lisbon)>',
    );
  });

  it('offers no reopening when the time is up', () => {
    const view = verdictMessage({ ...missedVerdict, reopenUntil: undefined });
    expect(buttonsOf(view.blocks).map(({ actionId }) => actionId)).toEqual([
      ACTIONS.tryThis,
      ACTIONS.retroOfSprint,
    ]);
    expect(view.text).not.toContain('reopen');
  });

  it('says that its numbers may change while the sprint is open again', () => {
    const view = verdictMessage({ ...keptVerdict, reopened: 'open', reopenUntil: undefined });
    expect(view.text).toContain('Open again for corrections, so these numbers may still change');
    expect(view.text).toContain('/loadline close');
  });

  it('says that its numbers were corrected, and which version they are', () => {
    const view = verdictMessage({ ...keptVerdict, reopened: 'closed-again', version: 2 });
    expect(view.text).toContain('These are the corrected numbers (version 2).');
  });
});

describe('cancelled', () => {
  it('says who called it off and why, gives the numbers, and no verdict', () => {
    const text = postMessage({
      kind: 'cancelled',
      verdict: missedVerdict,
      byUserId: BEN,
      reason: 'The harbour froze',
    }).text;
    expect(text.split('\n').slice(0, 5)).toMatchInlineSnapshot(`
      [
        "Harbour 12 was cancelled",
        "Cancelled by <@U0BEN>. Reason: The harbour froze",
        "There is no verdict. The numbers below are kept and marked as cancelled; they never count as history.",
        "Kept share",
        "72.2% (13 of 18 points committed)",
      ]
    `);
    expect(text).not.toContain('missed');
  });

  it('needs no reason', () => {
    const text = postMessage({ kind: 'cancelled', verdict: missedVerdict, byUserId: BEN, reason: '' }).text;
    expect(text).toContain('Cancelled by <@U0BEN>.\n');
  });
});

describe('shared status', () => {
  it('gives the numbers without what people wrote', () => {
    const text = postMessage({ kind: 'shared-status', status: statusOf(), byUserId: BEN }, chart).text;
    expect(text).toMatchInlineSnapshot(`
      "Harbour 12 on Fri 6 Nov: 16 points left on 4 open cards
      Finished: 5 of 18 points committed.
      The load is heavy: the chance of finishing at least 80% of the commitment is 32%. About 13 points will probably be finished by the end. Of 10 sprints like this, 8 end between 8 and 19. Half of them end between 10 and 15.
      1 open card needs an owner: 4. Warn of low water. Take one with /loadline take 4.
      5 of 10 working days come after today; the sprint closes on Fri 13 Nov at 17:00.
      Answers today: 1 of 2 members.
      Based on 14 closed sprints of the team; those most like this one count most. It doesn’t know who will be away, what kind of work the open cards hold, or what hasn’t been answered yet.
      Ratios so far
      Kept share
      27.8% (5 of 18 points committed)
      Surprise ratio
      11.1% (2 points of surprise work)
      Pull-in ratio
      16.7% (3 points pulled in)
      Plan share
      78.3% (18 of 23 points of load planned)
      Estimate accuracy
      91.3% (estimates off by 2 points)
      On-scale share
      0% (0 of 1 finished card within its size on the scale)
      Finish share
      71.4% (5 points finished, 7 worked)
      Velocity against the baseline
      41.7% (compared with Harbour 1)
      Load 23 points: 18 committed, 3 pulled in, 2 surprise work. Velocity 5 points.
      What grew or shrank
      • LP-1 Import tide tables: surprise work +2
      Shared by <@U0BEN>. See it any time with /loadline status.
      Chart: Burndown of Harbour 12: 3 points left."
    `);
    expect(text).not.toContain('two formats');
  });

  it('leaves out the growth of cards that did not grow', () => {
    const status = statusOf({ cards: linesOf([card(1)]), growth: [] });
    const text = postMessage({ kind: 'shared-status', status, byUserId: BEN }).text;
    expect(text).toContain('No card has grown or shrunk so far.');
  });
});
