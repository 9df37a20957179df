/**
 * Who is connected to the HTTP door, and who has to go when it gets too full. The platform's requests come whole and at
 * once, so whoever says nothing or holds a body back makes room for who comes next, and strangers can't keep others out.
 * Must never close a connection on which a signed request is at work.
 */
import type { ServerResponse } from 'node:http';
import type { Socket } from 'node:net';
import type { HttpLimits } from './http-limits.ts';
import type { BodyRoom } from './read-body.ts';

/** A request of the platform's has come by then, even over a poor line; under pressure, what is slower goes first. */
export const GRACE_MS = 250;

/** With more connections than this a network that isn't known is a crowd, and the first that has to make room. */
export const CROWD = 20;

/** Requests of a connection that wait for their answers. The platform asks one thing at a time. */
export const MOST_AT_ONCE = 10;

const MINUTE_MS = 60_000;
const MOST_STRANGERS = 10_000;

/** How long a network counts as the platform's, or its proxy's, after a signed request. */
const KNOWN_MS = 10 * 60_000;
const MOST_KNOWN = 1_000;

export interface Visitor {
  readonly socket: Socket;
  /** Undefined: a proxy that the operator has named, which has not said yet for whom it comes. */
  network: string | undefined;
  /** `silent`: no request yet; `asking`: its headers have come; `known`: the latest one was the platform's. */
  stage: 'silent' | 'asking' | 'known';
  /** When that began. */
  sinceMs: number;
  /** Requests that have no answer yet. */
  unanswered: number;
  /** The answers to signed requests that are being made. */
  readonly atWork: Set<ServerResponse>;
  /** Of a body that is on its way. */
  bodyBytes: number;
  /** Whether it has brought a signed request, or asked for the health. */
  isWelcome: boolean;
  /** Its connection was closed to make room. */
  hadToGo: boolean;
}

type VisitorLimits = Pick<HttpLimits, 'connections' | 'bodiesTogetherBytes' | 'inVain'>;

export type WhyGone = 'too many connections' | 'no room' | 'pipelined' | 'barred';

export class Visitors {
  readonly #limits: VisitorLimits;
  readonly #gone: (why: WhyGone) => void;
  readonly #nowMs: () => number;
  readonly #visitors = new Map<Socket, Visitor>();
  /** Visitors of each network. */
  readonly #counts = new Map<string | undefined, number>();
  /** Network → its latest signed request; the oldest first. */
  readonly #known = new Map<string, number>();
  /** Network → its connections that came to nothing, in the minute that began then; the oldest first. */
  readonly #inVain = new Map<string, { count: number; readonly sinceMs: number }>();
  #bodyBytes = 0;

  /**
   * @param gone hears of each visitor who had to make room
   * @param nowMs a clock that is not set back
   */
  constructor(
    limits: VisitorLimits,
    gone: (why: WhyGone) => void,
    nowMs: () => number = () => performance.now(),
  ) {
    this.#limits = limits;
    this.#gone = gone;
    this.#nowMs = nowMs;
  }

  enter(socket: Socket, network: string | undefined): void {
    const newcomer: Visitor = {
      socket,
      network,
      stage: 'silent',
      sinceMs: this.#nowMs(),
      unanswered: 0,
      atWork: new Set(),
      bodyBytes: 0,
      isWelcome: false,
      hadToGo: false,
    };
    if (this.#isBarred(network)) {
      this.#dismiss(newcomer, 'barred');
    } else if (this.#visitors.size >= this.#limits.connections) {
      // Its answer would come too late, when all the others wait for theirs.
      this.#dismiss(this.#firstToGo(this.#visitors.values()) ?? newcomer, 'too many connections');
    }
    if (newcomer.hadToGo) return;
    this.#visitors.set(socket, newcomer);
    this.#count(network, 1);
    socket.once('close', () => this.#forget(socket));
  }

  /** @returns undefined when it had to go */
  find(socket: Socket): Visitor | undefined {
    return this.#visitors.get(socket);
  }

  /** The headers of a request have come. @returns false when it had to go, as it asks for too much at once */
  asks(visitor: Visitor, network: string | undefined): boolean {
    if (visitor.unanswered >= MOST_AT_ONCE && visitor.atWork.size === 0) {
      this.bar(visitor.network);
      this.#dismiss(visitor, 'pipelined');
      return false;
    }
    visitor.unanswered += 1;
    this.#count(visitor.network, -1);
    this.#count(network, 1);
    visitor.network = network;
    this.#enterStage(visitor, 'asking');
    return true;
  }

  /** The request is the platform's: it will be answered, whoever else comes. */
  isGenuine(visitor: Visitor, response: ServerResponse): void {
    visitor.atWork.add(response);
    visitor.isWelcome = true;
    if (visitor.network === undefined) return;
    this.#known.delete(visitor.network);
    this.#known.set(visitor.network, this.#nowMs());
    for (const [longestAgo] of this.#known) {
      if (this.#known.size <= MOST_KNOWN) break;
      this.#known.delete(longestAgo);
    }
  }

  isAnswered(visitor: Visitor, response: ServerResponse): void {
    visitor.unanswered -= 1;
    const wasGenuine = visitor.atWork.delete(response);
    this.#enterStage(visitor, wasGenuine ? 'known' : 'silent');
  }

  /** Whether no signed request has come from the network since the start, and it is no proxy that the operator has named. */
  #isStranger(network: string | undefined): boolean {
    return network !== undefined && !this.#known.has(network);
  }

  /** A network that makes a hundred times the work of others is let in no more for a while, unless it is no stranger. */
  bar(network: string | undefined): void {
    this.#cameInVain(network, this.#limits.inVain);
  }

  /** Room for a visitor's body: if need be, that of others, who have to go. */
  roomFor(visitor: Visitor): BodyRoom {
    return {
      take: (bytes) => this.#takeRoom(visitor, bytes),
      giveBack: (bytes) => this.#giveRoomBack(visitor, bytes),
    };
  }

  #takeRoom(visitor: Visitor, bytes: number): boolean {
    while (this.#bodyBytes + bytes > this.#limits.bodiesTogetherBytes) {
      const others = [...this.#visitors.values()].filter((other) => other !== visitor && other.bodyBytes > 0);
      const leaving = this.#firstToGo(others);
      if (leaving === undefined) return false;
      this.#dismiss(leaving, 'no room');
    }
    if (!this.#visitors.has(visitor.socket)) return false;
    visitor.bodyBytes += bytes;
    this.#bodyBytes += bytes;
    return true;
  }

  #giveRoomBack(visitor: Visitor, bytes: number): void {
    // Who is gone has left nothing behind.
    if (!this.#visitors.has(visitor.socket)) return;
    visitor.bodyBytes -= bytes;
    this.#bodyBytes -= bytes;
  }

  #enterStage(visitor: Visitor, stage: Visitor['stage']): void {
    visitor.stage = stage;
    visitor.sinceMs = this.#nowMs();
  }

  /**
   * A crowd before anybody else, so that one address can't take all the room; then the slow before the quick; then strangers
   * before a network of which signed requests came; then who has waited longest.
   */
  #firstToGo(candidates: Iterable<Visitor>): Visitor | undefined {
    const nowMs = this.#nowMs();
    let first: Visitor | undefined;
    let lowest: readonly number[] = [];
    for (const visitor of candidates) {
      if (visitor.atWork.size > 0) continue;
      const isKnown = this.#isKnown(visitor.network, nowMs);
      const isCrowd = !isKnown && (this.#counts.get(visitor.network) ?? 0) > CROWD;
      const rank = [isCrowd ? 0 : 1, patienceWith(visitor, nowMs), isKnown ? 1 : 0, visitor.sinceMs];
      if (first !== undefined && !isLower(rank, lowest)) continue;
      first = visitor;
      lowest = rank;
    }
    return first;
  }

  #isKnown(network: string | undefined, nowMs: number): boolean {
    if (network === undefined) return true;
    return nowMs - (this.#known.get(network) ?? Number.NEGATIVE_INFINITY) < KNOWN_MS;
  }

  #dismiss(visitor: Visitor, why: WhyGone): void {
    visitor.hadToGo = true;
    this.#forget(visitor.socket);
    visitor.socket.destroy();
    this.#gone(why);
  }

  #forget(socket: Socket): void {
    const visitor = this.#visitors.get(socket);
    if (visitor === undefined) return;
    this.#visitors.delete(socket);
    this.#count(visitor.network, -1);
    this.#bodyBytes -= visitor.bodyBytes;
    if (!visitor.isWelcome) this.#cameInVain(visitor.network, 1);
  }

  #cameInVain(network: string | undefined, times: number): void {
    if (network === undefined || !this.#isStranger(network)) return;
    const nowMs = this.#nowMs();
    const before = this.#inVain.get(network);
    if (before && nowMs - before.sinceMs < MINUTE_MS) {
      before.count += times;
      return;
    }
    this.#inVain.delete(network);
    this.#inVain.set(network, { count: times, sinceMs: nowMs });
    const [longestAgo] = this.#inVain.keys();
    if (this.#inVain.size > MOST_STRANGERS && longestAgo !== undefined) this.#inVain.delete(longestAgo);
  }

  #isBarred(network: string | undefined): boolean {
    if (network === undefined || !this.#isStranger(network)) return false;
    const { count, sinceMs } = this.#inVain.get(network) ?? { count: 0, sinceMs: 0 };
    return count >= this.#limits.inVain && this.#nowMs() - sinceMs < MINUTE_MS;
  }

  #count(network: string | undefined, change: 1 | -1): void {
    const count = (this.#counts.get(network) ?? 0) + change;
    if (count > 0) this.#counts.set(network, count);
    else this.#counts.delete(network);
  }
}

/** Closing a connection of the platform's that waits could lose the request that is just on its way. */
function patienceWith({ stage, sinceMs }: Visitor, nowMs: number): number {
  if (stage === 'known') return 3;
  if (nowMs - sinceMs < GRACE_MS) return 2;
  return stage === 'asking' ? 1 : 0;
}

function isLower(a: readonly number[], b: readonly number[]): boolean {
  const different = a.findIndex((value, index) => value !== b[index]);
  return different >= 0 && (a[different] ?? 0) < (b[different] ?? 0);
}
