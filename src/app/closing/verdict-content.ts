/** The verdict as it is posted, from the stored numbers. */
import type { SprintSummary } from '../../sprint/summary.ts';
import { type CardLine, cardLine, statesOf } from '../cards/card-line.ts';
import { reopenUntil } from '../clock/sprint-clock.ts';
import type { Transaction } from '../ports/store.ts';
import type { Sprint, SprintHeading, Team } from '../team/team.ts';
import { type NotesHistory, notesHistory } from './note-history.ts';

export interface VerdictContent extends SprintHeading {
  readonly summary: SprintSummary;
  /** What the team's history says about the notes. */
  readonly history: NotesHistory;
  readonly cards: readonly CardLine[];
  /** Reasons given for dropped cards, by card id. */
  readonly dropReasons: ReadonlyMap<string, string>;
  readonly cancelled: boolean;
  readonly reopened: 'never' | 'open' | 'closed-again';
  /** Until when the facilitator may reopen it; undefined when that is past or impossible. */
  readonly reopenUntil: Date | undefined;
  /** How many versions of the numbers have been posted. */
  readonly version: number;
}

/** @throws when the sprint has no result; only finished sprints and reopened ones have one. */
export async function verdictContent(
  tx: Transaction,
  team: Team,
  sprint: Sprint,
  now: Date,
): Promise<VerdictContent> {
  const result = await tx.read.latestResult(sprint.id);
  if (!result) throw new Error(`sprint ${sprint.id} has no result to post`);
  const records = await tx.read.recordsOf(sprint.id);
  const drops = records.facts.filter(({ kind }) => kind === 'drop');
  const until = reopenUntil(team, sprint);
  return {
    team,
    sprint,
    summary: result.summary,
    history: await notesHistory(tx, team, sprint, result.summary),
    cards: statesOf(records).map(cardLine),
    dropReasons: new Map(drops.map(({ cardId, note }) => [cardId, note])),
    cancelled: sprint.state === 'cancelled',
    reopened: sprint.reopenedAt === undefined ? 'never' : sprint.state === 'open' ? 'open' : 'closed-again',
    reopenUntil: sprint.state === 'closed' && until && until > now ? until : undefined,
    version: result.version,
  };
}
