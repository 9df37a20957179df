/** How a card would fare when it is pulled in. It advises; the team decides. As mrkdwn. */
import type { PullInCheck, PullInSize } from '../app/cards/pull-in-check.ts';
import { mrkdwn } from './say.ts';
import { reasonSentence } from './undefined.ts';

const SIZES_MAX = 7;
/** Sizes below this chance, even done first, make no sense. */
const SENSIBLE_FROM = 0.05;
/** Below it a card is left unfinished more often than not. */
const EVEN_CHANCE = 0.5;

type Known = PullInSize & { readonly chance: { readonly afterOpenWork: number; readonly doneFirst: number } };

function isKnown(size: PullInSize): size is Known {
  return !('undefined' in size.chance);
}

/** For the form, before a size is chosen: each sensible size with its chances, then what they are based on. */
export function pullInCheckWords(check: PullInCheck): string {
  const known = check.sizes.filter(isKnown);
  const lines = known.length > 0 ? sizeLines(known, check) : [noChanceSentences(check.sizes[0])];
  return [`*${mrkdwn('pull-in-title')}*`, ...lines, mrkdwn('pull-in-record', check.pulledIn)].join('\n');
}

function sizeLines(sizes: readonly Known[], { openPoints, ownSprints }: PullInCheck): string[] {
  const sensible = sizes.filter(({ chance }) => chance.doneFirst >= SENSIBLE_FROM);
  const lines = spread(sensible, SIZES_MAX).map((size) => `• ${sizeLine(size, openPoints)}`);
  const tooLarge = sizes.filter((size) => !sensible.includes(size));
  const [first] = tooLarge;
  if (first) {
    lines.push(`• ${mrkdwn('pull-in-too-large', { points: first.estimatePoints, sizes: tooLarge.length })}`);
  }
  const queue =
    openPoints > 0 ? mrkdwn('pull-in-queue', { points: openPoints }) : mrkdwn('pull-in-nothing-open');
  return [...lines, `${mrkdwn('pull-in-basis', { sprints: ownSprints })} ${queue}`];
}

/** `3 points: a 62% chance after the open work, 90% if done first` */
function sizeLine({ estimatePoints, chance, record }: Known, openPoints: number): string {
  const comparable = 'undefined' in record || !record.comparable ? undefined : record;
  const details = {
    points: estimatePoints,
    first: chance.doneFirst,
    known: comparable ? ('some' as const) : ('none' as const),
    cards: comparable?.cards ?? 0,
    finished: comparable?.finished ?? 0,
  };
  return openPoints === 0
    ? mrkdwn('pull-in-size-alone', details)
    : mrkdwn('pull-in-size', { ...details, after: chance.afterOpenWork });
}

function noChanceSentences(size: PullInSize | undefined): string {
  const because = size && 'undefined' in size.chance ? size.chance.undefined : undefined;
  return [
    mrkdwn('pull-in-no-chance'),
    because ? reasonSentence(because) : mrkdwn('pull-in-empty-scale'),
    ...(because?.code === 'few-sprints' ? [mrkdwn('pull-in-import-hint')] : []),
  ].join(' ');
}

/** For the reply after a card came in: its own chance, kindly when it is small. */
export function pulledCardWords({ sizes: [size], openPoints }: PullInCheck): string {
  if (!size) return '';
  if (!isKnown(size)) return unknownChanceSentences(size);
  const { afterOpenWork: after, doneFirst: first } = size.chance;
  const wayOut = mrkdwn('pull-in-way-out');
  if (openPoints === 0) {
    return first < EVEN_CHANCE
      ? `${mrkdwn('pull-in-reply-alone-hardly', { first })} ${wayOut}`
      : mrkdwn('pull-in-reply-alone', { first });
  }
  if (after >= EVEN_CHANCE) return mrkdwn('pull-in-reply-fits', { after, first });
  return first >= EVEN_CHANCE
    ? `${mrkdwn('pull-in-reply-first-only', { after, first })} ${wayOut}`
    : `${mrkdwn('pull-in-reply-hardly', { after, first })} ${wayOut}`;
}

function unknownChanceSentences({ chance, record }: PullInSize): string {
  const sentences = [
    mrkdwn('pull-in-reply-unknown'),
    ...('undefined' in chance ? [reasonSentence(chance.undefined)] : []),
  ];
  if (!('undefined' in record)) {
    const { cards, finished, comparable, interval } = record;
    sentences.push(
      mrkdwn('pull-in-reply-record', {
        which: comparable ? 'comparable' : 'all',
        cards,
        finished,
        ...interval,
      }),
    );
  }
  return sentences.join(' ');
}

/** So many of them at most, evenly chosen, the first and the last among them. */
function spread<T>(items: readonly T[], most: number): T[] {
  if (items.length <= most) return [...items];
  return Array.from(
    { length: most },
    (_, i) => items[Math.round((i * (items.length - 1)) / (most - 1))] as T,
  );
}
