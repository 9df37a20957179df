/** Whose a request is, read in one place for all that need to know. */
import { describe, expect, it, vi } from 'vitest';
import { removalEvents } from '../../../src/slack/workspaces/removals.ts';
import { workspaceIdOf } from '../../../src/slack/workspaces/workspace-of.ts';

describe('the workspace of a request', () => {
  it.each([
    ['that of an event or a command', { team_id: 'T1' }, 'T1'],
    ['that of a button', { team: { id: 'T1' } }, 'T1'],
    [
      'that of the app, in a form of somebody from elsewhere',
      { team: { id: 'T2' }, view: { app_installed_team_id: 'T1' } },
      'T1',
    ],
    ['unknown where two are named', { team_id: 'T1', team: { id: 'T2' } }, undefined],
    ['unknown where none is', {}, undefined],
  ])('is %s', (_, body, expected) => {
    expect(workspaceIdOf(body)).toBe(expected);
  });

  it('is the same for a removal: one that names two workspaces removes nothing', async () => {
    const wasRemoved = vi.fn(async () => undefined);
    const hear = removalEvents({ wasRemoved, tokenIsVoid: async () => 'kept' });
    const send = async (more: object): Promise<void> => {
      const event = { type: 'event_callback', event_id: 'Ev1', event: { type: 'app_uninstalled' } };
      const body = { ...event, team_id: 'T1', ...more };
      await hear({ body, next: async () => undefined } as unknown as Parameters<typeof hear>[0]);
    };
    await send({ team: { id: 'T2' } });
    expect(wasRemoved).not.toHaveBeenCalled();
    await send({});
    expect(wasRemoved).toHaveBeenCalledWith('T1');
  });
});
