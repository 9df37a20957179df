import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sprintDays } from '../../../src/app/clock/sprint-clock.ts';
import { fileNameOf, HISTORY_KINDS } from '../../../src/app/csv/csv-columns.ts';
import { type ExportedSprint, exportRows } from '../../../src/app/export/export-rows.ts';
import { type FromRecords, pastSprintOf } from '../../../src/app/history/past-sprint-at-closing.ts';
import { importPlan, type PlannedSprint } from '../../../src/app/import/import-plan.ts';
import { ImportProblems } from '../../../src/app/import/import-problem.ts';
import { readImport } from '../../../src/app/import/read-import.ts';
import type { Sprint, SprintRecords } from '../../../src/app/team/team.ts';
import { aTeam } from '../../store/store-examples.ts';
import { csvText } from '../../support/csv-text.ts';
import { search } from '../../support/search-width.ts';
import { anySprint, historyOf, type RandomSprint } from './random-team.ts';

const TEAM = aTeam();
const NOW = new Date('2026-10-30T12:00:00Z');
const anyHistory = fc.array(anySprint, { minLength: 1, maxLength: 3 });

type Files = Readonly<Record<string, string>>;

interface Held {
  readonly sprint: Sprint;
  readonly records: SprintRecords;
  readonly past: FromRecords;
  readonly value: number | undefined;
}

function held(given: readonly RandomSprint[]): Held[] {
  return historyOf(TEAM, '2025-01-06', given).map(({ sprint, records, value }) => ({
    sprint,
    records,
    value,
    past: pastSprintOf(TEAM, sprintDays(TEAM, sprint), records),
  }));
}

function filesOf(all: readonly Held[]): Files {
  const rows = exportRows(
    TEAM,
    all.map(({ sprint, records, past, value }): ExportedSprint => {
      const whole = {
        ...sprint,
        ...past,
        sprintId: sprint.id,
        workingDays: 0,
        memberDays: 30,
        recordedValue: value,
      };
      return { sprint, records, past: whole, postedVerdict: undefined, velocityGrowth: undefined };
    }),
  );
  return Object.fromEntries(
    HISTORY_KINDS.map((kind) => [fileNameOf(kind), csvText(kind, rows[kind] as never)]),
  );
}

function planned(files: Files): { sprints: readonly PlannedSprint[]; problems: ImportProblems } {
  const problems = new ImportProblems();
  const all = Object.entries(files).map(([fileName, text]) => ({ fileName, text }));
  const context = {
    team: TEAM,
    existing: [],
    existingBodies: [],
    today: '2026-10-30',
    now: NOW,
    byUserId: 'UANA',
  };
  const { whole } = importPlan(readImport(all, problems), context, problems);
  return { sprints: [...whole()], problems };
}

/** Whose a card was is not in an export, so neither is with which other cards it waited. */
function withoutQueues(past: FromRecords): FromRecords {
  return { ...past, cardEvenings: past.cardEvenings?.map((card) => ({ ...card, queues: [] })) };
}

describe('an export, imported', () => {
  test('has nothing wrong with it, and the same trace, cards, sums and ratios', () => {
    fc.assert(
      fc.property(anyHistory, (given) => {
        const all = held(given);
        const { sprints, problems } = planned(filesOf(all));
        expect(problems.inOrder([])).toEqual([]);
        expect(sprints.map(({ past }) => past)).toEqual(all.map(({ past }) => withoutQueues(past)));
      }),
      search(75),
    );
  });

  test('comes out byte for byte as it went in', () => {
    fc.assert(
      fc.property(anyHistory, (given) => {
        const files = filesOf(held(given));
        expect(filesOf([...planned(files).sprints])).toEqual(files);
      }),
      search(75),
    );
  });

  test('keeps the sums and ratios when only the file of sprints is given; trace and cards are then unknown', () => {
    fc.assert(
      fc.property(anyHistory, (given) => {
        const all = held(given);
        const only = { 'sprints.csv': filesOf(all)['sprints.csv'] as string };
        const { sprints, problems } = planned(only);
        expect(problems.inOrder([])).toEqual([]);
        for (const [i, { past, records }] of sprints.entries()) {
          const {
            ratios,
            trace: _trace,
            cards: _cards,
            cardEvenings: _evenings,
            ...sums
          } = (all[i] as Held).past;
          expect(past).toMatchObject({ ...sums, trace: [], cards: [] });
          expect(past.cardEvenings ?? []).toEqual([]);
          for (const [name, ratio] of Object.entries(ratios)) {
            // Why a ratio does not exist may be put in other words, for less is known.
            const other = past.ratios[name as keyof typeof ratios];
            expect(typeof other === 'number' ? other : 'undefined').toEqual(
              typeof ratio === 'number' ? ratio : 'undefined',
            );
          }
          expect(records).toEqual({ cards: [], facts: [] });
        }
      }),
      search(25),
    );
  });

  test('keeps what is known of cards when their answers are not given, and is as stable from then on', () => {
    fc.assert(
      fc.property(anyHistory, (given) => {
        const { 'sprints.csv': sprintsCsv, 'cards.csv': cardsCsv } = filesOf(
          held(
            given.map((sprint) => ({
              ...sprint,
              facts: sprint.facts.filter(({ what }) => what !== 'reopen'),
            })),
          ),
        ) as { 'sprints.csv': string; 'cards.csv': string };
        const unwatched = sprintsCsv.replaceAll(',yes,', ',no,');
        const once = planned({ 'sprints.csv': unwatched, 'cards.csv': cardsCsv });
        expect(once.problems.inOrder([])).toEqual([]);
        expect(once.sprints.map(({ past }) => past.trace)).toEqual(given.map(() => []));
        const files = filesOf([...once.sprints]);
        expect(files['cards.csv']).toEqual(cardsCsv);
        // What was made up from totals is not passed off as answers.
        expect(files['answers.csv']).toEqual(csvText('answers', []));
        expect(planned(files).problems.inOrder([])).toEqual([]);
        expect(filesOf([...planned(files).sprints])).toEqual(files);
      }),
      search(50),
    );
  });
});

describe('the exported files', () => {
  test('name no owner, no author and nobody who answered', () => {
    fc.assert(
      fc.property(anyHistory, (given) => {
        const text = Object.values(filesOf(held(given))).join('');
        expect(text).not.toMatch(/UANA|UBEN|UCHI|UPO/);
      }),
      search(25),
    );
  });
});
