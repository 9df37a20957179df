/** The retrospective sheet in words: in mrkdwn for messages, plain for the printable page. They speak of cards and of nobody. */
import type { RetroContent, RetroExperiment, RetroQuestion } from '../app/retro/retro-content.ts';
import { CARD_EVENTS, type CardEvent, type PlanEvent, type TimelineDay } from '../app/retro/timeline.ts';
import type { Lesson, TellingCard } from '../sprint/telling-cards.ts';
import { cardGrowth, cardNameIn } from './cards.ts';
import { evidenceSentence } from './evidence.ts';
import { experimentResultWords, experimentWords } from './experiments.ts';
import type { Form } from './language.ts';
import { correctionWords } from './plan-changes.ts';
import { inForm, Markup, say, sayCode } from './say.ts';
import { mrkdwnOf, shortened } from './typed-text.ts';
import { verdictSentence } from './verdict.ts';

/** How much is said in one line. */
interface Brevity {
  /** Of each kind of event on a day. */
  readonly cards: number;
  /** Characters of a card's name, and of a note. */
  readonly name: number;
  readonly note: number;
}

/** For one screen. */
export const BRIEF: Brevity = { cards: 2, name: 40, note: 60 };
/** For a page. */
export const AT_LENGTH: Brevity = { cards: 12, name: 100, note: 300 };

/** The verdict, or why there is none, as plain text. */
export function retroHeadline({ verdict, sprint, timeline }: RetroContent): string {
  if (verdict)
    return say('verdict-title', { sprint: sprint.name, verdict: verdictSentence(verdict.summary) });
  if (sprint.state === 'open') return say('retro-running', { sprint: sprint.name, endsOn: sprint.endsOn });
  if (sprint.state === 'cancelled') return say('retro-cancelled', { sprint: sprint.name });
  return say('retro-imported', { sprint: sprint.name, days: timeline.length > 0 ? 'known' : 'unknown' });
}

/** What stands in place of the days; undefined when there are some, and when the headline has said why there are none. */
export function retroWithoutDays({ verdict, sprint, timeline }: RetroContent): string | undefined {
  const isImported = verdict === undefined && sprint.state === 'closed';
  return timeline.length > 0 || isImported ? undefined : say('retro-nothing-happened');
}

/** `Wed 4 Nov – pulled in: Tide gauge (3 points); finished: Berth map` */
export function retroDayLine(
  { day, events }: TimelineDay,
  { cards }: RetroContent,
  form: Form,
  brevity: Brevity,
): string {
  const words = inForm(form);
  const changes = events.filter((event) => event.kind === 'plan');
  const said = [
    ...(changes.length === 0 ? [] : [planWords(changes)]),
    ...CARD_EVENTS.flatMap((kind) => {
      const some = events.filter((event): event is CardEvent => event.kind === kind);
      return some.length === 0 ? [] : [words('retro-event', { kind, cards: listed(some, cardWords) })];
    }),
  ];
  return words('retro-day', {
    day,
    events: new Markup(
      said.reduce((before, event) =>
        words('retro-events', { before: new Markup(before), event: new Markup(event) }),
      ),
    ),
  });

  function planWords(of: readonly PlanEvent[]): string {
    const said = listed(of, ({ change }) => new Markup(correctionWords(change, cards, form)));
    return words('retro-plan-changed', { changes: said });
  }

  function cardWords(event: CardEvent): string | Markup {
    const card = cardNameIn(form, event.cardId, cards, brevity.name);
    const facts = factsOf(event);
    return facts.length === 0 ? card : new Markup(words('retro-card-with', { card, facts }));
  }

  function factsOf(event: CardEvent): (string | Markup)[] {
    const { kind, cardId, note } = event;
    const points = cards.find((one) => one.cardId === cardId)?.estimatePoints ?? 0;
    return [
      ...(kind === 'pulled-in' ? [say('retro-points', { points })] : []),
      ...cardGrowth(event),
      ...(note === '' ? [] : [new Markup(words('retro-note', { note: shortened(note, brevity.note) }))]),
    ];
  }

  function listed<One>(all: readonly One[], one: (of: One) => string | Markup): (string | Markup)[] {
    const shown = all.slice(0, brevity.cards).map(one);
    const more = all.length - shown.length;
    return more === 0 ? shown : [...shown, say('retro-more', { count: more })];
  }
}

/** `Tide gauge: grew most (surprise work +3), blocked for longest (4 evenings)` */
export function tellingCardLine(
  { cardId, lessons }: TellingCard,
  { cards }: RetroContent,
  form: Form,
  brevity: Brevity,
): string {
  const card = cardNameIn(form, cardId, cards, brevity.name);
  return inForm(form)('retro-card', { card, lessons: lessons.map(lessonWords) });
}

function lessonWords(lesson: Lesson): string {
  return lesson.code === 'grew-most'
    ? say('retro-lesson-grew-most', { growth: cardGrowth(lesson) })
    : sayCode('retro-lesson', lesson);
}

export function retroExperimentLine({ experiment, result }: RetroExperiment, form: Form): string {
  const plain = result ? experimentResultWords(result) : experimentWords(experiment);
  return form === 'plain' ? plain : mrkdwnOf(plain);
}

/** `1. One card holds 8 of the 11 points not finished … Could a part of it have been finished by itself?` */
export function retroQuestionLine(
  question: RetroQuestion,
  number: number,
  { cards }: RetroContent,
  form: Form,
): string {
  const words = inForm(form);
  const fact =
    question.code === 'no-plan' ? words('evidence-no-plan') : evidenceSentence(question, cards, form);
  const ask = words(`evidence-${question.code}-ask`);
  return words('retro-question', { number, fact: new Markup(fact), ask: new Markup(ask) });
}
