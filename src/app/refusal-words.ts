/** The one place that turns a refusal's code into what the person reads: what was wrong, how to mend it. */
import { formatDay } from '../sprint/calendar.ts';
import { harmlessDetails } from './harmless-details.ts';
import type { Refusal, RefusalCode, RefusalDetails } from './refusal.ts';
import { unreadableFileWords } from './unreadable-file-words.ts';

export interface RefusalWords {
  /** What was wrong. */
  readonly what: string;
  /** How to mend it. */
  readonly mend: string;
}

type Words = { readonly [Code in RefusalCode]: (details: RefusalDetails[Code]) => RefusalWords };

function mentions(userIds: readonly string[]): string {
  return userIds.map((id) => `<@${id}>`).join(', ');
}

const WORDS: Words = {
  'no-team-here': () => ({
    what: 'This channel has no team yet.',
    mend: 'Set one up here with `/loadline setup`, or use the command in your team’s own channel.',
  }),
  'set-up-in-channel': () => ({
    what: 'A team is set up in its channel, not in direct messages.',
    mend: 'Go to the team’s channel and type `/loadline setup` there.',
  }),
  'no-team-of-yours': () => ({
    what: 'You are not on a team that this belongs to.',
    mend: 'Ask the team’s facilitator to add you with `/loadline setup`, or set up a team in its channel.',
  }),
  'several-teams': ({ teamNames }) => ({
    what: `You are on ${teamNames.length} teams (${teamNames.join(', ')}), so it is not clear which one you mean.`,
    mend: 'Use the command in the team’s channel, use the buttons of the prompt, or reply in the prompt’s thread.',
  }),
  'not-a-member': ({ teamName, isProductOwner }) =>
    isProductOwner
      ? {
          what: `You are the product owner of ${teamName}, not one of its members, so its cards and its daily work are not yours to see or change.`,
          mend: 'What you can do: `/loadline history`, `/loadline forecast`, `/loadline range`, `/loadline odds` and `/loadline value`. To work on cards as well, ask the team’s facilitator to add you as a member with `/loadline setup`.',
        }
      : {
          what: `Only members of ${teamName} can see or change its sprint.`,
          mend: 'Ask the team’s facilitator to add you with `/loadline setup`.',
        },
  'not-a-facilitator': ({ teamName, facilitatorIds, what }) => ({
    what: `Only a facilitator of ${teamName} can ${what}.`,
    mend:
      facilitatorIds.length > 0
        ? `Ask ${mentions(facilitatorIds)}.`
        : 'The team has no facilitator any more; ask whoever runs Loadline for you.',
  }),
  'not-a-value-keeper': ({ teamName, productOwnerId, facilitatorIds }) => {
    const keepers = [...(productOwnerId === undefined ? [] : [productOwnerId]), ...facilitatorIds];
    return {
      what: `Only the product owner of ${teamName} or a facilitator can record what a sprint was worth.`,
      mend:
        keepers.length > 0
          ? `Ask ${mentions([...new Set(keepers)])}.`
          : 'The team has neither any more; ask whoever runs Loadline for you.',
    };
  },
  'nothing-stored': () => ({
    what: 'Nothing is stored under your id here.',
    mend: 'There is nothing to copy and nothing to erase.',
  }),
  'last-facilitator': ({ teamNames }) => ({
    what: `You are the only facilitator of ${teamNames.join(', ')}; without one, nobody could plan or close its sprints.`,
    mend: 'Name another facilitator with `/loadline setup` in the team’s channel, then ask for your erasure again.',
  }),
  'channel-has-a-team': ({ teamName }) => ({
    what: `This channel belongs to ${teamName} already.`,
    mend: 'Change that team with `/loadline setup`, or set the new one up in a channel of its own.',
  }),
  'bad-input': ({ problems }) => ({
    what: problems.map(({ message }) => message).join(' '),
    mend: 'Nothing was recorded. Mend it and send it again.',
  }),
  'no-sprint-running': () => ({
    what: 'No sprint is running.',
    mend: 'A facilitator can plan one with `/loadline plan`.',
  }),
  'sprint-not-begun': ({ sprintName, startsOn }) => ({
    what: `${sprintName} begins on ${formatDay(startsOn)}.`,
    mend: 'Come back on that day; if the sprint is not to be, a facilitator can `/loadline cancel` it.',
  }),
  'sprint-over': ({ sprintName, state }) => ({
    what: `${sprintName} is ${state}, so its numbers stand.`,
    mend:
      state === 'closed'
        ? 'Within 24 hours of closing, a facilitator may reopen it for corrections with `/loadline reopen`.'
        : 'A facilitator can plan a new sprint with `/loadline plan`.',
  }),
  'day-outside-sprint': ({ sprintName, day, startsOn, endsOn }) => ({
    what: `“${day}” is not a day of ${sprintName}, which runs from ${formatDay(startsOn)} to ${formatDay(endsOn)}.`,
    mend: `Name a day of the sprint as year-month-day, for example \`/loadline answer ${startsOn}\`.`,
  }),
  'day-not-come': ({ day }) => ({
    what: `${formatDay(day)} has not come yet.`,
    mend: 'Answer for today or for an earlier day of the sprint.',
  }),
  'no-such-card': ({ reference, known }) => ({
    what: reference === '' ? 'The card is not named.' : `There is no card “${reference}” in this sprint.`,
    mend:
      known.length === 0
        ? 'The sprint has no cards yet; bring one in with `/loadline pull`.'
        : `Name it by its number or key. Cards: ${known.slice(0, 20).join(', ')}${known.length > 20 ? ', …' : ''}. \`/loadline cards\` shows their titles.`,
  }),
  'card-dropped': ({ card }) => ({
    what: `Card ${card} was dropped from the sprint.`,
    mend: 'If it is wanted after all, bring it in as a new card with `/loadline pull`.',
  }),
  'card-not-finished': ({ card }) => ({
    what: `Card ${card} is not finished, so there is nothing to reopen.`,
    mend: 'Say what is left on it with `/loadline answer`.',
  }),
  'already-owner': ({ card }) => ({
    what: `Card ${card} is yours already.`,
    mend: 'Answer for it with `/loadline answer`.',
  }),
  'not-card-owner': ({ card }) => ({
    what: `Only an owner of card ${card} or a facilitator can reopen it.`,
    mend: 'Ask one of them, or take a share in the card first with `/loadline take`.',
  }),
  'too-many-cards': ({ limit }) => ({
    what: `A sprint holds ${limit} cards at most.`,
    mend: 'Put small things together on one card.',
  }),
  'no-cards-of-yours': ({ sprintName }) => ({
    what: `You have no open card in ${sprintName}.`,
    mend: 'Take a share in one with `/loadline take` and its number; `/loadline cards` lists them.',
  }),
  'unclear-words': ({ problems, cardCount }) => ({
    what: `Nothing was recorded. ${problems.join(' ')}`,
    mend:
      cardCount === 1
        ? 'Write what is left, for example `3`, or `3 worked 1`. `same` and `away` work too.'
        : 'Write what is left in the order of the list, for example `2, 0`, or name the card, for example `2: 3 worked 1`. `same` and `away` work too.',
  }),
  'no-sprint-to-reopen': () => ({
    what: 'There is no closed sprint to reopen.',
    mend: '`/loadline status` shows the one that is running.',
  }),
  'nothing-to-export': ({ teamName }) => ({
    what: `${teamName} has no sprint yet, so there is nothing to export.`,
    mend: 'Plan its first sprint with `/loadline plan`, or bring past sprints in with `/loadline import`.',
  }),
  'no-closed-sprint': ({ teamName, withVelocity }) => ({
    what: withVelocity
      ? `${teamName} has no closed sprint in which anything was finished yet.`
      : `${teamName} has no closed sprint yet.`,
    mend: 'Come back when its first sprint has closed, or let a facilitator bring past sprints in with `/loadline import`.',
  }),
  'no-such-sprint': ({ reference, known }) => ({
    what:
      reference === ''
        ? 'That sprint is not one of the team’s closed sprints.'
        : `There is no closed sprint called “${reference}”.`,
    mend: `Write its name as it stands in its verdict, or leave it out to mean the latest. Closed sprints: ${known.slice(0, 10).join(', ')}${known.length > 10 ? ', …' : ''}.`,
  }),
  'sprint-not-closed': ({ sprintName, state }) => ({
    what: state === 'open' ? `${sprintName} has not closed yet.` : `${sprintName} was cancelled.`,
    mend:
      state === 'open'
        ? 'Come back when its verdict is posted, or name a sprint that is closed.'
        : 'Cancelled sprints never count as history; name a sprint that is closed.',
  }),
  'no-velocity': ({ sprintName, finishedPoints }) => ({
    what:
      finishedPoints === undefined
        ? `How many points were finished in ${sprintName} is not known, so nothing can be measured by it.`
        : `Nothing was finished in ${sprintName}, so nothing can be measured by it.`,
    mend: 'Name a closed sprint in which something was finished.',
  }),
  'days-taken': ({ sprintName, otherName }) => ({
    what: `${sprintName} can’t be open beside ${otherName}, which has some of the same days.`,
    mend: `Close or cancel ${otherName} first, or note the correction at the retrospective.`,
  }),
  'reopen-too-late': ({ sprintName }) => ({
    what: `${sprintName} closed more than 24 hours ago, so its numbers stand.`,
    mend: 'Note what was wrong with them at the retrospective.',
  }),
  'unknown-command': ({ word, near }) => ({
    what: `There is no command “${word}”.`,
    mend: near
      ? `Did you mean \`/loadline ${near}\`? \`/loadline help\` lists them all.`
      : '`/loadline help` lists them all.',
  }),
  'bad-argument': ({ command, problem, example }) => ({
    what: `\`/loadline ${command}\` could not be read: ${problem}`,
    mend: `Write it for example like this: \`/loadline ${command} ${example}\``,
  }),
  'key-taken': ({ key, sprintName }) => ({
    what: `${sprintName} has a card ${key} already.`,
    mend: 'Give the new card a key of its own.',
  }),
  'no-draft': () => ({
    what: 'This plan was committed to already, or its draft is gone.',
    mend: '`/loadline status` shows the running sprint; `/loadline plan` begins a new plan.',
  }),
  'sprint-changed': () => ({
    what: 'The sprint’s cards have changed since this form was opened. Nothing was recorded.',
    mend: 'Open the form again with `/loadline answer`.',
  }),
  'too-much-at-once': ({ waitSeconds }) => ({
    what: 'That was too much at once, so this was not done.',
    mend: `Try again in ${waitSeconds === 1 ? '1 second' : `${waitSeconds} seconds`}.`,
  }),
  'file-unreadable': ({ fileName, why }) => unreadableFileWords(fileName, why),
};

export function refusalWords<Code extends RefusalCode>(refusal: Refusal<Code>): RefusalWords {
  return WORDS[refusal.code](harmlessDetails(refusal.details));
}
