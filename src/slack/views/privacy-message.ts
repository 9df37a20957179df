/** What is stored about the person who asks, why, who sees it and for how long; and what comes of a copy and an erasure. */
import type { Erased } from '../../app/privacy/erase-person.ts';
import type { PersonalCopy } from '../../app/privacy/personal-copy.ts';
import type { PersonalKind } from '../../app/privacy/personal-data.ts';
import type { PrivacyOverview, StoredKind } from '../../app/privacy/privacy-overview.ts';
import { mrkdwnOf, plainTyped, shortened } from '../../words/typed-text.ts';
import { ACTIONS } from '../ids.ts';
import { actions, bold, button, context, lead, section } from './block-builders.ts';
import { datedDay } from './closed-sprint-words.ts';
import { lineSections } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';
import { counted, listed } from './sprint-words.ts';

const TEAMS_NAMED = 5;
const TEAM_NAME_MAX_LENGTH = 40;
/** It is always about whoever presses it. */
const VALUE = 'me';

const NOUNS: Readonly<Record<PersonalKind, readonly [one: string, many: string]>> = {
  memberships: ['membership of a team, with your name', 'memberships of teams, with your name'],
  productOwnerOf: ['team that names you as product owner', 'teams that name you as product owner'],
  answers: ['answer about a card, with its note', 'answers about cards, with their notes'],
  prompts: ['daily prompt, and how you met it', 'daily prompts, and how you met them'],
  cardsOwned: ['card that you own', 'cards that you own'],
  cardsAdded: ['card that you added', 'cards that you added'],
  cardChanges: ['dropping or reopening of a card, with its reason', 'droppings and reopenings, with reasons'],
  drafts: ['draft of a plan', 'drafts of plans'],
  recordedValues: ['value that you recorded', 'values that you recorded'],
  messagesToYou: ['record of a message to you', 'records of messages to you'],
  postsByYou: ['record of a post that you caused', 'records of posts that you caused'],
  installations: ['installation of Loadline by you', 'installations of Loadline by you'],
};

export function privacyMessage({ kinds, teams }: PrivacyOverview): MessageView {
  if (kinds.length === 0) {
    return messageView([
      lead('Nothing is stored under your id'),
      section('Titles, goals and notes that others typed may mention you; nothing of them leads to your id.'),
    ]);
  }
  return messageView([
    lead('What is stored about you'),
    section(kinds.map((kind) => `• ${kindWords(kind)}`).join('\n')),
    section(
      [
        `${bold('Why:')} to ask you about your cards, and to add up what is left on the team’s.`,
        `${bold('Who sees it:')} you; your answers reach everybody else as numbers of a card. Members who ask for the status read notes about growth without a name, and whose card it is. Nobody gets a number about a person. Whoever runs Loadline can read its database.`,
      ].join('\n'),
    ),
    ...lineSections(bold('How long:'), teams.map(retentionWords), {
      maxSections: 5,
      more: (count) => `… and ${counted(count, 'more team')}`,
    }),
    actions([
      button('Send me a copy', { actionId: ACTIONS.sendMyCopy, value: VALUE }),
      button('Erase me', { actionId: ACTIONS.openEraseForm, value: VALUE }),
    ]),
    context(
      'Only you see this. What others typed may mention you; it is not in the copy. Messages that were sent stay on the chat platform for as long as it keeps them.',
    ),
  ]);
}

function kindWords({ kind, count, from, to, teamNames }: StoredKind): string {
  const [one, many] = NOUNS[kind];
  const span =
    from === undefined || to === undefined
      ? ''
      : from === to
        ? `, of ${datedDay(from)}`
        : `, from ${datedDay(from)} to ${datedDay(to)}`;
  const teams = teamNames.length === 0 ? '' : ` (${teamWords(teamNames)})`;
  return `${counted(count, one, many)}${span}${teams}`;
}

function teamWords(names: readonly string[]): string {
  const more = names.length - TEAMS_NAMED;
  return listed([...names.slice(0, TEAMS_NAMED).map(teamName), ...(more > 0 ? [`${more} more`] : [])]);
}

function teamName(name: string): string {
  return mrkdwnOf(shortened(plainTyped(name), TEAM_NAME_MAX_LENGTH));
}

function retentionWords({ name, retentionMonths }: PrivacyOverview['teams'][number]): string {
  return retentionMonths === undefined
    ? `• ${teamName(name)} keeps the details of its sprints without end.`
    : `• ${teamName(name)} keeps the details of a sprint for ${counted(retentionMonths, 'month')} after its end, then only its totals.`;
}

/** What comes with the file, in the person's direct messages. Mrkdwn. */
export function copyComment({ records }: PersonalCopy): string {
  return `Everything that is stored under your id: ${counted(records, 'record')}, as a JSON file. It is yours alone; nobody else was told.`;
}

export function copySentMessage({ records }: PersonalCopy): MessageView {
  return messageView([
    section(
      `A copy of ${counted(records, 'record')} is in your direct messages with me. It stays there until you delete the message.`,
    ),
  ]);
}

export function erasedMessage({ records, teamNames }: Erased): MessageView {
  const teams = teamNames.length === 0 ? '' : ` You are no longer part of ${teamWords(teamNames)}.`;
  return messageView([
    section(
      `You are erased: ${counted(records, 'record')} no longer ${records === 1 ? 'tells' : 'tell'} of you.${teams}`,
    ),
    section(
      'Messages that were sent stay on the chat platform, and so does a copy that you asked for: delete them there. Backups of the database are overwritten in their own time; whoever runs Loadline knows when.',
    ),
  ]);
}
