/**
 * A client whose connections can be replaced all at once. After a failover the old ones may still lead to the server
 * that was the primary; new ones are made to wherever the address leads by then. The driver can't let go of the
 * connections of a client one by one, so there is a new client.
 */
import type { Sql } from 'postgres';

/** What is still running on the old connections, and can only have read, gets so long. */
const OLD_LIMIT_SECONDS = 5;

export class RenewedClient {
  readonly #make: () => Sql;
  readonly #listeners = new Set<() => void>();
  readonly #ending = new Set<Promise<void>>();
  #current: Sql;

  constructor(make: () => Sql) {
    this.#make = make;
    this.#current = make();
  }

  get current(): Sql {
    return this.#current;
  }

  renew(): void {
    const old = this.#current;
    this.#current = this.#make();
    // Not at once: somebody may have taken the old one in this moment and be about to use it.
    const ended = new Promise((resolve) => setImmediate(resolve))
      .then(() => old.end({ timeout: OLD_LIMIT_SECONDS }))
      .finally(() => this.#ending.delete(ended));
    this.#ending.add(ended);
    for (const hear of this.#listeners) hear();
  }

  onRenewed(hear: () => void): void {
    this.#listeners.add(hear);
  }

  async end(): Promise<void> {
    await Promise.all([this.#current.end(), ...this.#ending]);
  }
}
