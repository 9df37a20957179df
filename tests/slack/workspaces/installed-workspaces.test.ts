import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../src/app/ports/store.ts';
import type { AllowedWorkspaces, Installation } from '../../../src/app/workspaces/installation.ts';
import { TokenKeyError, tokenKeys } from '../../../src/app/workspaces/token-keys.ts';
import { installedWorkspaces } from '../../../src/slack/workspaces/connect.ts';
import { fakeStore } from '../../support/fake-store.ts';
import { logCatcher } from '../support/log-catcher.ts';

const keys = tokenKeys([{ name: 'spring', key: new Uint8Array(32).fill(1) }]);

function workspacesOver(keptWorkspaces: number, allowed: AllowedWorkspaces = '*') {
  const tokens = new Map<string, Installation['token']>();
  const read = {
    installationOf: async (workspaceId: string) =>
      tokens.has(workspaceId)
        ? { workspaceId, enterpriseId: 'E0UNION', botUserId: 'U0BOT', token: tokens.get(workspaceId) }
        : undefined,
  } as unknown as Reading;
  const store = fakeStore({ read });
  const { logger } = logCatcher();
  const workspaces = installedWorkspaces({
    store,
    keys,
    allowed,
    removals: { tokenIsVoid: async () => 'removed' },
    clientSettings: { logger },
    keptWorkspaces,
  });
  return {
    workspaces,
    install: (workspaceId: string, token = `xoxb-${workspaceId}`) =>
      tokens.set(workspaceId, keys.seal(workspaceId, token)),
    put: (workspaceId: string, token: Installation['token']) => tokens.set(workspaceId, token),
    tokenOf: (workspaceId: string) => tokens.get(workspaceId),
  };
}

it.each([
  ['*', true],
  [['T1'], true],
  [['E0UNION'], true],
  [['T2', 'E0OTHER'], false],
  [[], false],
] as const)('a request’s workspace is found under the list %j: %s', async (allowed, isFound) => {
  const { workspaces, install } = workspacesOver(10, allowed);
  install('T1');
  expect((await workspaces.find('T1')) !== undefined).toBe(isFound);
});

describe('an installed workspace', () => {
  it('keeps its clients from one request to the next', async () => {
    const { workspaces, install } = workspacesOver(10);
    install('T1');
    const first = await workspaces.find('T1');
    expect(first).toMatchObject({ workspaceId: 'T1', botUserId: 'U0BOT', botToken: 'xoxb-T1' });
    expect(await workspaces.find('T1')).toBe(first);
    expect(first?.interactive).not.toBe(first?.bulk);
  });

  it('has new clients as soon as it has a new token', async () => {
    const { workspaces, install } = workspacesOver(10);
    install('T1');
    const first = await workspaces.find('T1');
    install('T1', 'xoxb-newer');
    expect((await workspaces.find('T1'))?.botToken).toBe('xoxb-newer');
    expect((await workspaces.find('T1'))?.bulk).not.toBe(first?.bulk);
  });

  it('is gone as soon as it has no token, and nothing of it is kept', async () => {
    const { workspaces, install, put } = workspacesOver(10);
    install('T1');
    const first = await workspaces.find('T1');
    const token = keys.seal('T1', 'xoxb-T1');
    put('T1', undefined);
    expect(await workspaces.find('T1')).toBeUndefined();
    put('T1', token);
    expect(await workspaces.find('T1')).not.toBe(first);
  });

  it('is not found with the token of another in its row', async () => {
    const { workspaces, install, put, tokenOf } = workspacesOver(10);
    install('T1');
    put('T2', tokenOf('T1'));
    expect(await workspaces.find('T2')).toBeUndefined();
  });

  it('is a failure, and not a removal, where its key is missing', async () => {
    const { workspaces, put } = workspacesOver(10);
    put('T1', tokenKeys([{ name: 'other', key: new Uint8Array(32).fill(3) }]).seal('T1', 'xoxb-T1'));
    await expect(workspaces.find('T1')).rejects.toThrow(TokenKeyError);
  });
});

describe('many workspaces', () => {
  it('never keep more clients than they may, and those that were used last', async () => {
    const { workspaces, install } = workspacesOver(2);
    for (const id of ['T1', 'T2', 'T3']) install(id);
    const [one, two] = [await workspaces.find('T1'), await workspaces.find('T2')];
    expect(await workspaces.find('T1')).toBe(one);
    await workspaces.find('T3');
    expect(await workspaces.find('T1')).toBe(one);
    expect(await workspaces.find('T2')).not.toBe(two);
  });
});
