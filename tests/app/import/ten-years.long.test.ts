/** An import of ten years of a team, on both kinds of database. */
import { expect, test } from 'vitest';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import { pastSprints } from '../../../src/app/history/team-history.ts';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import type { AppDependencies } from '../../../src/app/ports/app-dependencies.ts';
import { aMember, aTeam } from '../../store/store-examples.ts';
import { describeOnBoth } from '../../support/databases.ts';
import { readHere } from '../../support/read-here.ts';

const NOW = new Date('2026-10-30T12:00:00Z');

describeOnBoth('an import', (database) => {
  test('takes ten years of a team at once', async () => {
    const team = aTeam();
    const actor = { workspaceId: team.workspaceId, userId: 'U-ana' };
    const { store } = database();
    await store.transaction(async (tx) => {
      await tx.write.teams.save(team);
      await tx.write.teams.saveMembers(team.id, [aMember({ isFacilitator: true })]);
    });
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
    const deps = { store, files: readHere, clock: { now: () => NOW } } as AppDependencies;
    const give = (seen: string | undefined) =>
      importSprints(deps, actor, {
        teamId: team.id,
        files: Object.entries(files).map(([fileName, text]) => ({ fileName, text })),
        seen,
      });
    const first = await give(undefined);
    if (first.kind !== 'preview') throw new Error('imported without a preview');
    expect((await give(first.preview.fingerprint)).kind).toBe('imported');
    const past = await store.transaction((tx) => pastSprints(tx, team));
    expect([past.length, new Set(past.map(({ velocityPoints }) => velocityPoints))]).toEqual([
      260,
      new Set([60]),
    ]);
  });

  test('takes each part of what a team with 45,000 lines hands out', async () => {
    const { store } = database();
    const deps = { store, files: readHere, clock: { now: () => NOW } } as AppDependencies;
    const actor = { workspaceId: aTeam().workspaceId, userId: 'U-ana' };
    const [here, there] = ['here', 'there'].map((id) => aTeam({ id: `team-${id}`, channelId: `C-${id}` }));
    if (!here || !there) throw new Error('no teams');
    for (const team of [here, there]) {
      await store.transaction(async (tx) => {
        await tx.write.teams.save(team);
        await tx.write.teams.saveMembers(team.id, [aMember({ isFacilitator: true })]);
      });
    }
    const give = async (teamId: string, files: readonly { fileName: string; text: string }[]) => {
      const first = await importSprints(deps, actor, { teamId, files, seen: undefined });
      if (first.kind !== 'preview') throw new Error('imported without a preview');
      expect(first.preview.problems).toEqual([]);
      const seen = first.preview.fingerprint;
      expect((await importSprints(deps, actor, { teamId, files, seen })).kind).toBe('imported');
    };
    const sprints = ['name,first day,last day,commitment'];
    const cards = ['sprint,title,estimate'];
    const answers = ['sprint,card,day,left'];
    for (let i = 0; i < 150; i += 1) {
      const from = new Date(Date.UTC(2016, 0, 4 + i * 14));
      const day = (plus: number) => new Date(from.getTime() + plus * 86_400_000).toISOString().slice(0, 10);
      sprints.push(`S${i},${day(0)},${day(11)},300`);
      for (let card = 1; card <= 100; card += 1) {
        cards.push(`S${i},Card ${card},3`);
        answers.push(`S${i},${card},${day(1)},2`, `S${i},${card},${day(2)},0`);
      }
    }
    const texts = { 'sprints.csv': sprints, 'cards.csv': cards, 'answers.csv': answers };
    await give(
      here.id,
      Object.entries(texts).map(([fileName, lines]) => ({ fileName, text: lines.join('\n') })),
    );
    const exported = await exportSprints(deps, actor, { teamId: here.id });
    const files = exported.files.map(({ fileName, bytes }) => ({ fileName, text: `${Buffer.from(bytes)}` }));
    expect([exported.parts, files.length]).toEqual([2, 8]);
    await give(there.id, files.slice(0, 4));
    await give(there.id, files.slice(4));
    expect(exported.lines).toEqual((await exportSprints(deps, actor, { teamId: there.id })).lines);
  });
});
