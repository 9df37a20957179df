import { describe, expect, it } from 'vitest';
import type { AnswerFormCard } from '../../../src/app/answer-form.ts';
import { decodeValue } from '../../../src/slack/button-values.ts';
import { answerContext, setupContext, sprintContext, teamContext } from '../../../src/slack/form-contexts.ts';
import { answerFormView } from '../../../src/slack/views/answer-form-view.ts';
import { cancelFormView } from '../../../src/slack/views/cancel-form-view.ts';
import { closeFormView } from '../../../src/slack/views/close-form-view.ts';
import { dropFormView } from '../../../src/slack/views/drop-form-view.ts';
import { measuresFormView } from '../../../src/slack/views/measures-form-view.ts';
import { planFormView } from '../../../src/slack/views/plan-form-view.ts';
import { planPreviewView } from '../../../src/slack/views/plan-preview-view.ts';
import { pullFormView } from '../../../src/slack/views/pull-form-view.ts';
import { setupFormView } from '../../../src/slack/views/setup-form-view.ts';
import { formText } from './form-text.ts';
import {
  ANA,
  answerForm,
  BEN,
  card,
  growth,
  heading,
  linesOf,
  plan,
  preview,
  statusOf,
  team,
} from './view-examples.ts';

const setup = {
  existing: false,
  channelId: team.channelId,
  name: team.name,
  timeZone: team.timeZone,
  promptAt: team.promptAt,
  workingDays: team.workingDays,
  memberIds: [ANA, BEN],
  facilitatorIds: [ANA],
  productOwnerId: undefined,
};
const draft = { ...preview.input, cards: 'Import tide tables, 5, @ana\nPrint the map, 2' };

describe('set up', () => {
  it('asks for the team’s people and times and cautions', () => {
    expect(formText(setupFormView(setup))).toMatchInlineSnapshot(`
      "[Set up a team | Set up | Leave] {"channelId":"C0HARBOUR"}
      For <#C0HARBOUR>. On working days of a sprint each member is asked, in a direct message, what is left on their cards. The verdict is posted in this channel.
      (These numbers are about the team’s plan, not about people: do not use them to appraise anyone or to compare teams. Asking people daily about their work may be regulated where you are. Before you switch this on, look into local law and works agreements, and ask whoever is responsible for data protection.)
      <name> Team name: "Harbour"
      <memberIds> Members: ["U0ANA","U0BEN"] – Who works on cards.
      <facilitatorIds> Facilitators: ["U0ANA"] – Who may plan, close and cancel sprints and change these settings.
      <productOwnerId> Product owner (optional): 
      <timeZone> Time zone: "Europe/Lisbon" – Region and city, for example Europe/Lisbon, America/New_York or Asia/Kolkata.
      <promptAt> When to ask each day: "09:15" – In the team’s time zone.
      <workingDays> Working days: ["1=Monday","2=Tuesday","3=Wednesday","4=Thursday","5=Friday","6=Saturday","7=Sunday"] ["1=Monday","2=Tuesday","3=Wednesday","4=Thursday","5=Friday"]"
    `);
  });

  it('has seven fields, so that it stays easy to fill in', () => {
    expect(setupFormView(setup).blocks.filter(({ type }) => type === 'input')).toHaveLength(7);
  });

  it('begins with no people when nobody is known', () => {
    const view = JSON.stringify(setupFormView({ ...setup, memberIds: [] }));
    expect(view.match(/initial_users/g)).toHaveLength(1);
  });
});

describe('measures', () => {
  it('shows every threshold as one would type it', () => {
    expect(formText(measuresFormView(team))).toMatchInlineSnapshot(`
      "[Scale and thresholds | Save | Leave] {"teamId":"team-harbour"}
      For Harbour. These are the usual values or those the team chose before; change only what you need.
      <closesAt> When a sprint closes on its last day: "17:00" – In the team’s time zone. A plan may say otherwise for its sprint.
      <reminderAfterMinutes> Remind once, so many minutes after the daily prompt: "180" – From 15 to 720.
      <scale> Planning scale: "1, 2, 3, 5, 8, 13, 21" – The sizes that an estimate may have, rising, for example 1, 2, 3, 5, 8, 13, 21.
      *Thresholds, in percent*
      <keptShareAtLeast> Kept share at least (%): "80" – How much of the commitment must be finished for a sprint to be kept.
      <surpriseRatioAtMost> Surprise ratio at most (%): "20" – Surprise work, measured by the commitment. Above this the sprint is missed.
      <pullInRatioAtMost> Pull-in ratio at most (%): "20" – Pulled-in work, measured by the commitment. Above this there is a note.
      <planShareAtLeast> Plan share at least (%): "80" – How much of what the sprint became had been planned. Below this there is a note.
      <estimateAccuracyAtLeast> Estimate accuracy at least (%): "80" – Below this there is a note.
      <estimateAccuracyAtMost> Estimate accuracy at most (%): "95" – Above this there is a note: estimating may cost more than it brings.
      <velocityGrowthFirstMark> Velocity growth, first mark (%): "240" – Velocity, measured by the baseline sprint. At this mark there is a note.
      <velocityGrowthLongRangeMark> Velocity growth, long-range mark (%): "500" – At this mark there is another note."
    `);
  });

  it('shows a threshold without the dust of binary fractions', () => {
    // 0.07 * 100 is 7.000000000000001 in IEEE 754.
    const view = measuresFormView({ ...team, thresholds: { ...team.thresholds, pullInRatioAtMost: 0.07 } });
    expect(formText(view)).toContain('<pullInRatioAtMost> Pull-in ratio at most (%): "7" ');
  });
});

describe('plan', () => {
  it('begins with the draft', () => {
    expect(formText(planFormView({ team, draft, leftOver: 2 }))).toMatchInlineSnapshot(`
      "[Plan a sprint | Preview | Leave] {"teamId":"team-harbour"}
      For Harbour. You see a preview before the team commits to anything. 2 unfinished cards of the last sprint are filled in with what was left; delete what you do not want.
      <name> Sprint name: "Harbour 12"
      <goal> Goal (optional): "Skippers see tides before they book a berth." – One sentence: why this sprint is worth it.
      <startsOn> First day: "2026-11-02"
      <endsOn> Last day: "2026-11-13"
      <closesAt> Closing time on the last day: "17:00" – In the team’s time zone, Europe/Lisbon.
      <cards> Cards, one a line (optional): "Import tide tables, 5, @ana\\nPrint the map, 2" – title, estimate, @owner. Rows pasted from a spreadsheet work as well. A title may begin with a key such as LP-7. No cards: leave it empty.
      <cards-2> More cards (2 of 3 fields) (optional):  – If they do not all fit above: a field holds 3,000 characters. Lines are counted on through all fields.
      <cards-3> More cards (3 of 3 fields) (optional):  – If they do not all fit above: a field holds 3,000 characters. Lines are counted on through all fields."
    `);
  });

  it('spreads cards that outgrow a field over several, at line ends, and offers one more', () => {
    const line = `${'x'.repeat(95)}, 5`;
    const view = planFormView({
      team,
      draft: { ...draft, cards: Array(100).fill(line).join('\n') },
      leftOver: 0,
    });
    const texts = [...formText(view).matchAll(/<cards[-\d]*> [^:]*: (".*?")? /g)].map(([, text]) =>
      JSON.parse(text ?? '""'),
    );
    expect(texts).toHaveLength(5);
    expect(texts.slice(0, 4).join('\n').split('\n')).toEqual(Array(100).fill(line));
    expect(texts[4]).toBe('');
  });

  it('is previewed with what to check and what came before', () => {
    expect(formText(planPreviewView(preview))).toMatchInlineSnapshot(`
      "[Commit to this plan? | Commit | Back] {"teamId":"team-harbour"}
      # Harbour 12: 18 points on 4 cards
      Mon 2 Nov to Fri 13 Nov, 10 working days. It closes at 17:00 on its last day (Europe/Lisbon).
      Goal: Skippers see tides before they book a berth.
      *Please check*
      • Card 4 has no owner yet, so nobody is asked about it until somebody takes it.
      *The team’s latest sprints*
      • Harbour 11: committed 20, velocity 17, kept
      *Cards*
      1. LP-1 Import tide tables: 5 points (<@U0ANA>)
      2. LP-2 Show tides in the berth calendar: 8 points (<@U0ANA>, <@U0BEN>)
      3. LP-3 Print the harbour map: 2 points (<@U0BEN>)
      4. Warn of low water: 3 points (nobody yet)
      (After this, estimates stay as they are. Cards that come in later count as pulled-in work.)"
    `);
  });

  it('is previewed without cards and without a history', () => {
    const empty = { ...preview, cards: [], commitmentPoints: 0, warnings: [], recent: [] };
    expect(formText(planPreviewView(empty))).toMatchInlineSnapshot(`
      "[Commit to this plan? | Commit | Back] {"teamId":"team-harbour"}
      # Harbour 12: 0 points on 0 cards
      Mon 2 Nov to Fri 13 Nov, 10 working days. It closes at 17:00 on its last day (Europe/Lisbon).
      Goal: Skippers see tides before they book a berth.
      No closed sprint to compare with yet.
      (After this, estimates stay as they are. Cards that come in later count as pulled-in work.)"
    `);
  });
});

describe('answer', () => {
  const [firstCard, ...otherCards] = answerForm.cards as readonly [AnswerFormCard, ...AnswerFormCard[]];

  it('asks what is left on each card, and offers cards that nobody owns', () => {
    expect(formText(answerFormView(answerForm))).toMatchInlineSnapshot(`
      "[What is left? | Record | Leave] {"sprintId":"sprint-12","day":"2026-11-04"}
      Harbour 12, Wed 4 Nov. Fill in what has changed; a card that you leave empty stays as it is. Points go in halves, such as 2.5.
      <left:card-1> 1. LP-1 Import tide tables: points left (was 3) (optional): 
      <worked:card-1> Points worked since the last answer (optional):  – Only needed when it is not simply the difference. The same goes for all cards.
      ---
      <left:card-2> 2. LP-2 Show tides in the berth calendar: points left (was 8) (optional): 
      <worked:card-2> Points worked since the last answer (optional): 
      ---
      <left:card-5> 3. LP-5 Repair the tide gauge: points left (was 3) (optional): 
      <worked:card-5> Points worked since the last answer (optional): 
      ---
      <takeCardIds> Take cards that nobody owns yet (optional): ["card-4=3 left: Warn of low water"] – You become their owner and are asked about them from now on."
    `);
  });

  it('asks in its second step why a card grew, and keeps every field of the first by its name', () => {
    expect(formText(answerFormView(answerForm, growth))).toMatchInlineSnapshot(`
      "[Why did it grow? | Record | Leave] {"sprintId":"sprint-12","day":"2026-11-04"}
      A card grew, so please say why. Nothing is recorded yet. Surprise work: nobody foresaw it, and the card cannot be accepted without it. Estimate drift: the same work turned out larger than estimated.
      <left:card-1> 1. LP-1 Import tide tables: points left (was 3) (optional): "4"
      <worked:card-1> Points worked since the last answer (optional): "1" – Only needed when it is not simply the difference. The same goes for all cards.
      <surprise:card-1> Of the 2 points of growth, how many were surprise work?:  – From 0 to 2; the rest counts as estimate drift.
      <note:card-1> What came up? (optional):  – A few words about the work. Your team can read them in the status.
      ---
      <left:card-2> 2. LP-2 Show tides in the berth calendar: points left (was 8) (optional): "6"
      <worked:card-2> Points worked since the last answer (optional): 
      ---
      <takeCardIds> Take cards that nobody owns yet (optional): ["card-4=3 left: Warn of low water"] – You become their owner and are asked about them from now on."
    `);
    const names = (view: ReturnType<typeof answerFormView>): string[] =>
      view.blocks.flatMap((block) => ('block_id' in block && block.block_id ? [block.block_id] : []));
    const answered = { ...answerForm, cards: answerForm.cards.slice(0, 2) };
    expect(names(answerFormView(answered, growth))).toEqual(
      expect.arrayContaining(names(answerFormView(answered))),
    );
  });

  it('shows an answer given before, with its explanation', () => {
    const given = { worked: 1, left: 4, surprise: 2, note: 'Two formats' };
    const text = formText(answerFormView({ ...answerForm, cards: [{ ...firstCard, given }], takeable: [] }));
    expect(text).toMatchInlineSnapshot(`
      "[What is left? | Record | Leave] {"sprintId":"sprint-12","day":"2026-11-04"}
      Harbour 12, Wed 4 Nov. Fill in what has changed; a card that you leave empty stays as it is. Points go in halves, such as 2.5.
      <left:card-1> 1. LP-1 Import tide tables: points left (was 3) (optional): "4"
      <worked:card-1> Points worked since the last answer (optional): "1" – Only needed when it is not simply the difference. The same goes for all cards.
      <surprise:card-1> Surprise work in this change, in points (optional): "2" – The rest of the growth counts as estimate drift.
      <note:card-1> What came up? (optional): "Two formats" – A few words about the work. Your team can read them in the status."
    `);
  });

  it('keeps the explanation “all drift” of an answer given before', () => {
    const given = { worked: undefined, left: 5, surprise: 0, note: '' };
    const text = formText(answerFormView({ ...answerForm, cards: [{ ...firstCard, given }] }));
    expect(text).toContain('<surprise:card-1> Surprise work in this change, in points (optional): "0"');
  });

  it('lets surprise work be given back on a card that holds some', () => {
    const holding = { ...firstCard, card: { ...firstCard.card, surprisePoints: 2 } };
    const text = formText(answerFormView({ ...answerForm, cards: [holding, ...otherCards] }));
    expect(text).toContain('2 points of surprise work on this card so far. If some was not needed after all');
    expect(text.match(/<surprise:/g)).toHaveLength(1);
  });

  it('shows 15 cards at most, those without an answer first, and says so', () => {
    const given = { worked: 0, left: 5, surprise: 0, note: '' };
    const cards = linesOf(Array.from({ length: 20 }, (_, i) => card(i + 1))).map((line, i) => ({
      card: line,
      previousLeftPoints: 5,
      given: i < 10 ? given : undefined,
    }));
    const text = formText(answerFormView({ ...answerForm, cards }));
    expect(text).toContain('This form shows 15 of 20 cards.');
    const shown = [...text.matchAll(/<left:card-(\d+)> (\d+)\./g)].map(([, id, place]) => [
      Number(id),
      Number(place),
    ]);
    const numbers = [1, 2, 3, 4, 5, ...Array.from({ length: 10 }, (_, i) => i + 11)];
    expect(shown).toEqual(numbers.map((number) => [number, number]));
  });

  it('shows every card that grew, before others that were answered with it', () => {
    const lines = linesOf(Array.from({ length: 20 }, (_, i) => card(i + 1)));
    const cards = lines.map((line) => ({ card: line, previousLeftPoints: 5, given: undefined }));
    const answers = lines.map(({ cardId }) => ({ cardId, worked: '', left: '6', surprise: '', note: '' }));
    const grown = lines.slice(17).map((line) => ({ card: line, growthPoints: 1 }));
    const text = formText(answerFormView({ ...answerForm, cards }, { answers, grown }));
    expect(text.match(/<surprise:card-(18|19|20)>/g)).toHaveLength(3);
    expect(text.match(/<left:/g)).toHaveLength(15);
  });

  it('offers only taking when the member has no card', () => {
    const text = formText(answerFormView({ ...answerForm, cards: [] }));
    expect(text).toContain('You own no open card; you can take one here.');
    expect(text).toContain('<takeCardIds>');
  });
});

describe('pull, drop, close, cancel', () => {
  it('pull: pace, days left, a checklist and three fields', () => {
    const pull = { heading, pace: statusOf().pace, workingDaysLeft: 5, memberIds: [ANA] };
    expect(formText(pullFormView(pull))).toMatchInlineSnapshot(`
      "[Pull in a card | Pull in | Leave] {"sprintId":"sprint-12"}
      Harbour 12: 5 working days come after today. The load is heavy: at the pace so far, about 9 points will be left at the end.
      *Before you pull it in*
      • Independent: can it be finished without waiting for another card?
      • Negotiable: may the team still choose how to do it?
      • Valuable: who will be glad that it is done this sprint?
      • Estimable: do you know enough to give it points?
      • Small: does it fit into the time that is left?
      • Testable: how will you see that it is finished?
      <title> Title:  – May begin with a key of your own, such as LP-9.
      <estimate> Estimate, in points:  – Halves are fine, such as 0.5.
      <ownerIds> Owners (optional):  – Members of the team. Nobody is asked about a card without an owner."
    `);
    expect(formText(pullFormView({ ...pull, workingDaysLeft: 0 }))).toContain(
      'no working day comes after today',
    );
  });

  it('drop: a card and a reason', () => {
    expect(formText(dropFormView({ heading, cards: plan.cards }))).toMatchInlineSnapshot(`
      "[Drop a card | Drop | Leave] {"sprintId":"sprint-12"}
      A card dropped from Harbour 12 still counts with its estimate, as not finished, and is listed with your reason. It cannot be brought back.
      <reference> Card: ["1=1. LP-1 Import tide tables (5 points)","2=2. LP-2 Show tides in the berth calendar (8 points)","3=3. LP-3 Print the harbour map (2 points)","4=4. Warn of low water (3 points)"]
      <reason> Reason:  – The channel reads it with the verdict."
    `);
  });

  it('drop: offers no card that was dropped, and says when there is none', () => {
    const [first, ...others] = plan.cards;
    if (!first) throw new Error('the example has cards');
    const dropped = { ...first, state: 'dropped' } as const;
    expect(formText(dropFormView({ heading, cards: [dropped, ...others] }))).not.toContain('LP-1');
    expect(formText(dropFormView({ heading, cards: [dropped] }))).toContain(
      'Harbour 12 has no card to drop.',
    );
  });

  it('close and cancel: what will happen', () => {
    expect(
      formText(closeFormView({ heading, cards: plan.cards, summary: statusOf().summary })),
    ).toMatchInlineSnapshot(`
      "[Close the sprint now? | Close now | Keep it open] {"sprintId":"sprint-12"}
      Harbour 12 would close by itself on Fri 13 Nov at 17:00.
      Finished so far: 5 of 18 points committed. 4 cards with 16 points left will count as not finished.
      The verdict is posted in the channel. A facilitator can reopen the sprint for 24 hours."
    `);
    expect(formText(cancelFormView({ heading }))).toMatchInlineSnapshot(`
      "[Cancel the sprint? | Cancel the sprint | Keep it] {"sprintId":"sprint-12"}
      Harbour 12 ends at once and without a verdict. Its numbers are kept, and never count as history. This cannot be undone.
      <reason> Reason (optional):  – The channel reads it."
    `);
  });
});

describe('what a form is about', () => {
  const close = { heading, cards: plan.cards, summary: statusOf().summary };

  it.each([
    ['set up', setupFormView(setup, 'D1'), setupContext, { channelId: team.channelId, replyTo: 'D1' }],
    ['measures', measuresFormView(team, 'D1'), teamContext, { teamId: team.id, replyTo: 'D1' }],
    [
      'plan',
      planFormView({ team, draft, leftOver: 0 }, 'D1'),
      teamContext,
      { teamId: team.id, replyTo: 'D1' },
    ],
    ['preview', planPreviewView(preview, 'D1'), teamContext, { teamId: team.id, replyTo: 'D1' }],
    [
      'answer',
      answerFormView(answerForm, undefined, 'D1'),
      answerContext,
      { sprintId: 'sprint-12', day: '2026-11-04', replyTo: 'D1' },
    ],
    ['close', closeFormView(close, 'D1'), sprintContext, { sprintId: 'sprint-12', replyTo: 'D1' }],
    ['cancel', cancelFormView({ heading }), sprintContext, { sprintId: 'sprint-12' }],
  ] as const)('comes back with it: %s', (_name, view, schema, context) => {
    expect(decodeValue<object>(schema, view.private_metadata)).toEqual(context);
  });
});
