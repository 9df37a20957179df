/** What an import records, on both kinds of database: one transaction, and the same files out of each. */
import { expect, test } from 'vitest';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import type { AppDependencies } from '../../../src/app/ports/app-dependencies.ts';
import { aMember, aTeam } from '../../store/store-examples.ts';
import { describeOnBoth } from '../../support/databases.ts';
import { readHere } from '../../support/read-here.ts';

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

  test('leaves nothing behind when it fails half-way', async () => {
    const { give, store, team } = await setUp();
    const first = await give(FILES);
    if (first.kind !== 'preview') throw new Error('imported without a preview');
    const failing = {
      read: store.read,
      transaction: (work: Parameters<typeof store.transaction>[0]) =>
        store.transaction((tx) =>
          work({
            ...tx,
            write: {
              ...tx.write,
              history: {
                ...tx.write.history,
                savePastSprint: async () => {
                  throw new Error('the disk is full');
                },
              },
            },
          }),
        ),
    };
    const deps = { store: failing, files: readHere, clock: { now: () => NOW } } as unknown as AppDependencies;
    const input = {
      teamId: team.id,
      files: Object.entries(FILES).map(([fileName, text]) => ({ fileName, text })),
      seen: first.preview.fingerprint,
    };
    const actor = { workspaceId: team.workspaceId, userId: 'U-ana' };
    await expect(importSprints(deps, actor, input)).rejects.toThrow('the disk is full');
    expect(await store.read((read) => read.sprintsOf(team.id))).toEqual([]);
  });

  test('takes ten years of a team at once', async () => {
    const here = await setUp();
    const sprints = ['name,first day,last day,commitment'];
    const cards = ['sprint,title,estimate'];
    const answers = ['sprint,card,day,left'];
    for (let i = 0; i < 260; i += 1) {
      const from = new Date(Date.UTC(2016, 0, 4 + i * 14));
      const day = (plus: number) => new Date(from.getTime() + plus * 86_400_000).toISOString().slice(0, 10);
      sprints.push(`S${i},${day(0)},${day(11)},60`);
      for (let card = 1; card <= 20; card += 1) {
        cards.push(`S${i},Card ${card},3`);
        answers.push(`S${i},${card},${day(1)},2`, `S${i},${card},${day(2)},0`);
      }
    }
    const files = {
      'sprints.csv': sprints.join('\n'),
      'cards.csv': cards.join('\n'),
      'answers.csv': answers.join('\n'),
    };
    await bring(here, files);
    const past = await here.store.transaction((tx) => pastSprints(tx, here.team));
    expect([past.length, new Set(past.map(({ velocityPoints }) => velocityPoints))]).toEqual([
      260,
      new Set([60]),
    ]);
  });
});
