/**
 * The form that sets a team up in its channel, or changes it, and the form for closing time, reminder, scale and
 * thresholds, in which every field has a usual value already.
 */
import type { InputBlock, ModalView } from '@slack/types';
import { DAYS_UNTIL_FINAL } from '../../../app/privacy/promised-times.ts';
import type { EndForm } from '../../../app/team/end-team.ts';
import type { LeaveForm } from '../../../app/team/leave-team.ts';
import type { SetupForm } from '../../../app/team/set-up-team.ts';
import {
  SETTING_NAMES,
  SETTINGS,
  type Setting,
  type SettingChoice,
  type SettingName,
  type TeamSettings,
} from '../../../app/team/settings.ts';
import type { Team } from '../../../app/team/team.ts';
import { canBeOff, THRESHOLD_NAMES } from '../../../sprint/thresholds.ts';
import { Markup, mrkdwn, say } from '../../../words/say.ts';
import { WEEKDAYS, weekdayName } from '../../../words/team.ts';
import { bold, context, section } from '../block-builders.ts';
import { type Choice, choiceField, peopleField, textField, tickField, timeField } from '../form-inputs.ts';
import { formView } from '../form-view.ts';

/** A field for each setting and each threshold, named after it. */
export const MEASURES_FIELDS: Readonly<Record<string, string>> = Object.fromEntries(
  [...SETTING_NAMES, ...THRESHOLD_NAMES].map((name) => [name, name]),
);

export const SETUP_FIELDS = {
  name: 'name',
  timeZone: 'timeZone',
  promptAt: 'promptAt',
  workingDays: 'workingDays',
  memberIds: 'memberIds',
  facilitatorIds: 'facilitatorIds',
  productOwnerId: 'productOwnerId',
  acceptsShared: 'acceptsShared',
} as const;

const NAME_MAX_LENGTH = 80;

/** A form has room for no more, which is some two hundred people. */
const SHOWN_MAX_LENGTH = 2_700;

function shownIn({ existing, memberIds, facilitatorIds, productOwnerId }: SetupForm): { shown?: string[] } {
  const shown = [...new Set([...memberIds, ...facilitatorIds, ...(productOwnerId ? [productOwnerId] : [])])];
  return existing && JSON.stringify(shown).length <= SHOWN_MAX_LENGTH ? { shown } : {};
}

export function setupFormView(form: SetupForm, replyTo?: string): ModalView {
  const fields = SETUP_FIELDS;
  const frame = {
    form: 'setup',
    title: say(form.existing ? 'setup-title-change' : 'setup-title'),
    submit: say(form.existing ? 'setup-submit-change' : 'setup-submit'),
    context: { channelId: form.channelId, ...shownIn(form) },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('setup-intro', { channel: new Markup(`<#${form.channelId}>`) })),
    ...(form.sprintsLeftBehind === undefined
      ? []
      : [section(mrkdwn('setup-deserted', { sprints: form.sprintsLeftBehind }))]),
    ...(form.isShared ? sharedBlocks(form) : []),
    context(mrkdwn('caution-set-up')),
    textField({
      field: fields.name,
      label: say('setup-name'),
      initial: form.name === '' ? say('setup-name-initial') : form.name,
      maxLength: NAME_MAX_LENGTH,
    }),
    peopleField({
      field: fields.memberIds,
      label: say('setup-members'),
      hint: say('setup-members-hint'),
      initial: form.memberIds,
    }),
    peopleField({
      field: fields.facilitatorIds,
      label: say('setup-facilitators'),
      hint: say('setup-facilitators-hint'),
      initial: form.facilitatorIds,
    }),
    peopleField({
      field: fields.productOwnerId,
      label: say('setup-product-owner'),
      optional: true,
      max: 1,
      initial: form.productOwnerId === undefined ? [] : [form.productOwnerId],
    }),
    textField({
      field: fields.timeZone,
      label: say('setup-time-zone'),
      hint: say('setup-time-zone-hint'),
      initial: form.timeZone,
      maxLength: 60,
    }),
    timeField({
      field: fields.promptAt,
      label: say('setup-prompt-time'),
      hint: say('setup-prompt-time-hint'),
      initial: form.promptAt,
    }),
    tickField({
      field: fields.workingDays,
      label: say('setup-working-days'),
      choices: WEEKDAYS.map((weekday) => ({ value: String(weekday), label: weekdayName(weekday) })),
      initial: form.workingDays.map(String),
    }),
  ]);
}

/** What people of another organisation would read, and the yes to that. */
function sharedBlocks({ acceptsShared }: SetupForm) {
  const yes = { value: 'yes', label: say('shared-channel-yes') };
  return [
    section(mrkdwn('shared-channel-seen')),
    tickField({
      field: SETUP_FIELDS.acceptsShared,
      label: say('shared-channel-label'),
      choices: [yes],
      initial: acceptsShared ? [yes.value] : [],
    }),
  ];
}

export function measuresFormView(team: Team, replyTo?: string): ModalView {
  const frame = {
    form: 'measures',
    title: say('measures-title'),
    submit: say('measures-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  return formView(frame, [
    section(mrkdwn('measures-intro', { team: team.name })),
    ...SETTING_NAMES.map((setting) => settingField(setting, team)),
    section(bold(mrkdwn('measures-thresholds'))),
    ...THRESHOLD_NAMES.map((threshold) =>
      textField({
        field: threshold,
        label: say('threshold-label', { threshold }),
        hint: say('threshold-hint', { threshold }),
        initial: percentTyped(team.thresholds[threshold]),
        optional: canBeOff(threshold),
        maxLength: 12,
      }),
    ),
  ]);
}

function settingField<Name extends SettingName>(setting: Name, team: TeamSettings): InputBlock {
  const { field, typed } = SETTINGS[setting as SettingName] as unknown as Setting<TeamSettings[Name]>;
  const options = {
    field: setting,
    label: say('setting-label', { setting }),
    hint: say('setting-hint', { setting }),
    initial: typed(team[setting]),
  };
  switch (field.kind) {
    case 'time':
      return timeField(options);
    case 'choice':
      return choiceField({ ...options, choices: field.choices.map(settingChoice) });
    case 'text':
      return textField({ ...options, ...field });
  }
}

function settingChoice(choice: SettingChoice): Choice {
  return { value: choice, label: say('setting-choice', { choice }) };
}

/** As one would type it: without the sign, and without the dust of binary fractions. */
export function percentTyped(share: number | undefined): string {
  return share === undefined ? '' : String(Math.round(share * 1e10) / 1e8);
}

export const END_FIELDS = { exportFirst: 'exportFirst' } as const;
/** The value of the tick. */
export const EXPORT_FIRST = 'export';

/** Says what follows before a team is ended, and offers to hand out what would be gone. */
export function endFormView(
  { team, sprintName, canBeExported, erasedOn }: EndForm,
  replyTo?: string,
): ModalView {
  const frame = {
    form: 'end',
    title: say('end-title'),
    submit: say('end-submit'),
    leave: say('end-keep'),
    context: { teamId: team.id },
    replyTo,
  };
  const follows = [
    mrkdwn('end-asked-no-more', { team: team.name }),
    ...(sprintName === undefined
      ? []
      : [mrkdwn('end-sprint-waits', { sprint: sprintName, days: DAYS_UNTIL_FINAL })]),
    mrkdwn('end-erased', { day: erasedOn }),
    mrkdwn('end-channel-told'),
  ];
  const offer = tickField({
    field: END_FIELDS.exportFirst,
    label: say('end-export'),
    choices: [{ value: EXPORT_FIRST, label: say('end-export-yes') }],
    initial: [EXPORT_FIRST],
    optional: true,
  });
  return formView(frame, [section(follows.join('\n')), ...(canBeExported ? [offer] : [])]);
}

/** Says what follows before somebody leaves. */
export function leaveFormView(
  { team, leftAlone, shared, isLastFacilitator, isMember, isProductOwner }: LeaveForm,
  replyTo?: string,
): ModalView {
  const frame = {
    form: 'leave',
    title: say('leave-title'),
    submit: say('leave-submit'),
    context: { teamId: team.id },
    replyTo,
  };
  const follows = [
    mrkdwn('leave-asked-no-more', { team: team.name }),
    ...(leftAlone === 0 ? [] : [mrkdwn('leave-alone', { cards: leftAlone })]),
    ...(shared === 0 ? [] : [mrkdwn('leave-shared', { cards: shared })]),
    ...(isLastFacilitator ? [mrkdwn('leave-last-facilitator')] : []),
    ...(isProductOwner ? [mrkdwn('leave-product-owner')] : []),
    ...(isMember ? [mrkdwn('leave-answers-stay')] : []),
  ];
  return formView(frame, [section(follows.join('\n'))]);
}
