/** Every message, form and text that the bot can show, with one text in all the places where people's words are. */

import { type CardLine, cardLine, statesOf } from '../../src/app/cards/card-line.ts';
import { Refusal } from '../../src/app/refusal.ts';
import { sentFile } from '../../src/slack/files/download-file.ts';
import { failureMessage } from '../../src/slack/listeners/failure-words.ts';
import { forecastQuestionMessage } from '../../src/slack/views/advice-forms.ts';
import { growthExplainedMessage } from '../../src/slack/views/answering/growth-message.ts';
import {
  changeUnreadMessage,
  dailyPromptMessage,
  leftOutMessage,
  thanksMessage,
} from '../../src/slack/views/answering/prompt-messages.ts';
import { dropFormView } from '../../src/slack/views/cards/card-forms.ts';
import {
  blockedMessage,
  movingMessage,
  ownerNeededMessage,
  pulledMessage,
} from '../../src/slack/views/cards/card-messages.ts';
import {
  daysOffFormView,
  daysOffPreviewView,
  daysOffSaidMessage,
  daysOffSavedMessage,
  weekdaysSaidMessage,
} from '../../src/slack/views/days-off-views.ts';
import {
  exportComment,
  exportedMessage,
  importFormView,
  importPreviewView,
  sprintsImportedMessage,
} from '../../src/slack/views/import-views.ts';
import {
  copyComment,
  copySentMessage,
  erasedMessage,
  eraseFormView,
  privacyMessage,
} from '../../src/slack/views/privacy-message.ts';
import { retroPageComment, retroPageSent, retroSharedReply } from '../../src/slack/views/retro-message.ts';
import { adviceSharedReply, statusSharedReply } from '../../src/slack/views/sprint-change-views.ts';
import { endFormView, leaveFormView } from '../../src/slack/views/team/team-forms.ts';
import {
  teamEndedReply,
  teamLeftReply,
  teamResumedReply,
  teamSavedReply,
} from '../../src/slack/views/team/team-messages.ts';
import {
  doneFormView,
  notInstalledMessage,
  refusalMessage,
  refusedFormView,
  sentTwiceMessage,
  troubleMessage,
} from '../../src/slack/views/trouble-views.ts';
import { valuesPreviewView, valuesRecordedMessage } from '../../src/slack/views/value-views.ts';
import { refusalWords } from '../../src/words/refusals.ts';
import { REFUSAL_EXAMPLES } from '../app/refusal-examples.ts';
import {
  daysOffForm,
  daysOffPreview,
  importPreview,
  sprintsImported,
  summary,
  teamExport,
} from '../slack/support/samples.ts';
import { fullWorld } from '../slack/views/full-world.ts';
import { card, team as exampleTeam, promptOf, sprint } from '../slack/views/view-examples.ts';

/** Ids and the like, which no person types: another text in their place would be no example any more. */
const OWN_WORDS = new Set([
  'code',
  'productOwnerId',
  'facilitatorIds',
  'startsOn',
  'endsOn',
  'erasedOn',
  'on',
  'day',
  'state',
  'why',
  'near',
  'command',
  'field',
  'until',
  'kind',
  'from',
  'to',
  'fingerprint',
  'id',
  'channelId',
]);

/** The same with `text` in place of everything that a person may have typed. */
function typedAll<T>(value: T, text: string): T {
  if (typeof value === 'string') return text as T;
  if (Array.isArray(value)) return value.map((one) => typedAll(one, text)) as T;
  if (typeof value !== 'object' || value === null || value instanceof Uint8Array) return value;
  const entries = Object.entries(value).map(([key, held]) => [
    key,
    OWN_WORDS.has(key) ? held : typedAll(held, text),
  ]);
  return Object.fromEntries(entries) as T;
}

/** All refusals, each as a message, whole and as its problems. */
function refusalsWith(text: string): Record<string, object> {
  const views = Object.entries(REFUSAL_EXAMPLES).map(([code, details]) => {
    const refusal = new Refusal(code as keyof typeof REFUSAL_EXAMPLES, typedAll(details, text) as never);
    return [
      `refusal ${code}`,
      failureMessage({ kind: 'refusal', words: refusalWords(refusal), problems: [] }),
    ];
  });
  const problems = [
    { field: 'name', message: text },
    { field: 'goal', message: `“${text}” Ж.` },
  ];
  return {
    ...Object.fromEntries(views),
    'refusal of two things': refusalMessage({ what: 'Ж.', fix: 'Ж.' }, problems),
    'unreadable file': refusalMessage(
      refusalWords(new Refusal('file-unreadable', { field: 'f', fileName: text, why: 'not text' })),
    ),
  };
}

/** Every view by what it is; texts that go beside files as `{text}`. */
export function everyView(text: string): Record<string, object> {
  const { messages: all, forms } = fullWorld(text === '' ? ' ' : text, {
    pastSprints: 12,
    cards: 8,
    teams: 2,
  });
  // Its words are like our own, which may mention people; below are those that are made of what was typed.
  const { refusal: _one, 'refusal of many things': _many, ...messages } = all;
  const refused = troubleMessage('K7P2QX', 'uncertain');
  const team = { ...exampleTeam, name: text };
  const typedHeading = { team, sprint: { ...sprint, name: text, goal: text } };
  const typedCards = statesOf({
    cards: [card(1, { title: text }), card(2, { title: text, ownerIds: [] })],
    facts: [],
  }).map(cardLine);
  const preview = typedAll(importPreview, text);
  const typedFile = { id: 'F1', name: sentFile('files', { id: 'F1', name: text.slice(0, 100) })?.name ?? '' };
  const typedPreview = {
    ...daysOffPreview,
    team,
    name: text,
    days: daysOffPreview.days.map((day) => ({ ...day, titles: [text, text] })),
    leftOut: daysOffPreview.leftOut.map((event) => ({ ...event, title: text })),
  };
  const typedValues = {
    team,
    values: [
      {
        sprint: { sprintId: 's', name: text, startsOn: '2026-11-02', endsOn: '2026-11-13', recordedValue: 1 },
        value: 2,
      },
    ],
    same: 0,
    without: 0,
    problems: [],
    problemsUntold: 0,
    fingerprint: 'x',
  };
  const given = {
    round: 2,
    files: [typedFile],
    texts: [text, '', ''],
  };
  const personal = { records: 3, teamNames: [text, text] };
  return {
    ...messages,
    ...forms,
    done: doneFormView(refused),
    refused: refusedFormView(refused),
    'nothing to drop': dropFormView({ heading: typedHeading, cards: [] }),
    'owner needed': ownerNeededMessage({ heading: typedHeading, cards: typedCards }),
    recorded: dailyPromptMessage(promptOf({ ...typedHeading, cards: typedCards })),
    ...refusalsWith(text),
    import: importFormView({ team, knownSprints: 3 }, 'D1'),
    'import preview': importPreviewView(
      { ...preview, problems: [], warnings: [{ code: 'same-name', sprints: [text] }] },
      given,
      'D1',
    ),
    'import with problems': importPreviewView(
      {
        ...preview,
        badLines: 1,
        problems: [
          { fileName: text, lineNumber: 3, problem: { code: 'no-count', typed: text, column: 'card' } },
        ],
        warnings: [],
      },
      given,
    ),
    imported: sprintsImportedMessage(typedAll(sprintsImported, text)),
    exported: exportedMessage({ ...teamExport, team }),
    'comment on an export': { text: exportComment({ ...teamExport, team }) },
    'forecast question': forecastQuestionMessage({ team, velocities: [], keptNames: [] }),
    'not installed': notInstalledMessage('https://bot.example/install'),
    trouble: troubleMessage('K7P2QX', 'uncertain'),
    'sent twice': sentTwiceMessage(),
    'status shared': statusSharedReply(),
    'advice shared': adviceSharedReply(),
    'retrospective shared': retroSharedReply(),
    'page of a retrospective': retroPageSent(),
    'comment on that page': { text: retroPageComment({ ...typedHeading } as never) },
    'team set up, reply': teamSavedReply(team, false),
    privacy: privacyMessage({
      kinds: [
        { kind: 'memberships', count: 2, from: '2026-11-02', to: '2026-11-04', teamNames: [text, 'b'] },
      ],
      teams: [
        { name: text, retentionMonths: 12 },
        { name: text, retentionMonths: undefined },
      ],
    }),
    'copy of personal data': copySentMessage({ records: 3 } as never),
    'comment on a copy': { text: copyComment({ records: 3 } as never) },
    'values from a file': valuesPreviewView(typedValues, typedFile, 'D1'),
    'bad values in a file': valuesPreviewView(
      {
        ...typedValues,
        values: [],
        problems: [{ fileName: text, lineNumber: 2, problem: { code: 'not-closed', sprint: text } }],
      },
      typedFile,
    ),
    'values recorded': valuesRecordedMessage(typedValues),
    'days off': daysOffFormView({ ...daysOffForm, team }),
    'days off from a file': daysOffPreviewView(typedPreview, { file: typedFile }, 'D1'),
    'no days off from a file': daysOffPreviewView(
      { ...typedPreview, days: [], leftOut: [], regions: [text] },
      { holidaysOf: 'DE-BY' },
    ),
    'days off said': daysOffSaidMessage({
      whose: 'own',
      teams: [team, team],
      today: '2026-11-04',
      spans: [{ from: '2026-12-24', to: '2027-01-02' }],
      share: 0.5,
    }),
    'days off saved': daysOffSavedMessage({ ...daysOffForm, team }),
    'weekdays said': weekdaysSaidMessage({ team, worksOn: [1, 2, 4] }),
    leave: leaveFormView({
      team,
      leftAlone: 2,
      shared: 1,
      isLastFacilitator: true,
      isMember: true,
      isProductOwner: true,
    }),
    end: endFormView({ team, sprintName: text, canBeExported: true, erasedOn: '2027-12-30' }),
    ended: teamEndedReply({ ...team, endedAt: new Date('2026-11-30T12:00:00Z') }),
    resumed: teamResumedReply({ team, sprintName: text }),
    left: teamLeftReply(team),
    'several pulled in': pulledMessage({
      heading: typedHeading,
      cards: typedCards,
      alike: [1, 2],
      summary,
      check: undefined,
    }),
    blocked: blockedMessage({ heading: typedHeading, card: typedCards[0] as CardLine }, text),
    moving: movingMessage({ heading: typedHeading, card: typedCards[0] as CardLine }),
    'growth explained': growthExplainedMessage(),
    'edit unread': changeUnreadMessage('edited'),
    'deletion unread': changeUnreadMessage('deleted'),
    thanks: thanksMessage(),
    'left out': leftOutMessage([text], undefined),
    'left out, a command is near': leftOutMessage([text], text),
    erased: erasedMessage(personal as never),
    erase: eraseFormView('D1'),
  };
}
