/** A button or form holds something that this version of the bot can't read: it is old, or was altered. */
export class StaleControl extends Error {
  override readonly name = 'StaleControl';
  readonly code = 'stale-control';
}
