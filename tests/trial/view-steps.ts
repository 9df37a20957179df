/** Home pages and forms, what needs a press of a button, and the bot’s own views. Behaviours by their number in docs/platform.md. */
import { fullWorld } from '../slack/views/full-world.ts';
import { pictureBlock } from './picture-steps.ts';
import {
  codeOf,
  NotTried,
  needed,
  okOf,
  type Press,
  post,
  section,
  type TrialStep,
  type TrialWorld,
} from './trial-step.ts';

const TRIGGER_LIFE_MS = 3_000;

export const BUTTON = {
  begin: 'trial_begin',
  late: 'trial_late',
  sees: 'trial_sees',
  doesNotSee: 'trial_does_not_see',
} as const;

const plain = (text: string) => ({ type: 'plain_text', text });
const button = (actionId: string, label: string) => ({
  type: 'button',
  action_id: actionId,
  value: actionId,
  text: plain(label),
});
const homeOf = (...blocks: object[]) => ({ type: 'home', blocks });
const form = {
  type: 'modal',
  title: plain('A trial'),
  close: plain('Close'),
  blocks: [section('You can close this.')],
};

export function homeSteps(world: TrialWorld): TrialStep[] {
  const publish = (view: object, more: Record<string, unknown> = {}) =>
    world.client.apiCall('views.publish', { user_id: world.personId, view, ...more });
  // Made before the first call: it takes seconds, in which an idle connection would be closed on the other side.
  const views = fullWorld('Repair the tide gauge on the north quay ');
  return [
    {
      what: 'views.publish of a home page',
      expected: ['ok'],
      run: () => okOf(publish(homeOf(section('A trial of Loadline; open this page again later.')))),
    },
    {
      what: 'views.publish with the hash of no page (43)',
      expected: ['hash_conflict'],
      run: () => okOf(publish(homeOf(section('x')), { hash: '1000000000.aaaaaaaa' })),
    },
    {
      what: 'views.publish, 101 blocks (4)',
      expected: ['invalid_arguments'],
      run: () => okOf(publish(homeOf(...Array(101).fill(section('x'))))),
    },
    {
      what: 'views.publish with a private picture',
      expected: [],
      run: () =>
        okOf(
          publish(
            homeOf(section('A picture:'), pictureBlock(needed(world.pictureId, 'there is no picture'))),
          ),
        ),
    },
    {
      what: 'blocks.validate of every message and form of the bot at its largest',
      expected: ['ok'],
      run: () => validateAll(world, views),
    },
  ];
}

/** @returns `ok`, or which views are refused and why */
async function validateAll(
  world: TrialWorld,
  { messages, forms }: ReturnType<typeof fullWorld>,
): Promise<string> {
  const pictureId = needed(world.pictureId, 'there is no picture');
  const checks = [
    ...Object.entries(messages).map(([name, { text, blocks }]) => ({ name, message: { text, blocks } })),
    ...Object.entries(forms).map(([name, view]) => ({ name, view })),
  ];
  const refused: string[] = [];
  for (const { name, ...content } of checks) {
    const [kind, value] = Object.entries(content)[0] as [string, object];
    const json = JSON.stringify(value).replaceAll('F0CHART', pictureId);
    const came = await okOf(world.client.apiCall('blocks.validate', { [kind]: json })).catch(codeOf);
    if (came !== 'ok') refused.push(`${name}: ${came}`);
  }
  return refused.length === 0 ? 'ok' : refused.join('; ');
}

export function pressSteps(world: TrialWorld): TrialStep[] {
  const { client } = world;
  let press: Press | undefined;
  let viewId: string | undefined;
  const pressed = () => needed(press, 'nobody pressed the button');
  const open = ({ triggerId }: Press) => client.apiCall('views.open', { trigger_id: triggerId, view: form });
  const ask = async (actionId: string, words: string) => {
    const presses = needed(world.presses, 'LOADLINE_APP_TOKEN is not set, so presses can’t be heard');
    const next = presses.next(actionId);
    await post(world, {
      channel: world.personId,
      text: words,
      blocks: [section(words), { type: 'actions', elements: [button(actionId, 'Press me')] }],
    });
    return await next;
  };
  const respond = async (content: Record<string, unknown>) => {
    const answer = await fetch(pressed().responseUrl, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ replace_original: false, ...content }),
    });
    const said = await answer.text();
    if (answer.ok && (said === 'ok' || /"ok":\s*true/.test(said))) return 'ok';
    return `${/[a-z]+(?:_[a-z]+)+/.exec(said)?.[0] ?? 'refused'}, status ${answer.status}`;
  };

  return [
    {
      what: 'a press of the button in your direct messages',
      expected: ['ok'],
      run: async () => {
        press = await ask(BUTTON.begin, 'A trial of Loadline: please press, and close the form that opens.');
        return 'ok';
      },
    },
    {
      what: 'views.open with its trigger',
      expected: ['ok'],
      run: async () => {
        const answer = (await open(pressed())) as { view?: { id?: string } };
        viewId = answer.view?.id;
        return 'ok';
      },
    },
    {
      what: 'views.open with the same trigger (40, 41)',
      expected: ['exchanged_trigger_id'],
      run: () => okOf(open(pressed())),
    },
    {
      what: 'views.update with the hash of no form (43)',
      expected: ['hash_conflict'],
      run: () =>
        okOf(
          client.apiCall('views.update', {
            view_id: needed(viewId, 'no form was opened'),
            hash: '1000000000.aaaaaaaa',
            view: form,
          }),
        ),
    },
    {
      what: 'views.update of a form that is not there (42)',
      expected: ['not_found'],
      run: () => okOf(client.apiCall('views.update', { view_id: 'V0000000000', view: form })),
    },
    {
      what: 'the response address with a private picture',
      expected: [],
      run: () =>
        respond({
          text: 'A trial of pictures',
          blocks: [pictureBlock(needed(world.pictureId, 'there is no picture'))],
        }),
    },
    {
      what: 'the response address until it refuses: uses in all (51)',
      expected: [],
      run: async () => {
        for (let use = 2; use <= 8; use += 1) {
          const came = await respond({ text: `A trial of Loadline, ${use}` });
          if (came !== 'ok') return `${use - 1} uses, then ${came}`;
        }
        return '8 uses and more';
      },
    },
    {
      what: 'views.open more than three seconds after a press (40, 41)',
      expected: ['expired_trigger_id'],
      run: async () => {
        const late = await ask(
          BUTTON.late,
          'A trial of Loadline: please press once more; no form will open.',
        );
        await world.wait(TRIGGER_LIFE_MS + 500);
        return okOf(open(late));
      },
    },
    {
      what: 'a private picture in a channel, as somebody else there sees it',
      expected: [],
      run: async () => {
        const pictureId = needed(world.pictureId, 'there is no picture');
        const presses = needed(world.presses, 'LOADLINE_APP_TOKEN is not set, so presses can’t be heard');
        const either = Promise.any([presses.next(BUTTON.sees), presses.next(BUTTON.doesNotSee)]).catch(() => {
          throw new NotTried('nobody pressed the button');
        });
        const words = 'A trial of Loadline. Somebody who did not start it: do you see a picture here?';
        await post(world, {
          text: words,
          blocks: [
            section(words),
            pictureBlock(pictureId),
            {
              type: 'actions',
              elements: [button(BUTTON.sees, 'I see it'), button(BUTTON.doesNotSee, 'I don’t')],
            },
          ],
        });
        return (await either).value === BUTTON.sees ? 'they see it' : 'they don’t see it';
      },
    },
  ];
}
