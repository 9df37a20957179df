/**
 * Ids that travel to the chat platform and come back: the command, buttons, and how those of forms and of repeated fields
 * are made. A form's own fields are named beside its view.
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
  cardMoving: 'card-moving',
  /** Value: AnswersValue; the answers hold the explanation already. */
  growthAllSurprise: 'growth-all-surprise',
  /** Value: AnswersValue; the answers hold the explanation already. */
  growthAllDrift: 'growth-all-drift',
  /** Value: AnswersValue without the cards of which another owner's number stays, or SprintDayValue when there is none left. */
  growthKeepOther: 'growth-keep-other',
  /** Value: AnswersValue without explanations, or SprintDayValue when they are too long for a button. */
  growthSomeOfEach: 'growth-some-of-each',
  /** Value: PlaceValue, as of all that follow unless said otherwise. */
  /** Value: SprintCardValue. */
  takeDropBack: 'take-drop-back',
  showCards: 'show-cards',
  showStatus: 'show-status',
  /** Value: CardValue. */
  editCard: 'edit-card',
  showHelp: 'show-help',
  showAllCommands: 'show-all-commands',
  /** All of a team's buttons on the home page. */
  showMore: 'show-more',
  /** What is stored about the person who presses it, as of the two that follow; the value says nothing. */
  showPrivacy: 'show-privacy',
  sendMyCopy: 'send-my-copy',
  openEraseForm: 'open-erase-form',
  showOdds: 'show-odds',
  showRange: 'show-range',
  showHistory: 'show-history',
  showExperiments: 'show-experiments',
  showRetro: 'show-retro',
  /** Value: TryValue. */
  tryText: 'try-text',
  exportSprints: 'export-sprints',
  /** The sprint of the place that closed last, as the command does it. */
  reopenLastSprint: 'reopen-last-sprint',
  /** Value: VerdictsValue. */
  chooseVerdicts: 'choose-verdicts',
  /** Value: SprintValue, as of what follows. */
  shareStatus: 'share-status',
  askWhatIf: 'ask-what-if',
  showBurndown: 'show-burndown',
  reopenSprint: 'reopen-sprint',
  tryThis: 'try-this',
  retroOfSprint: 'retro-of-sprint',
  shareRetro: 'share-retro',
  printRetro: 'print-retro',
  /** Value: ExperimentValue. */
  keepExperiment: 'keep-experiment',
  changeExperiment: 'change-experiment',
  dropExperiment: 'drop-experiment',
  goalYes: 'goal-yes',
  goalPartly: 'goal-partly',
  goalNo: 'goal-no',
  explainGoal: 'explain-goal',
  recordValue: 'record-value',
  /** Value: AdviceValue, as of what follows. */
  shareAdvice: 'share-advice',
  explainAdvice: 'explain-advice',
  changeRange: 'change-range',
  changeForecast: 'change-forecast',
  keepForecast: 'keep-forecast',
  /** Value: PlaceValue. */
  showKept: 'show-kept',
  /** Value: BodyValue. */
  changeBody: 'change-body',
} as const;

/** `callback_id` of a shortcut, as the app's manifest names it. */
export const SHORTCUTS = {
  answerForMyCards: 'answer-for-my-cards',
  /** On a message. */
  pullMessageIn: 'pull-message-in',
} as const;

/** `callback_id` of a form; what its `private_metadata` holds is said in `form-contexts.ts`. */
export function formId(name: string): string {
  return `${name}-form`;
}

/** `action_id` of the button that opens a form. Value: PlaceValue. */
export function openFormAction(name: string): string {
  return `open-${formId(name)}`;
}

/** `action_id` of every input of every form; the `block_id` is the field's name. */
export const INPUT = 'value';

/** Most fields that the plan form may offer for cards; a text field of the platform holds 3,000 characters. */
export const MAX_CARD_FIELDS = 30;

/** `block_id` of the plan form's fields for cards, 1 for the first: `cards`, `cards-2`, … */
export function cardsField(place: number): string {
  return place === 1 ? 'cards' : `cards-${place}`;
}

/** `block_id` of the plan preview's fields in which cards are ticked, 1 for the first. */
export function planTicksField(place: number): string {
  return `ticked-${place}`;
}

/** `block_id` of the field for a file of cards; 1 in the plan form. Like those of the import form it changes with every round. */
export function cardFileField(round: number): string {
  return round === 1 ? 'cardFile' : `cardFile-${round}`;
}

/** `block_id` of the choice of a column in a file of cards. */
export function cardColumnField(field: string, round: number): string {
  return `column-${field}-${round}`;
}

export const IMPORT_FIELDS = { files: 'files', keptFileIds: 'keptFileIds', text: 'text' } as const;

/** Fields of the import form for pasted lines; longer tables come as files. */
export const IMPORT_TEXT_FIELDS = 3;

/** `block_id` of the import form's fields for pasted lines, 1 for the first. */
export function importTextField(place: number): string {
  return place === 1 ? IMPORT_FIELDS.text : `${IMPORT_FIELDS.text}-${place}`;
}

/**
 * `block_id` of the import form's field for files. It changes with every round, so that what was picked before isn't in it
 * still: the files of the rounds before are listed and kept.
 */
export function importFilesField(round: number): string {
  return round === 1 ? IMPORT_FIELDS.files : `${IMPORT_FIELDS.files}-${round}`;
}

/** `block_id` of the list of files from the rounds before; it changes too, so that no ticks of a shorter list stay. */
export function importKeptField(round: number): string {
  return `${IMPORT_FIELDS.keptFileIds}-${round}`;
}

/** What the answer form asks of each card. */
export const ANSWER_PARTS = ['left', 'worked', 'surprise', 'note', 'blocked'] as const;
export type AnswerPart = (typeof ANSWER_PARTS)[number];

/** `block_id` of a card's field in the answer form. */
export function answerField(part: AnswerPart, cardId: string): string {
  return `${part}:${cardId}`;
}
