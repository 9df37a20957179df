/** A wire that can be cut: passes bytes between its clients and one port of this machine. */
import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Server, type Socket } from 'node:net';

interface Pair {
  readonly near: Socket;
  readonly far: Socket;
}

export class TcpProxy {
  readonly #server: Server;
  readonly #pairs = new Set<Pair>();
  #isAway = false;
  #isSilent = false;
  #delayMs = 0;

  constructor(targetPort: number) {
    this.#server = createServer((near) => {
      if (this.#isAway) return void near.resetAndDestroy();
      const far = connect(targetPort, '127.0.0.1');
      const pair = { near, far };
      this.#pairs.add(pair);
      this.#pass(near, far, pair);
      this.#pass(far, near, pair);
    });
  }

  async listen(): Promise<number> {
    this.#server.listen(0, '127.0.0.1');
    await once(this.#server, 'listening');
    return (this.#server.address() as AddressInfo).port;
  }

  /** Breaks every connection; new ones can be made at once. */
  cut(): void {
    for (const pair of [...this.#pairs]) this.#drop(pair);
  }

  /**
   * Only the far end hears that the connections are over; the near end finds out when it next says something, and waits
   * for nothing when it has said it already.
   */
  halfClose(): void {
    for (const { far } of this.#pairs) far.destroy();
  }

  /** While away, nothing can be reached. */
  setAway(isAway: boolean): void {
    this.#isAway = isAway;
    if (isAway) this.cut();
  }

  /** While silent, connections stay open and no byte gets through. */
  setSilent(isSilent: boolean): void {
    this.#isSilent = isSilent;
    for (const { near, far } of this.#pairs) {
      for (const socket of [near, far]) isSilent ? socket.pause() : socket.resume();
    }
  }

  /** How long each piece is held back. */
  setDelayMs(delayMs: number): void {
    this.#delayMs = delayMs;
  }

  async stop(): Promise<void> {
    this.cut();
    const closed = once(this.#server, 'close');
    this.#server.close();
    await closed;
  }

  #pass(from: Socket, to: Socket, pair: Pair): void {
    let sending: Promise<void> = Promise.resolve();
    const send = (piece: Buffer): void => {
      if (to.destroyed) this.#drop(pair);
      else to.write(piece);
    };
    from.on('data', (piece: Buffer) => {
      const delayMs = this.#delayMs;
      if (delayMs === 0) {
        sending = sending.then(() => send(piece));
      } else {
        const held = new Promise<void>((resolve) => setTimeout(resolve, delayMs));
        sending = Promise.all([sending, held]).then(() => send(piece));
      }
    });
    from.on('end', () => void sending.then(() => to.end()));
    // A wire that breaks is what this is for.
    from.on('error', () => this.#drop(pair));
    from.on('close', () => {
      if (from === pair.near) this.#drop(pair);
    });
    if (this.#isSilent) from.pause();
  }

  #drop(pair: Pair): void {
    this.#pairs.delete(pair);
    pair.near.resetAndDestroy();
    pair.far.destroy();
  }
}
