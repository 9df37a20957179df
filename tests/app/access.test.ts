import { beforeAll, describe, expect, test } from 'vitest';
import { askAdvice, forecastForm, shareAdvice } from '../../src/app/advice/ask-advice.ts';
import { answerForm } from '../../src/app/answering/answer-form.ts';
import { answerInWords } from '../../src/app/answering/answer-in-words.ts';
import { recordAnswers, recordAway, recordUnchanged } from '../../src/app/answering/record-answers.ts';
import { jointForecast } from '../../src/app/bodies/joint-forecast.ts';
import { bodyForm, endBody, keepBody, orderBodies, renameBody } from '../../src/app/bodies/keep-bodies.ts';
import {
  blockCard,
  dropCard,
  listCards,
  reopenCard,
  unblockCard,
  undropCard,
} from '../../src/app/cards/change-cards.ts';
import { assignCards, giveCards, releaseCards, takeCards } from '../../src/app/cards/change-owners.ts';
import { pullCards, pullForm } from '../../src/app/cards/pull-cards.ts';
import { chooseDirectVerdicts, directVerdicts } from '../../src/app/closing/direct-verdicts.ts';
import { cancelSprint, closeSprint, reopenSprint, sprintToEnd } from '../../src/app/closing/end-sprint.ts';
import { goalForm, recordGoal } from '../../src/app/closing/record-goal.ts';
import { endExperiment, listExperiments } from '../../src/app/experiments/end-experiment.ts';
import { tryExperiment, tryForm } from '../../src/app/experiments/try-experiment.ts';
import { exportSprints } from '../../src/app/export/export-sprints.ts';
import { baselineForm, nameBaseline } from '../../src/app/history/name-baseline.ts';
import { recordValue, recordValueLine, valueForm } from '../../src/app/history/record-value.ts';
import { importForm, importSprints } from '../../src/app/import/import-sprints.ts';
import { importValues } from '../../src/app/import/import-values.ts';
import { previewRemoval, removalForm, removeImport } from '../../src/app/import/remove-import.ts';
import { readCardFile } from '../../src/app/planning/card-file.ts';
import { planForm } from '../../src/app/planning/plan-form.ts';
import { commitPlan, previewPlan, previewTicked } from '../../src/app/planning/plan-sprint.ts';
import type { AppDependencies } from '../../src/app/ports/app-dependencies.ts';
import { erasePerson } from '../../src/app/privacy/erase-person.ts';
import { personalCopy, privacyOverview } from '../../src/app/privacy/privacy-overview.ts';
import { Refusal } from '../../src/app/refusal.ts';
import { retroSheet, shareRetro } from '../../src/app/retro/retro-sheet.ts';
import { endForm, endTeam } from '../../src/app/team/end-team.ts';
import { addGuests, removeGuests } from '../../src/app/team/guests.ts';
import type { Place } from '../../src/app/team/place.ts';
import { measuresForm, setMeasures } from '../../src/app/team/set-measures.ts';
import type { SetupInput } from '../../src/app/team/set-up-team.ts';
import { setUpTeam, setupForm } from '../../src/app/team/set-up-team.ts';
import type { Actor } from '../../src/app/team/team.ts';
import { overview } from '../../src/app/watching/overview.ts';
import { digestForm, setDigest } from '../../src/app/watching/set-digest.ts';
import { shareStatus, sprintStatus, statusChart } from '../../src/app/watching/sprint-status.ts';
import { askWhatIf, whatIfForm } from '../../src/app/watching/what-if.ts';
import { actorOf, CHANNEL, type Harness, openHarness, PEOPLE } from '../support/app-harness.ts';
import { typedMeasures } from '../support/typed-measures.ts';

/** Real ids, as somebody might have guessed or overheard them. */
interface Known {
  readonly teamId: string;
  readonly sprintId: string;
  readonly cardId: string;
  readonly place: Place;
  readonly threadTs: string;
}

type Attempt = (deps: AppDependencies, actor: Actor, known: Known) => Promise<unknown>;

const DAY = '2026-11-02';
const PLAN = {
  name: 'x',
  goal: '',
  startsOn: '2026-12-01',
  endsOn: '2026-12-04',
  closesAt: '17:00',
  awayDays: '',
  cards: '',
};
const SETUP: Omit<SetupInput, 'channelId'> = {
  name: 'Ours now',
  timeZone: 'UTC',
  promptAt: '09:00',
  workingDays: [1],
  memberIds: [PEOPLE.dayo],
  facilitatorIds: [PEOPLE.dayo],
  productOwnerId: undefined,
};
const MEASURES = typedMeasures();

const PAST = {
  fileName: 'sprints.csv',
  text: 'name,first day,last day,commitment\nHarbour 1,2026-01-05,2026-01-16,20',
};

/** Use cases of the team's channel, by place. */
const BY_PLACE: Record<string, Attempt> = {
  setupForm: (deps, actor, { place }) => setupForm(deps, actor, place),
  setUpTeam: (deps, actor, { place }) => setUpTeam(deps, actor, { channelId: place.channelId, ...SETUP }),
  measuresForm: (deps, actor, { place }) => measuresForm(deps, actor, place),
  planForm: (deps, actor, { place }) => planForm(deps, actor, place),
  'answerForm by place': (deps, actor, { place }) => answerForm(deps, actor, { place }),
  answerInWords: (deps, actor, { place }) => answerInWords(deps, actor, { text: '1', place }),
  'answerInWords in the thread of a prompt': (deps, actor, { threadTs }) =>
    answerInWords(deps, actor, {
      text: '1',
      place: { channelId: `D-${PEOPLE.ben}`, isDirect: true },
      threadTs,
    }),
  pullForm: (deps, actor, { place }) => pullForm(deps, actor, place),
  pullCards: (deps, actor, { place }) => pullCards(deps, actor, { place, text: 'Fog horn, 3' }),
  listCards: (deps, actor, { place }) => listCards(deps, actor, place),
  'sprintToEnd to close': (deps, actor, { place }) => sprintToEnd(deps, actor, { place, how: 'close' }),
  'sprintToEnd to cancel': (deps, actor, { place }) => sprintToEnd(deps, actor, { place, how: 'cancel' }),
  sprintStatus: (deps, actor, { place }) => sprintStatus(deps, actor, place),
  'dropCard by place': (deps, actor, { place }) =>
    dropCard(deps, actor, { place, reference: '1', reason: 'x' }),
  'takeCards by place': (deps, actor, { place }) => takeCards(deps, actor, { place, words: '1' }),
  'giveCards by place': (deps, actor, { place }) => giveCards(deps, actor, { place, words: '1 @ana' }),
  'releaseCards by place': (deps, actor, { place }) => releaseCards(deps, actor, { place, words: '1' }),
  'addGuests by place': (deps, actor, { place }) =>
    addGuests(deps, actor, { place, words: `<@${PEOPLE.dayo}>` }),
  'removeGuests by place': (deps, actor, { place }) => removeGuests(deps, actor, { place, words: '@dayo' }),
  'assignCards by place': (deps, actor, { place }) => assignCards(deps, actor, { place, words: '1 @ana' }),
  'undropCard by place': (deps, actor, { place }) => undropCard(deps, actor, { place, reference: '1' }),
  'reopenCard by place': (deps, actor, { place }) => reopenCard(deps, actor, { place, reference: '1' }),
  'blockCard by place': (deps, actor, { place }) =>
    blockCard(deps, actor, { place, reference: '1', on: 'x' }),
  'unblockCard by place': (deps, actor, { place }) => unblockCard(deps, actor, { place, reference: '1' }),
  endForm: (deps, actor, { place }) => endForm(deps, actor, place),
  removalForm: (deps, actor, { place }) => removalForm(deps, actor, place),
  importForm: (deps, actor, { place }) => importForm(deps, actor, place),
  exportSprints: (deps, actor, { place }) => exportSprints(deps, actor, place),
  'closeSprint by place': (deps, actor, { place }) => closeSprint(deps, actor, { place }),
  'cancelSprint by place': (deps, actor, { place }) => cancelSprint(deps, actor, { place, reason: '' }),
  'reopenSprint by place': (deps, actor, { place }) => reopenSprint(deps, actor, { place }),
  'askAdvice by place': (deps, actor, { place }) => askAdvice(deps, actor, { place }, { about: 'history' }),
  forecastForm: (deps, actor, { place }) => forecastForm(deps, actor, { place }),
  bodyForm: (deps, actor, { place }) => bodyForm(deps, actor, { place }),
  'keepBody by place': (deps, actor, { place }) => keepBody(deps, actor, { place, name: '', leftPoints: 5 }),
  endBody: (deps, actor, { place }) => endBody(deps, actor, { place, reference: '1', how: 'removed' }),
  renameBody: (deps, actor, { place }) => renameBody(deps, actor, { place, reference: '1', name: 'Beacons' }),
  orderBodies: (deps, actor, { place }) => orderBodies(deps, actor, { place, references: ['1'] }),
  jointForecast: (deps, actor, { place }) => jointForecast(deps, actor, { place, reference: '1' }),
  'valueForm by place': (deps, actor, { place }) => valueForm(deps, actor, { place }),
  recordValueLine: (deps, actor, { place }) => recordValueLine(deps, actor, { place, line: '5' }),
  'recordValue by place': (deps, actor, { place }) =>
    recordValue(deps, actor, { place, value: '5', sprint: undefined }),
  baselineForm: (deps, actor, { place }) => baselineForm(deps, actor, place),
  'tryForm by place': (deps, actor, { place }) => tryForm(deps, actor, { place }),
  'endExperiment by place': (deps, actor, { place }) =>
    endExperiment(deps, actor, { place, reference: '1', outcome: 'drop' }),
  'retroSheet by place': (deps, actor, { place }) => retroSheet(deps, actor, { place, sprintName: '' }),
  listExperiments: (deps, actor, { place }) => listExperiments(deps, actor, place),
  'goalForm by place': (deps, actor, { place }) => goalForm(deps, actor, { place }),
  'recordGoal by place': (deps, actor, { place }) => recordGoal(deps, actor, { place, line: 'yes' }),
  'directVerdicts by place': (deps, actor, { place }) => directVerdicts(deps, actor, { place }),
  'chooseDirectVerdicts by place': (deps, actor, { place }) =>
    chooseDirectVerdicts(deps, actor, { place, isWanted: false }),
  digestForm: (deps, actor, { place }) => digestForm(deps, actor, place),
  'setDigest by place': (deps, actor, { place }) => setDigest(deps, actor, { place, digestAt: '' }),
  'nameBaseline by place': (deps, actor, { place }) => nameBaseline(deps, actor, { place, sprint: 'first' }),
};

/** Use cases by an id, which a button carried. */
const BY_ID: Record<string, Attempt> = {
  setMeasures: (deps, actor, { teamId }) => setMeasures(deps, actor, { teamId, ...MEASURES }),
  previewPlan: (deps, actor, { teamId }) => previewPlan(deps, actor, { teamId, ...PLAN }),
  previewTicked: (deps, actor, { teamId }) => previewTicked(deps, actor, { teamId, ticked: ['1'] }),
  readCardFile: (deps, actor, { teamId }) =>
    readCardFile(deps, actor, {
      teamId,
      plan: { teamId, ...PLAN },
      file: { fileName: 'board.csv', text: 'Title,Points\nFog horn,3' },
    }),
  commitPlan: (deps, actor, { teamId }) => commitPlan(deps, actor, { teamId }),
  answerForm: (deps, actor, { sprintId }) => answerForm(deps, actor, { sprintId }),
  recordAnswers: (deps, actor, { sprintId, cardId }) =>
    recordAnswers(deps, actor, {
      sprintId,
      day: DAY,
      answers: [{ cardId, left: '0', worked: '', surprise: '', note: '' }],
      takeCardIds: [cardId],
    }),
  recordUnchanged: (deps, actor, { sprintId }) => recordUnchanged(deps, actor, { sprintId, day: DAY }),
  recordAway: (deps, actor, { sprintId }) => recordAway(deps, actor, { sprintId, day: DAY }),
  'pullCards by sprint': (deps, actor, { sprintId }) =>
    pullCards(deps, actor, { sprintId, text: 'Fog horn, 3' }),
  dropCard: (deps, actor, { sprintId }) => dropCard(deps, actor, { sprintId, reference: '1', reason: 'x' }),
  undropCard: (deps, actor, { sprintId }) => undropCard(deps, actor, { sprintId, reference: '1' }),
  reopenCard: (deps, actor, { sprintId }) => reopenCard(deps, actor, { sprintId, reference: '1' }),
  blockCard: (deps, actor, { sprintId }) => blockCard(deps, actor, { sprintId, reference: '1', on: 'x' }),
  unblockCard: (deps, actor, { sprintId }) => unblockCard(deps, actor, { sprintId, reference: '1' }),
  statusChart: (deps, actor, { sprintId }) => statusChart(deps, actor, sprintId),
  shareStatus: (deps, actor, { sprintId }) => shareStatus(deps, actor, { sprintId }),
  whatIfForm: (deps, actor, { sprintId }) => whatIfForm(deps, actor, { sprintId }),
  askWhatIf: (deps, actor, { sprintId }) =>
    askWhatIf(deps, actor, { sprintId, without: '', awayDays: '1', morePoints: '' }),
  closeSprint: (deps, actor, { sprintId }) => closeSprint(deps, actor, { sprintId }),
  cancelSprint: (deps, actor, { sprintId }) => cancelSprint(deps, actor, { sprintId, reason: '' }),
  reopenSprint: (deps, actor, { sprintId }) => reopenSprint(deps, actor, { sprintId }),
  previewRemoval: (deps, actor, { teamId, sprintId }) => previewRemoval(deps, actor, { teamId, sprintId }),
  endTeam: (deps, actor, { teamId }) => endTeam(deps, actor, { teamId }),
  removeImport: (deps, actor, { teamId, sprintId }) => removeImport(deps, actor, { teamId, sprintId }),
  importValues: (deps, actor, { teamId }) =>
    importValues(deps, actor, {
      teamId,
      file: { fileName: 'values.csv', text: 'sprint,value' },
      seen: undefined,
    }),
  importSprints: (deps, actor, { teamId }) =>
    importSprints(deps, actor, { teamId, files: [PAST], seen: undefined }),
  askAdvice: (deps, actor, { teamId }) => askAdvice(deps, actor, { teamId }, { about: 'range' }),
  keepBody: (deps, actor, { teamId }) => keepBody(deps, actor, { teamId, name: '', leftPoints: 5 }),
  shareAdvice: (deps, actor, { teamId }) => shareAdvice(deps, actor, { teamId, question: { about: 'odds' } }),
  recordValue: (deps, actor, { teamId, sprintId }) =>
    recordValue(deps, actor, { teamId, value: '5', sprint: { sprintId } }),
  tryForm: (deps, actor, { sprintId }) => tryForm(deps, actor, { sprintId }),
  tryExperiment: (deps, actor, { teamId }) =>
    tryExperiment(deps, actor, { teamId, text: 'x', ratio: 'keptShare', direction: 'up' }),
  retroSheet: (deps, actor, { sprintId }) => retroSheet(deps, actor, { sprintId }),
  shareRetro: (deps, actor, { sprintId }) => shareRetro(deps, actor, { sprintId }),
  valueForm: (deps, actor, { sprintId }) => valueForm(deps, actor, { sprintId }),
  goalForm: (deps, actor, { sprintId }) => goalForm(deps, actor, { sprintId }),
  recordGoal: (deps, actor, { sprintId }) => recordGoal(deps, actor, { sprintId, met: 'yes', note: '' }),
  directVerdicts: (deps, actor, { teamId }) => directVerdicts(deps, actor, { teamId }),
  chooseDirectVerdicts: (deps, actor, { teamId }) =>
    chooseDirectVerdicts(deps, actor, { teamId, isWanted: false }),
  setDigest: (deps, actor, { teamId }) => setDigest(deps, actor, { teamId, digestAt: '08:30' }),
  nameBaseline: (deps, actor, { teamId, sprintId }) =>
    nameBaseline(deps, actor, { teamId, sprint: { sprintId } }),
};

/** What only facilitators may do. */
const FACILITATORS_ONLY = [
  'addGuests by place',
  'removeGuests by place',
  'setupForm',
  'setUpTeam',
  'measuresForm',
  'planForm',
  'closeSprint by place',
  'sprintToEnd to close',
  'sprintToEnd to cancel',
  'cancelSprint by place',
  'reopenSprint by place',
  'setMeasures',
  'previewPlan',
  'previewTicked',
  'readCardFile',
  'commitPlan',
  'closeSprint',
  'cancelSprint',
  'reopenSprint',
  'baselineForm',
  'importForm',
  'importSprints',
  'endForm',
  'endTeam',
  'removalForm',
  'previewRemoval',
  'removeImport',
  'exportSprints',
  'digestForm',
  'setDigest by place',
  'setDigest',
  'nameBaseline by place',
  'nameBaseline',
  'tryForm by place',
  'tryForm',
  'tryExperiment',
  'endExperiment by place',
];

/** What the product owner may do without being a member, besides reading the planning questions' answers. */
const PRODUCT_OWNERS_TOO = [
  'valueForm by place',
  'valueForm',
  'recordValueLine',
  'recordValue by place',
  'recordValue',
  'importValues',
];

/** What the product owner and facilitators may do with the bodies of work that are kept. */
const BODY_KEEPERS = ['bodyForm', 'keepBody by place', 'keepBody', 'endBody', 'renameBody', 'orderBodies'];

/** What the product owner and facilitators may do of the goal. */
const GOAL_KEEPERS = ['goalForm by place', 'goalForm', 'recordGoal by place', 'recordGoal'];

/** What everybody who may read the team's numbers may do. */
const READERS_TOO = [
  'askAdvice by place',
  'askAdvice',
  'shareAdvice',
  'forecastForm',
  'listCards',
  'listExperiments',
  'retroSheet by place',
  'retroSheet',
  'shareRetro',
  'sprintStatus',
  'statusChart',
  'shareStatus',
  'whatIfForm',
  'askWhatIf',
  'directVerdicts by place',
  'directVerdicts',
  'chooseDirectVerdicts by place',
  'chooseDirectVerdicts',
];

/** What the product owner may do with the cards. */
const DROPS = ['dropCard by place', 'dropCard', 'undropCard by place', 'undropCard'];

const ALL: Record<string, Attempt> = { ...BY_PLACE, ...BY_ID };

interface World {
  readonly h: Harness;
  readonly known: Known;
}

/** A sprint from Monday 2 to Friday 13 November 2026 in Lisbon, on UTC then; its members are asked for the first time. */
async function asked(): Promise<World> {
  const h = await openHarness({ now: '2026-10-30T12:00:00Z' });
  const team = await h.setUpTeam();
  const { sprint } = await h.plan(team);
  await h.pass('2026-11-02T09:15:00Z');
  const prompt = h.messenger.messages.find(
    ({ content }) => content.kind === 'daily-prompt' && content.prompt.userId === PEOPLE.ben,
  );
  const { cards } = await h.records(sprint.id);
  return {
    h,
    known: {
      teamId: team.id,
      sprintId: sprint.id,
      cardId: cards[0]?.id ?? '',
      place: CHANNEL,
      threadTs: prompt?.at.ts ?? '',
    },
  };
}

/** One world for all tests of a block: what is refused must not change it. */
function sharedWorld(change: Parameters<Harness['setUpTeam']>[0] = {}): () => World {
  let world: World;
  beforeAll(async () => {
    world = await asked();
    await world.h.setUpTeam(change);
  });
  return () => world;
}

/** Everything that the store holds of the team, to see that nothing of it has changed. */
async function everything(h: Harness, { teamId, sprintId }: Known): Promise<string> {
  const held = await h.read(async (read) => [
    await read.teamById(teamId),
    await read.membersOf(teamId),
    await read.openSprintsOf(teamId),
    await read.recordsOf(sprintId),
    await read.promptsOf([{ sprintId, day: DAY }]),
    await read.latestResult(sprintId),
  ]);
  return JSON.stringify([held, await h.owedPostIds(), h.messenger.messages.length]);
}

async function refusal(attempt: Promise<unknown>): Promise<Refusal> {
  const outcome = await attempt.then(
    () => 'it was done',
    (error: unknown) => error,
  );
  if (outcome instanceof Refusal) return outcome;
  throw outcome instanceof Error ? outcome : new Error(String(outcome));
}

/** A channel without a team is where one is set up, and a thread in which nothing was asked is just a place. */
const ANYWHERE = ['setupForm', 'setUpTeam', 'answerInWords in the thread of a prompt'];
const MEMBERS_ONLY = Object.entries(ALL).filter(
  ([name]) =>
    ![
      ...PRODUCT_OWNERS_TOO,
      ...GOAL_KEEPERS,
      ...BODY_KEEPERS,
      'jointForecast',
      ...READERS_TOO,
      ...DROPS,
    ].includes(name),
);
const named = (names: readonly string[]) => names.map((name) => [name, ALL[name] as Attempt] as const);

describe('a team', () => {
  const world = sharedWorld();

  test.each(Object.entries(ALL))(
    'refuses to %s for a stranger and people of another workspace, changes nothing, and says nothing to them about the sprint',
    async (name, attempt) => {
      const { h, known } = world();
      const before = await everything(h, known);
      // Ids are unique in a workspace only: another one may hold the same. There they may set up a team of
      // their own in a channel that happens to have this id.
      const elsewhere = ['setupForm', 'setUpTeam'].includes(name) ? [] : (['dayo', 'ana', 'ben'] as const);
      for (const actor of [actorOf('dayo'), ...elsewhere.map((who) => actorOf(who, 'W2'))]) {
        const { code, details } = await refusal(attempt(h.deps, actor, known));
        expect(['not-a-member', 'no-team-here', 'no-team-of-yours']).toContain(code);
        expect(JSON.stringify(details)).not.toMatch(/Harbour|Tide|Crane|UANA/);
      }
      expect(await everything(h, known)).toBe(before);
    },
  );

  test.each(Object.entries(ALL).filter(([name]) => !ANYWHERE.includes(name)))(
    'refuses to %s with ids that belong to nothing',
    async (_, attempt) => {
      const { h } = world();
      const nothing: Known = {
        teamId: 'no-such-team',
        sprintId: '00000000-0000-4000-8000-000000000000',
        cardId: 'no-such-card',
        place: { channelId: 'C-none', isDirect: false },
        threadTs: '0.0',
      };
      const { code } = await refusal(attempt(h.deps, actorOf('ana'), nothing));
      expect(['no-team-here', 'no-team-of-yours']).toContain(code);
    },
  );

  test.each(named(FACILITATORS_ONLY))(
    'refuses to %s for a member who is no facilitator, names one, and changes nothing',
    async (_, attempt) => {
      const { h, known } = world();
      const before = await everything(h, known);
      const { code, details } = await refusal(attempt(h.deps, actorOf('ben'), known));
      expect([code, (details as { facilitatorIds: unknown }).facilitatorIds]).toEqual([
        'not-a-facilitator',
        [PEOPLE.ana],
      ]);
      expect(await everything(h, known)).toBe(before);
    },
  );
});

describe('a team that somebody has left', () => {
  const world = sharedWorld({ memberIds: [PEOPLE.ana, PEOPLE.chi] });

  test.each(Object.entries(ALL))('refuses to %s for them', async (_, attempt) => {
    const { h, known } = world();
    const before = await everything(h, known);
    const { code } = await refusal(attempt(h.deps, actorOf('ben'), known));
    expect(['not-a-member', 'no-team-of-yours']).toContain(code);
    expect(await everything(h, known)).toBe(before);
  });
});

describe('a team whose product owner is no member', () => {
  const world = sharedWorld({ productOwnerId: PEOPLE.dayo });

  test.each(MEMBERS_ONLY)(
    'refuses to %s for the product owner, says that they are one, and changes nothing',
    async (_, attempt) => {
      const { h, known } = world();
      const before = await everything(h, known);
      const { code, details } = await refusal(attempt(h.deps, actorOf('dayo'), known));
      expect([code, details]).toEqual(['not-a-member', { teamName: 'Tugboats', isProductOwner: true }]);
      expect(await everything(h, known)).toBe(before);
    },
  );

  test.each(named(PRODUCT_OWNERS_TOO))(
    'refuses to %s for a member who is neither facilitator nor product owner, and lets those in',
    async (_, attempt) => {
      const { h, known } = world();
      const { code } = await refusal(attempt(h.deps, actorOf('ben'), known));
      expect(code).toBe('not-a-value-keeper');
      for (const who of ['dayo', 'ana'] as const) {
        // No sprint has closed yet: only those who are let in come so far.
        const letIn = await refusal(attempt(h.deps, actorOf(who), known));
        expect(['no-closed-sprint', 'sprint-not-closed']).toContain(letIn.code);
      }
    },
  );

  test.each(named(BODY_KEEPERS))(
    'refuses to %s for a member who is neither facilitator nor product owner, and lets those in',
    async (name, attempt) => {
      const { h, known } = world();
      const { code } = await refusal(attempt(h.deps, actorOf('ben'), known));
      expect(code).toBe('not-a-body-keeper');
      for (const who of ['dayo', 'ana'] as const) {
        const outcome = await attempt(h.deps, actorOf(who), known).then(
          () => 'done',
          (error: Refusal) => error.code,
        );
        // Nothing is kept, and what has no name can't be.
        expect(outcome).toBe(
          name.startsWith('keep') ? 'bad-input' : name === 'bodyForm' ? 'done' : 'no-such-body',
        );
      }
    },
  );

  test.each(named(GOAL_KEEPERS))(
    'refuses to %s for a member who is neither facilitator nor product owner, and lets those in',
    async (_, attempt) => {
      const { h, known } = world();
      const { code } = await refusal(attempt(h.deps, actorOf('ben'), known));
      expect(code).toBe('not-a-goal-keeper');
      for (const who of ['dayo', 'ana'] as const) {
        expect(await attempt(h.deps, actorOf(who), known)).toMatchObject({
          heading: { sprint: { id: known.sprintId } },
        });
      }
    },
  );

  test('lets everybody who may read its numbers ask for a joint date, and nobody else', async () => {
    const { h, known } = world();
    const attempt = ALL.jointForecast as Attempt;
    for (const who of ['ana', 'ben', 'dayo'] as const) {
      expect((await refusal(attempt(h.deps, actorOf(who), known))).code).toBe('no-such-body');
    }
    expect((await refusal(attempt(h.deps, actorOf('dayo', 'W2'), known))).code).toMatch(/^no-team/);
  });

  test.each(named(DROPS))('lets the product owner %s', async (_, attempt) => {
    const { h, known } = world();
    const outcome = await attempt(h.deps, actorOf('dayo'), known).then(
      () => 'done',
      (error: Refusal) => error.code,
    );
    // In the shared sprint the card may have been dropped before, or not yet.
    expect(['done', 'card-dropped', 'card-not-dropped']).toContain(outcome);
    expect((await refusal(attempt(h.deps, actorOf('dayo', 'W2'), known))).code).toMatch(/^no-team/);
  });

  test.each(named(READERS_TOO))(
    'lets every member and the product owner %s, but a product owner of another workspace it does not',
    async (_, attempt) => {
      const { h, known } = world();
      for (const who of ['ana', 'ben', 'dayo'] as const) {
        const outcome = await attempt(h.deps, actorOf(who), known).then(
          () => 'done',
          (error: unknown) => error,
        );
        expect(outcome).toBe('done');
      }
      const { code } = await refusal(attempt(h.deps, actorOf('dayo', 'W2'), known));
      expect(['no-team-here', 'no-team-of-yours']).toContain(code);
    },
  );
});

describe('what is stored about a person', () => {
  test('is shown and given to that person only, on a team or not, and never to the same id of another workspace', async () => {
    const { h } = await asked();
    await h.setUpTeam({ memberIds: [PEOPLE.ana, PEOPLE.chi], productOwnerId: PEOPLE.dayo });
    const kindsFor = async (actor: Actor) =>
      (await privacyOverview(h.deps, actor)).kinds.map(({ kind }) => kind);
    // Ben has left, Dayo is no member: they may know what is under their ids anyway.
    expect(await kindsFor(actorOf('ben'))).toContain('prompts');
    expect(await kindsFor(actorOf('dayo'))).toEqual(['productOwnerOf', 'messagesToYou']);
    for (const [who, others] of [
      ['ben', /UANA|UCHI|UDAYO/],
      ['dayo', /UANA|UBEN|UCHI/],
    ] as const) {
      const { bytes } = await personalCopy(h.deps, actorOf(who));
      expect(Buffer.from(bytes).toString()).not.toMatch(others);
    }
    for (const who of ['ana', 'ben', 'dayo'] as const) {
      expect(await kindsFor(actorOf(who, 'W2'))).toEqual([]);
      const { code } = await refusal(personalCopy(h.deps, actorOf(who, 'W2')));
      expect(code).toBe('nothing-stored');
    }
  });

  test('is erased by that person only: a stranger and the same id of another workspace change nothing', async () => {
    const { h, known } = await asked();
    const before = await everything(h, known);
    for (const actor of [actorOf('dayo'), actorOf('ana', 'W2'), actorOf('ben', 'W2')]) {
      const { code } = await refusal(erasePerson(h.deps, actor));
      expect(code).toBe('nothing-stored');
    }
    expect(await everything(h, known)).toBe(before);
    await erasePerson(h.deps, actorOf('ben'));
    const members = await h.read((read) => read.membersOf(known.teamId));
    expect(members.map(({ userId }) => userId)).toEqual([PEOPLE.ana, PEOPLE.chi]);
    // A person who is erased is a stranger from then on.
    const { code } = await refusal(sprintStatus(h.deps, actorOf('ben'), CHANNEL));
    expect(code).toBe('not-a-member');
  });
});

describe('the same ids in another workspace', () => {
  test('are another channel, where another team may be set up', async () => {
    const { h, known } = await asked();
    const before = await everything(h, known);
    const theirs = await setUpTeam(h.deps, actorOf('dayo', 'W2'), { channelId: CHANNEL.channelId, ...SETUP });
    expect(theirs.id).not.toBe(known.teamId);
    const { teams } = await overview(h.deps, actorOf('dayo', 'W2'), CHANNEL);
    expect(teams.map(({ team }) => team.id)).toEqual([theirs.id]);
    const after = await h.read((read) => read.teamById(known.teamId));
    expect(JSON.stringify(after)).toBe(JSON.stringify(JSON.parse(before)[0][0]));
  });
});

describe('somebody on two teams', () => {
  test('is asked which one is meant, unless the place, a prompt, what was asked today or the only running sprint says so', async () => {
    const { h, known } = await asked();
    await setUpTeam(h.deps, actorOf('ana'), {
      channelId: 'C2',
      ...SETUP,
      memberIds: [PEOPLE.ana, PEOPLE.ben],
      facilitatorIds: [PEOPLE.ana],
    });
    const direct = { channelId: `D-${PEOPLE.ben}`, isDirect: true };
    const words = { text: '1: 4', place: direct };
    const { code, details } = await refusal(
      askAdvice(h.deps, actorOf('ben'), { place: direct }, { about: 'history' }),
    );
    expect([code, details]).toEqual(['several-teams', { teamNames: ['Ours now', 'Tugboats'] }]);
    // Only one of them has a sprint.
    expect((await sprintStatus(h.deps, actorOf('ben'), direct)).team.name).toBe('Tugboats');
    const today = await answerInWords(h.deps, actorOf('ben'), words);
    expect(today).toMatchObject({ kind: 'recorded', prompt: { team: { name: 'Tugboats' } } });
    const inThread = await answerInWords(h.deps, actorOf('ben'), { ...words, threadTs: known.threadTs });
    expect(inThread).toMatchObject({ kind: 'recorded', prompt: { team: { name: 'Tugboats' } } });
    expect((await sprintStatus(h.deps, actorOf('ben'), CHANNEL)).team.name).toBe('Tugboats');
  });
});
