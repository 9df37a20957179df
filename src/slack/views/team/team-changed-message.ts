/** What the channel reads when the settings of its team were changed: a line for each that is another now. */
import type { ContentOf } from '../../../app/posting/post-kinds.ts';
import { SETTINGS, type SettingChoice, type SettingName } from '../../../app/team/settings.ts';
import type { TeamChange } from '../../../app/team/team-changes.ts';
import type { Weekday } from '../../../sprint/calendar.ts';
import { THRESHOLDS, type ThresholdName } from '../../../sprint/thresholds.ts';
import { people, person } from '../../../words/people.ts';
import { Markup, mrkdwn, say } from '../../../words/say.ts';
import { weekdayWords } from '../../../words/team.ts';
import { section } from '../block-builders.ts';
import { lineList } from '../line-sections.ts';
import { type MessageView, messageView } from '../message-view.ts';
import { percentTyped } from './team-forms.ts';

/** As the fields of the form are called. */
const SETUP_LABELS = {
  name: 'setup-name',
  facilitators: 'setup-facilitators',
  productOwner: 'setup-product-owner',
  workingDays: 'setup-working-days',
  timeZone: 'setup-time-zone',
  promptAt: 'setup-prompt-time',
} as const;

export function teamChangedMessage({ team, byUserId, changes }: ContentOf<'team-changed'>): MessageView {
  const title = mrkdwn('team-changed', { person: person(byUserId), team: team.name });
  // Nothing is left of them once the person who made them was erased.
  if (changes.length === 0) return messageView([section(title)]);
  return messageView([lineList(title, changes.map(changeLine), () => mrkdwn('team-more-people'))]);
}

function changeLine(change: TeamChange): string {
  const { part } = change;
  switch (part) {
    case 'members': {
      const { was, became } = change;
      const joined = idsIn(change.joined);
      return mrkdwn('team-changed-members', { was, became, new: joined.length, people: people(joined) });
    }
    case 'facilitators':
    case 'productOwner':
      return lineOf(
        change,
        say(SETUP_LABELS[part]),
        (ids) => new Markup(mrkdwn('team-changed-people', { people: people(idsIn(ids)) })),
      );
    case 'workingDays':
      return lineOf(change, say(SETUP_LABELS[part]), (days) =>
        weekdayWords(idsIn(days).map(Number) as Weekday[]),
      );
    case 'name':
    case 'timeZone':
    case 'promptAt':
      return lineOf(change, say(SETUP_LABELS[part]), String);
    default:
      if (isThreshold(part)) {
        return lineOf(change, say('threshold-label', { threshold: part }), (share) =>
          percentTyped(Number(share)),
        );
      }
      return lineOf(change, say('setting-label', { setting: part }), (typed) => settingWords(part, typed));
  }
}

function lineOf(
  { part, was, became }: Exclude<TeamChange, { readonly part: 'members' }>,
  setting: string,
  words: (value: string) => string | Markup,
): string {
  const none = part === 'retentionMonths' ? say('team-changed-no-limit') : say('team-changed-none');
  const shown = (value: string) => (value === '' ? none : words(value));
  return mrkdwn('team-changed-line', { setting, was: shown(was), became: shown(became) });
}

function settingWords(setting: SettingName, typed: string): string {
  return SETTINGS[setting].field.kind === 'choice'
    ? say('setting-choice', { choice: typed as SettingChoice })
    : typed;
}

function isThreshold(part: string): part is ThresholdName {
  return part in THRESHOLDS;
}

function idsIn(value: string): string[] {
  return value === '' ? [] : value.split(' ');
}
