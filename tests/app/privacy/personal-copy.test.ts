/** What a person is shown and given of what is stored about them: all of it, and nothing of anybody else's. */
import { sql } from 'drizzle-orm';
import { describe, expect, test } from 'vitest';
import {
  PERSONAL_KINDS,
  type PersonalKind,
  type PersonalRecord,
} from '../../../src/app/privacy/personal-data.ts';
import { personalCopy, privacyOverview } from '../../../src/app/privacy/privacy-overview.ts';
import { endTeam } from '../../../src/app/team/end-team.ts';
import { actorOf, type Harness, harnessForEach, PEOPLE, refusalOf } from '../../support/app-harness.ts';
import { wholeDatabase } from '../../support/whole-database.ts';
import { busyTeam, NOW } from './busy-team.ts';

const harness = harnessForEach(NOW);
const ben = actorOf('ben');

async function copyOf(
  h: Harness,
  actor = ben,
): Promise<Record<PersonalKind, readonly PersonalRecord[]> & Record<string, unknown>> {
  const { bytes } = await personalCopy(h.deps, actor);
  return JSON.parse(Buffer.from(bytes).toString());
}

describe('a copy', () => {
  test('holds something of every kind that was recorded, as it was recorded', async () => {
    const h = harness();
    await busyTeam(h);
    const copy = await copyOf(h);
    const missing = PERSONAL_KINDS.filter((kind) => copy[kind].length === 0);
    // Nobody installs the bot in this story.
    expect(missing).toEqual(['installations']);
    expect([copy.workspaceId, copy.userId]).toEqual([ben.workspaceId, ben.userId]);
    expect(copy.memberships).toEqual([
      {
        team: 'Tugboats',
        on: null,
        name: 'Ben Ode',
        facilitator: true,
        onTheTeam: true,
        worksOn: null,
        worksOnBefore: [],
        askedAt: null,
        askedInZone: null,
        daysOff: { full: [], half: [] },
        joinedOn: null,
        leftOn: null,
        guestIn: [],
        morningDigestAt: null,
        getsVerdicts: false,
        mayFacilitate: true,
      },
    ]);
    expect(copy.answers[0]).toEqual({
      team: 'Tugboats',
      on: '2026-11-02',
      sprint: 'Harbour 12',
      card: '1',
      title: 'Tide table',
      worked: null,
      left: 6,
      surprise: 1,
      note: 'Ben’s own words: wet rope',
      recordedAt: '2026-11-02T09:15:00Z',
      corrects: false,
    });
    expect(copy.answers[2]).toMatchObject({ left: 5, corrects: true });
    expect(copy.prompts).toContainEqual(
      expect.objectContaining({ on: '2026-11-03', state: 'away', sprint: 'Harbour 12' }),
    );
    expect(copy.cardChanges.map(({ change, reason }) => [change, reason])).toEqual([
      ['drop', 'Ben’s own words'],
      ['reopen', ''],
      ['owner-added', ''],
    ]);
    expect(copy.cardChanges[2]).toMatchObject({ byYou: true, aboutYou: true });
    expect(copy.planChanges).toMatchObject([
      { sprint: 'Harbour 12', card: '1', part: 'title', was: 'Tide table', became: 'Tide table of Ben Ode' },
      { was: 'Tide table of Ben Ode', became: 'Tide table' },
    ]);
    expect(copy.goalsJudged).toMatchObject([
      { met: 'partly', note: 'Ben’s own words', on: '2026-11-02T12:15:00Z' },
    ]);
    expect(copy.experimentsBegun).toMatchObject([{ text: 'Pair with Ben Ode', ratio: 'keptShare' }]);
    expect(copy.experimentsEnded).toMatchObject([{ text: 'Small cards', outcome: 'keep' }]);
    expect(copy.recordedValues).toMatchObject([{ sprint: 'Harbour 12', value: 1200 }]);
    expect(copy.cardsAdded.map(({ title }) => title)).toEqual(['Fog horn for @Ben Ode']);
    expect(copy.drafts).toMatchObject([{ draft: { name: 'Quay 4' } }]);
    const kinds = copy.postsByYou.map(({ kind }) => kind);
    expect(kinds).toEqual(['shared-status', 'shared-advice', 'cancelled']);
  });

  test('of more than is read at once is whole, in order, and indented like JSON throughout', async () => {
    const h = harness();
    const { sprint } = await h.plan(await h.setUpTeam(), { startsOn: '2026-11-02' });
    await h.database.session.execute(sql`insert into loadline.cards
      (id, sprint_id, number, key, title, estimate_points, origin, entered_on, added_by)
      select 'c' || n, ${sprint.id}, n, 'K' || n, 'Two' || chr(10) || 'lines', 1, 'pulled-in', ${sprint.startsOn}, ${PEOPLE.ben}
      from generate_series(1001, 3100) n`);
    const { bytes, records } = await personalCopy(h.deps, ben);
    const text = Buffer.from(bytes).toString();
    const copy = JSON.parse(text);
    expect(text).toBe(`${JSON.stringify(copy, undefined, 2)}\n`);
    expect(copy.cardsAdded.map(({ card }: { card: string }) => card)).toEqual(
      Array.from({ length: 2_100 }, (_, i) => `K${i + 1_001}`),
    );
    expect(records).toBe(PERSONAL_KINDS.reduce((all, kind) => all + copy[kind].length, 0));
  });

  test('holds as many records as rows of the database name the person', async () => {
    const h = harness();
    await busyTeam(h);
    const { records } = await personalCopy(h.deps, ben);
    // What others typed and what waits in the queue is not under the person's id.
    const named = (await wholeDatabase(h.database)).filter(
      (line) => line.startsWith('loadline.') && new RegExp(`: "${PEOPLE.ben}"`).test(line),
    );
    expect(records).toBe(named.length);
  });

  test('holds nothing of anybody else’s', async () => {
    const h = harness();
    await busyTeam(h);
    const { drafts: _typedByBen, ...copy } = await copyOf(h);
    expect(JSON.stringify(copy)).not.toMatch(/UANA|UCHI|Ana Lima|Chi Wen|with <@UBEN|ben>/);
  });

  test('is refused to a person who is stored nowhere, and to the same id in another workspace', async () => {
    const h = harness();
    await busyTeam(h);
    for (const actor of [actorOf('dayo'), actorOf('ben', 'W2')]) {
      await refusalOf(personalCopy(h.deps, actor), 'nothing-stored');
      expect(await privacyOverview(h.deps, actor)).toEqual({ kinds: [], teams: [] });
    }
  });
});

describe('the overview', () => {
  test('counts each kind, with its days and teams, and says how long details are kept', async () => {
    const h = harness();
    await busyTeam(h);
    const { kinds, teams } = await privacyOverview(h.deps, ben);
    expect(kinds.map(({ kind }) => kind)).toEqual(PERSONAL_KINDS.filter((kind) => kind !== 'installations'));
    expect(kinds.find(({ kind }) => kind === 'answers')).toEqual({
      kind: 'answers',
      count: 4,
      from: '2026-11-02',
      to: '2026-11-23',
      teamNames: ['Tugboats'],
    });
    expect(kinds.find(({ kind }) => kind === 'memberships')).toMatchObject({
      from: undefined,
      to: undefined,
    });
    expect(teams).toEqual([{ name: 'Tugboats', retentionMonths: 13 }]);
  });

  test('says of a team that was ended on which day all of it goes', async () => {
    const h = harness();
    const { team } = await busyTeam(h);
    await endTeam(h.deps, actorOf('ana'), { teamId: team.id });
    expect((await privacyOverview(h.deps, ben)).teams).toEqual([
      { name: 'Tugboats', retentionMonths: 13, erasedOn: '2027-12-24' },
    ]);
  });

  test('shows somebody who left what is still stored', async () => {
    const h = harness();
    await busyTeam(h);
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.chi], facilitatorIds: [PEOPLE.ana] });
    expect((await privacyOverview(h.deps, ben)).kinds.map(({ kind }) => kind)).toContain('answers');
  });
});
