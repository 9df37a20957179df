/** What is stored about a person, as they read it. Markup of the chat platform. */
import type { PersonalKind, PersonalSum } from '../app/privacy/personal-data.ts';
import type { KeepingTeam } from '../app/privacy/privacy-overview.ts';
import type { Team } from '../app/team/team.ts';
import { markup, mrkdwn } from './say.ts';
import { plainTyped, shortened } from './typed-text.ts';

const TEAMS_NAMED = 5;
const TEAM_NAME_MAX_LENGTH = 40;

const KINDS = {
  memberships: 'privacy-memberships',
  productOwnerOf: 'privacy-product-owner-of',
  answers: 'privacy-answers',
  prompts: 'privacy-prompts',
  cardsOwned: 'privacy-cards-owned',
  cardsAdded: 'privacy-cards-added',
  cardChanges: 'privacy-card-changes',
  drafts: 'privacy-drafts',
  planChanges: 'privacy-plan-changes',
  goalsJudged: 'privacy-goals-judged',
  experimentsBegun: 'privacy-experiments-begun',
  experimentsEnded: 'privacy-experiments-ended',
  recordedValues: 'privacy-recorded-values',
  messagesToYou: 'privacy-messages-to-you',
  postsByYou: 'privacy-posts-by-you',
  visits: 'privacy-visits',
  installations: 'privacy-installations',
} as const satisfies Record<PersonalKind, string>;

/** A line of the list of what is stored. */
export function storedKind({ kind, count, from, to, teamNames }: PersonalSum): string {
  const span = from === undefined || to === undefined ? 'undated' : from === to ? 'day' : 'days';
  const args = { span, what: markup(KINDS[kind], { count }), first: from ?? '', last: to ?? '' } as const;
  return teamNames.length === 0
    ? mrkdwn('privacy-kind', args)
    : mrkdwn('privacy-kind-in-teams', { ...args, teams: shortList(teamNames) });
}

/** How long a team keeps the details of its sprints; of one that was ended, everything. */
export function teamKeeps({ name, retentionMonths, erasedOn }: KeepingTeam): string {
  const team = shortName(name);
  if (erasedOn !== undefined) return mrkdwn('privacy-kept-until', { team, day: erasedOn });
  return retentionMonths === undefined
    ? mrkdwn('privacy-kept-for-ever', { team })
    : mrkdwn('privacy-kept-for', { team, months: retentionMonths });
}

/** What was done, in one or two sentences. */
export function erasedPerson(records: number, teamNames: readonly string[]): string {
  const erased = mrkdwn('privacy-erased', { records });
  return teamNames.length === 0
    ? erased
    : `${erased} ${mrkdwn('privacy-left-teams', { teams: shortList(teamNames) })}`;
}

function shortList(names: readonly string[]): (string | ReturnType<typeof markup>)[] {
  const more = names.length - TEAMS_NAMED;
  const named = names.slice(0, TEAMS_NAMED).map(shortName);
  return more > 0 ? [...named, markup('privacy-more-teams', { count: more })] : named;
}

function shortName(name: string): string {
  return shortened(plainTyped(name), TEAM_NAME_MAX_LENGTH);
}

/** What becomes of the details of the team's sprints, in one sentence. */
export function retentionSentence({ retentionMonths: months }: Pick<Team, 'retentionMonths'>): string {
  return months === undefined ? mrkdwn('team-retention-none') : mrkdwn('team-retention', { months });
}
