import { describe, expect, test } from 'vitest';
import { erasePerson } from '../../../src/app/privacy/erase-person.ts';
import { leaveTeam } from '../../../src/app/team/leave-team.ts';
import type { MeasuresInput } from '../../../src/app/team/set-measures.ts';
import { measuresForm, setMeasures } from '../../../src/app/team/set-measures.ts';
import type { SetupInput } from '../../../src/app/team/set-up-team.ts';
import { setUpTeam, setupForm } from '../../../src/app/team/set-up-team.ts';
import { sprintStatus } from '../../../src/app/watching/sprint-status.ts';
import { DEFAULT_SCALE } from '../../../src/sprint/scale.ts';
import { DEFAULT_THRESHOLDS } from '../../../src/sprint/thresholds.ts';
import { NO_DAYS_OFF } from '../../../src/sprint/work-calendar.ts';
import { aMember } from '../../store/store-examples.ts';
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

const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');

function setup(change: Partial<SetupInput> = {}): SetupInput {
  return {
    channelId: CHANNEL.channelId,
    name: 'Tugboats',
    timeZone: 'Europe/Lisbon',
    promptAt: '09:15',
    workingDays: [1, 2, 3, 4, 5],
    memberIds: [PEOPLE.ana, PEOPLE.ben],
    facilitatorIds: [PEOPLE.ana],
    productOwnerId: undefined,
    ...change,
  };
}

const MEASURES = typedMeasures(
  {
    closesAt: '16:30',
    reminderAfterMinutes: '90',
    scale: '0,5; 1; 2; 4',
    retentionMonths: ' 24 ',
  },
  {
    keptShareAtLeast: '75%',
    surpriseRatioAtMost: '33.3',
    pullInRatioAtMost: '12,5',
    planShareAtLeast: '80',
    estimateAccuracyAtLeast: '70',
    estimateAccuracyAtMost: '100',
    velocityGrowthFirstMark: '240',
    velocityGrowthLongRangeMark: '500',
  },
);

describe('a team that everybody has left', () => {
  async function deserted() {
    const h = harness();
    h.directory.channels.set(CHANNEL.channelId, { name: 'tugboats', isArchived: false, isShared: false });
    const team = await h.setUpTeam({ promptAt: '08:00' });
    const { sprint } = await h.plan(team, { startsOn: '2026-11-02' });
    for (const who of ['ana', 'ben', 'chi'] as const)
      await leaveTeam(h.deps, actorOf(who), { teamId: team.id });
    return { h, team, sprint };
  }

  test('is set up again from its channel, and goes on with its settings and its past', async () => {
    const { h, team, sprint } = await deserted();
    const form = await setupForm(h.deps, actorOf('chi'), CHANNEL);
    expect(form).toMatchObject({
      existing: false,
      sprintsLeftBehind: 1,
      name: team.name,
      promptAt: '08:00',
      facilitatorIds: [PEOPLE.chi],
    });
    const again = await setUpTeam(
      h.deps,
      actorOf('chi'),
      setup({ facilitatorIds: [PEOPLE.chi], memberIds: [PEOPLE.chi] }),
    );
    expect(again.id).toBe(team.id);
    const status = await sprintStatus(h.deps, actorOf('chi'), CHANNEL);
    expect(status.sprint.id).toBe(sprint.id);
    await refusalOf(setUpTeam(h.deps, actorOf('ben'), setup()), 'not-a-member');
  });

  test('is refused to whoever could not set one up there, and to everybody else with the way to it', async () => {
    const { h } = await deserted();
    const details = await refusalOf(sprintStatus(h.deps, actorOf('chi'), CHANNEL), 'not-a-member');
    expect(details).toMatchObject({ isDeserted: true });
    h.directory.outside.add(PEOPLE.chi);
    await refusalOf(setUpTeam(h.deps, actorOf('chi'), setup()), 'set-up-from-outside');
  });
});

describe('the set-up form', () => {
  test('begins with what is known of channel and caller', async () => {
    const h = harness();
    h.directory.channels.set(CHANNEL.channelId, { name: 'tugboats', isArchived: false, isShared: false });
    expect(await setupForm(h.deps, ana, CHANNEL)).toEqual({
      existing: false,
      channelId: CHANNEL.channelId,
      name: 'tugboats',
      timeZone: 'Europe/Lisbon',
      promptAt: '09:15',
      workingDays: [1, 2, 3, 4, 5],
      memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi, PEOPLE.dayo],
      facilitatorIds: [PEOPLE.ana],
      productOwnerId: undefined,
      isShared: false,
      acceptsShared: false,
    });
  });

  test('shows the settings of a team that exists, without those who left', async () => {
    const h = harness();
    await h.setUpTeam();
    await h.setUpTeam({
      memberIds: [PEOPLE.ana, PEOPLE.chi],
      productOwnerId: PEOPLE.dayo,
      promptAt: '10:00',
    });
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({
      existing: true,
      promptAt: '10:00',
      memberIds: [PEOPLE.ana, PEOPLE.chi],
      facilitatorIds: [PEOPLE.ana],
      productOwnerId: PEOPLE.dayo,
    });
  });

  test('is for channels only', async () => {
    await refusalOf(setupForm(harness().deps, ana, directMessagesOf('ana')), 'set-up-in-channel');
  });

  test('opens even if the platform does not answer about the channel and its people', async () => {
    const h = harness();
    const noAnswer = () => Promise.reject(new Error('no answer'));
    Object.assign(h.directory, { channel: noAnswer, channelMembers: noAnswer, profile: noAnswer });
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({
      existing: false,
      name: '',
      timeZone: 'UTC',
      memberIds: [PEOPLE.ana],
    });
  });

  test('begins with its caller alone where the channel has more people than a team', async () => {
    const h = harness();
    h.directory.channelMembers = async () => [];
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({ memberIds: [PEOPLE.ana] });
  });

  test('is refused in a private channel without the bot, and in an archived one, team or not', async () => {
    const h = harness();
    for (const prepare of [async () => undefined, () => h.setUpTeam()]) {
      h.directory.channels.clear();
      await prepare();
      h.directory.channels.set(CHANNEL.channelId, undefined);
      await refusalOf(setupForm(h.deps, ana, CHANNEL), 'channel-not-seen');
      h.directory.channels.set(CHANNEL.channelId, { name: 'tugboats', isArchived: true, isShared: false });
      await refusalOf(setupForm(h.deps, ana, CHANNEL), 'channel-archived');
    }
  });

  test('of a team that exists is for its facilitators', async () => {
    const h = harness();
    await h.setUpTeam();
    const { facilitatorIds } = await refusalOf(
      setupForm(h.deps, actorOf('ben'), CHANNEL),
      'not-a-facilitator',
    );
    expect(facilitatorIds).toEqual([PEOPLE.ana]);
    await refusalOf(setupForm(h.deps, actorOf('dayo'), CHANNEL), 'not-a-member');
  });
});

describe('a channel that somebody is not in', () => {
  test('gets no team from them, though the command can be typed there', async () => {
    const h = harness();
    h.directory.outside.add(PEOPLE.ana);
    await refusalOf(h.setUpTeam(), 'set-up-from-outside');
    expect(await h.deps.store.read((read) => read.teamByChannel(ana.workspaceId, CHANNEL.channelId))).toBe(
      undefined,
    );
  });

  test('opens no form for them, as far as the platform says so in time', async () => {
    const h = harness();
    h.directory.outside.add(PEOPLE.ana);
    await refusalOf(setupForm(h.deps, ana, CHANNEL), 'set-up-from-outside');
    // A channel of many thousands isn't looked through while somebody waits.
    h.directory.channelMembers = async () => [];
    await refusalOf(setupForm(h.deps, ana, CHANNEL), 'set-up-from-outside');
    h.directory.notInChannel = () => new Promise(() => {});
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({ existing: false });
    h.directory.notInChannel = () => Promise.reject(new Error('no answer'));
    expect(await setupForm(h.deps, ana, CHANNEL)).toMatchObject({ existing: false });
  });

  test.each([
    ['memberIds', { memberIds: [PEOPLE.ana, PEOPLE.ben] }],
    ['facilitatorIds', { facilitatorIds: [PEOPLE.ana, PEOPLE.ben] }],
    ['productOwnerId', { productOwnerId: PEOPLE.ben }],
  ])('gives its team nobody among the %s', async (field, change) => {
    const h = harness();
    h.directory.outside.add(PEOPLE.ben);
    const { problems } = await refusalOf(h.setUpTeam({ memberIds: [PEOPLE.ana], ...change }), 'bad-input');
    expect(problems).toEqual([{ field, problem: { code: 'not-in-channel', person: 'Ben Ode' } }]);
  });

  test('keeps the product owner and the facilitators who left it', async () => {
    const h = harness();
    const roles = { facilitatorIds: [PEOPLE.ana, PEOPLE.chi], productOwnerId: PEOPLE.ben };
    await h.setUpTeam({ memberIds: [PEOPLE.ana], ...roles });
    h.directory.outside.add(PEOPLE.ben).add(PEOPLE.chi);
    await h.setUpTeam({ memberIds: [PEOPLE.ana], ...roles, promptAt: '10:00' });
    const { problems } = await refusalOf(
      h.setUpTeam({ ...roles, memberIds: [PEOPLE.ana, PEOPLE.ben] }),
      'bad-input',
    );
    expect(problems).toMatchObject([{ field: 'memberIds' }]);
  });

  test('keeps the members who left it, until somebody takes them out', async () => {
    const h = harness();
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.ben] });
    h.directory.outside.add(PEOPLE.ben);
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.ben], promptAt: '10:00' });
    await h.setUpTeam({ memberIds: [PEOPLE.ana] });
    await refusalOf(h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.ben] }), 'bad-input');
  });
});

describe('setting up', () => {
  test('is refused in a private channel without the bot, and in an archived one: nothing is recorded', async () => {
    const h = harness();
    h.directory.channels.set(CHANNEL.channelId, undefined);
    await refusalOf(setUpTeam(h.deps, ana, setup()), 'channel-not-seen');
    h.directory.channels.set(CHANNEL.channelId, { name: 'tugboats', isArchived: true, isShared: false });
    await refusalOf(setUpTeam(h.deps, ana, setup()), 'channel-archived');
    expect(await h.read((read) => read.teamByChannel('W1', CHANNEL.channelId))).toBeUndefined();
    h.directory.channels.clear();
    await setUpTeam(h.deps, ana, setup());
  });

  test('is not carried out while the platform does not answer about the channel', async () => {
    const h = harness();
    h.directory.channel = () => Promise.reject(new Error('no answer'));
    await expect(setUpTeam(h.deps, ana, setup())).rejects.toThrow('no answer');
    expect(await h.read((read) => read.teamByChannel('W1', CHANNEL.channelId))).toBeUndefined();
  });

  test('keeps the team with the default measures, and tells the channel', async () => {
    const h = harness();
    const team = await setUpTeam(
      h.deps,
      ana,
      setup({ name: '  The   Tugboats ', workingDays: [5, 1, 1, 3] }),
    );
    await h.drain();
    expect(await h.read((read) => read.teamById(team.id))).toEqual({
      id: team.id,
      workspaceId: 'W1',
      channelId: CHANNEL.channelId,
      name: 'The Tugboats',
      timeZone: 'Europe/Lisbon',
      promptAt: '09:15',
      reminderAfterMinutes: 180,
      closesAt: '17:00',
      workingDays: [1, 3, 5],
      daysOff: NO_DAYS_OFF,
      scale: DEFAULT_SCALE,
      retentionMonths: 13,
      weeklyLine: false,
      surpriseInVerdict: true,
      carriedOver: 'left',
      thresholds: DEFAULT_THRESHOLDS,
      ownerGetsVerdicts: false,
      productOwnerId: undefined,
      baselineSprintId: undefined,
      baselineRule: 'first',
    });
    expect(h.messagesTo(CHANNEL)).toMatchObject([
      { kind: 'team-set-up', memberIds: [PEOPLE.ana, PEOPLE.ben], facilitatorIds: [PEOPLE.ana] },
    ]);
  });

  test('lets a facilitator look after the team without doing its work', async () => {
    const h = harness();
    const team = await setUpTeam(h.deps, ana, setup({ memberIds: [PEOPLE.ben] }));
    const members = await h.read((read) => read.membersOf(team.id));
    expect(members).toEqual([
      aMember({ userId: PEOPLE.ana, name: 'Ana Lima', isFacilitator: true, isMember: false }),
      aMember({ userId: PEOPLE.ben, name: 'Ben Ode' }),
    ]);
    const form = await setupForm(h.deps, ana, CHANNEL);
    expect([form.memberIds, form.facilitatorIds]).toEqual([[PEOPLE.ben], [PEOPLE.ana]]);
  });

  test('again changes the same team; who is left out becomes inactive and loses every right', async () => {
    const h = harness();
    const before = await h.setUpTeam({ facilitatorIds: [PEOPLE.ana, PEOPLE.ben] });
    const after = await h.setUpTeam({ memberIds: [PEOPLE.ana] });
    expect(after.id).toBe(before.id);
    const members = await h.read((read) => read.membersOf(after.id));
    expect(members.filter(({ isActive }) => isActive).map(({ userId }) => userId)).toEqual([PEOPLE.ana]);
    expect(members.find(({ userId }) => userId === PEOPLE.ben)).toMatchObject({
      isActive: false,
      isFacilitator: false,
    });
    await refusalOf(setUpTeam(h.deps, actorOf('ben'), setup()), 'not-a-member');
  });

  test('again puts nobody back who left or was erased while the form was open, unless they are chosen anew', async () => {
    const h = harness();
    const team = await setUpTeam(
      h.deps,
      ana,
      setup({ memberIds: [PEOPLE.ana, PEOPLE.ben, PEOPLE.chi], productOwnerId: PEOPLE.chi }),
    );
    const { existing: _, isShared: __, ...open } = await setupForm(h.deps, ana, CHANNEL);
    const shownIds = [...open.memberIds];
    await leaveTeam(h.deps, actorOf('ben'), { teamId: team.id });
    await erasePerson(h.deps, actorOf('chi'));
    const active = async () =>
      (await h.read((read) => read.membersOf(team.id)))
        .filter(({ isActive }) => isActive)
        .map(({ userId }) => userId);
    const after = await setUpTeam(h.deps, ana, { ...open, promptAt: '10:00', shownIds });
    expect([after.promptAt, after.productOwnerId, await active()]).toEqual([
      '10:00',
      undefined,
      [PEOPLE.ana],
    ]);
    await setUpTeam(h.deps, ana, { ...open, productOwnerId: undefined, shownIds: [PEOPLE.ana] });
    expect(await active()).toEqual(expect.arrayContaining([PEOPLE.ana, PEOPLE.ben, PEOPLE.chi]));
  });

  test('again leaves scale, thresholds and times as they were set', async () => {
    const h = harness();
    const { id: teamId } = await h.setUpTeam();
    await setMeasures(h.deps, ana, { teamId, ...MEASURES });
    await h.setUpTeam({ name: 'Pilots' });
    expect(await h.read((read) => read.teamById(teamId))).toMatchObject({
      name: 'Pilots',
      scale: [0.5, 1, 2, 4],
      closesAt: '16:30',
      reminderAfterMinutes: 90,
    });
  });

  test('again tells the channel only what has changed, and nothing when nothing has', async () => {
    const h = harness();
    const { id: teamId } = await setUpTeam(h.deps, ana, setup());
    await setUpTeam(h.deps, ana, setup({ memberIds: [PEOPLE.chi], promptAt: '10:00' }));
    await setUpTeam(h.deps, ana, setup({ memberIds: [PEOPLE.chi], promptAt: '10:00' }));
    await setMeasures(h.deps, ana, { teamId, ...MEASURES });
    await setMeasures(h.deps, ana, { teamId, ...MEASURES });
    await h.drain();
    const byUserId = PEOPLE.ana;
    expect(h.messagesTo(CHANNEL)).toMatchObject([
      { kind: 'team-set-up' },
      {
        kind: 'team-changed',
        byUserId,
        changes: [
          { part: 'members', was: 2, became: 1, joined: PEOPLE.chi },
          { part: 'promptAt', was: '09:15', became: '10:00' },
        ],
      },
      {
        kind: 'team-changed',
        byUserId,
        changes: [
          { part: 'closesAt', was: '17:00', became: '16:30' },
          { part: 'reminderAfterMinutes', was: '180', became: '90' },
          { part: 'scale', was: '1, 2, 3, 5, 8, 13, 21', became: '0.5, 1, 2, 4' },
          { part: 'retentionMonths', was: '13', became: '24' },
          { part: 'keptShareAtLeast', was: '0.8', became: '0.75' },
          { part: 'surpriseRatioAtMost', was: '0.2', became: '0.333' },
          { part: 'pullInRatioAtMost', was: '0.2', became: '0.125' },
          { part: 'estimateAccuracyAtLeast', was: '0.8', became: '0.7' },
          { part: 'estimateAccuracyAtMost', was: '0.95', became: '1' },
          { part: 'velocityGrowthFirstMark', was: '', became: '2.4' },
          { part: 'velocityGrowthLongRangeMark', was: '', became: '5' },
        ],
      },
    ]);
  });

  test('by a member who is no facilitator is refused', async () => {
    const h = harness();
    await h.setUpTeam();
    const attempt = setUpTeam(h.deps, actorOf('ben'), setup({ facilitatorIds: [PEOPLE.ben] }));
    expect(await refusalOf(attempt, 'not-a-facilitator')).toMatchObject({
      act: 'change-settings',
    });
  });

  test('by two people at once for the same channel makes one team', async () => {
    const h = harness();
    const attempts = await Promise.allSettled([
      setUpTeam(h.deps, ana, setup()),
      setUpTeam(h.deps, ana, setup()),
    ]);
    const teams = await h.read((read) => read.teamsOf(ana));
    expect(attempts.some(({ status }) => status === 'fulfilled')).toBe(true);
    expect(teams).toHaveLength(1);
  });

  test('names every field that is wrong, at once', async () => {
    const h = harness();
    const attempt = setUpTeam(
      h.deps,
      ana,
      setup({
        name: ' ',
        timeZone: 'Lisbon',
        promptAt: '9:15',
        workingDays: [],
        memberIds: [],
        facilitatorIds: [],
      }),
    );
    expect(Object.keys(await problemsOf(attempt)).sort()).toEqual(
      ['facilitatorIds', 'memberIds', 'name', 'promptAt', 'timeZone', 'workingDays'].sort(),
    );
  });

  test.each<[string, Partial<SetupInput>]>([
    ['workingDays', { workingDays: [0] }],
    ['workingDays', { workingDays: [1.5] }],
    ['workingDays', { workingDays: [8] }],
    ['name', { name: 'x'.repeat(81) }],
    ['timeZone', { timeZone: '+01:00' }],
    ['promptAt', { promptAt: '24:00' }],
  ])('refuses %s in %j', async (field, change) => {
    expect(Object.keys(await problemsOf(setUpTeam(harness().deps, ana, setup(change))))).toEqual([field]);
  });

  test('refuses a bot by name', async () => {
    const h = harness();
    h.directory.people.set('UBOT', {
      userId: 'UBOT',
      name: 'Foghorn',
      timeZone: undefined,
      isBot: true,
      isDeactivated: false,
      isGuest: false,
      isOutsider: false,
      isAdmin: false,
    });
    const attempt = setUpTeam(h.deps, ana, setup({ memberIds: [PEOPLE.ana, 'UBOT'] }));
    expect(await problemsOf(attempt)).toEqual({ memberIds: 'Foghorn is a bot; choose people only.' });
  });

  test('refuses somebody whose account is deactivated by name', async () => {
    const h = harness();
    h.directory.people.set(PEOPLE.chi, {
      userId: PEOPLE.chi,
      name: 'Chi Wen',
      timeZone: undefined,
      isBot: false,
      isDeactivated: true,
      isGuest: false,
      isOutsider: false,
      isAdmin: false,
    });
    const attempt = setUpTeam(h.deps, ana, setup({ memberIds: [PEOPLE.ana, PEOPLE.chi] }));
    expect(await problemsOf(attempt)).toEqual({
      memberIds: 'The account of Chi Wen is deactivated; take this person out.',
    });
  });
});

describe('the measures', () => {
  test('are kept exactly as typed, in percent and halves', async () => {
    const h = harness();
    const { id: teamId } = await h.setUpTeam();
    await setMeasures(h.deps, ana, { teamId, ...MEASURES });
    expect(await measuresForm(h.deps, ana, directMessagesOf('ana'))).toMatchObject({
      closesAt: '16:30',
      reminderAfterMinutes: 90,
      scale: [0.5, 1, 2, 4],
      retentionMonths: 24,
      thresholds: {
        keptShareAtLeast: 0.75,
        surpriseRatioAtMost: 0.333,
        pullInRatioAtMost: 0.125,
        planShareAtLeast: 0.8,
        estimateAccuracyAtLeast: 0.7,
        estimateAccuracyAtMost: 1,
        velocityGrowthFirstMark: 2.4,
        velocityGrowthLongRangeMark: 5,
      },
    });
  });

  test('switch the marks of the velocity growth off again when their fields are left empty', async () => {
    const h = harness();
    const { id: teamId } = await h.setUpTeam();
    await setMeasures(h.deps, ana, { teamId, ...MEASURES });
    await setMeasures(h.deps, ana, { teamId, ...typedMeasures() });
    expect((await measuresForm(h.deps, ana, directMessagesOf('ana'))).thresholds).toEqual(DEFAULT_THRESHOLDS);
  });

  test('keep details without end when no number of months is given', async () => {
    const h = harness();
    const { id: teamId } = await h.setUpTeam();
    const team = await setMeasures(h.deps, ana, { teamId, ...MEASURES, retentionMonths: '' });
    expect(team.retentionMonths).toBeUndefined();
    await h.setUpTeam();
    expect((await measuresForm(h.deps, ana, directMessagesOf('ana'))).retentionMonths).toBeUndefined();
  });

  test.each<[string, number[]]>([
    ['1, 2, 3, 5, 8', [1, 2, 3, 5, 8]],
    ['1,2,3', [1, 2, 3]],
    ['1 2 3', [1, 2, 3]],
    ['½ 1 2', [0.5, 1, 2]],
    ['0.5, 1, 2', [0.5, 1, 2]],
    ['0,5 1 2', [0.5, 1, 2]],
    ['0; 1; 2;', [0, 1, 2]],
  ])('the scale “%s” is read', async (scale, expected) => {
    const h = harness();
    const { id: teamId } = await h.setUpTeam();
    expect((await setMeasures(h.deps, ana, { teamId, ...MEASURES, scale })).scale).toEqual(expected);
  });

  test.each<[string, Partial<Omit<MeasuresInput, 'teamId'>>, RegExp]>([
    ['closesAt', { closesAt: '5pm' }, /for example 17:00/],
    ['reminderAfterMinutes', { reminderAfterMinutes: '14' }, /from 15 to 720/],
    ['reminderAfterMinutes', { reminderAfterMinutes: '721' }, /from 15 to 720/],
    ['reminderAfterMinutes', { reminderAfterMinutes: '30.5' }, /from 15 to 720/],
    ['reminderAfterMinutes', { reminderAfterMinutes: '' }, /from 15 to 720/],
    ['retentionMonths', { retentionMonths: '0' }, /from 1 to 120/],
    ['retentionMonths', { retentionMonths: '121' }, /from 1 to 120/],
    ['retentionMonths', { retentionMonths: '1.5' }, /from 1 to 120/],
    ['retentionMonths', { retentionMonths: 'a year' }, /leave it empty to keep everything/],
    ['scale', { scale: '' }, /at least one size/],
    ['scale', { scale: '1, 3, 2' }, /must rise, but 2 comes after 3/],
    ['scale', { scale: 'small, big' }, /for example 1, 2, 3, 5, 8/],
    ['scale', { scale: '0' }, /above 0/],
  ])('%s in %j is refused', async (field, change, message) => {
    const h = harness();
    const { id: teamId } = await h.setUpTeam();
    const problems = await problemsOf(setMeasures(h.deps, ana, { teamId, ...MEASURES, ...change }));
    expect(Object.keys(problems)).toEqual([field]);
    expect(problems[field]).toMatch(message);
  });

  test.each<[string, Partial<MeasuresInput['thresholds']>, string]>([
    ['keptShareAtLeast', { keptShareAtLeast: '101' }, 'Write a percentage from 0 to 100, for example 80.'],
    [
      'surpriseRatioAtMost',
      { surpriseRatioAtMost: '-5' },
      'Write a percentage from 0 to 10,000, for example 20.',
    ],
    [
      'velocityGrowthFirstMark',
      { velocityGrowthFirstMark: 'x' },
      'Write a percentage from 0 to 10,000, for example 200.',
    ],
    [
      'estimateAccuracyAtLeast',
      { estimateAccuracyAtLeast: '96', estimateAccuracyAtMost: '95' },
      'The lowest estimate accuracy is above the highest.',
    ],
    [
      'velocityGrowthFirstMark',
      { velocityGrowthFirstMark: '600', velocityGrowthLongRangeMark: '500' },
      'The first mark of the velocity growth is above the long-range mark.',
    ],
  ])('the threshold %s in %j is refused', async (field, change, message) => {
    const h = harness();
    const { id: teamId } = await h.setUpTeam();
    const thresholds = { ...MEASURES.thresholds, ...change };
    const attempt = setMeasures(h.deps, ana, { teamId, ...MEASURES, thresholds });
    expect(await problemsOf(attempt)).toEqual({ [field]: message });
  });
});
