/** The pages that people see while they install the bot: plain HTML, no script. Words and markup only. */
import { createHash } from 'node:crypto';
import type { GrantProblem } from './grant.ts';

export interface InstallPage {
  readonly status: number;
  readonly html: string;
}

const STYLE =
  'body{margin:12vh auto;max-width:34rem;padding:0 1rem;font:1.1rem/1.5 sans-serif;color:#12343b;background:#fff}a{color:#0b5394}';

/** Nothing is loaded, framed or sent from these pages. */
export const PAGE_HEADERS: Readonly<Record<string, string>> = {
  'content-type': 'text/html; charset=utf-8',
  'cache-control': 'no-store',
  'content-security-policy': `default-src 'none'; style-src 'sha256-${createHash('sha256').update(STYLE).digest('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`,
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
};

export function beginPage(authorizeUrl: string): InstallPage {
  return page(200, 'Install Loadline', [
    'Loadline helps a team promise an amount of work each sprint that it will keep.',
    'You choose the workspace on the next page, and see there what Loadline may do in it. The link serves for ten minutes.',
    link(authorizeUrl, 'Choose the workspace'),
  ]);
}

export function installedPage(workspaceName: string): InstallPage {
  return page(200, 'Loadline is installed', [
    `It works in the workspace ${workspaceName} from now on. You can close this page.`,
    'Next: invite Loadline to your team’s channel and type /loadline setup there.',
  ]);
}

export function declinedPage(installUrl: string): InstallPage {
  return page(403, 'Loadline was not installed', [
    'It was not agreed to on the page before, so nothing has changed.',
    link(installUrl, 'Start again'),
  ]);
}

export function staleAttemptPage(installUrl: string): InstallPage {
  return page(400, 'This link does not serve any more', [
    'It serves once, within ten minutes, and in the browser in which the installation was begun. Nothing was installed.',
    link(installUrl, 'Start again'),
  ]);
}

export function busyPage(): InstallPage {
  return page(503, 'Too many installations at once', ['Please try again in ten minutes.']);
}

export function troublePage(reference: string | undefined): InstallPage {
  const mark =
    reference === undefined ? '' : ` If it happens again, give whoever runs this bot the code ${reference}.`;
  return page(500, 'Something went wrong', [`Nothing was installed. Please try again.${mark}`]);
}

export function problemPage(problem: GrantProblem, installUrl: string): InstallPage {
  const again = link(installUrl, 'Start again');
  switch (problem.why) {
    case 'no answer':
      return page(502, 'The chat platform did not answer', ['Nothing was installed.', again]);
    case 'code refused':
      return page(400, 'The chat platform did not take the code', [
        'It was used before, or it took too long. Nothing was installed.',
        again,
      ]);
    case 'settings refused':
      return page(500, 'This bot is not set up for installations', [
        'Its settings do not fit its app. Whoever runs it finds the reason in its log. Nothing was installed.',
      ]);
    case 'whole organisation':
      return page(400, 'Loadline is installed workspace by workspace', [
        'It was asked for a whole organisation at once, which it can not serve. Nothing was recorded.',
        again,
      ]);
    case 'scopes missing':
      return page(400, 'Loadline may not do enough', [
        `These permissions were not granted: ${problem.scopes.join(', ')}. Without them it can not work, so nothing was recorded.`,
        again,
      ]);
  }
}

/** What is shown as a paragraph: words, or a link whose address is the bot's own or the platform's. */
type Paragraph = string | { readonly url: string; readonly words: string };

function link(url: string, words: string): Paragraph {
  return { url, words };
}

function page(status: number, title: string, paragraphs: readonly Paragraph[]): InstallPage {
  const body = paragraphs
    .map((one) =>
      typeof one === 'string' ? escaped(one) : `<a href="${escaped(one.url)}">${escaped(one.words)}</a>`,
    )
    .map((text) => `<p>${text}</p>`)
    .join('');
  const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${escaped(title)}</title><style>${STYLE}</style></head><body><main><h1>${escaped(title)}</h1>${body}</main></body></html>`;
  return { status, html };
}

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
