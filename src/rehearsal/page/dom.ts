/**
 * Builds DOM nodes. Strings become text nodes, never markup: this is the only way the page makes elements,
 * so nothing that somebody typed can turn into code.
 */
export type Child = Node | string | null | undefined | false;
type Attribute = string | number | boolean | undefined;
type Listeners = { [E in keyof HTMLElementEventMap]?: (event: HTMLElementEventMap[E]) => void };

/** Creates an element. An attribute that is `false` or `undefined` is left out, `true` is set empty. */
export function element<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Record<string, Attribute> = {},
  children: Child[] = [],
  listeners: Listeners = {},
): HTMLElementTagNameMap[K] {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    node.setAttribute(name, value === true ? '' : String(value));
  }
  append(node, children);
  for (const [name, listener] of Object.entries(listeners)) {
    node.addEventListener(name, listener as EventListener);
  }
  return node;
}

/** Appends children, skipping the absent ones. */
export function append(parent: Node, children: Child[]): void {
  for (const child of children) {
    if (child === undefined || child === null || child === false) continue;
    parent.appendChild(typeof child === 'string' ? document.createTextNode(child) : child);
  }
}

/** The element of the page with this id; throws when index.html and the code have drifted apart. */
export function byId<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof kind)) throw new Error(`index.html has no ${kind.name} with the id ${id}`);
  return found;
}

let lastId = 0;

/** An id that no other element has, to tie labels, hints and errors to their field. */
export function freshId(): string {
  lastId += 1;
  return `f${lastId}`;
}

/**
 * Runs a redraw and puts the keyboard focus back on the element with the same `data-key`, with the caret
 * where it was: a message that arrives must not interrupt somebody's typing.
 */
export function keepingFocus(redraw: () => void): void {
  const putBack = rememberFocus();
  redraw();
  putBack();
}

/**
 * Remembers where the keyboard focus is. The function that it gives back puts it there again; when the element is gone,
 * on the first one in the same message, else in the message box.
 */
export function rememberFocus(): () => void {
  const before = document.activeElement;
  const { key } = before instanceof HTMLElement ? before.dataset : {};
  const message = before?.closest<HTMLElement>('[data-ts]')?.dataset.ts;
  const caret = caretOf(before);
  return () => {
    if (!key || (document.activeElement === before && before?.isConnected)) return;
    const withKeys = [...document.querySelectorAll<HTMLElement>('[data-key]')];
    const after =
      withKeys.find(({ dataset }) => dataset.key === key) ??
      withKeys.find((one) => message && one.closest<HTMLElement>('[data-ts]')?.dataset.ts === message) ??
      withKeys.find(({ id }) => id === 'composer-box');
    after?.focus({ preventScroll: true });
    if (caret && (after instanceof HTMLInputElement || after instanceof HTMLTextAreaElement)) {
      after.setSelectionRange(caret[0], caret[1]);
    }
  };
}

function caretOf(node: Element | null): [number, number] | undefined {
  if (!(node instanceof HTMLInputElement || node instanceof HTMLTextAreaElement)) return undefined;
  if (node.selectionStart === null || node.selectionEnd === null) return undefined;
  return [node.selectionStart, node.selectionEnd];
}
