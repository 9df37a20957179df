/** Workspaces that installed the bot, each with its encrypted token. */
import { sql } from 'drizzle-orm';
import { check, index, text } from 'drizzle-orm/pg-core';
import { instant, isNotBlank, loadline } from './columns.ts';

/** Holds no token in the clear: the keys to them are not in the database. */
export const installations = loadline.table(
  'installations',
  {
    workspaceId: text('workspace_id').primaryKey(),
    workspaceName: text('workspace_name').notNull(),
    enterpriseId: text('enterprise_id'),
    botUserId: text('bot_user_id').notNull(),
    botId: text('bot_id').notNull(),
    /** Erased when the workspace removes the bot. */
    sealedToken: text('sealed_token'),
    /** Name of the key with which the token is encrypted. */
    keyName: text('key_name'),
    scopes: text('scopes').array().notNull(),
    installedBy: text('installed_by'),
    installedAt: instant('installed_at').notNull(),
    revokedAt: instant('revoked_at'),
  },
  (installation) => [
    index('installations_by_key').on(installation.keyName),
    check(
      'installations_ids_given',
      sql`${isNotBlank(installation.workspaceId)} and ${isNotBlank(installation.botUserId)}
        and ${isNotBlank(installation.botId)}`,
    ),
    check(
      'installations_token_until_revoked',
      sql`(${installation.sealedToken} is not null) = (${installation.revokedAt} is null)`,
    ),
    check(
      'installations_token_has_key',
      sql`num_nonnulls(${installation.sealedToken}, ${installation.keyName}) <> 1`,
    ),
  ],
);

/** Written by former versions, which may still run during an upgrade; the next release can remove it. */
export const installAttempts = loadline.table(
  'install_attempts',
  {
    stateHash: text('state_hash').primaryKey(),
    browserHash: text('browser_hash').notNull(),
    expiresAt: instant('expires_at').notNull(),
  },
  (attempt) => [index('install_attempts_by_expiry').on(attempt.expiresAt)],
);
