/** What an import records, on both kinds of database: one transaction, and the same files out of each. */
import { sql } from 'drizzle-orm';
import { expect, test } from 'vitest';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { importSprints, takeOutLeftImports } from '../../../src/app/import/import-sprints.ts';
import type { AppDependencies } from '../../../src/app/ports/app-dependencies.ts';
import type { Store, Transaction } from '../../../src/app/ports/store.ts';
import { aMember, aTeam } from '../../store/store-examples.ts';
import { describeOnBoth } from '../../support/databases.ts';
import { readHere } from '../../support/read-here.ts';
import { rowsOf } from '../../support/rows-of.ts';

const NOW = new Date('2026-10-30T12:00:00Z');
const FILES = {
  'sprints.csv':
    'name,first day,last day,commitment,value,goal\nA,2026-01-05,2026-01-16,8,1234.5,"Lamps, lit"\nB,2026-01-19,2026-01-30,5.5,,',
  'cards.csv':
    'sprint,card,key,title,estimate,came in,came in on\nA,1,LP-1,Lamp,5,,\nA,2,LP-2,Bell,3,,\nA,3,LP-3,Buoy,2,pulled in,2026-01-08',
  'answers.csv':
    "sprint,card,day,answer,worked,left,surprise,note\nA,1,2026-01-05,1,0,8,3,'=mc²\nA,1,2026-01-05,2,0,5,0,\nA,1,2026-01-07,,5,0,,\nA,3,2026-01-08,1,2,0,0,",
  'changes.csv':
    'sprint,card,day,change,after answer,reason\nA,2,2026-01-09,dropped,,no longer wanted\nA,3,2026-01-08,reopened,1,',
  'bodies.csv': 'body,to do,growth,share,kept on\nLights,80,2.5,0.4,2026-01-05',
  'dates.csv':
    'body,told on,to do,sprints since,optimistic,likely,pessimistic\nLights,2026-01-05,90,,2026-03-06,2026-04-03,\nLights,2026-01-16,90,1,,,',
};

describeOnBoth('an import', (database) => {
  const setUp = async () => {
    const team = aTeam();
    const actor = { workspaceId: team.workspaceId, userId: 'U-ana' };
    const place = { channelId: team.channelId, isDirect: false };
    const { store } = database();
    await store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      await tx.write.teams.saveMembers(team.id, [aMember({ isFacilitator: true })]);
    });
    const deps = { store, files: readHere, clock: { now: () => NOW } } as AppDependencies;
    const give = (files: Record<string, string>, seen?: string) =>
      importSprints(deps, actor, {
        teamId: team.id,
        files: Object.entries(files).map(([fileName, text]) => ({ fileName, text })),
        seen,
      });
    const take = async () => {
      const { files } = await exportSprints(deps, actor, place);
      return Object.fromEntries(
        files.map(({ fileName, bytes }) => [fileName, Buffer.from(bytes).toString()]),
      );
    };
    return { team, give, take, store };
  };

  const bring = async ({ give }: Awaited<ReturnType<typeof setUp>>, files: Record<string, string>) => {
    const first = await give(files);
    if (first.kind !== 'preview') throw new Error('imported without a preview');
    expect(first.preview.problems).toEqual([]);
    expect((await give(files, first.preview.fingerprint)).kind).toBe('imported');
  };

  test('is recorded whole, and comes out of another team as it came out of this one', async () => {
    const here = await setUp();
    await bring(here, FILES);
    const out = await here.take();
    expect(out['answers.csv']).toContain("A,2026-01-05,1,2026-01-05,1,0,8,3,0,'=mc²\r\n");
    expect(out['changes.csv']).toContain('A,2026-01-05,3,2026-01-08,reopened,1,\r\n');
    expect(out['sprints.csv']).toContain('"Lamps, lit",,1234.5,yes,');
    const there = await setUp();
    await bring(there, out);
    expect(await there.take()).toEqual(out);
    const [mine, theirs] = await Promise.all(
      [here, there].map(({ store, team }) => store.transaction((tx) => pastSprints(tx, team))),
    );
    const numbers = (past: typeof mine) => past?.map(({ sprintId: _id, teamId: _team, ...rest }) => rest);
    expect(numbers(theirs)).toEqual(numbers(mine));
  });

  /** The same store, in which something happens when an import is brought in, or when something of it is put aside or taken out. */
  const disturbed = (
    store: Store,
    { bringIn, put, takeOut }: { bringIn?: () => unknown; put?: () => unknown; takeOut?: () => unknown },
  ): AppDependencies => {
    const transaction: Store['transaction'] = (work) =>
      store.transaction((tx) => {
        const aside: Transaction['aside'] = {
          ...tx.aside,
          put: async (...given) => {
            await tx.aside.put(...given);
            await put?.();
          },
          takeOut: async (asideId) => {
            await takeOut?.();
            return tx.aside.takeOut(asideId);
          },
        };
        const imports: Transaction['write']['imports'] = {
          bringIn: async (...given) => {
            await bringIn?.();
            return tx.write.imports.bringIn(...given);
          },
        };
        return work({ ...tx, aside, write: { ...tx.write, imports } });
      });
    return {
      store: { ...store, transaction },
      files: readHere,
      clock: { now: () => NOW },
    } as unknown as AppDependencies;
  };
  const rowsPrepared = async () => {
    const [row] = await rowsOf<{ count: number }>(
      database(),
      sql`select count(*)::int as count from loadline.teams where workspace_id = 'prepared imports'`,
    );
    return row?.count;
  };
  const seenInput = async ({ give, team }: Awaited<ReturnType<typeof setUp>>, given: typeof FILES) => {
    const first = await give(given);
    if (first.kind !== 'preview') throw new Error('imported without a preview');
    return {
      teamId: team.id,
      files: Object.entries(given).map(([fileName, text]) => ({ fileName, text })),
      seen: first.preview.fingerprint,
    };
  };
  const fail = () => {
    throw new Error('the disk is full');
  };

  test.each([
    ['while it is prepared', { put: fail }],
    ['before it is brought in', { bringIn: fail }],
  ])('leaves nothing behind when it fails %s', async (_when, disturbance) => {
    const here = await setUp();
    const input = await seenInput(here, FILES);
    const actor = { workspaceId: here.team.workspaceId, userId: 'U-ana' };
    await expect(importSprints(disturbed(here.store, disturbance), actor, input)).rejects.toThrow(
      'the disk is full',
    );
    expect(await here.store.read((read) => read.sprintsOf(here.team.id))).toEqual([]);
    expect(await rowsPrepared()).toBe(0);
  });

  test('is seen by nobody before all of it is there', async () => {
    const here = await setUp();
    const input = await seenInput(here, FILES);
    const actor = { workspaceId: here.team.workspaceId, userId: 'U-ana' };
    const nobody = { ...here.team, id: 'another', workspaceId: here.team.workspaceId };
    const seen = () =>
      here.store.read(async (read) => ({
        sprints: await read.sprintsOf(here.team.id),
        past: await read.pastSprintsOf(here.team.id),
        bodies: await read.bodiesOf(here.team.id),
        told: await read.toldDatesOf(here.team.id),
        ofOthers: await read.pastTracesOf(nobody, { own: 10, others: 10 }, 1),
        copy: await read.personalRecords(actor, 'cardsAdded'),
        teams: await read.teamsOf(actor),
      }));
    const before = await seen();
    let meanwhile: unknown;
    const pieces: unknown[] = [];
    const put = () => pieces.push(undefined);
    const takeOut = () => undefined;
    const deps = disturbed(here.store, { put, takeOut });
    const { store } = deps;
    // Once everything is prepared, and nothing brought in: the transaction that does it has not begun.
    const looking = {
      ...deps,
      store: {
        ...store,
        transaction: async (work: never) => {
          if (pieces.length > 0) meanwhile ??= await seen();
          return store.transaction(work);
        },
      },
    } as unknown as AppDependencies;
    expect((await importSprints(looking, actor, input)).kind).toBe('imported');
    expect(meanwhile).toEqual(before);
    const after = await seen();
    expect([after.sprints, after.bodies, after.told].map(({ length }) => length)).toEqual([2, 1, 2]);
    expect(await rowsPrepared()).toBe(0);
  });

  test('of a process that ended in the middle is taken out later, and can be given again', async () => {
    const here = await setUp();
    const input = await seenInput(here, FILES);
    const actor = { workspaceId: here.team.workspaceId, userId: 'U-ana' };
    const dying = disturbed(here.store, { bringIn: fail, takeOut: fail });
    await expect(importSprints(dying, actor, input)).rejects.toThrow('the disk is full');
    expect(await rowsPrepared()).toBe(1);
    const deps = { store: here.store, clock: { now: () => new Date() } };
    expect(await takeOutLeftImports(deps)).toBe(0);
    expect(await rowsPrepared()).toBe(1);
    const later = { store: here.store, clock: { now: () => new Date(Date.now() + 2 * 3_600_000) } };
    expect(await takeOutLeftImports(later)).toBe(3);
    expect(await rowsPrepared()).toBe(0);
    await bring(here, FILES);
  });

  test('goes with its team at once, though it was never brought in', async () => {
    const here = await setUp();
    const input = await seenInput(here, FILES);
    const actor = { workspaceId: here.team.workspaceId, userId: 'U-ana' };
    const dying = disturbed(here.store, { bringIn: fail, takeOut: fail });
    await expect(importSprints(dying, actor, input)).rejects.toThrow('the disk is full');
    const before = await rowsPrepared();
    await here.store.transaction((tx) => tx.write.retention.eraseTeam(here.team.id));
    expect([before, await rowsPrepared()]).toEqual([1, 0]);
  });

  test('lets others have their turn between its pieces', async () => {
    const here = await setUp();
    const lines = Array.from({ length: 90 }, (_, i) => `A,${i + 1},Lamp ${i},5,finished`);
    const sprints = ['name,first day,last day,commitment'];
    const cards = ['sprint,card,title,estimate,state'];
    for (let sprint = 0; sprint < 6; sprint += 1) {
      const first = `2026-0${sprint + 1}-05`;
      sprints.push(`S${sprint},${first},2026-0${sprint + 1}-16,450`);
      cards.push(...lines.map((line) => line.replace('A', `S${sprint}`)));
    }
    let pieces = 0;
    let others = 0;
    const put = () => {
      pieces += 1;
    };
    const input = await seenInput(here, {
      'sprints.csv': sprints.join('\n'),
      'cards.csv': cards.join('\n'),
    } as never);
    const actor = { workspaceId: here.team.workspaceId, userId: 'U-ana' };
    let isOver = false;
    const importing = importSprints(disturbed(here.store, { put }), actor, input).finally(() => {
      isOver = true;
    });
    while (!isOver) {
      await here.store.transaction((tx) => tx.read.teamById(here.team.id));
      others += 1;
    }
    expect((await importing).kind).toBe('imported');
    expect(pieces).toBeGreaterThan(8);
    // One that waits comes before the next piece.
    expect(others).toBeGreaterThan(pieces / 2);
  });
});
