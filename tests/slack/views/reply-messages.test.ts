import { describe, expect, it } from 'vitest';
import { Refusal } from '../../../src/app/refusal.ts';
import type { TeamOverview } from '../../../src/app/watching/overview.ts';
import { decodeValue, placeValue, sprintDayValue, sprintValue } from '../../../src/slack/button-values.ts';
import type { Command } from '../../../src/slack/commands/command.ts';
import { COMMANDS } from '../../../src/slack/commands/commands.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import { baselineNamedMessage } from '../../../src/slack/views/baseline-views.ts';
import {
  cardsDroppedMessage,
  cardsGivenMessage,
  cardsMessage,
  droppedMessage,
  ownersMessage,
  pulledMessage,
  reopenedCardMessage,
  undroppedMessage,
} from '../../../src/slack/views/cards/card-messages.ts';
import {
  allCommandsMessage,
  commandHelpMessage,
  helpMessage,
  USED_MOST,
} from '../../../src/slack/views/help.ts';
import { overviewMessage } from '../../../src/slack/views/overview.ts';
import { planCommittedReply } from '../../../src/slack/views/planning/plan-messages.ts';
import {
  sprintCancelledReply,
  sprintClosedReply,
  sprintReopenedReply,
} from '../../../src/slack/views/sprint-change-views.ts';
import { sharedStatusMessage, statusMessage } from '../../../src/slack/views/status-message.ts';
import { guestWelcomeMessage } from '../../../src/slack/views/team/guest-messages.ts';
import { measuresSavedReply, teamSavedReply } from '../../../src/slack/views/team/team-messages.ts';
import { refusalMessage, troubleMessage } from '../../../src/slack/views/trouble-views.ts';
import { valueRecordedMessage } from '../../../src/slack/views/value-views.ts';
import { undefinedBecause } from '../../../src/sprint/undefined-value.ts';
import { refusalWords } from '../../../src/words/refusals.ts';
import { buttonsOf, mrkdwnTexts, wordsIn } from './view-checks.ts';
import {
  baselineNamedOf,
  card,
  heading,
  linesOf,
  missedVerdict,
  overview,
  plan,
  pullInCheckOf,
  statusOf,
  team,
  teamOverview,
  valueRecordedOf,
} from './view-examples.ts';

const list = {
  heading,
  cards: missedVerdict.cards,
  summary: missedVerdict.summary,
  planChanges: [],
  isOnTeam: true,
};
const [first, , , fourth, fifth] = missedVerdict.cards;
if (!first || !fourth || !fifth) throw new Error('the example has five cards');

describe('status', () => {
  it('leads with what is left, then the signal, the days, the answers, the ratios and what grew', () => {
    expect(statusMessage(statusOf()).text).toMatchInlineSnapshot(`
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
      • Wed 4 Nov, LP-1 Import tide tables: surprise work +2 – The tables come in two formats
      Only you see this. The channel gets the same numbers, without the notes.
      Buttons: Share in the channel, What if …?"
    `);
  });

  it('begins with the blocked cards, and says to the channel which they are, not on what', () => {
    const plain = statusOf();
    const status = statusOf({
      cards: plain.cards.map((line) =>
        line.number === 2 ? { ...line, blocked: { since: '2026-11-04', on: 'the key of shed 3' } } : line,
      ),
      summary: { ...plain.summary, blockedCardDays: 2 },
    });
    const lines = statusMessage(status).text.split('\n');
    expect(lines.slice(1, 3)).toEqual([
      '1 card is blocked',
      '2. LP-2 Show tides in the berth calendar: the key of shed 3 (since Wed 4 Nov)',
    ]);
    expect(lines).toContain('Blocked cards: 2 card-days so far.');
    const shared = sharedStatusMessage(status, 'U0ANA').text;
    expect(shared).toContain('2. LP-2 Show tides in the berth calendar: since Wed 4 Nov\n');
    expect(shared).not.toContain('shed 3');
  });

  it('can be shared by a button', () => {
    const [button] = buttonsOf(statusMessage(statusOf()).blocks);
    expect(button).toMatchObject({ label: 'Share in the channel', actionId: ACTIONS.shareStatus });
    expect(decodeValue(sprintValue, button?.value)).toEqual({ sprintId: 'sprint-12' });
  });

  it('says when no working day comes any more, and of a sprint that was reopened when it closes again', () => {
    expect(statusMessage(statusOf({ workingDaysLeft: 0 })).text).toContain(
      'No working day of the sprint comes after today; it closes on Fri 13 Nov at 17:00.',
    );
    const { drawn } = statusOf();
    const reopened = { ...drawn, sprint: { ...drawn.sprint, reopenedAt: new Date('2026-11-13T17:30:00Z') } };
    const { text } = statusMessage(statusOf({ drawn: reopened, workingDaysLeft: 6 }));
    expect(text).toContain('It closes again on Fri 13 Nov at 17:00.');
    expect(text).not.toMatch(/working days come after|Answers today/);
  });

  it('of a sprint that has not begun says when it does', () => {
    expect(statusMessage(statusOf({ begun: false })).text).toMatchInlineSnapshot(`
      "Harbour 12 begins on Mon 2 Nov
      Mon 2 Nov to Fri 13 Nov, 10 working days. Committed: 18 points on 5 cards. Once it runs, this shows how likely the commitment is to be kept.
      Only you see this. The channel gets the same numbers, without the notes.
      Buttons: Share in the channel"
    `);
  });
});

describe('cards', () => {
  it('are listed with number, name, estimate, standing, growth and owners', () => {
    expect(cardsMessage(list).text).toMatchInlineSnapshot(`
      "Harbour 12: 5 cards, 3 points left
      Load 23 points: 18 committed, 3 pulled in, 2 surprise work. Velocity 16 points.
      1. LP-1 Import tide tables: estimate 5, finished, surprise work +2 (<@U0ANA>)
      2. LP-2 Show tides in the berth calendar: estimate 8, finished, estimate drift +1 (<@U0ANA>, <@U0BEN>)
      3. LP-3 Print the harbour map: estimate 2, dropped (<@U0BEN>)
      4. Warn of low water: estimate 3, 3 points left (nobody yet)
      5. LP-5 Repair the tide gauge: estimate 3, finished, pulled in (<@U0ANA>)
      Change a card by its number: /loadline take 3, /loadline give 3 @name, /loadline drop 3 reason, /loadline reopen 3."
    `);
  });

  it('say which is blocked, on what and since when', () => {
    const blocked = { since: '2026-11-04', on: 'the key' };
    const [said, unsaid] = [blocked, { ...blocked, on: '' }].map(
      (block) => cardsMessage({ ...list, cards: [{ ...fourth, blocked: block }] }).text,
    );
    expect(said).toContain('3 points left (nobody yet). Blocked since Wed 4 Nov: the key\n');
    expect(unsaid).toContain('3 points left (nobody yet). Blocked since Wed 4 Nov.\n');
  });

  it('can be listed from a number on', () => {
    const text = cardsMessage(list, 4).text;
    expect(text).toContain('4. Warn of low water');
    expect(text).not.toContain('LP-3');
  });

  it('say where they are when the number is too high or there are none', () => {
    expect(cardsMessage(list, 90).text).toContain('No card has the number 90 or a higher one.');
    expect(cardsMessage({ ...list, cards: [] }).text).toContain('Bring one in with /loadline pull.');
  });

  it('names to a product owner who isn’t on the team what they can do, and nothing else', () => {
    const named = (cards: typeof list.cards) =>
      cardsMessage({ ...list, cards, isOnTeam: false }).text.match(/\/loadline \w+/g);
    expect(named(list.cards)).toEqual(['/loadline drop', '/loadline undrop']);
    expect(named([])).toBeNull();
  });
});

describe('changes of cards', () => {
  it('pulled in: the card and what it means for the pull-in ratio', () => {
    expect(
      pulledMessage({ ...list, cards: [fifth], alike: [], check: pullInCheckOf() }).text,
    ).toMatchInlineSnapshot(`
      "Pulled into Harbour 12 as card 5: LP-5 Repair the tide gauge, 3 points (<@U0ANA>).
      Pulled-in work is now 3 points, 16.7% of the commitment.
      Going by the team’s history, its chance of being finished after the open work is 42%. Done first, it’s 97%, and the open work waits. If it can wait, leave it for the next planning; if not, split off a part that fits, or agree which card waits in its place."
    `);
  });

  it('pulled in without an owner: nobody is asked about it', () => {
    expect(pulledMessage({ ...list, cards: [fourth], alike: [], check: pullInCheckOf() }).text).toContain(
      'until somebody takes it: /loadline take 4.',
    );
  });

  it('pulled in with the title of another card: perhaps it is a copy', () => {
    expect(pulledMessage({ ...list, cards: [fifth], alike: [3, 5], check: pullInCheckOf() }).text).toContain(
      'Cards 3 and 5 have the same title as another one. If one is a copy, drop it: /loadline drop 5 a copy.',
    );
  });

  it('dropped: where its estimate stays, and the reason', () => {
    expect(droppedMessage({ heading, card: first }, 'No longer wanted').text).toMatchInlineSnapshot(`
      "Dropped from Harbour 12: card 1, LP-1 Import tide tables. Reason: No longer wanted
      It keeps its 5 points in the commitment and counts as not finished.
      Buttons: Take it back"
    `);
    expect(droppedMessage({ heading, card: fifth }).text).toContain('in the pulled-in work');
  });

  it('given away or back, and given to you: whose they are now, and what to do next', () => {
    expect(ownersMessage({ heading, cards: [fourth, fifth] }, 'give').text).toMatchInlineSnapshot(`
      "Harbour 12: these cards have changed hands
      4. Warn of low water: estimate 3, 3 points left (nobody yet)
      5. LP-5 Repair the tide gauge: estimate 3, finished, pulled in (<@U0ANA>)
      The daily prompt asks the owners shown here. Nothing that was said about the cards has changed."
    `);
    expect(ownersMessage({ heading, cards: [fourth] }, 'release').text).toMatchInlineSnapshot(`
      "Harbour 12: this card was given back
      4. Warn of low water: estimate 3, 3 points left (nobody yet)
      The daily prompt asks the owners shown here. Nothing that was said about the cards has changed."
    `);
    const given = { kind: 'cards-given' as const, heading, cards: [fourth], byUserId: 'U0BEN' };
    expect(cardsGivenMessage(given).text).toMatchInlineSnapshot(`
      "<@U0BEN> gave you a card of Harbour 12
      4. Warn of low water: estimate 3, 3 points left (nobody yet)
      The daily prompt will ask you. To answer now: /loadline answer."
    `);
  });

  it('dropped, as the product owner reads it, and taken back', () => {
    const dropped = {
      kind: 'cards-dropped' as const,
      heading,
      cards: [fourth],
      byUserId: 'U0BEN',
      reason: 'no <data>',
    };
    expect(cardsDroppedMessage({ ...dropped, isTakenBack: false }).text).toMatchInlineSnapshot(`
      "<@U0BEN> dropped card 4 of Harbour 12, Warn of low water. Reason: no &lt;data&gt;
      If that was a mistake, you can take it back.
      Buttons: Take it back"
    `);
    expect(cardsDroppedMessage({ ...dropped, isTakenBack: true }).text).toMatchInlineSnapshot(`
      "<@U0BEN> dropped card 4 of Harbour 12, Warn of low water. Reason: no &lt;data&gt;
      The drop was taken back: the card is in the sprint again."
    `);
    expect(undroppedMessage({ heading, card: fourth }).text).toMatchInlineSnapshot(
      `"The drop is taken back: card 4 of Harbour 12, Warn of low water, is in the sprint again, with 3 points left."`,
    );
  });

  it('taken and reopened: what to do next', () => {
    expect(ownersMessage({ heading, cards: [fourth] }, 'take').text).toMatchInlineSnapshot(`
      "Harbour 12: this card is now yours
      4. Warn of low water: estimate 3, 3 points left (nobody yet)
      The daily prompt will ask you. To answer now: /loadline answer."
    `);
    expect(reopenedCardMessage({ heading, card: fifth }).text).toMatchInlineSnapshot(`
      "Card 5 of Harbour 12, LP-5 Repair the tide gauge, is open again.
      Say what is left on it: /loadline answer. Until then it counts as having nothing left."
    `);
  });
});

describe('changes of sprint and team', () => {
  it('closed, cancelled, reopened', () => {
    expect(sprintClosedReply(missedVerdict).text).toMatchInlineSnapshot(`
      "Harbour 12 is closed: missed. Finished 13 of 18 points committed (72.2%).
      The verdict goes to the team’s channel. If a number is wrong, reopen the sprint by closing time on the next working day: /loadline reopen."
    `);
    expect(sprintCancelledReply(missedVerdict).text).toMatchInlineSnapshot(`
      "Harbour 12 is cancelled, and the channel will see it. Its numbers are kept, and never count as history.
      Next: plan the coming sprint with /loadline plan."
    `);
    expect(
      sprintReopenedReply({ heading, until: new Date('2026-11-14T17:00:00Z'), lastDay: '2026-11-12' }).text,
    ).toMatchInlineSnapshot(`
      "Harbour 12 is open again for corrections. It closes by itself on Sat 14 Nov at 17:00 (Europe/Lisbon), or earlier with /loadline close.
      To correct an answer of a certain day: /loadline answer 2026-11-12."
    `);
  });

  it('planned, set up, measures saved', () => {
    expect(planCommittedReply({ ...plan, leftOut: [] }).text).toMatchInlineSnapshot(`
      "Harbour 12 is planned: 18 points on 4 cards. The channel sees the plan, and the sprint closes by itself on Fri 13 Nov at 17:00.
      See how it is going at any time: /loadline status."
    `);
    expect(teamSavedReply(team, false).text).toMatchInlineSnapshot(`
      "Harbour is set up. While a sprint runs, members are asked at 09:15 (Europe/Lisbon), Monday to Friday.
      Next: plan the first sprint with /loadline plan. Scale, thresholds and closing time have usual values; change them with /loadline setup measures."
    `);
    expect(measuresSavedReply(team).text).toMatchInlineSnapshot(`
      "Saved for Harbour. Sprints close at 17:00, the reminder comes 180 minutes after the prompt, and the scale is 1, 2, 3, 5, 8, 13, 21.
      The details of past sprints are kept for good.
      A sprint that is already planned keeps its closing time. The new thresholds count from the next closing on."
    `);
  });
});

describe('refusals', () => {
  it('say what is wrong and what to do about it, mentions included', () => {
    const words = { what: 'Only a facilitator of Harbour can close a sprint.', fix: 'Ask <@U0BEN>.' };
    expect(refusalMessage(words).text).toBe(`${words.what}\n${words.fix}`);
  });

  it('list several problems one by one', () => {
    const problems = [
      { field: 'title', message: 'Give the card a title.' },
      { field: 'estimate', message: 'Write points in halves.' },
    ];
    expect(refusalMessage({ what: 'unused', fix: 'Correct it.' }, problems).text).toBe(
      '2 things are wrong\n• Give the card a title.\n• Write points in halves.\nCorrect it.',
    );
  });

  it('cannot ping through words that somebody typed', () => {
    const view = refusalMessage(
      refusalWords(new Refusal('unknown-command', { word: '<!channel>', near: '&' })),
    );
    expect(mrkdwnTexts(view.blocks)).toEqual([
      '*There is no command “&lt;!channel&gt;”.*\nDid you mean `/loadline &amp;`? `/loadline help` lists them all.',
    ]);
  });

  it('of our own making give a code for the operator of the bot', () => {
    expect(troubleMessage('K7P2QX', 'nothing').text).toMatchInlineSnapshot(
      `"Something went wrong on our side, and nothing was recorded. Please try again. If it happens again, give the person who runs this bot the code “K7P2QX”."`,
    );
    expect(troubleMessage('K7P2QX', 'uncertain').text).toMatchInlineSnapshot(
      `"Something went wrong on our side, and it is not certain whether this was recorded. Look first, then try again if it is missing. If it happens again, give the person who runs this bot the code “K7P2QX”."`,
    );
    expect(troubleMessage('K7P2QX', 'kept').text).toMatchInlineSnapshot(
      `"This was recorded, but something went wrong on our side while showing it. You don’t need to do it again. If anything is missing, give the person who runs this bot the code “K7P2QX”."`,
    );
  });
});

describe('help', () => {
  const role = { isMember: false, isFacilitator: false, isProductOwner: false };
  const ROLES: [string, TeamOverview[], string][] = [
    ['a member', [teamOverview({ ...role, isMember: true })], 'answer'],
    ['a facilitator', [teamOverview({ ...role, isMember: true, isFacilitator: true })], 'plan'],
    ['the product owner', [teamOverview({ ...role, isProductOwner: true })], 'drop'],
    ['somebody outside', [], 'setup'],
  ];

  it.each(ROLES)(
    'of %s is at most five lines and 80 words, with all else behind a button',
    (_who, teams, first) => {
      const view = helpMessage({ teams });
      const lines = view.text.match(/^• .*/gm) ?? [];
      expect(lines.length).toBeLessThanOrEqual(5);
      expect(lines.some((line) => line.startsWith(`• /loadline ${first}:`))).toBe(true);
      expect(wordsIn(view)).toBeLessThanOrEqual(80);
      expect(buttonsOf(view.blocks).map(({ actionId }) => actionId)).toEqual([
        ACTIONS.showAllCommands,
        ACTIONS.showPrivacy,
      ]);
    },
  );

  it('about one command says how it is typed and what it does', () => {
    const forecast = COMMANDS.find(({ word }) => word === 'forecast') as Command;
    expect(commandHelpMessage(forecast).text).toMatch(/^• \/loadline forecast .*: \S/);
  });

  it('names only commands that there are', () => {
    const words = COMMANDS.map(({ word }) => word);
    for (const named of Object.values(USED_MOST).flat()) expect(words).toContain(named);
  });

  it('is made from the command table: every command, its usage, summary and telling examples', () => {
    expect(allCommandsMessage(COMMANDS).text).toMatchInlineSnapshot(`
      "What you can ask of Loadline
      /loadline alone shows what you can do now. Words after it do more:
      For everyone on the team
      • /loadline answer [day | card: left]: Say what is left on your cards, today or on an earlier day. For example /loadline answer 3: 2 worked 1 or /loadline answer yesterday 3: 2.
      • /loadline pull [title, estimate, @owner]: Bring in cards after planning, one a line. For example /loadline pull Repair the tide gauge, 3, @ana.
      • /loadline take card …: Become an owner of cards.
      • /loadline give card … @name …: Give your place on cards to others; co-owners stay.
      • /loadline release card …: Give up your place on cards.
      • /loadline blocked card reason: Say that a card is stuck, and on what. For example /loadline blocked 2 waiting for the key.
      • /loadline moving card: Say that a blocked card is moving again.
      • /loadline off [days] [half]: Say days off in advance, as a facilitator also the team’s. For example /loadline off 24 Dec to 2 Jan.
      • /loadline works weekdays: Say on which weekdays you work.
      • /loadline ask [time zone]: Choose when you are asked each day. For example /loadline ask 10:30 Europe/Lisbon; /loadline ask team for the team’s time.
      • /loadline reopen [card]: Open a finished card again; without a card, the closed sprint.
      For everyone on the team and its product owner
      • /loadline status: See how the sprint is going. Only you see it, unless you share it.
      • /loadline cards [first number]: List the sprint’s cards, all or from one number on.
      • /loadline drop [card reason]: Take a card out of the sprint, with a reason.
      • /loadline undrop card: Take back a drop that was a mistake.
      • /loadline range [points] [first day] [last day] [N away]: See how much to commit to next; N: everybody’s days off and away. For example /loadline range 30 Nov - 11 Dec, 6 away.
      • /loadline odds: See which sizes of card tend to hold surprise work.
      • /loadline forecast [points | by day | keep name points]: See when work is finished, and how kept dates move.
      • /loadline history: See each ratio’s trend, what is usual, and what is a signal.
      • /loadline experiments [keep which]: See and decide about what it tries.
      • /loadline retro [sprint]: Get what a retrospective needs of a sprint.
      • /loadline verdict [on | off]: Get verdicts as messages to you, too.
      • /loadline leave [team]: Leave the team, whatever you are on it.
      For product owners and facilitators
      • /loadline goal [yes | partly | no] [sentence]: Say whether the sprint goal was met.
      • /loadline value [sprint:] [number]: Record what a closed sprint was worth. For example /loadline value Harbour 12: 1200.
      For facilitators
      • /loadline assign card … @name …: Say whose cards are.
      • /loadline plan: Plan the next sprint and commit to its cards.
      • /loadline edit [card]: Correct the sprint or a card.
      • /loadline guest [remove] @name …: Let people take part in this sprint only.
      • /loadline close: Close the sprint before its time.
      • /loadline cancel: Cancel the sprint; its numbers never count as history.
      • /loadline baseline [sprint | first | first three]: Choose what velocity growth is compared with.
      • /loadline try [what]: Keep what the team agreed to try.
      • /loadline digest [time]: Hear of the sprint each morning.
      • /loadline import: Bring in past sprints from files.
      • /loadline import remove: Take an imported sprint out.
      • /loadline export: Get all of the team’s sprints and kept work as files, without who said what.
      • /loadline move [team]: Move your team to the channel in which you type it.
      • /loadline setup measures: Change closing time, scale, thresholds and more.
      • /loadline end: End the team.
      • /loadline resume: Take that back.
      For anyone
      • /loadline setup: Set up a team in its channel, or change it.
      • /loadline privacy: See what is stored about you, get a copy, or be erased.
      • /loadline help [command]: See what you’ll use most, or how a command is used.
      Buttons: What is stored about me
      The message itself has 1 more line."
    `);
    for (const { word } of COMMANDS)
      expect(allCommandsMessage(COMMANDS).text).toMatch(
        new RegExp(`^• /loadline ${word}( [^:]+| \\[.*\\])?: [A-Z]`, 'm'),
      );
  });
});

describe('a recorded value', () => {
  const growthOf = (over: Parameters<typeof valueRecordedOf>[0]): string =>
    valueRecordedMessage(valueRecordedOf(over)).text.split('\n')[1] ?? '';

  it('says what was recorded and replaced, how it grew beside velocity, and what that does not say', () => {
    expect(valueRecordedMessage(valueRecordedOf()).text).toMatchInlineSnapshot(`
      "Recorded for Harbour 11 (ended 30 October 2026): 12,500. It replaces 1,200, which is kept on record.
      Compared with Harbour 3, the value is 150% and velocity is 120%: a point brought 125% of what it brought then.
      What this doesn’t say: value often comes sprints after the work, and depends on more than the team’s work. That both grow doesn’t mean that one made the other grow.
      Buttons: Record another value, History"
    `);
  });

  it('that is the first of its sprint replaces nothing; one that is recorded already changes nothing', () => {
    const first = valueRecordedMessage(valueRecordedOf({ previousValue: undefined })).text;
    expect(first).not.toContain('place of');
    const same = valueRecordedMessage(valueRecordedOf({ previousValue: 12_500 })).text;
    expect(same).toContain('already has the value 12,500; nothing changed.');
  });

  it('by which growth is measured says so', () => {
    expect(growthOf({ measuredBy: { sprintId: 'sprint-11', name: 'Harbour 11' } })).toBe(
      'The growth of value is compared with this sprint. Record the sprints after it, and you see how value grows next to velocity.',
    );
  });

  it('without a growth says what is missing', () => {
    expect(growthOf({ measuredBy: undefined })).toContain(
      'once a closed sprint in which points were finished',
    );
    const before = undefinedBecause('before-valued-sprint');
    expect(
      growthOf({ growth: { valueGrowth: before, velocityGrowth: before, valuePerPointGrowth: before } }),
    ).toBe(
      'There is no growth for this sprint. The sprint came before the one that growth is compared with.',
    );
    const idle = undefinedBecause('nothing-finished');
    expect(growthOf({ growth: { valueGrowth: 2, velocityGrowth: 0, valuePerPointGrowth: idle } })).toBe(
      'Compared with Harbour 3, the value is 200% and velocity is 0%. Nothing was finished in the sprint.',
    );
  });

  it('below 0 makes no sentence about the worth of a point', () => {
    expect(
      growthOf({ value: -5, growth: { valueGrowth: -0.5, velocityGrowth: 1, valuePerPointGrowth: -0.5 } }),
    ).toBe('Compared with Harbour 3, the value is -50% and velocity is 100%.');
  });
});

describe('a guest', () => {
  it('of one day hears of no span of days', () => {
    const about = { kind: 'guest-welcome', heading, byUserId: 'U0ANA' } as const;
    const { endsOn } = heading.sprint;
    expect(guestWelcomeMessage({ ...about, from: endsOn }).text).toContain(
      'take part on Fri 13 Nov. On each',
    );
    expect(guestWelcomeMessage({ ...about, from: '2026-11-04' }).text).toContain(
      'from Wed 4 Nov to Fri 13 Nov.',
    );
  });
});

describe('the baseline sprint', () => {
  it('says what it is now, what it was, what changes and what stays', () => {
    expect(baselineNamedMessage(baselineNamedOf()).text).toMatchInlineSnapshot(`
      "Velocity growth of Harbour is now compared with Harbour 11 (ended 30 October 2026, 12.5 points finished). Until now it was Harbour 3 (ended 26 December 2025, 10 points finished). For Harbour 12, the latest, it is now 120% instead of 150%.
      Verdicts that are posted keep their numbers. The next ones, and the history, use the new baseline."
    `);
  });

  it('that is the first says so, and one that is named already changes nothing', () => {
    expect(baselineNamedMessage(baselineNamedOf({ isFirst: true, before: undefined })).text).toBe(
      'Velocity growth of Harbour is compared with Harbour 11 (ended 30 October 2026, 12.5 points finished), the first sprint with a velocity, as before.',
    );
  });

  it('of the same velocity changes nothing for the latest sprint', () => {
    const latest = { name: 'Harbour 12', growthBefore: 2.2, growthAfter: 2.2 };
    expect(baselineNamedMessage(baselineNamedOf({ latest })).text).toContain('the latest, it stays at 220%.');
  });

  it('that is the latest sprint shows no growth of it', () => {
    expect(baselineNamedMessage(baselineNamedOf({ latest: undefined })).text).not.toContain('the latest');
  });
});

describe('overview', () => {
  const QUESTIONS = ['Commitment range', 'Surprise odds', 'Forecast', 'History'];
  const labels = (over: Parameters<typeof teamOverview>[0]): string[] =>
    buttonsOf(overviewMessage({ teams: [teamOverview(over)], canSetUpHere: false }).blocks).map(
      ({ label }) => label,
    );

  it('says how things are and what the caller can do', () => {
    expect(overviewMessage(overview).text).toMatchInlineSnapshot(`
      "What you can do now
      Harbour
      Harbour 12 is running and closes on Fri 13 Nov at 17:00.
      You have 3 open cards: LP-1 Import tide tables, LP-2 Show tides in the berth calendar and LP-5 Repair the tide gauge.
      Today’s question is waiting for your answer.
      Buttons: Answer, Status, Cards, Pull in cards, Drop a card
      Buttons: Plan another sprint, Commitment range, Surprise odds, Forecast, History
      Buttons: Edit the sprint, Close the sprint, Cancel the sprint, Morning digest, Team and times, Scale and thresholds
      Buttons: Import past sprints
      All commands: /loadline help.
      Buttons: Help, What is stored about me"
    `);
  });

  it('points its buttons at the team’s channel, wherever they are pressed', () => {
    const [answer, ...others] = buttonsOf(overviewMessage(overview).blocks);
    expect(decodeValue(sprintDayValue, answer?.value)).toEqual({ sprintId: 'sprint-12' });
    // These two are the same everywhere.
    expect(others.splice(-2).map(({ label }) => label)).toEqual(['Help', 'What is stored about me']);
    for (const { value } of others)
      expect(decodeValue(placeValue, value)).toEqual({ channelId: 'C0HARBOUR' });
  });

  it('offers a member what a member may do', () => {
    expect(labels({ isFacilitator: false })).toEqual([
      'Answer',
      'Status',
      'Cards',
      'Pull in cards',
      'Drop a card',
      ...QUESTIONS,
      'Help',
      'What is stored about me',
    ]);
  });

  it('keeps each row of buttons short, and asks a facilitator for what is recorded of past sprints', () => {
    const view = overviewMessage({
      teams: [teamOverview({ hasFinishedSprint: true, isProductOwner: true })],
      canSetUpHere: false,
    });
    const rows = view.blocks.flatMap((block) => (block.type === 'actions' ? [block.elements.length] : []));
    expect(Math.max(...rows)).toBeLessThanOrEqual(6);
    expect(buttonsOf(view.blocks).map(({ label }) => label)).toEqual(
      expect.arrayContaining(['Record a value', 'Baseline sprint']),
    );
  });

  it('offers the product owner who is no member what is theirs, and says what is not', () => {
    const over = {
      isMember: false,
      isProductOwner: true,
      isFacilitator: false,
      myOpenCards: [],
      promptState: undefined,
      hasFinishedSprint: true,
    } as const;
    const { text } = overviewMessage({ teams: [teamOverview(over)], canSetUpHere: false });
    expect(text).toContain('You are its product owner');
    expect(text).toContain('Harbour 12 is running');
    expect(text).not.toContain('open card');
    const offered = labels(over);
    for (const label of ['Record a value', 'Verdicts to me too', 'Status', 'Cards', 'Drop a card'])
      expect(offered).toContain(label);
    for (const label of ['Answer', 'Pull in cards', 'Baseline sprint', 'Team and times'])
      expect(offered).not.toContain(label);
    expect(labels({ ...over, hasFinishedSprint: false })).not.toContain('Record a value');
    expect(labels({ ...over, getsVerdicts: true })).toContain('No verdicts to me');
  });

  it('offers a member who is no facilitator neither value nor baseline', () => {
    const offered = labels({ isFacilitator: false, hasFinishedSprint: true });
    expect(offered).not.toContain('Record a value');
    expect(offered).not.toContain('Baseline sprint');
  });

  it('shows as many teams as a message holds, and counts the others', () => {
    const teams = Array.from({ length: 40 }, () => teamOverview({ hasFinishedSprint: true }));
    const view = overviewMessage({ teams, canSetUpHere: true }, 'C0QUAY');
    expect(view.blocks.length).toBeLessThanOrEqual(50);
    const shown = buttonsOf(view.blocks).filter(({ label }) => label === 'Team and times').length;
    expect(shown).toBeGreaterThan(5);
    expect(mrkdwnTexts(view.blocks).join()).toContain(`You have ${40 - shown} more teams: type`);
  });

  it('offers to change an answer once it is given', () => {
    expect(labels({ promptState: 'answered', isFacilitator: false })[0]).toBe('Change my answer');
  });

  it('offers planning, and the last sprint again, while none runs', () => {
    const idle = {
      sprint: undefined,
      begun: false,
      myOpenCards: [],
      promptState: undefined,
      reopenable: true,
    };
    expect(labels(idle)).toEqual([
      'Plan a sprint',
      ...QUESTIONS,
      'Reopen the last sprint',
      'Morning digest',
      'Team and times',
      'Scale and thresholds',
      'Import past sprints',
      'Help',
      'What is stored about me',
    ]);
    expect(labels({ ...idle, isFacilitator: false })).toEqual([
      ...QUESTIONS,
      'Help',
      'What is stored about me',
    ]);
  });

  it('offers no answering before the first day', () => {
    expect(labels({ begun: false })).not.toContain('Answer');
  });

  it('offers to set up a team in a channel that has none', () => {
    const view = overviewMessage({ teams: [], canSetUpHere: true }, 'C0QUAY');
    const [button] = buttonsOf(view.blocks);
    expect(button).toMatchObject({ label: 'Set up a team', actionId: 'open-setup-form' });
    expect(decodeValue(placeValue, button?.value)).toEqual({ channelId: 'C0QUAY' });
  });

  it('tells somebody without a team how to get one', () => {
    expect(overviewMessage({ teams: [], canSetUpHere: false }).text).toContain('You aren’t in a team here.');
  });

  it('names three open cards and counts the others', () => {
    const myOpenCards = linesOf([1, 2, 3, 4, 5].map((number) => card(number)));
    const view = overviewMessage({ teams: [teamOverview({ myOpenCards })], canSetUpHere: false });
    expect(view.text).toContain('You have 5 open cards: LP-1 Card 1, LP-2 Card 2, LP-3 Card 3 and 2 more.');
  });
});
