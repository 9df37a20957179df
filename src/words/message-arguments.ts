/** What each message takes. Written by `npm run messages` from the English message files; don't edit it by hand. */

export interface Messages {
  'advice-only-you': Record<never, never>;
  'advice-shared': { readonly person: string; readonly on: string; readonly command: string };
  'advice-unknown-title': Record<never, never>;
  'advice-more-lines': { readonly count: number };
  'advice-import-hint': Record<never, never>;
  'advice-share-button': Record<never, never>;
  'advice-details-button': Record<never, never>;
  'advice-odds-button': Record<never, never>;
  'advice-range-button': Record<never, never>;
  'advice-experiments-button': Record<never, never>;
  'advice-history-button': Record<never, never>;
  'advice-plan-button': Record<never, never>;
  'advice-change-range-button': Record<never, never>;
  'advice-change-forecast-button': Record<never, never>;
  'caution-people': Record<never, never>;
  'caution-set-up': Record<never, never>;
  'prompt-asked': { readonly day: string };
  'prompt-cards': { readonly sprint: string; readonly cards: number };
  'prompt-team': { readonly team: string };
  'prompt-listed': { readonly day: string; readonly sprint: string };
  'prompt-listed-cards': { readonly cards: number };
  'prompt-listed-next': { readonly rest: 'more' | 'none' };
  'prompt-answered': { readonly day: string; readonly sprint: string };
  'prompt-unchanged': { readonly day: string; readonly sprint: string };
  'prompt-still-left': Record<never, never>;
  'prompt-away': { readonly day: string; readonly sprint: string };
  'prompt-away-next': Record<never, never>;
  'prompt-over': { readonly sprint: string };
  'prompt-over-day': { readonly day: string };
  'prompt-over-answered': Record<never, never>;
  'prompt-no-card': { readonly sprint: string };
  'prompt-card-line': { readonly place: string; readonly card: string; readonly left: string };
  'prompt-more-cards': { readonly cards: number };
  'prompt-answered-line': { readonly card: string; readonly facts: readonly string[] };
  'prompt-answered-line-note': {
    readonly card: string;
    readonly facts: readonly string[];
    readonly note: string;
  };
  'prompt-worked': { readonly points: number };
  'prompt-more-answers': { readonly answers: number };
  'prompt-untouched': Record<never, never>;
  'prompt-closes': { readonly closing: string };
  'prompt-words-one': Record<never, never>;
  'prompt-words-two': Record<never, never>;
  'prompt-words-three': Record<never, never>;
  'prompt-words-several': Record<never, never>;
  'prompt-moving-button': { readonly cards: 'only' | 'several'; readonly place: string };
  'prompt-answer-button': Record<never, never>;
  'prompt-unchanged-button': Record<never, never>;
  'prompt-away-button': Record<never, never>;
  'prompt-change-button': Record<never, never>;
  'prompt-after-all-button': Record<never, never>;
  'reminder-title': { readonly sprint: string };
  'reminder-only-one': Record<never, never>;
  'last-call-title': { readonly sprint: string; readonly closing: string };
  'last-call-question': Record<never, never>;
  'last-call-line-never': { readonly place: string; readonly card: string; readonly left: string };
  'last-call-line': {
    readonly place: string;
    readonly card: string;
    readonly left: string;
    readonly moment: string;
  };
  'last-call-line-other': {
    readonly place: string;
    readonly card: string;
    readonly left: string;
    readonly who: string;
    readonly moment: string;
  };
  'last-call-still-so-button': Record<never, never>;
  'growth-title': { readonly cards: number };
  'growth-title-other': Record<never, never>;
  'growth-line-other': {
    readonly card: string;
    readonly who: string;
    readonly left: string;
    readonly moment: string;
    readonly points: number;
  };
  'growth-keep-other-button': Record<never, never>;
  'growth-line': { readonly card: string; readonly points: number };
  'growth-not-recorded': Record<never, never>;
  'growth-recorded': Record<never, never>;
  'growth-explained': Record<never, never>;
  'growth-surprise-button': Record<never, never>;
  'growth-drift-button': Record<never, never>;
  'growth-each-button': Record<never, never>;
  'growth-form-button': Record<never, never>;
  'answer-title': Record<never, never>;
  'answer-title-growth': Record<never, never>;
  'answer-submit': Record<never, never>;
  'answer-intro': { readonly sprint: string; readonly day: string };
  'answer-intro-none': { readonly sprint: string; readonly day: string };
  'answer-intro-growth': { readonly cards: number };
  'answer-said-by-other': { readonly who: string; readonly left: string; readonly moment: string };
  'answer-left': { readonly place: string; readonly card: string; readonly before: number };
  'answer-worked': { readonly card: string };
  'answer-worked-hint': Record<never, never>;
  'answer-surprise': { readonly card: string };
  'answer-surprise-grown': { readonly card: string; readonly growth: number };
  'answer-surprise-hint': Record<never, never>;
  'answer-surprise-hint-grown': { readonly growth: number };
  'answer-surprise-hint-before': { readonly points: number };
  'answer-note': { readonly card: string };
  'answer-note-hint': Record<never, never>;
  'answer-blocked': { readonly card: string };
  'answer-blocked-hint': { readonly state: 'blocked' | 'moving' };
  'answer-more': Record<never, never>;
  'answer-more-hint': Record<never, never>;
  'answer-too-many': { readonly shown: number; readonly cards: number };
  'answer-choose': Record<never, never>;
  'answer-choose-sprint': Record<never, never>;
  'answer-choose-choice': { readonly team: string; readonly sprint: string };
  'answer-choose-submit': Record<never, never>;
  'answer-take': Record<never, never>;
  'answer-take-hint': Record<never, never>;
  'answer-take-choice': { readonly left: number; readonly card: string };
  'thanks-answer': Record<never, never>;
  'answer-left-out': { readonly words: string };
  'answer-left-out-near': { readonly words: string; readonly near: string };
  'edit-unread': { readonly change: 'deleted' | 'edited' };
  'edit-unread-next': Record<never, never>;
  'kept-lead': {
    readonly name: string;
    readonly points: number;
    readonly likely: string;
    readonly likelyChance: number;
    readonly pessimistic: string;
    readonly pessimisticChance: number;
  };
  'kept-lead-no-promise': {
    readonly name: string;
    readonly points: number;
    readonly likely: string;
    readonly likelyChance: number;
    readonly sprints: number;
  };
  'kept-lead-no-date': { readonly name: string; readonly points: number; readonly sprints: number };
  'kept-lead-none': Record<never, never>;
  'kept-none': Record<never, never>;
  'kept-line': {
    readonly number: number;
    readonly name: string;
    readonly points: number;
    readonly likely: string;
    readonly pessimistic: string;
  };
  'kept-line-no-promise': {
    readonly number: number;
    readonly name: string;
    readonly points: number;
    readonly likely: string;
  };
  'kept-line-no-date': {
    readonly number: number;
    readonly name: string;
    readonly points: number;
    readonly sprints: number;
  };
  'kept-name': { readonly name: string; readonly points: number };
  'kept-share': { readonly share: number };
  'kept-first-told': Record<never, never>;
  'kept-moved': {
    readonly way: 'earlier' | 'later' | 'neither';
    readonly since: string;
    readonly days: number;
  };
  'kept-days': { readonly days: number };
  'kept-moved-in-all': {
    readonly way: 'earlier' | 'later' | 'neither';
    readonly since: string;
    readonly days: number;
  };
  'kept-stale': { readonly sprints: number; readonly points: number };
  'kept-say-left': { readonly name: string; readonly points: number };
  'kept-dates': {
    readonly name: string;
    readonly optimistic: string;
    readonly optimisticChance: number;
    readonly likely: string;
    readonly likelyChance: number;
    readonly pessimistic: string;
    readonly pessimisticChance: number;
  };
  'kept-no-date': Record<never, never>;
  'kept-turn': Record<never, never>;
  'kept-growth': { readonly name: string; readonly points: number };
  'kept-again': Record<never, never>;
  'kept-done': { readonly name: string; readonly on: string };
  'kept-done-told': {
    readonly name: string;
    readonly on: string;
    readonly since: string;
    readonly likely: string;
  };
  'kept-unknown-running': { readonly startsOn: string };
  'kept-unknown-order': Record<never, never>;
  'kept-new': { readonly name: string; readonly points: number };
  'kept-again-said': { readonly name: string; readonly points: number; readonly before: number };
  'kept-changed': { readonly name: string; readonly points: number };
  'kept-ended': { readonly how: 'done' | 'removed'; readonly name: string };
  'kept-ended-told': { readonly since: string; readonly likely: string };
  'kept-button': Record<never, never>;
  'kept-new-button': Record<never, never>;
  'kept-forecast-button': Record<never, never>;
  'kept-change-button': Record<never, never>;
  'kept-form-title': Record<never, never>;
  'kept-form-submit': Record<never, never>;
  'kept-form-intro': { readonly team: string };
  'kept-form-name': Record<never, never>;
  'kept-form-name-hint': Record<never, never>;
  'kept-form-points': Record<never, never>;
  'kept-form-turn': Record<never, never>;
  'kept-form-turn-hint': Record<never, never>;
  'kept-form-share-hint': Record<never, never>;
  'kept-form-state': Record<never, never>;
  'kept-form-state-choice': { readonly state: 'done' | 'open' | 'removed' };
  'kept-chart-title': Record<never, never>;
  'kept-chart-basis': Record<never, never>;
  'kept-chart-left-out': { readonly bodies: number };
  'kept-chart-optimistic': { readonly optimistic: string };
  'kept-chart-likely': { readonly likely: string };
  'kept-chart-pessimistic': { readonly pessimistic: string };
  'kept-chart-key-likely': Record<never, never>;
  'kept-chart-key-ends': Record<never, never>;
  'kept-chart-key-stale': Record<never, never>;
  'kept-alt-subject': { readonly team: string };
  'kept-alt-body': { readonly name: string; readonly tellings: readonly string[] };
  'kept-alt-telling': { readonly on: string; readonly likely: string; readonly pessimistic: string };
  'cards-count': { readonly cards: number };
  'cards-open-count': { readonly cards: number };
  'cards-more-count': { readonly cards: number };
  'cards-more': { readonly cards: number };
  'cards-more-from': { readonly from: string; readonly cards: number };
  'cards-line': {
    readonly number: string;
    readonly card: string;
    readonly facts: readonly string[];
    readonly owners: string;
  };
  'cards-blocked': { readonly since: string; readonly on: string };
  'cards-blocked-unsaid': { readonly since: string };
  'cards-planned-line': {
    readonly number: string;
    readonly card: string;
    readonly points: number;
    readonly owners: string;
  };
  'cards-estimate': { readonly points: number };
  'cards-left': { readonly points: number };
  'cards-finished': Record<never, never>;
  'cards-dropped': Record<never, never>;
  'cards-pulled-in': Record<never, never>;
  'cards-surprise': { readonly points: number };
  'cards-drift': { readonly points: number };
  'cards-owners': { readonly owners: readonly string[] };
  'cards-no-owner': Record<never, never>;
  'cards-title': { readonly sprint: string; readonly left: number; readonly cards: number };
  'cards-title-none': { readonly sprint: string; readonly cards: number };
  'cards-none': { readonly reader: 'owner' | 'team' };
  'cards-none-from': { readonly from: string };
  'cards-change': { readonly reader: 'owner' | 'team' };
  'card-pulled': {
    readonly sprint: string;
    readonly number: string;
    readonly card: string;
    readonly points: number;
    readonly owners: string;
  };
  'cards-pulled-title': { readonly cards: number; readonly sprint: string };
  'card-pulled-total': { readonly points: number };
  'card-pulled-total-share': { readonly points: number; readonly share: number };
  'card-pulled-alike': { readonly cards: readonly string[]; readonly number: string };
  'card-pulled-no-owner': { readonly number: string };
  'card-dropped': { readonly sprint: string; readonly number: string; readonly card: string };
  'card-dropped-reason': { readonly reason: string };
  'card-dropped-counts': { readonly part: 'planned' | 'pulled-in'; readonly points: number };
  'card-undropped': {
    readonly number: string;
    readonly sprint: string;
    readonly card: string;
    readonly left: string;
  };
  'cards-owners-title': {
    readonly act: 'give' | 'release' | 'take';
    readonly cards: number;
    readonly sprint: string;
  };
  'cards-taken-next': Record<never, never>;
  'cards-owners-next': Record<never, never>;
  'cards-blocked-title': { readonly cards: number; readonly sprint: string };
  'cards-blocked-over': { readonly sprint: string };
  'cards-blocked-next': Record<never, never>;
  'cards-given-title': { readonly cards: number; readonly by: string; readonly sprint: string };
  'card-dropped-by': {
    readonly by: string;
    readonly number: string;
    readonly sprint: string;
    readonly card: string;
  };
  'card-dropped-take-back': Record<never, never>;
  'card-take-drop-back': Record<never, never>;
  'card-dropped-taken-back': Record<never, never>;
  'card-dropped-gone': { readonly sprint: string };
  'card-reopened': { readonly number: string; readonly sprint: string; readonly card: string };
  'card-reopened-next': Record<never, never>;
  'card-blocked': {
    readonly number: string;
    readonly sprint: string;
    readonly card: string;
    readonly reason: string;
  };
  'card-blocked-next': { readonly number: string };
  'card-moving': {
    readonly number: string;
    readonly sprint: string;
    readonly card: string;
    readonly left: string;
  };
  'cards-need-owner-title': { readonly cards: number; readonly sprint: string };
  'cards-have-owner-title': { readonly sprint: string };
  'cards-need-owner-next': { readonly cards: number; readonly number: string };
  'cards-need-owner-kept': Record<never, never>;
  'pull-title': Record<never, never>;
  'pull-submit': Record<never, never>;
  'pull-days': { readonly days: number; readonly sprint: string };
  'pull-checklist-title': Record<never, never>;
  'pull-checklist-independent': Record<never, never>;
  'pull-checklist-negotiable': Record<never, never>;
  'pull-checklist-valuable': Record<never, never>;
  'pull-checklist-estimable': Record<never, never>;
  'pull-checklist-small': { readonly time: 'days' | 'today' };
  'pull-checklist-testable': Record<never, never>;
  'pull-cards-hint': Record<never, never>;
  'pull-message': { readonly link: 'known' | 'unknown' };
  'pull-choose-team': Record<never, never>;
  'pull-team': Record<never, never>;
  'drop-title': Record<never, never>;
  'drop-submit': Record<never, never>;
  'drop-nothing': { readonly sprint: string };
  'drop-intro': { readonly sprint: string };
  'drop-card': Record<never, never>;
  'drop-choice': { readonly number: string; readonly card: string; readonly points: number };
  'drop-reason': Record<never, never>;
  'drop-reason-hint': Record<never, never>;
  'chart-title': { readonly title: string; readonly name: string };
  'chart-sprints-imported': { readonly sprints: number };
  'chart-unknown': Record<never, never>;
  'burndown-chart-title': Record<never, never>;
  'burndown-chart-points': Record<never, never>;
  'burndown-chart-ideal': Record<never, never>;
  'burndown-chart-start': Record<never, never>;
  'burndown-chart-today': Record<never, never>;
  'burndown-chart-pulled-in': Record<never, never>;
  'burndown-chart-surprise': Record<never, never>;
  'burndown-chart-left': { readonly points: number };
  'burndown-chart-added': { readonly points: number };
  'burndown-chart-added-none': Record<never, never>;
  'burndown-chart-added-in-all': { readonly points: number };
  'burndown-chart-no-days': Record<never, never>;
  'burndown-chart-one-day': { readonly day: string };
  'burndown-chart-days': { readonly from: string; readonly to: string; readonly days: number };
  'burndown-chart-commitment': { readonly points: number };
  'burndown-chart-state': {
    readonly beside: 'fewer' | 'more' | 'no-ideal' | 'same';
    readonly points: number;
    readonly day: string;
    readonly gap: number;
    readonly ideal: number;
  };
  'burndown-chart-blocked': { readonly cardDays: number };
  'burndown-chart-blocked-row': Record<never, never>;
  'burndown-chart-blocked-cards': { readonly cards: number };
  'burndown-chart-no-state': Record<never, never>;
  'burndown-alt-subject': { readonly sprint: string };
  'burndown-alt-today': { readonly day: string };
  'burndown-alt-added': {
    readonly happened: 'both' | 'nothing' | 'pulled-in' | 'surprise';
    readonly pulledIn: number;
    readonly surprise: number;
  };
  'burndown-alt-days': Record<never, never>;
  'burndown-alt-day': { readonly day: string; readonly facts: readonly string[] };
  'burndown-alt-day-left': { readonly points: number };
  'burndown-alt-day-pulled-in': { readonly points: number };
  'burndown-alt-day-surprise': { readonly points: number };
  'burndown-alt-day-not-needed': { readonly points: number };
  'burndown-alt-day-blocked': { readonly cards: number };
  'burndown-alt-days-left-out': { readonly days: number };
  'range-chart-title': Record<never, never>;
  'range-chart-committed': Record<never, never>;
  'range-chart-chance': Record<never, never>;
  'range-chart-advised': { readonly points: number };
  'range-chart-label': { readonly id: 'finishedWhole' | 'kept' | 'ranOut'; readonly chance: number };
  'range-chart-basis': { readonly sprints: number; readonly scaledTo: string };
  'range-alt-subject': { readonly team: string; readonly from: string; readonly to: string };
  'range-alt-chances': Record<never, never>;
  'range-alt-step': { readonly points: number; readonly facts: readonly string[] };
  'range-alt-kept': { readonly chance: number };
  'range-alt-finished': { readonly chance: number };
  'range-alt-ran-out': { readonly chance: number };
  'odds-chart-title': Record<never, never>;
  'odds-chart-estimate': Record<never, never>;
  'odds-chart-chance': Record<never, never>;
  'odds-chart-cards': Record<never, never>;
  'odds-chart-median': Record<never, never>;
  'odds-chart-all-sizes': { readonly share: number };
  'odds-chart-held': { readonly withSurprise: number; readonly cards: number };
  'odds-chart-none': Record<never, never>;
  'odds-chart-median-points': { readonly points: number };
  'odds-chart-own': Record<never, never>;
  'odds-chart-borrows': { readonly cards: number };
  'odds-chart-interval': Record<never, never>;
  'odds-chart-sizes': { readonly shown: number; readonly of: number };
  'odds-alt-subject': { readonly team: string };
  'odds-alt-borrowing': { readonly cards: number };
  'odds-alt-sizes': Record<never, never>;
  'odds-alt-size': {
    readonly points: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
    readonly facts: readonly string[];
  };
  'odds-alt-size-held': { readonly cards: number; readonly withSurprise: number };
  'odds-alt-size-borrows': Record<never, never>;
  'odds-alt-size-median': { readonly points: number };
  'odds-alt-sizes-left-out': { readonly sizes: number };
  'forecast-chart-title': { readonly points: number };
  'forecast-chart-chance': Record<never, never>;
  'forecast-chart-sprint-ends': Record<never, never>;
  'forecast-chart-date-chance': {
    readonly name: 'likely' | 'optimistic' | 'pessimistic';
    readonly chance: number;
  };
  'forecast-chart-date-sprint': { readonly sprint: number; readonly endsOn: string };
  'forecast-chart-no-date': Record<never, never>;
  'forecast-chart-not-within': { readonly sprints: number };
  'forecast-chart-work': { readonly growth: number; readonly startsOn: string };
  'forecast-chart-by-day': { readonly on: string; readonly chance: number };
  'forecast-chart-basis': { readonly sprints: number };
  'forecast-alt-subject': { readonly team: string; readonly points: number };
  'forecast-alt-date': {
    readonly name: 'likely' | 'optimistic' | 'pessimistic';
    readonly chance: number;
    readonly on: string;
    readonly sprint: number;
    readonly endsOn: string;
  };
  'forecast-alt-no-date': { readonly name: 'likely' | 'optimistic' | 'pessimistic'; readonly chance: number };
  'forecast-alt-chances': { readonly chances: readonly string[] };
  'forecast-alt-chance': { readonly sprint: number; readonly on: string; readonly chance: number };
  'forecast-alt-chances-left-out': { readonly sprints: number };
  'history-chart-title': Record<never, never>;
  'history-chart-value-and-velocity': Record<never, never>;
  'history-chart-no-value': Record<never, never>;
  'history-chart-measured-by': { readonly endsOn: string };
  'history-chart-sprint': Record<never, never>;
  'history-chart-imported': Record<never, never>;
  'history-chart-member-days': Record<never, never>;
  'history-chart-ordinary': Record<never, never>;
  'history-chart-threshold': Record<never, never>;
  'history-chart-crossed': Record<never, never>;
  'history-chart-signal': Record<never, never>;
  'history-chart-at-least': { readonly share: number };
  'history-chart-at-most': { readonly share: number };
  'history-chart-mark': { readonly share: number };
  'history-chart-above': { readonly line: string };
  'history-chart-limit': { readonly share: string };
  'history-chart-mean': { readonly share: string };
  'history-chart-velocity': { readonly share: string };
  'history-chart-value': { readonly share: string };
  'history-chart-per-member-day': { readonly share: string };
  'history-chart-times': { readonly times: number };
  'history-chart-no-sprint': Record<never, never>;
  'history-chart-sprints': { readonly sprints: number; readonly endsOn: string };
  'history-chart-latest-shown': { readonly sprints: number };
  'history-chart-usual-from': { readonly sprints: number };
  'history-alt-subject': { readonly team: string };
  'history-alt-imported': { readonly sprints: number; readonly to: string };
  'history-alt-ratio': { readonly ratio: string; readonly facts: readonly string[] };
  'history-alt-latest': { readonly share: string };
  'history-alt-latest-none': Record<never, never>;
  'history-alt-per-member-day': { readonly latest: string; readonly share: number };
  'history-alt-no-sprint': Record<never, never>;
  'history-alt-mean': { readonly share: number };
  'history-alt-usual': {
    readonly limits: 'both' | 'high' | 'low';
    readonly low: number;
    readonly high: number;
  };
  'history-alt-marks': { readonly marks: readonly string[] };
  'history-alt-crossed': { readonly sprints: number; readonly ends: readonly string[] };
  'history-alt-crossed-often': { readonly sprints: number; readonly last: string };
  'history-alt-signal': { readonly sprints: number; readonly ends: readonly string[] };
  'history-alt-signal-often': { readonly sprints: number; readonly last: string };
  'history-alt-value-growth': Record<never, never>;
  'history-alt-velocity-growth': Record<never, never>;
  'history-alt-last-known': { readonly share: number };
  'history-alt-all-values': { readonly values: readonly string[] };
  'history-alt-latest-values': { readonly count: number; readonly values: readonly string[] };
  'history-alt-no-value': Record<never, never>;
  'history-alt-ratios-left-out': { readonly ratios: number };
  'history-alt-values-left-out': { readonly values: number };
  'goal-question': { readonly sprint: string };
  'goal-question-goal': { readonly goal: string; readonly closes: string };
  'goal-question-shown': Record<never, never>;
  'goal-answer': { readonly met: 'no' | 'partly' | 'yes' };
  'goal-explain': Record<never, never>;
  'goal-title': Record<never, never>;
  'goal-submit': Record<never, never>;
  'goal-form': { readonly sprint: string; readonly goal: string };
  'goal-form-unnamed': { readonly sprint: string };
  'goal-met': Record<never, never>;
  'goal-note': Record<never, never>;
  'goal-note-hint': Record<never, never>;
  'verdict-title': { readonly sprint: string; readonly verdict: string };
  'verdict-kept': { readonly finished: number; readonly committed: number; readonly share: string };
  'verdict-missed': {
    readonly failed: 'both' | 'keptShare' | 'surpriseRatio';
    readonly finished: number;
    readonly committed: number;
    readonly share: string;
    readonly surprise: number;
  };
  'verdict-no-plan': { readonly finished: number };
  'verdict-goal': { readonly met: 'no' | 'partly' | 'unsaid' | 'yes'; readonly goal: string };
  'verdict-goal-unnamed': { readonly met: 'no' | 'partly' | 'yes' };
  'verdict-goal-note': { readonly note: string };
  'verdict-finished': {
    readonly is: 'beyond' | 'within';
    readonly finished: number;
    readonly committed: number;
    readonly value: string;
    readonly threshold: string;
  };
  'verdict-finished-no-plan': { readonly finished: number };
  'verdict-surprise': {
    readonly is: 'beyond' | 'within';
    readonly points: number;
    readonly value: string;
    readonly threshold: string;
    readonly drift: number;
  };
  'verdict-surprise-no-plan': { readonly points: number; readonly drift: number };
  'verdict-pulled-in': {
    readonly is: 'beyond' | 'within';
    readonly points: number;
    readonly value: string;
    readonly threshold: string;
  };
  'verdict-pulled-in-no-plan': { readonly points: number };
  'verdict-velocity': {
    readonly baseline: 'first-three' | 'itself' | 'named' | 'none';
    readonly points: number;
    readonly value: string;
    readonly baselineName: string;
  };
  'verdict-velocity-per-member-day': { readonly velocity: string; readonly growth: number };
  'verdict-try': { readonly try: string };
  'verdict-in-thread': Record<never, never>;
  'verdict-direct-how': Record<never, never>;
  'verdict-direct-on': { readonly team: string };
  'verdict-direct-end': Record<never, never>;
  'verdict-direct-off': { readonly team: string };
  'verdict-direct-begin': Record<never, never>;
  'verdict-blocked-days': { readonly days: number };
  'verdict-numbers-title': { readonly sprint: string };
  'verdict-cards-title': { readonly sprint: string };
  'verdict-notes-title': { readonly sprint: string };
  'verdict-cards-as-planned': Record<never, never>;
  'verdict-no-notes': Record<never, never>;
  'verdict-open-again': Record<never, never>;
  'verdict-corrected': { readonly version: number };
  'verdict-closed-early': { readonly day: string; readonly span: string };
  'verdict-next-plan': Record<never, never>;
  'verdict-next-planned': { readonly sprint: string; readonly startsOn: string };
  'verdict-next-overtaken': {
    readonly more: number;
    readonly cards: readonly string[];
    readonly number: string;
  };
  'verdict-next-correct': Record<never, never>;
  'verdict-reopen-until': { readonly moment: string };
  'verdict-retro': Record<never, never>;
  'verdict-reopen': Record<never, never>;
  'verdict-reopen-title': Record<never, never>;
  'verdict-reopen-text': Record<never, never>;
  'verdict-reopen-yes': Record<never, never>;
  'verdict-reopen-no': Record<never, never>;
  'verdict-changed-title': Record<never, never>;
  'verdict-changed-card': {
    readonly is: 'off-scale' | 'on-scale';
    readonly card: string;
    readonly estimate: number;
    readonly size: number;
    readonly growth: readonly string[];
  };
  'verdict-said-title': Record<never, never>;
  'verdict-said': {
    readonly about: 'block' | 'growth';
    readonly card: string;
    readonly day: string;
    readonly note: string;
  };
  'verdict-pulled-in-title': Record<never, never>;
  'verdict-pulled-in-card': { readonly card: string; readonly estimate: number; readonly progress: string };
  'verdict-dropped-title': Record<never, never>;
  'verdict-dropped-card': { readonly card: string; readonly estimate: number };
  'verdict-dropped-card-reason': {
    readonly card: string;
    readonly estimate: number;
    readonly reason: string;
  };
  'verdict-open-title': Record<never, never>;
  'verdict-open-card': { readonly card: string; readonly progress: string; readonly estimate: number };
  'verdict-more-cards': { readonly cards: number };
  'cancelled-title': { readonly sprint: string };
  'cancelled-by': { readonly person: string };
  'cancelled-by-reason': { readonly person: string; readonly reason: string };
  'cancelled-counts': Record<never, never>;
  'close-title': Record<never, never>;
  'close-submit': Record<never, never>;
  'close-leave': Record<never, never>;
  'close-when': { readonly sprint: string; readonly closes: string };
  'close-finished': { readonly finished: number; readonly committed: number };
  'close-all-finished': Record<never, never>;
  'close-open': { readonly cards: number; readonly left: number };
  'close-what-follows': Record<never, never>;
  'cancel-title': Record<never, never>;
  'cancel-submit': Record<never, never>;
  'cancel-leave': Record<never, never>;
  'cancel-what-follows': { readonly sprint: string };
  'cancel-reason': Record<never, never>;
  'cancel-reason-hint': Record<never, never>;
  'goal-recorded': { readonly met: 'no' | 'partly' | 'yes'; readonly sprint: string };
  'goal-recorded-next': Record<never, never>;
  'closed-reply': { readonly sprint: string; readonly verdict: string };
  'closed-reply-next': Record<never, never>;
  'cancelled-reply': { readonly sprint: string };
  'reopened-reply': { readonly sprint: string; readonly moment: string };
  'reopened-reply-next': { readonly day: string };
  'status-shared-reply': Record<never, never>;
  'advice-shared-reply': Record<never, never>;
  'overview-title': Record<never, never>;
  'overview-more-teams': { readonly teams: number };
  'overview-no-team': Record<never, never>;
  'overview-set-up': Record<never, never>;
  'overview-help': Record<never, never>;
  'overview-product-owner': Record<never, never>;
  'overview-no-sprint': { readonly role: 'facilitator' | 'other-role' };
  'overview-begins': { readonly sprint: string; readonly on: string; readonly span: string };
  'overview-running': { readonly sprint: string; readonly closing: string };
  'overview-no-card': Record<never, never>;
  'overview-cards': { readonly named: readonly string[]; readonly cards: number };
  'overview-cards-more': { readonly cards: number };
  'overview-asked': Record<never, never>;
  'overview-answered': Record<never, never>;
  'overview-unchanged': Record<never, never>;
  'overview-away': Record<never, never>;
  'overview-set-up-button': Record<never, never>;
  'overview-help-button': Record<never, never>;
  'overview-privacy-button': Record<never, never>;
  'overview-answer-button': Record<never, never>;
  'overview-change-answer-button': Record<never, never>;
  'overview-status-button': Record<never, never>;
  'overview-cards-button': Record<never, never>;
  'overview-pull-button': Record<never, never>;
  'overview-drop-button': Record<never, never>;
  'overview-plan-button': Record<never, never>;
  'overview-plan-another-button': Record<never, never>;
  'overview-range-button': Record<never, never>;
  'overview-odds-button': Record<never, never>;
  'overview-forecast-button': Record<never, never>;
  'overview-history-button': Record<never, never>;
  'overview-edit-button': Record<never, never>;
  'overview-close-button': Record<never, never>;
  'overview-cancel-button': Record<never, never>;
  'overview-reopen-button': Record<never, never>;
  'overview-retro-button': Record<never, never>;
  'overview-setup-button': Record<never, never>;
  'overview-setup-measures-button': Record<never, never>;
  'overview-value-button': Record<never, never>;
  'overview-digest-button': Record<never, never>;
  'overview-verdict-button': Record<never, never>;
  'overview-no-verdict-button': Record<never, never>;
  'overview-baseline-button': Record<never, never>;
  'overview-import-button': Record<never, never>;
  'overview-export-button': Record<never, never>;
  'help-title-member': Record<never, never>;
  'help-title-facilitator': Record<never, never>;
  'help-title-product-owner': Record<never, never>;
  'help-title-outside': Record<never, never>;
  'help-line-answer': Record<never, never>;
  'help-line-status': Record<never, never>;
  'help-line-pull': Record<never, never>;
  'help-line-blocked': Record<never, never>;
  'help-line-off': Record<never, never>;
  'help-line-plan': Record<never, never>;
  'help-line-range': Record<never, never>;
  'help-line-edit': Record<never, never>;
  'help-line-history': Record<never, never>;
  'help-line-drop': Record<never, never>;
  'help-line-goal': Record<never, never>;
  'help-line-forecast': Record<never, never>;
  'help-line-value': Record<never, never>;
  'help-line-setup': Record<never, never>;
  'help-line-privacy': Record<never, never>;
  'help-alone': Record<never, never>;
  'help-all-button': Record<never, never>;
  'help-title': Record<never, never>;
  'help-intro': Record<never, never>;
  'help-member': Record<never, never>;
  'help-team-and-owner': Record<never, never>;
  'help-product-owner': Record<never, never>;
  'help-facilitator': Record<never, never>;
  'help-anyone': Record<never, never>;
  'help-command': { readonly usage: string; readonly summary: string };
  'help-privacy': Record<never, never>;
  'command-answer-usage': Record<never, never>;
  'command-answer-summary': Record<never, never>;
  'command-cards-usage': Record<never, never>;
  'command-cards-summary': Record<never, never>;
  'command-status-usage': Record<never, never>;
  'command-status-summary': Record<never, never>;
  'command-pull-usage': Record<never, never>;
  'command-pull-summary': Record<never, never>;
  'command-take-usage': Record<never, never>;
  'command-take-summary': Record<never, never>;
  'command-give-usage': Record<never, never>;
  'command-give-summary': Record<never, never>;
  'command-release-usage': Record<never, never>;
  'command-release-summary': Record<never, never>;
  'command-assign-usage': Record<never, never>;
  'command-assign-summary': Record<never, never>;
  'command-undrop-usage': Record<never, never>;
  'command-undrop-summary': Record<never, never>;
  'command-blocked-usage': Record<never, never>;
  'command-blocked-summary': Record<never, never>;
  'command-moving-usage': Record<never, never>;
  'command-moving-summary': Record<never, never>;
  'command-drop-usage': Record<never, never>;
  'command-drop-summary': Record<never, never>;
  'command-reopen-usage': Record<never, never>;
  'command-reopen-summary': Record<never, never>;
  'command-range-usage': Record<never, never>;
  'command-range-summary': Record<never, never>;
  'command-odds-usage': Record<never, never>;
  'command-odds-summary': Record<never, never>;
  'command-forecast-usage': Record<never, never>;
  'command-forecast-summary': Record<never, never>;
  'command-history-usage': Record<never, never>;
  'command-history-summary': Record<never, never>;
  'command-off-usage': Record<never, never>;
  'command-off-summary': Record<never, never>;
  'command-works-usage': Record<never, never>;
  'command-works-summary': Record<never, never>;
  'command-ask-usage': Record<never, never>;
  'command-ask-summary': Record<never, never>;
  'command-plan-usage': Record<never, never>;
  'command-plan-summary': Record<never, never>;
  'command-edit-usage': Record<never, never>;
  'command-edit-summary': Record<never, never>;
  'command-guest-usage': Record<never, never>;
  'command-guest-summary': Record<never, never>;
  'command-goal-usage': Record<never, never>;
  'command-goal-summary': Record<never, never>;
  'command-close-usage': Record<never, never>;
  'command-close-summary': Record<never, never>;
  'command-cancel-usage': Record<never, never>;
  'command-cancel-summary': Record<never, never>;
  'command-value-usage': Record<never, never>;
  'command-value-summary': Record<never, never>;
  'command-try-usage': Record<never, never>;
  'command-try-summary': Record<never, never>;
  'command-experiments-usage': Record<never, never>;
  'command-experiments-summary': Record<never, never>;
  'command-retro-usage': Record<never, never>;
  'command-retro-summary': Record<never, never>;
  'command-digest-usage': Record<never, never>;
  'command-digest-summary': Record<never, never>;
  'command-verdict-usage': Record<never, never>;
  'command-verdict-summary': Record<never, never>;
  'command-baseline-usage': Record<never, never>;
  'command-baseline-summary': Record<never, never>;
  'command-import-usage': Record<never, never>;
  'command-import-summary': Record<never, never>;
  'command-import-remove-usage': Record<never, never>;
  'command-import-remove-summary': Record<never, never>;
  'command-export-usage': Record<never, never>;
  'command-export-summary': Record<never, never>;
  'command-setup-usage': Record<never, never>;
  'command-setup-summary': Record<never, never>;
  'command-move-usage': Record<never, never>;
  'command-move-summary': Record<never, never>;
  'command-setup-measures-usage': Record<never, never>;
  'command-setup-measures-summary': Record<never, never>;
  'command-end-usage': Record<never, never>;
  'command-end-summary': Record<never, never>;
  'command-resume-usage': Record<never, never>;
  'command-resume-summary': Record<never, never>;
  'command-leave-usage': Record<never, never>;
  'command-leave-summary': Record<never, never>;
  'command-privacy-usage': Record<never, never>;
  'command-privacy-summary': Record<never, never>;
  'command-help-usage': Record<never, never>;
  'command-help-summary': Record<never, never>;
  'days-off-day': { readonly first: string };
  'days-off-span': { readonly first: string; readonly last: string };
  'days-off-half-day': { readonly first: string };
  'days-off-half-span': { readonly first: string; readonly last: string };
  'days-off-far-day': { readonly first: string };
  'days-off-far-span': { readonly first: string; readonly last: string };
  'days-off-more': { readonly count: number };
  'days-off-own': { readonly share: 'all' | 'half' | 'none'; readonly days: readonly string[] };
  'days-off-team': {
    readonly share: 'all' | 'half' | 'none';
    readonly team: string;
    readonly days: readonly string[];
  };
  'days-off-several-teams': { readonly teams: readonly string[] };
  'weekdays-own': { readonly team: string; readonly days: string };
  'weekdays-own-all': { readonly team: string; readonly days: string };
  'days-off-title': Record<never, never>;
  'days-off-submit': Record<never, never>;
  'days-off-intro': { readonly team: string };
  'days-off-whose': Record<never, never>;
  'days-off-whose-own': Record<never, never>;
  'days-off-whose-team': Record<never, never>;
  'days-off-from': Record<never, never>;
  'days-off-to': Record<never, never>;
  'days-off-to-hint': Record<never, never>;
  'days-off-is-half': Record<never, never>;
  'days-off-is-half-yes': Record<never, never>;
  'days-off-take-back': Record<never, never>;
  'days-off-take-back-own': { readonly days: string };
  'days-off-take-back-team': { readonly days: string };
  'days-off-weekdays': Record<never, never>;
  'days-off-saved': { readonly days: readonly string[] };
  'days-off-saved-none': Record<never, never>;
  'days-off-saved-team': { readonly days: readonly string[] };
  'days-off-file': Record<never, never>;
  'days-off-file-hint': Record<never, never>;
  'days-off-holidays': Record<never, never>;
  'days-off-holidays-hint': Record<never, never>;
  'days-off-preview-lead': {
    readonly whose: 'own' | 'team';
    readonly file: string;
    readonly team: string;
    readonly first: string;
    readonly last: string;
    readonly count: number;
  };
  'days-off-preview-none': { readonly file: string; readonly first: string; readonly last: string };
  'days-off-preview-titled': { readonly days: string; readonly titles: readonly string[] };
  'days-off-preview-untitled': { readonly days: string };
  'days-off-preview-more': { readonly count: number };
  'days-off-preview-regions': { readonly regions: string };
  'days-off-preview-holidays': Record<never, never>;
  'days-off-preview-rule': Record<never, never>;
  'days-off-preview-left-out': Record<never, never>;
  'days-off-preview-left-out-more': { readonly count: number };
  'days-off-left-out': {
    readonly why: 'cancelled' | 'free' | 'no-working-day' | 'off-already' | 'too-short' | 'unreadable';
    readonly title: string;
    readonly days: string;
  };
  'days-off-left-out-outside': { readonly count: number };
  'days-off-untitled': Record<never, never>;
  'days-off-and-more': { readonly days: string; readonly count: number };
  'days-off-takes-free': Record<never, never>;
  'days-off-takes-free-yes': Record<never, never>;
  'days-off-preview-submit': Record<never, never>;
  'days-off-preview-check': Record<never, never>;
  'days-off-home': { readonly days: readonly string[] };
  'days-off-home-none': Record<never, never>;
  'days-off-home-button': Record<never, never>;
  'days-off-today': Record<never, never>;
  'plan-time': { readonly days: number };
  'plan-time-days': { readonly days: number };
  'plan-time-named': { readonly others: number; readonly named: number; readonly days: number };
  'plan-time-team-off': { readonly days: readonly string[] };
  'plan-time-person-off': { readonly person: string; readonly days: readonly string[] };
  'plan-time-person-part': { readonly person: string; readonly weekdays: string };
  'plan-time-person-both': {
    readonly person: string;
    readonly weekdays: string;
    readonly days: readonly string[];
  };
  'plan-time-more': { readonly count: number };
  'digest-title': { readonly sprint: string; readonly day: string };
  'digest-last-day': { readonly time: string };
  'digest-no-answers': { readonly day: string };
  'digest-answers': { readonly answered: number; readonly asked: number; readonly day: string };
  'digest-change': { readonly before: 'heavy' | 'light' | 'none' | 'on-the-line' | 'same' };
  'digest-surprise': {
    readonly points: number;
    readonly value: string;
    readonly threshold: string;
    readonly drift: number;
  };
  'digest-surprise-no-plan': { readonly points: number; readonly drift: number };
  'digest-blocked-title': Record<never, never>;
  'digest-blocked': { readonly card: string; readonly since: string };
  'digest-blocked-on': { readonly card: string; readonly since: string; readonly on: string };
  'digest-still-title': Record<never, never>;
  'digest-still': { readonly days: number; readonly card: string; readonly left: number };
  'digest-more': { readonly cards: number };
  'digest-none-still': Record<never, never>;
  'digest-how': Record<never, never>;
  'watch-turned-light': { readonly sprint: string };
  'watch-turned-on-the-line': { readonly sprint: string };
  'watch-turned-heavy': { readonly sprint: string };
  'watch-above-surpriseRatio': { readonly sprint: string };
  'watch-above-pullInRatio': { readonly sprint: string };
  'watch-ratio': { readonly value: string; readonly threshold: string };
  'watch-next': Record<never, never>;
  'weekly-line-title': { readonly days: number; readonly sprint: string };
  'weekly-line-left': { readonly committed: number; readonly left: number };
  'weekly-line-surprise': { readonly value: string; readonly threshold: string };
  'weekly-line-surprise-no-plan': { readonly points: number };
  'weekly-line-blocked': { readonly cards: number };
  'digest-form-title': Record<never, never>;
  'digest-submit': Record<never, never>;
  'digest-intro': { readonly team: string };
  'digest-at': Record<never, never>;
  'digest-at-hint': { readonly zone: string };
  'digest-set': { readonly team: string; readonly time: string };
  'digest-off': { readonly team: string };
  'digest-off-next': Record<never, never>;
  'doctor-level': { readonly level: 'fix' | 'ok' | 'warning' };
  'doctor-check': {
    readonly check:
      | 'charts'
      | 'clock'
      | 'data-folder'
      | 'database'
      | 'manifest'
      | 'port'
      | 'scopes'
      | 'settings'
      | 'time-zones'
      | 'token-keys'
      | 'tokens';
  };
  'doctor-usage': Record<never, never>;
  'doctor-check-failed': { readonly reason: string };
  'doctor-node-too-old': { readonly version: string; readonly oldest: string };
  'doctor-settings-fine': {
    readonly mode: string;
    readonly database: 'data-folder' | 'postgres';
    readonly folder: string;
    readonly metrics: 'off' | 'on';
    readonly metricsPort: string;
    readonly logLevel: string;
    readonly setUpBy: 'admins' | 'admins-and-named' | 'anybody' | 'named';
  };
  'doctor-settings-unknown': { readonly names: readonly string[] };
  'doctor-log-holds-words': { readonly logLevel: string };
  'doctor-settings-first': Record<never, never>;
  'doctor-database-none': Record<never, never>;
  'doctor-database-in-use': Record<never, never>;
  'doctor-database-answers': { readonly version: string };
  'doctor-way-encrypted': Record<never, never>;
  'doctor-way-on-this-machine': Record<never, never>;
  'doctor-way-unencrypted': Record<never, never>;
  'doctor-no-tables': Record<never, never>;
  'doctor-migrations-changed': Record<never, never>;
  'doctor-migrations-newer': Record<never, never>;
  'doctor-migrations-applied': { readonly count: number };
  'doctor-migrations-pending': { readonly count: number };
  'doctor-writable': Record<never, never>;
  'doctor-read-only': Record<never, never>;
  'doctor-no-room': Record<never, never>;
  'doctor-tables-not-writable': { readonly reason: string };
  'doctor-schemas-not-allowed': { readonly reason: string };
  'doctor-encoding': { readonly encoding: string };
  'doctor-few-connections': { readonly free: number; readonly needed: number };
  'doctor-posts-waiting': { readonly count: number };
  'doctor-posts-late': { readonly count: number; readonly minutes: number };
  'doctor-posts-held-back': { readonly count: number };
  'doctor-posts-undelivered': {
    readonly count: number;
    readonly cause:
      | 'our-defect'
      | 'permission'
      | 'person-gone'
      | 'place-gone'
      | 'token-gone'
      | 'tries-failed';
    readonly codes: readonly string[];
  };
  'doctor-tokens-unused': Record<never, never>;
  'doctor-keys-missing': { readonly names: readonly string[] };
  'doctor-keys-former': { readonly names: readonly string[] };
  'doctor-keys-fine': Record<never, never>;
  'doctor-folder-not-a-folder': { readonly folder: string };
  'doctor-folder-not-writable': { readonly folder: string; readonly reason: string };
  'doctor-folder-writable': { readonly folder: string };
  'doctor-folder-absent': { readonly folder: string };
  'doctor-folder-open': { readonly folder: string };
  'doctor-disk-filling': { readonly megabytes: number; readonly folder: string };
  'doctor-disk-full': { readonly megabytes: number; readonly folder: string };
  'doctor-token-fine': { readonly workspace: string };
  'doctor-scopes-fine': Record<never, never>;
  'doctor-scope-lacking': {
    readonly scope: string;
    readonly use:
      | 'command'
      | 'direct'
      | 'download'
      | 'join-channels'
      | 'mentions'
      | 'people'
      | 'post'
      | 'post-public'
      | 'read-channels'
      | 'read-direct'
      | 'read-groups'
      | 'see-channels'
      | 'see-groups'
      | 'upload';
  };
  'doctor-scopes-unneeded': { readonly scopes: readonly string[] };
  'doctor-signing-secret-set': Record<never, never>;
  'doctor-socket-opens': Record<never, never>;
  'doctor-clock-agrees': { readonly other: 'database' | 'platform' };
  'doctor-clock-off': {
    readonly other: 'database' | 'platform';
    readonly seconds: number;
    readonly direction: 'ahead' | 'behind';
  };
  'doctor-clock-far-off': {
    readonly other: 'database' | 'platform';
    readonly seconds: number;
    readonly direction: 'ahead' | 'behind';
  };
  'doctor-clock-difference': {
    readonly other: 'database' | 'platform';
    readonly seconds: number;
    readonly direction: 'ahead' | 'behind';
  };
  'doctor-clock-unread': Record<never, never>;
  'doctor-port-any': Record<never, never>;
  'doctor-port-free': { readonly port: string };
  'doctor-port-ours': { readonly port: string };
  'doctor-port-taken': { readonly port: string };
  'doctor-address-not-here': { readonly address: string };
  'doctor-port-refused': { readonly port: string; readonly reason: string };
  'doctor-manifest-unreadable': { readonly reason: string };
  'doctor-manifest-no-json': Record<never, never>;
  'doctor-manifest-save': Record<never, never>;
  'doctor-manifest-fine': Record<never, never>;
  'doctor-manifest-for-sockets': Record<never, never>;
  'doctor-manifest-apply': Record<never, never>;
  'doctor-manifest-command': { readonly command: string };
  'doctor-manifest-escape': { readonly command: string };
  'doctor-manifest-scopes': { readonly scopes: readonly string[] };
  'doctor-manifest-events': { readonly events: readonly string[] };
  'doctor-manifest-buttons': Record<never, never>;
  'doctor-manifest-home': Record<never, never>;
  'doctor-manifest-rotation': Record<never, never>;
  'doctor-manifest-return': { readonly address: string };
  'doctor-manifest-socket-off': Record<never, never>;
  'doctor-manifest-socket-on': Record<never, never>;
  'doctor-manifest-urls': { readonly fields: readonly string[] };
  'doctor-charts-fine': Record<never, never>;
  'doctor-charts-broken': { readonly reason: string };
  'doctor-zones-fine': Record<never, never>;
  'doctor-zones-unknown': Record<never, never>;
  'evidence-blocked': {
    readonly cards: number;
    readonly card: string;
    readonly cardDays: number;
    readonly points: number;
    readonly unfinishedPoints: number;
  };
  'evidence-blocked-ask': Record<never, never>;
  'evidence-blocked-try': Record<never, never>;
  'evidence-plan-changed': {
    readonly droppedCards: number;
    readonly droppedPoints: number;
    readonly pulledInPoints: number;
  };
  'evidence-plan-changed-ask': Record<never, never>;
  'evidence-plan-changed-try': Record<never, never>;
  'evidence-pulled-in-before': {
    readonly pulledInPoints: number;
    readonly from: string;
    readonly unfinishedPoints: number;
  };
  'evidence-pulled-in-before-ask': Record<never, never>;
  'evidence-pulled-in-before-try': Record<never, never>;
  'evidence-dropped': {
    readonly part: 'all' | 'some';
    readonly cards: number;
    readonly points: number;
    readonly unfinishedPoints: number;
  };
  'evidence-dropped-ask': Record<never, never>;
  'evidence-dropped-try': Record<never, never>;
  'evidence-one-card': {
    readonly part: 'all' | 'some';
    readonly after: 'nothing' | 'surprise';
    readonly card: string;
    readonly leftPoints: number;
    readonly surprisePoints: number;
    readonly points: number;
    readonly unfinishedPoints: number;
  };
  'evidence-one-card-ask': Record<never, never>;
  'evidence-one-card-try': Record<never, never>;
  'evidence-grew': {
    readonly by: 'both' | 'drift' | 'surprise';
    readonly growthPoints: number;
    readonly unfinishedPoints: number;
    readonly surprisePoints: number;
    readonly driftPoints: number;
  };
  'evidence-grew-ask': Record<never, never>;
  'evidence-grew-try': Record<never, never>;
  'evidence-days-off': { readonly daysOff: number; readonly of: number };
  'evidence-days-off-ask': Record<never, never>;
  'evidence-days-off-try': Record<never, never>;
  'evidence-never-begun': {
    readonly cards: number;
    readonly points: number;
    readonly unfinishedPoints: number;
  };
  'evidence-never-begun-ask': Record<never, never>;
  'evidence-never-begun-try': Record<never, never>;
  'evidence-open-on-last-morning': { readonly cards: number; readonly of: number };
  'evidence-open-on-last-morning-ask': Record<never, never>;
  'evidence-open-on-last-morning-try': Record<never, never>;
  'evidence-nearly-done': {
    readonly cards: number;
    readonly leftPoints: number;
    readonly unfinishedPoints: number;
  };
  'evidence-nearly-done-ask': Record<never, never>;
  'evidence-nearly-done-try': Record<never, never>;
  'evidence-worked-less': { readonly workedPoints: number; readonly commitmentPoints: number };
  'evidence-worked-less-ask': Record<never, never>;
  'evidence-worked-less-try': Record<never, never>;
  'evidence-surprise-one-card': {
    readonly part: 'all' | 'some';
    readonly card: string;
    readonly surprisePoints: number;
    readonly allPoints: number;
  };
  'evidence-surprise-one-card-ask': Record<never, never>;
  'evidence-surprise-one-card-try': Record<never, never>;
  'evidence-surprise-large-cards': {
    readonly cards: number;
    readonly surprisePoints: number;
    readonly allPoints: number;
    readonly sizePoints: number;
  };
  'evidence-surprise-large-cards-ask': Record<never, never>;
  'evidence-surprise-large-cards-try': Record<never, never>;
  'evidence-surprise-spread': { readonly cards: number; readonly of: number };
  'evidence-surprise-spread-ask': Record<never, never>;
  'evidence-surprise-spread-try': Record<never, never>;
  'evidence-pulled-in-after': { readonly points: number; readonly allPoints: number };
  'evidence-pulled-in-after-ask': Record<never, never>;
  'evidence-pulled-in-after-try': Record<never, never>;
  'evidence-pulled-in-late': { readonly points: number; readonly allPoints: number; readonly from: string };
  'evidence-pulled-in-late-ask': Record<never, never>;
  'evidence-pulled-in-late-try': Record<never, never>;
  'evidence-pulled-in-while-open': { readonly points: number; readonly allPoints: number };
  'evidence-pulled-in-while-open-ask': Record<never, never>;
  'evidence-pulled-in-while-open-try': Record<never, never>;
  'evidence-estimates-one-card': {
    readonly part: 'all' | 'some';
    readonly card: string;
    readonly estimatePoints: number;
    readonly sizePoints: number;
    readonly offPoints: number;
    readonly allPoints: number;
  };
  'evidence-estimates-one-card-ask': Record<never, never>;
  'evidence-estimates-one-card-try': Record<never, never>;
  'evidence-estimates-spread': {
    readonly cards: number;
    readonly of: number;
    readonly allPoints: number;
    readonly larger: number;
  };
  'evidence-estimates-spread-ask': Record<never, never>;
  'evidence-estimates-spread-try': Record<never, never>;
  'evidence-all-finished': { readonly daysLeft: number; readonly day: string; readonly cards: number };
  'evidence-all-cards': { readonly cards: number };
  'evidence-all-finished-ask': Record<never, never>;
  'evidence-nothing-grew': Record<never, never>;
  'evidence-nothing-grew-ask': Record<never, never>;
  'evidence-little-surprise': { readonly surprisePoints: number; readonly commitmentPoints: number };
  'evidence-little-surprise-ask': Record<never, never>;
  'evidence-went-well-try': Record<never, never>;
  'evidence-no-plan': Record<never, never>;
  'evidence-no-plan-facts': { readonly pulledIn: number; readonly finished: number };
  'evidence-no-plan-ask': Record<never, never>;
  'evidence-no-plan-try': Record<never, never>;
  'try-title': Record<never, never>;
  'try-submit': Record<never, never>;
  'try-intro': { readonly team: string };
  'try-changes': { readonly text: string };
  'try-text': Record<never, never>;
  'try-text-hint': Record<never, never>;
  'try-ratio': Record<never, never>;
  'try-direction': Record<never, never>;
  'try-direction-choice': { readonly direction: 'down' | 'up' };
  experiment: {
    readonly direction: 'down' | 'up';
    readonly text: string;
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'experiment-result': {
    readonly reading: 'beyond' | 'early' | 'ordinary';
    readonly experiment: string;
    readonly before: string;
    readonly now: string;
  };
  'experiment-result-first': {
    readonly reading: 'beyond' | 'early' | 'ordinary';
    readonly experiment: string;
    readonly now: string;
  };
  'experiment-no-number': Record<never, never>;
  'experiments-in-thread': Record<never, never>;
  'try-this': Record<never, never>;
  'plan-trying': { readonly experiments: readonly string[] };
  'experiment-kept': { readonly experiment: string };
  'experiment-kept-next': Record<never, never>;
  'experiment-ended': { readonly outcome: 'change' | 'drop' | 'keep'; readonly text: string };
  'experiment-question': { readonly text: string };
  'experiment-outcome': { readonly outcome: 'change' | 'drop' | 'keep' };
  'experiment-question-means': Record<never, never>;
  'experiments-title': { readonly team: string };
  'experiments-none': Record<never, never>;
  'experiments-none-next': Record<never, never>;
  'experiments-open': { readonly number: number; readonly experiment: string; readonly since: string };
  'experiments-past-title': Record<never, never>;
  'experiments-past': {
    readonly outcome: 'change' | 'drop' | 'keep';
    readonly experiment: string;
    readonly at: string;
  };
  'experiments-more': { readonly count: number };
  'experiments-how': Record<never, never>;
  'forecast-lead': {
    readonly points: number;
    readonly likely: string;
    readonly likelyChance: number;
    readonly optimistic: string;
    readonly optimisticChance: number;
    readonly pessimistic: string;
    readonly pessimisticChance: number;
  };
  'forecast-lead-without-pessimistic': {
    readonly points: number;
    readonly likely: string;
    readonly likelyChance: number;
    readonly optimistic: string;
    readonly optimisticChance: number;
  };
  'forecast-lead-optimistic-only': {
    readonly points: number;
    readonly optimistic: string;
    readonly optimisticChance: number;
    readonly likelyChance: number;
    readonly sprints: number;
  };
  'forecast-lead-no-date': { readonly points: number; readonly sprints: number };
  'forecast-by-day-lead': {
    readonly points: number;
    readonly on: string;
    readonly chance: number;
    readonly surePoints: number;
    readonly sureChance: number;
    readonly evenPoints: number;
    readonly evenChance: number;
  };
  'forecast-amounts-lead': {
    readonly on: string;
    readonly surePoints: number;
    readonly sureChance: number;
    readonly evenPoints: number;
    readonly evenChance: number;
  };
  'forecast-amounts-promise': { readonly points: number };
  'forecast-date': {
    readonly name: 'likely' | 'optimistic' | 'pessimistic';
    readonly on: string;
    readonly sprint: number;
    readonly chance: number;
  };
  'forecast-date-none': { readonly name: 'likely' | 'optimistic' | 'pessimistic' };
  'forecast-promise': Record<never, never>;
  'forecast-promise-none': Record<never, never>;
  'forecast-basis': { readonly sprints: number; readonly pacePoints: number };
  'forecast-graded': { readonly forecasts: number };
  'forecast-basis-imported': { readonly sprints: number; readonly imported: number };
  'forecast-rhythm': { readonly days: number; readonly startsOn: string };
  'forecast-growth': { readonly pace: 'faster' | 'half' | 'none' | 'slow'; readonly points: number };
  'forecast-share': { readonly share: number };
  'forecast-growth-span': { readonly low: number; readonly high: number };
  'forecast-growth-measured': { readonly sprints: number };
  'forecast-growth-settled': Record<never, never>;
  'forecast-mid-sprint': Record<never, never>;
  'forecast-unknown-other-work': Record<never, never>;
  'forecast-unknown-share': Record<never, never>;
  'forecast-unknown-size': Record<never, never>;
  'forecast-unknown-future': Record<never, never>;
  'forecast-unknown-measured': Record<never, never>;
  'forecast-unknown-growth': Record<never, never>;
  'forecast-form-title': Record<never, never>;
  'forecast-form-submit': Record<never, never>;
  'forecast-form-intro': { readonly team: string };
  'forecast-form-pace': { readonly sprints: number; readonly amounts: readonly string[] };
  'forecast-form-points': Record<never, never>;
  'forecast-form-points-hint': Record<never, never>;
  'forecast-form-growth': Record<never, never>;
  'forecast-form-growth-hint': Record<never, never>;
  'forecast-form-share': Record<never, never>;
  'forecast-form-share-hint': Record<never, never>;
  'forecast-form-by-day': Record<never, never>;
  'forecast-form-by-day-hint': Record<never, never>;
  'forecast-question': Record<never, never>;
  'forecast-question-button': Record<never, never>;
  'amount-points': { readonly amount: number };
  'amount-chance': { readonly amount: number };
  'amount-chance-below': { readonly amount: number };
  'amount-chance-above': { readonly amount: number };
  'amount-percent-span': { readonly amount: number; readonly high: number };
  'amount-in-ten': { readonly amount: number };
  'amount-tenths': { readonly amount: number };
  'amount-times-in-ten': { readonly amount: number };
  somebody: Record<never, never>;
  'amount-percent': { readonly share: number };
  'amount-whole-percent': { readonly share: number };
  'amount-number': { readonly amount: number };
  'amount-day': { readonly day: string };
  'amount-short-date': { readonly day: string };
  'amount-short-date-no-year': { readonly day: string };
  'amount-percentage-points': { readonly count: number; readonly amount: string };
  'guests-changed': {
    readonly act: 'added' | 'removed';
    readonly count: number;
    readonly guests: readonly string[];
    readonly sprint: string;
  };
  'guest-welcome-title': { readonly sprint: string; readonly team: string };
  'guest-welcome-asked': {
    readonly days: 'one-day' | 'several';
    readonly by: string;
    readonly from: string;
    readonly to: string;
  };
  'guest-welcome-after': Record<never, never>;
  'history-none': Record<never, never>;
  'history-one-signal': Record<never, never>;
  'history-signals': { readonly count: number; readonly ratios: readonly string[] };
  'history-ordinary': { readonly sprints: number };
  'history-changed-before': { readonly ratios: readonly string[] };
  'history-too-early': { readonly sprints: number; readonly needed: number };
  'history-too-early-each': { readonly needed: number };
  'history-signal': {
    readonly kind: 'above' | 'below' | 'fall' | 'rise';
    readonly value: number;
    readonly low: number;
    readonly high: number;
    readonly mean: number;
    readonly sprints: number;
    readonly before: number;
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'history-ask': Record<never, never>;
  'history-often-crossed': { readonly ratios: readonly string[] };
  'history-often': {
    readonly line: 'band' | 'ceiling' | 'floor';
    readonly floor: number;
    readonly sprints: number;
    readonly of: number;
    readonly ceiling: number;
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'history-glance-title': Record<never, never>;
  'history-glance': {
    readonly sprints: number;
    readonly value: number;
    readonly mean: number;
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'history-goals': {
    readonly met: number;
    readonly sprints: number;
    readonly partly: number;
    readonly kept: number;
  };
  'history-lines-title': Record<never, never>;
  'history-latest': {
    readonly value: number;
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'history-latest-none': {
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'history-unknown': {
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'history-usual': {
    readonly reading: 'ordinary' | 'signal' | 'unusual';
    readonly mean: number;
    readonly low: number;
    readonly high: number;
  };
  'history-changed': { readonly sprints: number; readonly before: number };
  'history-mean': { readonly mean: number; readonly sprints: number };
  'history-first': Record<never, never>;
  'history-marks': { readonly marks: readonly string[] };
  'history-floor': {
    readonly often: 'always' | 'never' | 'once' | 'sometimes';
    readonly floor: number;
    readonly of: number;
    readonly sprints: number;
  };
  'history-ceiling': {
    readonly often: 'always' | 'never' | 'once' | 'sometimes';
    readonly ceiling: number;
    readonly of: number;
    readonly sprints: number;
  };
  'history-band': {
    readonly often: 'always' | 'never' | 'once' | 'sometimes';
    readonly floor: number;
    readonly ceiling: number;
    readonly of: number;
    readonly sprints: number;
  };
  'history-reading': { readonly sprints: number };
  'history-reading-from': { readonly needed: number };
  'history-velocity-growth': { readonly sprint: string };
  'history-velocity-growth-median': Record<never, never>;
  'history-growth-per-member-day': { readonly growth: number };
  'history-velocity-growth-none': Record<never, never>;
  'history-value-none': Record<never, never>;
  'history-value-unknown': Record<never, never>;
  'history-value-first': { readonly sprint: string };
  'history-value': { readonly latest: string; readonly value: number; readonly first: string };
  'history-value-velocity': {
    readonly latest: string;
    readonly value: number;
    readonly first: string;
    readonly velocity: number;
  };
  'history-value-point': {
    readonly latest: string;
    readonly value: number;
    readonly first: string;
    readonly velocity: number;
    readonly point: number;
  };
  'history-basis': { readonly sprints: number; readonly startsOn: string; readonly endsOn: string };
  'history-basis-imported': { readonly imported: number };
  'history-cancelled': Record<never, never>;
  'history-unknown-cause': Record<never, never>;
  'history-unknown-target': Record<never, never>;
  'history-unknown-value': Record<never, never>;
  'home-team': { readonly team: string };
  'home-team-sprint': { readonly team: string; readonly sprint: string };
  'home-cards': { readonly cards: number };
  'home-card': { readonly card: string; readonly left: string };
  'home-cards-more': { readonly cards: number };
  'home-not-asked': { readonly when: 'later' | 'today'; readonly time: string };
  'home-next-question': { readonly at: string };
  'home-goal': { readonly goal: string };
  'home-days': { readonly left: number; readonly of: number; readonly closing: string };
  'home-burndown': { readonly left: number; readonly committed: number; readonly ideal: number };
  'home-burndown-no-plan': { readonly left: number };
  'home-next-say-who-reads': { readonly posts: number };
  'home-next-find-owners': { readonly cards: number };
  'home-next-finish-corrections': Record<never, never>;
  'home-next-finish-draft': { readonly sprint: string };
  'home-next-plan': { readonly when: 'now' | 'soon' };
  'home-burndown-button': Record<never, never>;
  'home-more-button': Record<never, never>;
  'home-owners-button': Record<never, never>;
  'home-close-button': Record<never, never>;
  'home-plan-button': Record<never, never>;
  'home-draft-button': Record<never, never>;
  'home-no-team-title': Record<never, never>;
  'home-no-team': Record<never, never>;
  'file-no-csv': Record<never, never>;
  'file-too-many-characters': { readonly count: number; readonly most: number };
  'file-empty': Record<never, never>;
  'file-no-line': { readonly line: number; readonly problem: string };
  'file-too-many-columns': { readonly count: number; readonly most: number };
  'file-too-many-lines': { readonly count: number; readonly most: number };
  'file-same-columns': { readonly first: string; readonly second: string; readonly column: string };
  'file-no-column-names': { readonly needed: readonly string[] };
  'file-missing-columns': {
    readonly kind:
      | 'answers'
      | 'bodies'
      | 'cards'
      | 'changes'
      | 'dates'
      | 'experiments'
      | 'sprints'
      | 'values';
    readonly missing: readonly string[];
    readonly needed: readonly string[];
  };
  'file-quoted': { readonly text: string };
  'file-all-too-long': { readonly most: number };
  'file-too-many-in-all': { readonly most: number };
  'file-needs-file': { readonly kind: 'answers' | 'bodies' | 'cards' | 'changes' | 'dates' | 'sprints' };
  'file-misplaced-quote': Record<never, never>;
  'file-too-many-quotes': Record<never, never>;
  'file-endless-line': { readonly most: number };
  'file-too-many-cells': {
    readonly separator: 'comma' | 'semicolon' | 'tab';
    readonly cells: number;
    readonly columns: number;
  };
  'file-far-too-many-cells': { readonly separator: 'comma' | 'semicolon' | 'tab'; readonly columns: number };
  'file-no-day': { readonly typed: string; readonly column: string };
  'file-no-such-day': { readonly typed: string; readonly column: string };
  'file-no-count': { readonly typed: string; readonly column: string };
  'file-no-share': { readonly typed: string; readonly column: string; readonly most: number };
  'file-no-choice': { readonly typed: string; readonly column: string; readonly choices: readonly string[] };
  'file-no-points': { readonly typed: string; readonly column: string };
  'file-out-of-bounds': {
    readonly typed: string;
    readonly column: string;
    readonly least: number;
    readonly most: number;
  };
  'file-no-number': { readonly column: string; readonly problem: string };
  'file-too-large': { readonly column: string };
  'file-too-long': { readonly column: string; readonly length: number; readonly most: number };
  'file-no-cell': { readonly column: string };
  'file-member-days': { readonly most: number };
  'file-days-reversed': { readonly last: string; readonly first: string };
  'file-sprint-too-long': { readonly days: number; readonly most: number };
  'file-too-early': { readonly first: string; readonly earliest: string };
  'file-finished-more': { readonly finished: number; readonly held: number };
  'file-finished-of-commitment': Record<never, never>;
  'file-finished-beside': Record<never, never>;
  'file-too-many-sprints': { readonly sprints: number; readonly most: number };
  'file-days-taken': { readonly sprint: string; readonly first: string; readonly last: string };
  'file-sprint-twice': {
    readonly where: 'elsewhere' | 'here';
    readonly sprint: string;
    readonly line: number;
    readonly file: string;
  };
  'file-days-shared': {
    readonly where: 'elsewhere' | 'here';
    readonly sprint: string;
    readonly line: number;
    readonly file: string;
  };
  'file-closed-before': { readonly day: string };
  'file-closed-later': { readonly day: string };
  'file-not-over': { readonly last: string };
  'file-several-sprints': { readonly sprint: string };
  'file-not-closed': { readonly sprint: string };
  'file-not-closed-then': { readonly sprint: string; readonly first: string };
  'file-no-such-sprint': { readonly sprint: string };
  'file-no-such-sprint-then': { readonly sprint: string; readonly first: string };
  'file-no-cards': { readonly sprint: string };
  'file-answers-denied': Record<never, never>;
  'file-sums-differ': { readonly sums: readonly string[] };
  'file-sum-differs': { readonly column: string; readonly said: number; readonly is: number };
  'file-too-many-cards': { readonly cards: number; readonly most: number };
  'file-card-link': { readonly most: number };
  'file-number-zero': Record<never, never>;
  'file-number-twice': { readonly number: number; readonly sprint: string; readonly line: number };
  'file-name-twice': { readonly name: string; readonly line: number };
  'file-no-coming-day': Record<never, never>;
  'file-coming-day-outside': { readonly day: string; readonly sprint: string };
  'file-planned-later': { readonly first: string };
  'file-no-end': Record<never, never>;
  'file-nothing-left': Record<never, never>;
  'file-worked-out-of-bounds': { readonly worked: number; readonly most: number };
  'file-end-outside': { readonly day: string; readonly sprint: string };
  'file-grown-too-large': { readonly most: number };
  'file-unbalanced': { readonly held: number; readonly done: number };
  'file-amount-differs': { readonly column: string; readonly said: number; readonly is: number };
  'file-end-differs': { readonly column: string; readonly said: string; readonly is: string };
  'file-never-ended': { readonly column: string; readonly said: string };
  'file-no-such-card': { readonly sprint: string; readonly card: string };
  'file-day-outside': {
    readonly day: string;
    readonly sprint: string;
    readonly first: string;
    readonly last: string;
  };
  'file-before-card': { readonly came: string; readonly day: string };
  'file-after-drop': { readonly dropped: string; readonly day: string };
  'file-answer-twice': { readonly answer: number; readonly day: string; readonly line: number };
  'file-surprise-differs': {
    readonly worked: number;
    readonly left: number;
    readonly before: number;
    readonly growth: number;
    readonly said: number;
    readonly most: number;
  };
  'file-growth-differs': {
    readonly worked: number;
    readonly left: number;
    readonly before: number;
    readonly growth: number;
    readonly said: number;
  };
  'file-dropped-twice': { readonly line: number };
  'file-change-alone': Record<never, never>;
  'file-after-answer': { readonly said: number; readonly answers: number };
  'file-body-name': { readonly most: number };
  'file-body-points': { readonly most: number };
  'file-body-growth': { readonly most: number };
  'file-body-growth-alone': Record<never, never>;
  'file-body-growth-reversed': { readonly most: number; readonly least: number };
  'file-body-share': { readonly least: number };
  'file-body-shares': { readonly share: number };
  'file-bodies-many': { readonly count: number; readonly most: number };
  'file-day-early': { readonly column: string; readonly day: string; readonly earliest: string };
  'file-day-not-come': { readonly column: string; readonly day: string };
  'file-before-kept': { readonly column: string; readonly day: string; readonly kept: string };
  'file-body-twice': { readonly body: string; readonly line: number; readonly file: string };
  'file-turn-twice': {
    readonly body: string;
    readonly line: number;
    readonly file: string;
    readonly turn: number;
  };
  'file-no-body': { readonly body: string };
  'file-no-body-then': { readonly body: string; readonly kept: string };
  'file-several-bodies': { readonly body: string };
  'file-told-order': Record<never, never>;
  'file-told-twice': {
    readonly body: string;
    readonly day: string;
    readonly line: number;
    readonly file: string;
  };
  'import-warning-same-name': { readonly sprints: readonly string[] };
  'import-warning-no-finished': { readonly count: number; readonly sprints: readonly string[] };
  'import-warning-no-working-day': { readonly count: number; readonly sprints: readonly string[] };
  'import-title': Record<never, never>;
  'import-submit': Record<never, never>;
  'import-check': Record<never, never>;
  'import-check-again': Record<never, never>;
  'import-intro': { readonly team: string };
  'import-known-none': Record<never, never>;
  'import-known': { readonly sprints: number };
  'import-shown-first': Record<never, never>;
  'import-example': Record<never, never>;
  'import-kept': Record<never, never>;
  'import-kept-hint': Record<never, never>;
  'import-files': Record<never, never>;
  'import-files-hint': Record<never, never>;
  'import-more-files': Record<never, never>;
  'import-more-files-hint': Record<never, never>;
  'import-paste': Record<never, never>;
  'import-paste-hint': Record<never, never>;
  'import-more-lines': { readonly field: number; readonly fields: number };
  'import-more-lines-hint': { readonly characters: number };
  'import-pasted-lines': Record<never, never>;
  'import-pick-again': { readonly files: readonly string[] };
  'import-bad-lines': { readonly lines: number };
  'import-bad-file': { readonly file: string; readonly problem: string };
  'import-bad-places': { readonly file: string; readonly places: string; readonly problem: string };
  'import-places': { readonly count: number; readonly lines: readonly string[] };
  'import-places-run': { readonly first: string; readonly last: string };
  'import-more-items': { readonly count: number };
  'import-more-problems': { readonly count: number };
  'import-correct': Record<never, never>;
  'import-to-import': { readonly sprints: number; readonly first: string; readonly last: string };
  'import-nothing-new': Record<never, never>;
  'import-nothing': Record<never, never>;
  'import-bodies-to-import': { readonly bodies: number };
  'import-only-sums': Record<never, never>;
  'import-with-cards': { readonly cards: number; readonly answers: number };
  'import-cards-of-some': { readonly given: number; readonly sprints: number };
  'import-sprints-head': Record<never, never>;
  'import-sprint': {
    readonly sprint: string;
    readonly first: string;
    readonly last: string;
    readonly facts: readonly string[];
  };
  'import-committed': { readonly points: number };
  'import-finished': { readonly points: number };
  'import-finished-unknown': Record<never, never>;
  'import-cards': { readonly cards: number };
  'import-more-sprints': { readonly count: number };
  'import-bodies-head': Record<never, never>;
  'import-body': { readonly state: 'done' | 'to-do'; readonly body: string; readonly points: number };
  'import-left-out-head': Record<never, never>;
  'import-left-out': {
    readonly why: 'cancelled' | 'known' | 'running';
    readonly sprint: string;
    readonly first: string;
  };
  'import-body-left-out': {
    readonly why: 'known' | 'long-done';
    readonly body: string;
    readonly most: number;
  };
  'import-correct-known': Record<never, never>;
  'import-check-head': Record<never, never>;
  'import-more': { readonly count: number };
  'import-unused-columns': {
    readonly count: number;
    readonly file: string;
    readonly columns: readonly string[];
  };
  'import-unused-experiments': { readonly file: string };
  'import-unused-column': { readonly column: string };
  'import-becomes-history': Record<never, never>;
  'import-done': {
    readonly sprints: number;
    readonly team: string;
    readonly first: string;
    readonly last: string;
  };
  'import-done-bodies': { readonly bodies: number; readonly team: string };
  'import-done-cards': { readonly cards: number; readonly answers: number };
  'import-done-left-out': { readonly sprints: number };
  'import-done-known': { readonly sprints: number };
  'remove-title': Record<never, never>;
  'remove-submit': Record<never, never>;
  'remove-intro': { readonly team: string };
  'remove-none': { readonly team: string };
  'remove-sprint': Record<never, never>;
  'remove-older': { readonly sprints: number };
  'remove-confirm-title': Record<never, never>;
  'remove-confirm-submit': Record<never, never>;
  'remove-confirm-lead': { readonly sprint: string; readonly first: string; readonly last: string };
  'remove-confirm-what': Record<never, never>;
  'remove-confirm-left': { readonly sprints: number };
  'remove-done': { readonly sprint: string };
  'import-removed-post': { readonly person: string; readonly sprint: string };
  'export-done': { readonly files: number; readonly team: string; readonly held: readonly string[] };
  'export-sprints': { readonly count: number };
  'export-cards': { readonly count: number };
  'export-answers': { readonly count: number };
  'export-changes': { readonly count: number };
  'export-bodies': { readonly count: number };
  'export-experiments': { readonly count: number };
  'export-parts': { readonly parts: number };
  'export-marked': { readonly marked: readonly string[] };
  'export-running': { readonly count: number };
  'export-cancelled': { readonly count: number };
  'export-caution': Record<never, never>;
  'export-where': Record<never, never>;
  'install-again': Record<never, never>;
  'install-nothing': Record<never, never>;
  'install-begin-title': Record<never, never>;
  'install-begin-what': Record<never, never>;
  'install-begin-next': Record<never, never>;
  'install-begin-link': Record<never, never>;
  'install-done-title': Record<never, never>;
  'install-done-what': { readonly workspace: string };
  'install-done-next': Record<never, never>;
  'install-declined-title': Record<never, never>;
  'install-declined-what': Record<never, never>;
  'install-stale-title': Record<never, never>;
  'install-stale-what': Record<never, never>;
  'install-not-allowed-title': Record<never, never>;
  'install-not-allowed-what': { readonly workspaceId: string };
  'install-trouble-title': Record<never, never>;
  'install-trouble-what': Record<never, never>;
  'install-trouble-what-reference': { readonly reference: string };
  'install-no-answer-title': Record<never, never>;
  'install-code-refused-title': Record<never, never>;
  'install-code-refused-what': Record<never, never>;
  'install-settings-refused-title': Record<never, never>;
  'install-settings-refused-what': Record<never, never>;
  'install-tokens-rotate-what': Record<never, never>;
  'install-organisation-title': Record<never, never>;
  'install-organisation-what': Record<never, never>;
  'install-scopes-title': Record<never, never>;
  'install-scopes-what': { readonly scopes: readonly string[] };
  'joint-lead': { readonly name: string; readonly surely: string; readonly chance: number };
  'joint-lead-none': { readonly name: string; readonly chance: number };
  'joint-lead-unknown': { readonly name: string };
  'joint-unknown': { readonly count: number; readonly teams: readonly string[] };
  'joint-soonest': { readonly chance: number; readonly soonest: string };
  'joint-even': { readonly chance: number; readonly surely: string };
  'joint-even-between': { readonly chance: number; readonly soonest: string; readonly surely: string };
  'joint-even-from': { readonly chance: number; readonly soonest: string };
  'joint-even-none': { readonly chance: number };
  'joint-parts': { readonly teams: readonly string[] };
  'joint-stale': { readonly teams: readonly string[]; readonly name: string };
  'joint-more-teams': { readonly count: number };
  'joint-unknown-together': Record<never, never>;
  'joint-unknown-fit': Record<never, never>;
  'joint-unknown-parts': Record<never, never>;
  'joint-chart-title': Record<never, never>;
  'joint-chart-basis': { readonly parts: number };
  'joint-chart-chance': Record<never, never>;
  'joint-chart-surely': { readonly chance: number };
  'joint-chart-key-least': Record<never, never>;
  'joint-chart-key-most': Record<never, never>;
  'joint-alt-subject': { readonly parts: number; readonly name: string };
  'joint-alt-chances': { readonly chances: readonly string[] };
  'joint-alt-chance': { readonly on: string; readonly least: number; readonly most: number };
  'load-none': Record<never, never>;
  'load-none-yet': Record<never, never>;
  'load-heavy': { readonly floor: number; readonly keep: number };
  'load-on-the-line': { readonly floor: number; readonly keep: number; readonly all: number };
  'load-all-needed': {
    readonly signal: 'heavy' | 'on-the-line';
    readonly floor: number;
    readonly keep: number;
  };
  'load-light': { readonly all: number };
  'load-all-done': { readonly signal: 'light' | 'on-the-line' };
  'load-no-commitment': { readonly all: number };
  'load-end': { readonly points: number };
  'load-end-wide': { readonly ends: 'apart' | 'same'; readonly high: number; readonly low: number };
  'load-end-narrow': { readonly ends: 'apart' | 'same'; readonly high: number; readonly low: number };
  'load-end-unknown': { readonly sprints: number };
  'load-basis': { readonly sprints: number };
  'load-basis-model': { readonly model: 'cards' | 'sums'; readonly sprints: number };
  'load-basis-others': Record<never, never>;
  'load-basis-unlike': Record<never, never>;
  'load-unknown': Record<never, never>;
  'load-pace-early': { readonly signal: 'heavy' | 'light' | 'on-the-line'; readonly days: number };
  'load-pace-heavy': { readonly points: number };
  'load-pace-light': { readonly points: number };
  'load-pace-even': Record<never, never>;
  'load-pace-even-left': { readonly points: number };
  'load-pace-even-room': { readonly points: number };
  'load-pace-plain': Record<never, never>;
  'load-pace-history': { readonly sprints: number; readonly needed: number };
  'margin-none': { readonly sprints: number };
  'margin-title': Record<never, never>;
  'margin-commitments': {
    readonly median: number;
    readonly low: number;
    readonly high: number;
    readonly span: 'usual' | 'whole';
    readonly sprints: number;
  };
  'margin-estimates': {
    readonly median: number;
    readonly low: number;
    readonly high: number;
    readonly span: 'usual' | 'whole';
    readonly sprints: number;
  };
  'margin-commitments-unknown': Record<never, never>;
  'margin-estimates-unknown': Record<never, never>;
  'margin-span': {
    readonly low: number;
    readonly high: number;
    readonly span: 'usual' | 'whole';
    readonly sprints: number;
  };
  'message-more-lines': { readonly lines: number };
  'message-replaces': Record<never, never>;
  'message-replaces-linked': { readonly link: string };
  'message-chart': { readonly words: string };
  'message-buttons': { readonly labels: readonly string[] };
  'form-cancel': Record<never, never>;
  'form-close': Record<never, never>;
  'form-to-open': Record<never, never>;
  'form-open-button': Record<never, never>;
  'note-kept-share-low-crossed': {
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-kept-share-low-may-mean': Record<never, never>;
  'note-kept-share-low-try': Record<never, never>;
  'note-surprise-ratio-high-crossed': {
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-surprise-ratio-high-may-mean': Record<never, never>;
  'note-surprise-ratio-high-try': Record<never, never>;
  'note-pull-in-ratio-high-crossed': {
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-pull-in-ratio-high-may-mean': Record<never, never>;
  'note-pull-in-ratio-high-try': Record<never, never>;
  'note-plan-share-low-crossed': {
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-plan-share-low-may-mean': Record<never, never>;
  'note-plan-share-low-try': Record<never, never>;
  'note-estimate-accuracy-low-crossed': {
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-estimate-accuracy-low-may-mean': Record<never, never>;
  'note-estimate-accuracy-low-try': Record<never, never>;
  'note-estimate-accuracy-high-crossed': {
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-estimate-accuracy-high-may-mean': Record<never, never>;
  'note-estimate-accuracy-high-try': Record<never, never>;
  'note-velocity-growth-first-mark-crossed': {
    readonly place: 'past' | 'right';
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-velocity-growth-first-mark-may-mean': Record<never, never>;
  'note-velocity-growth-first-mark-try': Record<never, never>;
  'note-velocity-growth-long-range-mark-crossed': {
    readonly place: 'past' | 'right';
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
  };
  'note-velocity-growth-long-range-mark-may-mean': Record<never, never>;
  'note-velocity-growth-long-range-mark-try': Record<never, never>;
  'note-carry-over-repeated-crossed': { readonly cards: number; readonly sprints: number };
  'note-carry-over-repeated-may-mean': Record<never, never>;
  'note-carry-over-repeated-try': Record<never, never>;
  'note-carried-card': { readonly sprints: number; readonly card: string };
  'note-answer-rate-low-crossed': {
    readonly met: number;
    readonly value: string;
    readonly distance: string;
    readonly threshold: string;
    readonly prompts: number;
  };
  'note-answer-rate-low-may-mean': Record<never, never>;
  'note-answer-rate-low-try': Record<never, never>;
  'note-history-first': Record<never, never>;
  'note-history-often': {
    readonly line: 'mark' | 'threshold';
    readonly sprints: number;
    readonly of: number;
  };
  'note-history-signal': {
    readonly kind: 'above' | 'below' | 'fall' | 'rise';
    readonly low: number;
    readonly high: number;
    readonly sprints: number;
    readonly mean: number;
    readonly before: number;
  };
  'note-history-usual': {
    readonly low: number;
    readonly high: number;
    readonly sprints: number;
    readonly so: 'mark' | 'often' | 'seldom' | 'unusual';
  };
  'note-history-ordinary': Record<never, never>;
  'note-range-basis': { readonly sprints: number; readonly scaledTo: string; readonly committed: number };
  'note-range-next': { readonly points: number; readonly chances: readonly string[]; readonly basis: string };
  'note-range-unknown': Record<never, never>;
  'note-range-usually-kept': Record<never, never>;
  'note-try-next': { readonly try: string };
  'odds-none': Record<never, never>;
  'odds-none-hint': Record<never, never>;
  'odds-size-never': { readonly points: number };
  'odds-size-always': { readonly points: number };
  'odds-size-larger': {
    readonly points: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
  };
  'odds-size-unseen': {
    readonly points: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
  };
  'odds-size-little-seen': {
    readonly cards: number;
    readonly points: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
  };
  'odds-size-known': { readonly points: number; readonly share: number };
  'odds-typical': { readonly points: number };
  'odds-typical-of-few': { readonly points: number };
  'odds-no-surprise': { readonly cards: number };
  'odds-sizes-title': Record<never, never>;
  'odds-line-short': {
    readonly cards: number;
    readonly points: number;
    readonly withSurprise: number;
    readonly share: number;
  };
  'odds-line': {
    readonly cards: number;
    readonly points: number;
    readonly withSurprise: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
  };
  'odds-line-borrowed': {
    readonly cards: number;
    readonly points: number;
    readonly withSurprise: number;
    readonly share: number;
    readonly low: number;
    readonly high: number;
  };
  'odds-line-typical': { readonly line: string; readonly points: number };
  'odds-line-typical-span': {
    readonly line: string;
    readonly points: number;
    readonly low: number;
    readonly high: number;
  };
  'odds-reading': Record<never, never>;
  'odds-reading-open': Record<never, never>;
  'odds-reading-borrowed': { readonly cards: number };
  'odds-advice': Record<never, never>;
  'odds-basis': {
    readonly sprints: number;
    readonly cards: number;
    readonly withSurprise: number;
    readonly share: number;
  };
  'odds-without-cards': { readonly sprints: number };
  'odds-unknown-kind': Record<never, never>;
  'odds-unknown-drift': Record<never, never>;
  'odds-unknown-changes': Record<never, never>;
  'operator-erase-usage': Record<never, never>;
  'operator-erased': { readonly records: number };
  'operator-erased-messages': { readonly known: 'no' | 'yes' };
  'operator-erased-teams': { readonly teams: readonly string[] };
  'operator-forget-usage': Record<never, never>;
  'operator-forget-unknown': { readonly workspace: string };
  'operator-forget-knows': Record<never, never>;
  'operator-forget-knows-none': Record<never, never>;
  'operator-forget-tenant': { readonly teams: number; readonly workspace: string };
  'operator-forget-tenant-named': {
    readonly teams: number;
    readonly workspace: string;
    readonly name: string;
  };
  'operator-forget-ask': { readonly tenant: string };
  'operator-forget-not': Record<never, never>;
  'operator-forgotten': { readonly records: number; readonly workspace: string };
  'operator-forgotten-table': { readonly table: string; readonly rows: number };
  'operator-forgotten-elsewhere': Record<never, never>;
  'operator-posts-usage': Record<never, never>;
  'operator-posts-none': Record<never, never>;
  'operator-post': {
    readonly id: string;
    readonly kind: string;
    readonly workspace: string;
    readonly channel: string;
    readonly reason: string;
  };
  'operator-post-error': {
    readonly id: string;
    readonly kind: string;
    readonly workspace: string;
    readonly channel: string;
    readonly reason: string;
    readonly error: string;
  };
  'operator-post-direct': Record<never, never>;
  'operator-undelivered': {
    readonly count: number;
    readonly cause:
      | 'our-defect'
      | 'permission'
      | 'person-gone'
      | 'place-gone'
      | 'token-gone'
      | 'tries-failed';
    readonly codes: readonly string[];
  };
  'operator-posts-retried': { readonly count: number };
  'operator-posts-dropped': { readonly count: number };
  'operator-no-keys': Record<never, never>;
  'operator-keys-rotated': { readonly count: number; readonly key: string };
  'operator-token-damaged': { readonly workspaceId: string };
  'operator-folder-usage': Record<never, never>;
  'operator-dumped': { readonly file: string };
  'operator-restored': { readonly folder: string };
  'operator-file-unusable': { readonly file: string; readonly reason: string };
  'operator-own-usage': Record<never, never>;
  'operator-own-none': { readonly sprints: number };
  'operator-own-lead': { readonly sprints: number; readonly needed: number };
  'operator-own-line': {
    readonly share: number;
    readonly scored: number;
    readonly sumsError: number;
    readonly cardsError: number;
    readonly sumsHeld: number;
    readonly cardsHeld: number;
    readonly nearer: 'cards' | 'sums';
  };
  'own-prompt-home-button': Record<never, never>;
  'own-prompt-title': Record<never, never>;
  'own-prompt-submit': Record<never, never>;
  'own-prompt-intro': { readonly teams: readonly string[] };
  'own-prompt-at': Record<never, never>;
  'own-prompt-at-hint': Record<never, never>;
  'own-prompt-zone': Record<never, never>;
  'own-prompt-zone-hint': Record<never, never>;
  'own-prompt-set': { readonly time: string; readonly zone: string; readonly teams: readonly string[] };
  'own-prompt-set-next': Record<never, never>;
  'own-prompt-team': { readonly teams: readonly string[] };
  'plan-range-title': Record<never, never>;
  'plan-range-basis': { readonly sprints: number; readonly scaledTo: string };
  'plan-run-out': { readonly points: number; readonly chance: string };
  'plan-set-title': Record<never, never>;
  'plan-set-chances': {
    readonly floor: number;
    readonly points: number;
    readonly kept: number;
    readonly all: number;
  };
  'plan-set-all-needed': { readonly floor: number; readonly points: number; readonly kept: number };
  'plan-set-smaller': { readonly kept: number };
  'plan-set-endangering': {
    readonly number: string;
    readonly card: string;
    readonly points: number;
    readonly floor: number;
    readonly without: number;
  };
  'plan-set-basis': { readonly sprints: number };
  'plan-ticks': Record<never, never>;
  'plan-ticks-more': { readonly from: number; readonly to: number };
  'plan-ticks-hint': Record<never, never>;
  'plan-ticks-hint-largest': { readonly others: number };
  'plan-tick': { readonly number: string; readonly card: string; readonly points: number };
  'plan-left-out-now': { readonly cards: number; readonly points: number };
  'plan-left-out': Record<never, never>;
  'plan-left-out-card': { readonly title: string; readonly points: number };
  'plan-cards-left-out-more': { readonly cards: number };
  'plan-odds-title': Record<never, never>;
  'plan-odds-none': Record<never, never>;
  'plan-odds-cards': { readonly count: number; readonly numbers: readonly string[] };
  'plan-odds-more-cards': { readonly count: number };
  'plan-odds-advice': Record<never, never>;
  'edit-card-title': Record<never, never>;
  'edit-submit': Record<never, never>;
  'edit-card-intro': { readonly number: string; readonly sprint: string; readonly card: string };
  'edit-card-name': Record<never, never>;
  'edit-card-link': Record<never, never>;
  'edit-card-link-hint': Record<never, never>;
  'edit-card-key': Record<never, never>;
  'edit-card-key-hint': Record<never, never>;
  'edit-card-estimate': Record<never, never>;
  'edit-card-estimate-hint': Record<never, never>;
  'edit-card-estimate-fixed': Record<never, never>;
  'edit-sprint-title': Record<never, never>;
  'edit-sprint-intro': { readonly sprint: string; readonly startsOn: string };
  'edit-sprint-next': Record<never, never>;
  'edit-card-saved': { readonly sprint: string; readonly number: string; readonly card: string };
  'edit-sprint-saved': { readonly sprint: string; readonly endsOn: string; readonly closesAt: string };
  'edit-nothing': Record<never, never>;
  'edit-next': Record<never, never>;
  'plan-changed': { readonly days: readonly string[] };
  'plan-change-line': { readonly change: string };
  'plan-change-line-by': { readonly day: string; readonly person: string; readonly change: string };
  'plan-change-title': { readonly card: string; readonly was: string };
  'plan-change-link': { readonly change: 'added' | 'changed' | 'removed'; readonly card: string };
  'plan-change-key': {
    readonly change: 'added' | 'changed' | 'removed';
    readonly card: string;
    readonly became: string;
    readonly was: string;
  };
  'plan-change-estimate': { readonly card: string; readonly became: number; readonly was: number };
  'plan-change-undrop': { readonly card: string };
  'plan-change-owners': { readonly how: 'handed-over' | 'joined' | 'left'; readonly card: string };
  'plan-change-owners-by': {
    readonly how: 'given' | 'joined' | 'left';
    readonly card: string;
    readonly owners: readonly string[];
  };
  'plan-change-goal': { readonly change: 'added' | 'changed' | 'removed'; readonly was: string };
  'plan-change-ends': { readonly became: string; readonly was: string };
  'plan-change-closes': { readonly became: string; readonly was: string };
  'plan-change-away-days': { readonly became: number; readonly was: number };
  'plan-changes-more': { readonly changes: number };
  'plan-title': Record<never, never>;
  'plan-submit': Record<never, never>;
  'plan-intro': { readonly team: string };
  'plan-left-over': { readonly with: 'left' | 'new-estimate'; readonly cards: number };
  'plan-name': Record<never, never>;
  'plan-goal': Record<never, never>;
  'plan-goal-hint': Record<never, never>;
  'plan-first-day': Record<never, never>;
  'plan-last-day': Record<never, never>;
  'plan-closing-time': Record<never, never>;
  'plan-closing-time-hint': { readonly timeZone: string };
  'plan-cards': Record<never, never>;
  'plan-cards-hint': Record<never, never>;
  'plan-guests': Record<never, never>;
  'plan-guests-hint': Record<never, never>;
  'plan-more-cards': { readonly place: number; readonly fields: number };
  'plan-more-cards-hint': Record<never, never>;
  'plan-card-file': Record<never, never>;
  'plan-card-file-hint': Record<never, never>;
  'plan-from-file': { readonly rows: number };
  'card-file-title': Record<never, never>;
  'card-file-submit': Record<never, never>;
  'card-file-check': Record<never, never>;
  'card-file-lead': { readonly cards: number; readonly file: string };
  'card-file-unread': { readonly file: string };
  'card-file-unread-why': { readonly file: string; readonly problem: string };
  'card-file-choose': { readonly file: string };
  'card-file-choose-why': Record<never, never>;
  'card-file-next': Record<never, never>;
  'card-file-next-bad': Record<never, never>;
  'card-file-next-broken': Record<never, never>;
  'card-file-no-rows': Record<never, never>;
  'card-file-too-many': { readonly most: number; readonly rows: number };
  'card-file-unused': { readonly columns: readonly string[] };
  'card-file-bad-title': Record<never, never>;
  'card-file-more-bad': { readonly count: number };
  'card-file-column': { readonly field: 'estimate' | 'key' | 'link' | 'owner' | 'title' };
  'card-file-none': Record<never, never>;
  'card-file-unnamed': { readonly place: number };
  'card-file-again': Record<never, never>;
  'plan-preview-title': Record<never, never>;
  'plan-preview-submit': Record<never, never>;
  'plan-preview-back': Record<never, never>;
  'plan-preview-lead': { readonly sprint: string; readonly points: number; readonly cards: number };
  'plan-preview-days': {
    readonly days: number;
    readonly span: string;
    readonly time: string;
    readonly timeZone: string;
  };
  'plan-guests-line': { readonly guests: readonly string[] };
  'plan-goal-line': { readonly goal: string };
  'plan-check-title': Record<never, never>;
  'plan-check-alike': { readonly cards: readonly string[] };
  'plan-check-off-scale': {
    readonly count: number;
    readonly cards: readonly string[];
    readonly scale: readonly string[];
  };
  'plan-check-no-owner': { readonly count: number; readonly cards: readonly string[] };
  'plan-check-still-in-work': {
    readonly count: number;
    readonly cards: readonly string[];
    readonly sprint: string;
    readonly day: string;
  };
  'plan-check-finished-before': {
    readonly count: number;
    readonly cards: readonly string[];
    readonly sprint: string;
  };
  'plan-check-no-card': Record<never, never>;
  'plan-check-no-points': Record<never, never>;
  'plan-check-no-working-day': Record<never, never>;
  'plan-check-more': { readonly warnings: number };
  'plan-recent-title': Record<never, never>;
  'plan-recent-none': Record<never, never>;
  'plan-recent-line': {
    readonly length: 'another' | 'same';
    readonly sprint: string;
    readonly committed: number;
    readonly velocity: string;
    readonly outcome: string;
    readonly days: number;
  };
  'plan-recent-velocity': { readonly points: number };
  'plan-recent-velocity-unknown': Record<never, never>;
  'plan-recent-kept': Record<never, never>;
  'plan-recent-missed': Record<never, never>;
  'plan-recent-no-plan': Record<never, never>;
  'plan-recent-imported': Record<never, never>;
  'plan-owners-title': Record<never, never>;
  'plan-owner-line': { readonly owner: string; readonly numbers: readonly string[] };
  'plan-owners-more': { readonly owners: number };
  'plan-cards-title': Record<never, never>;
  'plan-cards-more': { readonly cards: number };
  'plan-preview-after': Record<never, never>;
  'plan-committed': {
    readonly sprint: string;
    readonly points: number;
    readonly closing: string;
    readonly cards: number;
  };
  'plan-committed-next': Record<never, never>;
  'plan-post-title': { readonly sprint: string; readonly points: number; readonly cards: number };
  'plan-post-title-none': { readonly sprint: string };
  'plan-post-when': {
    readonly span: string;
    readonly closing: string;
    readonly timeZone: string;
    readonly person: string;
  };
  'plan-post-none': Record<never, never>;
  'plan-post-next': Record<never, never>;
  'channel-unreachable-title': { readonly team: string };
  'channel-unreachable-why': {
    readonly cause:
      | 'bot-left'
      | 'our-defect'
      | 'permission'
      | 'person-gone'
      | 'place-gone'
      | 'token-gone'
      | 'tries-failed';
    readonly channel: string;
    readonly days: number;
  };
  'channel-shared-title': { readonly team: string };
  'channel-shared-where': { readonly channel: string };
  'channel-shared-until': Record<never, never>;
  'member-unreachable-title': { readonly team: string };
  'member-unreachable-why': {
    readonly cause:
      | 'our-defect'
      | 'permission'
      | 'person-gone'
      | 'place-gone'
      | 'token-gone'
      | 'tries-failed';
    readonly person: string;
  };
  'unreachable-again': Record<never, never>;
  'privacy-nothing': Record<never, never>;
  'privacy-nothing-others': Record<never, never>;
  'privacy-stored': Record<never, never>;
  'privacy-memberships': { readonly count: number };
  'privacy-product-owner-of': { readonly count: number };
  'privacy-answers': { readonly count: number };
  'privacy-prompts': { readonly count: number };
  'privacy-cards-owned': { readonly count: number };
  'privacy-cards-added': { readonly count: number };
  'privacy-card-changes': { readonly count: number };
  'privacy-drafts': { readonly count: number };
  'privacy-plan-changes': { readonly count: number };
  'privacy-goals-judged': { readonly count: number };
  'privacy-experiments-begun': { readonly count: number };
  'privacy-experiments-ended': { readonly count: number };
  'privacy-recorded-values': { readonly count: number };
  'privacy-messages-to-you': { readonly count: number };
  'privacy-posts-by-you': { readonly count: number };
  'privacy-visits': { readonly count: number };
  'privacy-installations': { readonly count: number };
  'privacy-kind': {
    readonly span: 'day' | 'days' | 'undated';
    readonly what: string;
    readonly first: string;
    readonly last: string;
  };
  'privacy-kind-in-teams': {
    readonly span: 'day' | 'days' | 'undated';
    readonly what: string;
    readonly teams: readonly string[];
    readonly first: string;
    readonly last: string;
  };
  'privacy-more-teams': { readonly count: number };
  'privacy-why': Record<never, never>;
  'privacy-who-sees-it': Record<never, never>;
  'privacy-how-long': Record<never, never>;
  'privacy-kept-until': { readonly team: string; readonly day: string };
  'privacy-kept-for-ever': { readonly team: string };
  'privacy-kept-for': { readonly months: number; readonly team: string };
  'privacy-and-more-teams': { readonly count: number };
  'privacy-only-you': Record<never, never>;
  'privacy-copy-button': Record<never, never>;
  'privacy-erase-button': Record<never, never>;
  'privacy-copy-comment': { readonly records: number };
  'privacy-copy-sent': { readonly records: number };
  'privacy-erased': { readonly records: number };
  'privacy-left-teams': { readonly teams: readonly string[] };
  'privacy-erased-elsewhere': Record<never, never>;
  'privacy-erased-messages': { readonly known: 'no' | 'yes' };
  'privacy-messages-removed': { readonly count: number };
  'privacy-messages-left': { readonly count: number };
  'privacy-erase-title': Record<never, never>;
  'privacy-erase-submit': Record<never, never>;
  'privacy-erase-keep': Record<never, never>;
  'privacy-erase-goes-head': Record<never, never>;
  'privacy-erase-goes': Record<never, never>;
  'privacy-erase-stays-head': Record<never, never>;
  'privacy-erase-stays': Record<never, never>;
  'privacy-erase-then': Record<never, never>;
  'privacy-erase-messages': Record<never, never>;
  'privacy-erase-messages-hint': Record<never, never>;
  'privacy-erase-messages-yes': Record<never, never>;
  'privacy-erase-for-good': Record<never, never>;
  'problem-no-number': Record<never, never>;
  'problem-not-a-number': { readonly typed: string };
  'problem-two-numbers': { readonly typed: string; readonly first: string; readonly second: string };
  'problem-too-many-digits': { readonly typed: string; readonly digits: number; readonly decimals: number };
  'problem-not-points': { readonly most: number };
  'problem-team-name': { readonly most: number };
  'problem-no-time-zone': Record<never, never>;
  'problem-value-after-days': { readonly least: number; readonly most: number };
  'problem-no-choice': Record<never, never>;
  'problem-prompt-too-late': { readonly team: string; readonly latest: string; readonly zone: string };
  'problem-no-time': { readonly example: string };
  'problem-no-working-day': Record<never, never>;
  'problem-no-members': Record<never, never>;
  'problem-no-facilitators': Record<never, never>;
  'problem-is-bot': { readonly person: string };
  'problem-is-member-already': { readonly person: string };
  'problem-is-deactivated': { readonly person: string };
  'problem-is-outsider': { readonly person: string };
  'problem-not-in-channel': { readonly person: string };
  'problem-is-guest': { readonly person: string };
  'problem-reminder-minutes': { readonly least: number; readonly most: number };
  'problem-retention-months': { readonly least: number; readonly most: number };
  'problem-no-percentage': { readonly most: number; readonly example: number };
  'problem-threshold-out-of-range': { readonly most: number };
  'problem-accuracy-crossed': Record<never, never>;
  'problem-growth-marks-crossed': Record<never, never>;
  'problem-not-a-scale': Record<never, never>;
  'problem-scale-empty': Record<never, never>;
  'problem-scale-too-long': { readonly most: number };
  'problem-scale-no-size': { readonly size: number; readonly most: number };
  'problem-scale-not-rising': { readonly size: number; readonly before: number };
  'problem-scale-only-zero': Record<never, never>;
  'problem-not-weekdays': Record<never, never>;
  'problem-off-no-day': Record<never, never>;
  'problem-off-one-end': { readonly typed: string };
  'problem-off-somebody-else': Record<never, never>;
  'problem-off-every-week': Record<never, never>;
  'problem-off-not-a-day': { readonly typed: string };
  'problem-off-reversed': { readonly last: string; readonly first: string };
  'problem-off-too-long': { readonly most: number };
  'problem-off-no-country': { readonly typed: string };
  'problem-off-no-region': { readonly typed: string; readonly regions: readonly string[] };
  'problem-off-gone-by': { readonly last: string };
  'problem-sprint-name': { readonly most: number };
  'problem-goal-length': { readonly most: number };
  'problem-no-first-day': Record<never, never>;
  'problem-no-last-day': Record<never, never>;
  'problem-days-reversed': { readonly last: string; readonly first: string };
  'problem-sprint-too-long': { readonly most: number; readonly days: number };
  'problem-sprint-over-already': { readonly last: string; readonly time: string };
  'problem-overlap': { readonly sprint: string; readonly first: string; readonly last: string };
  'problem-overlap-at-end': { readonly sprint: string; readonly first: string; readonly last: string };
  'problem-too-many-cards': { readonly most: number; readonly cards: number };
  'problem-no-away-days': Record<never, never>;
  'problem-too-many-away-days': {
    readonly members: number;
    readonly workingDays: number;
    readonly most: number;
    readonly given: number;
  };
  'problem-bad-line': { readonly line: number; readonly problem: string };
  'problem-more-bad-lines': { readonly count: number; readonly lines: readonly string[] };
  'problem-name-twice': { readonly name: string; readonly line: number };
  'problem-no-title': Record<never, never>;
  'problem-title-too-long': { readonly length: number; readonly most: number };
  'problem-total': Record<never, never>;
  'problem-no-estimate': Record<never, never>;
  'problem-estimate-in-title': { readonly typed: string; readonly title: string };
  'problem-not-an-estimate': { readonly typed: string; readonly most: number };
  'problem-two-estimates': { readonly first: string; readonly second: string };
  'problem-open-quote': Record<never, never>;
  'problem-several-people': { readonly typed: string; readonly people: readonly string[] };
  'problem-person-and-id': { readonly person: string; readonly id: string };
  'problem-no-such-person': { readonly typed: string; readonly people: readonly string[] };
  'problem-value-beside-file': Record<never, never>;
  'problem-card-link': { readonly most: number };
  'problem-card-title': { readonly most: number };
  'problem-which-card': Record<never, never>;
  'problem-one-card': Record<never, never>;
  'problem-which-guests': Record<never, never>;
  'problem-guests-at-once': { readonly most: number };
  'problem-no-such-guest': { readonly typed: string };
  'problem-which-people': Record<never, never>;
  'problem-card-key': Record<never, never>;
  'problem-try-text-missing': Record<never, never>;
  'problem-try-text-length': { readonly most: number };
  'problem-try-already': Record<never, never>;
  'problem-try-many': { readonly most: number };
  'problem-try-ratio': Record<never, never>;
  'problem-try-direction': Record<never, never>;
  'problem-goal-word': Record<never, never>;
  'problem-first-card': Record<never, never>;
  'problem-drop-reason': { readonly most: number };
  'problem-blocked-on': { readonly most: number };
  'problem-blocked-finished': { readonly card: string };
  'problem-cancel-reason': { readonly most: number };
  'problem-note-length': { readonly most: number };
  'problem-not-your-card': { readonly card: string; readonly number: string };
  'problem-nobodys-card': { readonly card: string; readonly number: string };
  'problem-card-dropped': { readonly card: string; readonly day: string };
  'problem-card-finished': { readonly card: string; readonly day: string; readonly number: string };
  'problem-counted-before': { readonly card: string; readonly sprint: string; readonly number: string };
  'problem-card-came-later': { readonly card: string; readonly day: string };
  'problem-surprise-of-growth': { readonly growth: number; readonly most: number };
  'problem-surprise-without-growth': Record<never, never>;
  'problem-surprise-without-any': Record<never, never>;
  'problem-surprise-of-shrinking': { readonly shrunk: number; readonly least: number };
  'problem-growth-unexplained': { readonly growth: number };
  'problem-answer-day': Record<never, never>;
  'unclear-comma-two-ways': { readonly typed: string; readonly half: string; readonly two: string };
  'unclear-space-two-ways': { readonly typed: string; readonly card: string; readonly left: string };
  'unclear-number-two-ways': { readonly typed: string; readonly place: string };
  'unclear-done-two-ways': { readonly typed: string };
  'unclear-nothing-two-ways': { readonly typed: string };
  'unclear-blocked-two-ways': { readonly typed: string };
  'unclear-which-blocked': Record<never, never>;
  'unclear-blocked-on-what': Record<never, never>;
  'unclear-which-done': Record<never, never>;
  'unclear-not-an-answer': { readonly typed: string };
  'unclear-no-amount': { readonly typed: string };
  'unclear-not-halves': { readonly typed: string };
  'unclear-too-many-points': { readonly typed: string; readonly most: number };
  'unclear-not-points': { readonly typed: string };
  'unclear-no-such-card': { readonly typed: string };
  'unclear-extra-of-several': { readonly typed: string };
  'unclear-number-of-which': { readonly typed: string; readonly place: string };
  'unclear-done-or-worked': { readonly typed: string };
  'unclear-said-twice': { readonly what: 'surprise' | 'worked'; readonly typed: string };
  'unclear-answered-twice': { readonly card: string };
  'unclear-wrong-count': { readonly cards: number; readonly numbers: number };
  'problem-no-files': Record<never, never>;
  'problem-not-a-day': { readonly which: 'first' | 'last'; readonly typed: string };
  'problem-too-far-ahead': { readonly years: number };
  'problem-sprint-gone-by': { readonly last: string };
  'problem-what-if-away-days': { readonly most: number };
  'problem-what-if-points': Record<never, never>;
  'problem-what-if-nothing': Record<never, never>;
  'problem-commitment-points': { readonly most: number };
  'problem-backlog-points': { readonly most: number };
  'problem-growth-points': { readonly most: number };
  'problem-growth-reversed': { readonly least: number; readonly most: number };
  'problem-body-name': { readonly most: number };
  'problem-body-name-taken': Record<never, never>;
  'problem-body-new-name': Record<never, never>;
  'problem-body-turn': { readonly most: number };
  'problem-bodies-many': { readonly most: number };
  'problem-body-shares': { readonly share: number };
  'problem-share-percent': Record<never, never>;
  'problem-share-twice': Record<never, never>;
  'problem-by-not-a-day': { readonly typed: string };
  'problem-by-day-gone': { readonly startsOn: string };
  'problem-by-twice': Record<never, never>;
  'problem-no-colon': Record<never, never>;
  'problem-away-without-number': { readonly typed: string };
  'problem-not-away-days': { readonly typed: string };
  'problem-lone-word': { readonly typed: string };
  'problem-commitment-twice': Record<never, never>;
  'problem-too-many-days': Record<never, never>;
  'problem-growth-twice': Record<never, never>;
  'problem-no-backlog': Record<never, never>;
  'problem-no-backlog-or-day': Record<never, never>;
  'problem-no-growth': Record<never, never>;
  'pull-in-title': Record<never, never>;
  'pull-in-size': {
    readonly known: 'none' | 'some';
    readonly points: number;
    readonly after: number;
    readonly first: number;
    readonly cards: number;
    readonly finished: number;
  };
  'pull-in-size-alone': {
    readonly known: 'none' | 'some';
    readonly points: number;
    readonly first: number;
    readonly cards: number;
    readonly finished: number;
  };
  'pull-in-too-large': { readonly sizes: number; readonly points: number };
  'pull-in-basis': { readonly sprints: number };
  'pull-in-queue': { readonly points: number };
  'pull-in-nothing-open': Record<never, never>;
  'pull-in-no-chance': Record<never, never>;
  'pull-in-import-hint': Record<never, never>;
  'pull-in-empty-scale': Record<never, never>;
  'pull-in-record': { readonly cards: number; readonly finished: number };
  'pull-in-reply-fits': { readonly after: number; readonly first: number };
  'pull-in-reply-first-only': { readonly after: number; readonly first: number };
  'pull-in-reply-hardly': { readonly after: number; readonly first: number };
  'pull-in-reply-alone': { readonly first: number };
  'pull-in-reply-alone-hardly': { readonly first: number };
  'pull-in-way-out': Record<never, never>;
  'pull-in-reply-unknown': Record<never, never>;
  'pull-in-reply-record': {
    readonly which: 'all' | 'comparable';
    readonly cards: number;
    readonly finished: number;
    readonly low: number;
    readonly high: number;
  };
  'range-at': { readonly points: number; readonly chances: readonly string[] };
  'range-chance-kept': { readonly chance: number };
  'range-chance-finished': { readonly chance: number };
  'range-chance-ran-out': { readonly chance: number };
  'range-start-from': { readonly points: number; readonly chances: readonly string[] };
  'range-last-commitment': { readonly points: number };
  'range-span': { readonly low: number; readonly high: number };
  'range-span-one': Record<never, never>;
  'range-meaning': { readonly known: 'both' | 'kept'; readonly floor: number; readonly ceiling: number };
  'range-ran-out-unknown': Record<never, never>;
  'range-chosen': Record<never, never>;
  'range-ends-apart': { readonly high: number; readonly low: number };
  'range-remedy-less-surprise': { readonly sprints: number; readonly of: number };
  'range-remedy-smaller-cards': { readonly sprints: number; readonly of: number };
  'range-remedy-more-sprints': { readonly firmSprints: number };
  'range-remedy-ask-what-differed': { readonly lowPoints: number; readonly highPoints: number };
  'range-finish-anything': Record<never, never>;
  'range-coming': { readonly span: string; readonly facts: readonly string[] };
  'range-scaled': { readonly scaledTo: string; readonly span: string; readonly facts: readonly string[] };
  'range-working-days': { readonly count: number };
  'range-members': { readonly count: number };
  'range-days-away': { readonly count: number };
  'range-scaled-to': {
    readonly measuredBy: 'member-days' | 'sprints' | 'working-days';
    readonly time: number;
  };
  'range-basis': {
    readonly imported: 'all' | 'none' | 'some';
    readonly sprints: number;
    readonly shown: number;
    readonly importedSprints: number;
  };
  'range-past-sprint': { readonly name: string; readonly facts: readonly string[] };
  'range-past-committed': { readonly points: number };
  'range-past-finished': { readonly points: number };
  'range-past-pulled-in': { readonly points: number };
  'range-past-velocity': { readonly points: number };
  'range-past-velocity-unknown': Record<never, never>;
  'range-surprise-within': {
    readonly recordedIn: 'all' | 'some';
    readonly ceiling: number;
    readonly of: number;
  };
  'range-surprise-above': {
    readonly recordedIn: 'all' | 'some';
    readonly sprints: number;
    readonly of: number;
    readonly ceiling: number;
  };
  'range-surprise-hint': Record<never, never>;
  'range-missing-few-sprints': { readonly sprints: number; readonly firmSprints: number };
  'range-missing-finish-not-recorded': { readonly sprints: number; readonly of: number };
  'range-missing-working-time-unknown': Record<never, never>;
  'range-missing-members-away-unknown': Record<never, never>;
  'range-missing-past-members-unknown': {
    readonly taken: 'members-around' | 'members-now' | 'members-then';
    readonly sprints: number;
    readonly of: number;
  };
  'range-missing-coming-absence-unknown': Record<never, never>;
  'range-unknown-changes': Record<never, never>;
  'range-unknown-urgent-work': Record<never, never>;
  'range-form-title': Record<never, never>;
  'range-form-submit': Record<never, never>;
  'range-form-intro': { readonly team: string };
  'range-form-first-day': Record<never, never>;
  'range-form-last-day': Record<never, never>;
  'range-form-points': Record<never, never>;
  'range-form-points-hint': Record<never, never>;
  'away-days-label': Record<never, never>;
  'away-days-hint': Record<never, never>;
  'ratio-name': {
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'ratio-title': {
    readonly ratio:
      | 'estimateAccuracy'
      | 'finishShare'
      | 'keptShare'
      | 'onScaleShare'
      | 'planShare'
      | 'pullInRatio'
      | 'surpriseRatio'
      | 'velocityGrowth';
  };
  'ratio-velocity-title': Record<never, never>;
  'ratio-of-keptShare': { readonly committedFinishedPoints: number; readonly commitmentPoints: number };
  'ratio-of-surpriseRatio': { readonly surprisePoints: number };
  'ratio-of-pullInRatio': { readonly pulledInPoints: number };
  'ratio-of-planShare': { readonly commitmentPoints: number; readonly loadPoints: number };
  'ratio-of-estimateAccuracy': {
    readonly estimateErrorPoints: number;
    readonly plainEstimateErrorPoints: number;
  };
  'ratio-of-onScaleShare': { readonly finishedCards: number; readonly onScaleCards: number };
  'ratio-of-finishShare': { readonly velocityPoints: number; readonly workedPoints: number };
  'ratio-of-velocityGrowth': {
    readonly baseline: 'first-three' | 'itself' | 'named' | 'not-noted';
    readonly change: 'fell' | 'rose' | 'same' | 'so-far';
    readonly by: number;
    readonly baselineName: string;
  };
  'ratio-of-velocityGrowth-per-member-day': { readonly madeOf: string; readonly growth: number };
  'ratio-fact': { readonly value: string; readonly madeOf: string };
  'ratio-load': {
    readonly load: number;
    readonly committed: number;
    readonly pulledIn: number;
    readonly surprise: number;
    readonly velocity: number;
  };
  'refusal-no-team-here': Record<never, never>;
  'refusal-no-team-here-fix': Record<never, never>;
  'refusal-set-up-in-channel': Record<never, never>;
  'refusal-set-up-in-channel-fix': Record<never, never>;
  'refusal-outsider': Record<never, never>;
  'refusal-outsider-fix': Record<never, never>;
  'refusal-set-up-from-outside': Record<never, never>;
  'refusal-set-up-from-outside-fix': Record<never, never>;
  'refusal-set-up-left-to-others': Record<never, never>;
  'refusal-set-up-left-to-others-fix': { readonly admins: 'no' | 'yes' };
  'refusal-guest-set-up': Record<never, never>;
  'refusal-guest-set-up-fix': Record<never, never>;
  'refusal-channel-not-seen': Record<never, never>;
  'refusal-channel-not-seen-fix': Record<never, never>;
  'refusal-channel-archived': Record<never, never>;
  'refusal-channel-archived-fix': Record<never, never>;
  'refusal-channel-shared-fix': { readonly act: 'move' | 'set-up'; readonly command: string };
  'refusal-no-team-of-yours': Record<never, never>;
  'refusal-no-team-of-yours-fix': Record<never, never>;
  'refusal-several-teams': { readonly count: number; readonly teams: readonly string[] };
  'refusal-several-teams-fix': { readonly example: string };
  'refusal-not-a-member': { readonly team: string };
  'refusal-not-a-member-fix': Record<never, never>;
  'refusal-team-deserted': { readonly team: string };
  'refusal-team-deserted-fix': Record<never, never>;
  'refusal-owner-not-a-member': { readonly team: string };
  'refusal-owner-not-a-member-fix': Record<never, never>;
  'refusal-not-a-facilitator': {
    readonly act:
      | 'assign'
      | 'cancel'
      | 'change-measures'
      | 'change-settings'
      | 'choose-baseline'
      | 'close'
      | 'days-off'
      | 'edit'
      | 'end-experiment'
      | 'end-team'
      | 'export'
      | 'guests'
      | 'import'
      | 'move'
      | 'plan'
      | 'reopen'
      | 'try'
      | 'undrop'
      | 'watch';
    readonly team: string;
  };
  'refusal-not-a-goal-keeper': { readonly team: string };
  'refusal-not-a-value-keeper': { readonly team: string };
  'refusal-not-a-body-keeper': { readonly team: string };
  'refusal-no-other-part': { readonly name: string };
  'refusal-no-other-part-fix': { readonly name: string };
  'refusal-no-such-body': Record<never, never>;
  'refusal-no-such-body-fix': { readonly any: 'no' | 'yes'; readonly bodies: readonly string[] };
  'refusal-no-such-experiment': Record<never, never>;
  'refusal-no-such-experiment-fix': { readonly any: 'no' | 'yes'; readonly experiments: readonly string[] };
  'refusal-experiment-over': { readonly text: string };
  'refusal-experiment-over-fix': Record<never, never>;
  'refusal-ask-people': { readonly people: readonly string[] };
  'refusal-nobody-to-ask': Record<never, never>;
  'refusal-no-work-to-be-off': Record<never, never>;
  'refusal-no-work-to-be-off-fix': Record<never, never>;
  'refusal-nothing-stored': Record<never, never>;
  'refusal-nothing-stored-fix': Record<never, never>;
  'refusal-move-in-channel': Record<never, never>;
  'refusal-move-in-channel-fix': Record<never, never>;
  'refusal-team-ended': { readonly team: string };
  'refusal-team-ended-fix': { readonly day: string };
  'refusal-team-not-ended': { readonly team: string };
  'refusal-team-not-ended-fix': Record<never, never>;
  'refusal-team-is-here': { readonly team: string };
  'refusal-team-is-here-fix': Record<never, never>;
  'refusal-which-team-moves': { readonly teams: readonly string[] };
  'refusal-which-team-moves-fix': { readonly example: string };
  'refusal-which-team-is-left': { readonly teams: readonly string[] };
  'refusal-which-team-is-left-fix': { readonly example: string };
  'refusal-channel-has-a-team': { readonly team: string };
  'refusal-channel-has-a-team-fix': Record<never, never>;
  'refusal-not-about-cards': Record<never, never>;
  'refusal-not-about-cards-fix': Record<never, never>;
  'refusal-bad-input': { readonly problems: string };
  'refusal-bad-input-fix': Record<never, never>;
  'refusal-no-sprint-running': Record<never, never>;
  'refusal-no-sprint-running-fix': Record<never, never>;
  'refusal-sprint-not-begun': { readonly sprint: string; readonly day: string };
  'refusal-sprint-not-begun-fix': Record<never, never>;
  'refusal-sprint-over': { readonly state: 'cancelled' | 'closed'; readonly sprint: string };
  'refusal-sprint-over-fix': { readonly state: 'cancelled' | 'closed' };
  'refusal-day-outside-sprint': {
    readonly day: string;
    readonly sprint: string;
    readonly first: string;
    readonly last: string;
  };
  'refusal-day-outside-sprint-fix': { readonly example: string };
  'refusal-day-not-come': { readonly day: string };
  'refusal-day-not-come-fix': Record<never, never>;
  'refusal-no-such-card': { readonly card: string };
  'refusal-card-not-given': Record<never, never>;
  'refusal-no-such-card-fix': { readonly more: 'no' | 'yes'; readonly cards: readonly string[] };
  'refusal-no-cards-at-all-fix': Record<never, never>;
  'refusal-card-dropped': { readonly card: string };
  'refusal-card-dropped-fix': Record<never, never>;
  'refusal-card-not-finished': { readonly card: string };
  'refusal-card-not-finished-fix': Record<never, never>;
  'refusal-card-finished': { readonly card: string };
  'refusal-card-finished-fix': Record<never, never>;
  'refusal-card-not-blocked': { readonly card: string };
  'refusal-card-not-blocked-fix': Record<never, never>;
  'refusal-takes-no-cards': { readonly team: string };
  'refusal-takes-no-cards-fix': Record<never, never>;
  'refusal-already-owner': { readonly card: string };
  'refusal-already-owner-fix': Record<never, never>;
  'refusal-card-not-dropped': { readonly card: string };
  'refusal-card-not-dropped-fix': Record<never, never>;
  'refusal-not-card-owner': { readonly act: 'block' | 'give' | 'release' | 'reopen'; readonly card: string };
  'refusal-not-card-owner-fix': Record<never, never>;
  'refusal-too-many-cards': { readonly limit: number };
  'refusal-too-many-cards-fix': Record<never, never>;
  'refusal-no-cards-of-yours': { readonly sprint: string };
  'refusal-no-cards-of-yours-fix': Record<never, never>;
  'refusal-unclear-words': { readonly problems: string };
  'refusal-unclear-words-fix': {
    readonly cards: 'several' | 'single';
    readonly card: string;
    readonly left: number;
    readonly reference: string;
  };
  'refusal-no-sprint-to-reopen': Record<never, never>;
  'refusal-no-sprint-to-reopen-fix': Record<never, never>;
  'refusal-nothing-to-export': { readonly team: string };
  'refusal-nothing-to-export-fix': Record<never, never>;
  'refusal-no-closed-sprint': { readonly needed: 'any' | 'velocity'; readonly team: string };
  'refusal-no-closed-sprint-fix': Record<never, never>;
  'refusal-no-such-sprint': { readonly sprint: string };
  'refusal-sprint-not-given': Record<never, never>;
  'refusal-no-such-sprint-fix': { readonly more: 'no' | 'yes'; readonly sprints: readonly string[] };
  'refusal-sprint-not-closed': { readonly state: 'cancelled' | 'open'; readonly sprint: string };
  'refusal-sprint-not-closed-fix': { readonly state: 'cancelled' | 'open' };
  'refusal-no-velocity': { readonly finished: 'nothing' | 'unknown'; readonly sprint: string };
  'refusal-no-velocity-fix': Record<never, never>;
  'refusal-sprint-stays': { readonly why: 'named-baseline' | 'run-here'; readonly sprint: string };
  'refusal-sprint-stays-fix': { readonly why: 'named-baseline' | 'run-here' };
  'refusal-days-taken': { readonly sprint: string; readonly other: string };
  'refusal-days-taken-fix': { readonly other: string };
  'refusal-reopen-too-late': { readonly sprint: string };
  'refusal-reopen-too-late-fix': Record<never, never>;
  'refusal-unknown-command': { readonly word: string };
  'refusal-unknown-command-fix': { readonly wanted: 'any' | 'split' };
  'refusal-unknown-command-near-fix': { readonly near: string };
  'refusal-bad-argument': { readonly command: string; readonly problem: string };
  'refusal-bad-argument-fix': { readonly command: string; readonly example: string };
  'refusal-drop-example': Record<never, never>;
  'refusal-off-example': Record<never, never>;
  'refusal-blocked-example': Record<never, never>;
  'refusal-goal-example': Record<never, never>;
  'refusal-cancel-example': Record<never, never>;
  'refusal-key-taken': { readonly sprint: string; readonly name: string };
  'refusal-key-taken-fix': Record<never, never>;
  'refusal-estimate-is-fixed': { readonly why: 'answered' | 'first-day-over'; readonly card: string };
  'refusal-estimate-is-fixed-fix': { readonly number: string };
  'refusal-sprint-was-closed': { readonly sprint: string };
  'refusal-sprint-was-closed-fix': Record<never, never>;
  'refusal-no-draft': Record<never, never>;
  'refusal-no-draft-fix': Record<never, never>;
  'refusal-plan-changed': Record<never, never>;
  'refusal-plan-changed-fix': Record<never, never>;
  'refusal-sprint-changed': Record<never, never>;
  'refusal-sprint-changed-fix': Record<never, never>;
  'refusal-answered-since': { readonly card: string };
  'refusal-answered-since-fix': Record<never, never>;
  'refusal-too-much-at-once': Record<never, never>;
  'refusal-too-much-at-once-fix': { readonly seconds: number };
  'refusal-held-up': Record<never, never>;
  'refusal-held-up-fix': Record<never, never>;
  'refusal-reading-yours': Record<never, never>;
  'refusal-reading-yours-fix': Record<never, never>;
  'refusal-reading-others': Record<never, never>;
  'refusal-reading-others-fix': Record<never, never>;
  'refusal-file-too-large': { readonly file: string };
  'refusal-file-too-large-fix': Record<never, never>;
  'refusal-file-not-text': { readonly file: string };
  'refusal-file-not-text-fix': Record<never, never>;
  'refusal-file-no-answer': { readonly file: string };
  'refusal-file-no-answer-fix': Record<never, never>;
  'refusal-file-not-calendar': { readonly file: string };
  'refusal-file-not-calendar-fix': Record<never, never>;
  'refusal-file-too-long': { readonly file: string };
  'refusal-file-too-long-fix': Record<never, never>;
  'refusal-file-too-much': { readonly file: string };
  'refusal-file-too-much-fix': Record<never, never>;
  'refusal-file-not-handed-over': { readonly file: string };
  'refusal-file-not-handed-over-fix': Record<never, never>;
  'refusal-stale-control': Record<never, never>;
  'refusal-stale-control-fix': Record<never, never>;
  'refusal-form-too-late': Record<never, never>;
  'refusal-form-too-late-fix': Record<never, never>;
  'refusal-form-closed': Record<never, never>;
  'refusal-form-closed-fix': Record<never, never>;
  'refusal-not-installed': Record<never, never>;
  'refusal-not-installed-fix': { readonly url: string };
  'refusal-platform-pause': Record<never, never>;
  'refusal-things-wrong': { readonly count: number };
  'refusal-more-things': { readonly count: number };
  'refusal-a-colleague': Record<never, never>;
  'rehearsal-usage': Record<never, never>;
  'rehearsal-unread': { readonly fields: readonly string[] };
  'rehearsal-port-in-use': { readonly port: string; readonly next: string };
  'rehearsal-json-alone': Record<never, never>;
  'rehearsal-port-wrong': Record<never, never>;
  'rehearsal-open': { readonly url: string };
  'rehearsal-shortcut-answer': Record<never, never>;
  'rehearsal-hint': { readonly member: string };
  'rehearsal-hint-after': { readonly channel: string };
  'rehearsal-wrote': { readonly people: readonly string[]; readonly day: string; readonly time: string };
  'rehearsal-day': { readonly day: string; readonly time: string };
  'rehearsal-set-up': { readonly team: string };
  'rehearsal-planned': { readonly sprint: string };
  'rehearsal-not-planned': { readonly sprint: string };
  'rehearsal-said': { readonly day: string; readonly people: readonly string[] };
  'rehearsal-facilitator': Record<never, never>;
  'rehearsal-closed': { readonly sprint: string };
  'rehearsal-threshold-unknown': { readonly names: readonly string[]; readonly known: readonly string[] };
  'rehearsal-cards-too-long': Record<never, never>;
  'rehearsal-cards-fields': Record<never, never>;
  'rehearsal-no-member': { readonly member: string };
  'rehearsal-silent': Record<never, never>;
  'rehearsal-no-sprint': Record<never, never>;
  'rehearsal-no-form': Record<never, never>;
  'rehearsal-sprint-heading': { readonly sprint: string; readonly first: string; readonly last: string };
  'rehearsal-refused-heading': Record<never, never>;
  'rehearsal-post': { readonly seen: 'by-all' | 'by-them-only'; readonly at: string; readonly to: string };
  'rehearsal-post-updated': {
    readonly seen: 'by-all' | 'by-them-only';
    readonly at: string;
    readonly to: string;
  };
  'rehearsal-image': { readonly text: string };
  'rehearsal-file': { readonly name: string };
  'scenario-refused': { readonly file: string };
  'scenario-problem': { readonly place: string; readonly problem: string };
  'scenario-whole-file': Record<never, never>;
  'scenario-no-json': { readonly reason: string };
  'scenario-unreadable': { readonly reason: string };
  'scenario-missing': Record<never, never>;
  'scenario-type': { readonly expected: 'array' | 'number' | 'object' | 'string' };
  'scenario-empty-text': Record<never, never>;
  'scenario-empty-list': Record<never, never>;
  'scenario-weekday': Record<never, never>;
  'scenario-true': Record<never, never>;
  'scenario-day': Record<never, never>;
  'scenario-time': Record<never, never>;
  'scenario-zone': { readonly zone: string };
  'scenario-event-none': { readonly kinds: readonly string[] };
  'scenario-event-several': { readonly kinds: readonly string[]; readonly found: readonly string[] };
  'scenario-extend-nothing': Record<never, never>;
  'scenario-goal-met': Record<never, never>;
  'scenario-ratio': { readonly ratios: readonly string[] };
  'scenario-direction': Record<never, never>;
  'scenario-outcome': Record<never, never>;
  'scenario-event-nobody': Record<never, never>;
  'scenario-member-twice': { readonly member: string };
  'retro-title': { readonly sprint: string };
  'retro-running': { readonly sprint: string; readonly endsOn: string };
  'retro-cancelled': { readonly sprint: string };
  'retro-imported': { readonly days: 'known' | 'unknown'; readonly sprint: string };
  'retro-days-title': Record<never, never>;
  'retro-nothing-happened': Record<never, never>;
  'retro-day': { readonly day: string; readonly events: string };
  'retro-events': { readonly before: string; readonly event: string };
  'retro-event': {
    readonly kind:
      | 'blocked'
      | 'dropped'
      | 'finished'
      | 'grew'
      | 'moving'
      | 'pulled-in'
      | 'reopened'
      | 'shrank'
      | 'undropped';
    readonly cards: readonly string[];
  };
  'retro-plan-changed': { readonly changes: readonly string[] };
  'retro-card-with': { readonly card: string; readonly facts: readonly string[] };
  'retro-points': { readonly points: number };
  'retro-note': { readonly note: string };
  'retro-more': { readonly count: number };
  'retro-days-more': { readonly days: number };
  'retro-cards-title': Record<never, never>;
  'retro-card': { readonly card: string; readonly lessons: readonly string[] };
  'retro-lesson-grew-most': { readonly growth: readonly string[] };
  'retro-lesson-off-scale': { readonly estimatePoints: number; readonly sizePoints: number };
  'retro-lesson-blocked-longest': { readonly evenings: number };
  'retro-lesson-pulled-in-before': { readonly openCards: number; readonly workedPoints: number };
  'retro-lesson-nearly-done': { readonly leftPoints: number; readonly sizePoints: number };
  'retro-questions-title': Record<never, never>;
  'retro-question': { readonly number: number; readonly fact: string; readonly ask: string };
  'retro-only-you': Record<never, never>;
  'retro-shared-by': { readonly person: string };
  'retro-share-button': Record<never, never>;
  'retro-page-button': Record<never, never>;
  'retro-shared-reply': Record<never, never>;
  'retro-numbers-title': Record<never, never>;
  'retro-agreed-title': Record<never, never>;
  'retro-page-comment': { readonly sprint: string };
  'retro-page-sent': Record<never, never>;
  'role-given-title': { readonly roles: readonly string[]; readonly team: string };
  'role-name': { readonly role: 'facilitator' | 'member' | 'product-owner' };
  'role-given-by': { readonly person: string };
  'role-given-member': Record<never, never>;
  'role-given-facilitator': Record<never, never>;
  'role-given-product-owner': Record<never, never>;
  'role-given-stored': Record<never, never>;
  'role-given-more': Record<never, never>;
  'taken-off-title': { readonly team: string };
  'taken-off-by': { readonly person: string };
  'taken-off-cards': Record<never, never>;
  'taken-off-product-owner': Record<never, never>;
  'taken-off-record': Record<never, never>;
  'role-ended-facilitator-title': { readonly team: string };
  'role-ended-facilitator': { readonly count: number; readonly people: readonly string[] };
  'role-ended-product-owner-title': { readonly team: string };
  'role-ended-product-owner': Record<never, never>;
  'no-facilitator-title': { readonly team: string };
  'no-facilitator-until': Record<never, never>;
  'sprint-span': { readonly days: 'several' | 'single'; readonly from: string; readonly to: string };
  'sprint-closing-time': { readonly day: string; readonly time: string };
  'sprint-moment': { readonly timeZone: string; readonly day: string; readonly time: string };
  'sprint-moment-pattern': Record<never, never>;
  'start-refused': Record<never, never>;
  'start-no-command': { readonly command: string; readonly commands: readonly string[] };
  'start-port-refused': {
    readonly why: 'in-use' | 'no-such-address' | 'not-allowed' | 'refused';
    readonly port: string;
    readonly setting: string;
    readonly address: string;
    readonly hostSetting: string;
    readonly reason: string;
  };
  'start-bot-token-missing': { readonly variable: string };
  'start-bot-token-wrong': { readonly variable: string };
  'start-no-rotation': Record<never, never>;
  'start-bot-token-rotates': { readonly variable: string };
  'start-bot-token-beside-many': { readonly variable: string };
  'start-app-token-missing': { readonly variable: string };
  'start-app-token-wrong': { readonly variable: string };
  'start-client-id-missing': { readonly variable: string };
  'start-client-id-wrong': { readonly variable: string };
  'start-client-secret-missing': { readonly variable: string };
  'start-client-secret-short': { readonly variable: string };
  'start-token-keys-missing': { readonly variable: string };
  'start-token-keys-empty': { readonly variable: string };
  'start-token-key-unnamed': { readonly variable: string; readonly entry: number };
  'start-token-key-wrong': { readonly variable: string; readonly bytes: number; readonly name: string };
  'start-token-key-twice': { readonly variable: string; readonly name: string };
  'start-allowed-workspaces-missing': { readonly variable: string };
  'start-allowed-workspaces-wrong': { readonly variable: string };
  'start-set-up-users-wrong': { readonly variable: string };
  'start-public-url-missing': { readonly variable: string };
  'start-public-url-wrong': { readonly variable: string };
  'start-signing-secret-missing': { readonly variable: string };
  'start-signing-secret-short': { readonly variable: string };
  'start-port-wrong': { readonly variable: string };
  'start-host-wrong': { readonly variable: string };
  'start-health-port-wrong': { readonly variable: string };
  'start-trusted-proxies-wrong': { readonly variable: string };
  'start-metrics-port-wrong': { readonly variable: string };
  'start-metrics-token-weak': { readonly variable: string; readonly characters: number };
  'start-metrics-token-missing': { readonly variable: string };
  'start-quoted': { readonly variable: string };
  'start-port-twice': { readonly variable: string; readonly name: string };
  'start-database-url-unencoded': { readonly variable: string };
  'start-database-url-wrong': { readonly variable: string };
  'start-database-ca-wrong': { readonly variable: string };
  'start-log-level-wrong': { readonly variable: string; readonly levels: readonly string[] };
  'start-requests-per-minute-wrong': {
    readonly variable: string;
    readonly lowest: string;
    readonly highest: string;
  };
  'start-api-url-wrong': { readonly variable: string };
  'start-mode-wrong': { readonly variable: string };
  'start-file-and-value': { readonly variable: string; readonly name: string };
  'start-file-too-large': { readonly variable: string };
  'start-file-empty': { readonly variable: string };
  'start-file-missing': { readonly variable: string };
  'start-file-unreadable': { readonly variable: string; readonly reason: string };
  'start-new-token': Record<never, never>;
  'start-new-app-token': Record<never, never>;
  'start-token-not-sent': Record<never, never>;
  'start-token-unknown': Record<never, never>;
  'start-token-revoked': Record<never, never>;
  'start-token-expired': Record<never, never>;
  'start-bot-removed': Record<never, never>;
  'start-token-refused': { readonly reason: string };
  'start-token-of-person': Record<never, never>;
  'start-platform-unreachable': Record<never, never>;
  'start-platform-odd-answer': { readonly reason: string };
  'start-scope-missing': {
    readonly scope: string;
    readonly use:
      | 'command'
      | 'direct'
      | 'download'
      | 'join-channels'
      | 'mentions'
      | 'people'
      | 'post'
      | 'post-public'
      | 'read-channels'
      | 'read-direct'
      | 'read-groups'
      | 'see-channels'
      | 'see-groups'
      | 'upload';
  };
  'start-app-token-scope': Record<never, never>;
  'start-socket-mode-off': Record<never, never>;
  'start-sockets-taken': Record<never, never>;
  'start-app-token-refused': { readonly reason: string };
  'start-socket-unreachable': Record<never, never>;
  'start-key-missing': { readonly name: string };
  'start-key-other': { readonly name: string };
  'start-database-url-invalid': Record<never, never>;
  'start-database-encryption-unclear': Record<never, never>;
  'start-database-unencrypted': { readonly place: string };
  'start-database-certificate-refused': { readonly place: string; readonly reason: string };
  'start-database-unreachable': { readonly place: string; readonly reason: string };
  'start-database-login-refused': { readonly place: string };
  'start-database-missing': { readonly place: string };
  'start-database-rights-missing': { readonly place: string };
  'start-database-too-old': { readonly version: string; readonly oldest: string };
  'start-database-full': { readonly place: string };
  'start-database-read-only': { readonly place: string };
  'start-database-busy': { readonly place: string };
  'start-database-migration-failed': { readonly reason: string };
  'start-data-folder-in-use': { readonly folder: string };
  'start-data-folder-of-others': { readonly folder: string; readonly owner: string };
  'start-data-folder-unusable': { readonly folder: string; readonly reason: string };
  'start-data-folder-full': { readonly folder: string; readonly free: number; readonly needed: number };
  'start-data-folder-damaged': { readonly folder: string };
  'start-data-folder-empty': { readonly folder: string };
  'start-data-folder-taken': { readonly folder: string };
  'start-dump-unusable': { readonly folder: string };
  'status-begins': { readonly sprint: string; readonly day: string };
  'status-planned': {
    readonly workingDays: number;
    readonly span: string;
    readonly committed: number;
    readonly cards: number;
  };
  'status-title': {
    readonly sprint: string;
    readonly day: string;
    readonly left: number;
    readonly cards: number;
  };
  'status-finished': { readonly finished: number; readonly committed: number };
  'status-finished-no-plan': { readonly finished: number };
  'status-surprise': { readonly value: string; readonly threshold: string };
  'status-no-owner': { readonly cards: number; readonly names: readonly string[]; readonly number: string };
  'status-no-owner-more': { readonly count: number };
  'status-days': { readonly left: number; readonly closes: string; readonly of: number };
  'status-days-named': { readonly days: number };
  'status-closes-again': { readonly closes: string };
  'status-answered': { readonly asked: number; readonly answered: number };
  'status-blocked-title': { readonly cards: number };
  'status-blocked-card': { readonly number: string; readonly card: string; readonly since: string };
  'status-blocked-card-on': {
    readonly number: string;
    readonly card: string;
    readonly on: string;
    readonly since: string;
  };
  'status-blocked-more': { readonly cards: number };
  'status-blocked-days': { readonly days: number };
  'status-ratios-title': Record<never, never>;
  'status-growth-title': Record<never, never>;
  'status-growth-none': Record<never, never>;
  'status-growth-card': { readonly card: string; readonly growth: readonly string[] };
  'status-growth-answer': { readonly day: string; readonly card: string; readonly growth: readonly string[] };
  'status-growth-answer-note': {
    readonly day: string;
    readonly card: string;
    readonly growth: readonly string[];
    readonly note: string;
  };
  'status-growth-more': { readonly kind: 'cards' | 'changes'; readonly count: number };
  'status-share': Record<never, never>;
  'status-only-you': Record<never, never>;
  'status-shared-by': { readonly person: string };
  'setup-title': Record<never, never>;
  'setup-title-change': Record<never, never>;
  'setup-submit': Record<never, never>;
  'setup-submit-change': Record<never, never>;
  'setup-intro': { readonly channel: string };
  'setup-deserted': { readonly sprints: number };
  'setup-name': Record<never, never>;
  'setup-name-initial': Record<never, never>;
  'shared-channel-seen': Record<never, never>;
  'shared-channel-label': Record<never, never>;
  'shared-channel-yes': Record<never, never>;
  'setup-members': Record<never, never>;
  'setup-members-hint': Record<never, never>;
  'setup-facilitators': Record<never, never>;
  'setup-facilitators-hint': Record<never, never>;
  'setup-product-owner': Record<never, never>;
  'setup-time-zone': Record<never, never>;
  'setup-time-zone-hint': Record<never, never>;
  'setup-prompt-time': Record<never, never>;
  'setup-prompt-time-hint': Record<never, never>;
  'setup-working-days': Record<never, never>;
  'measures-title': Record<never, never>;
  'measures-submit': Record<never, never>;
  'measures-intro': { readonly team: string };
  'setting-label': {
    readonly setting:
      | 'carriedOver'
      | 'closesAt'
      | 'reminderAfterMinutes'
      | 'retentionMonths'
      | 'scale'
      | 'surpriseInVerdict'
      | 'valueAfterDays'
      | 'weeklyLine';
  };
  'setting-hint': {
    readonly setting:
      | 'carriedOver'
      | 'closesAt'
      | 'reminderAfterMinutes'
      | 'retentionMonths'
      | 'scale'
      | 'surpriseInVerdict'
      | 'valueAfterDays'
      | 'weeklyLine';
  };
  'setting-choice': { readonly choice: 'left' | 'new-estimate' | 'no' | 'yes' };
  'measures-thresholds': Record<never, never>;
  'threshold-label': {
    readonly threshold:
      | 'estimateAccuracyAtLeast'
      | 'estimateAccuracyAtMost'
      | 'keptShareAtLeast'
      | 'planShareAtLeast'
      | 'pullInRatioAtMost'
      | 'surpriseRatioAtMost'
      | 'velocityGrowthFirstMark'
      | 'velocityGrowthLongRangeMark';
  };
  'threshold-hint': {
    readonly threshold:
      | 'estimateAccuracyAtLeast'
      | 'estimateAccuracyAtMost'
      | 'keptShareAtLeast'
      | 'planShareAtLeast'
      | 'pullInRatioAtMost'
      | 'surpriseRatioAtMost'
      | 'velocityGrowthFirstMark'
      | 'velocityGrowthLongRangeMark';
  };
  'weekday-1': Record<never, never>;
  'weekday-2': Record<never, never>;
  'weekday-3': Record<never, never>;
  'weekday-4': Record<never, never>;
  'weekday-5': Record<never, never>;
  'weekday-6': Record<never, never>;
  'weekday-7': Record<never, never>;
  'weekdays-all': Record<never, never>;
  'weekdays-span': { readonly first: string; readonly last: string };
  'weekdays-some': { readonly days: readonly string[] };
  'team-moved-here-title': { readonly team: string };
  'team-moved-here': { readonly person: string };
  'team-moved-reply': { readonly team: string };
  'team-moved-away-title': { readonly team: string };
  'team-moved-away': { readonly person: string; readonly channel: string };
  'team-changed': { readonly person: string; readonly team: string };
  'team-changed-line': { readonly setting: string; readonly was: string; readonly became: string };
  'team-changed-people': { readonly people: readonly string[] };
  'team-changed-none': Record<never, never>;
  'team-changed-no-limit': Record<never, never>;
  'team-changed-members': {
    readonly new: number;
    readonly was: number;
    readonly became: number;
    readonly people: readonly string[];
  };
  'team-set-up-title': { readonly members: number; readonly team: string };
  'team-set-up-intro': { readonly days: string; readonly time: string; readonly timeZone: string };
  'team-members': { readonly people: readonly string[] };
  'team-facilitators': { readonly people: readonly string[] };
  'team-product-owner': { readonly person: string };
  'team-more-people': Record<never, never>;
  'team-set-up-privacy': Record<never, never>;
  'team-retention': { readonly months: number };
  'team-retention-none': Record<never, never>;
  'team-set-up-goes-on': { readonly sprint: string };
  'team-set-up-next': Record<never, never>;
  'team-saved': {
    readonly change: 'changed' | 'new';
    readonly team: string;
    readonly time: string;
    readonly timeZone: string;
    readonly days: string;
  };
  'team-saved-next': { readonly change: 'changed' | 'new' };
  'team-measures-saved': {
    readonly minutes: number;
    readonly team: string;
    readonly time: string;
    readonly scale: readonly string[];
  };
  'team-measures-from-when': Record<never, never>;
  'end-title': Record<never, never>;
  'end-submit': Record<never, never>;
  'end-keep': Record<never, never>;
  'end-asked-no-more': { readonly team: string };
  'end-sprint-waits': { readonly sprint: string; readonly days: number };
  'end-erased': { readonly day: string };
  'end-channel-told': Record<never, never>;
  'end-export': Record<never, never>;
  'end-export-yes': Record<never, never>;
  'team-ended-title': { readonly team: string };
  'team-ended-by': { readonly person: string };
  'team-idle': { readonly months: number };
  'team-ended-until': { readonly day: string };
  'team-ended-no-more': Record<never, never>;
  'team-ended-reply': { readonly team: string };
  'team-resumed-title': { readonly team: string };
  'team-resumed-by': { readonly person: string };
  'team-resumed-reply': { readonly team: string };
  'team-resumed-sprint': { readonly sprint: string };
  'team-resumed-plan': Record<never, never>;
  'leave-title': Record<never, never>;
  'leave-submit': Record<never, never>;
  'leave-asked-no-more': { readonly team: string };
  'leave-alone': { readonly cards: number };
  'leave-shared': { readonly cards: number };
  'leave-last-facilitator': Record<never, never>;
  'leave-product-owner': Record<never, never>;
  'leave-answers-stay': Record<never, never>;
  'team-left': { readonly team: string };
  'team-left-privacy': Record<never, never>;
  'trouble-nothing': { readonly reference: string };
  'trouble-uncertain': { readonly reference: string };
  'trouble-kept': { readonly reference: string };
  'trouble-operator': { readonly reference: string };
  'trouble-database': {
    readonly certain: 'no' | 'yes';
    readonly why: 'database-busy' | 'database-full' | 'database-read-only';
  };
  'trouble-database-why': { readonly why: 'database-busy' | 'database-full' | 'database-read-only' };
  'trouble-database-fix': {
    readonly why: 'database-busy' | 'database-full' | 'database-read-only';
    readonly certain: 'no' | 'yes';
  };
  'trouble-sent-twice': Record<never, never>;
  'trouble-working': Record<never, never>;
  'trouble-title': Record<never, never>;
  'trouble-kept-title': Record<never, never>;
  'trouble-working-title': Record<never, never>;
  'trouble-done-title': Record<never, never>;
  'trouble-refused-title': Record<never, never>;
  'undefined-no-commitment': Record<never, never>;
  'undefined-no-load': Record<never, never>;
  'undefined-no-card-finished': Record<never, never>;
  'undefined-no-work-reported': Record<never, never>;
  'undefined-no-baseline': Record<never, never>;
  'undefined-nobody-asked': Record<never, never>;
  'undefined-no-values': Record<never, never>;
  'undefined-nothing-to-count': Record<never, never>;
  'undefined-few-values': { readonly known: number; readonly needed: number };
  'undefined-few-sprints': {
    readonly having: 'closed' | 'commitment' | 'finished-points' | 'number' | 'pulled-in-points';
    readonly known: number;
    readonly needed: number;
  };
  'undefined-no-signal-yet': { readonly known: number; readonly needed: number };
  'undefined-nobody-there': Record<never, never>;
  'undefined-nothing-committed': Record<never, never>;
  'undefined-too-little-finished': Record<never, never>;
  'undefined-pulled-in-before-finishing': { readonly sprints: number; readonly of: number };
  'undefined-varies-too-much': Record<never, never>;
  'undefined-no-closed-card': Record<never, never>;
  'undefined-no-card-of-size': { readonly estimatePoints: number };
  'undefined-no-surprise-of-size': { readonly estimatePoints: number };
  'undefined-few-pulled-in': { readonly known: number; readonly needed: number };
  'undefined-no-day-for-card': { readonly estimatePoints: number };
  'undefined-no-backlog': Record<never, never>;
  'undefined-no-velocity': { readonly sprints: number };
  'undefined-too-far-off': { readonly sprints: number; readonly chance: number };
  'undefined-no-valued-sprint': Record<never, never>;
  'undefined-before-valued-sprint': Record<never, never>;
  'undefined-no-value': Record<never, never>;
  'undefined-nothing-finished': Record<never, never>;
  'undefined-velocity-unknown': Record<never, never>;
  'undefined-cards-not-imported': Record<never, never>;
  'undefined-finished-commitment-not-imported': Record<never, never>;
  'undefined-pulled-in-work-not-imported': Record<never, never>;
  'undefined-surprise-work-not-imported': Record<never, never>;
  'undefined-load-not-imported': Record<never, never>;
  'undefined-work-not-imported': Record<never, never>;
  'undefined-ended-before-ratio': Record<never, never>;
  'undefined-as-posted': { readonly sentence: string };
  'undefined-not-begun': Record<never, never>;
  'undefined-corrections-only': Record<never, never>;
  'undefined-no-working-day': Record<never, never>;
  'undefined-last-day-over': Record<never, never>;
  'undefined-no-points': Record<never, never>;
  'undefined-nobody-answered': Record<never, never>;
  'undefined-no-work-yet': Record<never, never>;
  'undefined-few-days': { readonly needed: number };
  'no-answer': { readonly what: 'forecast' | 'range' };
  'no-answer-yet': { readonly what: 'forecast' | 'range' };
  'ratio-none': { readonly reason: string };
  'value-question': { readonly sprint: string; readonly endsOn: string };
  'value-record': Record<never, never>;
  'value-correct': Record<never, never>;
  'value-title': Record<never, never>;
  'value-submit': Record<never, never>;
  'value-intro': { readonly team: string };
  'value-sprint': Record<never, never>;
  'value-amount': Record<never, never>;
  'value-amount-hint': Record<never, never>;
  'value-file': Record<never, never>;
  'value-file-hint': Record<never, never>;
  'value-who-sees': Record<never, never>;
  'value-none-yet': Record<never, never>;
  'past-sprint-choice': { readonly sprint: string; readonly endsOn: string; readonly said: string };
  'past-sprint-first-choice': { readonly sprint: string; readonly endsOn: string; readonly said: string };
  'value-same': { readonly sprint: string; readonly endsOn: string; readonly value: number };
  'value-recorded': { readonly sprint: string; readonly endsOn: string; readonly value: number };
  'value-replaced': {
    readonly sprint: string;
    readonly endsOn: string;
    readonly value: number;
    readonly previous: number;
  };
  'value-no-measure': Record<never, never>;
  'value-is-measure': Record<never, never>;
  'value-no-growth': Record<never, never>;
  'value-growth': { readonly sprint: string; readonly value: number; readonly velocity: number };
  'value-growth-point': {
    readonly sprint: string;
    readonly value: number;
    readonly velocity: number;
    readonly point: number;
  };
  'value-not-said': Record<never, never>;
  'value-another': Record<never, never>;
  'value-history': Record<never, never>;
  'baseline-title': Record<never, never>;
  'baseline-submit': Record<never, never>;
  'baseline-intro': { readonly team: string };
  'baseline-sprint': Record<never, never>;
  'baseline-effect': Record<never, never>;
  'baseline-older': { readonly sprints: number };
  'baseline-median-choice': { readonly known: 'known' | 'not-yet'; readonly velocity: number };
  'baseline-median': { readonly known: 'known' | 'not-yet'; readonly velocity: number };
  'baseline-which': {
    readonly place: 'first' | 'later';
    readonly sprint: string;
    readonly endsOn: string;
    readonly velocity: number;
  };
  'baseline-unchanged': { readonly team: string; readonly baseline: string };
  'baseline-changed': { readonly team: string; readonly baseline: string; readonly before: string };
  'baseline-latest': {
    readonly change: 'none' | 'some';
    readonly sprint: string;
    readonly after: number;
    readonly before: number;
  };
  'values-new': Record<never, never>;
  'values-nothing': Record<never, never>;
  'values-bad': Record<never, never>;
  'values-sprint': { readonly sprint: string; readonly endsOn: string; readonly value: number };
  'values-sprint-replaced': {
    readonly sprint: string;
    readonly endsOn: string;
    readonly value: number;
    readonly previous: number;
  };
  'values-more': { readonly count: number };
  'values-same': { readonly sprints: number };
  'values-without': { readonly rows: number };
  'values-recorded': { readonly sprints: number };
  'welcome-title': Record<never, never>;
  'welcome-team': { readonly teams: readonly string[] };
  'welcome-reader-type': Record<never, never>;
  'welcome-member-type': Record<never, never>;
  'welcome-no-team': Record<never, never>;
  'welcome-no-team-type': Record<never, never>;
  'what-if-button': Record<never, never>;
  'what-if-title': Record<never, never>;
  'what-if-submit': Record<never, never>;
  'what-if-intro': { readonly sprint: string };
  'what-if-without': Record<never, never>;
  'what-if-away': Record<never, never>;
  'what-if-away-hint': Record<never, never>;
  'what-if-more': Record<never, never>;
  'what-if-kept': {
    readonly moves: 'not' | 'so';
    readonly floor: number;
    readonly keptNow: number;
    readonly changes: string;
    readonly allNow: number;
    readonly allThen: number;
    readonly keptThen: number;
  };
  'what-if-all': { readonly allNow: number; readonly allThen: number; readonly changes: string };
  'what-if-unknown': { readonly changes: string };
  'what-if-changes': { readonly changes: readonly string[] };
  'what-if-card-out': { readonly card: string; readonly points: number };
  'what-if-days-away': { readonly days: number };
  'what-if-points-more': { readonly points: number };
  'what-if-committed-card': { readonly card: string };
  'what-if-average-day': { readonly share: number };
  'what-if-unchanged': Record<never, never>;
}
