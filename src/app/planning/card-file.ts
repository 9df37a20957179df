/**
 * Brings cards from a CSV file into a plan that is being typed: first it shows which column is read as what and which rows
 * are bad, then the rows are filled into the plan's field for cards, where they can be corrected like typed ones.
 */
import type { FileProblem } from '../csv/csv-problem.ts';
import type { GivenFile } from '../csv/given-file.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading } from '../ports/store.ts';
import { Refusal } from '../refusal.ts';
import { candidatesOf } from '../team/guests.ts';
import { membershipInTeam, requireFacilitator } from '../team/place.ts';
import { type Actor, activeMembers, type Team } from '../team/team.ts';
import { CARD_FIELDS } from './card-headings.ts';
import { MAX_CARDS } from './card-paste.ts';
import type { CardRows } from './card-rows.ts';
import type { CardColumns } from './named-columns.ts';
import type { PlanForm } from './plan-form.ts';
import type { PlanInput } from './plan-input.ts';
import { keepDraft } from './plan-sprint.ts';
import { guestIdsIn } from './read-plan.ts';

export interface CardFileReading {
  readonly team: Team;
  readonly fileName: string;
  readonly read: CardRows | FileProblem;
}

type CardFileOutcome =
  | { readonly kind: 'reading'; readonly reading: CardFileReading }
  | { readonly kind: 'filled in'; readonly form: PlanForm };

interface CardFileInput {
  readonly teamId: string;
  readonly file: GivenFile;
  /** The plan as typed, which is kept; left out when it was kept before. */
  readonly plan?: PlanInput;
  /** Undefined: as the names of the columns tell. */
  readonly columns?: CardColumns | undefined;
  /** The columns under which the file's rows were shown. Under others they are shown first. */
  readonly seen?: CardColumns | undefined;
}

/** @throws Refusal `not-a-facilitator`, `no-draft`, `file-unreadable`, and those of finding the team. */
export async function readCardFile(
  deps: AppDependencies,
  actor: Actor,
  { teamId, file, plan, columns, seen }: CardFileInput,
): Promise<CardFileOutcome> {
  if (plan) await keepDraft(deps, actor, plan);
  const drafted = async (reading: Reading) => {
    const membership = await membershipInTeam(reading, actor, teamId);
    requireFacilitator(membership, 'plan');
    const draft = await reading.draftOf(teamId, actor.userId);
    if (!draft) throw new Refusal('no-draft', {});
    return { ...membership, draft };
  };
  const kept = await deps.store.read(drafted);
  const guests = await candidatesOf(deps, actor, { teamId }, guestIdsIn(kept.draft));
  const people = [...activeMembers(kept.members), ...guests].map(({ userId, name }) => ({ userId, name }));
  // A large file takes seconds, in which no transaction may be open.
  const read = await deps.files.cards({ file, people, columns });
  return deps.store.transaction(async (tx) => {
    const { team, draft } = await drafted(tx.read);
    if (seen === undefined || 'code' in read || !mayFillIn(read) || !isSame(read.columns, seen)) {
      return { kind: 'reading', reading: { team, fileName: file.fileName, read } };
    }
    const cards = [draft.cards, read.text].filter((text) => text.trim() !== '').join('\n');
    await tx.drafts.save(teamId, actor.userId, { ...draft, cards });
    return {
      kind: 'filled in',
      form: { team, draft: { ...draft, cards }, leftOver: 0, fromFile: read.rows },
    };
  });
}

/** Whether the rows can be filled in; bad ones can, to be corrected there. */
export function mayFillIn({ rows, columns }: CardRows): boolean {
  const isReadable = columns.title !== undefined && columns.estimate !== undefined;
  return isReadable && rows > 0 && rows <= MAX_CARDS;
}

function isSame(columns: CardColumns, others: CardColumns): boolean {
  return CARD_FIELDS.every((field) => columns[field] === others[field]);
}
