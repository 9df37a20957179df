/**
 * Plays scenarios through the whole bot and holds every number, verdict, card, refusal and post against the
 * independent reckoning.
 */
import { pino } from 'pino';
import { beforeAll, describe, expect, test } from 'vitest';
import { playScenario } from '../../src/rehearsal/play-file.ts';
import type { PlayResult } from '../../src/rehearsal/play-result.ts';
import type { Scenario } from '../../src/rehearsal/scenario.ts';
import { readScenario } from '../../src/rehearsal/scenario.ts';
import { newPgliteImage } from '../support/databases.ts';
import { share } from '../support/search-width.ts';
import { CARRY_OVER_SCENARIO } from './carry-over-scenario.ts';
import { CO_OWNER_SCENARIO } from './co-owner-scenario.ts';
import { differences } from './compare-play.ts';
import { reckon } from './independent-reckoning.ts';
import { MARGIN_SCENARIO } from './margin-scenario.ts';
import { randomScenario } from './random-scenario.ts';

const PLAY_TIMEOUT_MS = 120_000;

/**
 * Between them: a prompt at a local time that is skipped or said twice (Lord Howe, New York, Berlin), a day
 * that begins at 01:00 (Cairo, Santiago), and every kind of event, right and wrong.
 */
const SEEDS = [2205, 84, 435, 401, 29, 247, 91];

let memoryImage: Blob;

beforeAll(async () => {
  memoryImage = await newPgliteImage();
});

function play(scenario: Scenario): Promise<PlayResult> {
  return playScenario({ scenario, logger: pino({ level: 'silent' }), memoryImage });
}

function shipped(name: string): Promise<Scenario> {
  return readScenario(new URL(`../../src/rehearsal/scenarios/${name}.json`, import.meta.url));
}

const generated = (seed: number): Scenario => randomScenario(seed, { sprints: 2, cards: 8, days: 7 });

describe('a play agrees with the independent reckoning', () => {
  test.each([
    ['kept', 'kept'],
    ['missed-by-surprise', 'missed'],
    ['no-plan', 'no plan'],
  ])(
    'for the shipped scenario “%s”, whose verdict is “%s”',
    async (name, verdict) => {
      const scenario = await shipped(name);
      const played = await play(scenario);
      expect(differences(scenario, played)).toEqual([]);
      expect(played.sprints.map((sprint) => sprint.verdict)).toEqual([verdict]);
    },
    PLAY_TIMEOUT_MS,
  );

  test.each(share(SEEDS, SEEDS.length))(
    'for the scenario of seed %i',
    async (seed) => {
      const scenario = generated(seed);
      expect(differences(scenario, await play(scenario))).toEqual([]);
    },
    PLAY_TIMEOUT_MS,
  );

  test(
    'for co-owners who take back and say again what the other built on',
    async () => {
      const played = await play(CO_OWNER_SCENARIO);
      expect(differences(CO_OWNER_SCENARIO, played)).toEqual([]);
      expect(played.sprints[0]?.surprisePoints).toBe(4);
    },
    PLAY_TIMEOUT_MS,
  );

  test(
    'for what is said before and after the sprint, and of more cards than a form holds',
    async () => {
      const played = await play(MARGIN_SCENARIO);
      expect(differences(MARGIN_SCENARIO, played)).toEqual([]);
      expect(played.refusals).toHaveLength(5);
      expect(played.sprints[0]?.workedPoints).toBe(1);
      // A play is made of the same facts each time, so it comes to the same words.
      expect(await play(MARGIN_SCENARIO)).toEqual(played);
    },
    PLAY_TIMEOUT_MS,
  );
});

test(
  'a card carried over, with a key and without, through a cancelled sprint, and prompts left unanswered',
  async () => {
    const played = await play(CARRY_OVER_SCENARIO);
    expect(differences(CARRY_OVER_SCENARIO, played)).toEqual([]);
    const habits = played.sprints.map(({ noteIds }) =>
      noteIds.filter((id) => id === 'carry-over-repeated' || id === 'answer-rate-low'),
    );
    expect(habits).toEqual([[], [], ['carry-over-repeated', 'answer-rate-low']]);
    const verdict = played.sprints[2]?.posts
      .map(({ text }) => text)
      .find((text) => text.includes('in a row'));
    expect(verdict).toContain('2 cards have now been open at the end of two or more sprints in a row.');
    expect(verdict).toContain('• quay-1 Tide tables: open at the end of 2 sprints in a row');
    expect(verdict).toContain('1 of 2 daily prompts was answered');
  },
  PLAY_TIMEOUT_MS,
);

describe('the generated scenarios', () => {
  test('hold every kind of event, and every kind of event that must be refused', () => {
    const taken = new Set<string>();
    const refused = new Set<string>();
    for (const scenario of SEEDS.map(generated)) {
      const reckoning = reckon(scenario);
      for (const event of scenario.sprints.flatMap(({ events }) => events)) {
        const { on: _on, by: _by, ...rest } = event;
        const [kind] = Object.keys(rest) as [string];
        (reckoning.refused.includes(event) ? refused : taken).add(kind);
      }
    }
    expect([...taken].sort()).toEqual([
      'answer',
      'away',
      'blocked',
      'cancel',
      'drop',
      'edit',
      'experiment',
      'extend',
      'give',
      'goalMet',
      'moving',
      'off',
      'pull',
      'reopen',
      'try',
      'undrop',
    ]);
    expect([...refused]).toEqual(
      expect.arrayContaining([
        'answer',
        'blocked',
        'edit',
        'extend',
        'give',
        'goalMet',
        'moving',
        'undrop',
        'try',
        'experiment',
      ]),
    );
  });

  test('hold corrections, surprise work given back, and sprints in a row', () => {
    const scenarios = SEEDS.map(generated);
    const answers = scenarios.flatMap(({ sprints }) =>
      sprints.flatMap(({ name, events }, i) =>
        events.flatMap(({ on, by, answer = [] }) =>
          answer.map(({ card, surprise = 0 }) => ({ said: `${name} ${i} ${on} ${by} ${card}`, surprise })),
        ),
      ),
    );
    expect(new Set(answers.map(({ said }) => said)).size).toBeLessThan(answers.length);
    expect(answers.some(({ surprise }) => surprise < 0)).toBe(true);
    expect(scenarios.some(({ sprints }) => sprints.length > 1)).toBe(true);
  });
});
