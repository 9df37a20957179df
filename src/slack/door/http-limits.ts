/**
 * What the HTTP door takes before it knows who is asking, so that a stranger can hold only little memory and few
 * connections, and each only briefly. `docs/operating.md` states the same values.
 */
export interface HttpLimits {
  /** Longest body of a signed request. */
  readonly bodyBytes: number;
  /** All bodies together that are on their way at one moment; for more, the slowest is given up. */
  readonly bodiesTogetherBytes: number;
  /** Request line and headers together. */
  readonly headerBytes: number;
  readonly headerCount: number;
  /** Within this the headers must have come, from the opening of the connection on. */
  readonly headersMs: number;
  /** Within this the whole request must have come. */
  readonly requestMs: number;
  /** How long a connection may wait for its next request. */
  readonly idleMs: number;
  /** How often slow connections are looked for. */
  readonly checkEveryMs: number;
  /** Connections open at one moment; for more, a silent one is closed. */
  readonly connections: number;
  /**
   * Connections of a network from which no signed request has come, within a minute, that bring no request but refused
   * ones; then none is let in until the minute is over.
   */
  readonly inVain: number;
}

export const HTTP_LIMITS: HttpLimits = {
  // The largest request the platform sends holds a form of at most 250 kB with what was typed in it; a
  // form-encoded character can take nine bytes.
  bodyBytes: 1024 * 1024,
  // Real requests arrive whole at once and have a few kilobytes; only slow senders of large bodies add up to this.
  bodiesTogetherBytes: 32 * 1024 * 1024,
  headerBytes: 16 * 1024,
  headerCount: 100,
  // The platform itself gives up after 3 s.
  headersMs: 2_000,
  requestMs: 3_000,
  // Longer than a proxy keeps it (deploy/proxy): who closes first must not be who is just being asked.
  idleMs: 5_000,
  checkEveryMs: 500,
  // Each of the platform's requests is answered within 3 s, most within 50 ms: enough for hundreds a second.
  connections: 500,
  // Far more than a browser, a check of the port, or somebody who tries a secret makes.
  inVain: 100,
};
