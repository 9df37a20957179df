/** While files are read, which takes seconds for large ones, no transaction is open: nobody waits for the reader. */
import { describe, expect, it } from 'vitest';
import { importSprints } from '../../../src/app/import/import-sprints.ts';
import { importValues } from '../../../src/app/import/import-values.ts';
import { readCardFile } from '../../../src/app/planning/card-file.ts';
import type { AppDependencies } from '../../../src/app/ports/app-dependencies.ts';
import type { FileReading } from '../../../src/app/ports/file-reading.ts';
import type { Store } from '../../../src/app/ports/store.ts';
import { actorOf, type Harness, harnessForEach } from '../../support/app-harness.ts';
import { readHere } from '../../support/read-here.ts';
import { GOOD, imported } from './giving-files.ts';

const at = harnessForEach('2026-11-01T12:00:00Z');
const ana = actorOf('ana');

/** Counts the transactions that are open when a file is read. */
function watched(h: Harness): { deps: AppDependencies; openWhileRead: number[] } {
  const openWhileRead: number[] = [];
  let open = 0;
  const counted =
    <Work>(run: (work: Work) => Promise<unknown>) =>
    async (work: Work) => {
      open += 1;
      try {
        return await run(work);
      } finally {
        open -= 1;
      }
    };
  const { store } = h.deps;
  const counting = {
    ...store,
    read: counted(store.read as never),
    transaction: counted(store.transaction as never),
  } as unknown as Store;
  const look = () => openWhileRead.push(open);
  const files: FileReading = {
    imports: async (question, use) => {
      look();
      return readHere.imports(question, use);
    },
    cards: async (question) => {
      look();
      return readHere.cards(question);
    },
    values: async (question) => {
      look();
      return readHere.values(question);
    },
  };
  return { deps: { ...h.deps, store: counting, files }, openWhileRead };
}

describe('a file is read outside of every transaction', () => {
  it('when it is imported', async () => {
    const h = at();
    const { id: teamId } = await h.setUpTeam();
    const { deps, openWhileRead } = watched(h);
    const files = [{ fileName: 'sprints.csv', text: GOOD }];
    const first = await importSprints(deps, ana, { teamId, files, seen: undefined });
    if (first.kind !== 'preview') throw new Error('imported without a preview');
    const second = await importSprints(deps, ana, { teamId, files, seen: first.preview.fingerprint });
    expect(second.kind).toBe('imported');
    expect(openWhileRead).toEqual([0, 0]);
  });

  it('when it holds values', async () => {
    const h = at();
    const team = await h.setUpTeam();
    await imported(h, team, { 'sprints.csv': GOOD });
    const { deps, openWhileRead } = watched(h);
    const file = { fileName: 'values.csv', text: 'sprint,value\nHarbour 1,8\n' };
    const first = await importValues(deps, ana, { teamId: team.id, file, seen: undefined });
    if (first.kind !== 'preview') throw new Error('recorded without a preview');
    const { fingerprint } = first.preview;
    const second = await importValues(deps, ana, { teamId: team.id, file, seen: fingerprint });
    expect(second.kind).toBe('recorded');
    expect(openWhileRead).toEqual([0, 0]);
  });

  it('when it holds cards of a plan', async () => {
    const h = at();
    const team = await h.setUpTeam();
    const { deps, openWhileRead } = watched(h);
    const file = { fileName: 'cards.csv', text: 'title,points\nFog horn,3\n' };
    const plan = h.planInput(team, { cards: '' });
    const outcome = await readCardFile(deps, ana, { teamId: team.id, plan, file });
    expect(outcome).toMatchObject({ kind: 'reading', reading: { read: { cards: 1 } } });
    expect(openWhileRead).toEqual([0]);
  });
});

describe('what changes while a file is read', () => {
  it('is not overtaken: an import that no longer fits is shown again, and nothing is written', async () => {
    const h = at();
    const team = await h.setUpTeam();
    const { id: teamId } = team;
    const files = [{ fileName: 'sprints.csv', text: GOOD }];
    const first = await importSprints(h.deps, ana, { teamId, files, seen: undefined });
    if (first.kind !== 'preview') throw new Error('imported without a preview');
    const slow: FileReading = {
      ...readHere,
      imports: (question, use) =>
        readHere.imports(question, async (opened) => {
          await imported(h, team, { 'sprints.csv': GOOD });
          return use(opened);
        }),
    };
    const deps = { ...h.deps, files: slow };
    const second = await importSprints(deps, ana, { teamId, files, seen: first.preview.fingerprint });
    expect(second.kind).toBe('preview');
    expect(await h.read((read) => read.sprintsOf(teamId))).toHaveLength(2);
  });
});
