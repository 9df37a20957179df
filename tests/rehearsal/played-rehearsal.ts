import { createLogger } from '../../src/logger.ts';
import { Player } from '../../src/rehearsal/player.ts';
import { type Rehearsal, type RehearsalOptions, startRehearsal } from '../../src/rehearsal/rehearsal.ts';
import { readScenario, type Scenario } from '../../src/rehearsal/scenario.ts';
import { newPgliteImage } from '../support/databases.ts';

/** The whole bot in a stand-in workspace of its own, in which the scenario was played to its end. Stop it afterwards. */
export async function playedRehearsal(
  scenario: Scenario,
  more: Pick<RehearsalOptions, 'faultFor'> = {},
): Promise<Rehearsal> {
  const rehearsal = await startRehearsal({
    ...more,
    scenario,
    logger: createLogger({ level: 'error', destination: process.stderr }),
    memoryImage: await newPgliteImage(),
  });
  await new Player(rehearsal, scenario).playAll();
  return rehearsal;
}

/** One of the scenarios that come with the rehearsal, by its file's name. */
export async function playedSample(
  name: string,
  more: Pick<RehearsalOptions, 'faultFor'> = {},
): Promise<Rehearsal> {
  const file = new URL(`../../src/rehearsal/scenarios/${name}.json`, import.meta.url);
  return playedRehearsal(await readScenario(file), more);
}
