import { sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import type { Transaction } from '../../../src/app/ports/store.ts';
import { checkTokenKeys, rotateTokenKeys } from '../../../src/app/workspaces/check-token-keys.ts';
import type { Installation } from '../../../src/app/workspaces/installation.ts';
import {
  type Granted,
  recordInstallation,
  recordRemoval,
} from '../../../src/app/workspaces/keep-installation.ts';
import { type TokenKeys, tokenKeys } from '../../../src/app/workspaces/token-keys.ts';
import type { Database } from '../../../src/store/database.ts';
import { emptyDatabase } from '../../support/databases.ts';

const key = (name: string, fill: number) => ({ name, key: new Uint8Array(32).fill(fill) });
const spring = key('spring', 1);
const autumn = key('autumn', 2);
const before = tokenKeys([spring]);
const both = tokenKeys([autumn, spring]);
const after = tokenKeys([autumn]);

let database: Database;
beforeEach(async () => {
  database = await emptyDatabase('Postgres');
});

const clock = { now: () => new Date('2026-11-02T10:00:00Z') };

function granted(workspaceId: string): Granted {
  return {
    workspaceId,
    workspaceName: workspaceId,
    enterpriseId: undefined,
    botUserId: 'U0BOT',
    botId: 'B0BOT',
    botToken: `xoxb-${workspaceId}`,
    scopes: ['commands'],
    installedBy: undefined,
  };
}

async function install(workspaceId: string, keys: TokenKeys): Promise<void> {
  await recordInstallation({ store: database.store, clock }, keys, granted(workspaceId));
}

async function openedWith(keys: TokenKeys, workspaceId: string): Promise<string | undefined> {
  const installation = await database.store.read((read) => read.installationOf(workspaceId));
  return installation?.token && keys.open(workspaceId, installation.token);
}

const tokenKeyProblems = async (store: Database['store'], keys: TokenKeys) =>
  (await checkTokenKeys(store, keys)).problems;

describe('rotation', () => {
  it('puts every token under the first key; the former one can be taken out then', async () => {
    const names = Array.from({ length: 501 }, (_, n) => `T${String(n).padStart(5, '0')}`);
    for (const name of names) await install(name, before);
    await install('T-new', both);
    expect(await tokenKeyProblems(database.store, after)).toEqual([{ code: 'key-missing', name: 'spring' }]);
    expect(await rotateTokenKeys(database.store, both)).toBe(501);
    expect(await tokenKeyProblems(database.store, after)).toEqual([]);
    expect(await openedWith(after, 'T00000')).toBe('xoxb-T00000');
    expect(await openedWith(after, 'T00500')).toBe('xoxb-T00500');
    expect(await rotateTokenKeys(database.store, both)).toBe(0);
  });

  it('leaves an installation alone that is made again, or removed, at the same moment', async () => {
    for (const name of ['T1', 'T2', 'T3']) await install(name, before);
    const { store } = database;
    let isFirst = true;
    const meddled: Database['store'] = {
      ...store,
      async read(work) {
        const found = await store.read(work);
        if (isFirst) await store.transaction(meddle);
        isFirst = false;
        return found;
      },
    };
    const meddle = async ({ read, write }: Transaction) => {
      await write.installations.save({
        ...((await read.installationOf('T1')) as Installation),
        token: before.seal('T1', 'xoxb-newer'),
      });
      await write.installations.revoke('T2', clock.now());
    };
    expect(await rotateTokenKeys(meddled, both)).toBe(1);
    expect(await openedWith(both, 'T1')).toBe('xoxb-newer');
    expect(await openedWith(both, 'T2')).toBeUndefined();
    expect(await openedWith(after, 'T3')).toBe('xoxb-T3');
  });
});

describe('the check at the start', () => {
  it('is content with keys that open everything, and with an empty database', async () => {
    expect(await tokenKeyProblems(database.store, after)).toEqual([]);
    await install('T1', before);
    await install('T2', both);
    expect(await tokenKeyProblems(database.store, both)).toEqual([]);
  });

  it('names each missing key once, by its name only', async () => {
    for (const name of ['T1', 'T2', 'T3']) await install(name, before);
    const problems = await tokenKeyProblems(database.store, after);
    expect(problems).toEqual([{ code: 'key-missing', name: 'spring' }]);
  });

  it('tells another key under the same name from the right one', async () => {
    await install('T1', before);
    expect(await tokenKeyProblems(database.store, tokenKeys([key('spring', 9)]))).toEqual([
      { code: 'key-other', name: 'spring' },
    ]);
  });

  it('does not ask for the keys of workspaces that removed the bot', async () => {
    await install('T1', before);
    const installation = await database.store.read((read) => read.installationOf('T1'));
    if (!installation?.token) throw new Error('it was not installed');
    await recordRemoval({ store: database.store, clock }, 'T1', installation.token);
    expect(await tokenKeyProblems(database.store, after)).toEqual([]);
  });

  it('passes over a damaged token where others show that the key is right', async () => {
    for (const name of ['T1', 'T2', 'T3']) await install(name, before);
    const damage = (text: string) =>
      database.session.execute(
        sql`update loadline.installations set sealed_token = ${text} where workspace_id = 'T2'`,
      );
    const { token } = (await database.store.read((read) => read.installationOf('T1'))) as Installation;
    for (const text of ['v1.', 'not a token', token?.sealed as string]) {
      await damage(text);
      expect(await checkTokenKeys(database.store, before)).toEqual({ problems: [], damagedIds: ['T2'] });
      expect(await rotateTokenKeys(database.store, both)).toBe(2);
      await rotateTokenKeys(database.store, tokenKeys([spring, autumn]));
    }
  });

  it('passes over one that no key could open, though there is no other', async () => {
    await install('T1', before);
    await database.session.execute(sql`update loadline.installations set sealed_token = 'v1.short'`);
    expect(await checkTokenKeys(database.store, before)).toEqual({ problems: [], damagedIds: ['T1'] });
  });

  it('passes over one that names a key as none can be named, but not one that names a key that is missing', async () => {
    for (const name of ['T1', 'T2']) await install(name, before);
    const nameKey = (keyName: string) =>
      database.session.execute(
        sql`update loadline.installations set key_name = ${keyName} where workspace_id = 'T2'`,
      );
    for (const keyName of ['', 'Mars/Base', 'x'.repeat(41)]) {
      await nameKey(keyName);
      expect(await checkTokenKeys(database.store, before)).toEqual({ problems: [], damagedIds: ['T2'] });
    }
    await nameKey('winter');
    expect(await tokenKeyProblems(database.store, before)).toEqual([{ code: 'key-missing', name: 'winter' }]);
  });
});
