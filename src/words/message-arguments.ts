/** What each message takes. Written by `npm run messages` from the English message files; don't edit it by hand. */

export interface Messages {
  'amount-points': { readonly amount: number };
  somebody: Record<never, never>;
}
