/** Makes the scheduled faults happen, each for as long as it says, and puts everything right again in the end. */
import { setTimeout as wait } from 'node:timers/promises';
import type { PostgresProcess } from '../support/postgres-process.ts';
import type { ApiFaults } from './api-faults.ts';
import type { BotProcess } from './bot-process.ts';
import type { ChaosClock } from './chaos-clock.ts';
import type { DatabaseFaults } from './database-faults.ts';
import { faultWords, type ScheduledFault } from './fault-schedule.ts';
import type { InTurn } from './in-turn.ts';
import type { RequestDoor } from './request-door.ts';
import type { TcpProxy } from './tcp-proxy.ts';

interface SaboteurOptions {
  readonly bots: readonly BotProcess[];
  readonly postgres: PostgresProcess;
  readonly wire: TcpProxy;
  readonly databaseFaults: DatabaseFaults;
  readonly door: RequestDoor;
  readonly apiFaults: ApiFaults;
  readonly clock: ChaosClock;
  /** Shared with those who look into the database by themselves. */
  readonly inTurn: InTurn;
  readonly say: (line: string) => void;
}

export class Saboteur {
  readonly #options: SaboteurOptions;
  readonly #underWay = new Set<Promise<void>>();

  constructor(options: SaboteurOptions) {
    this.#options = options;
  }

  /** Resolves when the last fault is over. */
  async run(schedule: readonly ScheduledFault[], isCutShort: () => boolean): Promise<void> {
    const beganMs = performance.now();
    for (const fault of schedule) {
      await wait(Math.max(0, beganMs + fault.atMs - performance.now()));
      if (isCutShort()) break;
      this.#options.say(faultWords(fault));
      const happening = this.#make(fault);
      this.#underWay.add(happening);
      void happening.finally(() => this.#underWay.delete(happening));
    }
    await Promise.all(this.#underWay);
    await this.#makeGood();
  }

  /** Everything that is broken works again. */
  async #makeGood(): Promise<void> {
    const { bots, wire, door, clock, databaseFaults } = this.#options;
    await databaseFaults.end();
    wire.setAway(false);
    wire.setSilent(false);
    wire.setDelayMs(0);
    door.setTrouble(undefined);
    clock.skew(undefined, 0);
    for (const bot of bots) bot.start();
  }

  async #make(fault: ScheduledFault): Promise<void> {
    const { bots, wire, door, apiFaults, clock, databaseFaults, inTurn } = this.#options;
    const during = async (begin: () => unknown, forMs: number, end: () => unknown): Promise<void> => {
      await begin();
      await wait(forMs);
      await end();
    };
    switch (fault.kind) {
      case 'kill':
      case 'stop': {
        const bot = bots[fault.bot] as BotProcess;
        await bot.end(fault.kind === 'kill' ? 'SIGKILL' : 'SIGTERM');
        await wait(fault.downMs);
        return bot.start();
      }
      case 'freeze':
        return (bots[fault.bot] as BotProcess).freeze(fault.forMs);
      case 'database-restart':
        return inTurn(() => this.#restartDatabase(fault.how, fault.downMs));
      case 'database-cut':
        return wire.cut();
      case 'database-half-close':
        return wire.halfClose();
      case 'database-away':
        return during(
          () => wire.setAway(true),
          fault.forMs,
          () => wire.setAway(false),
        );
      case 'database-silent':
        return during(
          () => wire.setSilent(true),
          fault.forMs,
          () => wire.setSilent(false),
        );
      case 'database-slow':
        return during(
          () => wire.setDelayMs(fault.delayMs),
          fault.forMs,
          () => wire.setDelayMs(0),
        );
      case 'database-read-only':
        return during(
          () => inTurn(() => databaseFaults.setReadOnly(true)),
          fault.forMs,
          () => inTurn(() => databaseFaults.setReadOnly(false)),
        );
      case 'database-full':
        return during(
          () => inTurn(() => databaseFaults.setFull(fault.share)),
          fault.forMs,
          () => inTurn(() => databaseFaults.setFull(0)),
        );
      case 'api': {
        const end = apiFaults.begin(fault);
        await wait(fault.forMs);
        return end();
      }
      case 'requests':
        return during(
          () => door.setTrouble(fault.trouble, fault.share),
          fault.forMs,
          () => door.setTrouble(undefined),
        );
      case 'clock':
        return during(
          () => clock.skew(fault.bot, fault.aheadMs),
          fault.forMs,
          () => clock.skew(fault.bot, 0),
        );
    }
  }

  async #restartDatabase(how: 'orderly' | 'crash', downMs: number): Promise<void> {
    await this.#options.postgres.halt(how);
    await wait(downMs);
    await this.#options.postgres.startAgain();
  }
}
