import { describe, expect, test } from 'vitest';
import { recordAway, recordUnchanged } from '../../../src/app/answering/record-answers.ts';
import { dropCard } from '../../../src/app/cards/change-cards.ts';
import { cancelSprint, closeSprint, reopenSprint } from '../../../src/app/closing/end-sprint.ts';
import { answerCount, askedPrompts } from '../../../src/app/closing/sprint-habits.ts';
import type { VerdictContent } from '../../../src/app/closing/verdict-content.ts';
import type { Prompt, RecordedFact, Sprint, SprintCard, Team } from '../../../src/app/team/team.ts';
import { dayPlus } from '../../../src/sprint/calendar.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';
import { actorOf, CHANNEL, type Harness, harnessForEach, PEOPLE } from '../../support/app-harness.ts';
import { importPast, pastSprintsOf } from '../past-sprints.ts';

// Mondays to Fridays of two weeks each from 2 November 2026 on, in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

async function sprintOf(h: Harness, team: Team, place: number, cards: string): Promise<Sprint> {
  const startsOn = dayPlus('2026-11-02', 14 * place);
  h.set(`${startsOn}T08:00:00Z`);
  const span = { startsOn, endsOn: dayPlus(startsOn, 11) };
  return (await h.plan(team, { name: `Harbour ${place + 1}`, ...span, cards })).sprint;
}

async function close(h: Harness, sprint: Sprint): Promise<void> {
  await h.pass(`${sprint.endsOn}T17:00:00Z`);
}

function lastVerdict(h: Harness): VerdictContent {
  const verdicts = h
    .messagesTo(CHANNEL)
    .flatMap((content) => (content.kind === 'verdict' ? [content.verdict] : []));
  return verdicts.at(-1) as VerdictContent;
}

/** The cards of the note in the last verdict: title → sprints in a row. */
function carriedIn(h: Harness): Record<string, number> {
  const { summary, cards } = lastVerdict(h);
  const carried = summary.notes.flatMap((note) => (note.id === 'carry-over-repeated' ? note.cards : []));
  return Object.fromEntries(
    carried.map(({ cardId, sprints }) => [cards.find((card) => card.cardId === cardId)?.title, sprints]),
  );
}

describe('a card open at the end of several sprints in a row', () => {
  test('is named with their number, from the second on, also with another place and estimate', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await close(h, await sprintOf(h, team, 0, 'LP-7: Tide table, 5, @Ben\nCrane log, 3, @Chi'));
    expect(carriedIn(h)).toEqual({});
    await close(h, await sprintOf(h, team, 1, 'Buoy, 1, @Ben\ncrane  LOG, 2, @Ben\nlp-7: Tides, 8, @Ben'));
    expect(carriedIn(h)).toEqual({ 'crane LOG': 2, Tides: 2 });
    await close(h, await sprintOf(h, team, 2, 'LP-7: Tide table, 5, @Ben\nFog horn, 3, @Chi\nBuoy, 1, @Ben'));
    expect(carriedIn(h)).toEqual({ 'Tide table': 3, Buoy: 2 });
  });

  test('is not when it was finished, dropped or left out in between', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const cards = 'Tide table, 5, @Ben\nCrane log, 3, @Chi\nBuoy, 1, @Ben';
    await close(h, await sprintOf(h, team, 0, cards));
    const second = await sprintOf(h, team, 1, 'Tide table, 5, @Ben\nCrane log, 3, @Chi');
    await h.pass(`${second.startsOn}T09:15:00Z`);
    await h.answer('ben', second.id, second.startsOn, { 1: { left: '0' } });
    await dropCard(h.deps, ana, { place: CHANNEL, reference: '2', reason: 'off' });
    await close(h, second);
    expect(carriedIn(h)).toEqual({});
    await close(h, await sprintOf(h, team, 2, cards));
    expect(carriedIn(h)).toEqual({});
  });

  test('a cancelled sprint is passed over, an imported one ends the row', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await importPast(h, team, pastSprintsOf([{}, {}]));
    await close(h, await sprintOf(h, team, 0, 'Tide table, 5, @Ben'));
    expect(carriedIn(h)).toEqual({});
    const second = await sprintOf(h, team, 1, 'Fog horn, 5, @Ben');
    await cancelSprint(h.deps, ana, { sprintId: second.id, reason: '' });
    await close(h, await sprintOf(h, team, 2, 'Tide table, 5, @Ben\nFog horn, 5, @Ben'));
    expect(carriedIn(h)).toEqual({ 'Tide table': 2 });
  });
});

const TEAM = {
  timeZone: 'Europe/Lisbon',
  promptAt: '09:15',
  workingDays: [1, 2, 3, 4, 5],
  daysOff: NO_DAYS_OFF,
};
const SPRINT = {
  startsOn: '2026-11-02',
  endsOn: '2026-11-13',
  closesAt: '17:00',
  closedAt: new Date('2026-11-13T17:00:00Z'),
};
const CARD: SprintCard = {
  id: 'card',
  sprintId: 'sprint',
  number: 1,
  key: '1',
  title: 'Tide table',
  estimatePoints: 5,
  origin: 'planned',
  enteredOn: '2026-11-02',
  ownerIds: [PEOPLE.ben],
  addedBy: PEOPLE.ana,
};
const promptOf = (day: string, change: Partial<Prompt> = {}): Prompt => ({
  sprintId: 'sprint',
  userId: PEOPLE.ben,
  day,
  state: 'asked',
  postId: 'post',
  answeredAt: undefined,
  ...change,
});
const finishedOn = (day: string): RecordedFact => ({
  id: 'fact',
  kind: 'answer',
  cardId: 'card',
  memberId: PEOPLE.chi,
  day,
  order: 1,
  workedPoints: undefined,
  leftPoints: 0,
  surprisePoints: 0,
  note: '',
  recordedAt: new Date(0),
  supersedesId: undefined,
});

describe('prompts and those met', () => {
  const count = (prompts: Prompt[], facts: RecordedFact[] = [], sprint = SPRINT) =>
    answerCount(TEAM, sprint, askedPrompts(TEAM, SPRINT, [], prompts), { cards: [CARD], facts });

  test('answered, unchanged and away are met', () => {
    const states = (['answered', 'unchanged', 'away', 'asked'] as const).map((state, i) =>
      promptOf(dayPlus('2026-11-03', i), { state, answeredAt: new Date('2026-11-05T12:00:00Z') }),
    );
    expect(count(states)).toEqual({ prompts: 4, met: 3 });
  });

  test('who speaks before being asked has met the day; an answer that nobody asked for does not count', () => {
    const unasked = (at: string) =>
      promptOf('2026-11-03', { postId: undefined, state: 'answered', answeredAt: new Date(at) });
    expect(count([unasked('2026-11-03T08:00:00Z')])).toEqual({ prompts: 1, met: 1 });
    expect(count([unasked('2026-11-03T11:00:00Z')])).toEqual({ prompts: 0, met: 0 });
  });

  test('a prompt to which nothing was left to say by the evening is left out', () => {
    const prompts = [promptOf('2026-11-03'), promptOf('2026-11-04')];
    expect(count(prompts, [finishedOn('2026-11-04')])).toEqual({ prompts: 1, met: 0 });
  });

  test('a card is its owner’s of that evening, though it was given away or taken since', () => {
    const prompts = [promptOf('2026-11-03'), promptOf('2026-11-04')];
    const counted = (ownerIds: readonly string[], kind: 'added' | 'removed') => {
      const moves = [{ cardId: CARD.id, userId: PEOPLE.ben, kind, day: '2026-11-04' }];
      const records = { cards: [{ ...CARD, ownerIds }], facts: [] };
      return answerCount(TEAM, SPRINT, askedPrompts(TEAM, SPRINT, [], prompts), records, moves);
    };
    expect(counted([], 'removed')).toEqual({ prompts: 1, met: 0 });
    expect(counted([PEOPLE.ben], 'added')).toEqual({ prompts: 1, met: 0 });
  });

  test('the day of a closing before its time is left out unless it was met', () => {
    const early = { ...SPRINT, closedAt: new Date('2026-11-04T10:00:00Z') };
    const prompts = [promptOf('2026-11-03'), promptOf('2026-11-04')];
    expect(count(prompts, [], early)).toEqual({ prompts: 1, met: 0 });
    expect(count([promptOf('2026-11-04', { state: 'away' })], [], early)).toEqual({ prompts: 1, met: 1 });
    expect(count(prompts, [], { ...SPRINT, closedAt: new Date('2026-11-16T09:00:00Z') })).toEqual({
      prompts: 2,
      met: 0,
    });
  });
});

describe('the answer rate of a sprint', () => {
  const rateNote = (h: Harness) => lastVerdict(h).summary.notes.find(({ id }) => id === 'answer-rate-low');

  test('below 80% gives a note with the counts, of the whole team and of nobody', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const sprint = await sprintOf(h, team, 0, 'Tide table, 5, @Ben\nCrane log, 3, @Chi');
    for (let day = '2026-11-02'; day <= '2026-11-13'; day = dayPlus(day, 1)) {
      await h.pass(`${day}T09:15:00Z`);
      if (day === '2026-11-07' || day === '2026-11-08') continue;
      if (day <= '2026-11-06') await recordUnchanged(h.deps, actorOf('ben'), { sprintId: sprint.id, day });
      if (day <= '2026-11-04') await recordAway(h.deps, actorOf('chi'), { sprintId: sprint.id, day });
    }
    await close(h, sprint);
    // Nine working days after the first for two members; four and two of them met.
    expect(lastVerdict(h).summary.answers).toEqual({ prompts: 18, met: 6 });
    expect(rateNote(h)).toEqual({
      id: 'answer-rate-low',
      value: 6 / 18,
      threshold: 0.8,
      answers: { prompts: 18, met: 6 },
    });
  });

  test('of a sprint in which nobody was asked gives none', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    await close(h, await sprintOf(h, team, 0, 'Tide table, 5'));
    expect(lastVerdict(h).summary.answers).toEqual({ prompts: 0, met: 0 });
    expect(rateNote(h)).toBeUndefined();
  });

  test('is counted again when late answers come in after a reopening', async () => {
    const h = harness();
    const team = await h.setUpTeam();
    const sprint = await sprintOf(h, team, 0, 'Tide table, 5, @Ben');
    for (const day of ['2026-11-02', '2026-11-03', '2026-11-04', '2026-11-05'])
      await h.pass(`${day}T09:15:00Z`);
    await closeSprint(h.deps, ana, { place: CHANNEL });
    await h.drain();
    expect(lastVerdict(h).summary.answers).toEqual({ prompts: 2, met: 0 });
    await reopenSprint(h.deps, ana, { place: CHANNEL });
    await recordUnchanged(h.deps, actorOf('ben'), { sprintId: sprint.id, day: '2026-11-03' });
    await closeSprint(h.deps, ana, { sprintId: sprint.id });
    await h.drain();
    expect(lastVerdict(h).summary.answers).toEqual({ prompts: 2, met: 1 });
  });
});
