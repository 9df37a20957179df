import { describe, expect, test } from 'vitest';
import { endExperiment } from '../../../src/app/experiments/end-experiment.ts';
import { tryExperiment } from '../../../src/app/experiments/try-experiment.ts';
import { exportSprints } from '../../../src/app/export/export-sprints.ts';
import { ImportProblems } from '../../../src/app/import/import-problem.ts';
import { readImport } from '../../../src/app/import/read-import.ts';
import { actorOf, CHANNEL, harnessForEach, refusalOf } from '../../support/app-harness.ts';
import { GOOD, imported, teamOf } from '../import/giving-files.ts';

// Friday noon in Lisbon, which is on UTC since the Sunday before.
const harness = harnessForEach('2026-10-30T12:00:00Z');
const team = () => teamOf(harness());
const ana = actorOf('ana');

describe('an export', () => {
  test('marks running and cancelled sprints, and of imported sums writes what is known', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    await h.plan(into);
    const { files, running, cancelled, lines } = await exportSprints(h.deps, ana, CHANNEL);
    expect({ running, cancelled, lines }).toEqual({
      running: 1,
      cancelled: 0,
      lines: { sprints: 3, cards: 3, answers: 0, changes: 0, bodies: 0, dates: 0, experiments: 0 },
    });
    const text = Buffer.from(files[0]?.bytes ?? []).toString();
    const [, first, , last] = text.split('\r\n');
    expect(first).toBe(
      'Harbour 1,2026-01-05,2026-01-16,20,2,1,18,21,,,closed,2026-01-16,,,,no,,,10,23,,,0.1,0.05,0.8695652173913043,0.8571428571428571,1',
    );
    expect(last).toContain('running');
  });

  test('has a file of what the team tried, once it tried something, without names; an import leaves it out', async () => {
    const { h, team: into } = await team();
    await imported(h, into, { a: GOOD });
    expect((await exportSprints(h.deps, ana, CHANNEL)).files.map(({ fileName }) => fileName)).toEqual([
      'sprints.csv',
      'cards.csv',
      'answers.csv',
      'changes.csv',
    ]);
    const about = { teamId: into.id, ratio: 'pullInRatio', direction: 'down' };
    await tryExperiment(h.deps, ana, { ...about, text: 'Nothing early, says <@UBEN>' });
    await tryExperiment(h.deps, ana, { ...about, text: 'Small cards' });
    h.set('2026-11-02T23:30:00Z');
    await endExperiment(h.deps, ana, { place: CHANNEL, reference: '2', outcome: 'keep' });
    const { files, lines } = await exportSprints(h.deps, ana, CHANNEL);
    expect(lines.experiments).toBe(2);
    const file = files.at(-1);
    const text = Buffer.from(file?.bytes ?? []).toString();
    expect(file?.fileName).toBe('experiments.csv');
    expect(text.split('\r\n').slice(1)).toEqual([
      '"Nothing early, says somebody",pull-in ratio,down,2026-10-30,Harbour 2,2026-01-19,,',
      'Small cards,pull-in ratio,down,2026-10-30,Harbour 2,2026-01-19,keep,2026-11-02',
      '',
    ]);
    const problems = new ImportProblems();
    const read = readImport(
      [
        { fileName: 'experiments.csv', text },
        { fileName: 'a.csv', text: GOOD },
      ],
      problems,
    );
    expect(problems.count).toBe(0);
    expect(read.files.map(({ kind }) => kind)).toEqual(['experiments', 'sprints']);
  });

  test('of a team without a sprint is refused in words', async () => {
    const { h } = await team();
    await refusalOf(exportSprints(h.deps, ana, CHANNEL), 'nothing-to-export');
  });

  test('names no person, also where somebody was mentioned', async () => {
    const { h, team: into } = await team();
    const { sprint } = await h.plan(into, {
      goal: 'Ask <@UCHI> first',
      cards: 'Lamp for <@UBEN|ben>, 3, @Ben',
    });
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '2', note: 'with <@UANA>' } });
    const { files } = await exportSprints(h.deps, ana, CHANNEL);
    const text = files.map(({ bytes }) => Buffer.from(bytes).toString()).join('');
    expect(text).toContain('Ask somebody first');
    expect(text).toContain('with somebody');
    expect(text).not.toMatch(/UANA|UBEN|UCHI|Ben Ode/);
  });

  test('leaves out private notes, also of answers that are put together', async () => {
    const { h, team: into } = await team();
    const { sprint } = await h.plan(into, { cards: 'Lamp, 5, @Ben @Chi' });
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', { 1: { left: '4', worked: '1', note: 'two formats' } });
    await h.answer('chi', sprint.id, '2026-11-02', {
      1: { left: '3', worked: '1', note: 'Private: my slip' },
    });
    const { files } = await exportSprints(h.deps, ana, CHANNEL);
    const text = files.map(({ bytes }) => Buffer.from(bytes).toString()).join('');
    expect(text).toContain('two formats');
    expect(text).not.toContain('my slip');
  });

  test('puts the answers of a day together, and numbers them where the ledger would read them in another way', async () => {
    const { h, team: into } = await team();
    const { sprint } = await h.plan(into, { cards: 'Lamp, 5, @Ben @Chi\nBell, 5, @Ben @Chi' });
    await h.pass('2026-11-02T09:15:00Z');
    await h.answer('ben', sprint.id, '2026-11-02', {
      1: { left: '4', worked: '1' },
      2: { left: '8', worked: '0', surprise: '3' },
    });
    await h.answer('chi', sprint.id, '2026-11-02', {
      1: { left: '3', worked: '1' },
      2: { left: '5', worked: '0', surprise: '0' },
    });
    const { files } = await exportSprints(h.deps, ana, CHANNEL);
    const text = Buffer.from(files[2]?.bytes ?? []).toString();
    expect(text.split('\r\n').slice(1, -1)).toEqual([
      'Harbour 12,2026-11-02,1,2026-11-02,1,2,3,0,0,',
      // +3 of surprise and −3 of drift: as one answer its growth would be 0, and the surprise gone.
      'Harbour 12,2026-11-02,2,2026-11-02,1,0,8,3,0,',
      'Harbour 12,2026-11-02,2,2026-11-02,2,0,5,0,-3,',
    ]);
  });
});
