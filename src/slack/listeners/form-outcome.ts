/** What becomes of a form that was sent off. */
import type { ModalView } from '@slack/types';
import type { MessageView } from '../views/message-view.ts';

export type FormOutcome =
  /** It closes, and the person is told. */
  | { readonly next: 'close'; readonly say: MessageView }
  /** It closes with all forms under it, and the person is told. */
  | { readonly next: 'close-all'; readonly say: MessageView }
  /** Another form takes its place, or comes on top of it. */
  | { readonly next: 'show'; readonly how: 'in place' | 'on top'; readonly view: ModalView };
