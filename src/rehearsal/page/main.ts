/**
 * The rehearsal page: fetches what the chosen member sees, draws it, and fetches again whenever the workspace
 * says that something changed. It holds no rules of the workspace or of sprints.
 */
import type { Outcome, PageState } from '../stand-in/page-state.ts';
import { Announcer } from './announcer.ts';
import { blockNodes } from './blocks.ts';
import { CalendarBar } from './calendar-bar.ts';
import { Composer } from './composer.ts';
import { drawMembers, drawPlaces, drawShortcuts, drawSideLine, placeName, unreadOf } from './crew.ts';
import { DIRECT, HOME, nameOf, openDesk, placeAt, placeKey } from './desk.ts';
import { byId, element, keepingFocus } from './dom.ts';
import { FormDialog } from './form-dialog.ts';
import { HintPanel } from './hint-panel.ts';
import {
  fetchAbout,
  fetchState,
  markRead,
  openApp,
  pullMessageIn,
  sendClick,
  sendShortcut,
} from './page-api.ts';
import { Stream } from './stream.ts';
import { type Act, viewSurface } from './surface.ts';

const desk = openDesk(location.hash);
const notice = byId('notice', HTMLElement);
const noticeText = byId('notice-text', HTMLElement);
const toNewest = byId('to-newest', HTMLButtonElement);
const asText = byId('as-text', HTMLButtonElement);
const fromThread = byId('from-thread', HTMLButtonElement);
const sideOpen = byId('side-open', HTMLButtonElement);

const act: Act = async (target, click) => {
  if (!desk.me) return;
  await settle(sendClick({ as: desk.me, target, ...click }));
};

const refresh = coalesced(async () => {
  const [state, about] = await Promise.all([firstOrOwnState(), fetchAbout()]);
  // The member may have been switched since; the switch fetches for itself.
  if (desk.me !== undefined && state.me.id !== desk.me) return;
  desk.state = state;
  desk.about = about;
  desk.me = state.me.id;
  draw(state);
  announcer.hear(state);
  readPlace(state);
});

const stream = new Stream(byId('stream', HTMLElement), act, {
  openThread: showThread,
  pullIn: ({ channel, ts }) => desk.me && void settle(pullMessageIn(desk.me, channel, ts)),
});
const dialog = new FormDialog(byId('form-dialog', HTMLDialogElement), desk, act, () => refreshOrSay());
const calendar = new CalendarBar(async (place) => {
  await refreshOrSay();
  if (place !== undefined) switchPlace(place);
});
const composer = new Composer(desk, settle);
const announcer = new Announcer(byId('spoken', HTMLElement));
const hint = new HintPanel();

/** An address from an earlier rehearsal may name somebody who is not here any more: then start as anyone. */
async function firstOrOwnState(): Promise<PageState> {
  const as = desk.me;
  try {
    return await fetchState(as);
  } catch (error) {
    if (as === undefined || desk.state) throw error;
    desk.me = undefined;
    return fetchState(undefined);
  }
}

/** Waits for an outcome, shows why it failed if it did, and fetches the new state. True when it went well. */
async function settle(work: Promise<Outcome>): Promise<boolean> {
  let problem = '';
  try {
    const outcome = await work;
    if (!outcome.ok) problem = outcome.reason;
  } catch (error) {
    problem = wordsOf(error);
  }
  await refreshOrSay();
  if (dialog.isOpen) dialog.report(problem);
  else say(problem);
  return problem === '';
}

function draw(state: PageState): void {
  const first = state.channels[0];
  desk.place ??= desk.about?.startPlace;
  if (!placeAt(desk, state) && desk.place !== HOME) desk.place = first ? placeKey(first) : HOME;
  const place = placeAt(desk, state);
  const label = place ? placeName(place) : 'Home page';
  history.replaceState(null, '', `#as=${state.me.id}&at=${desk.place}`);
  byId('place-title', HTMLElement).textContent = desk.thread === undefined ? label : `Thread in ${label}`;
  fromThread.hidden = desk.thread === undefined;
  byId('place-note', HTMLElement).textContent = place
    ? `seen by ${nameOf(state.me)}`
    : `what the app shows to ${nameOf(state.me)}`;
  byId('team', HTMLElement).textContent = [desk.about?.teamName, desk.about?.scenario]
    .filter(Boolean)
    .join(' · ');
  drawMembers(byId('members', HTMLElement), desk, state, switchMember);
  drawPlaces(byId('places', HTMLElement), desk, state, switchPlace);
  drawShortcuts(byId('shortcuts', HTMLElement), desk, chooseShortcut);
  drawSideLine(sideOpen, desk, state);
  calendar.draw(desk, state);
  hint.draw(desk.about);
  composer.draw();
  keepingFocus(() => {
    if (place) toNewest.hidden = !stream.draw(desk, state, place.id) && (toNewest.hidden || stream.isAtEnd());
    else drawHome(state);
  });
  dialog.draw(state);
}

function drawHome(state: PageState): void {
  toNewest.hidden = true;
  const nodes = state.home
    ? blockNodes(state.home.blocks, viewSurface(desk, state, state.home, act))
    : [element('p', { class: 'empty' }, ['The app has nothing to show here yet.'])];
  stream.drawOther(`${state.me.id}/${HOME}`, [element('div', { class: 'home' }, nodes)]);
}

function switchMember(id: string): void {
  closeSide();
  if (id === desk.me) return;
  desk.me = id;
  desk.thread = undefined;
  // At once: what is typed from now on is this member's.
  composer.draw();
  void refreshOrSay().then(arrive);
}

/** In a narrow window, where the choice hides the lists, the focus goes back to what opened them. */
function closeSide(): void {
  if (sideOpen.getAttribute('aria-expanded') !== 'true') return;
  sideOpen.setAttribute('aria-expanded', 'false');
  sideOpen.focus();
}

/** The member may have been switched since the last state came. */
function chooseShortcut(callbackId: string): void {
  closeSide();
  if (desk.me) void settle(sendShortcut(desk.me, callbackId));
}

/** @param ts undefined: back to the whole place, and to the message that one came from */
function showThread(ts: string | undefined): void {
  const from = desk.thread;
  desk.thread = ts;
  say('');
  if (desk.state) draw(desk.state);
  const message = ts === undefined && document.querySelector<HTMLElement>(`[data-ts="${from}"] summary`);
  (message || byId('composer-box', HTMLTextAreaElement)).focus();
}

function switchPlace(id: string): void {
  closeSide();
  if (id === desk.place && desk.thread === undefined) return;
  desk.place = id;
  desk.thread = undefined;
  say('');
  if (desk.state) draw(desk.state);
  arrive();
  if (desk.state) readPlace(desk.state);
}

/** The app hears when somebody opens its Home page, which it then draws, or their direct messages with it. */
function arrive(): void {
  if (!desk.me) return;
  if (desk.place === HOME) void settle(openApp(desk.me, 'home'));
  if (desk.place === DIRECT) void settle(openApp(desk.me, 'messages'));
}

function readPlace(state: PageState): void {
  const place = placeAt(desk, state);
  if (!place?.unread || document.visibilityState !== 'visible') return;
  markRead(state.me.id, place.id).catch((error: unknown) => say(wordsOf(error)));
}

/** Looks what waits for the other members, one after the other, to mark their names. */
const countUnread = coalesced(async () => {
  for (const user of desk.state?.users ?? []) {
    if (user.isBot || user.id === desk.me) continue;
    desk.unreadByMember.set(user.id, unreadOf(await fetchState(user.id)));
  }
  if (desk.state) drawMembers(byId('members', HTMLElement), desk, desk.state, switchMember);
});

async function refreshOrSay(): Promise<void> {
  try {
    await refresh();
  } catch (error) {
    say(wordsOf(error));
    return;
  }
  countUnread().catch((error: unknown) => say(wordsOf(error)));
}

function say(words: string): void {
  notice.hidden = words === '';
  noticeText.textContent = words;
}

function wordsOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Runs a job once at a time; calls during a run are answered by one more run after it. */
function coalesced(job: () => Promise<void>): () => Promise<void> {
  let running: Promise<void> | undefined;
  let next: Promise<void> | undefined;
  const start = (): Promise<void> => {
    running = job().finally(() => {
      running = undefined;
    });
    return running;
  };
  return () => {
    if (!running) return start();
    next ??= running
      .catch(() => undefined)
      .then(() => {
        next = undefined;
        return start();
      });
    return next;
  };
}

byId('notice-close', HTMLButtonElement).addEventListener('click', () => say(''));
toNewest.addEventListener('click', () => {
  stream.toEnd();
  toNewest.hidden = true;
});
byId('stream', HTMLElement).addEventListener('scroll', () => {
  if (stream.isAtEnd()) toNewest.hidden = true;
});
sideOpen.addEventListener('click', () => {
  const isOpen = sideOpen.getAttribute('aria-expanded') === 'true';
  sideOpen.setAttribute('aria-expanded', String(!isOpen));
});
fromThread.addEventListener('click', () => showThread(undefined));
asText.addEventListener('click', () => {
  desk.asText = !desk.asText;
  asText.setAttribute('aria-pressed', String(desk.asText));
  if (desk.state) draw(desk.state);
});
document.addEventListener('visibilitychange', () => desk.state && readPlace(desk.state));

const changes = new EventSource('/page/changes');
const lost = byId('lost', HTMLElement);
changes.addEventListener('change', () => void refreshOrSay());
changes.addEventListener('error', () => {
  lost.hidden = false;
});
changes.addEventListener('open', () => {
  lost.hidden = true;
  void refreshOrSay();
});
void refreshOrSay().then(arrive);
