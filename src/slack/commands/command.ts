/**
 * What a command is. Each is declared once, in a file of this folder, and `commands.ts` lists the declarations: the
 * listeners, the help, the overview, the hint after a mistyped word and the cost of a request are made from them.
 * DEVELOPERS.md has the recipe for a new one.
 */
import type { ModalView } from '@slack/types';
import type { z } from 'zod';
import type { Place } from '../../app/team/place.ts';
import type { Actor } from '../../app/team/team.ts';
import type { UseCases } from '../../app/use-cases.ts';
import type { TeamOverview } from '../../app/watching/overview.ts';
import type { MessageId } from '../../words/say.ts';
import { decodeValue, encodeValue, placeValue, StaleControl } from '../button-values.ts';
import type { MessageShortcut } from '../door/incoming.ts';
import type { SentFile } from '../files/download-file.ts';
import { openFormAction } from '../ids.ts';
import type { Reading } from '../listeners/answer-once.ts';
import { type Asker, openForm } from '../listeners/asker.ts';
import type { FormFields } from '../listeners/form-fields.ts';
import type { ListenerContext } from '../listeners/listener-context.ts';
import { formButtonMessage } from '../views/form-view.ts';
import type { MessageView } from '../views/message-view.ts';

/** Who may use it; the use cases decide, this is for the help. */
export type CommandAudience = 'anyone' | 'member' | 'team-and-owner' | 'product-owner' | 'facilitator';

/** Charts to draw and files to read or write cost the bot far more than anything else. */
export type Cost = 'light' | 'heavy';

/** A person who typed the command, in a place. */
export type Caller = Asker & {
  readonly place: Place;
  /** Shows the overview, whose buttons can open a form: from words alone none can be opened. */
  readonly showOverview: () => Promise<void>;
};

/** Somebody who pressed a button. */
export type Presser = Asker & { readonly triggerId: string };

/** Makes a form for somebody: asks the use case what is in it. Nothing is opened here. */
type FormMaker = (context: ListenerContext, asker: Asker, place: Place) => Promise<ModalView>;

export interface Form {
  /** `pull`: the form's id is `pull-form`, and `open-pull-form` that of the button which opens it. */
  readonly name: string;
  /** `block_id`s of its fields: the same names as in the problems of a `bad-input` refusal. */
  readonly fields?: Readonly<Record<string, string>>;
  /** Without it, the form is opened by what comes before it. */
  readonly make?: FormMaker;
  readonly submit: FormHandler;
  /** Which files are read when it is sent off; undefined: none, so that it needs no turn. */
  readonly files?: (form: SentForm) => readonly SentFile[] | undefined;
  /**
   * It answers, or keeps a draft, and records nothing: what fails may be sent again without a question of what was recorded.
   */
  readonly recordsNothing?: true;
  /** What the form becomes when one of its live fields was changed. It only reads. */
  readonly change?: (useCases: UseCases, form: SentForm) => Promise<ModalView>;
  readonly cost?: Cost;
}

export interface Button {
  readonly press: (context: ListenerContext, presser: Presser, value: string | undefined) => Promise<void>;
  readonly cost?: Cost;
}

/** Chosen from the platform's menu, wherever somebody is. */
interface Shortcut {
  /** @param message on which it was chosen; undefined for one that is offered everywhere */
  readonly choose: (
    context: ListenerContext,
    presser: Presser,
    message: MessageShortcut | undefined,
  ) => Promise<void>;
}

/** The rows of buttons that the overview shows of a team, in order. */
export const OVERVIEW_ROWS = ['daily', 'planning', 'sprint', 'numbers'] as const;

/** The command's button in the overview. */
export interface OverviewButton {
  readonly row: (typeof OVERVIEW_ROWS)[number];
  /** For whom and when; for everyone when left out. The use case behind it decides whether somebody may. */
  readonly when?: (team: TeamOverview) => boolean;
  /** The button that opens the command's form, when left out. */
  readonly actionId?: string;
  /** The team's channel, when left out. */
  readonly value?: (team: TeamOverview) => string;
  /** `overview-<word>-button`, when left out. */
  readonly label?: (team: TeamOverview) => `overview-${string}-button` & MessageId;
  readonly primary?: (team: TeamOverview) => boolean;
}

export interface Command {
  /**
   * What is typed after the slash command; the longest match wins (`setup measures` before `setup`). The messages
   * `command-<word>-usage` and `command-<word>-summary` explain it.
   */
  readonly word: string;
  readonly who: CommandAudience;
  readonly cost?: Cost;
  /** Whether it wants the addresses of links that were typed with words in their place. */
  readonly takesLinks?: true;
  /** Whether its words say which people are meant; elsewhere a mention is part of what somebody writes. */
  readonly takesPeople?: true;
  /** Opens the first of its forms, when left out. @param rest what was typed after the word */
  readonly run?: (context: ListenerContext, caller: Caller, rest: string) => Promise<void>;
  /** In place of `run`, for what only reads: it begins before it is known whether the request is a repetition. */
  readonly read?: (context: ListenerContext, caller: Caller) => ReturnType<Reading>;
  readonly forms?: readonly Form[];
  /** By `action_id`, besides those that open its forms. */
  readonly buttons?: Readonly<Record<string, Button>>;
  /** By `callback_id`. */
  readonly shortcuts?: Readonly<Record<string, Shortcut>>;
  readonly inOverview?: OverviewButton;
}

type Dashed<Word extends string> = Word extends `${infer Head} ${infer Tail}`
  ? `${Head}-${Dashed<Tail>}`
  : Word;

type NeededMessages<Word extends string> =
  | `command-${Dashed<Word>}-usage`
  | `command-${Dashed<Word>}-summary`;

/** Declares a command. Its type holds that its messages exist. */
export function command<const Word extends string>(
  declared: Command & { readonly word: Word } & (NeededMessages<Word> extends MessageId
      ? unknown
      : { readonly word: NeededMessages<Word> }),
): Command {
  return declared;
}

/** `setup-measures`, as the ids of messages have it. */
export function dashed(word: string): string {
  return word.replaceAll(' ', '-');
}

/**
 * Opens a form. From words alone none can be opened: then a button is shown that does. In direct messages it isn't known of
 * which team, so that there it is the overview.
 */
export async function showForm(
  context: ListenerContext,
  caller: Caller,
  make: () => Promise<ModalView>,
  opener: (made: ModalView) => { readonly actionId: string; readonly value: string },
): Promise<void> {
  const { triggerId, place } = caller;
  if (triggerId === undefined && place.isDirect) return caller.showOverview();
  // Made here too: who may not have the form reads why.
  const form = await make();
  if (triggerId === undefined) return caller.tell(formButtonMessage(opener(form)));
  await openForm(context.client, triggerId, form);
}

/** Opens the first of the command's forms. */
export async function showFirstForm(
  { word, forms }: Command,
  context: ListenerContext,
  caller: Caller,
): Promise<void> {
  const first = forms?.[0];
  const make = first?.make;
  if (!make) throw new TypeError(`the command ${word} does nothing`);
  const { channelId } = caller.place;
  const opener = { actionId: openFormAction(first.name), value: encodeValue({ channelId }) };
  await showForm(
    context,
    caller,
    () => make(context, caller, caller.place),
    () => opener,
  );
}

/** Every button of a command by `action_id`, those that open its forms included. */
export function buttonsOf({ forms = [], buttons = {} }: Command): [string, Button][] {
  const opening = forms.flatMap(({ name, make }): [string, Button][] =>
    make ? [[openFormAction(name), { press: opens(make) }]] : [],
  );
  return [...opening, ...Object.entries(buttons)];
}

function opens(make: FormMaker): Button['press'] {
  return async (context, presser, value) => {
    await openForm(context.client, presser.triggerId, await make(context, presser, placeIn(value)));
  };
}

/** Reads what a button or form holds. @throws StaleControl when it is of another version, or was altered */
export function readHeld<T>(schema: z.ZodType<T>, held: string | undefined): T {
  const value = decodeValue(schema, held);
  if (value === undefined) throw new StaleControl('button or form');
  return value;
}

/** Of a form that reads files only when some were picked. */
export function picked(field: string): NonNullable<Form['files']> {
  return ({ fields }) => {
    const files = fields.files(field);
    return files.length === 0 ? undefined : files;
  };
}

/** The team's channel, wherever the button was pressed. */
export function placeIn(value: string | undefined): Place {
  return { channelId: readHeld(placeValue, value).channelId, isDirect: false };
}

/** What becomes of a form that was sent off. */
export type FormOutcome =
  /** It closes, and the person gets a message, unless the home page from which it was opened shows as much. */
  | {
      readonly next: 'close';
      readonly say: MessageView;
      /** Whether the home page shows what was done. */
      readonly isOnHome?: boolean;
      /** Whether a message that the person has shows what was done. */
      readonly isShown?: boolean;
    }
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
