/** The bot on a data folder, as an operator runs it, on a disk that fills up. */
import { existsSync, writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StandIn } from '../../src/rehearsal/stand-in/stand-in.ts';
import { MAIN, patientStandIn, settingsFor, startProcess } from '../support/bot-process.ts';

const SMALL_DISK = new URL('../support/small-disk.ts', import.meta.url).href;
const [PLENTY, LITTLE] = ['5000000000', '20000000'];
const LIMIT_MS = 90_000;
const PATIENCE = { timeout: 30_000 };

let folder: string;
let platform: StandIn;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'loadline-full-disk-'));
  platform = await patientStandIn();
});
afterAll(async () => {
  await platform.stop();
  await rm(folder, { recursive: true, force: true });
});

const setRoom = (bytes: string): void => writeFileSync(join(folder, 'room'), bytes);

function start() {
  return startProcess(['--import', SMALL_DISK, MAIN], {
    ...settingsFor(platform),
    SMALL_DISK: join(folder, 'room'),
    LOADLINE_DATA_FOLDER: join(folder, 'data'),
  });
}

describe('on a full disk', () => {
  it('a first start says so, says nothing of backups, and leaves no half of a database', async () => {
    setRoom(LITTLE);
    const bot = start();
    expect(await bot.ended).toBe(1);
    expect(bot.output()).toMatch(
      /The disk of the data folder .*data is full: 19 MB are left, and 150 MB are/,
    );
    expect(bot.output()).not.toMatch(/backup|damaged/i);
    expect(existsSync(join(folder, 'data', 'database'))).toBe(false);
  }, 60_000);

  it('a running bot refuses to record and says why, can be read, stays alive, and goes on when there is room', {
    timeout: LIMIT_MS * 2,
  }, async () => {
    setRoom(PLENTY);
    const bot = start();
    try {
      const port = () => /"port":(\d+)/.exec(bot.output())?.[1];
      await expect.poll(port, { timeout: LIMIT_MS }).toBeDefined();
      const url = `http://127.0.0.1:${port()}`;
      platform.connectBot(`${url}/slack/events`);
      const health = async (path: string) => {
        const response = await fetch(`${url}/${path}`);
        return [response.status, await response.text()].join(' ');
      };
      const told = () => {
        const here = platform.messagesOf('U0ANA', 'C0TEAM').filter(({ ephemeral }) => ephemeral);
        return [...here, ...platform.messagesOf('U0ANA', 'dm')].map(({ text }) => text).join('\n');
      };
      await platform.command('U0ANA', 'C0TEAM', '/loadline setup');
      await expect.poll(() => platform.viewOf('U0ANA')?.callback_id, PATIENCE).toBe('setup-form');
      const formId = platform.viewOf('U0ANA')?.id as string;

      setRoom(LITTLE);
      const refused = await platform.submit('U0ANA', formId);
      expect(JSON.stringify(refused)).toContain('Nothing was recorded: my database has no room left.');
      expect(platform.viewOf('U0ANA')?.id).toBe(formId);
      await platform.command('U0ANA', 'C0TEAM', '/loadline pull Quay lights, 3');
      await expect.poll(told, PATIENCE).toContain('ask the person who runs this bot to make room');
      // What only reads is answered.
      await platform.command('U0ANA', 'C0TEAM', '/loadline status');
      await expect.poll(told, PATIENCE).toContain('This channel has no team yet.');
      expect(await health('healthz')).toContain('200');
      await expect
        .poll(() => health('readyz'), PATIENCE)
        .toBe('503 {"status":"not ready","missing":["the database has no room"]}');
      await expect.poll(bot.output, PATIENCE).toContain('"event":"database-full"');

      setRoom(PLENTY);
      expect(await platform.submit('U0ANA', formId)).toEqual({ ok: true });
      const posted = () => platform.allPosts().map(({ text }) => text);
      await expect.poll(() => posted().join('\n'), PATIENCE).toMatch(/is set up with 1 member/);
      await expect.poll(() => health('readyz'), PATIENCE).toContain('200');
      await expect.poll(bot.output, PATIENCE).toContain('No longer so: the database has no room.');
      setRoom(LITTLE);
      bot.child.kill('SIGTERM');
      expect(await bot.ended).toBe(0);
    } finally {
      bot.child.kill('SIGKILL');
    }
  });
});
