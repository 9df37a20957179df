/** Keeping bodies of work by name, saying what is left of them, and letting them go. For the product owner and facilitators. */
import { randomUUID } from 'node:crypto';
import type { KeptAdvice } from '../advice/advice.ts';
import { adviceBase } from '../advice/advice-of.ts';
import { lockedAudience } from '../history/closed-sprint.ts';
import { pastSprints } from '../history/team-history.ts';
import type { AppDependencies } from '../ports/app-dependencies.ts';
import type { Reading, Transaction } from '../ports/store.ts';
import { Refusal, refuseIfAny } from '../refusal.ts';
import { type Audience, audienceBy, audienceInTeam, type TeamReference, todayOf } from '../team/place.ts';
import type { Actor, Team } from '../team/team.ts';
import { requireBodyKeeper } from './body-keeper.ts';
import {
  BODY_NAME_MAX_LENGTH,
  type BodyOfWork,
  calledSo,
  doneLatestFirst,
  isSameName,
  isToDo,
  MOST_DONE_BODIES,
} from './body-of-work.ts';
import { bodyProblems, turnProblems } from './body-problems.ts';
import { tellDates } from './forecast-bodies.ts';
import { keptOf } from './kept-advice.ts';

/** What may be said of a body of work; what is left out stays as it is, and is as usual for a new one. */
export interface BodyInput {
  readonly leftPoints?: number | undefined;
  /** `mostPoints`: in 8 of 10 cases the growth lies between the two. */
  readonly growth?:
    | { readonly points: number; readonly mostPoints?: number | undefined }
    | 'measured'
    | undefined;
  /** 100: all of the sprints, in its turn. */
  readonly sharePercent?: number | undefined;
  /** Its place among those still to do, from 1. */
  readonly turn?: number | undefined;
}

/** A body by its id, with a new name perhaps; or by what it is called, which keeps it when it is new. */
export type KeepInput = BodyInput &
  (
    | { readonly bodyId: string; readonly name?: string | undefined }
    | (TeamReference & { readonly name: string })
  );

export interface KeptBodyReply {
  readonly team: Team;
  readonly body: BodyOfWork;
  /** As it was; undefined: it is new. */
  readonly before: BodyOfWork | undefined;
  readonly advice: KeptAdvice;
}

/** @throws Refusal `bad-input` (name, backlogPoints, growthPoints, sharePercent, turn), `not-a-body-keeper`, `no-such-body` */
export async function keepBody(
  deps: AppDependencies,
  actor: Actor,
  input: KeepInput,
): Promise<KeptBodyReply> {
  return deps.store.transaction(async (tx) => {
    const audience = await keeperOf(tx, actor, input);
    const { team } = audience;
    const toDo = (await tx.read.bodiesOf(team.id)).filter(isToDo);
    const name = (input.name ?? '').replace(/\s+/g, ' ').trim();
    const before = 'bodyId' in input ? toDo.find(({ id }) => id === input.bodyId) : calledExactly(toDo, name);
    if ('bodyId' in input && !before) throw noSuchBody(toDo);
    const now = deps.clock.now();
    const base = before ?? newBody(team, toDo, now);
    const isRenamed = 'bodyId' in input && name !== '';
    const body: BodyOfWork = {
      ...base,
      ...(isRenamed || !before ? { name } : {}),
      ...said(input, now),
    };
    const others = toDo.filter(({ id }) => id !== body.id);
    refuseIfAny([...bodyProblems(body, others), ...turnProblems(input.turn)]);
    await tx.write.bodies.save(body);
    if (input.turn !== undefined) await takeTurn(tx, body, others, input.turn);
    return { team, body, before, advice: await told(tx, audience, now) };
  });
}

function newBody({ id: teamId }: Team, toDo: readonly BodyOfWork[], now: Date): BodyOfWork {
  return {
    id: randomUUID(),
    teamId,
    name: '',
    place: Math.max(0, ...toDo.map(({ place }) => place)) + 1,
    leftPoints: Number.NaN,
    growthPoints: undefined,
    growthMostPoints: undefined,
    sharePercent: undefined,
    keptAt: now,
    saidAt: now,
    doneAt: undefined,
  };
}

/** @param others in their order */
async function takeTurn(
  tx: Transaction,
  body: BodyOfWork,
  others: readonly BodyOfWork[],
  turn: number,
): Promise<void> {
  const ordered = others.toSpliced(turn - 1, 0, body);
  for (const [i, one] of ordered.entries()) await tx.write.bodies.save({ ...one, place: i + 1 });
}

function said({ leftPoints, growth, sharePercent }: BodyInput, now: Date): Partial<BodyOfWork> {
  const { points, mostPoints } = growth === 'measured' ? {} : (growth ?? {});
  return {
    ...(leftPoints === undefined ? {} : { leftPoints, saidAt: now }),
    ...(growth === undefined ? {} : { growthPoints: points, growthMostPoints: mostPoints }),
    ...(sharePercent === undefined ? {} : { sharePercent: sharePercent === 100 ? undefined : sharePercent }),
  };
}

/** By its name or its number in the list, but not by the beginning of its name: that may be another. */
function calledExactly(toDo: readonly BodyOfWork[], name: string): BodyOfWork | undefined {
  return /^\d{1,3}$/.test(name) ? calledSo(toDo, name) : toDo.find((one) => isSameName(one.name, name));
}

/** Finished; or given up, or kept by mistake, and forgotten with all that was told of it. */
export type BodyEnd = 'done' | 'removed';

/** One by its id, or as somebody calls it: its name, its number in the list, or the beginning of its name. */
type BodyReference = { readonly bodyId: string } | (TeamReference & { readonly reference: string });

export interface EndedBody {
  readonly team: Team;
  readonly body: BodyOfWork;
  readonly how: BodyEnd;
  /** With what was told of it from the first day on, before it is forgotten. */
  readonly told: KeptAdvice['done'][number]['told'];
}

/** @throws Refusal `not-a-body-keeper`, `no-such-body` */
export async function endBody(
  deps: AppDependencies,
  actor: Actor,
  input: BodyReference & { readonly how: BodyEnd },
): Promise<EndedBody> {
  return deps.store.transaction(async (tx) => {
    const audience = await keeperOf(tx, actor, input);
    const { team, members } = audience;
    const body = await named(tx.read, team, input);
    const now = deps.clock.now();
    const told = (await tx.read.toldDatesOf(team.id)).filter(({ bodyId }) => bodyId === body.id);
    const ended = { ...body, doneAt: now };
    if (input.how === 'removed') await tx.write.bodies.remove(body.id);
    else await saveDone(tx, ended);
    await tellDates(tx, team, members, now);
    return { team, body: ended, how: input.how, told };
  });
}

async function saveDone(tx: Transaction, ended: BodyOfWork): Promise<void> {
  await tx.write.bodies.save(ended);
  const done = doneLatestFirst(await tx.read.bodiesOf(ended.teamId));
  for (const { id } of done.slice(MOST_DONE_BODIES)) await tx.write.bodies.remove(id);
}

/** @throws Refusal `bad-input` (name), `not-a-body-keeper`, `no-such-body` */
export async function renameBody(
  deps: AppDependencies,
  actor: Actor,
  { reference, name, ...team }: TeamReference & { readonly reference: string; readonly name: string },
): Promise<KeptBodyReply> {
  const { id } = await deps.store.transaction(async (tx) => {
    const audience = await audienceBy(tx.read, actor, team);
    requireBodyKeeper(audience);
    return named(tx.read, audience.team, { ...team, reference });
  });
  if (name.trim() === '') {
    throw new Refusal('bad-input', {
      problems: [{ field: 'name', problem: { code: 'body-name', most: BODY_NAME_MAX_LENGTH } }],
    });
  }
  return keepBody(deps, actor, { bodyId: id, name });
}

/**
 * Puts those that are named first, in that order; the others follow as they were.
 *
 * @throws Refusal `not-a-body-keeper`, `no-such-body`
 */
export async function orderBodies(
  deps: AppDependencies,
  actor: Actor,
  { references, ...team }: TeamReference & { readonly references: readonly string[] },
): Promise<KeptAdvice> {
  return deps.store.transaction(async (tx) => {
    const audience = await keeperOf(tx, actor, team);
    const toDo = (await tx.read.bodiesOf(audience.team.id)).filter(isToDo);
    const first = references.map((reference) => {
      const found = calledSo(toDo, reference);
      if (!found || reference.trim() === '') throw noSuchBody(toDo);
      return found;
    });
    const ordered = [...new Set([...first, ...toDo])];
    for (const [i, body] of ordered.entries()) await tx.write.bodies.save({ ...body, place: i + 1 });
    return told(tx, audience, deps.clock.now());
  });
}

export interface BodyForm {
  readonly team: Team;
  /** Undefined: for a new one. */
  readonly body: BodyOfWork | undefined;
  /** Its place among those still to do, from 1. */
  readonly turn: number | undefined;
}

/** What the form begins with. @throws Refusal `not-a-body-keeper`, `no-such-body` */
export async function bodyForm(
  deps: AppDependencies,
  actor: Actor,
  reference: TeamReference | { readonly bodyId: string },
): Promise<BodyForm> {
  return deps.store.transaction(async (tx) => {
    const audience = await audienceOfBody(tx.read, actor, reference);
    requireBodyKeeper(audience);
    const { team } = audience;
    if (!('bodyId' in reference)) return { team, body: undefined, turn: undefined };
    const body = await named(tx.read, team, reference);
    const toDo = (await tx.read.bodiesOf(team.id)).filter(isToDo);
    return { team, body, turn: toDo.findIndex(({ id }) => id === body.id) + 1 };
  });
}

async function told(tx: Transaction, audience: Audience, now: Date): Promise<KeptAdvice> {
  const { team, members } = audience;
  const forecasts = await tellDates(tx, team, members, now);
  const base = adviceBase(team, await pastSprints(tx, team), todayOf(team, now));
  const question = { about: 'kept' } as const;
  return { ...base, question, ...(await keptOf(tx, team, forecasts)), askerMayKeep: true };
}

async function named(read: Reading, team: Team, reference: BodyReference): Promise<BodyOfWork> {
  const toDo = (await read.bodiesOf(team.id)).filter(isToDo);
  const found =
    'bodyId' in reference
      ? toDo.find(({ id }) => id === reference.bodyId)
      : calledSo(toDo, reference.reference);
  if (!found) throw noSuchBody(toDo);
  return found;
}

function noSuchBody(toDo: readonly BodyOfWork[]): Refusal {
  return new Refusal('no-such-body', { known: toDo.map(({ name }) => name) });
}

/** The team locked, by somebody who may change what it keeps. */
async function keeperOf(
  tx: Transaction,
  actor: Actor,
  reference: TeamReference | { readonly bodyId: string },
): Promise<Audience> {
  const audience = await lockedAudience(
    tx,
    actor,
    'bodyId' in reference ? { teamId: await teamIdOf(tx.read, reference.bodyId) } : reference,
  );
  requireBodyKeeper(audience);
  return audience;
}

async function audienceOfBody(
  read: Reading,
  actor: Actor,
  reference: TeamReference | { readonly bodyId: string },
): Promise<Audience> {
  return 'bodyId' in reference
    ? audienceInTeam(read, actor, await teamIdOf(read, reference.bodyId))
    : audienceBy(read, actor, reference);
}

async function teamIdOf(read: Reading, bodyId: string): Promise<string> {
  return (await read.teamIdOfBody(bodyId)) ?? '';
}
