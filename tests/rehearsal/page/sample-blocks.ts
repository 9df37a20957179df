/** One of each block and element that the page must show, and a form with the usual inputs. */
import type { KnownBlock, ModalView } from '@slack/web-api';

const plain = (text: string) => ({ type: 'plain_text' as const, text });
const mrkdwn = (text: string) => ({ type: 'mrkdwn' as const, text });
const option = (value: string, text: string) => ({ value, text: plain(text) });

const SIZES = [option('1', '1 point'), option('2', '2 points'), option('3', '3 points')];

/** A message of every kind of block. `fileId` is an uploaded picture. */
export function everyBlock(fileId: string): KnownBlock[] {
  return [
    { type: 'header', text: plain('What is left on your cards?') },
    {
      type: 'section',
      text: mrkdwn(
        '*Buoy lamp*: had _2 points_ left, ~3 before~. See `LP-1`, <https://example.org/buoy|the drawing> and <@U0BO00000>.\n• new lens\n• new battery\n> as agreed on Monday',
      ),
    },
    { type: 'section', fields: [mrkdwn('*Commitment*\n21 points'), mrkdwn('*Left*\n8.5 points')] },
    { type: 'divider' },
    { type: 'context', elements: [mrkdwn('Answer until *17:00*, in <#C0HARBOUR>.')] },
    {
      type: 'actions',
      block_id: 'answer',
      elements: [
        {
          type: 'button',
          action_id: 'same',
          text: plain('Nothing changed'),
          style: 'primary',
          value: 'same',
        },
        { type: 'button', action_id: 'away', text: plain('Away today'), value: 'away' },
        {
          type: 'button',
          action_id: 'cancel',
          text: plain('Cancel the sprint'),
          style: 'danger',
          confirm: {
            title: plain('Cancel the sprint?'),
            text: mrkdwn('Its numbers are *kept* and marked.'),
            confirm: plain('Cancel it'),
            deny: plain('Leave it'),
          },
        },
      ],
    },
    pictureBlock(fileId),
  ];
}

export function pictureBlock(fileId: string): KnownBlock {
  return {
    type: 'image',
    alt_text: 'Burndown: 21 points at the start, 8.5 left after six days.',
    slack_file: { id: fileId },
  };
}

/** A form with one of each usual input. */
export function everyInput(): ModalView {
  return {
    type: 'modal',
    callback_id: 'plan',
    title: plain('Plan a sprint'),
    submit: plain('Commit'),
    close: plain('Not now'),
    blocks: [
      { type: 'section', block_id: 'intro', text: mrkdwn('One card a line: `title, estimate, @owner`.') },
      {
        type: 'input',
        block_id: 'name',
        label: plain('Sprint name'),
        hint: plain('Short, so that it fits a heading.'),
        element: {
          type: 'plain_text_input',
          action_id: 'text',
          max_length: 40,
        },
      },
      {
        type: 'input',
        block_id: 'cards',
        label: plain('Cards'),
        element: { type: 'plain_text_input', action_id: 'text', multiline: true },
      },
      {
        type: 'input',
        block_id: 'left',
        label: plain('Points left'),
        optional: true,
        element: { type: 'plain_text_input', action_id: 'number' },
      },
      {
        type: 'input',
        block_id: 'first',
        label: plain('First day'),
        optional: true,
        element: { type: 'datepicker', action_id: 'date', initial_date: '2026-11-02' },
      },
      {
        type: 'input',
        block_id: 'size',
        label: plain('Largest size'),
        optional: true,
        element: { type: 'static_select', action_id: 'choice', options: SIZES },
      },
      {
        type: 'input',
        block_id: 'crew',
        label: plain('Members'),
        optional: true,
        element: { type: 'multi_users_select', action_id: 'people' },
      },
      {
        type: 'input',
        block_id: 'why',
        label: plain('Why it grew'),
        optional: true,
        element: {
          type: 'multi_static_select',
          action_id: 'choice',
          options: [option('surprise', 'Surprise work'), option('drift', 'Estimate drift')],
        },
      },
      {
        type: 'input',
        block_id: 'days',
        label: plain('Working days'),
        optional: true,
        element: {
          type: 'checkboxes',
          action_id: 'choice',
          options: [option('mon', 'Monday'), option('tue', 'Tuesday')],
          initial_options: [option('mon', 'Monday')],
        },
      },
      {
        type: 'input',
        block_id: 'hour',
        label: plain('Closes at'),
        optional: true,
        element: { type: 'timepicker', action_id: 'time', initial_time: '09:15' },
      },
    ],
  };
}

/** The form with one more input, all others as they were. */
export function withNoteField(): ModalView {
  const view = everyInput();
  const note: KnownBlock = {
    type: 'input',
    block_id: 'note',
    label: plain('Note'),
    optional: true,
    element: { type: 'plain_text_input', action_id: 'text' },
  };
  return { ...view, blocks: [...view.blocks, note] };
}

/** A second form for the pile. */
export function secondForm(): ModalView {
  return {
    type: 'modal',
    callback_id: 'second',
    title: plain('One more form'),
    close: plain('Back'),
    blocks: [{ type: 'section', text: mrkdwn('This one lies on the first.') }],
  };
}

/** A form that asks for files: one by all means, and some more if one likes. */
export function fileForm(): ModalView {
  return {
    type: 'modal',
    callback_id: 'files',
    title: plain('Past sprints'),
    submit: plain('Read them'),
    close: plain('Not now'),
    blocks: [
      {
        type: 'input',
        block_id: 'main',
        label: plain('Sprints'),
        hint: plain('A spreadsheet saved as CSV.'),
        element: { type: 'file_input', action_id: 'files', filetypes: ['csv'], max_files: 1 },
      },
      {
        type: 'input',
        block_id: 'more',
        label: plain('Notes'),
        optional: true,
        element: { type: 'file_input', action_id: 'files' },
      },
    ],
  };
}
