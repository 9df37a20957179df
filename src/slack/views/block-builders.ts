/**
 * Small makers of blocks that keep to the platform's limits (docs.slack.dev/reference/block-kit/blocks),
 * so that no view has to count characters. They know nothing of sprints.
 */
import type {
  ActionsBlock,
  Button,
  ConfirmationDialog,
  ContextBlock,
  DividerBlock,
  HeaderBlock,
  ImageBlock,
  MrkdwnElement,
  PlainTextElement,
  SectionBlock,
} from '@slack/types';
import { visibleText } from '../../app/visible-text.ts';
import { mrkdwnOf, shortened, shortenedMrkdwn } from '../../words/typed-text.ts';

export const SECTION_MAX_LENGTH = 3_000;
const HEADER_MAX_LENGTH = 150;
const FIELD_MAX_LENGTH = 2_000;
const BUTTON_MAX_LENGTH = 75;
const BUTTONS_MAX = 25;

/** Plain text without emoji codes. */
export function plain(text: string, maxLength = SECTION_MAX_LENGTH): PlainTextElement {
  return { type: 'plain_text', text: shortened(text, maxLength), emoji: false };
}

/** `verbatim` keeps the platform from making links of what people typed. */
function mrkdwn(text: string, maxLength = SECTION_MAX_LENGTH): MrkdwnElement {
  return { type: 'mrkdwn', text: shortenedMrkdwn(text, maxLength), verbatim: true };
}

export function bold(text: string): string {
  return `*${text}*`;
}

export function section(text: string): SectionBlock {
  return { type: 'section', text: mrkdwn(text) };
}

/** A list of short facts in two columns; more than ten make several blocks. */
export function fieldSections(fields: readonly string[]): SectionBlock[] {
  const blocks: SectionBlock[] = [];
  for (let i = 0; i < fields.length; i += 10) {
    const ten = fields.slice(i, i + 10).map((field) => mrkdwn(field, FIELD_MAX_LENGTH));
    blocks.push({ type: 'section', fields: ten });
  }
  return blocks;
}

/** The sentence that a message leads with, in plain text: a header, or a bold line when it is too long for one. */
export function lead(sentence: string): HeaderBlock | SectionBlock {
  if (sentence.length > HEADER_MAX_LENGTH) return section(bold(mrkdwnOf(sentence)));
  return { type: 'header', text: plain(sentence, HEADER_MAX_LENGTH) };
}

export function context(text: string): ContextBlock {
  return { type: 'context', elements: [mrkdwn(text)] };
}

export function divider(): DividerBlock {
  return { type: 'divider' };
}

export interface ButtonOptions {
  readonly actionId: string;
  readonly value: string;
  /** At most one of a message. */
  readonly primary?: boolean;
  readonly confirm?: ConfirmationDialog;
}

export function button(label: string, { actionId, value, primary, confirm }: ButtonOptions): Button {
  return {
    type: 'button',
    action_id: actionId,
    text: plain(label, BUTTON_MAX_LENGTH),
    value,
    ...(primary ? { style: 'primary' } : {}),
    ...(confirm ? { confirm } : {}),
  };
}

export function actions(buttons: readonly Button[]): ActionsBlock {
  return { type: 'actions', elements: buttons.slice(0, BUTTONS_MAX) };
}

/** A question before something that can't be undone by the same button. */
export function confirmation(question: {
  readonly title: string;
  readonly text: string;
  readonly yes: string;
  readonly no: string;
}): ConfirmationDialog {
  return {
    title: plain(question.title, 100),
    text: plain(question.text, 300),
    confirm: plain(question.yes, 30),
    deny: plain(question.no, 30),
  };
}

/** A chart that has been uploaded to the platform. */
export interface ChartImage {
  readonly fileId: string;
  /** What the chart shows, numbers included. */
  readonly altText: string;
}

const ALT_TEXT_MAX_LENGTH = 2_000;

/** The block that shows the chart; none when there is no chart. */
export function chartBlocks(chart: ChartImage | undefined): ImageBlock[] {
  if (!chart) return [];
  return [
    {
      type: 'image',
      slack_file: { id: chart.fileId },
      alt_text: shortened(visibleText(chart.altText), ALT_TEXT_MAX_LENGTH),
    },
  ];
}
