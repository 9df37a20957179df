/** Hands out everything that is known of a team's sprints and of the work that it keeps, as CSV files. Reads only. */
import { ratioOfSums } from '../../sprint/sprint-ratios.ts';
import { BODY_KINDS, fileNameOf, HISTORY_KINDS, type ImportedKind } from '../csv/csv-columns.ts';
import { MOST_CHARACTERS, MOST_LINES } from '../csv/csv-rows.ts';
import { CsvBytes, type CsvRow } from '../csv/write-csv.ts';
import { baselineOfPast } from '../history/baseline-of.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import { pastSprints } from '../history/team-history.ts';
import { alikeName, MOST_NAME_CHARACTERS } from '../import/sprint-line.ts';
import { MOST_SPRINTS } from '../import/sprints-to-import.ts';
import { letOthersTurn } from '../let-others-turn.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { SOMEBODY } from '../privacy/without-person.ts';
import { Refusal } from '../refusal.ts';
import { membershipBy, type Place, requireFacilitator } from '../team/place.ts';
import type { Actor, Sprint, Team } from '../team/team.ts';
import { bodyRows } from './body-rows.ts';
import {
  type ExportedSprint,
  experimentRows,
  exportRows,
  numberedName,
  withoutMentions,
} from './export-rows.ts';

type ExportedKind = ImportedKind | 'experiments';

interface ExportedFile {
  readonly fileName: string;
  /** UTF-8 with a byte order mark. */
  readonly bytes: Uint8Array;
}

export interface TeamExport {
  readonly team: Team;
  /** Those of a later part have its number in their names: `cards-2.csv`. */
  readonly files: readonly ExportedFile[];
  /** As many imports bring all of it in: an import takes only so much at once. */
  readonly parts: number;
  /** Lines of each kind, the line of column names left out. */
  readonly lines: { readonly [Kind in ExportedKind]: number };
  /** How many of the sprints are not closed ones; an import leaves these out. */
  readonly running: number;
  readonly cancelled: number;
}

/** How far a part may be filled before the next sprint begins another: one of three months has 15,000 lines at the most. */
const PART_SHARE = 0.7;

/** Sprints of which everything is read in one go: what that takes, everybody else waits. */
const SPRINTS_AT_ONCE = 5;

/** @throws Refusal `nothing-to-export`, `not-a-facilitator`, and those of finding the team. */
export async function exportSprints(
  deps: AppDependencies,
  actor: Actor,
  of: Place | { readonly teamId: string },
): Promise<TeamExport> {
  const { team, people, sprints, past, experiments, kept, told } = await deps.store.transaction(
    async (tx) => {
      const membership = await membershipBy(tx.read, actor, 'teamId' in of ? of : { place: of });
      requireFacilitator(membership, 'export');
      const { team } = membership;
      return {
        team,
        people: await tx.read.membersOf(team.id),
        sprints: toldApart((await tx.read.sprintsOf(team.id)).sort(inOrder)),
        past: await pastSprints(tx, team),
        experiments: await tx.read.experimentsOf(team.id),
        kept: await tx.read.bodiesOf(team.id),
        told: await tx.read.toldDatesOf(team.id),
      };
    },
  );
  if (sprints.length + kept.length === 0) throw new Refusal('nothing-to-export', { teamName: team.name });
  const unnamed = withoutNames(people.map(({ name }) => name));
  const parts = [new ExportPart(unnamed)];
  const baselineVelocityPoints = baselineOfPast(team, past)?.baseline.velocityPoints ?? 0;
  const pastOf = new Map(past.map((sprint) => [sprint.sprintId, sprint]));
  for (let i = 0; i < sprints.length; i += SPRINTS_AT_ONCE) {
    const some = sprints.slice(i, i + SPRINTS_AT_ONCE);
    const all = await deps.store.read((read) =>
      exportedSprints(read, some, { pastOf, baselineVelocityPoints }),
    );
    for (const exported of all) {
      await letOthersTurn();
      if (parts.at(-1)?.isFull) parts.push(new ExportPart(unnamed));
      parts.at(-1)?.add(exportRows(team, [exported]));
    }
  }
  parts
    .at(-1)
    ?.add({ ...bodyRows(team, kept, told), experiments: experimentRows(team, experiments, sprints) });
  // A team that keeps no work, or tried nothing, has no such file.
  const kindsAtTheEnd: readonly ExportedKind[] = [
    ...(kept.length === 0 ? [] : BODY_KINDS),
    ...(experiments.length === 0 ? [] : (['experiments'] as const)),
  ];
  const count = (state: Sprint['state']): number => sprints.filter((sprint) => sprint.state === state).length;
  const files = parts.flatMap((part, i) =>
    [...HISTORY_KINDS, ...(i === parts.length - 1 ? kindsAtTheEnd : [])].map((kind) => ({
      fileName: fileNameOf(kind, i + 1),
      bytes: part.files[kind].bytes,
    })),
  );
  const lines = mapKinds((kind) => parts.reduce((sum, part) => sum + part.files[kind].lines, 0));
  return { team, files, parts: parts.length, lines, running: count('open'), cancelled: count('cancelled') };
}

/** The least that an import takes of any text. */
const SHORTEST_CAP = 60;

/** A mention in what people type freely is kept as `@` and the name; the team's people are not named in what goes out. */
export function withoutNames(names: readonly string[]): (text: string) => string {
  const longestFirst = names.filter((name) => name.trim() !== '').sort((a, b) => b.length - a.length);
  if (longestFirst.length === 0) return (text) => text;
  const called = longestFirst.map((name) => name.trim().replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&')).join('|');
  const mention = new RegExp(`@(?:${called})(?![\\p{L}\\p{N}])`, 'giu');
  return (text) =>
    text.includes('@') ? text.replace(mention, SOMEBODY).slice(0, Math.max(text.length, SHORTEST_CAP)) : text;
}

/** Files that an import takes at once. */
class ExportPart {
  readonly files = mapKinds((kind) => new CsvBytes(kind));
  readonly #unnamed: (text: string) => string;

  constructor(unnamed: (text: string) => string) {
    this.#unnamed = unnamed;
  }

  add(rows: { readonly [Kind in ExportedKind]?: readonly CsvRow<Kind>[] }): void {
    for (const kind of EXPORTED_KINDS) {
      const file: { add(rows: readonly CsvRow<typeof kind>[]): void } = this.files[kind];
      file.add((rows[kind] ?? []).map((row) => this.#withoutNames(row)));
    }
  }

  #withoutNames<Row extends object>(row: Row): Row {
    const cells = Object.entries(row).map(([name, cell]) => [
      name,
      typeof cell === 'string' ? this.#unnamed(cell) : cell,
    ]);
    return Object.fromEntries(cells) as Row;
  }

  /** Whether the next sprint, with all its cards and answers, may be too much. */
  get isFull(): boolean {
    const files = EXPORTED_KINDS.map((kind) => this.files[kind]);
    const lines = files.reduce((sum, file) => sum + file.lines, 0);
    return (
      lines >= PART_SHARE * MOST_LINES ||
      this.files.sprints.lines >= MOST_SPRINTS ||
      files.some(({ byteLength }) => byteLength >= PART_SHARE * MOST_CHARACTERS)
    );
  }
}

const EXPORTED_KINDS: readonly ExportedKind[] = [...HISTORY_KINDS, ...BODY_KINDS, 'experiments'];

function mapKinds<Value>(make: (kind: ExportedKind) => Value): Readonly<Record<ExportedKind, Value>> {
  return Object.fromEntries(EXPORTED_KINDS.map((kind) => [kind, make(kind)])) as Record<ExportedKind, Value>;
}

interface KnownPast {
  readonly pastOf: ReadonlyMap<string, PastSprint>;
  /** 0: there is none. */
  readonly baselineVelocityPoints: number;
}

async function exportedSprints(
  read: Reading,
  sprints: readonly Sprint[],
  { pastOf, baselineVelocityPoints }: KnownPast,
): Promise<ExportedSprint[]> {
  // A statement each: the embedded database holds the loop through each of them.
  const [records, results] = await Promise.all([
    Promise.all(sprints.map(({ id }) => read.recordsOf(id))),
    Promise.all(sprints.map(({ id, state }) => (state === 'open' ? undefined : read.latestResult(id)))),
  ]);
  return sprints.map((sprint, i) => {
    const { id, state } = sprint;
    const leftBehind = state === 'closed' ? pastOf.get(id) : undefined;
    const result = results[i];
    return {
      sprint,
      records: records[i] ?? { cards: [], facts: [] },
      past: leftBehind,
      postedVerdict: result?.summary.verdict.verdict,
      posted: result?.summary,
      velocityGrowth:
        leftBehind?.velocityPoints === undefined
          ? undefined
          : ratioOfSums('velocityGrowth', {
              velocityPoints: leftBehind.velocityPoints,
              baselineVelocityPoints,
            }),
    };
  });
}

/** The same order whenever and wherever they were recorded. */
/**
 * The files refer to sprints by name and first day. One that was called off and planned anew has both of the other: it gets a
 * number behind its name.
 */
function toldApart(sprints: readonly Sprint[]): Sprint[] {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  const key = (name: string, { startsOn }: Sprint): string => `${startsOn} ${alikeName(name)}`;
  // One that an import leaves out gives way.
  const calledOffLast = sprints.toSorted(
    (a, b) => Number(a.state === 'cancelled') - Number(b.state === 'cancelled'),
  );
  for (const sprint of calledOffLast) {
    const plain = withoutMentions(sprint.name, MOST_NAME_CHARACTERS);
    let name = plain;
    for (let number = 2; taken.has(key(name, sprint)); number += 1) {
      name = numberedName(plain, number, MOST_NAME_CHARACTERS);
    }
    taken.add(key(name, sprint));
    names.set(sprint.id, name);
  }
  return sprints.map((sprint) => ({ ...sprint, name: names.get(sprint.id) ?? sprint.name }));
}

function inOrder(a: Sprint, b: Sprint): number {
  const keys = (sprint: Sprint): string[] => [sprint.startsOn, sprint.endsOn, sprint.name];
  const [left, right] = [keys(a), keys(b)];
  const differing = left.findIndex((key, i) => key !== right[i]);
  return differing < 0 ? 0 : (left[differing] as string) < (right[differing] as string) ? -1 : 1;
}
