/** Reads and writes installations. Sees tokens encrypted only. */
import { and, eq, gt, isNotNull, isNull, ne } from 'drizzle-orm';
import type { InstallationReading, InstallationWriting } from '../../app/ports/installations.ts';
import type { Installation } from '../../app/workspaces/installation.ts';
import { installations } from '../schema.ts';
import type { SqlSession } from './sql-session.ts';

function installationFrom(row: typeof installations.$inferSelect): Installation {
  const { sealedToken, keyName, enterpriseId, installedBy, revokedAt, ...same } = row;
  return {
    ...same,
    token: sealedToken === null || keyName === null ? undefined : { sealed: sealedToken, keyName },
    enterpriseId: enterpriseId ?? undefined,
    installedBy: installedBy ?? undefined,
    revokedAt: revokedAt ?? undefined,
  };
}

function rowOf(installation: Installation): typeof installations.$inferInsert {
  const { token, scopes, enterpriseId, installedBy, revokedAt, ...same } = installation;
  return {
    ...same,
    scopes: [...scopes],
    sealedToken: token?.sealed ?? null,
    keyName: token?.keyName ?? null,
    enterpriseId: enterpriseId ?? null,
    installedBy: installedBy ?? null,
    revokedAt: revokedAt ?? null,
  };
}

export function installationReading(session: SqlSession): InstallationReading {
  return {
    async installationOf(workspaceId) {
      const [row] = await session
        .select()
        .from(installations)
        .where(eq(installations.workspaceId, workspaceId));
      return row && installationFrom(row);
    },

    async sealedInstallations({ exceptKey, after, limit }) {
      const rows = await session
        .select()
        .from(installations)
        .where(
          and(
            isNotNull(installations.sealedToken),
            exceptKey === undefined ? undefined : ne(installations.keyName, exceptKey),
            after === undefined ? undefined : gt(installations.workspaceId, after),
          ),
        )
        .orderBy(installations.workspaceId)
        .limit(limit);
      return rows.map(installationFrom);
    },
  };
}

export function installationWriting(session: SqlSession): InstallationWriting {
  return {
    async save(installation) {
      const row = rowOf(installation);
      await session
        .insert(installations)
        .values(row)
        .onConflictDoUpdate({ target: installations.workspaceId, set: row });
    },

    async revoke(workspaceId, at, onlyToken) {
      const revoked = await session
        .update(installations)
        .set({ revokedAt: at, sealedToken: null, keyName: null })
        .where(
          and(
            eq(installations.workspaceId, workspaceId),
            isNull(installations.revokedAt),
            onlyToken && eq(installations.sealedToken, onlyToken.sealed),
          ),
        )
        .returning({ workspaceId: installations.workspaceId });
      return revoked.length > 0;
    },

    async forget(workspaceId) {
      const gone = await session
        .delete(installations)
        .where(eq(installations.workspaceId, workspaceId))
        .returning({ workspaceId: installations.workspaceId });
      return gone.length > 0;
    },

    async replaceToken(workspaceId, from, to) {
      const replaced = await session
        .update(installations)
        .set({ sealedToken: to.sealed, keyName: to.keyName })
        .where(and(eq(installations.workspaceId, workspaceId), eq(installations.sealedToken, from.sealed)))
        .returning({ workspaceId: installations.workspaceId });
      return replaced.length > 0;
    },
  };
}
