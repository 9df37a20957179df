/**
 * Shows the form on top of a member's pile of forms. The browser's own modal dialog keeps the focus inside.
 * A refused form keeps everything that was typed.
 */
import type { Outcome, PageState, View } from '../stand-in/page-state.ts';
import { blockNodes } from './blocks.ts';
import { whileBusy } from './button-elements.ts';
import type { Desk } from './desk.ts';
import { element, freshId, keepingFocus, rememberFocus } from './dom.ts';
import { changeForm, closeForm, submitForm } from './page-api.ts';
import { type Act, viewSurface } from './surface.ts';

interface Titled {
  text: string;
}

export class FormDialog {
  readonly #dialog: HTMLDialogElement;
  readonly #desk: Desk;
  readonly #act: Act;
  readonly #refresh: () => Promise<void>;
  #drawn = '';
  #viewId = '';
  #problem = '';
  #putFocusBack = (): void => undefined;

  constructor(dialog: HTMLDialogElement, desk: Desk, act: Act, refresh: () => Promise<void>) {
    this.#dialog = dialog;
    this.#desk = desk;
    this.#act = act;
    this.#refresh = refresh;
    dialog.addEventListener('cancel', (event) => {
      event.preventDefault();
      void this.#close();
    });
  }

  get isOpen(): boolean {
    return this.#dialog.open;
  }

  /** Says in the form what went wrong with a click. */
  report(problem: string): void {
    this.#problem = problem;
    if (this.#desk.state) this.draw(this.#desk.state);
  }

  draw(state: PageState): void {
    const view = state.view;
    if (!view) {
      this.#viewId = this.#drawn = this.#problem = '';
      if (!this.#dialog.open) return;
      this.#dialog.close();
      this.#putFocusBack();
      return;
    }
    const isOther = view.id !== this.#viewId;
    if (isOther) this.#problem = '';
    const errors = this.#desk.fieldErrors.get(view.id);
    const drawn = JSON.stringify([view.id, view.hash, view.blocks, errors, this.#problem]);
    if (drawn === this.#drawn) return;
    this.#drawn = drawn;
    this.#viewId = view.id;
    const scrolled = this.#dialog.querySelector('.sheet-body')?.scrollTop ?? 0;
    keepingFocus(() => this.#dialog.replaceChildren(this.#sheet(state, view)));
    if (!this.#dialog.open) {
      this.#putFocusBack = rememberFocus();
      this.#dialog.showModal();
    }
    const body = this.#dialog.querySelector('.sheet-body');
    if (body) body.scrollTop = isOther ? 0 : scrolled;
    if (isOther) this.#focusFirst('.sheet-body [data-key]');
  }

  #sheet(state: PageState, view: View): HTMLElement {
    const titleId = freshId();
    this.#dialog.setAttribute('aria-labelledby', titleId);
    const submit = view.submit as Titled | null | undefined;
    const close = element('button', { type: 'button', class: 'button', 'data-key': `${view.id}/close` }, [
      (view.close as Titled | null | undefined)?.text ?? 'Close',
    ]);
    close.addEventListener('click', () => void whileBusy(close, () => this.#close()));
    const send =
      submit &&
      element('button', { type: 'submit', class: 'button primary', 'data-key': `${view.id}/submit` }, [
        submit.text,
      ]);
    const form = element('form', { class: 'sheet', novalidate: true, autocomplete: 'off' }, [
      element('header', { class: 'sheet-head' }, [
        element('h2', { id: titleId }, [(view.title as Titled | null | undefined)?.text ?? 'Form']),
      ]),
      element(
        'div',
        { class: 'sheet-body' },
        blockNodes(view.blocks, {
          ...viewSurface(this.#desk, state, view, this.#act),
          change: (blockId) => void this.#change(state.me.id, view.id, blockId),
        }),
      ),
      this.#problem !== '' && element('p', { class: 'error problem', role: 'alert' }, [this.#problem]),
      element('footer', { class: 'sheet-foot' }, [close, send]),
    ]);
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      if (send) void whileBusy(send, () => this.#submit(state.me.id, view.id));
    });
    return form;
  }

  async #change(as: string, viewId: string, blockId: string): Promise<void> {
    const outcome = await this.#try(() => changeForm(as, viewId, blockId, this.#desk.values.of(viewId)));
    await this.#refresh();
    if (!outcome.ok) this.report(outcome.reason);
  }

  async #submit(as: string, viewId: string): Promise<void> {
    const asked = new Set(this.#fields().map(({ dataset }) => dataset.block));
    await this.#desk.pickedFiles.settled();
    const outcome = await this.#try(() => submitForm(as, viewId, this.#desk.values.of(viewId)));
    const errors = outcome.ok ? undefined : outcome.fieldErrors;
    if (errors && Object.keys(errors).length > 0) this.#desk.fieldErrors.set(viewId, errors);
    else this.#desk.fieldErrors.delete(viewId);
    this.#problem = outcome.ok ? '' : outcome.reason;
    await this.#refresh();
    if (!outcome.ok) {
      this.report(outcome.reason);
      this.#focusFirst('.wrong [data-key]');
    } else if (this.#viewId === viewId) {
      this.#leadTo(this.#fields().filter(({ dataset }) => !asked.has(dataset.block)));
    }
  }

  #fields(): HTMLElement[] {
    return [...this.#dialog.querySelectorAll<HTMLElement>('.field')];
  }

  /** To what a form that asks for more wants to know by all means, else to the first of what is new; its beginning says why. */
  #leadTo(fields: readonly HTMLElement[]): void {
    const field = fields.find(({ classList }) => classList.contains('needed')) ?? fields[0];
    const body = this.#dialog.querySelector('.sheet-body');
    if (!field || !body) return;
    body.scrollTop = 0;
    field.querySelector<HTMLElement>('[data-key]')?.focus();
  }

  async #close(): Promise<void> {
    const [as, viewId] = [this.#desk.state?.me.id, this.#viewId];
    if (!as || !viewId) return;
    const outcome = await this.#try(() => closeForm(as, viewId));
    if (outcome.ok) {
      this.#desk.values.forget(viewId);
      this.#desk.fieldErrors.delete(viewId);
    }
    await this.#refresh();
    if (!outcome.ok) this.report(outcome.reason);
  }

  async #try(work: () => Promise<Outcome>): Promise<Outcome> {
    try {
      return await work();
    } catch (error) {
      return { ok: false, reason: error instanceof Error ? error.message : String(error) };
    }
  }

  #focusFirst(selector: string): void {
    const first = this.#dialog.querySelector<HTMLElement>(selector);
    (first ?? this.#dialog.querySelector<HTMLElement>('.sheet-foot button'))?.focus();
  }
}
