/** What each message takes. Written by `npm run messages` from the English message files; don't edit it by hand. */

export interface Messages {
  'amount-points': { readonly amount: number };
  somebody: Record<never, never>;
  'refusal-no-team-here': Record<never, never>;
  'refusal-no-team-here-fix': Record<never, never>;
  'refusal-set-up-in-channel': Record<never, never>;
  'refusal-set-up-in-channel-fix': Record<never, never>;
  'refusal-no-team-of-yours': Record<never, never>;
  'refusal-no-team-of-yours-fix': Record<never, never>;
  'refusal-several-teams': { readonly count: number; readonly teams: readonly string[] };
  'refusal-several-teams-fix': Record<never, never>;
  'refusal-not-a-member': { readonly team: string };
  'refusal-not-a-member-fix': Record<never, never>;
  'refusal-owner-not-a-member': { readonly team: string };
  'refusal-owner-not-a-member-fix': Record<never, never>;
  'refusal-not-a-facilitator': {
    readonly act:
      | 'cancel'
      | 'change-measures'
      | 'change-settings'
      | 'choose-baseline'
      | 'close'
      | 'export'
      | 'import'
      | 'plan'
      | 'reopen';
    readonly team: string;
  };
  'refusal-not-a-value-keeper': { readonly team: string };
  'refusal-ask-people': { readonly people: readonly string[] };
  'refusal-nobody-to-ask': Record<never, never>;
  'refusal-nothing-stored': Record<never, never>;
  'refusal-nothing-stored-fix': Record<never, never>;
  'refusal-last-facilitator': { readonly teams: readonly string[] };
  'refusal-last-facilitator-fix': Record<never, never>;
  'refusal-channel-has-a-team': { readonly team: string };
  'refusal-channel-has-a-team-fix': Record<never, never>;
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
  'refusal-already-owner': { readonly card: string };
  'refusal-already-owner-fix': Record<never, never>;
  'refusal-not-card-owner': { readonly card: string };
  'refusal-not-card-owner-fix': Record<never, never>;
  'refusal-too-many-cards': { readonly limit: number };
  'refusal-too-many-cards-fix': Record<never, never>;
  'refusal-no-cards-of-yours': { readonly sprint: string };
  'refusal-no-cards-of-yours-fix': Record<never, never>;
  'refusal-unclear-words': { readonly problems: string };
  'refusal-unclear-words-fix': { readonly cards: 'several' | 'single' };
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
  'refusal-days-taken': { readonly sprint: string; readonly other: string };
  'refusal-days-taken-fix': { readonly other: string };
  'refusal-reopen-too-late': { readonly sprint: string };
  'refusal-reopen-too-late-fix': Record<never, never>;
  'refusal-unknown-command': { readonly word: string };
  'refusal-unknown-command-fix': Record<never, never>;
  'refusal-unknown-command-near-fix': { readonly near: string };
  'refusal-bad-argument': { readonly command: string; readonly problem: string };
  'refusal-bad-argument-fix': { readonly command: string; readonly example: string };
  'refusal-key-taken': { readonly sprint: string; readonly name: string };
  'refusal-key-taken-fix': Record<never, never>;
  'refusal-no-draft': Record<never, never>;
  'refusal-no-draft-fix': Record<never, never>;
  'refusal-sprint-changed': Record<never, never>;
  'refusal-sprint-changed-fix': Record<never, never>;
  'refusal-too-much-at-once': Record<never, never>;
  'refusal-too-much-at-once-fix': { readonly seconds: number };
  'refusal-file-too-large': { readonly file: string };
  'refusal-file-too-large-fix': Record<never, never>;
  'refusal-file-not-text': { readonly file: string };
  'refusal-file-not-text-fix': Record<never, never>;
  'refusal-file-no-answer': { readonly file: string };
  'refusal-file-no-answer-fix': Record<never, never>;
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
}
