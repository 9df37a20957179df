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
import { lineList, lineSections } from './line-sections.ts';

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
    ...lineSections(
      lineList('', badLines(preview), (count) => mrkdwn('import-more-problems', { count })),
      { maxSections: PROBLEM_SECTIONS_MAX },
    ),
    section(mrkdwn('import-correct')),
  ];
}

function sprintBlocks(preview: ImportPreview): KnownBlock[] {
  const { sprints, leftOut, warnings } = preview;
  const checks = [...warnings.map((warning) => `• ${importWarning(warning)}`), ...unusedColumns(preview)];
  const more = (count: number): string => mrkdwn('import-more', { count });
  return [
    ...(sprints.length > 0 ? [section(knownOf(preview))] : []),
    ...lineSections(
      lineList(mrkdwn('import-sprints-head'), sprints.map(previewedSprint), (count) =>
        mrkdwn('import-more-sprints', { count }),
      ),
      { maxSections: SPRINT_SECTIONS_MAX },
    ),
    ...lineSections(lineList(mrkdwn('import-left-out-head'), leftOut.map(leftOutSprint), more), {
      maxSections: LEFT_OUT_SECTIONS_MAX,
    }),
    ...lineSections(lineList(mrkdwn('import-check-head'), checks, more), { maxSections: CHECK_SECTIONS_MAX }),
    ...(sprints.length > 0 ? [context(mrkdwn('import-becomes-history'))] : []),
  ];
}
