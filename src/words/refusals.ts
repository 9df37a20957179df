/** The one place that turns a refusal's code into what the person reads: what is wrong, and what to do about it. */
import type { AnswerExample, Refusal, RefusalCode, RefusalDetails, UnreadableFile } from '../app/refusal.ts';
import type { Form } from './language.ts';
import { person } from './people.ts';
import { problemWords, unclearWords } from './problems.ts';
import { type ArgumentsOf, Markup, type MessageId, mrkdwn, say } from './say.ts';

export interface RefusalWords {
  /** What is wrong. */
  readonly what: string;
  /** What to do about it. */
  readonly fix: string;
}

/** Says a message as plain text, or as markup in which what people typed is escaped. */
type Speak = <Id extends MessageId>(id: Id, ...args: ArgumentsOf<Id>) => string;

/** Most names or cards that are listed. */
const SPRINTS_LISTED = 10;
const CARDS_LISTED = 20;
/** Longest name of a file, in characters, that is said in full: names can be as long as a sentence. */
const FILE_NAME_MAX = 80;

type Told = { readonly [Code in RefusalCode]: (details: RefusalDetails[Code], speak: Speak) => RefusalWords };

/** Refusals whose messages are named after their code and take its details as they are. */
type Plain = {
  [Code in RefusalCode]: `refusal-${Code}` extends MessageId
    ? `refusal-${Code}-fix` extends MessageId
      ? Code
      : never
    : never;
}[RefusalCode];

/** Says `refusal-CODE` and `refusal-CODE-fix`, both with the same arguments where they take any. */
function both<Code extends Plain>(
  speak: Speak,
  code: Code,
  ...args: ArgumentsOf<`refusal-${Code}`>
): RefusalWords {
  const tell = speak as (id: string, ...args: readonly unknown[]) => string;
  return { what: tell(`refusal-${code}`, ...args), fix: tell(`refusal-${code}-fix`, ...args) };
}

function askPeople(speak: Speak, userIds: readonly (string | undefined)[]): string {
  const people = [...new Set(userIds.filter((id) => id !== undefined))].map(person);
  return people.length > 0 ? speak('refusal-ask-people', { people }) : speak('refusal-nobody-to-ask');
}

const TOLD: Told = {
  'no-team-here': (_, speak) => both(speak, 'no-team-here'),
  'set-up-in-channel': (_, speak) => both(speak, 'set-up-in-channel'),
  'channel-not-seen': (_, speak) => both(speak, 'channel-not-seen'),
  'channel-archived': (_, speak) => both(speak, 'channel-archived'),
  'channel-shared': (details, speak) => ({
    what: speak('shared-channel-seen'),
    fix: speak('refusal-channel-shared-fix', {
      act: details.act,
      command: details.act === 'move' ? `/loadline move ${`${details.teamName} yes`.trim()}` : '',
    }),
  }),
  'no-team-of-yours': (_, speak) => both(speak, 'no-team-of-yours'),
  'several-teams': ({ teamNames }, speak) => ({
    what: speak('refusal-several-teams', { count: teamNames.length, teams: teamNames }),
    fix: speak('refusal-several-teams-fix', { example: teamNames[0] ?? '' }),
  }),
  'not-a-member': ({ teamName, isProductOwner, isDeserted }, speak) =>
    isDeserted
      ? {
          what: speak('refusal-team-deserted', { team: teamName }),
          fix: speak('refusal-team-deserted-fix'),
        }
      : isProductOwner
        ? {
            what: speak('refusal-owner-not-a-member', { team: teamName }),
            fix: speak('refusal-owner-not-a-member-fix'),
          }
        : both(speak, 'not-a-member', { team: teamName }),
  'not-a-facilitator': ({ teamName, facilitatorIds, act }, speak) => ({
    what: speak('refusal-not-a-facilitator', { team: teamName, act }),
    fix: askPeople(speak, facilitatorIds),
  }),
  'not-a-value-keeper': ({ teamName, productOwnerId, facilitatorIds }, speak) => ({
    what: speak('refusal-not-a-value-keeper', { team: teamName }),
    fix: askPeople(speak, [productOwnerId, ...facilitatorIds]),
  }),
  'not-a-goal-keeper': ({ teamName, productOwnerId, facilitatorIds }, speak) => ({
    what: speak('refusal-not-a-goal-keeper', { team: teamName }),
    fix: askPeople(speak, [productOwnerId, ...facilitatorIds]),
  }),
  'not-a-body-keeper': ({ teamName, productOwnerId, facilitatorIds }, speak) => ({
    what: speak('refusal-not-a-body-keeper', { team: teamName }),
    fix: askPeople(speak, [productOwnerId, ...facilitatorIds]),
  }),
  'no-other-part': ({ body }, speak) => both(speak, 'no-other-part', { name: body }),
  'no-such-body': ({ known }, speak) => ({
    what: speak('refusal-no-such-body'),
    fix: speak('refusal-no-such-body-fix', { bodies: known, any: known.length > 0 ? 'yes' : 'no' }),
  }),
  'no-such-experiment': ({ open }, speak) => ({
    what: speak('refusal-no-such-experiment'),
    fix: speak('refusal-no-such-experiment-fix', { experiments: open, any: open.length > 0 ? 'yes' : 'no' }),
  }),
  'experiment-over': ({ text }, speak) => both(speak, 'experiment-over', { text }),
  outsider: (_, speak) => both(speak, 'outsider'),
  'guest-set-up': (_, speak) => both(speak, 'guest-set-up'),
  'set-up-left-to-others': ({ admins }, speak) => ({
    what: speak('refusal-set-up-left-to-others'),
    fix: speak('refusal-set-up-left-to-others-fix', { admins: admins ? 'yes' : 'no' }),
  }),
  'set-up-from-outside': (_, speak) => both(speak, 'set-up-from-outside'),
  'no-work-to-be-off': (_, speak) => both(speak, 'no-work-to-be-off'),
  'nothing-stored': (_, speak) => both(speak, 'nothing-stored'),
  'move-in-channel': (_, speak) => both(speak, 'move-in-channel'),
  'team-ended': ({ teamName, erasedOn }, speak) => ({
    what: speak('refusal-team-ended', { team: teamName }),
    fix: speak('refusal-team-ended-fix', { day: erasedOn }),
  }),
  'team-not-ended': ({ teamName }, speak) => both(speak, 'team-not-ended', { team: teamName }),
  'team-is-here': ({ teamName }, speak) => both(speak, 'team-is-here', { team: teamName }),
  'which-team-moves': ({ teamNames }, speak) => ({
    what: speak('refusal-which-team-moves', { teams: teamNames }),
    fix: speak('refusal-which-team-moves-fix', { example: teamNames[0] ?? '' }),
  }),
  'which-team-is-left': ({ teamNames }, speak) => ({
    what: speak('refusal-which-team-is-left', { teams: teamNames }),
    fix: speak('refusal-which-team-is-left-fix', { example: teamNames[0] ?? '' }),
  }),
  'channel-has-a-team': ({ teamName }, speak) => both(speak, 'channel-has-a-team', { team: teamName }),
  'bad-input': ({ problems }, speak) => ({
    what: speak('refusal-bad-input', {
      problems: asIs(problems.map(({ problem }) => problemWords(problem, formOf(speak)))),
    }),
    fix: speak('refusal-bad-input-fix'),
  }),
  'no-sprint-running': (_, speak) => both(speak, 'no-sprint-running'),
  'sprint-not-begun': ({ sprintName, startsOn }, speak) =>
    both(speak, 'sprint-not-begun', { sprint: sprintName, day: startsOn }),
  'sprint-over': ({ sprintName, state }, speak) => both(speak, 'sprint-over', { sprint: sprintName, state }),
  'day-outside-sprint': ({ sprintName, day, startsOn, endsOn }, speak) => ({
    what: speak('refusal-day-outside-sprint', { day, sprint: sprintName, first: startsOn, last: endsOn }),
    fix: speak('refusal-day-outside-sprint-fix', { example: startsOn }),
  }),
  'day-not-come': ({ day }, speak) => both(speak, 'day-not-come', { day }),
  'no-such-card': ({ reference, known }, speak) => ({
    what:
      reference === '' ? speak('refusal-card-not-given') : speak('refusal-no-such-card', { card: reference }),
    fix:
      known.length === 0
        ? speak('refusal-no-cards-at-all-fix')
        : speak('refusal-no-such-card-fix', {
            cards: known.slice(0, CARDS_LISTED),
            more: known.length > CARDS_LISTED ? 'yes' : 'no',
          }),
  }),
  'card-dropped': ({ card }, speak) => both(speak, 'card-dropped', { card }),
  'card-not-finished': ({ card }, speak) => both(speak, 'card-not-finished', { card }),
  'card-finished': ({ card }, speak) => both(speak, 'card-finished', { card }),
  'card-not-blocked': ({ card }, speak) => both(speak, 'card-not-blocked', { card }),
  'takes-no-cards': ({ teamName }, speak) => both(speak, 'takes-no-cards', { team: teamName }),
  'already-owner': ({ card }, speak) => both(speak, 'already-owner', { card }),
  'card-not-dropped': ({ card }, speak) => both(speak, 'card-not-dropped', { card }),
  'not-card-owner': ({ card, act }, speak) => ({
    what: speak('refusal-not-card-owner', { card, act }),
    fix: speak('refusal-not-card-owner-fix'),
  }),
  'too-many-cards': ({ limit }, speak) => both(speak, 'too-many-cards', { limit }),
  'no-cards-of-yours': ({ sprintName }, speak) => both(speak, 'no-cards-of-yours', { sprint: sprintName }),
  'unclear-words': ({ problems, example }, speak) => ({
    what: speak('refusal-unclear-words', {
      problems: asIs(problems.map((problem) => unclearWords(problem, formOf(speak)))),
    }),
    fix: speak('refusal-unclear-words-fix', exampleArguments(example)),
  }),
  'not-about-cards': ({ example, near }, speak) => ({
    what: speak('refusal-not-about-cards'),
    fix:
      near !== undefined
        ? speak('refusal-unknown-command-near-fix', { near })
        : [
            ...(example ? [speak('refusal-unclear-words-fix', exampleArguments(example))] : []),
            speak('refusal-not-about-cards-fix'),
          ].join('\n'),
  }),
  'no-sprint-to-reopen': (_, speak) => both(speak, 'no-sprint-to-reopen'),
  'nothing-to-export': ({ teamName }, speak) => both(speak, 'nothing-to-export', { team: teamName }),
  'no-closed-sprint': ({ teamName, withVelocity }, speak) =>
    both(speak, 'no-closed-sprint', { team: teamName, needed: withVelocity ? 'velocity' : 'any' }),
  'no-such-sprint': ({ reference, known }, speak) => ({
    what:
      reference === ''
        ? speak('refusal-sprint-not-given')
        : speak('refusal-no-such-sprint', { sprint: reference }),
    fix: speak('refusal-no-such-sprint-fix', {
      sprints: known.slice(0, SPRINTS_LISTED),
      more: known.length > SPRINTS_LISTED ? 'yes' : 'no',
    }),
  }),
  'sprint-not-closed': ({ sprintName, state }, speak) =>
    both(speak, 'sprint-not-closed', { sprint: sprintName, state }),
  'no-velocity': ({ sprintName, finishedPoints }, speak) =>
    both(speak, 'no-velocity', {
      sprint: sprintName,
      finished: finishedPoints === undefined ? 'unknown' : 'nothing',
    }),
  'sprint-stays': ({ sprintName, why }, speak) => both(speak, 'sprint-stays', { sprint: sprintName, why }),
  'days-taken': ({ sprintName, otherName }, speak) =>
    both(speak, 'days-taken', { sprint: sprintName, other: otherName }),
  'reopen-too-late': ({ sprintName }, speak) => both(speak, 'reopen-too-late', { sprint: sprintName }),
  'unknown-command': ({ word, near }, speak) => {
    const wanted = word.toLowerCase() === 'split' ? 'split' : 'any';
    return {
      what: speak('refusal-unknown-command', { word }),
      fix:
        wanted === 'split' || near === undefined
          ? speak('refusal-unknown-command-fix', { wanted })
          : speak('refusal-unknown-command-near-fix', { near }),
    };
  },
  'bad-argument': ({ problem, ...said }, speak) => ({
    what: speak('refusal-bad-argument', {
      command: said.command,
      problem: asIs([problemWords(problem, formOf(speak))]),
    }),
    fix: speak('refusal-bad-argument-fix', {
      command: said.command,
      example: said.example ?? say(`refusal-${said.command}-example`),
    }),
  }),
  'key-taken': ({ key, sprintName }, speak) => both(speak, 'key-taken', { name: key, sprint: sprintName }),
  'estimate-is-fixed': ({ card, number, why }, speak) => ({
    what: speak('refusal-estimate-is-fixed', { card, why }),
    fix: speak('refusal-estimate-is-fixed-fix', { number }),
  }),
  'sprint-was-closed': ({ sprintName }, speak) => both(speak, 'sprint-was-closed', { sprint: sprintName }),
  'no-draft': (_, speak) => both(speak, 'no-draft'),
  'plan-changed': (_, speak) => both(speak, 'plan-changed'),
  'sprint-changed': (_, speak) => both(speak, 'sprint-changed'),
  'answered-since': ({ card }, speak) => both(speak, 'answered-since', { card }),
  'held-up': (_, speak) => both(speak, 'held-up'),
  'reading-yours': (_, speak) => both(speak, 'reading-yours'),
  'reading-others': (_, speak) => both(speak, 'reading-others'),
  'too-much-at-once': ({ waitSeconds }, speak) => ({
    what: speak('refusal-too-much-at-once'),
    fix: speak('refusal-too-much-at-once-fix', { seconds: waitSeconds }),
  }),
  'file-unreadable': ({ fileName, why }, speak) => {
    const file = shortName(fileName);
    const code = FILE_CODES[why];
    return { what: speak(`refusal-file-${code}`, { file }), fix: speak(`refusal-file-${code}-fix`) };
  },
};

function formOf(speak: Speak): Form {
  return speak === say ? 'plain' : 'mrkdwn';
}

function exampleArguments({ cardCount, reference, title, leftPoints }: AnswerExample) {
  return {
    cards: cardCount === 1 ? 'single' : 'several',
    reference,
    card: title,
    left: leftPoints > 1 ? leftPoints - 1 : leftPoints,
  } as const;
}

/** Sentences that are in the right form already. */
function asIs(sentences: readonly string[]): Markup {
  return new Markup(sentences.join(' '));
}

const FILE_CODES = {
  'too large': 'too-large',
  'too long': 'too-long',
  'not text': 'not-text',
  'no answer': 'no-answer',
  'not handed over': 'not-handed-over',
  'not a calendar': 'not-calendar',
  'too much': 'too-much',
} as const satisfies Record<UnreadableFile, string>;

function shortName(fileName: string): string {
  const signs = [...fileName];
  return signs.length <= FILE_NAME_MAX ? fileName : `${signs.slice(0, FILE_NAME_MAX - 1).join('')}…`;
}

/** @param form plain text, or the platform's markup, in which what people typed is escaped */
export function refusalWords<Code extends RefusalCode>(
  refusal: Refusal<Code>,
  form: Form = 'mrkdwn',
): RefusalWords {
  return TOLD[refusal.code](refusal.details, form === 'plain' ? say : mrkdwn);
}
