/** What a form's handler is given, and what becomes of a form that was sent off. */
import type { ModalView } from '@slack/types';
import type { Actor } from '../../app/team/team.ts';
import type { UseCases } from '../../app/use-cases.ts';
import type { MessageView } from '../views/message-view.ts';
import type { FormFields } from './form-fields.ts';
import type { ListenerContext } from './listener-context.ts';

export type FormOutcome =
  /** It closes, and the person gets a message. */
  | { readonly next: 'close'; readonly say: MessageView }
  /** It closes with all forms under it, and the person gets a message. */
  | { readonly next: 'close-all'; readonly say: MessageView }
  /** Another form takes its place, or comes on top of it. */
  | { readonly next: 'show'; readonly how: 'in place' | 'on top'; readonly view: ModalView };

export interface SentForm {
  readonly actor: Actor;
  readonly fields: FormFields;
  /** `private_metadata` */
  readonly context: string;
}

/** What a handler may do besides calling a use case. The form's answer waits for it, as for the use case. */
export type FormTools = Pick<ListenerContext, 'download' | 'shareFiles' | 'upload' | 'logger'>;

export type FormHandler = (useCases: UseCases, form: SentForm, tools: FormTools) => Promise<FormOutcome>;
