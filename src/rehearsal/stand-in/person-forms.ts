/**
 * Filling in, submitting and closing forms, and what the app's answer to a submission does.
 * docs.slack.dev/surfaces/modals
 */
import type { BotLink } from './bot-link.ts';
import { fieldErrors, type PickedFiles, putIn } from './form-inputs.ts';
import { fileJson } from './message-json.ts';
import type { InputValue, InputValues, JsonObject, Outcome, SeenFile, View } from './page-state.ts';
import { closedPayload, submissionPayload, viewClickPayload } from './payloads.ts';
import { failed } from './person-talk.ts';
import { seenFile } from './seen.ts';
import { asksForFiles, isViewTooLarge, viewProblems } from './shapes/check-blocks.ts';
import type { Stage } from './stage.ts';

export class PersonForms {
  readonly #stage: Stage;
  readonly #bot: BotLink;

  constructor(stage: Stage, bot: BotLink) {
    this.#stage = stage;
    this.#bot = bot;
  }

  /**
   * Puts values into the inputs of an open form, by action id or block id.
   * @throws Error when no form of this id is on top, or an id means no input or several
   */
  fill(userId: string, viewId: string, values: Record<string, InputValue>): void {
    const view = this.#top(userId, viewId);
    if (!view) throw new Error(`the form ${viewId} is not on top for ${userId}`);
    const inputs = view.blocks
      .filter((block) => block.type === 'input')
      .map((block) => ({
        blockId: String(block.block_id),
        actionId: String((block.element as JsonObject).action_id),
      }));
    for (const [key, value] of Object.entries(values)) {
      const meant = inputs.filter((one) => one.actionId === key || one.blockId === key);
      const [input] = meant;
      if (!input || meant.length > 1)
        throw new Error(`${key} means ${meant.length} inputs of the form ${viewId}`);
      const values = { [input.blockId]: { [input.actionId]: value } };
      putIn(view.blocks, view.state.values, values, this.#pickedBy(userId));
    }
    this.#stage.changed();
  }

  /**
   * Changes one input of the form on top. The app hears of it at once if the input says so.
   * docs.slack.dev/reference/block-kit/blocks/input-block (`dispatch_action`)
   *
   * @param state what the page holds in its inputs, the change among it
   */
  async change(userId: string, viewId: string, blockId: string, state: InputValues): Promise<Outcome> {
    const person = this.#stage.workspace.actor(userId);
    const view = this.#top(userId, viewId);
    if (!view) return gone();
    putIn(view.blocks, view.state.values, state, this.#pickedBy(userId));
    const block = view.blocks.find((one) => one.block_id === blockId);
    if (block?.dispatch_action !== true) return { ok: true };
    const actionId = String((block.element as JsonObject).action_id);
    const held = view.state.values[blockId]?.[actionId];
    const action = { ...held, block_id: blockId, action_id: actionId, action_ts: this.#stage.log.nextTs() };
    const triggerId = this.#stage.triggers.make(userId);
    const reply = await this.#bot.sendInteraction(
      viewClickPayload(this.#stage, person, view, { action, triggerId }),
    );
    return reply.ok ? { ok: true } : failed(reply);
  }

  /** A file that a person picks from their machine. @returns its id, to fill in a form */
  pickFile(userId: string, name: string, bytes: Buffer): SeenFile {
    this.#stage.workspace.actor(userId);
    return seenFile(this.#stage.files.pick({ name, userId, bytes }));
  }

  /** @param state what the page holds in its inputs; taken over before anything else */
  async submit(userId: string, viewId: string, state: InputValues = {}): Promise<Outcome> {
    const person = this.#stage.workspace.actor(userId);
    const view = this.#top(userId, viewId);
    if (!view) return gone();
    if (view.submit === null) return { ok: false, reason: 'This form has nothing to submit.' };
    try {
      putIn(view.blocks, view.state.values, state, this.#pickedBy(userId));
    } catch (error) {
      return { ok: false, reason: `${error instanceof Error ? error.message : error}.` };
    }
    const errors = fieldErrors(view.blocks, view.state.values);
    if (Object.keys(errors).length > 0)
      return { ok: false, reason: 'Please look at the form again.', fieldErrors: errors };
    const triggerId = this.#stage.triggers.make(userId);
    const reply = await this.#bot.sendInteraction(submissionPayload(this.#stage, person, view, triggerId));
    if (!reply.ok) return failed(reply);
    const outcome = this.#apply(userId, view, reply.body);
    this.#stage.changed();
    return outcome;
  }

  /** Closes the form on top, or all of them when it says so; the app hears of it only if it asked to. */
  async close(userId: string, viewId: string): Promise<Outcome> {
    const person = this.#stage.workspace.actor(userId);
    const view = this.#top(userId, viewId);
    if (!view) return gone();
    const all = view.clear_on_close === true;
    if (all) this.#stage.surfaces.clear(userId);
    else this.#stage.surfaces.pop(userId);
    this.#stage.changed();
    if (view.notify_on_close !== true) return { ok: true };
    const reply = await this.#bot.sendInteraction(closedPayload(this.#stage, person, view, all));
    return reply.ok ? { ok: true } : failed(reply);
  }

  #top(userId: string, viewId: string): View | undefined {
    const top = this.#stage.surfaces.topOf(userId);
    return top?.id === viewId ? top : undefined;
  }

  /** Files that this person has picked, as the platform describes them in forms. */
  #pickedBy(userId: string): PickedFiles {
    return (id) => {
      const file = this.#stage.files.get(id);
      return file?.userId === userId ? fileJson(file, this.#stage) : undefined;
    };
  }

  /** Does what the app's answer to a submission says. What the platform refuses leaves the form as it was. */
  #apply(userId: string, view: View, body: unknown): Outcome {
    const { surfaces } = this.#stage;
    const answer = (typeof body === 'object' && body !== null ? body : {}) as JsonObject;
    switch (answer.response_action) {
      case undefined:
        if (typeof body === 'string') return refused('its answer is no JSON');
        if (surfaces.topOf(userId)?.id === view.id) surfaces.pop(userId);
        return { ok: true };
      case 'clear':
        surfaces.clear(userId);
        return { ok: true };
      case 'errors':
        return errorsOutcome(view, answer.errors);
      case 'update':
      case 'push': {
        const given = answer.view;
        if (isViewTooLarge(given ?? null)) return refused('view_too_large');
        const problems = viewProblems(given, 'modal', this.#stage.files);
        if (problems.length > 0) return refused(problems.join('; '));
        if (asksForFiles(given as JsonObject) && !this.#stage.scopes.has('files:read'))
          return refused('missing_scope');
        if (answer.response_action === 'update') {
          surfaces.update(view, given as JsonObject);
          return { ok: true };
        }
        if (!surfaces.hasRoom(userId)) return refused('three forms are open already');
        surfaces.push(userId, given as JsonObject);
        return { ok: true };
      }
      default:
        return refused(`there is no response_action ${String(answer.response_action)}`);
    }
  }
}

function errorsOutcome(view: View, errors: unknown): Outcome {
  const entries = typeof errors === 'object' && errors !== null ? Object.entries(errors) : [];
  const inputs = new Set(view.blocks.filter((one) => one.type === 'input').map((one) => one.block_id));
  if (entries.length === 0) return refused('it names no field');
  const stray = entries.find(([id, text]) => !inputs.has(id) || typeof text !== 'string' || text === '');
  if (stray) return refused(`it names a field that is no input: ${stray[0]}`);
  return { ok: false, reason: 'Please look at the form again.', fieldErrors: Object.fromEntries(entries) };
}

function refused(why: string): Outcome {
  return { ok: false, reason: `The app answered with something that the platform refuses: ${why}.` };
}

function gone(): Outcome {
  return { ok: false, reason: 'That form is not on top.' };
}
