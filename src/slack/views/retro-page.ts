/**
 * The retrospective sheet as a page to print: one HTML file that asks for nothing from elsewhere and runs nothing. What
 * people typed is escaped by the template. It names cards and nobody.
 */
import { html, raw } from 'hono/html';
import type { Picture } from '../../app/ports/charts.ts';
import type { RetroContent } from '../../app/retro/retro-content.ts';
import {
  AT_LENGTH,
  retroDayLine,
  retroExperimentLine,
  retroHeadline,
  retroQuestionLine,
  retroWithoutDays,
  tellingCardLine,
} from '../../words/retro.ts';
import { say, spokenLanguage } from '../../words/say.ts';
import { sprintSpan } from '../../words/sprint.ts';
import { fourNumbers, goalSentence } from '../../words/verdict.ts';

export interface RetroPictures {
  readonly burndown: Picture | undefined;
  /** Of the numbers that the sheet shows, over the team's sprints. */
  readonly history: Picture | undefined;
}

interface RetroPage {
  readonly fileName: string;
  /** HTML, UTF-8. */
  readonly bytes: Uint8Array;
}

/** A month of working days, and then some; a page is no log. */
const DAYS_MOST = 31;

export function retroPage(retro: RetroContent, pictures: RetroPictures): RetroPage {
  return {
    fileName: `retrospective-${retro.sprint.endsOn}.html`,
    bytes: new TextEncoder().encode(String(pageOf(retro, pictures))),
  };
}

type Html = ReturnType<typeof html>;

function pageOf(retro: RetroContent, { burndown, history }: RetroPictures): Html {
  const { verdict, sprint, timeline, telling, experiments, questions } = retro;
  const title = say('retro-title', { sprint: sprint.name });
  const goal = verdict && goalSentence(verdict);
  const days = timeline.slice(0, DAYS_MOST).map((day) => retroDayLine(day, retro, 'plain', AT_LENGTH));
  const left = timeline.length - days.length;
  const noDays = retroWithoutDays(retro);
  return html`<!doctype html>
<html lang="${spokenLanguage().tag}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<meta name="viewport" content="width=device-width">
<title>${title}</title>
<style>${raw(STYLE)}</style>
</head>
<body>
<h1>${title}</h1>
<p>${retro.team.name}, ${sprintSpan(sprint)}</p>
<p class="verdict">${retroHeadline(retro)}</p>
${goal === undefined ? '' : html`<p>${goal}</p>`}
${figure(burndown)}
${verdict ? listOf(say('retro-numbers-title'), fourNumbers(verdict)) : ''}
${
  noDays !== undefined
    ? html`<h2>${say('retro-days-title')}</h2><p>${noDays}</p>`
    : listOf(say('retro-days-title'), [
        ...days,
        ...(left === 0 ? [] : [say('retro-days-more', { days: left })]),
      ])
}
${listOf(
  say('retro-cards-title'),
  telling.map((card) => tellingCardLine(card, retro, 'plain', AT_LENGTH)),
)}
${listOf(
  say('experiments-in-thread'),
  experiments.map((one) => retroExperimentLine(one, 'plain')),
)}
<div class="clear"></div>
${figure(history)}
<section>
<h2>${say('retro-questions-title')}</h2>
${questions.map((question, i) => html`<p>${retroQuestionLine(question, i + 1, retro, 'plain')}</p>${LINES}`)}
</section>
<section>
<h2>${say('retro-agreed-title')}</h2>
${LINES}
</section>
<footer>${say('caution-people')}</footer>
</body>
</html>
`;
}

function listOf(title: string, lines: readonly string[]): Html | '' {
  if (lines.length === 0) return '';
  return html`<section>
<h2>${title}</h2>
<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>
</section>`;
}

function figure(picture: Picture | undefined): Html | '' {
  if (!picture) return '';
  const data = Buffer.from(picture.png).toString('base64');
  return html`<img src="data:image/png;base64,${data}" alt="${picture.altText}">`;
}

/** To write on. */
const LINES = html`<div class="line"></div><div class="line"></div>`;

const STYLE = `
@page { size: A4 portrait; margin: 14mm; }
body { font: 10.5pt/1.4 system-ui, sans-serif; color: #000; background: #fff; max-width: 182mm; margin: 0 auto; padding: 4mm; }
h1 { font-size: 17pt; margin: 0 0 1mm; }
h2 { font-size: 12pt; margin: 5mm 0 1mm; break-after: avoid; }
p { margin: 1mm 0; }
ul { margin: 0; padding-left: 5mm; }
li, p, h1 { overflow-wrap: anywhere; }
li, section p { break-inside: avoid; }
.verdict { font-weight: bold; }
img { float: right; width: 74mm; margin: 1mm 0 3mm 5mm; break-inside: avoid; }
.clear, footer { clear: both; }
.line { border-bottom: 0.3mm solid #888; height: 9mm; overflow: hidden; }
footer { padding-top: 5mm; font-size: 9pt; color: #444; }
@media print { body { max-width: none; padding: 0; } }
`;
