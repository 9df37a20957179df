/** The pages that people see while they install the bot: plain HTML, no script. */
import { createHash } from 'node:crypto';
import { say } from '../../words/say.ts';
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
  return page(200, say('install-begin-title'), [
    say('install-begin-what'),
    say('install-begin-next'),
    { url: authorizeUrl, words: say('install-begin-link') },
  ]);
}

export function installedPage(workspaceName: string): InstallPage {
  return page(200, say('install-done-title'), [
    say('install-done-what', { workspace: workspaceName }),
    say('install-done-next'),
  ]);
}

export function declinedPage(installUrl: string): InstallPage {
  return page(403, say('install-declined-title'), [say('install-declined-what'), again(installUrl)]);
}

export function staleAttemptPage(installUrl: string): InstallPage {
  return page(400, say('install-stale-title'), [say('install-stale-what'), again(installUrl)]);
}

/** The token that came with the grant is not kept. */
export function notAllowedPage(workspaceId: string): InstallPage {
  return page(403, say('install-not-allowed-title'), [say('install-not-allowed-what', { workspaceId })]);
}

export function troublePage(reference: string | undefined): InstallPage {
  const what =
    reference === undefined
      ? say('install-trouble-what')
      : say('install-trouble-what-reference', { reference });
  return page(500, say('install-trouble-title'), [what]);
}

export function problemPage(problem: GrantProblem, installUrl: string): InstallPage {
  switch (problem.why) {
    case 'no answer':
      return page(502, say('install-no-answer-title'), [say('install-nothing'), again(installUrl)]);
    case 'code refused':
      return page(400, say('install-code-refused-title'), [
        say('install-code-refused-what'),
        again(installUrl),
      ]);
    case 'settings refused':
      return page(500, say('install-settings-refused-title'), [say('install-settings-refused-what')]);
    case 'tokens rotate':
      return page(500, say('install-settings-refused-title'), [say('install-tokens-rotate-what')]);
    case 'whole organisation':
      return page(400, say('install-organisation-title'), [
        say('install-organisation-what'),
        again(installUrl),
      ]);
    case 'scopes missing':
      return page(400, say('install-scopes-title'), [
        say('install-scopes-what', { scopes: problem.scopes }),
        again(installUrl),
      ]);
  }
}

/** What is shown as a paragraph: words, or a link whose address is the bot's own or the platform's. */
type Paragraph = string | { readonly url: string; readonly words: string };

function again(installUrl: string): Paragraph {
  return { url: installUrl, words: say('install-again') };
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
