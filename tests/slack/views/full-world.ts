/**
 * The largest sprint that the use cases let in, in every message and form: 100 cards, titles of 200 characters, every
 * field full of one text.
 */

import type { HomeView, ModalView } from '@slack/types';
import type { Advice, KeptAdvice } from '../../../src/app/advice/advice.ts';
import { BODY_NAME_MAX_LENGTH, MOST_BODIES } from '../../../src/app/bodies/body-of-work.ts';
import type { CardLine } from '../../../src/app/cards/card-line.ts';
import { cardLink } from '../../../src/app/cards/card-link.ts';
import type { PullInSize } from '../../../src/app/cards/pull-in-check.ts';
import type { Experiment } from '../../../src/app/experiments/experiment.ts';
import type { ExperimentResult } from '../../../src/app/experiments/experiment-results.ts';
import type { CardFileReading } from '../../../src/app/planning/card-file.ts';
import type { ListedPlanChange } from '../../../src/app/planning/listed-plan-changes.ts';
import type { PlanChange, PlanPart } from '../../../src/app/planning/plan-change.ts';
import type { PlanPreview } from '../../../src/app/planning/plan-sprint.ts';
import type { UndeliveredCause } from '../../../src/app/posting/delivery-failure.ts';
import { Refusal } from '../../../src/app/refusal.ts';
import { SETTING_NAMES } from '../../../src/app/team/settings.ts';
import type { Team } from '../../../src/app/team/team.ts';
import type { HomePage } from '../../../src/app/watching/home-page.ts';
import type { Command } from '../../../src/slack/commands/command.ts';
import { COMMANDS } from '../../../src/slack/commands/commands.ts';
import { titleOf } from '../../../src/slack/commands/pull-message.ts';
import { sentFile } from '../../../src/slack/files/download-file.ts';
import { forecastFormView, rangeFormView } from '../../../src/slack/views/advice-forms.ts';
import {
  adviceDetailsMessage,
  adviceMessage,
  jointMessage,
  sharedAdviceMessage,
} from '../../../src/slack/views/advice-message.ts';
import { answerFormView } from '../../../src/slack/views/answering/answer-form.ts';
import { chooseSprintFormView } from '../../../src/slack/views/answering/choose-sprint-form.ts';
import { growthMessage } from '../../../src/slack/views/answering/growth-message.ts';
import { baselineFormView, baselineNamedMessage } from '../../../src/slack/views/baseline-views.ts';
import { bodyEndedMessage, bodyFormView, bodyKeptMessage } from '../../../src/slack/views/body-views.ts';
import { dropFormView, pullFormView, pullTeamFormView } from '../../../src/slack/views/cards/card-forms.ts';
import {
  cardsBlockedMessage,
  cardsDroppedMessage,
  cardsGivenMessage,
  cardsMessage,
  droppedMessage,
  ownersMessage,
  pulledMessage,
  reopenedCardMessage,
  undroppedMessage,
} from '../../../src/slack/views/cards/card-messages.ts';
import {
  daysOffFormView,
  daysOffPreviewView,
  daysOffSaidMessage,
  daysOffSavedMessage,
  weekdaysSaidMessage,
} from '../../../src/slack/views/days-off-views.ts';
import { digestFormView, digestSetMessage } from '../../../src/slack/views/digest-views.ts';
import {
  experimentEndedMessage,
  experimentKeptMessage,
  experimentsMessage,
  tryFormView,
} from '../../../src/slack/views/experiment-views.ts';
import { formButtonMessage } from '../../../src/slack/views/form-view.ts';
import { goalFormView, goalRecordedReply } from '../../../src/slack/views/goal-views.ts';
import { allCommandsMessage, commandHelpMessage, helpMessage } from '../../../src/slack/views/help.ts';
import { homeView } from '../../../src/slack/views/home-page.ts';
import type { MessageView } from '../../../src/slack/views/message-view.ts';
import { overviewMessage } from '../../../src/slack/views/overview.ts';
import { ownPromptFormView, ownPromptSetMessage } from '../../../src/slack/views/own-prompt-views.ts';
import { cardFileFormView } from '../../../src/slack/views/planning/card-file-form.ts';
import {
  cardEditedMessage,
  editCardFormView,
  editSprintFormView,
  sprintEditedMessage,
} from '../../../src/slack/views/planning/edit-views.ts';
import { planFormView } from '../../../src/slack/views/planning/plan-forms.ts';
import { planCommittedReply } from '../../../src/slack/views/planning/plan-messages.ts';
import { planPreviewView } from '../../../src/slack/views/planning/plan-preview.ts';
import { postMessage } from '../../../src/slack/views/post-message.ts';
import {
  importRemovedReply,
  removalConfirmView,
  removalFormView,
} from '../../../src/slack/views/removal-views.ts';
import { retroMessage } from '../../../src/slack/views/retro-message.ts';
import {
  cancelFormView,
  closeFormView,
  sprintCancelledReply,
  sprintClosedReply,
  sprintReopenedReply,
} from '../../../src/slack/views/sprint-change-views.ts';
import { statusChartMessage, statusMessage } from '../../../src/slack/views/status-message.ts';
import { guestsMessage, guestWelcomeMessage } from '../../../src/slack/views/team/guest-messages.ts';
import { endFormView, measuresFormView, setupFormView } from '../../../src/slack/views/team/team-forms.ts';
import {
  measuresSavedReply,
  teamEndedReply,
  teamMovedReply,
  teamResumedReply,
  teamSavedReply,
} from '../../../src/slack/views/team/team-messages.ts';
import {
  doneFormView,
  refusalMessage,
  refusedFormView,
  troubleFormView,
  workingFormView,
} from '../../../src/slack/views/trouble-views.ts';
import {
  valueFormView,
  valueRecordedMessage,
  valuesPreviewView,
  valuesRecordedMessage,
} from '../../../src/slack/views/value-views.ts';
import { directVerdictsReply } from '../../../src/slack/views/verdict-message.ts';
import { welcomeMessage } from '../../../src/slack/views/welcome-message.ts';
import { whatIfFormView, whatIfMessage } from '../../../src/slack/views/what-if-views.ts';
import { suggestionOf } from '../../../src/words/experiments.ts';
import { refusalWords } from '../../../src/words/refusals.ts';
import { jointUnknown, ordinaryJoint } from '../../charts/joint-examples.ts';
import { aBody, keptAdvice, toldBefore } from '../../charts/kept-examples.ts';
import { daysOffForm, daysOffPreview } from '../support/samples.ts';
import { forecastAdvice, historyAdvice, oddsAdvice, pastSprint, rangeAdvice } from './advice-examples.ts';
import {
  ANA,
  BEN,
  baselineNamedOf,
  besideHistory,
  card,
  closedSprint,
  fact,
  homeTeam,
  preview,
  promptOf,
  pullInCheckOf,
  retroOf,
  sprint,
  statusOf,
  team,
  teamOverview,
  valueRecordedOf,
  verdictOf,
  whatIf,
} from './view-examples.ts';

/** `text` over and over, exactly `length` characters long. */
const filled = (text: string, length: number): string =>
  text.repeat(Math.ceil(length / text.length)).slice(0, length);

interface WorldSize {
  readonly pastSprints: number;
  readonly cards: number;
  readonly teams: number;
  readonly titleLength?: number;
  /** Of every card, as it was typed. */
  readonly link?: string;
}

const UNDELIVERED_CAUSES = [
  'place-gone',
  'person-gone',
  'token-gone',
  'permission',
  'our-defect',
  'tries-failed',
] as const satisfies readonly UndeliveredCause[];

export const FULL: WorldSize = { pastSprints: 260, cards: 100, teams: 60 };

/** Ten years of sprints with every number large, and cards of as many sizes as there are. */
function historyOf(name: string, { pastSprints, cards }: WorldSize) {
  return Array.from({ length: pastSprints }, (_, i) => ({
    ...pastSprint(i, {
      commitment: 99_950,
      finished: i % 3 === 0 ? 0.5 : 99_949.5,
      pulledIn: i % 2 === 0 ? 99_950 : 0,
      surprise: i === pastSprints - 1 ? 9_999_999 : i % 5,
      imported: i % 7 === 0,
      value: 10 ** (i % 15),
      cards: Array.from({ length: cards }, (_one, k) => ({
        estimatePoints: ((k + i * 7) % 1999) / 2 + 0.5,
        surprisePoints: k % 2 === 0 ? 999.5 : 0,
      })),
    }),
    name,
  }));
}

/** As many as may be kept, with names as long as they may be, told at every turn. */
function fullKept(name: string): KeptAdvice {
  const told = toldBefore(Array.from({ length: 40 }, () => '2027-01-10'));
  const bodies = Array.from({ length: MOST_BODIES }, (_, i) => ({
    name: filled(name, BODY_NAME_MAX_LENGTH),
    leftPoints: 20_000 / (i + 1) ** 2,
    growthPoints: 9_999.5,
    sharePercent: 10,
    sprintsSinceSaid: 100,
    told,
  }));
  const body = aBody({ name: filled(name, BODY_NAME_MAX_LENGTH), doneAt: new Date(0) });
  return { ...keptAdvice(bodies), done: Array.from({ length: 3 }, () => ({ body, told })) };
}

/** The answers to all planning questions, asked and shared, with such a history and with none. */
function answersOf(
  hostile: typeof team,
  name: string,
  chart: { fileId: string; altText: string },
  size: WorldSize,
): Record<string, MessageView> {
  const past = historyOf(name, size);
  const answers: Record<string, Advice> = {
    range: rangeAdvice(past, 999.5),
    'range of none': rangeAdvice([], 0),
    odds: oddsAdvice(past),
    'odds of none': oddsAdvice([]),
    forecast: forecastAdvice(past, 20_000, 19_999.5),
    'forecast of none': forecastAdvice([]),
    history: historyAdvice(past),
    'history of none': historyAdvice([]),
    kept: fullKept(name),
    'kept none': keptAdvice([]),
    'kept without a past': keptAdvice([{ name: filled(name, BODY_NAME_MAX_LENGTH) }], []),
  };
  const of = Object.entries(answers).map(([about, answer]) => {
    const advice = { ...answer, team: hostile, askerIsFacilitator: true, askerMayKeep: true };
    return [
      [about, adviceMessage(advice, chart)],
      [`${about}, shared`, sharedAdviceMessage(advice, BEN, chart)],
      [`${about}, how it’s made`, adviceDetailsMessage(advice)],
    ] as const;
  });
  return Object.fromEntries(of.flat());
}

/** Every message and form, by what it is. */
/** How a file of cards was read: well, badly, and not at all. */
function cardFileForms(team: Team, filling: string): Record<string, ModalView> {
  const fileName = filled(filling, 1_000);
  const file = { id: 'F1', name: sentFile('cardFile', { id: 'F1', name: filled(filling, 80) })?.name ?? '' };
  const headers = Array.from({ length: 100 }, (_, i) => (i === 0 ? '' : filled(filling, 400)));
  const read = { headers, rows: 100, cards: 100, bad: [], broken: [], badUntold: 0, text: '' };
  const columns = { title: 0, estimate: 1, owner: 2, link: 3, key: 4 };
  const typed = filled(filling, 2_000);
  const bad = Array.from({ length: 200 }, (_, i) => ({
    lineNumber: i + 2,
    problem: { code: 'not-an-estimate', typed, most: 999.5 } as const,
  }));
  const broken = [{ lineNumber: 9, problem: { code: 'misplaced-quote' } as const }];
  const shown = (read: CardFileReading['read']): ModalView =>
    cardFileFormView({ team, fileName, read }, { file, round: 3, replyTo: 'D1' });
  return {
    'card file': shown({ ...read, columns }),
    'card file, bad lines': shown({ ...read, columns, bad, broken }),
    'card file, columns to choose': shown({ ...read, columns: {} }),
    'card file, no rows': shown({ ...read, columns, rows: 0 }),
    'card file, too many rows': shown({ ...read, columns, rows: 101 }),
    'card file, unreadable': shown({ code: 'no-csv' }),
  };
}

export function fullWorld(filling: string, size: WorldSize = FULL) {
  const heading = {
    team: { ...team, name: filled(filling, 80), timeZone: 'America/Argentina/ComodRivadavia' },
    sprint: { ...sprint, name: filled(filling, 80), goal: filled(filling, 500) },
  };
  const cards = Array.from({ length: size.cards }, (_, i) =>
    card(i + 1, {
      key: `ABCDEFGHIJ-${1_000_000 + i}`,
      title: filled(filling, size.titleLength ?? 200),
      link: size.link === undefined ? undefined : cardLink(size.link),
      estimatePoints: 999.5,
      origin: i % 2 === 0 ? 'planned' : 'pulled-in',
      ownerIds: i % 5 === 4 ? [] : [ANA, BEN],
    }),
  );
  const facts = cards.flatMap(({ id }, i) => [
    fact(2 * i, {
      cardId: id,
      day: '2026-11-04',
      workedPoints: 999.5,
      leftPoints: 999.5,
      surprisePoints: 500,
      note: filled(filling, 500),
    }),
    ...(i % 3 !== 2
      ? [
          {
            kind: i % 3 === 0 ? ('drop' as const) : ('blocked' as const),
            cardId: id,
            day: '2026-11-05',
            order: 2 * i + 1,
            memberId: ANA,
            id: `d${i}`,
            recordedAt: new Date(0),
            note: filled(filling, 300),
            supersedesId: undefined,
          },
        ]
      : []),
  ]);
  const changed = (part: PlanPart, was: string, became: string, cardId?: string): PlanChange => ({
    id: `${part}-${cardId}`,
    sprintId: heading.sprint.id,
    cardId,
    part,
    was,
    became,
    changedBy: BEN,
    changedAt: new Date('2026-11-04T09:00:00Z'),
  });
  const fullBody = aBody({
    name: filled(filling, BODY_NAME_MAX_LENGTH),
    leftPoints: 20_000,
    sharePercent: 99,
  });
  const experiments = Array.from(
    { length: 10 },
    (_, i): Experiment => ({
      id: `e${i}`,
      teamId: heading.team.id,
      text: filled(filling, 200),
      ratio: 'estimateAccuracy',
      direction: 'down',
      begunBy: BEN,
      begunAt: new Date(0),
      afterSprintId: undefined,
      ended: undefined,
    }),
  );
  const ended = { how: 'keep', by: BEN, at: new Date(0) } as const;
  const corrections = [
    ...cards.flatMap(({ id }) => [
      changed('title', filled(filling, 200), filled(filling, 200), id),
      changed('link', '', 'https://tracker.example/1', id),
      changed('key', 'ABCDEFGHIJ-1000000', 'ABCDEFGHIJ-1000001', id),
      changed('estimate', '999.5', '998.5', id),
    ]),
    changed('goal', filled(filling, 500), filled(filling, 500)),
    changed('endsOn', '2026-11-11', '2026-11-13'),
    changed('closesAt', '17:00', '18:00'),
    changed('awayDays', '', '2.5'),
  ];
  const hands = cards.flatMap(({ id }) =>
    (['joined', 'left', 'handed-over', 'first'] as const).map(
      (how): ListedPlanChange => ({
        ...{ part: 'owners', cardId: id, how, newOwnerIds: how === 'left' ? [] : [BEN] },
        ...{ changedBy: BEN, changedAt: new Date('2026-11-04T09:00:00Z') },
      }),
    ),
  );
  const planChanges = [...corrections, ...hands];
  const closed = verdictOf(cards, facts, {
    ...heading,
    planChanges,
    experiments: experiments.map((experiment) => ({
      experiment,
      before: -999.5,
      now: 0.5,
      beyondOrdinary: undefined,
    })),
    goalOutcome: { met: 'partly', note: filled(filling, 300), saidBy: BEN, saidAt: new Date(0) },
  });
  const verdict = {
    ...closed,
    summary: { ...closed.summary, baseline: { name: filled(filling, 80) } },
  };
  const retro = retroOf(
    cards,
    facts,
    {
      ...heading,
      experiments: verdict.experiments.map((result) => ({ experiment: result.experiment, result })),
    },
    verdict,
    corrections,
  );
  const lines = verdict.cards;
  const one = lines[0] as CardLine;
  const answers = lines.map(({ cardId }) => ({
    cardId,
    worked: '999.5',
    left: '999.5',
    surprise: '999.5',
    note: filled(filling, 500),
  }));
  const grown = lines.map((line) => ({ card: line, growthPoints: 999.5 }));
  const given = { worked: 999.5, left: 999.5, surprise: 500, note: filled(filling, 500) };
  const formCards = lines.map((line) => ({ card: line, previousLeftPoints: 999.5, given }));
  const plan = { ...heading, commitmentPoints: 99_950, cards: lines, byUserId: BEN };
  const growthLines = lines.map((line) => ({
    card: line,
    day: '2026-11-04',
    surprisePoints: 500,
    driftPoints: 499.5,
    note: given.note,
  }));
  const status = statusOf({ ...heading, summary: verdict.summary, cards: lines, growth: growthLines });
  const prompt = promptOf({ ...heading, cards: lines });
  const answered = lines.map((line) => ({
    card: line,
    workedPoints: 999.5,
    leftPoints: 999.5,
    growthPoints: 999.5,
    surprisePoints: 500,
    driftPoints: 499.5,
    note: given.note,
  }));
  const list = { heading, cards: lines, summary: verdict.summary, planChanges, isOnTeam: true };
  const people = Array.from({ length: 100 }, (_, i) => `U${String(i).padStart(10, '0')}`);
  const fullTeam = { ...heading.team, scale: Array.from({ length: 30 }, (_, i) => 900.5 + i) };
  const jointNames = {
    name: filled(filling, BODY_NAME_MAX_LENGTH),
    teamNames: Array.from({ length: 20 }, () => fullTeam.name),
    staleTeamNames: Array.from({ length: 20 }, () => fullTeam.name),
  };
  const ownPrompt = {
    teams: Array.from({ length: size.teams }, () => fullTeam),
    ownPrompt: { at: '10:30', timeZone: 'America/Argentina/ComodRivadavia' },
    timeZone: 'America/Argentina/ComodRivadavia',
  };
  const overview = {
    teams: Array.from({ length: size.teams }, () =>
      teamOverview({
        ...heading,
        team: fullTeam,
        myOpenCards: lines,
        reopenable: true,
        isProductOwner: true,
        heldBackPosts: 999,
        hasFinishedSprint: true,
      }),
    ),
    canSetUpHere: true,
  };
  const pastSprints = Array.from({ length: 99 }, (_, i) => ({
    ...closedSprint,
    sprintId: `${i}`.padStart(64, 's'),
    name: heading.sprint.name,
    recordedValue: -999_999_999_999_999,
    commitmentPoints: 9_999_999.5,
    velocityPoints: 9_999_999.5,
  }));
  const fullValues = {
    team: fullTeam,
    values: pastSprints.map((one) => ({
      sprint: { ...one, recordedValue: -999_999_999_999_999 },
      value: 999_999_999_999_999,
    })),
    same: 999,
    without: 999,
    problems: [],
    problemsUntold: 0,
    fingerprint: 'x'.repeat(43),
  };
  const [pastSprint] = pastSprints as [(typeof pastSprints)[number]];
  const chart = { fileId: 'F0CHART', altText: filled(filling, 2_500) };
  const planPreview = {
    ...preview,
    guestIds: [BEN],
    experiments,
    ...besideHistory(historyOf(heading.sprint.name, size)),
    team: fullTeam,
    input: {
      ...preview.input,
      name: heading.sprint.name,
      goal: heading.sprint.goal,
      cards: filled(filling, 90_000),
    },
    cards: lines,
    tickable: lines.slice(0, 50),
    leftOut: lines.slice(0, 20),
    commitmentPoints: 99_950,
    warnings: [
      { code: 'off-scale', cardNumbers: lines.map(({ number }) => number), scale: fullTeam.scale },
      { code: 'no-owner', cardNumbers: lines.map(({ number }) => number) },
      { code: 'no-points' },
      {
        code: 'still-in-work',
        cardNumbers: lines.map(({ number }) => number),
        sprintName: heading.sprint.name,
        endsOn: '2026-11-13',
      },
      {
        code: 'finished-before',
        cardNumbers: lines.map(({ number }) => number),
        sprintName: heading.sprint.name,
      },
      { code: 'no-working-day' },
    ] satisfies PlanPreview['warnings'],
    recent: Array.from({ length: 3 }, () => ({
      sprintName: heading.sprint.name,
      workingDays: 99,
      commitmentPoints: 99_950,
      velocityPoints: 99_950,
      verdict: 'no plan' as const,
    })),
  };
  const asTyped = filled(filling, 5_000);
  const words = refusalWords(new Refusal('unknown-command', { word: asTyped, near: asTyped }));
  const messages: Record<string, MessageView> = {
    prompt: postMessage({ kind: 'daily-prompt', prompt }),
    'prompt of three teams': postMessage({
      kind: 'daily-prompt',
      prompt: { ...prompt, others: [prompt, prompt] },
    }),
    'last call of three teams': postMessage({
      kind: 'last-call',
      prompt: { ...prompt, others: [prompt, prompt] },
    }),
    'first morning': postMessage({ kind: 'daily-prompt', prompt: { ...prompt, state: 'listed' } }),
    'answered prompt': postMessage({
      kind: 'daily-prompt',
      prompt: { ...prompt, state: 'answered', answered },
    }),
    'channel shared': postMessage({ kind: 'channel-unreachable', team: heading.team, cause: 'shared' }),
    'channel unreachable, bot-left': postMessage({
      kind: 'channel-unreachable',
      team: heading.team,
      cause: 'bot-left',
    }),
    ...Object.fromEntries(
      UNDELIVERED_CAUSES.flatMap((cause) => [
        [
          `channel unreachable, ${cause}`,
          postMessage({ kind: 'channel-unreachable', team: heading.team, cause }),
        ],
        [
          `member unreachable, ${cause}`,
          postMessage({ kind: 'member-unreachable', team: heading.team, userId: BEN, cause }),
        ],
      ]),
    ),
    'half answered prompt': postMessage({
      kind: 'daily-prompt',
      prompt: { ...prompt, state: 'answered', answered: answered.slice(50) },
    }),
    'unchanged prompt': postMessage({ kind: 'daily-prompt', prompt: { ...prompt, state: 'unchanged' } }),
    'prompt that is over': postMessage({
      kind: 'daily-prompt',
      prompt: { ...prompt, state: 'over', answered },
    }),
    reminder: postMessage({ kind: 'reminder', prompt }),
    'last call': postMessage({ kind: 'last-call', prompt }),
    'team set up': postMessage({
      kind: 'team-set-up',
      team: fullTeam,
      sprintName: heading.sprint.name,
      memberIds: people,
      facilitatorIds: people,
    }),
    'team changed': postMessage({
      kind: 'team-changed',
      team: fullTeam,
      byUserId: BEN,
      changes: [
        { part: 'name', was: fullTeam.name, became: fullTeam.name },
        { part: 'members', was: people.length, became: people.length + 1, joined: people.join(' ') },
        { part: 'facilitators', was: people.join(' '), became: BEN },
        { part: 'workingDays', was: '1', became: '1 2 3 4 5 6 7' },
        ...SETTING_NAMES.map((part) => ({ part, was: '', became: 'no' })),
      ],
    }),
    'roles given': postMessage({
      kind: 'role-given',
      team: fullTeam,
      roles: ['member', 'facilitator', 'product-owner'],
      byUserId: BEN,
      isOwnDoing: false,
    }),
    'taken off': postMessage({
      kind: 'taken-off',
      team: fullTeam,
      byUserId: people[0] as string,
      isProductOwner: true,
    }),
    'no facilitator': postMessage({ kind: 'no-facilitator', team: fullTeam }),
    'facilitator is a guest': postMessage({
      kind: 'role-ended',
      team: fullTeam,
      role: 'facilitator',
      facilitatorIds: people,
    }),
    'no product owner': postMessage({
      kind: 'role-ended',
      team: fullTeam,
      role: 'product-owner',
      facilitatorIds: [],
    }),
    'team moved here': postMessage({ kind: 'team-moved', team: fullTeam, byUserId: BEN, isHere: true }),
    'team moved away': postMessage({ kind: 'team-moved', team: fullTeam, byUserId: BEN, isHere: false }),
    'messages removed': postMessage({ kind: 'messages-removed', removed: 9999, left: 9999 }),
    'team ended': postMessage({ kind: 'team-ended', team: fullTeam, byUserId: BEN, erasedOn: '2027-12-30' }),
    'team taken back': postMessage({
      kind: 'team-ended',
      team: fullTeam,
      byUserId: BEN,
      erasedOn: undefined,
    }),
    'team idle': postMessage({ kind: 'team-idle', team: fullTeam, erasedOn: '2027-12-30' }),
    'team resumed': postMessage({ kind: 'team-resumed', team: fullTeam, byUserId: BEN }),
    'import removed': postMessage({
      kind: 'import-removed',
      team: fullTeam,
      byUserId: BEN,
      sprintName: heading.sprint.name,
    }),
    'values recorded': valuesRecordedMessage(fullValues),
    'import removed, reply': importRemovedReply({ team: fullTeam, sprint: pastSprint, sprintsLeft: 999 }),
    'reply to the mover': teamMovedReply(fullTeam),
    'reply to who ended it': teamEndedReply({ ...fullTeam, endedAt: new Date('2026-11-30T12:00:00Z') }),
    'reply to who took it back': teamResumedReply({ team: fullTeam, sprintName: heading.sprint.name }),
    plan: postMessage({ kind: 'plan', plan }),
    verdict: postMessage({ kind: 'verdict', verdict }, chart),
    'verdict before a planned sprint': postMessage({
      kind: 'verdict',
      verdict: {
        ...verdict,
        nextSprint: { ...heading.sprint, overtaken: lines },
      },
    }),
    directVerdict: postMessage({ kind: 'direct-verdict', verdict }, chart),
    verdictNumbers: postMessage({ kind: 'verdict-numbers', verdict }),
    verdictCards: postMessage({ kind: 'verdict-cards', verdict }),
    verdictNotes: postMessage({ kind: 'verdict-notes', verdict }),
    keptVerdict: postMessage({ kind: 'verdict', verdict: { ...verdict, leadingNoteId: 'went-well' } }, chart),
    cancelled: postMessage(
      { kind: 'cancelled', verdict, byUserId: BEN, reason: filled(filling, 300) },
      chart,
    ),
    'shared status': postMessage({ kind: 'shared-status', status, byUserId: BEN }, chart),
    digest: postMessage({
      kind: 'digest',
      digest: {
        status,
        surpriseCeiling: 0.2,
        signalBefore: 'heavy',
        answersBefore: { day: '2026-11-03', asked: 50, answered: 1 },
        still: lines.map((line) => ({ card: line, days: 3 })),
      },
    }),
    'watch word': postMessage({ kind: 'watch-word', status, word: 'turned-heavy', crossed: undefined }),
    'weekly line': postMessage({ kind: 'weekly-line', status, surpriseCeiling: 0.2 }),
    'own prompt set': ownPromptSetMessage(ownPrompt),
    'own prompt ended': ownPromptSetMessage({ ...ownPrompt, ownPrompt: undefined }),
    'verdicts wanted': directVerdictsReply({ team: fullTeam, isWanted: true }),
    'verdicts not wanted': directVerdictsReply({ team: fullTeam, isWanted: false }),
    'digest set': digestSetMessage({ team: fullTeam, digestAt: '08:30' }),
    status: statusMessage(status),
    'what if': whatIfMessage({ ...whatIf, ...heading, without: one, load: status.load }),
    statusChart: statusChartMessage(chart),
    cards: cardsMessage(list),
    growth: growthMessage({ kind: 'growth-to-explain', heading, day: '2026-11-04', answers, grown }),
    help: helpMessage(overview),
    'help, no team': helpMessage({ teams: [] }),
    'all commands': allCommandsMessage(COMMANDS),
    'one command': commandHelpMessage(COMMANDS[0] as Command),
    overview: overviewMessage(overview, team.channelId),
    welcome: welcomeMessage({ teamNames: overview.teams.map(({ team: { name } }) => name), isAsked: true }),
    'welcome, asked nothing': welcomeMessage({
      teamNames: [overview.teams[0]?.team.name ?? ''],
      isAsked: false,
    }),
    'welcome, no team': welcomeMessage({ teamNames: [], isAsked: false }),
    pulled: pulledMessage({ ...list, cards: [one], alike: [one.number], check: pullInCheckOf() }),
    dropped: droppedMessage({ heading, card: one }, filled(filling, 300)),
    'card edited': cardEditedMessage({ heading, card: one, changes: corrections.slice(0, 1) }),
    'sprint edited': sprintEditedMessage({ heading, changes: corrections.slice(-1) }),
    'nothing edited': sprintEditedMessage({ heading, changes: [] }),
    'what becomes of something tried': postMessage({
      kind: 'experiment-question',
      team: fullTeam,
      result: verdict.experiments[0] as ExperimentResult,
    }),
    'body of work, kept': bodyKeptMessage({
      team: fullTeam,
      body: fullBody,
      before: undefined,
      advice: { ...fullKept(filling), team: fullTeam },
    }),
    'body of work, brought up to date': bodyKeptMessage({
      team: fullTeam,
      body: fullBody,
      before: { ...fullBody, leftPoints: 1 },
      advice: { ...fullKept(filling), team: fullTeam },
    }),
    'body of work, done': bodyEndedMessage({
      team: fullTeam,
      body: fullBody,
      how: 'done',
      told: fullKept(filling).bodies[0]?.told ?? [],
    }),
    'body of work, removed': bodyEndedMessage({ team: fullTeam, body: fullBody, how: 'removed', told: [] }),
    'joint date': jointMessage({ ...ordinaryJoint, ...jointNames }, chart),
    'no joint date': jointMessage({ ...jointUnknown, ...jointNames, unknownTeamNames: jointNames.teamNames }),
    'something to try, kept': experimentKeptMessage({
      team: fullTeam,
      experiment: experiments[0] as Experiment,
    }),
    'something to try, ended': experimentEndedMessage({
      team: fullTeam,
      experiment: experiments[0] as Experiment,
      outcome: 'change',
    }),
    retrospective: retroMessage(retro),
    'retrospective, shared': postMessage({ kind: 'shared-retro', retro, byUserId: BEN }),
    'what the team tries': experimentsMessage({
      team: fullTeam,
      experiments: [...experiments, ...experiments.map((one) => ({ ...one, ended }))],
      askerIsFacilitator: true,
    }),
    'nothing tried': experimentsMessage({ team: fullTeam, experiments: [], askerIsFacilitator: true }),
    'goal question': postMessage({ kind: 'goal-question', heading, outcome: undefined }),
    'goal question, answered': postMessage({
      kind: 'goal-question',
      heading,
      outcome: { met: 'no', note: filled(filling, 300), saidBy: BEN, saidAt: new Date(0) },
    }),
    'value question': postMessage({ kind: 'value-question', heading, value: undefined }),
    'value question, answered': postMessage({ kind: 'value-question', heading, value: -999_999_999_999_999 }),
    'goal recorded': goalRecordedReply({
      heading,
      outcome: { met: 'partly', note: filled(filling, 300), saidBy: BEN, saidAt: new Date(0) },
    }),
    undropped: undroppedMessage({ heading, card: one }),
    taken: ownersMessage({ heading, cards: lines }, 'take'),
    given: ownersMessage({ heading, cards: lines }, 'give'),
    'given to you': cardsGivenMessage({
      kind: 'cards-given',
      heading,
      cards: [...lines],
      byUserId: one.ownerIds[0] ?? '',
    }),
    'days off said': daysOffSaidMessage({
      whose: 'team',
      teams: [fullTeam],
      today: '2026-11-04',
      spans: [{ from: '2026-12-24', to: '2027-01-02' }],
      share: 0.5,
    }),
    'days off saved': daysOffSavedMessage({ ...daysOffForm, team: fullTeam }),
    'weekdays said': weekdaysSaidMessage({ team: fullTeam, worksOn: [1, 2, 4] }),
    'guests named': guestsMessage({ heading, userIds: one.ownerIds }, 'added'),
    'guests removed': guestsMessage({ heading, userIds: one.ownerIds }, 'removed'),
    'to a guest': guestWelcomeMessage({
      kind: 'guest-welcome',
      heading,
      from: heading.sprint.startsOn,
      byUserId: one.ownerIds[0] ?? '',
    }),
    'blocked, to a facilitator': cardsBlockedMessage({
      kind: 'cards-blocked',
      heading,
      cards: lines.filter(({ blocked }) => blocked),
    }),
    'dropped by somebody': cardsDroppedMessage({
      kind: 'cards-dropped',
      heading,
      cards: [one],
      byUserId: one.ownerIds[0] ?? '',
      reason: filled(filling, 300),
      isTakenBack: false,
    }),
    'reopened card': reopenedCardMessage({ heading, card: one }),
    closed: sprintClosedReply(verdict),
    'cancelled, reply': sprintCancelledReply(verdict),
    reopened: sprintReopenedReply({
      heading,
      until: new Date('2026-11-14T17:00:00Z'),
      lastDay: '2026-11-13',
    }),
    planned: planCommittedReply({
      ...plan,
      leftOut: lines.map((card) => ({ ...card, lineNumber: card.number })),
    }),
    'form to open': formButtonMessage({ actionId: 'open-plan-form', value: team.channelId }),
    'team saved': teamSavedReply(fullTeam, false),
    'measures saved': measuresSavedReply(fullTeam),
    'value recorded': valueRecordedMessage(
      valueRecordedOf({
        team: fullTeam,
        sprint: { ...pastSprint, recordedValue: -999_999_999_999_999 },
        value: -999_999_999_999_999,
        previousValue: 999_999_999_999_999,
        growth: { valueGrowth: 1e21, velocityGrowth: 1e21, valuePerPointGrowth: 1e21 },
        measuredBy: { sprintId: 's', name: heading.sprint.name },
      }),
    ),
    'baseline named': baselineNamedMessage(
      baselineNamedOf({
        team: fullTeam,
        baseline: pastSprint,
        isFirst: true,
        before: { ...pastSprint, sprintId: 's' },
        latest: { name: heading.sprint.name, growthBefore: 1e9, growthAfter: 1e-9 },
      }),
    ),
    'baseline a median': baselineNamedMessage(
      baselineNamedOf({
        team: fullTeam,
        baseline: { rule: 'first-three', velocityPoints: 999.5 },
        isFirst: false,
        before: pastSprint,
        latest: undefined,
      }),
    ),
    ...answersOf(heading.team, heading.sprint.name, chart, size),
    refusal: refusalMessage(words),
    'refusal of many things': refusalMessage(
      words,
      Array.from({ length: 30 }, () => ({ field: 'cards', message: asTyped })),
    ),
  };
  const fullCheck = pullInCheckOf({
    sizes: fullTeam.scale.map((estimatePoints) => ({
      ...(pullInCheckOf().sizes[1] as PullInSize),
      estimatePoints,
    })),
  });
  const answerForm = { heading, userId: ANA, day: '2026-11-04', cards: formCards, takeable: lines };
  const homePage: HomePage = {
    teams: overview.teams.map((about) => ({
      ...homeTeam(),
      ...about,
      nextSteps: [
        { code: 'say-who-reads', posts: 999 },
        { code: 'find-owners', cards: 100 },
        { code: 'finish-corrections' },
        { code: 'finish-draft', sprint: heading.sprint.name },
        { code: 'plan', when: 'soon' },
      ],
    })),
  };
  const forms: Record<string, ModalView | HomeView> = {
    'end the team': endFormView({
      team: fullTeam,
      sprintName: heading.sprint.name,
      canBeExported: true,
      erasedOn: '2027-12-30',
    }),
    setup: setupFormView(
      {
        ...fullTeam,
        existing: true,
        memberIds: people,
        facilitatorIds: people,
        productOwnerId: ANA,
        isShared: true,
        acceptsShared: true,
      },
      'D1',
    ),
    measures: measuresFormView(fullTeam, 'D1'),
    plan: planFormView({ team: fullTeam, draft: planPreview.input, leftOver: 100, experiments }, 'D1'),
    'try something': tryFormView(
      { team: fullTeam, verdict: undefined, open: experiments, changing: experiments[0] },
      suggestionOf(verdict),
      'D1',
    ),
    'plan preview': planPreviewView(planPreview, 'D1'),
    'plan, filled in from a file': planFormView(
      { team: fullTeam, draft: planPreview.input, leftOver: 0, fromFile: 100 },
      'D1',
    ),
    ...cardFileForms(fullTeam, filling),
    range: rangeFormView({ ...rangeAdvice([], 999.5), team: fullTeam }, 'D1'),
    forecast: forecastFormView(
      {
        team: fullTeam,
        velocities: Array.from({ length: 5 }, () => 9_999_999.5),
        keptNames: ['Harbour lights'],
      },
      { about: 'forecast', backlogPoints: 1e9, growthPoints: 1e9 },
      'D1',
    ),
    'keep a forecast': bodyFormView({ team: fullTeam, body: fullBody, turn: 10 }, undefined, 'D1'),
    'keep what was forecast': bodyFormView(
      { team: fullTeam, body: undefined, turn: undefined },
      { about: 'forecast', backlogPoints: 1e9, growthPoints: 1e9, growthMostPoints: 1e9 },
      'D1',
    ),
    answer: answerFormView(answerForm, undefined, 'D1'),
    'answer, second step': answerFormView(answerForm, { answers, grown }, 'D1'),
    pull: pullFormView({ heading, load: status.load, check: fullCheck, workingDaysLeft: 0 }, 'D1'),
    'pull, choosing a team': pullTeamFormView(
      { title: titleOf({ text: filled(filling, 200) }, new Map(), 200), link: one.link },
      Array.from({ length: size.teams }, () => heading.team),
      'D1',
    ),
    drop: dropFormView(list, 'D1'),
    'edit a card': editCardFormView({ heading, card: one, key: one.key, mayChangeEstimate: true }, 'D1'),
    'edit a card, estimate fixed': editCardFormView(
      { heading, card: one, key: one.key, mayChangeEstimate: false },
      'D1',
    ),
    'edit the sprint': editSprintFormView(heading, 'D1'),
    close: closeFormView(list, 'D1'),
    'what-if': whatIfFormView({ ...heading, cards: lines }, 'D1'),
    value: valueFormView(
      { team: fullTeam, sprints: pastSprints.slice(0, 24), initial: pastSprint.sprintId },
      'D1',
    ),
    'values from a file': valuesPreviewView(fullValues, { id: 'F1', name: filled(filling, 100) }, 'D1'),
    goal: goalFormView(
      {
        heading,
        outcome: { met: 'no', note: filled(filling, 300), saidBy: BEN, saidAt: new Date(0) },
      },
      'D1',
    ),
    ownPromptForm: ownPromptFormView(ownPrompt),
    digestForm: digestFormView({ team: fullTeam, digestAt: '08:30' }),
    'days off': daysOffFormView({ ...daysOffForm, team: fullTeam }, 'D1'),
    'days off from holidays': daysOffPreviewView(
      {
        ...daysOffPreview,
        team: fullTeam,
        name: filled(filling, 100),
        days: daysOffPreview.days.map((day) => ({ ...day, titles: [filled(filling, 100)] })),
        leftOut: daysOffPreview.leftOut.map((event) => ({ ...event, title: filled(filling, 100) })),
      },
      { holidaysOf: 'DE-BY' },
      'D1',
    ),
    'imported sprints': removalFormView({ team: fullTeam, sprints: pastSprints, leftOut: 900 }, 'D1'),
    'no imported sprint': removalFormView({ team: fullTeam, sprints: [], leftOut: 0 }, 'D1'),
    'imported sprint to go': removalConfirmView(
      { team: fullTeam, sprint: pastSprint, sprintsLeft: 999 },
      'D1',
    ),
    'last imported sprint to go': removalConfirmView(
      { team: fullTeam, sprint: pastSprint, sprintsLeft: 0 },
      'D1',
    ),
    baseline: baselineFormView(
      {
        team: fullTeam,
        choices: pastSprints,
        first: pastSprint,
        median: { rule: 'first-three', velocityPoints: 999.5 },
        named: pastSprint,
        leftOut: 1_000,
      },
      'D1',
    ),
    cancel: cancelFormView(list, 'D1'),
    'choose sprint': chooseSprintFormView(
      Array.from({ length: 100 }, () => ({ team: fullTeam, sprint: heading.sprint })),
    ),
    home: homeView(homePage),
    'home, one team’s buttons': homeView(homePage, team.channelId),
    'home, no team': homeView({ teams: [] }),
    trouble: troubleFormView('K7P2QX', 'uncertain'),
    working: workingFormView(),
    done: doneFormView(refusalMessage(words)),
    refused: refusedFormView(refusalMessage(words)),
  };
  return { messages, forms };
}
