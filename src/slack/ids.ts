/**
 * Every id that travels to the chat platform and comes back: the command, buttons, forms and fields.
 * Listeners and views take them from here, so that none is written twice. Nothing else belongs here.
 */

/** The slash command. */
export const COMMAND = '/loadline';

/** `action_id` of a button; what its `value` holds is said in `button-values.ts`. */
export const ACTIONS = {
  /** Value: SprintDayValue. */
  openAnswerForm: 'open-answer-form',
  /** Value: SprintDayValue with a day. */
  recordUnchanged: 'record-unchanged',
  /** Value: SprintDayValue with a day. */
  recordAway: 'record-away',
  /** Value: AnswersValue; the answers hold the explanation already. */
  growthAllSurprise: 'growth-all-surprise',
  /** Value: AnswersValue; the answers hold the explanation already. */
  growthAllDrift: 'growth-all-drift',
  /** Value: AnswersValue without explanations, or SprintDayValue when they are too long for a button. */
  growthSomeOfEach: 'growth-some-of-each',
  /** Value: PlaceValue, as of all that follow unless said otherwise. */
  openSetupForm: 'open-setup-form',
  openMeasuresForm: 'open-measures-form',
  openPlanForm: 'open-plan-form',
  openPullForm: 'open-pull-form',
  openDropForm: 'open-drop-form',
  openCloseForm: 'open-close-form',
  openCancelForm: 'open-cancel-form',
  openValueForm: 'open-value-form',
  openBaselineForm: 'open-baseline-form',
  openForecastForm: 'open-forecast-form',
  openImportForm: 'open-import-form',
  showCards: 'show-cards',
  showStatus: 'show-status',
  showHelp: 'show-help',
  /** What is stored about whoever presses it, as of the two that follow; the value says nothing. */
  showPrivacy: 'show-privacy',
  sendMyCopy: 'send-my-copy',
  openEraseForm: 'open-erase-form',
  showOdds: 'show-odds',
  showRange: 'show-range',
  showHistory: 'show-history',
  exportSprints: 'export-sprints',
  /** The sprint of the place that closed last, as the command does it. */
  reopenLastSprint: 'reopen-last-sprint',
  /** Value: SprintValue, as of what follows. */
  shareStatus: 'share-status',
  reopenSprint: 'reopen-sprint',
  /** Value: AdviceValue, as of what follows. */
  shareAdvice: 'share-advice',
  changeRange: 'change-range',
  changeForecast: 'change-forecast',
} as const;

/** `callback_id` of a form; what its `private_metadata` holds is said in `form-contexts.ts`. */
export const FORMS = {
  setup: 'setup-form',
  measures: 'measures-form',
  plan: 'plan-form',
  planPreview: 'plan-preview-form',
  answer: 'answer-form',
  pull: 'pull-form',
  drop: 'drop-form',
  close: 'close-form',
  cancel: 'cancel-form',
  value: 'value-form',
  baseline: 'baseline-form',
  range: 'range-form',
  forecast: 'forecast-form',
  import: 'import-form',
  erase: 'erase-form',
} as const;

/** `action_id` of every input of every form; the `block_id` is the field's name. */
export const INPUT = 'value';

/** `block_id` of each form's fields: the same names as in the problems of a `bad-input` refusal. */
export const FIELDS = {
  setup: {
    name: 'name',
    timeZone: 'timeZone',
    promptAt: 'promptAt',
    workingDays: 'workingDays',
    memberIds: 'memberIds',
    facilitatorIds: 'facilitatorIds',
    productOwnerId: 'productOwnerId',
  },
  /** Besides these, one field for each threshold, named after it. */
  measures: {
    closesAt: 'closesAt',
    reminderAfterMinutes: 'reminderAfterMinutes',
    scale: 'scale',
    retentionMonths: 'retentionMonths',
  },
  plan: {
    name: 'name',
    goal: 'goal',
    startsOn: 'startsOn',
    endsOn: 'endsOn',
    closesAt: 'closesAt',
    awayDays: 'awayDays',
    cards: 'cards',
  },
  /** Besides this, the fields of `answerField` for each card. */
  answer: { takeCardIds: 'takeCardIds' },
  pull: { title: 'title', estimate: 'estimate', ownerIds: 'ownerIds' },
  drop: { reference: 'reference', reason: 'reason' },
  cancel: { reason: 'reason' },
  value: { sprintId: 'sprintId', recordedValue: 'recordedValue' },
  baseline: { sprintId: 'sprintId' },
  range: { startsOn: 'startsOn', endsOn: 'endsOn', awayDays: 'awayDays' },
  forecast: { backlogPoints: 'backlogPoints', growthPoints: 'growthPoints' },
  import: { files: 'files', keptFileIds: 'keptFileIds', text: 'text' },
} as const;

/** The choice of no particular sprint in the baseline form; ids of sprints are longer. */
export const FIRST_SPRINT = 'first';

/** Most fields that the plan form may offer for cards; a text field of the platform holds 3,000 characters. */
export const MAX_CARD_FIELDS = 8;

/** `block_id` of the plan form's fields for cards, 1 for the first: `cards`, `cards-2`, … */
export function cardsField(place: number): string {
  return place === 1 ? FIELDS.plan.cards : `${FIELDS.plan.cards}-${place}`;
}

/** Fields of the import form for pasted lines; longer tables come as files. */
export const IMPORT_TEXT_FIELDS = 3;

/** `block_id` of the import form's fields for pasted lines, 1 for the first. */
export function importTextField(place: number): string {
  return place === 1 ? FIELDS.import.text : `${FIELDS.import.text}-${place}`;
}

/**
 * `block_id` of the import form's field for files. It changes with every round, lest what was picked before be in it
 * still: the files of the rounds before are listed and kept.
 */
export function importFilesField(round: number): string {
  return round === 1 ? FIELDS.import.files : `${FIELDS.import.files}-${round}`;
}

/** `block_id` of the list of files from the rounds before; it changes too, lest the ticks of a shorter list stay. */
export function importKeptField(round: number): string {
  return `${FIELDS.import.keptFileIds}-${round}`;
}

/** What the answer form asks of each card. */
export const ANSWER_PARTS = ['left', 'worked', 'surprise', 'note'] as const;
export type AnswerPart = (typeof ANSWER_PARTS)[number];

/** `block_id` of a card's field in the answer form. */
export function answerField(part: AnswerPart, cardId: string): string {
  return `${part}:${cardId}`;
}
