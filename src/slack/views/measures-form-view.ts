/** The form for closing time, reminder, scale and thresholds. Every field has a usual value already. */
import type { ModalView } from '@slack/types';
import type { Team } from '../../app/team/team.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import { typed } from '../../words/typed-text.ts';
import { encodeContext } from '../form-contexts.ts';
import { FIELDS, FORMS } from '../ids.ts';
import { bold, section } from './block-builders.ts';
import { textField, timeField } from './form-inputs.ts';
import { formView, withReplyTo } from './form-view.ts';

const THRESHOLDS: readonly {
  readonly field: keyof Thresholds;
  readonly label: string;
  readonly hint: string;
}[] = [
  {
    field: 'keptShareAtLeast',
    label: 'Kept share at least (%)',
    hint: 'How much of the commitment must be finished for a sprint to be kept.',
  },
  {
    field: 'surpriseRatioAtMost',
    label: 'Surprise ratio at most (%)',
    hint: 'Surprise work, measured by the commitment. Above this the sprint is missed.',
  },
  {
    field: 'pullInRatioAtMost',
    label: 'Pull-in ratio at most (%)',
    hint: 'Pulled-in work, measured by the commitment. Above this there is a note.',
  },
  {
    field: 'planShareAtLeast',
    label: 'Plan share at least (%)',
    hint: 'How much of what the sprint became had been planned. Below this there is a note.',
  },
  {
    field: 'estimateAccuracyAtLeast',
    label: 'Estimate accuracy at least (%)',
    hint: 'Below this there is a note.',
  },
  {
    field: 'estimateAccuracyAtMost',
    label: 'Estimate accuracy at most (%)',
    hint: 'Above this there is a note: estimating may cost more than it brings.',
  },
  {
    field: 'velocityGrowthFirstMark',
    label: 'Velocity growth, first mark (%)',
    hint: 'Velocity, measured by the baseline sprint. At this mark there is a note.',
  },
  {
    field: 'velocityGrowthLongRangeMark',
    label: 'Velocity growth, long-range mark (%)',
    hint: 'At this mark there is another note.',
  },
];

export function measuresFormView(team: Team, replyTo?: string): ModalView {
  const fields = FIELDS.measures;
  const frame = {
    callbackId: FORMS.measures,
    title: 'Scale and thresholds',
    submit: 'Save',
    context: encodeContext(withReplyTo({ teamId: team.id }, replyTo)),
  };
  return formView(frame, [
    section(
      `For ${typed(team.name)}. These are the usual values or those the team chose before; change only what you need.`,
    ),
    timeField({
      field: fields.closesAt,
      label: 'When a sprint closes on its last day',
      hint: 'In the team’s time zone. A plan may say otherwise for its sprint.',
      initial: team.closesAt,
    }),
    textField({
      field: fields.reminderAfterMinutes,
      label: 'Remind once, so many minutes after the daily prompt',
      hint: 'From 15 to 720.',
      initial: String(team.reminderAfterMinutes),
      maxLength: 5,
    }),
    textField({
      field: fields.scale,
      label: 'Planning scale',
      hint: 'The sizes that an estimate may have, rising, for example 1, 2, 3, 5, 8, 13, 21.',
      initial: team.scale.join(', '),
      maxLength: 300,
    }),
    textField({
      field: fields.retentionMonths,
      label: 'Keep the details of a sprint for so many months',
      hint: 'From 1 to 120. After that a sprint is reduced to its totals, for good: cards, answers, prompts and posts are deleted; verdicts, ratios and history stay. Leave it empty to keep everything.',
      initial: team.retentionMonths === undefined ? '' : String(team.retentionMonths),
      optional: true,
      maxLength: 5,
    }),
    section(bold('Thresholds, in percent')),
    ...THRESHOLDS.map(({ field, label, hint }) =>
      textField({ field, label, hint, initial: percentTyped(team.thresholds[field]), maxLength: 12 }),
    ),
  ]);
}

/** As one would type it: without the sign, and without the dust of binary fractions. */
function percentTyped(share: number): string {
  return String(Math.round(share * 1e10) / 1e8);
}
