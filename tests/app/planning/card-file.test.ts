import { describe, expect, test } from 'vitest';
import { readCardFile } from '../../../src/app/planning/card-file.ts';
import { planForm } from '../../../src/app/planning/plan-form.ts';
import { previewPlan } from '../../../src/app/planning/plan-sprint.ts';
import { actorOf, CHANNEL, harnessForEach, problemsOf, refusalOf } from '../../support/app-harness.ts';

const harness = harnessForEach('2026-10-30T12:00:00Z');
const ana = actorOf('ana');
const SEEN = { title: 0, estimate: 1, owner: 2 };
const fileOf = (...rows: string[]) => ({
  fileName: 'board.csv',
  text: ['Title,Points,Owner', ...rows].join('\n'),
});

async function withTypedPlan() {
  const h = harness();
  const team = await h.setUpTeam();
  const plan = h.planInput(team, { name: 'Harbour 12', cards: 'Typed before, 2' });
  return { h, teamId: team.id, plan };
}

describe('a file of cards', () => {
  test('is shown first, and what was typed is kept', async () => {
    const { h, teamId, plan } = await withTypedPlan();
    const outcome = await readCardFile(h.deps, ana, { teamId, plan, file: fileOf('Fog horn,3,@Ben') });
    expect(outcome).toMatchObject({
      kind: 'reading',
      reading: { fileName: 'board.csv', read: { rows: 1, cards: 1, columns: SEEN } },
    });
    expect((await planForm(h.deps, ana, CHANNEL)).draft).toEqual(plan);
  });

  test('is filled in below what was typed, under the columns that were seen', async () => {
    const { h, teamId, plan } = await withTypedPlan();
    const file = fileOf('Fog horn,3,@Ben', 'Lamps,"0,5",');
    await readCardFile(h.deps, ana, { teamId, plan, file });
    const outcome = await readCardFile(h.deps, ana, { teamId, file, columns: SEEN, seen: SEEN });
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    expect(outcome).toMatchObject({ kind: 'filled in', form: { draft, leftOver: 0, fromFile: 2 } });
    const { cards } = await previewPlan(h.deps, ana, draft);
    expect(cards.map(({ title, estimatePoints }) => [title, estimatePoints])).toEqual([
      ['Typed before', 2],
      ['Fog horn', 3],
      ['Lamps', 0.5],
    ]);
  });

  test('is shown again when another column was chosen', async () => {
    const { h, teamId, plan } = await withTypedPlan();
    const file = fileOf('Fog horn,3,@Ben');
    await readCardFile(h.deps, ana, { teamId, plan, file });
    const columns = { title: 0, estimate: 1 };
    const outcome = await readCardFile(h.deps, ana, { teamId, file, columns, seen: SEEN });
    expect(outcome).toMatchObject({ kind: 'reading', reading: { read: { columns } } });
    expect((await planForm(h.deps, ana, CHANNEL)).draft).toEqual(plan);
  });

  test('fills its bad rows in as well, where the preview names them', async () => {
    const { h, teamId, plan } = await withTypedPlan();
    const file = fileOf('Fog horn,soon,@Ben', 'Lamps,1,Zed');
    await readCardFile(h.deps, ana, { teamId, plan, file });
    await readCardFile(h.deps, ana, { teamId, file, columns: SEEN, seen: SEEN });
    const { draft } = await planForm(h.deps, ana, CHANNEL);
    const { cards } = await problemsOf(previewPlan(h.deps, ana, draft));
    expect(cards).toContain('Line 2: “soon” isn’t an estimate');
    expect(cards).toContain('Line 3: @Zed isn’t a member of the team.');
  });

  test('with more rows than a sprint holds is not filled in', async () => {
    const { h, teamId, plan } = await withTypedPlan();
    const file = fileOf(...Array.from({ length: 101 }, (_, i) => `Card ${i},1,`));
    await readCardFile(h.deps, ana, { teamId, plan, file });
    const outcome = await readCardFile(h.deps, ana, { teamId, file, columns: SEEN, seen: SEEN });
    expect(outcome).toMatchObject({ kind: 'reading', reading: { read: { rows: 101 } } });
  });

  test('has nothing to be filled into once the plan was committed to or deleted', async () => {
    const { h, teamId } = await withTypedPlan();
    const file = fileOf('Fog horn,3,');
    const again = readCardFile(h.deps, ana, { teamId, file, columns: SEEN, seen: SEEN });
    expect(await refusalOf(again, 'no-draft')).toEqual({});
  });
});
