/** Saying what is left: the command, the buttons of the daily prompt, and the answer form. */
import type { WordsOutcome } from '../../app/answering/answer-in-words.ts';
import type { AnswerOutcome } from '../../app/answering/record-answers.ts';
import { isDayWords } from '../../app/read-day.ts';
import { Refusal } from '../../app/refusal.ts';
import type { Place } from '../../app/team/place.ts';
import type { TeamOverview } from '../../app/watching/overview.ts';
import { answersValue, decodeValue, encodeValue, StaleControl, sprintDayValue } from '../button-values.ts';
import { answerContext } from '../form-contexts.ts';
import { ACTIONS, answerField, SHORTCUTS } from '../ids.ts';
import { type Asker, openForm } from '../listeners/asker.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { ANSWER_FIELDS, answerFormView } from '../views/answering/answer-form.ts';
import {
  CHOOSE_SPRINT,
  CHOOSE_SPRINT_FIELDS,
  chooseSprintFormView,
} from '../views/answering/choose-sprint-form.ts';
import { growthExplainedMessage, growthMessage } from '../views/answering/growth-message.ts';
import { dailyPromptMessage, leftOutMessage } from '../views/answering/prompt-messages.ts';
import { type Button, command, type Presser, readHeld, showForm } from './command.ts';

/** Which of its numbers is the month isn't clear, or it is no day that there is: `04/11`, `4.11`, `2026-11`. */
const LIKE_A_DAY = /^(?:\d{4}-\S*|\d{1,2}[./]\d{1,2}[./]\d*|\d{1,2}\/\d{1,2})$/i;

export const answer = command({
  word: 'answer',
  who: 'member',
  run: async (context, caller, rest) => {
    const { actor, place } = caller;
    const asked = dayIn(rest);
    if (asked) {
      const make = () => answerForm(context, caller, { place, ...asked });
      return showForm(context, caller, make, ({ private_metadata: held }) => {
        const { sprintId, day } = readHeld(answerContext, held);
        return { actionId: ACTIONS.openAnswerForm, value: encodeValue({ sprintId, day }) };
      });
    }
    const outcome = await context.useCases.answerInWords(actor, { text: rest, place, numbering: 'sprint' });
    await caller.tell(outcomeMessage(outcome));
    await tellLeftOut(caller, outcome);
  },
  forms: [
    {
      name: 'answer',
      fields: ANSWER_FIELDS,
      submit: async (useCases, { actor, fields, context }) => {
        const { sprintId, day, replyTo } = readHeld(answerContext, context);
        const answers = fields.answers();
        const isOpen = (cardId: string): boolean => fields.blockIds.includes(answerField('worked', cardId));
        const cardIds = fields.choices(ANSWER_FIELDS.moreCardIds);
        if (!cardIds.every(isOpen)) {
          const form = await useCases.answerForm(actor, { sprintId, day });
          const view = answerFormView(form, undefined, replyTo, { answers, cardIds });
          return { next: 'show', how: 'in place', view };
        }
        const outcome = await useCases.recordAnswers(actor, {
          sprintId,
          day,
          answers,
          takeCardIds: fields.choices(ANSWER_FIELDS.takeCardIds),
        });
        if (outcome.kind === 'recorded') {
          const { prompt } = outcome;
          const isShown = prompt.isInPrompt === true;
          return {
            next: 'close',
            // Made only where somebody reads it, which is a twentieth of an answer until it is acknowledged.
            get say() {
              return dailyPromptMessage(prompt);
            },
            isOnHome: true,
            isShown,
          };
        }
        const form = await useCases.answerForm(actor, { sprintId, day });
        return { next: 'show', how: 'in place', view: answerFormView(form, outcome, replyTo) };
      },
    },
    {
      name: CHOOSE_SPRINT,
      fields: CHOOSE_SPRINT_FIELDS,
      submit: async (useCases, { actor, fields }) => {
        const form = await useCases.answerForm(actor, {
          sprintId: fields.text(CHOOSE_SPRINT_FIELDS.sprintId),
        });
        return { next: 'show', how: 'in place', view: answerFormView(form) };
      },
    },
  ],
  shortcuts: { [SHORTCUTS.answerForMyCards]: { choose: chooseAnswer } },
  buttons: {
    [ACTIONS.openAnswerForm]: { press: pressAnswer },
    [ACTIONS.recordUnchanged]: recordsDay('recordUnchanged'),
    [ACTIONS.recordAway]: recordsDay('recordAway'),
    [ACTIONS.growthAllSurprise]: { press: recordExplained },
    [ACTIONS.growthAllDrift]: { press: recordExplained },
    [ACTIONS.growthKeepOther]: {
      press: (context, presser, value) =>
        decodeValue(answersValue, value)
          ? recordExplained(context, presser, value)
          : recordsDay('recordUnchanged').press(context, presser, value),
    },
    [ACTIONS.growthSomeOfEach]: {
      press: async (context, presser, value) => {
        const input = decodeValue(answersValue, value);
        if (!input) return pressAnswer(context, presser, value);
        const { useCases, client } = context;
        const { actor, triggerId, replyTo } = presser;
        // Records nothing as long as the growth is unexplained; says which cards grew by how much.
        const outcome = await useCases.recordAnswers(actor, input);
        if (outcome.kind === 'recorded') return presser.replace(dailyPromptMessage(outcome.prompt));
        const form = await useCases.answerForm(actor, { sprintId: input.sprintId, day: input.day });
        await openForm(client, triggerId, answerFormView(form, outcome, replyTo));
      },
    },
  },
  inOverview: {
    row: 'daily',
    when: ({ isMember, begun, sprint, myOpenCards }) =>
      isMember && begun && sprint !== undefined && myOpenCards.length > 0,
    actionId: ACTIONS.openAnswerForm,
    value: ({ sprint }) => encodeValue({ sprintId: sprint?.id ?? '' }),
    label: (team) => (isUnanswered(team) ? 'overview-answer-button' : 'overview-change-answer-button'),
    primary: isUnanswered,
  },
});

function isUnanswered({ promptState }: TeamOverview): boolean {
  return promptState === undefined || promptState === 'asked';
}

async function answerForm(
  { useCases }: ListenerContext,
  { actor, replyTo }: Asker,
  where: { readonly place?: Place; readonly sprintId?: string; readonly day?: string },
) {
  return answerFormView(await useCases.answerForm(actor, where), undefined, replyTo);
}

async function pressAnswer(...[context, presser, value]: Parameters<Button['press']>): Promise<void> {
  const { sprintId, day } = readHeld(sprintDayValue, value);
  const where = day === undefined ? { sprintId } : { sprintId, day };
  await openForm(context.client, presser.triggerId, await answerForm(context, presser, where));
}

/** The sprint in which the person has cards to answer for; when there are several, they choose. */
async function chooseAnswer({ useCases, client }: ListenerContext, presser: Presser): Promise<void> {
  const { actor, triggerId } = presser;
  const { teams } = await useCases.overview(actor, DIRECT);
  const running = teams.filter(({ begun, isMember }) => isMember && begun);
  const asked = running.filter(({ myOpenCards }) => myOpenCards.length > 0);
  const choices = (asked.length > 0 ? asked : running).flatMap(({ team, sprint }) =>
    sprint ? [{ team, sprint }] : [],
  );
  const [only, ...others] = choices;
  if (others.length > 0) return openForm(client, triggerId, chooseSprintFormView(choices));
  const where = only ? { sprintId: only.sprint.id } : { place: DIRECT };
  await openForm(client, triggerId, answerFormView(await useCases.answerForm(actor, where)));
}

/** A shortcut says of no place, so it is about all teams of the person, as in direct messages. */
const DIRECT: Place = { channelId: 'direct', isDirect: true };

/** The whole day, by one press. */
function recordsDay(useCase: 'recordUnchanged' | 'recordAway'): Button {
  return {
    press: async ({ useCases }, presser, value) => {
      const { sprintId, day } = readHeld(sprintDayValue, value);
      if (day === undefined) throw new StaleControl('button without a day');
      await presser.replace(dailyPromptMessage(await useCases[useCase](presser.actor, { sprintId, day })));
    },
  };
}

/** The button holds the answers with their explanation. */
async function recordExplained(
  ...[{ useCases }, presser, value]: Parameters<Button['press']>
): Promise<void> {
  const outcome = await useCases.recordAnswers(presser.actor, readHeld(answersValue, value));
  const isShown = outcome.kind === 'recorded' && outcome.prompt.isInPrompt;
  await presser.replace(isShown ? growthExplainedMessage() : outcomeMessage(outcome));
}

/** What follows an answer that was not given in a form. */
export function outcomeMessage(outcome: AnswerOutcome) {
  return outcome.kind === 'recorded' ? dailyPromptMessage(outcome.prompt) : growthMessage(outcome);
}

const SAYS_OFF = /\b(?:off|away|holidays?|vacation)\b/i;

/** Says which words weren't taken for an answer, if there were any. @param commandIn what a question is about */
export async function tellLeftOut(
  { tell }: Asker,
  { kind, leftOut = [] }: WordsOutcome,
  commandIn: (question: string) => string | undefined = () => undefined,
): Promise<void> {
  if (kind !== 'recorded' || leftOut.length === 0) return;
  const question = leftOut.find((words) => words.endsWith('?'));
  const isOff = leftOut.some((words) => SAYS_OFF.test(words));
  await tell(leftOutMessage(leftOut, isOff ? 'off' : question && commandIn(question)));
}

/** The day for which the form is wanted; undefined when it is an answer in words. */
function dayIn(rest: string): { day?: string } | undefined {
  if (rest === '' || rest.toLowerCase() === 'today') return {};
  if (isDayWords(rest)) return { day: rest };
  if (!LIKE_A_DAY.test(rest)) return undefined;
  throw new Refusal('bad-argument', {
    command: 'answer',
    problem: { code: 'answer-day' },
    example: 'yesterday',
  });
}
