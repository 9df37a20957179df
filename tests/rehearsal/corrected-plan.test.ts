/** A plan that is corrected while its sprint runs, played through the whole bot. */
import { pino } from 'pino';
import { beforeAll, expect, it } from 'vitest';
import { playScenario } from '../../src/rehearsal/play-file.ts';
import type { PlayedSprint, PlayResult } from '../../src/rehearsal/play-result.ts';
import { parseScenario, type Scenario } from '../../src/rehearsal/scenario.ts';
import { differences } from './compare-play.ts';

const SCENARIO: Scenario = parseScenario(
  JSON.stringify({
    team: { name: 'Quayside', timeZone: 'Europe/Lisbon' },
    members: [
      { id: 'ines', name: 'Ines' },
      { id: 'odd', name: 'Odd' },
    ],
    roles: { facilitators: ['lead'], productOwner: 'odd' },
    sprints: [
      {
        name: 'Harbour 1',
        goal: 'Skippers see the tide',
        startsOn: '2026-11-02',
        endsOn: '2026-11-04',
        cards: [
          { key: 'quay-1', title: 'Tide tabel', estimate: 50, owners: ['ines'] },
          { key: 'quay-2', title: 'Tide chart', estimate: 3, owners: ['odd'] },
        ],
        events: [
          { on: '2026-11-02', by: 'ines', edit: { card: 'quay-1', title: 'Stolen' } },
          { on: '2026-11-02', by: 'lead', edit: { card: 'quay-1', title: 'Tide table', estimate: 5 } },
          { on: '2026-11-02', by: 'ines', answer: [{ card: 'quay-1', left: 4 }] },
          { on: '2026-11-02', by: 'lead', edit: { card: 'quay-1', title: 'Not kept', estimate: 8 } },
          { on: '2026-11-03', by: 'lead', edit: { card: 'quay-2', estimate: 5 } },
          {
            on: '2026-11-03',
            by: 'lead',
            edit: { card: 'quay-2', key: 'quay-9', link: 'https://tracker.example/9' },
          },
          { on: '2026-11-03', by: 'odd', answer: [{ card: 'quay-9', left: 1 }] },
          { on: '2026-11-03', by: 'lead', extend: { endsOn: '2026-11-01' } },
          { on: '2026-11-03', by: 'odd', extend: { endsOn: '2026-11-06' } },
          { on: '2026-11-04', by: 'lead', extend: { endsOn: '2026-11-06', closesAt: '15:30' } },
          { on: '2026-11-06', by: 'ines', answer: [{ card: 'quay-1', left: 0 }] },
          { on: '2026-11-07', by: 'ines', goalMet: 'yes' },
          { on: '2026-11-07', by: 'odd', goalMet: 'partly' },
        ],
      },
    ],
  }),
  'corrected plan',
);

let played: PlayResult;
let sprint: PlayedSprint;

beforeAll(async () => {
  played = await playScenario({ scenario: SCENARIO, logger: pino({ level: 'silent' }) });
  sprint = played.sprints[0] as PlayedSprint;
}, 120_000);

/** The verdict with its thread. */
function verdictText(): string {
  const inChannel = sprint.posts.filter(({ to, onlyForThem }) => 'channel' in to && !onlyForThem);
  const from = inChannel.findIndex(({ text }) => text.includes('points committed'));
  return inChannel
    .slice(from)
    .map(({ text }) => text)
    .join('\n');
}

it('comes to what the independent reckoning says', () => {
  expect(differences(SCENARIO, played)).toEqual([]);
  expect(sprint.commitmentPoints).toBe(8);
  expect(sprint.endsOn).toBe('2026-11-06');
  expect(sprint.goalMet).toBe('partly');
});

it('refuses what comes too late or from others, and says what to do instead', () => {
  const words = (part: string): string | undefined =>
    played.refusals.find(({ event }) => JSON.stringify(event).includes(part))?.words;
  expect(words('Stolen')).toContain('Only a facilitator of Quayside can change the plan');
  expect(words('Not kept')).toContain('Somebody has answered about card');
  expect(words('Not kept')).toContain('/loadline drop 1');
  expect(words('"estimate":5}}')).toContain('The first working day is over');
  expect(words('2026-11-01')).toContain('comes before the first day');
  expect(words('"goalMet":"yes"')).toContain('Only the product owner of Quayside or a facilitator');
});

it('lists the changes once in the verdict, without a name, and says whether the goal was met', () => {
  const text = verdictText();
  expect(text).toContain('The plan was changed on Mon 2 Nov, Tue 3 Nov and Wed 4 Nov');
  expect(text).toContain('was called “Tide tabel”');
  expect(text).toContain('estimate 5 instead of 50');
  expect(text).toContain('had the short name quay-2');
  expect(text).toContain('last day Fri 6 Nov instead of Wed 4 Nov');
  expect(text).toContain('closing time 15:30 instead of 17:00');
  expect(text.match(/The plan was changed/g)).toHaveLength(1);
  expect(text).not.toContain('lead');
  expect(text).toContain('Sprint goal partly met: Skippers see the tide');
});

it('brings the plan’s post up to date', () => {
  const plan = sprint.posts.find(({ to, text }) => 'channel' in to && !text.includes('quay-2 Tide chart'));
  expect(plan?.text).toContain('quay-9 Tide chart');
  expect(plan?.text).toContain('Fri 6 Nov');
  expect(plan?.text).not.toContain('tabel');
});
