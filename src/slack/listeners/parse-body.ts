/** Reads what is said of a body of work that is kept: its name with its points, a new name, an order, and the form. */
import type { BodyInput } from '../../app/bodies/keep-bodies.ts';
import { readNumber } from '../../app/read-number.ts';
import { Refusal, refuseIfAny } from '../../app/refusal.ts';
import { BODY_FIELDS } from '../views/body-views.ts';
import { parseForecastQuestion, readForecastFields } from './parse-advice-question.ts';

/** What may follow the points, the last of it: a growth or a share. */
const OPTION =
  /,? (?:(?:using|with|at) \d{1,3}(?:\.\d)? ?%(?: of (?:the|our) (?:velocity|time|sprints))?|(?:and )?(?:growing|grows|growth|grow|\+) ?(?:of |by )?[\d.]+ ?(?:(?:-|–|to) ?[\d.]+)?(?: points?)?(?: (?:a|an|per|each|every|with each) sprint)?)[,;.]?$/i;
/** A name in quotes or bare, then the points. */
const NAMED = /^(?:["“„'‘]([^"“”„'‘’]+)["“”'’],?|(.*?\S)[,:]?) (\d[\d.,]* ?(?:points?)?(?: left)?)$/i;
const KEEP_EXAMPLE = 'keep Lighthouse 80';

type NamedBody = BodyInput & { readonly name: string };

/**
 * @example parseNamedBody('Harbour lights 80 points, growing 5 a sprint') → { name: 'Harbour lights', leftPoints: 80, growth: { points: 5 } }
 * @throws Refusal `bad-argument`
 */
export function parseNamedBody(typed: string): NamedBody {
  let head = typed.replace(/\s+/g, ' ').trim();
  let options = '';
  for (let found = OPTION.exec(head); found; found = OPTION.exec(head)) {
    options = `${found[0]}${options}`;
    head = head.slice(0, found.index);
  }
  const [, quoted, bare, points] = NAMED.exec(head) ?? [];
  if (points === undefined) {
    throw new Refusal('bad-argument', {
      command: 'forecast',
      problem: { code: 'no-backlog' },
      example: KEEP_EXAMPLE,
    });
  }
  const { backlogPoints, growthPoints, growthMostPoints, sharePercent } = parseForecastQuestion(
    `${points}${options}`,
  );
  return {
    name: (quoted ?? bare ?? '').trim(),
    leftPoints: backlogPoints,
    ...(growthPoints === undefined ? {} : { growth: { points: growthPoints, mostPoints: growthMostPoints } }),
    ...(sharePercent === undefined ? {} : { sharePercent }),
  };
}

/** `Harbour lights to Beacons`, `1 to Beacons`. @throws Refusal `bad-argument` */
export function parseRename(typed: string): { readonly reference: string; readonly name: string } {
  const [, reference, name] =
    /^(.*\S)\s+(?:to|as|->|→)\s+(\S.*)$/i.exec(typed.replace(/\s+/g, ' ').trim()) ?? [];
  if (reference === undefined || name === undefined) {
    throw new Refusal('bad-argument', {
      command: 'forecast',
      problem: { code: 'body-new-name' },
      example: 'rename 1 to Beacons',
    });
  }
  return { reference, name };
}

/** `2 1`, or names with commas between. */
export function parseOrder(typed: string): string[] {
  const parts = /[,;]/.test(typed)
    ? typed.split(/[,;]/)
    : /^[\d\s]+$/.test(typed)
      ? typed.trim().split(/\s+/)
      : [typed];
  return parts.map((part) => part.trim()).filter((part) => part !== '');
}

/** What the form says; what is left empty is as usual. @throws Refusal `bad-input` */
export function readBodyFields(
  text: (field: string) => string,
): NamedBody & { readonly turn: number | undefined } {
  const { name, backlogPoints, growthPoints, sharePercent, turn } = BODY_FIELDS;
  const read = readForecastFields(text(backlogPoints), text(growthPoints), text(sharePercent), '');
  const typedTurn = text(turn).trim();
  const place = typedTurn === '' ? undefined : readNumber(typedTurn);
  if (place && 'problem' in place) refuseIfAny([{ field: turn, problem: place.problem }]);
  return {
    name: text(name),
    leftPoints: read.backlogPoints,
    growth:
      read.growthPoints === undefined
        ? 'measured'
        : { points: read.growthPoints, mostPoints: read.growthMostPoints },
    sharePercent: read.sharePercent ?? 100,
    turn: place && 'value' in place ? place.value : undefined,
  };
}
