import { COMMAND } from '../ids.ts';
import { code } from './block-builders.ts';

/** How a team gets a history without waiting for it. */
export function importHint(): string {
  return `Every sprint that closes here adds one. You need not wait for them: a facilitator can bring past sprints in with ${code(`${COMMAND} import`)}.`;
}
