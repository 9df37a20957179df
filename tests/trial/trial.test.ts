/** The trial of the real platform, played against the stand-in: it does what the documents promise. */
import type { App } from '@slack/bolt';
import { describe, expect, it } from 'vitest';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import { clientOf, PNG, startScene, TestClock } from '../rehearsal/stand-in/fixture.ts';
import { allSteps } from './all-steps.ts';
import { largestTaken } from './message-steps.ts';
import { pressesOf } from './presses.ts';
import {
  codeOf,
  type Presses,
  printedResult,
  runSteps,
  type StepResult,
  type TrialStep,
  type TrialWorld,
} from './trial-step.ts';
import { BUTTON } from './view-steps.ts';

const ANA = 'U1ANA0000';
const BEN = 'U2BEN0000';
const CHANNEL = 'C1TEAM0000';

/** Presses each of the trial’s buttons once, as soon as it is there. */
function pressEverything(standIn: StandIn): void {
  const done = new Set<string>();
  const pressers = [
    { actionId: BUTTON.begin, userId: ANA, channel: 'dm' },
    { actionId: BUTTON.late, userId: ANA, channel: 'dm' },
    { actionId: BUTTON.sees, userId: BEN, channel: CHANNEL },
  ];
  standIn.on('change', () => {
    for (const { actionId, userId, channel } of pressers) {
      const message = standIn
        .messagesOf(userId, channel)
        .find(({ blocks }) => JSON.stringify(blocks).includes(`"${actionId}"`));
      if (!message || done.has(actionId)) continue;
      done.add(actionId);
      void standIn.click(userId, { ts: message.ts, channel }, actionId);
    }
  });
}

async function trialOf(over: Partial<TrialWorld> = {}): Promise<StepResult[]> {
  const realClock = new TestClock(Date.now());
  let presses: Presses | undefined;
  await using scene = await disposableScene(realClock, (app) => {
    presses = pressesOf(app);
  });
  const { client, standIn } = scene;
  pressEverything(standIn);
  const world: TrialWorld = {
    client,
    stranger: clientOf(standIn, {}, 'xoxb-nobody'),
    channelId: CHANNEL,
    personId: ANA,
    otherChannelId: 'C2OTHER0000',
    privateChannelId: 'C4SECRET0000',
    deactivatedId: 'U9GONE0000',
    presses,
    picture: PNG,
    wait: async (ms) => {
      realClock.ms += ms;
    },
    posted: [],
    pictureId: undefined,
    ...over,
  };
  return await resultsOf(allSteps(world));
}

async function resultsOf(steps: readonly TrialStep[]): Promise<StepResult[]> {
  const results: StepResult[] = [];
  for await (const result of runSteps(steps)) results.push(result);
  return results;
}

async function disposableScene(realClock: TestClock, listen: (app: App) => void) {
  const scene = await startScene({ realNowMs: realClock.nowMs, fileReadyAfterMs: 1_000 }, listen);
  return { ...scene, [Symbol.asyncDispose]: () => scene.stop() };
}

describe('the trial', () => {
  it('finds the stand-in as the documents describe the platform, and leaves no message and no secret', async () => {
    const posted: TrialWorld['posted'] = [];
    const results = await trialOf({ posted });
    expect(results.filter(({ verdict }) => verdict === 'DIFFERS' || verdict === 'not tried')).toEqual([]);
    expect(results.length).toBeGreaterThanOrEqual(40);
    const came = new Map(results.map((result) => [result.what, result.came]));
    expect(came.get('chat.postMessage: the most characters that all blocks together may hold (3)')).toBe(
      '11000 characters',
    );
    expect(came.get('the response address until it refuses: uses in all (51)')).toBe(
      '5 uses, then used_url, status 404',
    );
    expect(came.get('a private picture in a channel, as somebody else there sees it')).toBe('they see it');
    expect(posted.length).toBeGreaterThan(10);
    expect(came.get('chat.delete of every message that the trial posted')).toBe('ok');
    const printed = results.map(printedResult).join('\n');
    expect(printed).not.toMatch(/xox|xapp|\b[CUDFTV][0-9][A-Z0-9]{5,}|Duarte|harbour/);
  });

  it('says what could not be tried, and goes on', async () => {
    const results = await trialOf({ presses: undefined, deactivatedId: undefined });
    const notTried = results.filter(({ verdict }) => verdict === 'not tried');
    expect(notTried.map(({ what }) => what)).toContain('users.info of somebody deactivated (15)');
    expect(notTried.map(({ what }) => what)).toContain('views.open with its trigger');
    expect(results.at(-1)?.verdict).toBe('as expected');
  });

  it('tells a call that differs', async () => {
    const steps = [
      { what: 'a call', expected: ['ok'], run: () => Promise.reject(refusedWith('fatal_error')) },
    ];
    const [result] = await resultsOf(steps);
    expect(result).toMatchObject({ came: 'fatal_error', verdict: 'DIFFERS' });
    expect(printedResult(result as StepResult, 1)).toContain('DIFFERS');
  });
});

describe('the code of a refused call', () => {
  it('is the platform’s own', () => expect(codeOf(refusedWith('not_in_channel'))).toBe('not_in_channel'));

  it('is never a message, which may quote a token', () => {
    const error = Object.assign(new Error('xoxb-secret'), {
      code: 'xoxb-secret',
      data: { error: 'xoxb-secret' },
    });
    expect(codeOf(error)).toBe('an answer that can’t be read');
  });
});

describe('the greatest length that is taken', () => {
  it.each([11_000, 10_000, 39_999])('is found to the character: %i', async (limit) => {
    const found = await largestTaken(async (length) => length <= limit, 10_000, 40_000);
    expect(found).toEqual({ length: limit, isBounded: true });
  });

  it('has no bound where even the longest is taken', async () => {
    expect(await largestTaken(async () => true, 10_000, 40_000)).toEqual({
      length: 40_000,
      isBounded: false,
    });
  });
});

function refusedWith(error: string): Error {
  return Object.assign(new Error(error), { code: 'slack_webapi_platform_error', data: { ok: false, error } });
}
