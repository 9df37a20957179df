/** How a card would fare when it is pulled in, in words. It advises; the team decides. */
import type { PullInCheck, PullInSize } from '../../app/cards/pull-in-check.ts';
import { formatPoints, formatPointsWithUnit } from '../../sprint/points.ts';
import { wholePercentSpan } from '../../sprint/whole-percent.ts';
import { reasonSentence } from '../../words/undefined.ts';
import { COMMAND } from '../ids.ts';
import { bold, code } from './block-builders.ts';
import { chanceWords } from './chance-words.ts';
import { counted } from './sprint-words.ts';

const SIZES_MAX = 7;
/** Sizes below this chance, even done first, make no sense. */
const SENSIBLE_FROM = 0.05;
/** Less likely than not. */
const UNLIKELY_BELOW = 0.5;

const WAY_OUT =
  'If it can wait, leave it for the next planning; if not, split off a part that fits, or agree which card waits in its place.';

type Told = PullInSize & { readonly chance: { readonly afterOpenWork: number; readonly doneFirst: number } };

function isTold(size: PullInSize): size is Told {
  return !('undefined' in size.chance);
}

/** For the form, before a size is chosen: each sensible size with its chances, then what they rest on. */
export function pullInCheckWords(check: PullInCheck): string {
  const told = check.sizes.filter(isTold);
  const lines = told.length > 0 ? sizeLines(told, check) : [noChanceSentence(check.sizes[0])];
  return [bold('Will it be finished?'), ...lines, recordSentence(check)].join('\n');
}

function sizeLines(sizes: readonly Told[], { openPoints, ownSprints }: PullInCheck): string[] {
  const sensible = sizes.filter(({ chance }) => chance.doneFirst >= SENSIBLE_FROM);
  const lines = spread(sensible, SIZES_MAX).map((size) => `• ${sizeSentence(size, openPoints)}`);
  const tooLarge = sizes.filter((size) => !sensible.includes(size));
  const [first] = tooLarge;
  if (first) {
    const more = tooLarge.length > 1 ? ' or more' : '';
    lines.push(`• ${formatPoints(first.estimatePoints)} points${more}: hardly, even done first`);
  }
  return [
    ...lines,
    openPoints > 0
      ? `Told from ${counted(ownSprints, 'closed sprint')} of the team and the surprise work that cards of each size tend to hold. It takes the team for one queue: when the card’s owner is free and the others are not, look at “done first”. What is done first leaves the ${formatPointsWithUnit(openPoints)} of open work that much less time.`
      : `Told from ${counted(ownSprints, 'closed sprint')} of the team and the surprise work that cards of each size tend to hold. Nothing else is open.`,
  ];
}

/** `3 points: 62% likely after the open work, 90% when done first` */
function sizeSentence({ estimatePoints, chance, record }: Told, openPoints: number): string {
  const points = formatPointsWithUnit(estimatePoints);
  const known =
    'undefined' in record || !record.comparable
      ? ''
      : `; of ${record.cards} such cards ${record.finished} were finished`;
  if (openPoints === 0) return `${points}: ${chanceWords(chance.doneFirst)} likely${known}`;
  return `${points}: ${chanceWords(chance.afterOpenWork)} likely after the open work, ${chanceWords(chance.doneFirst)} when done first${known}`;
}

function noChanceSentence(size: PullInSize | undefined): string {
  const why =
    size && 'undefined' in size.chance ? reasonSentence(size.chance.undefined) : 'The scale is empty.';
  return `The chance isn’t known. ${why} More history: ${code(`${COMMAND} import`)}.`;
}

function recordSentence({ pulledIn: { cards, finished } }: Pick<PullInCheck, 'pulledIn'>): string {
  if (cards === 0)
    return 'No card has been pulled into a closed sprint yet, so there is no record to look at.';
  if (cards === 1) {
    return `One card has been pulled in before; it was ${finished === 1 ? '' : 'not '}finished in its sprint.`;
  }
  return `Of ${cards} cards pulled in before, ${finished === 1 ? '1 was' : `${finished} were`} finished in the same sprint.`;
}

/** For the reply after a card came in: its own chance, kindly when it is small. */
export function pulledCardWords(check: PullInCheck): string {
  const [size] = check.sizes;
  if (!size) return '';
  const { chance, record } = size;
  if ('undefined' in chance) {
    const known =
      'undefined' in record
        ? ''
        : ` Of ${record.cards} cards ${record.comparable ? 'like it' : 'pulled in before'}, ${record.finished} were finished; of the next ones, expect ${wholePercentSpan(record.interval)}.`;
    return `Whether it fits isn’t known. ${reasonSentence(chance.undefined)}${known}`;
  }
  const { afterOpenWork, doneFirst } = chance;
  const first = chanceWords(doneFirst);
  if (check.openPoints === 0) {
    return doneFirst < UNLIKELY_BELOW
      ? `By the team’s history it is unlikely to be finished by the end (${first}). ${WAY_OUT}`
      : `By the team’s history it is ${first} likely to be finished by the end.`;
  }
  const after = chanceWords(afterOpenWork);
  if (afterOpenWork >= UNLIKELY_BELOW) {
    return `By the team’s history it is ${after} likely to be finished by the end, ${first} when it is done before the open work.`;
  }
  if (doneFirst >= UNLIKELY_BELOW) {
    return `By the team’s history it is unlikely to be finished after the open work (${after}); done first it is ${first} likely, and the open work waits. ${WAY_OUT}`;
  }
  return `By the team’s history it is unlikely to be finished by the end (${after} after the open work, ${first} when done first). ${WAY_OUT}`;
}

/** So many of them at most, evenly chosen, the first and the last among them. */
function spread<T>(items: readonly T[], most: number): T[] {
  if (items.length <= most) return [...items];
  return Array.from(
    { length: most },
    (_, i) => items[Math.round((i * (items.length - 1)) / (most - 1))] as T,
  );
}
