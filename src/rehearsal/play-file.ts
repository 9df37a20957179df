/** Plays a scenario file without a browser, for reading or as one JSON document of results. */
import type { Logger } from '../logger.ts';
import { say } from '../words/say.ts';
import { type PlayedPost, type PlayResult, playResult } from './play-result.ts';
import { Player } from './player.ts';
import { startRehearsal } from './rehearsal.ts';
import type { Scenario } from './scenario.ts';

interface PlayOptions {
  readonly scenario: Scenario;
  readonly logger: Logger;
  /** Hears of each step as it is played. */
  readonly onStep?: (did: string) => void;
  /** An image for the database to start from, as for `openDatabase`. */
  readonly memoryImage?: Blob | undefined;
}

export async function playScenario({
  scenario,
  logger,
  onStep,
  memoryImage,
}: PlayOptions): Promise<PlayResult> {
  const rehearsal = await startRehearsal({ scenario, logger, memoryImage });
  try {
    const player = new Player(rehearsal, scenario);
    await player.playAll(onStep);
    return await playResult(rehearsal, player);
  } finally {
    await rehearsal.stop();
  }
}

/** A play as text for reading: every post in order, then what the bot refused. */
export function printPlay({ sprints, posts, refusals }: PlayResult): string {
  const sections = [
    ...posts.map(printPost),
    ...sprints.flatMap((sprint) => [
      heading(
        say('rehearsal-sprint-heading', { sprint: sprint.name, first: sprint.startsOn, last: sprint.endsOn }),
      ),
      ...sprint.posts.map(printPost),
    ]),
  ];
  if (refusals.length > 0) {
    sections.push(heading(say('rehearsal-refused-heading')));
    sections.push(
      ...refusals.map(({ sprint, event, words }) => `${sprint} ${JSON.stringify(event)}\n  ${words}`),
    );
  }
  return sections.join('\n\n');
}

function heading(text: string): string {
  return `${text}\n${'='.repeat(text.length)}`;
}

function printPost(post: PlayedPost): string {
  const to = 'channel' in post.to ? `#${post.to.channel}` : post.to.member;
  const at = post.at.slice(0, 16).replace('T', ' ');
  const id = post.earlierTexts.length > 0 ? 'rehearsal-post-updated' : 'rehearsal-post';
  const head = say(id, { seen: post.onlyForThem ? 'by-them-only' : 'by-all', at, to });
  const lines = [
    post.text,
    ...post.altTexts.map((altText) => say('rehearsal-image', { text: altText })),
    ...post.fileNames.map((name) => say('rehearsal-file', { name })),
  ].join('\n');
  return `${head}\n${lines.replace(/^/gm, '  ')}`;
}
