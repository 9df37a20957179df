/** `npm start` as an operator runs it: a process of its own, against the stand-in platform. */
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import { LOADLINE_SCOPES } from '../../src/rehearsal/stand-in/stand-in-options.ts';
import { figureIn } from '../metrics/read-metrics.ts';
import {
  BOT_TOKEN,
  type BotProcess,
  MAIN,
  patientStandIn,
  SIGNING_SECRET,
  settingsFor,
  startedLine,
  startProcess,
} from '../support/bot-process.ts';

/** The embedded database takes its time to come up on a busy machine. */
const START_LIMIT_MS = 90_000;

const running: BotProcess[] = [];
const standIns: StandIn[] = [];
const folders: string[] = [];

function start(environment: Record<string, string>, args: readonly string[] = []): BotProcess {
  const one = startProcess([MAIN, ...args], environment);
  running.push(one);
  return one;
}

async function standIn(scopes?: readonly string[]): Promise<StandIn> {
  const one = await patientStandIn(scopes);
  standIns.push(one);
  return one;
}

async function environmentFor(platform: StandIn): Promise<Record<string, string>> {
  const folder = await mkdtemp(join(tmpdir(), 'loadline-start-'));
  folders.push(folder);
  return { ...settingsFor(platform), LOADLINE_DATA_FOLDER: join(folder, 'data') };
}

/** What the log says once everything runs. */
async function started(bot: BotProcess): Promise<{ port: number; metricsPort?: number }> {
  await expect.poll(() => startedLine(bot), { timeout: START_LIMIT_MS }).toBeDefined();
  return startedLine(bot) ?? { port: 0 };
}

afterEach(async () => {
  for (const { child } of running.splice(0)) child.kill('SIGKILL');
  await Promise.all(standIns.splice(0).map((one) => one.stop()));
  await Promise.all(folders.splice(0).map((folder) => rm(folder, { recursive: true, force: true })));
});

describe('npm start', () => {
  it('names every missing setting at once, with a way to get it, and ends with code 1', async () => {
    const bot = start({});
    expect(await bot.ended).toBe(1);
    expect(bot.output()).toContain('Loadline can’t start:');
    expect(bot.output()).toMatch(/LOADLINE_BOT_TOKEN is missing\. .*OAuth & Permissions/);
    expect(bot.output()).toMatch(/LOADLINE_APP_TOKEN is missing\. .*connections:write/);
    expect(bot.output()).not.toContain('at file:');
  });

  it('says by which setting a port or an address that can’t be had is chosen', {
    timeout: START_LIMIT_MS * 2,
  }, async () => {
    const platform = await standIn();
    const taken = createServer().listen(0, '127.0.0.1');
    await once(taken, 'listening');
    const { port } = taken.address() as AddressInfo;
    const here = { LOADLINE_HOST: '127.0.0.1', LOADLINE_METRICS_PORT: String(port) };
    const bot = start({ ...(await environmentFor(platform)), ...here });
    expect(await bot.ended).toBe(1);
    expect(bot.output()).toMatch(/Port \d+ is in use\. .* set LOADLINE_METRICS_PORT to another one/);
    taken.close();
    // An address for documentation, which no machine has (RFC 5737).
    const away = start({ ...(await environmentFor(platform)), LOADLINE_HOST: '192.0.2.1' });
    expect(await away.ended).toBe(1);
    expect(away.output()).toContain(
      'This machine has no address 192.0.2.1. Set LOADLINE_HOST to one that it has',
    );
    expect(away.output()).not.toContain('at file:');
  });

  it('lists the commands when one is written wrongly', async () => {
    const bot = start({}, ['docter']);
    expect(await bot.ended).toBe(2);
    expect(bot.output()).toMatch(
      /There are rehearse, doctor, dump, .* and rotate-keys, as in npm run doctor/,
    );
  });

  it('says which scope is missing and how to add it, and leaves no data folder behind', async () => {
    const platform = await standIn(LOADLINE_SCOPES.filter((scope) => scope !== 'files:write'));
    const environment = await environmentFor(platform);
    const bot = start(environment);
    expect(await bot.ended).toBe(1);
    expect(existsSync(environment.LOADLINE_DATA_FOLDER as string)).toBe(false);
    expect(bot.output()).toMatch(/lacks the scope files:write, .*Bot Token Scopes/);
  });

  it('serves health, readiness, the command and metrics, names nobody in its log, and stops gracefully', {
    timeout: START_LIMIT_MS * 2,
  }, async () => {
    const platform = await standIn();
    const here = { LOADLINE_HOST: '127.0.0.1', LOADLINE_METRICS_PORT: '0' };
    const bot = start({ ...(await environmentFor(platform)), ...here });
    const { port, metricsPort } = await started(bot);
    const url = `http://127.0.0.1:${port}`;
    // The same machine by another address.
    await expect(fetch(`http://127.0.0.2:${port}/healthz`)).rejects.toThrow('fetch failed');
    platform.connectBot(`${url}/slack/events`);
    expect((await fetch(`${url}/healthz`)).status).toBe(200);
    expect((await fetch(`${url}/readyz`)).status).toBe(200);
    expect(await platform.verifyBot()).toEqual({ ok: true });
    expect(await platform.command('U0ANA', 'C0TEAM', '/loadline setup')).toEqual({ ok: true });
    await expect.poll(() => platform.viewOf('U0ANA')?.callback_id, { timeout: 20_000 }).toBe('setup-form');
    await platform.submit('U0ANA', platform.viewOf('U0ANA')?.id as string);
    await platform.command('U0ANA', 'C0TEAM', '/loadline works sometimes');
    await platform.command('U0ANA', 'C0TEAM', '/loadline pull Secret berth, 3, @ana');
    // Delivered by the queue of the running process, not by a test's hand.
    const posted = () => platform.allPosts().map(({ text }) => text);
    await expect.poll(() => posted().join('\n'), { timeout: 20_000 }).toMatch(/is set up with 1 member/);

    const forged = await fetch(`${url}/slack/events`, { method: 'POST', body: 'forged' });
    expect(forged.ok).toBe(false);
    const metrics = async (): Promise<string> =>
      (await fetch(`http://127.0.0.1:${metricsPort}/metrics`)).text();
    await expect
      .poll(async () => figureIn(await metrics(), 'loadline_queue_posts'), { timeout: 20_000 })
      .toBe(0);
    const text = await metrics();
    const figure = (name: string, labels = {}) => figureIn(text, `loadline_${name}`, labels);
    expect(figure('posts_delivered_total', { kind: 'team-set-up', how: 'new' })).toBe(1);
    expect(figure('requests_total', { kind: 'form', outcome: 'done' })).toBe(1);
    expect(figure('refusals_total', { code: 'bad-argument' })).toBe(1);
    expect(figure('requests_turned_away_total')).toBe(1);
    expect(figure('request_duration_seconds_count', { kind: 'command' })).toBe(3);
    expect(figure('clock_ticks_total', { outcome: 'done' })).toBeGreaterThan(0);
    expect(figure('database_up')).toBe(1);
    expect(text).not.toMatch(/U0ANA|C0TEAM|ana|"T0/);
    // The port for everybody has no metrics.
    expect((await fetch(`${url}/metrics`)).status).toBe(404);

    bot.child.kill('SIGTERM');
    expect(await bot.ended).toBe(0);
    expect(bot.output()).toContain('"stopped"');
    expect(bot.output()).not.toContain('Secret berth');
    expect(bot.output()).not.toContain(BOT_TOKEN);
    expect(bot.output()).not.toContain(SIGNING_SECRET);
  });
});
