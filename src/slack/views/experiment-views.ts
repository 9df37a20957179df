/** What a team tries: the form in which it is kept, the list, and the replies. Nobody is named. */
import type { ModalView } from '@slack/types';
import { dayAt } from '../../app/clock/local-time.ts';
import type { EndedExperiment, ExperimentList } from '../../app/experiments/end-experiment.ts';
import {
  DIRECTIONS,
  EXPERIMENT_TEXT_MAX_LENGTH,
  isOpen,
  OUTCOMES,
} from '../../app/experiments/experiment.ts';
import type { Tried, TryForm } from '../../app/experiments/try-experiment.ts';
import type { ContentOf } from '../../app/posting/post-kinds.ts';
import { RATIO_IDS } from '../../sprint/sprint-ratios.ts';
import { experimentResultWords, experimentWords, type Suggestion } from '../../words/experiments.ts';
import { mrkdwn, say } from '../../words/say.ts';
import { mrkdwnOf } from '../../words/typed-text.ts';
import { encodeValue } from '../button-values.ts';
import { ACTIONS } from '../ids.ts';
import { actions, bold, button, context, lead, section } from './block-builders.ts';
import { choiceField, textField } from './form-inputs.ts';
import { formView } from './form-view.ts';
import { lineList } from './line-sections.ts';
import { type MessageView, messageView } from './message-view.ts';

export const TRY_FIELDS = { text: 'text', ratio: 'ratio', direction: 'direction' } as const;

export function tryFormView(
  { team, changing }: TryForm,
  { text, ratio, direction }: Suggestion,
  replyTo?: string,
): ModalView {
  const frame = {
    form: 'try',
    title: say('try-title'),
    submit: say('try-submit'),
    context: { teamId: team.id, ...(changing && { changes: changing.id }) },
    replyTo,
  };
  return formView(frame, [
    ...(changing ? [section(mrkdwn('try-changes', { text: changing.text }))] : []),
    section(mrkdwn('try-intro', { team: team.name })),
    textField({
      field: TRY_FIELDS.text,
      label: say('try-text'),
      hint: say('try-text-hint'),
      initial: text,
      maxLength: EXPERIMENT_TEXT_MAX_LENGTH,
    }),
    choiceField({
      field: TRY_FIELDS.ratio,
      label: say('try-ratio'),
      choices: RATIO_IDS.map((id) => ({ value: id, label: say('ratio-title', { ratio: id }) })),
      initial: ratio,
    }),
    choiceField({
      field: TRY_FIELDS.direction,
      label: say('try-direction'),
      choices: DIRECTIONS.map((way) => ({
        value: way,
        label: say('try-direction-choice', { direction: way }),
      })),
      initial: direction,
    }),
  ]);
}

const BUTTONS = {
  keep: ACTIONS.keepExperiment,
  change: ACTIONS.changeExperiment,
  drop: ACTIONS.dropExperiment,
} as const;

export function experimentQuestionMessage({ result }: ContentOf<'experiment-question'>): MessageView {
  const { id, text, ended } = result.experiment;
  if (ended) return messageView([section(mrkdwn('experiment-ended', { text, outcome: ended.how }))]);
  const value = encodeValue({ experimentId: id });
  return messageView([
    lead(say('experiment-question', { text })),
    section(mrkdwnOf(experimentResultWords(result))),
    actions(
      OUTCOMES.map((outcome) =>
        button(say('experiment-outcome', { outcome }), { actionId: BUTTONS[outcome], value }),
      ),
    ),
    context(mrkdwn('experiment-question-means')),
  ]);
}

export function experimentKeptMessage({ experiment }: Tried): MessageView {
  return messageView([
    section(mrkdwn('experiment-kept', { experiment: experimentWords(experiment) })),
    section(mrkdwn('experiment-kept-next')),
  ]);
}

export function experimentEndedMessage({ experiment: { text }, outcome }: EndedExperiment): MessageView {
  return messageView([section(mrkdwn('experiment-ended', { text, outcome }))]);
}

export function experimentsMessage({ team, experiments, askerIsFacilitator }: ExperimentList): MessageView {
  const open = experiments.filter(isOpen);
  const more = (count: number): string => mrkdwn('experiments-more', { count });
  const openLines = open.map((one, i) =>
    mrkdwn('experiments-open', {
      number: i + 1,
      experiment: experimentWords(one),
      since: dayOf(one.begunAt),
    }),
  );
  const pastLines = experiments.toReversed().flatMap((one) => {
    const { ended } = one;
    if (!ended) return [];
    const about = { experiment: experimentWords(one), outcome: ended.how, at: dayOf(ended.at) };
    return [`• ${mrkdwn('experiments-past', about)}`];
  });
  return messageView([
    lead(say('experiments-title', { team: team.name })),
    open.length === 0 ? section(mrkdwn('experiments-none')) : lineList('', openLines, more),
    ...(pastLines.length === 0 ? [] : [lineList(bold(mrkdwn('experiments-past-title')), pastLines, more)]),
    ...(open.length === 0 ? [context(mrkdwn('experiments-none-next'))] : []),
    ...(open.length > 0 && askerIsFacilitator ? [context(mrkdwn('experiments-how'))] : []),
  ]);

  function dayOf(instant: Date): string {
    return dayAt(instant, team.timeZone);
  }
}
