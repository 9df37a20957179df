/**
 * Shows the messages of a place as a log, oldest first. Only what changed is redrawn, so that a message that
 * arrives moves neither the reader's place nor the caret of somebody who fills in an answer.
 */
import type { PageState, SeenMessage } from '../stand-in/page-state.ts';
import { blockNodes } from './blocks.ts';
import { type Desk, DIRECT, nameOf, wordingOf } from './desk.ts';
import { element } from './dom.ts';
import { fileNodes, fileWords } from './file-elements.ts';
import { longDate, momentOfTs, timeOfDay } from './format-date.ts';
import { mrkdwnNodes } from './mrkdwn-dom.ts';
import { type Act, messageSurface } from './surface.ts';

/** How far from the end, in pixels, still counts as reading the newest. */
const NEAR_END_PX = 60;

interface Row {
  drawn: string;
  node: HTMLElement;
}

/** What one can do with a message besides pressing its own buttons. */
interface MessageMenu {
  openThread(ts: string): void;
  pullIn(message: SeenMessage): void;
}

export class Stream {
  readonly #box: HTMLElement;
  readonly #act: Act;
  readonly #menu: MessageMenu;
  #rows = new Map<string, Row>();
  #shown = '';

  constructor(box: HTMLElement, act: Act, menu: MessageMenu) {
    this.#box = box;
    this.#act = act;
    this.#menu = menu;
    // Some browsers let the keyboard scroll only what can hold the focus.
    box.tabIndex = 0;
    // An image that arrives late makes the log longer, and so does zoom; who read the newest goes on reading the newest.
    const stay = (): void => {
      if (this.#stayAtEnd) this.toEnd();
    };
    box.addEventListener('load', stay, true);
    new ResizeObserver(stay).observe(box);
    box.addEventListener('scroll', () => this.#noticeScroll());
  }

  #stayAtEnd = true;
  /** Where `toEnd` scrolled, to tell that from the reader's own scrolling. */
  #scrolledTo = 0;

  isAtEnd(): boolean {
    return this.#box.scrollHeight - this.#box.scrollTop - this.#box.clientHeight < NEAR_END_PX;
  }

  /** Browsers tell of a scroll only with the next picture; a message may come before that. */
  #noticeScroll(): void {
    if (this.#scrolledTo !== this.#box.scrollTop) this.#stayAtEnd = this.isAtEnd();
  }

  /** To the newest message, with the words to which it is the picture; to its beginning when all is not seen at once. */
  toEnd(): void {
    let newest = this.#box.lastElementChild as HTMLElement | null;
    const heading = this.#box.querySelector<HTMLElement>('.day')?.offsetHeight ?? 0;
    const room = this.#box.clientHeight - heading;
    const words = newest?.previousElementSibling;
    if (newest?.classList.contains('picture-alone') && words instanceof HTMLElement) newest = words;
    const isLong = newest !== null && this.#box.scrollHeight - newest.offsetTop > room;
    this.#box.scrollTop = isLong && newest ? newest.offsetTop - heading : this.#box.scrollHeight;
    this.#scrolledTo = this.#box.scrollTop;
    this.#stayAtEnd = true;
  }

  /** Shows a place; true when messages came that the reader, who has scrolled up, does not see. */
  draw(desk: Desk, state: PageState, place: string): boolean {
    const shown = `${state.me.id}/${place}/${desk.thread ?? ''}/${desk.asText}`;
    this.#noticeScroll();
    const wasAtEnd = this.#stayAtEnd;
    const isOtherPlace = shown !== this.#shown;
    if (isOtherPlace) this.#rows = new Map();
    this.#shown = shown;
    const known = this.#rows.size;
    const all = state.messages[place] ?? [];
    const { thread } = desk;
    const read = all.filter(({ ts, threadTs }) =>
      thread === undefined ? threadTs === undefined : ts === thread || threadTs === thread,
    );
    const replies = Map.groupBy(all, ({ threadTs }) => threadTs);
    this.#place(this.#nodes(desk, state, read, (ts) => replies.get(ts)?.length ?? 0));
    if (isOtherPlace || wasAtEnd) this.toEnd();
    return !isOtherPlace && !wasAtEnd && this.#rows.size > known;
  }

  /** Shows something else in the place of messages. */
  drawOther(name: string, nodes: Node[]): void {
    this.#rows = new Map();
    const top = this.#shown === name ? this.#box.scrollTop : 0;
    this.#shown = name;
    this.#box.replaceChildren(...nodes);
    this.#box.scrollTop = top;
    this.#stayAtEnd = false;
  }

  #nodes(desk: Desk, state: PageState, messages: SeenMessage[], repliesTo: (ts: string) => number): Node[] {
    if (messages.length === 0) {
      return [element('p', { class: 'empty' }, ['Nothing has been written here yet.'])];
    }
    const rows = new Map<string, Row>();
    const nodes: Node[] = [];
    const { timeZone } = wordingOf(desk, state);
    let day = '';
    for (const message of messages) {
      const itsDay = longDate(momentOfTs(message.ts), timeZone);
      if (itsDay !== day) nodes.push(this.#dayNode(itsDay));
      day = itsDay;
      const replies = repliesTo(message.ts);
      const drawn = JSON.stringify([message, replies]);
      const kept = this.#rows.get(message.ts);
      const row =
        kept?.drawn === drawn ? kept : { drawn, node: this.#messageNode(desk, state, message, replies) };
      rows.set(message.ts, row);
      nodes.push(row.node);
    }
    this.#rows = rows;
    return nodes;
  }

  #dayNode(day: string): Node {
    return element('h3', { class: 'day' }, [element('span', {}, [day])]);
  }

  #messageNode(desk: Desk, state: PageState, message: SeenMessage, replies: number): HTMLElement {
    const wording = wordingOf(desk, state);
    const moment = momentOfTs(message.ts);
    const author = nameOf(state.users.find((user) => user.id === message.user)) ?? message.user;
    const edited = message.editedTs && timeOfDay(momentOfTs(message.editedTs), wording.timeZone);
    const head = element('p', { class: 'head' }, [
      element('span', { class: 'author' }, [author]),
      message.byBot && element('span', { class: 'tag' }, ['app']),
      message.ephemeral && element('span', { class: 'tag private' }, ['only you see this']),
      edited && element('span', { class: 'tag' }, [`updated ${edited}`]),
    ]);
    const body = desk.asText
      ? fallbackNodes(message)
      : message.blocks.length > 0
        ? blockNodes(message.blocks, messageSurface(desk, state, message, this.#act))
        : message.text === '' && message.files.length > 0
          ? []
          : [element('div', { class: 'prose block' }, mrkdwnNodes(message.text, wording))];
    const files = desk.asText ? [] : fileNodes(message, state.me.id);
    const isPictureAlone = message.blocks.length > 0 && message.blocks.every(({ type }) => type === 'image');
    const kind = [
      'entry',
      message.ephemeral && 'ephemeral',
      message.byBot && 'by-app',
      isPictureAlone && 'picture-alone',
    ]
      .filter(Boolean)
      .join(' ');
    return element('article', { class: kind, 'data-ts': message.ts }, [
      element('time', { datetime: moment.toISOString() }, [timeOfDay(moment, wording.timeZone)]),
      element('div', { class: 'entry-body' }, [
        head,
        ...body,
        ...files,
        ...this.#menuNodes(desk, message, author, replies),
      ]),
    ]);
  }

  /** What one person alone sees has no menu on the platform. */
  #menuNodes(desk: Desk, message: SeenMessage, author: string, replies: number): Node[] {
    if (message.ephemeral) return [];
    const about = `, message of ${author}, ${timeOfDay(momentOfTs(message.ts), 'UTC')}`;
    const inChannel = desk.place !== DIRECT && desk.thread === undefined;
    const count = replies === 1 ? '1 reply' : `${replies} replies`;
    const items: [string, string, () => void][] = [
      ...(inChannel
        ? [
            ['thread', replies > 0 ? count : 'Reply in thread', () => this.#menu.openThread(message.ts)] as [
              string,
              string,
              () => void,
            ],
          ]
        : []),
      ['pull', 'Pull this in as a card', () => this.#menu.pullIn(message)],
    ];
    const buttons = items.map(([key, words, click]) =>
      element(
        'button',
        { type: 'button', class: 'button quiet', 'data-key': `${key}/${message.ts}` },
        [words, element('span', { class: 'unseen' }, [about])],
        { click },
      ),
    );
    const menu = element('details', { class: 'message-menu' }, [
      element('summary', { 'data-key': `menu/${message.ts}` }, [
        replies > 0 && inChannel ? `More (${count})` : 'More',
        element('span', { class: 'unseen' }, [about]),
      ]),
      element('div', {}, buttons),
    ]);
    return [menu];
  }

  /** Puts the nodes in order without touching those that are where they should be. */
  #place(nodes: Node[]): void {
    const wanted = new Set(nodes);
    for (const old of [...this.#box.childNodes]) if (!wanted.has(old)) old.remove();
    nodes.forEach((node, index) => {
      const there = this.#box.childNodes[index];
      if (there !== node) this.#box.insertBefore(node, there ?? null);
    });
  }
}

/** What a screen reader gets: the text, then each image in words. */
function fallbackNodes(message: SeenMessage): Node[] {
  const alts = message.blocks.filter((block) => block.type === 'image').map((block) => block.alt_text);
  return [
    element('p', { class: 'plain block' }, [message.text || '(This message has no text to read out.)']),
    ...fileWords(message).map((words) => element('p', { class: 'plain block' }, [words])),
    ...alts.map((words) => element('p', { class: 'plain block' }, [`Image: ${words}`])),
  ];
}
