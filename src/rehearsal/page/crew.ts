/** The list of members one can be, and the list of places one can look at. */
import type { PageChannel, PageState } from '../stand-in/page-state.ts';
import { type Desk, HOME, nameOf, placeKey } from './desk.ts';
import { element, keepingFocus } from './dom.ts';

/** Draws the line that stands for the lists in a narrow window, and opens them. */
export function drawSideLine(button: HTMLElement, desk: Desk, state: PageState): void {
  const here = state.channels.find((channel) => placeKey(channel) === desk.place);
  const elsewhere = state.channels.filter((channel) => channel !== here);
  const unread = elsewhere.reduce((sum, channel) => sum + channel.unread, 0);
  button.replaceChildren(
    element('span', { class: 'unseen' }, ['You are ']),
    element('b', {}, [nameOf(state.me)]),
    ' in ',
    element('b', {}, [here ? placeName(here) : 'Home page']),
    unreadMark(unread) ?? '',
  );
}

/** Draws the members; people only, as nobody can be the app. */
export function drawMembers(
  list: HTMLElement,
  desk: Desk,
  state: PageState,
  pick: (id: string) => void,
): void {
  const members = state.users.filter((user) => !user.isBot);
  const items = members.map((user) => {
    const isMe = user.id === state.me.id;
    const role = desk.about?.roles?.[user.id];
    const unread = isMe ? 0 : (desk.unreadByMember.get(user.id) ?? 0);
    const button = element(
      'button',
      {
        type: 'button',
        class: 'pick',
        'aria-pressed': isMe ? 'true' : 'false',
        'data-key': `member/${user.id}`,
      },
      [
        element('span', { class: 'pick-name' }, [
          nameOf(user),
          role && element('span', { class: 'role' }, [role]),
        ]),
        unreadMark(unread),
      ],
      { click: () => pick(user.id) },
    );
    return element('li', {}, [button]);
  });
  redraw(list, items);
}

/** Draws the places of the member: channels, direct messages, the Home page. */
export function drawPlaces(
  list: HTMLElement,
  desk: Desk,
  state: PageState,
  pick: (id: string) => void,
): void {
  const places = [
    ...state.channels.map((channel) => ({
      id: placeKey(channel),
      label: placeName(channel),
      unread: channel.unread,
    })),
    { id: HOME, label: 'Home page', unread: 0 },
  ];
  const items = places.map(({ id, label, unread }) => {
    const isHere = id === desk.place;
    const button = element(
      'button',
      {
        type: 'button',
        class: 'pick',
        'aria-current': isHere ? 'page' : undefined,
        'data-key': `place/${id}`,
      },
      [element('span', { class: 'pick-name' }, [label]), unreadMark(isHere ? 0 : unread)],
      { click: () => pick(id) },
    );
    return element('li', {}, [button]);
  });
  redraw(list, items);
}

/** Draws the app's shortcuts, which the platform offers wherever somebody is; hidden when there are none. */
export function drawShortcuts(part: HTMLElement, desk: Desk, choose: (callbackId: string) => void): void {
  const shortcuts = desk.about?.shortcuts ?? [];
  part.hidden = shortcuts.length === 0;
  const list = part.querySelector('ul');
  if (!list) return;
  const items = shortcuts.map(({ callbackId, name }) => {
    const button = element(
      'button',
      { type: 'button', class: 'pick', 'data-key': `shortcut/${callbackId}` },
      [element('span', { class: 'pick-name' }, [name])],
      { click: () => choose(callbackId) },
    );
    return element('li', {}, [button]);
  });
  redraw(list, items);
}

export function placeName(channel: PageChannel): string {
  return channel.kind === 'channel' ? `#${channel.name}` : 'Direct messages';
}

/** How many messages a member has not seen in all places. */
export function unreadOf(state: PageState): number {
  return state.channels.reduce((sum, channel) => sum + channel.unread, 0);
}

function unreadMark(count: number): HTMLElement | undefined {
  if (count === 0) return undefined;
  return element('span', { class: 'unread' }, [
    String(count),
    element('span', { class: 'unseen' }, [' new']),
  ]);
}

function redraw(list: HTMLElement, items: HTMLElement[]): void {
  const before = list.innerHTML;
  const after = items.map((item) => item.outerHTML).join('');
  if (before !== after) keepingFocus(() => list.replaceChildren(...items));
}
