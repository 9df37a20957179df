import { describe, expect, test } from 'vitest';
import { cancelSprint, closeSprint } from '../../../src/app/closing/end-sprint.ts';
import { planForm } from '../../../src/app/planning/plan-form.ts';
import { commitPlan, previewPlan, previewTicked } from '../../../src/app/planning/plan-sprint.ts';
import { setMeasures } from '../../../src/app/team/set-measures.ts';
import {
  actorOf,
  CHANNEL,
  directMessagesOf,
  harnessForEach,
  PEOPLE,
  problemsOf,
  refusalOf,
} from '../../support/app-harness.ts';
import { typedMeasures } from '../../support/typed-measures.ts';

// Friday noon in Lisbon, which is on UTC then.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

async function withTeam() {
  const h = harness();
  const team = await h.setUpTeam();
  return { h, team };
}

describe('the plan form', () => {
  test('of a team’s first sprint begins today with a name to go on from', async () => {
    const { h, team } = await withTeam();
    expect(await planForm(h.deps, ana, CHANNEL)).toMatchObject({
      team: { id: team.id },
      leftOver: 0,
      draft: {
        teamId: team.id,
        name: 'Sprint 1',
        startsOn: '2026-10-30',
        endsOn: '2026-11-12',
        closesAt: '17:00',
        cards: '',
      },
    });
  });

  test('begins on the next working day', async () => {
    const { h } = await withTeam();
    h.set('2026-10-31T12:00:00Z');
    expect((await planForm(h.deps, ana, CHANNEL)).draft.startsOn).toBe('2026-11-02');
  });

  test('goes on from the sprint that closed today: next number, same length, and what was left over', async () => {
    const { h, team } = await withTeam();
    const { sprint } = await h.plan(team, {
      cards: [
        'LP-7: "Big" red button; blue rim\t5\t@Ben',
        'Crane log\t3\t@Chi',
        'Pilot roster, 2, @Ben @Chi',
        '"""Ahoy"" sign", 1',
      ].join('\n'),
    });
    h.set('2026-11-13T16:00:00Z');
    await h.answer('ben', sprint.id, '2026-11-13', { 1: { left: '2,5' } });
    await h.answer('chi', sprint.id, '2026-11-13', { 2: { left: '0' } });
    await h.pass('2026-11-13T17:00:00Z');
    const { draft, leftOver } = await planForm(h.deps, ana, CHANNEL);
    expect([draft.name, draft.startsOn, draft.endsOn, leftOver]).toEqual([
      'Harbour 13',
      '2026-11-16',
      '2026-11-27',
      3,
    ]);
    const { cards } = await previewPlan(h.deps, ana, draft);
    expect(
      cards.map(({ key, title, estimatePoints, ownerIds }) => [key, title, estimatePoints, ownerIds]),
    ).toEqual([
      ['LP-7', '"Big" red button; blue rim', 2.5, [PEOPLE.ben]],
      ['2', 'Pilot roster', 2, [PEOPLE.ben, PEOPLE.chi]],
      ['3', '"Ahoy" sign', 1, []],
    ]);
  });

  test('asks for a new estimate of each of them where the team wants that', async () => {
    const { h, team } = await withTeam();
    await setMeasures(h.deps, ana, { teamId: team.id, ...typedMeasures({ carriedOver: 'new-estimate' }) });
    await h.plan(team, { cards: 'Tide table, 5, <@UBEN>' });
    await h.pass('2026-11-13T17:00:00Z');
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    expect(draft.cards).toBe('Tide table\t?\t@Ben Ode');
    expect(await problemsOf(previewPlan(h.deps, ana, draft))).toEqual({
      cards: expect.stringContaining('“?” isn’t an estimate'),
    });
    const { cards } = await previewPlan(h.deps, ana, { ...draft, cards: draft.cards.replace('?', '8') });
    expect(cards).toMatchObject([{ title: 'Tide table', estimatePoints: 8 }]);
  });

  test('leaves out owners who are not on the team any more', async () => {
    const { h, team } = await withTeam();
    await h.plan(team);
    await h.pass('2026-11-13T17:00:00Z');
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.chi] });
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    const { cards } = await previewPlan(h.deps, ana, draft);
    expect(cards.map(({ ownerIds }) => ownerIds)).toEqual([[], [PEOPLE.chi], [PEOPLE.chi]]);
  });

  test('tells two owners of the same name apart', async () => {
    const { h } = await withTeam();
    const chi = h.directory.people.get(PEOPLE.chi);
    if (chi) h.directory.people.set(PEOPLE.chi, { ...chi, name: 'Ben Ode' });
    const team = await h.setUpTeam();
    await h.plan(team, { cards: 'Tide table, 5, <@UBEN>\nCrane log, 3, <@UCHI> <@UANA>' });
    await h.pass('2026-11-13T17:00:00Z');
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    const { cards } = await previewPlan(h.deps, ana, draft);
    expect(cards.map(({ ownerIds }) => [...ownerIds].sort())).toEqual([
      [PEOPLE.ben],
      [PEOPLE.ana, PEOPLE.chi],
    ]);
  });

  test('begins after the sprint that is running', async () => {
    const { h, team } = await withTeam();
    await h.plan(team);
    h.set('2026-11-12T12:00:00Z');
    const { draft, leftOver } = await planForm(h.deps, ana, CHANNEL);
    expect([draft.startsOn, draft.endsOn, leftOver]).toEqual(['2026-11-16', '2026-11-27', 3]);
    // Their points may change until it ends.
    const { warnings } = await previewPlan(h.deps, ana, { ...draft, cards: `Lock gate, 3\n${draft.cards}` });
    const inWork = { code: 'still-in-work', cardNumbers: [2, 3, 4], sprintName: 'Harbour 12' };
    expect(warnings).toContainEqual({ ...inWork, endsOn: '2026-11-13' });
  });

  test('says which cards the sprint before has finished since the form was opened, by their short names', async () => {
    const { h, team } = await withTeam();
    const cards = 'QUAY-1: Tide table, 2, @Ben\nDuty, 1, @Ben\nQUAY-2: Crane log, 3, @Chi';
    const { sprint } = await h.plan(team, { cards });
    h.set('2026-11-12T12:00:00Z');
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    await h.answer('ben', sprint.id, '2026-11-12', { 1: { left: '0' }, 2: { left: '0' } });
    const finished = { code: 'finished-before', cardNumbers: [1], sprintName: 'Harbour 12' };
    for (const at of ['2026-11-12T13:00:00Z', '2026-11-13T17:00:00Z']) {
      await h.pass(at);
      expect((await previewPlan(h.deps, ana, draft)).warnings).toContainEqual(finished);
    }
  });

  test('fills nothing in from a sprint that is planned and has not begun', async () => {
    const { h, team } = await withTeam();
    await h.plan(team);
    h.set('2026-11-12T12:00:00Z');
    const days = { startsOn: '2026-11-16', endsOn: '2026-11-27' };
    await h.plan(team, { name: 'Harbour 13', cards: 'Lock gate, 3, @Ben', ...days });
    const { draft, leftOver } = await planForm(h.deps, ana, CHANNEL);
    expect([draft.startsOn, draft.cards, leftOver]).toEqual(['2026-11-30', '', 0]);
  });

  test('shows again what was typed and not committed to', async () => {
    const { h, team } = await withTeam();
    const typed = h.planInput(team, { cards: 'Tide table, many, @Ben' });
    await problemsOf(previewPlan(h.deps, ana, typed));
    expect(await planForm(h.deps, ana, CHANNEL)).toMatchObject({ draft: typed, leftOver: 0 });
  });

  test('keeps drafts apart by person', async () => {
    const { h } = await withTeam();
    const team = await h.setUpTeam({ facilitatorIds: [PEOPLE.ana, PEOPLE.ben] });
    await previewPlan(h.deps, ana, h.planInput(team));
    expect((await planForm(h.deps, actorOf('ben'), CHANNEL)).draft.cards).toBe('');
    await refusalOf(commitPlan(h.deps, actorOf('ben'), { teamId: team.id }), 'no-draft');
  });
});

describe('cards that are left out in the preview', () => {
  test('are neither in the commitment nor committed to, and are given back', async () => {
    const { h, team } = await withTeam();
    const { fingerprint: seen, tickable } = await previewPlan(h.deps, ana, h.planInput(team));
    expect(tickable.map(({ number }) => number)).toEqual([1, 2, 3]);
    const ticked = { teamId: team.id, seen, ticked: ['1', '3'] };
    const preview = await previewTicked(h.deps, ana, ticked);
    expect(preview.cards.map(({ title }) => title)).toEqual(['Tide table', 'Pilot roster']);
    expect(preview.leftOut.map(({ title }) => title)).toEqual(['Crane log']);
    expect(preview.commitmentPoints).toBe(7);
    const { cards, leftOut, commitmentPoints } = await commitPlan(h.deps, ana, ticked);
    expect([commitmentPoints, cards.map(({ title }) => title)]).toEqual([7, ['Tide table', 'Pilot roster']]);
    expect(leftOut.map(({ title, estimatePoints }) => [title, estimatePoints])).toEqual([['Crane log', 3]]);
  });

  test('mean nothing in a plan that was changed since', async () => {
    const { h, team } = await withTeam();
    const { fingerprint: seen } = await previewPlan(h.deps, ana, h.planInput(team));
    await previewPlan(h.deps, ana, h.planInput(team, { cards: 'Crane log, 3' }));
    const ticked = { teamId: team.id, seen, ticked: ['1'] };
    await refusalOf(previewTicked(h.deps, ana, ticked), 'plan-changed');
    await refusalOf(commitPlan(h.deps, ana, ticked), 'plan-changed');
  });

  test('of a very long plan are the fifty largest; the others come with them', async () => {
    const { h, team } = await withTeam();
    const lines = Array.from({ length: 60 }, (_, i) => `Card ${i + 1}, ${i < 10 ? 1 : 5}`).join('\n');
    const { fingerprint: seen, tickable } = await previewPlan(
      h.deps,
      ana,
      h.planInput(team, { cards: lines }),
    );
    expect([tickable.length, tickable[0]?.number]).toEqual([50, 11]);
    const { cards } = await previewTicked(h.deps, ana, { teamId: team.id, seen, ticked: [] });
    expect(cards.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });
});

describe('the preview', () => {
  test('shows the cards as they were read, the commitment and the working days', async () => {
    const { h, team } = await withTeam();
    const preview = await previewPlan(h.deps, ana, h.planInput(team, { name: ' Harbour   12 ' }));
    expect(preview).toMatchObject({ commitmentPoints: 10, workingDays: 10, warnings: [], recent: [] });
    expect(preview.input.name).toBe('Harbour 12');
    expect(
      preview.cards.map(({ number, key, title, leftPoints }) => [number, key, title, leftPoints]),
    ).toEqual([
      [1, '1', 'Tide table', 5],
      [2, '2', 'Crane log', 3],
      [3, '3', 'Pilot roster', 2],
    ]);
  });

  test('warns of what may be a slip', async () => {
    const { h, team } = await withTeam();
    const input = h.planInput(team, { cards: 'A, 4, @Ben\nB, 7\nC, 5\nD, 34, @Chi' });
    expect((await previewPlan(h.deps, ana, input)).warnings).toEqual([
      { code: 'off-scale', cardNumbers: [1, 2], scale: team.scale },
      { code: 'no-owner', cardNumbers: [2, 3] },
    ]);
    const none = await previewPlan(h.deps, ana, h.planInput(team, { cards: '\n' }));
    expect(none.warnings).toEqual([{ code: 'no-card' }]);
    const zeros = await previewPlan(h.deps, ana, h.planInput(team, { cards: 'A, 0, @Ben\nB, 0, @Chi' }));
    expect(zeros.warnings).toContainEqual({ code: 'no-points' });
    const weekend = h.planInput(team, { startsOn: '2026-11-07', endsOn: '2026-11-08' });
    expect((await previewPlan(h.deps, ana, weekend)).warnings).toEqual([{ code: 'no-working-day' }]);
  });

  test('shows the last three closed sprints, latest first, cancelled ones left out', async () => {
    const { h, team } = await withTeam();
    for (const [i, monday] of [
      '2026-11-02',
      '2026-11-09',
      '2026-11-16',
      '2026-11-23',
      '2026-11-30',
    ].entries()) {
      h.set(`${monday}T08:00:00Z`);
      const { sprint } = await h.plan(team, {
        name: `Harbour ${i}`,
        startsOn: monday,
        endsOn: monday,
        cards: `Tide table, ${i + 1}, @Ben`,
      });
      if (i > 1) await h.answer('ben', sprint.id, monday, { 1: { left: '0' } });
      if (i === 3) await cancelSprint(h.deps, ana, { place: CHANNEL, reason: '' });
      else await closeSprint(h.deps, ana, { place: CHANNEL });
    }
    const input = h.planInput(team, { startsOn: '2026-12-07', endsOn: '2026-12-11' });
    expect((await previewPlan(h.deps, ana, input)).recent).toEqual([
      { sprintName: 'Harbour 4', workingDays: 1, commitmentPoints: 5, velocityPoints: 5, verdict: 'kept' },
      { sprintName: 'Harbour 2', workingDays: 1, commitmentPoints: 3, velocityPoints: 3, verdict: 'kept' },
      { sprintName: 'Harbour 1', workingDays: 1, commitmentPoints: 2, velocityPoints: 0, verdict: 'missed' },
    ]);
  });

  test('names every bad line by its number', async () => {
    const { h, team } = await withTeam();
    const cards = 'Tide table, 5\r\n\r\nCrane log\r\nPilot roster, 0.3\r\nFog horn, 2, @Dayo';
    const { cards: message } = await problemsOf(previewPlan(h.deps, ana, h.planInput(team, { cards })));
    expect(message).toBe(
      'Line 3: The estimate is missing. Write: title, estimate, @owner.\n' +
        'Line 4: “0.3” isn’t an estimate; it must be a multiple of 0.5 from 0 to 999.5.\n' +
        'Line 5: @Dayo isn’t a member of the team. Members: Ana Lima, Ben Ode, Chi Wen.',
    );
  });

  test('names the first eight bad lines in full and the others by number', async () => {
    const { h, team } = await withTeam();
    const cards = Array.from({ length: 10 }, (_, i) => `Card ${i + 1}`).join('\n');
    const { cards: message } = await problemsOf(previewPlan(h.deps, ana, h.planInput(team, { cards })));
    expect(message).toMatch(/^Line 1: .*\n(?:Line \d: .*\n){6}Line 8: .*\nAnd 2 more lines: 9, 10\.$/);
  });

  test('takes a hundred cards, and refuses a hundred and one', async () => {
    const { h, team } = await withTeam();
    const cards = (count: number) => Array.from({ length: count }, (_, i) => `Card ${i + 1}, 1`).join('\n');
    const preview = await previewPlan(h.deps, ana, h.planInput(team, { cards: cards(100) }));
    expect([preview.cards.length, preview.commitmentPoints]).toEqual([100, 100]);
    expect(await problemsOf(previewPlan(h.deps, ana, h.planInput(team, { cards: cards(101) })))).toEqual({
      cards: 'A sprint holds 100 cards at most; these are 101.',
    });
  });

  test.each([
    [{ name: '' }, 'name', 'Give the sprint a name of 1 to 80 characters.'],
    [{ name: 'x'.repeat(81) }, 'name', 'Give the sprint a name of 1 to 80 characters.'],
    [{ goal: 'x'.repeat(501) }, 'goal', 'Keep the goal within 500 characters.'],
    [{ startsOn: '' }, 'startsOn', 'Choose a first day.'],
    [{ endsOn: '2026-11-31' }, 'endsOn', 'Choose a last day.'],
    [{ closesAt: '5pm' }, 'closesAt', 'Write the time as hours and minutes, for example 17:00.'],
    [
      { startsOn: '2026-11-14' },
      'endsOn',
      'The last day, Fri 13 Nov, comes before the first day, Sat 14 Nov.',
    ],
    [{ endsOn: '2027-02-02' }, 'endsOn', 'A sprint may last 92 days at most; this one lasts 93.'],
    [
      { startsOn: '2026-10-26', endsOn: '2026-10-30', closesAt: '12:00' },
      'endsOn',
      'The sprint would be over already: it closes on Fri 30 Oct at 12:00.',
    ],
  ])('refuses %j', async (change, field, message) => {
    const { h, team } = await withTeam();
    expect(await problemsOf(previewPlan(h.deps, ana, h.planInput(team, change)))).toEqual({
      [field]: message,
    });
  });

  test('keeps of a forged form what can be shown again: no day and no time that is none', async () => {
    const { h, team } = await withTeam();
    const forged = { startsOn: '2026-13-45', endsOn: '<@U1>', closesAt: '25:00' };
    const fields = Object.keys(await problemsOf(previewPlan(h.deps, ana, h.planInput(team, forged))));
    expect(fields.sort()).toEqual(['closesAt', 'endsOn', 'startsOn']);
    expect(await h.read((read) => read.draftOf(team.id, ana.userId))).toEqual({
      ...h.planInput(team),
      startsOn: '',
      endsOn: '',
      closesAt: '',
    });
  });

  test('refuses a sprint that overlaps one that is open, and takes one that follows it', async () => {
    const { h, team } = await withTeam();
    await h.plan(team);
    const overlapping = h.planInput(team, { startsOn: '2026-11-13', endsOn: '2026-11-20' });
    expect(await problemsOf(previewPlan(h.deps, ana, overlapping))).toEqual({
      startsOn: 'Harbour 12 runs from Mon 2 Nov to Fri 13 Nov. Begin after it, or close or cancel it first.',
    });
    const following = h.planInput(team, { startsOn: '2026-11-14', endsOn: '2026-11-20' });
    expect((await previewPlan(h.deps, ana, following)).commitmentPoints).toBe(10);
  });
});

describe('committing', () => {
  test('makes the sprint as it was shown, and tells the channel', async () => {
    const { h, team } = await withTeam();
    const { sprint } = await h.plan(team, { cards: 'LP-7: Tide table, 5, @Ben\nCrane log, 0,5' });
    await h.drain();
    expect(sprint).toMatchObject({
      name: 'Harbour 12',
      goal: 'Ferries berth by themselves',
      state: 'open',
      closesAtInstant: new Date('2026-11-13T17:00:00Z'),
      nextPromptAt: new Date('2026-11-02T09:15:00Z'),
      lastCallAt: new Date('2026-11-13T16:00:00Z'),
    });
    const { cards } = await h.records(sprint.id);
    expect(
      cards.map(({ key, estimatePoints, origin, enteredOn, addedBy }) => ({
        key,
        estimatePoints,
        origin,
        enteredOn,
        addedBy,
      })),
    ).toEqual([
      { key: 'LP-7', estimatePoints: 5, origin: 'planned', enteredOn: '2026-11-02', addedBy: PEOPLE.ana },
      { key: '2', estimatePoints: 0.5, origin: 'planned', enteredOn: '2026-11-02', addedBy: PEOPLE.ana },
    ]);
    expect(h.messagesTo(CHANNEL)).toMatchObject([
      { kind: 'plan', plan: { commitmentPoints: 5.5, byUserId: PEOPLE.ana } },
    ]);
  });

  test('twice makes one sprint', async () => {
    const { h, team } = await withTeam();
    await previewPlan(h.deps, ana, h.planInput(team));
    const attempts = await Promise.allSettled([
      commitPlan(h.deps, ana, { teamId: team.id }),
      commitPlan(h.deps, ana, { teamId: team.id }),
    ]);
    expect(attempts.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
    await refusalOf(commitPlan(h.deps, ana, { teamId: team.id }), 'no-draft');
    expect(await h.read((read) => read.openSprintsOf(team.id))).toHaveLength(1);
  });

  test('checks again: a plan whose time has passed since is refused and kept', async () => {
    const { h, team } = await withTeam();
    await previewPlan(h.deps, ana, h.planInput(team));
    h.set('2026-11-13T17:00:00Z');
    expect(Object.keys(await problemsOf(commitPlan(h.deps, ana, { teamId: team.id })))).toEqual(['endsOn']);
    expect((await planForm(h.deps, ana, CHANNEL)).draft.name).toBe('Harbour 12');
  });

  test('of two facilitators who plan the same days the second is refused', async () => {
    const { h } = await withTeam();
    const team = await h.setUpTeam({ facilitatorIds: [PEOPLE.ana, PEOPLE.ben] });
    await previewPlan(h.deps, ana, h.planInput(team));
    await previewPlan(h.deps, actorOf('ben'), h.planInput(team));
    await commitPlan(h.deps, ana, { teamId: team.id });
    const second = commitPlan(h.deps, actorOf('ben'), { teamId: team.id });
    expect(Object.keys(await problemsOf(second))).toEqual(['startsOn']);
  });

  test('of a plan without cards makes a sprint without a commitment', async () => {
    const { h, team } = await withTeam();
    const plan = await h.plan(team, { cards: '' });
    expect([plan.commitmentPoints, plan.cards]).toEqual([0, []]);
  });

  test('closes at the local time on the far side of a clock change', async () => {
    const h = harness();
    h.set('2026-10-12T12:00:00Z');
    const team = await h.setUpTeam({ timeZone: 'America/New_York' });
    // IANA tz 2025c: New York goes from −4 to −5 on 2026-11-01.
    const { sprint } = await h.plan(team, { startsOn: '2026-10-26', endsOn: '2026-11-06' });
    expect(sprint.nextPromptAt).toEqual(new Date('2026-10-26T13:15:00Z'));
    expect(sprint.closesAtInstant).toEqual(new Date('2026-11-06T22:00:00Z'));
  });

  test('measures estimates by the team’s own scale', async () => {
    const { h, team } = await withTeam();
    await setMeasures(h.deps, ana, { teamId: team.id, ...typedMeasures({ scale: '1, 2, 4, 8' }) });
    const { warnings } = await previewPlan(
      h.deps,
      ana,
      h.planInput(team, { cards: 'A, 4, @Ben\nB, 5, @Ben' }),
    );
    expect(warnings).toEqual([{ code: 'off-scale', cardNumbers: [2], scale: [1, 2, 4, 8] }]);
  });

  test('can be begun from direct messages as well', async () => {
    const { h, team } = await withTeam();
    expect((await planForm(h.deps, ana, directMessagesOf('ana'))).team.id).toBe(team.id);
  });
});
