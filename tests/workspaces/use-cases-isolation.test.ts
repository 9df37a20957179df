/**
 * Nobody of one workspace reaches anything of another, with any use case and with all the ids that they have got hold
 * of. A use case without a case here fails the types and the first test.
 */
import { sql } from 'drizzle-orm';
import { beforeAll, describe, expect, it } from 'vitest';
import { deliverPost } from '../../src/app/posting/deliver.ts';
import { Refusal } from '../../src/app/refusal.ts';
import type { Place } from '../../src/app/team/place.ts';
import type { Actor } from '../../src/app/team/team.ts';
import { bindUseCases, type UseCases } from '../../src/app/use-cases.ts';
import { refusalWords } from '../../src/words/refusals.ts';
import { type Harness, openHarness, PEOPLE } from '../support/app-harness.ts';
import { typedMeasures } from '../support/typed-measures.ts';
import {
  ANA,
  allRows,
  BEN,
  type Belongings,
  CHANNEL_ID,
  furnish,
  NORTH_MARK,
  rowsAbout,
  SOUTH_MARK,
  TODAY,
} from './two-workspaces.ts';

const NORTH = 'T0NORTH';
const SOUTH = 'T0SOUTH';
const HERE: Place = { channelId: CHANNEL_ID, isDirect: false };
/** On no team, in both workspaces. */
const DAYO = PEOPLE.dayo;
const DIRECT: Place = { channelId: 'D0ANA', isDirect: true };

let harness: Harness;
let north: Belongings;
let south: Belongings;
let useCases: UseCases;
let northBefore: string[];

beforeAll(async () => {
  harness = await openHarness({ now: '2026-10-19T06:00:00Z' });
  for (const [userId, name] of [
    [ANA, 'Ana'],
    [BEN, 'Ben'],
  ] as const) {
    harness.directory.people.set(userId, {
      userId,
      name,
      timeZone: 'Etc/UTC',
      isBot: false,
      isDeactivated: false,
      isGuest: false,
      isOutsider: false,
      isAdmin: false,
    });
  }
  const { deps, database } = harness;
  const surroundings = { deps, database, pass: (to: string) => harness.pass(to) };
  north = await furnish(surroundings, NORTH, NORTH_MARK);
  south = await furnish(surroundings, SOUTH, SOUTH_MARK);
  useCases = bindUseCases(deps);
  northBefore = await rowsAbout(database, north);
}, 120_000);

type Attempt = (use: UseCases, actor: Actor, stolen: Belongings, own: Belongings) => Promise<unknown>;

/**
 * `refused`: with ids of the other workspace; nothing at all may come of it. `own`: with places, which both workspaces
 * have; it may do what it does, in the own workspace.
 */
interface Cases {
  readonly refused: Readonly<Record<string, Attempt>>;
  readonly own: Readonly<Record<string, Attempt>>;
}

/** The same in the channel and in direct messages. */
function inPlaces(attempt: (use: UseCases, actor: Actor, place: Place) => Promise<unknown>): Cases['own'] {
  return {
    'in the channel': (use, actor) => attempt(use, actor, HERE),
    'in direct messages': (use, actor) => attempt(use, actor, DIRECT),
  };
}

const answersFor = (cardId: string) => [{ cardId, left: '1', worked: '', surprise: '', note: '' }];
const RANGE = { about: 'range' } as const;
const MEASURES = typedMeasures({ closesAt: '12:00', scale: '1, 2, 3', retentionMonths: '2' });

const CASES: { readonly [Name in keyof UseCases]: Cases } = {
  addGuests: {
    refused: {},
    own: { 'of the same id': (use, actor) => use.addGuests(actor, { place: HERE, words: `<@${DAYO}>` }) },
  },
  removeGuests: {
    refused: {},
    own: { 'of the same id': (use, actor) => use.removeGuests(actor, { place: HERE, words: `<@${DAYO}>` }) },
  },
  adviceChart: {
    // Draws what it is given and reads nothing.
    refused: {},
    own: {
      'of the own answer': async (use, actor) =>
        use.adviceChart(await use.askAdvice(actor, { place: HERE }, RANGE)),
    },
  },
  answerForm: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.answerForm(actor, { sprintId }),
      'the sprint on a day': (use, actor, { sprintId }) => use.answerForm(actor, { sprintId, day: TODAY }),
      'the sprint from the own channel': (use, actor, { sprintId }) =>
        use.answerForm(actor, { sprintId, place: HERE }),
    },
    own: inPlaces((use, actor, place) => use.answerForm(actor, { place })),
  },
  answerInWords: {
    refused: {
      'the key of a card': (use, actor, { cardKey }) =>
        use.answerInWords(actor, { text: `${cardKey}: 1`, place: HERE, numbering: 'sprint' }),
    },
    own: {
      'under the prompt': (use, actor, { prompt }) =>
        use.answerInWords(actor, {
          text: '3',
          place: { channelId: prompt.channelId, isDirect: true },
          threadTs: prompt.ts,
        }),
      'in the channel': (use, actor) => use.answerInWords(actor, { text: '3', place: HERE }),
    },
  },
  answersForCard: {
    refused: {},
    own: inPlaces((use, actor, place) => use.answersForCard(actor, { text: 'cancel 2', place })),
  },
  askAdvice: {
    refused: Object.fromEntries(
      [
        { about: 'odds' } as const,
        RANGE,
        { about: 'history' } as const,
        { about: 'forecast', backlogPoints: 20, growthPoints: 0 } as const,
      ].map((question): [string, Attempt] => [
        `the team, about ${question.about}`,
        (use, actor, { teamId }) => use.askAdvice(actor, { teamId }, question),
      ]),
    ),
    own: inPlaces((use, actor, place) => use.askAdvice(actor, { place }, { about: 'history' })),
  },
  baselineForm: { refused: {}, own: inPlaces((use, actor, place) => use.baselineForm(actor, place)) },
  beginWelcome: { refused: {}, own: { 'of the same id': (use, actor) => use.beginWelcome(actor) } },
  cancelSprint: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.cancelSprint(actor, { sprintId, reason: 'stolen' }),
    },
    own: {},
  },
  cardToEdit: {
    refused: {
      'the key of a card': (use, actor, { cardKey }) =>
        use.cardToEdit(actor, { place: HERE, reference: cardKey }),
    },
    own: inPlaces((use, actor, place) => use.cardToEdit(actor, { place, reference: '1' })),
  },
  closeSprint: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.closeSprint(actor, { sprintId }) },
    own: {},
  },
  chooseOwnPrompt: {
    refused: {},
    own: {
      'the own time': (use, actor) => use.chooseOwnPrompt(actor, { at: '10:30', timeZone: 'Europe/Lisbon' }),
    },
  },
  ownPromptForm: { refused: {}, own: { 'the own time': (use, actor) => use.ownPromptForm(actor) } },
  commitPlan: {
    refused: { 'the team, with its draft': (use, actor, { teamId }) => use.commitPlan(actor, { teamId }) },
    own: {},
  },
  daysOffForm: { refused: {}, own: inPlaces((use, actor, place) => use.daysOffForm(actor, place)) },
  dropCard: {
    refused: {
      'the sprint': (use, actor, { sprintId }) =>
        use.dropCard(actor, { sprintId, reference: '1', reason: 'stolen' }),
      'the key of a card': (use, actor, { cardKey }) =>
        use.dropCard(actor, { place: HERE, reference: cardKey, reason: 'stolen' }),
      'the id of a card': (use, actor, { cardIds }) =>
        use.dropCard(actor, { place: HERE, reference: cardIds[0] ?? '', reason: 'stolen' }),
    },
    own: {},
  },
  editCard: {
    refused: {
      'the sprint': (use, actor, { sprintId }) =>
        use.editCard(actor, { sprintId, reference: '1', edit: { title: 'stolen' } }),
      'the key of a card': (use, actor, { cardKey }) =>
        use.editCard(actor, { place: HERE, reference: cardKey, edit: { title: 'stolen' } }),
    },
    own: {},
  },
  editSprint: {
    refused: {
      'the sprint': (use, actor, { sprintId }) =>
        use.editSprint(actor, { sprintId, edit: { goal: 'stolen' } }),
    },
    own: {},
  },
  erasePerson: { refused: {}, own: {} },
  exportSprints: { refused: {}, own: inPlaces((use, actor, place) => use.exportSprints(actor, place)) },
  forecastForm: {
    refused: { 'the team': (use, actor, { teamId }) => use.forecastForm(actor, { teamId }) },
    own: inPlaces((use, actor, place) => use.forecastForm(actor, { place })),
  },
  assignCards: {
    refused: {
      'the key of a card': (use, actor, { cardKey }) =>
        use.assignCards(actor, { place: HERE, words: `${cardKey} <@${BEN}>` }),
    },
    own: {},
  },
  releaseCards: {
    refused: {
      'the key of a card': (use, actor, { cardKey }) =>
        use.releaseCards(actor, { place: HERE, words: cardKey }),
    },
    own: {},
  },
  giveCards: {
    refused: {
      'the key of a card': (use, actor, { cardKey }) =>
        use.giveCards(actor, { place: HERE, words: `${cardKey} <@${BEN}>` }),
    },
    own: {},
  },
  importDaysOff: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.importDaysOff(actor, {
          teamId,
          whose: 'own',
          source: { fileName: 'off.ics', text: 'BEGIN:VCALENDAR\r\nEND:VCALENDAR' },
          takesFree: false,
          seen: undefined,
        }),
    },
    own: {},
  },
  importValues: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.importValues(actor, {
          teamId,
          file: { fileName: 'values.csv', text: 'sprint,value' },
          seen: undefined,
        }),
    },
    own: {},
  },
  importForm: { refused: {}, own: inPlaces((use, actor, place) => use.importForm(actor, place)) },
  importSprints: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.importSprints(actor, { teamId, files: [{ fileName: 'x', text: 'name' }], seen: undefined }),
    },
    own: {},
  },
  removalForm: { refused: {}, own: inPlaces((use, actor, place) => use.removalForm(actor, place)) },
  previewTicked: {
    refused: { 'the team, with its draft': (use, actor, { teamId }) => use.previewTicked(actor, { teamId }) },
    own: {},
  },
  previewRemoval: {
    refused: {
      'the team': (use, actor, { teamId, closedSprintId }) =>
        use.previewRemoval(actor, { teamId, sprintId: closedSprintId }),
      'a sprint, for the own team': (use, actor, { closedSprintId }, { teamId }) =>
        use.previewRemoval(actor, { teamId, sprintId: closedSprintId }),
    },
    own: {},
  },
  removeImport: {
    refused: {
      'the team': (use, actor, { teamId, closedSprintId }) =>
        use.removeImport(actor, { teamId, sprintId: closedSprintId }),
      'a sprint, for the own team': (use, actor, { closedSprintId }, { teamId }) =>
        use.removeImport(actor, { teamId, sprintId: closedSprintId }),
    },
    own: {},
  },
  endForm: { refused: {}, own: inPlaces((use, actor, place) => use.endForm(actor, place)) },
  endTeam: {
    refused: { 'the team': (use, actor, { teamId }) => use.endTeam(actor, { teamId }) },
    own: {},
  },
  resumeTeam: { refused: {}, own: inPlaces((use, actor, place) => use.resumeTeam(actor, place)) },
  leaveForm: {
    refused: {},
    own: inPlaces((use, actor, place) => use.leaveForm(actor, { place, teamName: '' })),
  },
  leaveTeam: {
    refused: { 'the team': (use, actor, { teamId }) => use.leaveTeam(actor, { teamId }) },
    own: {},
  },
  listCards: { refused: {}, own: inPlaces((use, actor, place) => use.listCards(actor, place)) },
  measuresForm: { refused: {}, own: inPlaces((use, actor, place) => use.measuresForm(actor, place)) },
  moveTeam: {
    refused: {},
    own: { 'to where it is': (use, actor) => use.moveTeam(actor, { place: HERE, teamName: '' }) },
  },
  endExperiment: {
    refused: {},
    own: inPlaces((use, actor, place) => use.endExperiment(actor, { place, reference: '', outcome: 'drop' })),
  },
  jointForecast: {
    refused: {
      'the team': (use, actor, { teamId }) => use.jointForecast(actor, { teamId, reference: '1' }),
      'a part of the same name': (use, actor) =>
        use.jointForecast(actor, { place: HERE, reference: `${NORTH_MARK} lights` }),
    },
    own: {},
  },
  bodyForm: {
    refused: {
      'the team': (use, actor, { teamId }) => use.bodyForm(actor, { teamId }),
      'the body of work': (use, actor, { bodyId }) => use.bodyForm(actor, { bodyId }),
    },
    own: inPlaces((use, actor, place) => use.bodyForm(actor, { place })),
  },
  keepBody: {
    refused: {
      'the team': (use, actor, { teamId }) => use.keepBody(actor, { teamId, name: 'stolen', leftPoints: 1 }),
      'the body of work': (use, actor, { bodyId }) => use.keepBody(actor, { bodyId, leftPoints: 1 }),
    },
    own: inPlaces((use, actor, place) => use.keepBody(actor, { place, name: '1', leftPoints: 70 })),
  },
  endBody: {
    refused: {
      'the body of work': (use, actor, { bodyId }) => use.endBody(actor, { bodyId, how: 'removed' }),
      'the body of work, by its name': (use, actor) =>
        use.endBody(actor, { place: HERE, reference: `${NORTH_MARK} lights`, how: 'removed' }),
    },
    own: {},
  },
  renameBody: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.renameBody(actor, { teamId, reference: '1', name: 'stolen' }),
    },
    own: inPlaces((use, actor, place) => use.renameBody(actor, { place, reference: '1', name: 'Beacons' })),
  },
  orderBodies: {
    refused: {
      'the team': (use, actor, { teamId }) => use.orderBodies(actor, { teamId, references: ['1'] }),
    },
    own: inPlaces((use, actor, place) => use.orderBodies(actor, { place, references: ['1'] })),
  },
  retroSheet: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.retroSheet(actor, { sprintId }),
      'the name of a sprint': (use, actor) =>
        use.retroSheet(actor, { place: HERE, sprintName: `${NORTH_MARK} October` }),
    },
    own: inPlaces((use, actor, place) => use.retroSheet(actor, { place, sprintName: '' })),
  },
  shareRetro: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.shareRetro(actor, { sprintId }) },
    own: {},
  },
  listExperiments: { refused: {}, own: inPlaces((use, actor, place) => use.listExperiments(actor, place)) },
  tryExperiment: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.tryExperiment(actor, { teamId, text: 'stolen', ratio: 'keptShare', direction: 'up' }),
    },
    own: {},
  },
  tryForm: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.tryForm(actor, { sprintId }) },
    own: inPlaces((use, actor, place) => use.tryForm(actor, { place })),
  },
  goalForm: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.goalForm(actor, { sprintId }) },
    own: inPlaces((use, actor, place) => use.goalForm(actor, { place })),
  },
  digestForm: { refused: {}, own: inPlaces((use, actor, place) => use.digestForm(actor, place)) },
  directVerdicts: {
    refused: { 'the team': (use, actor, { teamId }) => use.directVerdicts(actor, { teamId }) },
    own: inPlaces((use, actor, place) => use.directVerdicts(actor, { place })),
  },
  chooseDirectVerdicts: {
    refused: {
      'the team': (use, actor, { teamId }) => use.chooseDirectVerdicts(actor, { teamId, isWanted: true }),
    },
    own: {},
  },
  setDigest: {
    refused: { 'the team': (use, actor, { teamId }) => use.setDigest(actor, { teamId, digestAt: '08:30' }) },
    own: {},
  },
  nameBaseline: {
    refused: {
      'the team': (use, actor, { teamId }) => use.nameBaseline(actor, { teamId, sprint: 'first' }),
      'a sprint, for the own team': (use, actor, { closedSprintId }, { teamId }) =>
        use.nameBaseline(actor, { teamId, sprint: { sprintId: closedSprintId } }),
      'the name of a sprint': (use, actor) =>
        use.nameBaseline(actor, { place: HERE, sprint: { sprintName: `${NORTH_MARK} October` } }),
    },
    own: {},
  },
  openHomePage: { refused: {}, own: { 'of the same id': (use, actor) => use.openHomePage(actor) } },
  overview: {
    refused: {},
    own: inPlaces((use, actor, place) => use.overview(actor, place)),
  },
  personalCopy: { refused: {}, own: { 'of the same id': (use, actor) => use.personalCopy(actor) } },
  planForm: { refused: {}, own: inPlaces((use, actor, place) => use.planForm(actor, place)) },
  previewPlan: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.previewPlan(actor, {
          teamId,
          name: 'stolen',
          goal: '',
          startsOn: '2026-11-16',
          endsOn: '2026-11-20',
          closesAt: '17:00',
          awayDays: '',
          cards: 'stolen, 3',
        }),
    },
    own: {},
  },
  privacyOverview: { refused: {}, own: { 'of the same id': (use, actor) => use.privacyOverview(actor) } },
  pullForm: { refused: {}, own: inPlaces((use, actor, place) => use.pullForm(actor, place)) },
  pullCards: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.pullCards(actor, { sprintId, text: 'stolen, 3' }),
    },
    own: inPlaces((use, actor, place) =>
      use.pullCards(actor, { place, text: `own ${place.channelId}, 1\nBuoy, 2` }),
    ),
  },
  readCardFile: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.readCardFile(actor, { teamId, file: { fileName: 'x', text: 'title,points' } }),
    },
    own: {},
  },
  recordAnswers: {
    refused: {
      'the sprint and a card': (use, actor, { sprintId, cardIds }) =>
        use.recordAnswers(actor, { sprintId, day: TODAY, answers: answersFor(cardIds[0] ?? '') }),
      'a card, in the own sprint': (use, actor, { cardIds }, { sprintId }) =>
        use.recordAnswers(actor, { sprintId, day: TODAY, answers: answersFor(cardIds[0] ?? '') }),
    },
    own: {
      'with a card of the other to take': (use, actor, { cardIds }, { sprintId }) =>
        use.recordAnswers(actor, { sprintId, day: TODAY, answers: [], takeCardIds: [...cardIds] }),
    },
  },
  recordAway: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.recordAway(actor, { sprintId, day: TODAY }) },
    own: {},
  },
  recordGoal: {
    refused: {
      'the sprint': (use, actor, { sprintId }) =>
        use.recordGoal(actor, { sprintId, met: 'yes', note: 'stolen' }),
    },
    own: inPlaces((use, actor, place) => use.recordGoal(actor, { place, line: 'yes' })),
  },
  recordUnchanged: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.recordUnchanged(actor, { sprintId, day: TODAY }),
    },
    own: {},
  },
  recordValue: {
    refused: {
      'the team': (use, actor, { teamId, closedSprintId }) =>
        use.recordValue(actor, { teamId, sprint: { sprintId: closedSprintId }, value: '1' }),
      'a sprint, for the own team': (use, actor, { closedSprintId }, { teamId }) =>
        use.recordValue(actor, { teamId, sprint: { sprintId: closedSprintId }, value: '1' }),
    },
    own: {},
  },
  recordValueLine: {
    refused: {
      'the name of a sprint': (use, actor) =>
        use.recordValueLine(actor, { place: HERE, line: `${NORTH_MARK} October: 1` }),
    },
    own: {},
  },
  refreshHomePage: { refused: {}, own: { 'of the same id': (use, actor) => use.refreshHomePage(actor) } },
  blockCard: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.blockCard(actor, { sprintId, reference: '1', on: 'x' }),
      'the key of a card': (use, actor, { cardKey }) =>
        use.blockCard(actor, { place: HERE, reference: cardKey, on: 'x' }),
    },
    own: {},
  },
  unblockCard: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.unblockCard(actor, { sprintId, reference: '1' }),
      'the key of a card': (use, actor, { cardKey }) =>
        use.unblockCard(actor, { place: HERE, reference: cardKey }),
    },
    own: {},
  },
  reopenCard: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.reopenCard(actor, { sprintId, reference: '1' }),
      'the key of a card': (use, actor, { cardKey }) =>
        use.reopenCard(actor, { place: HERE, reference: cardKey }),
    },
    own: {},
  },
  reopenSprint: {
    refused: {
      'the closed sprint': (use, actor, { closedSprintId }) =>
        use.reopenSprint(actor, { sprintId: closedSprintId }),
    },
    own: {},
  },
  saveDaysOff: {
    refused: {
      'the team': (use, actor, { teamId }) =>
        use.saveDaysOff(actor, {
          teamId,
          whose: 'team',
          from: '2026-12-24',
          to: '',
          isHalf: false,
          takeBack: [],
          weekdays: undefined,
        }),
    },
    own: {},
  },
  sayDaysOff: {
    refused: {},
    own: inPlaces((use, actor, place) => use.sayDaysOff(actor, { place, words: '24 Dec' })),
  },
  sayWeekdays: {
    refused: {},
    own: inPlaces((use, actor, place) => use.sayWeekdays(actor, { place, words: 'mon-thu' })),
  },
  setMeasures: {
    refused: { 'the team': (use, actor, { teamId }) => use.setMeasures(actor, { teamId, ...MEASURES }) },
    own: {},
  },
  setUpTeam: {
    refused: {},
    own: {
      'in the channel of the same id': (use, actor) =>
        use.setUpTeam(actor, {
          channelId: CHANNEL_ID,
          name: `${SOUTH_MARK} tugs`,
          timeZone: 'Etc/UTC',
          promptAt: '09:00',
          workingDays: [1, 2, 3, 4, 5],
          memberIds: [ANA, BEN],
          facilitatorIds: [ANA],
          productOwnerId: ANA,
        }),
    },
  },
  setupForm: { refused: {}, own: { 'in the channel': (use, actor) => use.setupForm(actor, HERE) } },
  shareAdvice: {
    refused: { 'the team': (use, actor, { teamId }) => use.shareAdvice(actor, { teamId, question: RANGE }) },
    own: {},
  },
  askWhatIf: {
    refused: {
      'the sprint': (use, actor, { sprintId }) =>
        use.askWhatIf(actor, { sprintId, without: '', awayDays: '1', morePoints: '' }),
    },
    own: {},
  },
  whatIfForm: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.whatIfForm(actor, { sprintId }) },
    own: {},
  },
  shareStatus: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.shareStatus(actor, { sprintId }) },
    own: {},
  },
  sprintToEnd: {
    refused: {},
    own: inPlaces((use, actor, place) => use.sprintToEnd(actor, { place, how: 'close' })),
  },
  sprintToEdit: { refused: {}, own: inPlaces((use, actor, place) => use.sprintToEdit(actor, place)) },
  sprintStatus: { refused: {}, own: inPlaces((use, actor, place) => use.sprintStatus(actor, place)) },
  statusBurndown: {
    // Draws what it is given and reads nothing.
    refused: {},
    own: {
      'of the own status': async (use, actor) =>
        use.statusBurndown(actor, await use.sprintStatus(actor, HERE)),
    },
  },
  statusChart: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.statusChart(actor, sprintId),
      'the closed sprint': (use, actor, { closedSprintId }) => use.statusChart(actor, closedSprintId),
    },
    own: {},
  },
  takeBackWelcome: { refused: {}, own: { 'of the same id': (use, actor) => use.takeBackWelcome(actor) } },
  takeCards: {
    refused: {
      'the key of a card': (use, actor, { cardKey }) => use.takeCards(actor, { place: HERE, words: cardKey }),
    },
    own: {},
  },
  undropCard: {
    refused: {
      'the sprint': (use, actor, { sprintId }) => use.undropCard(actor, { sprintId, reference: '1' }),
      'the key of a card': (use, actor, { cardKey }) =>
        use.undropCard(actor, { place: HERE, reference: cardKey }),
    },
    own: {},
  },
  valueForm: {
    refused: { 'the sprint': (use, actor, { sprintId }) => use.valueForm(actor, { sprintId }) },
    own: inPlaces((use, actor, place) => use.valueForm(actor, { place })),
  },
};

const attempts = (kind: keyof Cases): [useCase: string, what: string, attempt: Attempt][] =>
  Object.entries(CASES).flatMap(([name, cases]) =>
    Object.entries(cases[kind]).map(([what, attempt]): [string, string, Attempt] => [name, what, attempt]),
  );

/** Who tries: the same id as North's facilitator, in a workspace with a team of its own, in one without, in none. */
const INTRUDERS: readonly [who: string, workspaceId: string][] = [
  ['the same id in another workspace', SOUTH],
  ['the same id in a workspace without a team', 'T0EMPTY'],
  ['the same id in a workspace whose name begins alike', 'T0NORTH1'],
  ['the same id with a wildcard for a workspace', '%'],
  ['the same id in a workspace of nearly the same name', 't0north'],
];

/** All that is in it, files included. */
function textOf(value: unknown): string {
  // A buffer has been turned into a list of numbers by the time that it comes as `part`.
  function readable(this: Readonly<Record<string, unknown>>, key: string, part: unknown): unknown {
    const raw = this[key];
    return raw instanceof Uint8Array ? Buffer.from(raw).toString('utf8') : part;
  }
  return JSON.stringify(value, readable) ?? '';
}

async function outcomeOf(work: Promise<unknown>): Promise<{ value: unknown } | { refusal: Refusal }> {
  try {
    return { value: await work };
  } catch (error) {
    if (error instanceof Refusal) return { refusal: error };
    throw error;
  }
}

describe('every use case', () => {
  it('has its cases here', () => {
    expect(Object.keys(CASES).toSorted()).toEqual(Object.keys(useCases).toSorted());
    expect(attempts('refused').length + attempts('own').length).toBeGreaterThan(60);
  });

  it('works with the very same ids for those to whom they belong, so that the refusals below mean something', async () => {
    const actor = { workspaceId: NORTH, userId: ANA };
    expect(await useCases.statusChart(actor, north.sprintId)).toBeDefined();
    expect(textOf(await useCases.answerForm(actor, { sprintId: north.sprintId }))).toContain(NORTH_MARK);
    expect(textOf(await useCases.askAdvice(actor, { teamId: north.teamId }, RANGE))).toContain(NORTH_MARK);
  });
});

describe.each(INTRUDERS)('%s', (_who, workspaceId) => {
  const actor: Actor = { workspaceId, userId: ANA };

  it.each(attempts('refused'))('is refused: %s with %s', async (_useCase, _what, attempt) => {
    const before = await allRows(harness.database);
    const outcome = await outcomeOf(attempt(useCases, actor, north, south));
    if (!('refusal' in outcome)) throw new Error(`done: ${JSON.stringify(outcome.value)}`);
    const { what, fix } = refusalWords(outcome.refusal);
    const told = `${what} ${fix}`.replaceAll(`${NORTH_MARK} October`, '').replaceAll(north.cardKey, '');
    expect(told).not.toContain(NORTH_MARK);
    expect(await allRows(harness.database)).toEqual(before);
  });

  it.each(attempts('own'))(
    'gets or changes nothing of the other: %s %s',
    async (_useCase, _what, attempt) => {
      const outcome = await outcomeOf(attempt(useCases, actor, north, south));
      const told = 'refusal' in outcome ? outcome.refusal.details : outcome.value;
      expect(textOf(told)).not.toContain(NORTH_MARK);
      expect(await rowsAbout(harness.database, north)).toEqual(northBefore);
    },
  );
});

describe('the erasure of a person', () => {
  it('erases nobody of the same id in another workspace', async () => {
    await outcomeOf(useCases.erasePerson({ workspaceId: SOUTH, userId: BEN }));
    expect(await rowsAbout(harness.database, north)).toEqual(northBefore);
    expect(textOf(await useCases.personalCopy({ workspaceId: NORTH, userId: BEN }))).toContain(NORTH_MARK);
  });
});

describe('a post', () => {
  it('that names what belongs to another workspace is not sent, for every kind of post', async () => {
    const { deps, database, messenger } = harness;
    const byUserId = ANA;
    const { sprintId, teamId } = north;
    const about = { sprintId, userId: ANA, day: TODAY };
    const subjects = [
      { kind: 'daily-prompt', ...about },
      { kind: 'team-set-up', teamId, byUserId },
      { kind: 'team-changed', teamId, byUserId, reason: '[]' },
      { kind: 'team-moved', teamId, byUserId },
      { kind: 'team-ended', teamId, byUserId },
      { kind: 'team-idle', teamId },
      { kind: 'team-resumed', teamId, byUserId },
      { kind: 'import-removed', teamId, byUserId, reason: 'x' },
      { kind: 'plan', sprintId, byUserId },
      { kind: 'verdict', sprintId: north.closedSprintId },
      { kind: 'shared-status', sprintId, byUserId, on: TODAY },
      { kind: 'shared-retro', sprintId, byUserId },
      { kind: 'shared-advice', teamId, byUserId, on: TODAY, question: RANGE },
      { kind: 'cancelled', sprintId: north.closedSprintId, byUserId, reason: 'x' },
    ] as const;
    const posts = subjects.map((subject, n) => ({
      id: `stolen-${n}`,
      workspaceId: SOUTH,
      recipient: { channelId: CHANNEL_ID },
      subject,
    }));
    await deps.store.transaction((tx) => tx.write.posts.add(posts));
    const sentBefore = messenger.messages.length;
    for (const { id } of posts) expect(await deliverPost(deps, id)).toEqual({ done: true });
    expect(messenger.messages.length).toBe(sentBefore);
    for (const { id } of posts) {
      expect((await deps.store.read((read) => read.postById(id)))?.state).toBe('skipped');
    }
    await database.session.execute(sql`delete from loadline.posts where id like 'stolen-%'`);
  });
});
