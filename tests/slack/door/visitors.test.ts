/** Who has to go when the HTTP door gets too full: each rule by itself. `crowded-door.test.ts` has the real thing. */
import { EventEmitter } from 'node:events';
import type { ServerResponse } from 'node:http';
import type { Socket } from 'node:net';
import { beforeEach, describe, expect, it } from 'vitest';
import { CROWD, GRACE_MS, Visitors, type WhyGone } from '../../../src/slack/door/visitors.ts';

const LIMITS = { connections: 3, bodiesTogetherBytes: 100, inVain: 100 };

let nowMs: number;
let gone: WhyGone[];
let visitors: Visitors;
let closed: string[];
beforeEach(() => {
  nowMs = 1_000_000;
  gone = [];
  closed = [];
  visitors = new Visitors(
    LIMITS,
    (why) => gone.push(why),
    () => nowMs,
  );
});

type Stage = 'silent' | 'asking' | 'at work' | 'known';

/** Somebody who came a while ago. */
function arrive(name: string, network: string | undefined, stage: Stage, ageMs: number = GRACE_MS) {
  const socket = new EventEmitter() as unknown as Socket;
  socket.destroy = () => {
    closed.push(name);
    socket.emit('close');
    return socket;
  };
  const response = {} as ServerResponse;
  const now = nowMs;
  nowMs -= ageMs;
  visitors.enter(socket, network);
  const visitor = visitors.find(socket);
  if (visitor && stage !== 'silent') {
    visitors.asks(visitor, network);
    if (stage !== 'asking') visitors.isGenuine(visitor, response);
    if (stage === 'known') visitors.isAnswered(visitor, response);
  }
  nowMs = now;
  return { socket, visitor, room: visitor && visitors.roomFor(visitor), response };
}

describe('when there are too many connections', () => {
  it('the silent one goes before the one whose body is on its way', () => {
    arrive('body', 'A', 'asking', 9_000);
    arrive('silent', 'A', 'silent', 300);
    arrive('other body', 'A', 'asking', 8_000);
    arrive('next', 'A', 'silent', 0);
    expect([closed, gone]).toEqual([['silent'], ['too many connections']]);
  });

  it('the slow body goes before the one that has just come, which may be the platform’s', () => {
    arrive('body', 'A', 'asking', GRACE_MS);
    arrive('newcomer', 'A', 'silent', GRACE_MS - 1);
    arrive('new body', 'A', 'asking', GRACE_MS - 1);
    arrive('next', 'A', 'silent', 0);
    expect(closed).toEqual(['body']);
  });

  it('among those who have just come, the one who waited longest goes', () => {
    for (const [name, ageMs] of [['first', 30] as const, ['second', 20] as const, ['third', 10] as const]) {
      arrive(name, 'A', 'silent', ageMs);
    }
    arrive('next', 'A', 'silent', 0);
    expect(closed).toEqual(['first']);
  });

  it('the platform’s connection that waits goes last, and one at work never', () => {
    arrive('at work', 'A', 'at work', 9_000);
    arrive('waiting', 'A', 'known', 9_000);
    arrive('newcomer', 'B', 'silent', 0);
    arrive('next', 'B', 'silent', 0);
    expect(closed).toEqual(['newcomer']);
    arrive('working next', 'B', 'at work', 0);
    arrive('one more', 'B', 'silent', 0);
    expect(closed).toEqual(['newcomer', 'next', 'waiting']);
  });

  it('the newcomer goes when all others are at work', () => {
    for (const name of ['one', 'two', 'three']) arrive(name, 'A', 'at work', 9_000);
    const { visitor } = arrive('next', 'A', 'silent', 0);
    expect([closed, visitor]).toEqual([['next'], undefined]);
  });

  it.each([
    ['a crowd from one network gives way, however quick, and not who was there first', CROWD + 1, 'crowd 0'],
    ['a few from one network are no crowd', CROWD, 'somebody'],
  ])('%s', (_rule, count, gives) => {
    visitors = new Visitors(
      { ...LIMITS, connections: count + 1 },
      () => {},
      () => nowMs,
    );
    arrive('somebody', 'B', 'silent', 9_000);
    for (let i = 0; i < count; i += 1) arrive(`crowd ${i}`, 'A', 'silent', 0);
    arrive('next', 'C', 'silent', 0);
    expect(closed).toEqual([gives]);
  });

  it('whatever comes from a network of which a signed request came is no crowd', () => {
    visitors = new Visitors(
      { ...LIMITS, connections: CROWD + 2 },
      () => {},
      () => nowMs,
    );
    arrive('request', 'proxy', 'known', 0).socket.destroy();
    arrive('stranger', 'B', 'silent', 0);
    for (let i = 0; i <= CROWD; i += 1) arrive(`proxy ${i}`, 'proxy', 'silent', 0);
    arrive('next', 'C', 'silent', 0);
    expect(closed).toEqual(['request', 'stranger']);
  });

  it('strangers give way before a network of which a signed request came', () => {
    const { socket } = arrive('request', 'proxy', 'known', 0);
    socket.destroy();
    arrive('proxy 1', 'proxy', 'silent', 9_000);
    arrive('proxy 2', 'proxy', 'silent', 9_000);
    arrive('stranger', 'A', 'silent', 500);
    arrive('next', 'B', 'silent', 0);
    expect(closed).toEqual(['request', 'stranger']);
  });

  it('a network is the platform’s for ten minutes after a signed request', () => {
    arrive('request', 'proxy', 'known', 10 * 60_000).socket.destroy();
    arrive('proxy', 'proxy', 'silent', 9_000);
    arrive('stranger', 'A', 'silent', 500);
    arrive('other stranger', 'B', 'silent', 500);
    arrive('next', 'C', 'silent', 0);
    expect(closed).toEqual(['request', 'proxy']);
  });

  it('a proxy that the operator has named counts as the platform’s until it says for whom it comes', () => {
    arrive('proxy', undefined, 'silent', 9_000);
    arrive('stranger', 'A', 'silent', 500);
    arrive('other stranger', 'B', 'silent', 400);
    arrive('next', 'C', 'silent', 0);
    expect(closed).toEqual(['stranger']);
  });

  it('whoever left by themselves has left their place', () => {
    for (const name of ['one', 'two', 'three']) arrive(name, 'A', 'silent', 9_000).socket.emit('close');
    for (const name of ['four', 'five', 'six']) arrive(name, 'A', 'silent', 9_000);
    expect(closed).toEqual([]);
  });
});

describe('when there is no room for bodies', () => {
  it('the one who has held theirs back longest goes, and what it held is free', () => {
    const first = arrive('first', 'A', 'asking', 3_000);
    const second = arrive('second', 'A', 'asking', 2_000);
    const third = arrive('third', 'A', 'asking', 0);
    expect([first.room?.take(60), second.room?.take(40), third.room?.take(50)]).toEqual([true, true, true]);
    expect([closed, gone]).toEqual([['first'], ['no room']]);
    // It had given back everything already when its connection was closed.
    first.room?.giveBack(60);
    expect(third.room?.take(10)).toBe(true);
    expect(closed).toEqual(['first']);
    expect(third.room?.take(1)).toBe(true);
    expect(closed).toEqual(['first', 'second']);
  });

  it('who holds nothing is left alone', () => {
    arrive('silent', 'A', 'silent', 9_000);
    const body = arrive('body', 'A', 'asking', 1_000);
    const next = arrive('next', 'A', 'asking', 0);
    body.room?.take(100);
    expect(next.room?.take(1)).toBe(true);
    expect(closed).toEqual(['body']);
  });

  it('nobody goes for a body that finds no room even so', () => {
    const body = arrive('body', 'A', 'asking', 1_000);
    expect([body.room?.take(101), body.room?.take(100)]).toEqual([false, true]);
    expect(closed).toEqual([]);
    body.room?.giveBack(100);
    expect(arrive('next', 'A', 'asking', 0).room?.take(100)).toBe(true);
  });

  it('who had to go can take none any more', () => {
    const { socket, room } = arrive('body', 'A', 'asking', 1_000);
    socket.destroy();
    expect(room?.take(1)).toBe(false);
  });
});
