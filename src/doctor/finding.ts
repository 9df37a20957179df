/** What a check found: a code with its details. The code decides what was checked and how bad it is. */
import type { SettingProblem } from '../setting-rules.ts';
import type { PlatformProblem } from '../slack/workspaces/check-platform.ts';
import type { StoreProblem } from '../store/store-error.ts';
import type { Messages } from '../words/message-arguments.ts';
import { sayCode } from '../words/say.ts';

/** `ok`: as it should be. `warning`: the bot runs, but look at it. `fix`: something will not work. */
type Level = Messages['doctor-level']['level'];
export type Check = Messages['doctor-check']['check'];

const KINDS = {
  'node-too-old': ['settings', 'fix'],
  'settings-fine': ['settings', 'ok'],
  'settings-unknown': ['settings', 'warning'],
  'log-holds-words': ['settings', 'warning'],
  'settings-first': ['database', 'warning'],
  'database-none': ['database', 'ok'],
  'database-in-use': ['database', 'ok'],
  'database-answers': ['database', 'ok'],
  'way-encrypted': ['database', 'ok'],
  'way-on-this-machine': ['database', 'ok'],
  'way-unencrypted': ['database', 'warning'],
  'no-tables': ['database', 'ok'],
  'migrations-changed': ['database', 'fix'],
  'migrations-newer': ['database', 'warning'],
  'migrations-applied': ['database', 'ok'],
  'migrations-pending': ['database', 'warning'],
  writable: ['database', 'ok'],
  'read-only': ['database', 'fix'],
  'no-room': ['database', 'fix'],
  'tables-not-writable': ['database', 'fix'],
  'schemas-not-allowed': ['database', 'fix'],
  encoding: ['database', 'fix'],
  'few-connections': ['database', 'warning'],
  'posts-waiting': ['database', 'ok'],
  'posts-late': ['database', 'warning'],
  'posts-undelivered': ['database', 'warning'],
  'posts-held-back': ['database', 'warning'],
  'tokens-unused': ['token-keys', 'warning'],
  'keys-missing': ['token-keys', 'fix'],
  'keys-former': ['token-keys', 'warning'],
  'keys-fine': ['token-keys', 'ok'],
  'folder-not-a-folder': ['data-folder', 'fix'],
  'folder-not-writable': ['data-folder', 'fix'],
  'folder-writable': ['data-folder', 'ok'],
  'folder-absent': ['data-folder', 'ok'],
  'folder-open': ['data-folder', 'warning'],
  'disk-filling': ['data-folder', 'warning'],
  'disk-full': ['data-folder', 'fix'],
  'token-fine': ['tokens', 'ok'],
  'scopes-fine': ['scopes', 'ok'],
  'scope-lacking': ['scopes', 'warning'],
  'scopes-unneeded': ['scopes', 'warning'],
  'signing-secret-set': ['tokens', 'ok'],
  'socket-opens': ['tokens', 'ok'],
  'clock-agrees': ['clock', 'ok'],
  'clock-off': ['clock', 'warning'],
  'clock-far-off': ['clock', 'fix'],
  'clock-unread': ['clock', 'warning'],
  'port-any': ['port', 'ok'],
  'port-free': ['port', 'ok'],
  'port-ours': ['port', 'ok'],
  'port-taken': ['port', 'fix'],
  'port-refused': ['port', 'fix'],
  'address-not-here': ['port', 'fix'],
  'manifest-unreadable': ['manifest', 'fix'],
  'manifest-no-json': ['manifest', 'fix'],
  'manifest-fine': ['manifest', 'ok'],
  'manifest-for-sockets': ['manifest', 'warning'],
  'manifest-command': ['manifest', 'fix'],
  'manifest-escape': ['manifest', 'fix'],
  'manifest-scopes': ['manifest', 'fix'],
  'manifest-events': ['manifest', 'fix'],
  'manifest-buttons': ['manifest', 'fix'],
  'manifest-home': ['manifest', 'fix'],
  'manifest-rotation': ['manifest', 'fix'],
  'manifest-return': ['manifest', 'fix'],
  'manifest-socket-off': ['manifest', 'fix'],
  'manifest-socket-on': ['manifest', 'fix'],
  'manifest-urls': ['manifest', 'fix'],
  'charts-fine': ['charts', 'ok'],
  'charts-broken': ['charts', 'fix'],
  'zones-fine': ['time-zones', 'ok'],
  'zones-unknown': ['time-zones', 'fix'],
} as const satisfies Record<string, readonly [Check, Level]>;

type OwnCode = keyof typeof KINDS;
/** What the doctor itself found, with what the code's message takes. */
type OwnFinding = {
  [Code in OwnCode]: { readonly code: Code } & Messages[`doctor-${Code}`];
}[OwnCode];

/** Any check that broke. */
interface FailedCheck {
  readonly code: 'check-failed';
  readonly check: Check;
  readonly reason: string;
}

/** What would keep the bot from starting is always to be fixed. */
type StartFinding = SettingProblem | PlatformProblem | StoreProblem;

export type Finding = OwnFinding | FailedCheck | StartFinding;

export interface Kind {
  readonly check: Check;
  readonly level: Level;
}

function isOwn(finding: Finding): finding is OwnFinding {
  return Object.hasOwn(KINDS, finding.code);
}

function checkOfStart(finding: StartFinding): Check {
  if ('variable' in finding) return 'settings';
  if (finding.code === 'scope-missing') return 'scopes';
  return /^(?:database|data-folder|dump)-/.test(finding.code) ? 'database' : 'tokens';
}

export function kindOf(finding: Finding): Kind {
  if (finding.code === 'check-failed') return { check: finding.check, level: 'fix' };
  if (!isOwn(finding)) return { check: checkOfStart(finding), level: 'fix' };
  const [check, level] = KINDS[finding.code];
  return { check, level };
}

/** What is the case and, unless all is well, what to do. */
export function findingWords(finding: Finding): string {
  return finding.code === 'check-failed' || isOwn(finding)
    ? sayCode('doctor', finding)
    : sayCode('start', finding);
}
