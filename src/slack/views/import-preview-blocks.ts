/** What an import would bring in, or what is wrong with which lines, as blocks above the form's fields. */
import type { KnownBlock } from '@slack/types';
import type { ImportPreview } from '../../app/import/import-sprints.ts';
import {
  badLines,
  knownOf,
  leftOutSprint,
  previewedSprint,
  previewLead,
  unusedColumns,
} from '../../words/import.ts';
import { importWarning } from '../../words/import-problems.ts';
import { mrkdwn } from '../../words/say.ts';
import { context, lead, section } from './block-builders.ts';
import { lineSections } from './line-sections.ts';

/** The form holds 100 blocks, of which its fields take a few. */
const PROBLEM_SECTIONS_MAX = 60;
const SPRINT_SECTIONS_MAX = 4;
const LEFT_OUT_SECTIONS_MAX = 2;
const CHECK_SECTIONS_MAX = 3;

export function importPreviewBlocks(preview: ImportPreview): KnownBlock[] {
  const blocks = preview.problems.length > 0 ? problemBlocks(preview) : sprintBlocks(preview);
  return [lead(previewLead(preview)), ...blocks];
}

function problemBlocks(preview: ImportPreview): KnownBlock[] {
  return [
    ...lineSections('', badLines(preview), {
      maxSections: PROBLEM_SECTIONS_MAX,
      more: (count) => mrkdwn('import-more-problems', { count }),
    }),
    section(mrkdwn('import-correct')),
  ];
}

function sprintBlocks(preview: ImportPreview): KnownBlock[] {
  const { sprints, leftOut, warnings } = preview;
  const more = (count: number): string => mrkdwn('import-more', { count });
  return [
    ...(sprints.length > 0 ? [section(knownOf(preview))] : []),
    ...lineSections(mrkdwn('import-sprints-head'), sprints.map(previewedSprint), {
      maxSections: SPRINT_SECTIONS_MAX,
      more: (count) => mrkdwn('import-more-sprints', { count }),
    }),
    ...lineSections(mrkdwn('import-left-out-head'), leftOut.map(leftOutSprint), {
      maxSections: LEFT_OUT_SECTIONS_MAX,
      more,
    }),
    ...lineSections(
      mrkdwn('import-check-head'),
      [...warnings.map((warning) => `• ${importWarning(warning)}`), ...unusedColumns(preview)],
      { maxSections: CHECK_SECTIONS_MAX, more },
    ),
    ...(sprints.length > 0 ? [context(mrkdwn('import-becomes-history'))] : []),
  ];
}
