/** Amounts as bare text, for the few places that need one outside a message. */
import { say } from './say.ts';

/** `80%`, `79.9%`; 1 means 100%. Beside a threshold use `against`, for 79.96% would look here as if it reached 80%. */
export function percent(share: number): string {
  return say('amount-percent', { share });
}

/** `3`, `2.5`, `1,200` */
export function number(amount: number): string {
  return say('amount-number', { amount });
}
