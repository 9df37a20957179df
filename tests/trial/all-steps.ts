/** The whole trial, in order. */
import { messageSteps } from './message-steps.ts';
import { pictureSteps } from './picture-steps.ts';
import { placeSteps } from './place-steps.ts';
import type { TrialStep, TrialWorld } from './trial-step.ts';
import { homeSteps, pressSteps } from './view-steps.ts';

export function allSteps(world: TrialWorld): TrialStep[] {
  return [
    ...placeSteps(world),
    ...messageSteps(world),
    ...pictureSteps(world),
    ...homeSteps(world),
    ...pressSteps(world),
    {
      what: 'chat.delete of every message that the trial posted',
      expected: ['ok'],
      run: async () => {
        for (const { channel, ts } of world.posted) await world.client.chat.delete({ channel, ts });
        return 'ok';
      },
    },
  ];
}
