/** What an import would bring in, or what is wrong with which lines, as blocks above the form's fields. */
import type { KnownBlock } from '@slack/types';
import type { ImportPreview, PreviewedSprint } from '../../app/import/import-sprints.ts';
import { formatPoints } from '../../sprint/points.ts';
import { plainTyped, shortened, typed } from '../../words/typed-text.ts';
import { bold, context, lead, section } from './block-builders.ts';
import { datedDay } from './closed-sprint-words.ts';
import { lineNumberWords } from './line-number-words.ts';
import { lineSections } from './line-sections.ts';
import { counted, listed } from './sprint-words.ts';

/** The form holds 100 blocks, of which its fields take a few. */
const PROBLEM_SECTIONS_MAX = 60;
const SPRINT_SECTIONS_MAX = 4;
const LEFT_OUT_SECTIONS_MAX = 2;
const UNUSED_NAMED = 8;
const FILE_NAME_MAX_LENGTH = 60;
const COLUMN_NAME_MAX_LENGTH = 40;

const LEFT_OUT_WORDS = {
  'there already': 'is there already, with the same days; what is recorded of it stays as it is',
  cancelled: 'was cancelled, so it is no history',
  running: 'was still running when the file was made',
} as const;

export function importPreviewBlocks(preview: ImportPreview): KnownBlock[] {
  return preview.problems.length > 0 ? problemBlocks(preview) : sprintBlocks(preview);
}

function problemBlocks(preview: ImportPreview): KnownBlock[] {
  const { problems } = preview;
  const lines = groupedProblems(preview);
  const bad = new Set(problems.map(({ fileName, lineNumber }) => JSON.stringify([fileName, lineNumber])))
    .size;
  return [
    lead(`Nothing can be imported yet: ${bad === 1 ? 'one line has' : `${bad} lines have`} something wrong.`),
    ...lineSections('', lines, {
      maxSections: PROBLEM_SECTIONS_MAX,
      more: (count) => `… and ${counted(count, 'more thing is', 'more things are')} wrong; mend these first.`,
    }),
    section(
      'Mend the file or the pasted lines, give them again below, and check again. Nothing was imported.',
    ),
  ];
}

/** The same thing that is wrong with many lines is said once. */
function groupedProblems({ problems }: ImportPreview): string[] {
  const groups = Map.groupBy(problems, ({ fileName, problem }) => JSON.stringify([fileName, problem]));
  return [...groups.values()].map((group) => {
    const [first] = group as [ImportPreview['problems'][number]];
    const numbers = group.flatMap(({ lineNumber }) => (lineNumber === undefined ? [] : [lineNumber]));
    const where = numbers.length === 0 ? '' : `, ${lineNumberWords(numbers)}`;
    return `• ${bold(`${typed(shortened(first.fileName, FILE_NAME_MAX_LENGTH))}${where}`)}: ${typed(first.problem)}`;
  });
}

function sprintBlocks(preview: ImportPreview): KnownBlock[] {
  const { sprints } = preview;
  return [
    lead(leadWords(preview)),
    ...(sprints.length > 0 ? [section(knownWords(preview))] : []),
    ...lineSections(bold('Sprints'), sprints.map(sprintLine), {
      maxSections: SPRINT_SECTIONS_MAX,
      more: (count) => `… and ${counted(count, 'more sprint')}.`,
    }),
    ...lineSections(
      bold('Left out'),
      preview.leftOut.map(
        ({ name, startsOn, why }) => `• ${typed(name)} (${datedDay(startsOn)}) ${LEFT_OUT_WORDS[why]}`,
      ),
      { maxSections: LEFT_OUT_SECTIONS_MAX, more: (count) => `… and ${count} more.` },
    ),
    ...lineSections(
      bold('Please check'),
      [...preview.warnings.map((warning) => `• ${typed(warning)}`), ...unusedLines(preview)],
      { maxSections: 3, more: (count) => `… and ${count} more.` },
    ),
    ...(sprints.length > 0
      ? [
          context(
            'Imported sprints count as history from then on. They are posted nowhere and can’t be reopened.',
          ),
        ]
      : []),
  ];
}

function leadWords({ sprints, leftOut }: ImportPreview): string {
  const [first, last] = [sprints[0], sprints.at(-1)];
  if (first && last) return `${counted(sprints.length, 'sprint')} to import, ${spanOf(first, last)}`;
  return leftOut.length > 0
    ? 'Nothing new to import: every sprint of the file is left out.'
    : 'Nothing to import: there is no sprint in the file.';
}

/** `from Mon 5 Jan 2026 to Fri 16 Jan 2026` */
function spanOf(first: PreviewedSprint, last: PreviewedSprint): string {
  return `from ${datedDay(first.startsOn)} to ${datedDay(last.endsOn)}`;
}

function knownWords({ sprints, cards, answers }: ImportPreview): string {
  const withCards = sprints.filter((sprint) => sprint.cards > 0).length;
  if (cards === 0) {
    return 'Only the sums of these sprints are given, not their cards: that is enough for ranges and release forecasts, while the odds by size need cards.';
  }
  const of = withCards === sprints.length ? '' : ` of ${counted(withCards, 'sprint')}`;
  return `With ${counted(cards, 'card')}${of} and ${counted(answers, 'answer')} about them.`;
}

function sprintLine({
  name,
  startsOn,
  endsOn,
  commitmentPoints,
  velocityPoints,
  cards,
}: PreviewedSprint): string {
  const finished =
    velocityPoints === undefined ? 'finished not said' : `finished ${formatPoints(velocityPoints)}`;
  const ofCards = cards === 0 ? '' : `, ${counted(cards, 'card')}`;
  return `• ${typed(name)} (${datedDay(startsOn)} to ${datedDay(endsOn)}): committed ${formatPoints(commitmentPoints)}, ${finished}${ofCards}`;
}

function unusedLines({ files }: ImportPreview): string[] {
  return files.flatMap(({ fileName, unused }) => {
    if (unused.length === 0) return [];
    const named = unused
      .slice(0, UNUSED_NAMED)
      .map((column) => `“${typed(shortened(plainTyped(column), COLUMN_NAME_MAX_LENGTH))}”`);
    const more = unused.length - named.length;
    const all = listed([...named, ...(more > 0 ? [`${more} more`] : [])]);
    return [
      `• ${typed(shortened(fileName, FILE_NAME_MAX_LENGTH))}: the ${unused.length === 1 ? 'column' : 'columns'} ${all} ${unused.length === 1 ? 'is' : 'are'} not known here and not used.`,
    ];
  });
}
