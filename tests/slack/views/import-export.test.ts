import { describe, expect, it } from 'vitest';
import type { ImportPreview } from '../../../src/app/import/import-reading.ts';
import { decodeValue } from '../../../src/slack/button-values.ts';
import { importContext } from '../../../src/slack/form-contexts.ts';
import { ACTIONS } from '../../../src/slack/ids.ts';
import {
  exportComment,
  exportedMessage,
  importFormView,
  importPreviewView,
  sprintsImportedMessage,
} from '../../../src/slack/views/import-views.ts';
import { lineNumberWords } from '../../../src/words/import.ts';
import { importPreview, sprintsImported, team, teamExport } from '../support/samples.ts';
import { formText } from './form-text.ts';
import { buttonsOf, expectFormFits, expectMessageFits } from './view-checks.ts';

const GIVEN = { round: 2, files: [{ id: 'F1', name: 'sprints.csv' }], texts: ['', '', ''] };
const shown = (change: Partial<ImportPreview>) => importPreviewView({ ...importPreview, ...change }, GIVEN);
const contextOf = (view: { private_metadata?: string }) => decodeValue(importContext, view.private_metadata);

describe('the import form', () => {
  it('says what it takes, and that nothing is imported before it was shown', () => {
    expect(formText(importFormView({ team, knownSprints: 0 }))).toMatchInlineSnapshot(`
      "[Import sprints | Check | Cancel] {"teamId":"team-1","round":1,"files":[]}
      Bring in sprints of Pier crew that are over, so that ranges, odds and forecasts have something to go by. The team has no closed sprint yet. You see what would be imported before anything is.
      A file or pasted lines, the first of them with the names of the columns, for example:
      \`name, first day, last day, commitment, finished\`
      \`Harbour 1, 2026-01-05, 2026-01-16, 20, 18\`
      <files> CSV files (optional):  – A file of sprints is enough. Add the other files of an export to bring in everything that was known there.
      <text> Or lines pasted from a spreadsheet (optional):  – Columns: “name, first day, last day, commitment, pulled in, surprise, finished, points worked”. Only the first four are needed.
      <text-2> More lines (2 of 3 fields) (optional):  – A field holds 3,000 characters. Lines are counted through all fields.
      <text-3> More lines (3 of 3 fields) (optional):  – A field holds 3,000 characters. Lines are counted through all fields."
    `);
  });

  it('says how many sprints there are already', () => {
    expect(formText(importFormView({ team, knownSprints: 3 }))).toContain('has 3 closed sprints already');
  });

  it('carries where the reply belongs, and no preview that was not seen', () => {
    const view = importFormView({ team, knownSprints: 0 }, 'C1');
    expect(contextOf(view)).toEqual({ teamId: team.id, replyTo: 'C1', round: 1, files: [] });
  });
});

describe('the preview of an import', () => {
  it('leads with how many sprints from when to when, then names them, what is left out and what to check', () => {
    expect(
      formText(shown({ warnings: [{ code: 'same-name', sprints: ['Harbour 1'] }] })),
    ).toMatchInlineSnapshot(`
      "[Import sprints | Import | Cancel] {"teamId":"team-1","round":2,"files":[{"id":"F1","name":"sprints.csv"}],"seen":"print-1"}
      # 2 sprints to import, from 5 January to 30 January 2026
      Only the totals of these sprints are given, not their cards. That is enough for ranges and release forecasts; the odds by size need cards.
      *Sprints*
      • Harbour 1 (5 January to 16 January 2026): committed 20, finished 18
      • Harbour 2 (19 January to 30 January 2026): committed 21.5, finished not known
      *Bodies of work that the team keeps from then on*
      • Harbour lights: 80 points to do
      *Left out*
      • Harbour 3 (2 February 2026) was cancelled, so it doesn’t count as history.
      • Bells is kept here already; it stays as it is.
      *Please check*
      • More than one sprint is called Harbour 1; their days differ, so each is imported.
      • sprints.csv: the column “Mood” isn’t known here and isn’t used.
      (Imported sprints count as history from then on. They are posted nowhere and can’t be reopened.)
      <keptFileIds-2> Files already given (optional): ["F1=sprints.csv"] ["F1=sprints.csv"] – Untick the files that you don’t want.
      <files-2> More files, or corrected ones (optional):  – A file replaces an earlier one of the same name.
      <text> Or lines pasted from a spreadsheet (optional):  – Columns: “name, first day, last day, commitment, pulled in, surprise, finished, points worked”. Only the first four are needed."
    `);
  });

  it('imports what it shows: its fingerprint goes with it, the files too', () => {
    expect(contextOf(shown({}))).toEqual({
      teamId: team.id,
      round: 2,
      seen: 'print-1',
      files: [{ id: 'F1', name: 'sprints.csv' }],
    });
  });

  it('with a bad line says where and what, once for many lines, and imports nothing', () => {
    const problem = { code: 'no-cell', column: 'commitment' } as const;
    const problems = [3, 5, 6, 7].map((lineNumber) => ({ fileName: 'sprints.csv', lineNumber, problem }));
    const whole = { fileName: 'a<b>.csv', lineNumber: undefined, problem: { code: 'empty' } as const };
    const view = shown({ sprints: [], problems: [...problems, whole], badLines: 5 });
    const text = formText(view);
    expect(text).toContain('Nothing can be imported yet: 5 lines have something wrong');
    expect(text).toContain('• *sprints.csv, lines 3 and 5 to 7*: “commitment” is empty');
    expect(text).toContain('• *a&lt;b&gt;.csv*: the file is empty.');
    expect(view.submit?.text).toBe('Check again');
    expect(contextOf(view)?.seen).toBeUndefined();
  });

  it('of nothing new says so', () => {
    const view = shown({
      sprints: [],
      bodies: [],
      leftOut: [{ name: 'Harbour 1', startsOn: '2026-01-05', why: 'known' }],
    });
    expect(formText(view)).toContain('Nothing new to import');
    expect(formText(view)).toContain('take it out first with `/loadline import remove`');
    expect(contextOf(view)?.seen).toBeUndefined();
  });

  it('mentions cards and answers when there are any', () => {
    const [first, ...rest] = importPreview.sprints as [ImportPreview['sprints'][number]];
    const some = shown({ sprints: [{ ...first, cards: 4 }, ...rest], cards: 4, answers: 9 });
    expect(formText(some)).toContain(
      'With 4 cards and 9 answers about them. Cards are given for 1 of 2 sprints.',
    );
  });

  it('fits into a form with every problem and names of any length', () => {
    const long = 'ß<&*'.repeat(200);
    const problems = Array.from({ length: 3_000 }, (_, i) => ({
      fileName: long,
      lineNumber: i + 2,
      problem: { code: 'several-sprints', sprint: `${i} ${long}` } as const,
    }));
    const files = Array.from({ length: 10 }, (_, i) => ({
      id: `F${i}${'0'.repeat(18)}`,
      name: `${i}${long}`.slice(0, 80),
    }));
    const texts = Array.from({ length: 3 }, () => long.repeat(3).slice(0, 3_000));
    const view = importPreviewView({ ...importPreview, problems }, { round: 9, files, texts }, 'C0123456789');
    expectFormFits(view);
    expect(view.private_metadata?.length).toBeLessThanOrEqual(3_000);
    expect(formText(view)).toMatch(/… and [\d,]+ more things are wrong/);
  });

  it('fits into a form with a thousand sprints and as many left out', () => {
    const sprints = Array.from({ length: 1_000 }, (_, i) => ({
      ...(importPreview.sprints[0] as ImportPreview['sprints'][number]),
      name: `${'<*&'.repeat(26)}${i}`,
    }));
    const leftOut = sprints.map(({ name, startsOn }) => ({ name, startsOn, why: 'known' as const }));
    const unused = Array.from({ length: 90 }, (_, i) => `<${'x'.repeat(300)}${i}`);
    const files = Array.from({ length: 10 }, () => ({
      fileName: 'x'.repeat(99),
      kind: 'sprints' as const,
      lines: 1,
      unused,
    }));
    expectFormFits(
      shown({ sprints, leftOut, files, warnings: [{ code: 'same-name', sprints: ['w'.repeat(5_000)] }] }),
    );
  });
});

describe('numbers of lines', () => {
  it.each([
    [[7], 'line 7'],
    [[7, 7], 'line 7'],
    [[3, 4], 'lines 3 and 4'],
    [[3, 5, 6, 7, 9], 'lines 3, 5 to 7 and 9'],
    [
      Array.from({ length: 14 }, (_, i) => 2 * i),
      'lines 0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22 and 2 more',
    ],
  ])('%j are %s', (numbers, words) => {
    expect(lineNumberWords(numbers)).toBe(words);
  });
});

describe('after an import', () => {
  it('says what was imported and leads on to what it is good for', () => {
    const message = sprintsImportedMessage(sprintsImported);
    expectMessageFits(message);
    expect(message.text).toContain(
      'Imported 2 sprints of Pier crew, from 5 January to 30 January 2026. 1 body of work is kept by Pier crew from now on, with the dates that were told of it. 1 sprint of the file was left out, as shown. The team now has 2 closed sprints to go by. Nothing was posted in its channel.',
    );
    expect(buttonsOf(message.blocks).map(({ actionId }) => actionId)).toEqual([
      ACTIONS.showRange,
      ACTIONS.showOdds,
      ACTIONS.showHistory,
    ]);
  });
});

describe('an export', () => {
  it('says what the files hold and what they don’t, and cautions', () => {
    const message = exportedMessage(teamExport);
    expectMessageFits(message);
    expect(message.text).toContain(
      'Exported Pier crew: 3 sprints, 12 cards, 1 answer, 0 changes and 2 bodies of work, in 6 CSV files. Sprints that an import leaves out, marked so in the files: 1 still running.',
    );
    expect(message.text).toContain('don’t say who owns a card');
    expect(exportComment(teamExport)).toContain('don’t use them to appraise anyone or to compare teams');
  });

  it('can not ping or format with the team’s name', () => {
    expect(exportComment({ ...teamExport, team: { ...team, name: '<!channel> *x*' } })).toContain(
      '&lt;!channel&gt; ∗x∗',
    );
  });
});
