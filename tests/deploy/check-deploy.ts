/**
 * `npm run check:deploy`: holds the files in deploy/ against the tools that they are for, as far as those are on
 * this machine. `npm test` checks them without any. Prints what ran and what could not; fails when a tool does, and with
 * `--release` also when an image is not named by its digest.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkBackup } from './check-backup.ts';
import { checkProxy } from './check-proxy.ts';
import { imagesWithoutDigest, namedImages } from './pinned-images.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Of 10; the tool calls up to 2 "OK". */
const MOST_EXPOSED = 2;

interface Check {
  readonly what: string;
  readonly command: readonly [program: string, ...args: string[]];
  readonly folder?: string;
  /** Must succeed as well for the tool to be usable here. */
  readonly needs?: readonly [program: string, ...args: string[]];
}

const CHECKS: readonly Check[] = [
  { what: 'service unit: well formed', command: ['systemd-analyze', 'verify', 'deploy/loadline.service'] },
  {
    what: 'service unit: exposure',
    command: [
      'systemd-analyze',
      'security',
      '--offline=true',
      `--threshold=${MOST_EXPOSED * 10}`,
      '--no-pager',
      'deploy/loadline.service',
    ],
  },
  { what: 'Kubernetes: put together', command: ['kubectl', 'kustomize', 'deploy/kubernetes'] },
  {
    what: 'Kubernetes, many workspaces: put together',
    command: ['kubectl', 'kustomize', 'deploy/kubernetes-many'],
  },
  { what: 'alert rules: well formed', command: ['promtool', 'check', 'rules', 'deploy/alerts.yaml'] },
  {
    what: 'alert rules: cases',
    command: ['promtool', 'test', 'rules', 'alerts.promtool.yaml'],
    folder: 'tests/deploy',
  },
  { what: 'Dockerfile: linter', command: ['hadolint', 'deploy/Dockerfile'] },
  {
    what: 'Dockerfile: build',
    command: ['docker', 'build', '--file', 'deploy/Dockerfile', '--tag', 'loadline:check', '.'],
    needs: ['docker', 'info'],
  },
  {
    what: 'compose file: put together',
    command: ['docker', 'compose', '--file', 'deploy/compose.yaml', 'config', '--quiet'],
    needs: ['docker', 'compose', 'version'],
  },
  {
    what: 'compose file, many workspaces: put together',
    command: [
      'env',
      'LOADLINE_CLIENT_ID=1234.5678',
      'LOADLINE_PUBLIC_URL=https://loadline.example.org',
      'LOADLINE_ALLOWED_WORKSPACES=T0123ABCD',
      ...['docker', 'compose', '--file', 'deploy/compose.yaml', '--file', 'deploy/compose.many.yaml'],
      ...['config', '--quiet'],
    ],
    needs: ['docker', 'compose', 'version'],
  },
];

type Outcome = 'passed' | 'FAILED' | 'could not run';

function runs([program, ...args]: readonly [string, ...string[]]): boolean {
  return spawnSync(program, args, { stdio: 'ignore' }).status === 0;
}

function outcomeOf({ command: [program, ...args], folder = '.', needs }: Check): [Outcome, string] {
  if (needs && !runs(needs)) return ['could not run', `${needs.join(' ')} does not succeed here`];
  const { error, status, stdout, stderr } = spawnSync(program, args, {
    cwd: join(ROOT, folder),
    encoding: 'utf8',
  });
  if (error) return ['could not run', `${program} is not on this machine`];
  return status === 0 ? ['passed', ''] : ['FAILED', `${stdout}${stderr}`];
}

let hasFailed = false;
function tell(what: string, [outcome, detail]: [Outcome, string]): void {
  hasFailed ||= outcome === 'FAILED';
  console.log(`${outcome.padEnd(15)}${what}${detail === '' ? '' : `: ${detail.trim()}`}`);
}

const read = (name: string): string => {
  const file = join(ROOT, 'deploy', name);
  return existsSync(file) ? readFileSync(file, 'utf8') : '';
};

function releaseOutcome(): [Outcome, string] {
  const images = namedImages([read('compose.yaml'), read('compose.many.yaml')]);
  const missing = imagesWithoutDigest(images, read('.env'), read('kubernetes-many/kustomization.yaml'));
  return missing.length === 0 ? ['passed', ''] : ['FAILED', missing.map((line) => `\n  ${line}`).join('')];
}

if (process.argv.includes('--release')) tell('images by their digests', releaseOutcome());
for (const check of CHECKS) tell(check.what, outcomeOf(check));
const backup = await checkBackup().catch((error: unknown): [Outcome, string] => ['FAILED', String(error)]);
tell('backup with pg_dump, restore with pg_restore', backup);
const proxy = await checkProxy().catch((error: unknown): [Outcome, string] => ['FAILED', String(error)]);
tell('proxy: refusals, deadlines, and an attack', proxy);
process.exitCode = hasFailed ? 1 : 0;
