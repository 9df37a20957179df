/** The service unit. (`systemd-analyze security` says how much it protects, where there is a systemd.) */
import { readFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import { knownSettings, settingOf, stopLimitSeconds } from './known-settings.ts';

const text = await readFile(new URL('../../deploy/loadline.service', import.meta.url), 'utf8');

/** Section → directive → its values, in order. */
const unit = new Map<string, Map<string, string[]>>();
let section = new Map<string, string[]>();
for (const line of text.split('\n')) {
  const [, title] = /^\[(\w+)\]$/.exec(line) ?? [];
  const [, name, value] = /^(\w+)=(.*)$/.exec(line) ?? [];
  if (title !== undefined) {
    section = new Map();
    unit.set(title, section);
  } else if (name !== undefined) {
    section.set(name, [...(section.get(name) ?? []), value ?? '']);
  } else if (line !== '' && !line.startsWith('#')) {
    throw new Error(`This line is no directive: ${line}`);
  }
}
const service = (name: string): string[] => unit.get('Service')?.get(name) ?? [];

describe('the service unit', () => {
  it('is started again for as long as it takes, also after its own watchdog has killed it', () => {
    expect(service('Restart')).toEqual(['on-failure']);
    // By itself, systemd gives up after a few tries: systemd.unit(5).
    expect(unit.get('Unit')?.get('StartLimitIntervalSec')).toEqual(['0']);
  });

  it('has its three sections and starts with the machine', () => {
    expect([...unit.keys()]).toEqual(['Unit', 'Service', 'Install']);
    expect(unit.get('Install')?.get('WantedBy')).toEqual(['multi-user.target']);
    expect(unit.get('Unit')?.get('After')?.[0]).toContain('network-online.target');
  });

  it('gives the bot a user of its own and lets it write to its data only', () => {
    expect(service('DynamicUser')).toEqual(['yes']);
    expect(service('ProtectSystem')).toEqual(['strict']);
    expect(service('ReadWritePaths')).toEqual([]);
    expect([service('StateDirectory'), service('StateDirectoryMode')]).toEqual([['loadline'], ['0700']]);
    expect(service('Environment')).toContain('LOADLINE_DATA_FOLDER=/var/lib/loadline');
  });

  it('opens its port to this machine only, unless its settings say otherwise', () => {
    expect(service('Environment')).toContain('LOADLINE_HOST=127.0.0.1');
    // What stands in the file comes after what stands here: systemd.exec(5).
    expect(service('EnvironmentFile')).toEqual(['-/etc/loadline/settings']);
  });

  it.each([
    'NoNewPrivileges',
    'ProtectHome',
    'ProtectClock',
    'ProtectHostname',
    'ProtectKernelLogs',
    'ProtectKernelModules',
    'ProtectKernelTunables',
    'ProtectControlGroups',
    'PrivateTmp',
    'PrivateDevices',
    'RestrictNamespaces',
    'RestrictRealtime',
    'RestrictSUIDSGID',
    'LockPersonality',
  ])('switches on %s', (name) => {
    expect(service(name)).toEqual(['yes']);
  });

  it('takes every capability away, and calls that no service needs', () => {
    expect(service('CapabilityBoundingSet')).toEqual(['']);
    expect(service('SystemCallFilter')).toEqual(['@system-service', '~@privileged']);
    // With this the JavaScript engine could not run at all.
    expect(service('MemoryDenyWriteExecute')).toEqual([]);
  });

  it('hands over secrets as credentials, each to a setting that the bot knows', async () => {
    const credentials = service('LoadCredential').map((value) => value.split(':')[0]);
    expect(credentials).toEqual(['bot-token', 'app-token']);
    const known = await knownSettings();
    for (const assignment of service('Environment')) {
      const [variable = '', value = ''] = assignment.split('=');
      expect(known).toContain(settingOf(variable));
      if (/TOKEN|SECRET|DATABASE_URL/.test(variable)) {
        expect(value.startsWith('%d/')).toBe(true);
        expect(credentials).toContain(value.slice('%d/'.length));
      }
    }
  });

  it('waits longer for a stop than a stop may take', async () => {
    expect(Number.parseInt(service('TimeoutStopSec')[0] ?? '', 10)).toBeGreaterThan(await stopLimitSeconds());
  });
});
