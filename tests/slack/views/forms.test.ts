import { describe, expect, it } from 'vitest';
import { readCommitment } from '../../../src/app/advice/range-advice.ts';
import type { AnswerFormCard } from '../../../src/app/answering/answer-form.ts';
import { decodeValue } from '../../../src/slack/button-values.ts';
import {
  answerContext,
  planPreviewContext,
  setupContext,
  sprintContext,
  teamContext,
} from '../../../src/slack/form-contexts.ts';
import { forecastFormView, rangeFormView } from '../../../src/slack/views/advice-forms.ts';
import { answerFormView } from '../../../src/slack/views/answering/answer-form.ts';
import { baselineFormView } from '../../../src/slack/views/baseline-views.ts';
import { dropFormView, pullFormView } from '../../../src/slack/views/cards/card-forms.ts';
import { planFormView } from '../../../src/slack/views/planning/plan-forms.ts';
import { planPreviewView } from '../../../src/slack/views/planning/plan-preview.ts';
import { cancelFormView, closeFormView } from '../../../src/slack/views/sprint-change-views.ts';
import { measuresFormView, setupFormView } from '../../../src/slack/views/team/team-forms.ts';
import { valueFormView } from '../../../src/slack/views/value-views.ts';
import { pastSprint, rangeAdvice, STEADY } from './advice-examples.ts';
import { formText } from './form-text.ts';
import {
  ANA,
  answerForm,
  BEN,
  baselineForm,
  besideHistory,
  card,
  growth,
  heading,
  linesOf,
  plan,
  preview,
  pullInCheckOf,
  statusOf,
  team,
  valueForm,
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
  isShared: false,
  acceptsShared: false,
};
const draft = { ...preview.input, cards: 'Import tide tables, 5, @ana\nPrint the map, 2' };

describe('set up', () => {
  it('asks for the team’s people and times and cautions', () => {
    expect(formText(setupFormView(setup))).toMatchInlineSnapshot(`
      "[Set up a team | Set up | Cancel] {"channelId":"C0HARBOUR"}
      For <#C0HARBOUR>. On working days of a sprint each member is asked, in a direct message, what is left on their cards. The verdict is posted in this channel.
      (These numbers are about the team’s plan, not about people: don’t use them to appraise anyone or to compare teams. Asking people about their work every day may be regulated where you are. Before you switch this on, check local law and works agreements, and ask the person responsible for data protection.)
      <name> Team name: "Harbour"
      <memberIds> Members: ["U0ANA","U0BEN"] – The people who work on cards.
      <facilitatorIds> Facilitators: ["U0ANA"] – They may plan, close and cancel sprints and change these settings.
      <productOwnerId> Product owner (optional): 
      <timeZone> Time zone: "Europe/Lisbon" – Region and city, for example Europe/Lisbon, America/New_York or Asia/Kolkata.
      <promptAt> When to ask each day: "09:15" – In the team’s time zone.
      <workingDays> Working days: ["1=Monday","2=Tuesday","3=Wednesday","4=Thursday","5=Friday","6=Saturday","7=Sunday"] ["1=Monday","2=Tuesday","3=Wednesday","4=Thursday","5=Friday"]"
    `);
  });

  it('says in a shared channel what others would read, and wants a yes', () => {
    const form = formText(setupFormView({ ...setup, isShared: true }));
    expect(form).toContain('People of another organisation read this channel too.');
    expect(form).toContain('<acceptsShared> Post here all the same: ["yes=Yes, they may read that"]');
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
      "[Team measures | Save | Cancel] {"teamId":"team-harbour"}
      For Harbour. These are the usual values or those the team chose before; change only what you need.
      <closesAt> When a sprint closes on its last day: "17:00" – In the team’s time zone. A plan may set another time for its sprint.
      <reminderAfterMinutes> How many minutes after the daily prompt to remind once: "180" – From 15 to 720.
      <scale> Planning scale: "1, 2, 3, 5, 8, 13, 21" – The sizes that an estimate may have, rising, for example 1, 2, 3, 5, 8, 13, 21.
      <weeklyLine> Whether the channel gets a line on the sprint each Friday: ["yes=Yes","no=No"] "no=No" – At closing time of the week’s last working day: points left, surprise work, blocked cards, days to go. Not on a sprint’s last day, when the verdict comes.
      <surpriseInVerdict> Whether surprise work counts in the verdict: ["yes=Yes","no=No"] "yes=Yes" – If it doesn’t, the kept share alone decides. Surprise work and estimate drift are shown either way.
      <carriedOver> What an unfinished card is planned with in the next sprint: ["left=What is left of it","new-estimate=A new estimate"] "left=What is left of it" – The next plan begins with these cards; you can change each line.
      <valueAfterDays> How many working days after a sprint to ask what it was worth (optional):  – From 1 to 60; asks the product owner, else a facilitator. Leave it empty not to ask.
      <retentionMonths> How many months to keep the details of a sprint (optional):  – From 1 to 120. After that a sprint is reduced to its totals, for good: cards, answers, prompts and posts are deleted; verdicts, ratios and history stay. Leave it empty to keep everything.
      *Thresholds, in percent*
      <keptShareAtLeast> Kept share at least (%): "80" – How much of the commitment must be finished for a sprint to be kept.
      <surpriseRatioAtMost> Surprise ratio at most (%): "20" – Surprise work as a share of the commitment. Above this the sprint is missed, if surprise work counts in the verdict.
      <pullInRatioAtMost> Pull-in ratio at most (%): "20" – Pulled-in work as a share of the commitment. Above this there is a note.
      <planShareAtLeast> Plan share at least (%): "80" – How much of what the sprint became had been planned. Below this there is a note.
      <estimateAccuracyAtLeast> Estimate accuracy at least (%): "80" – Below this there is a note.
      <estimateAccuracyAtMost> Estimate accuracy at most (%): "95" – Above this there is a note: estimating may cost more than it brings.
      <velocityGrowthFirstMark> Velocity growth, first mark (%) (optional):  – Velocity, compared with the baseline sprint. At this mark there is a note. Leave it empty for no mark.
      <velocityGrowthLongRangeMark> Velocity growth, long-range mark (%) (optional):  – At this mark there is another note. Leave it empty for no mark."
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
      "[Plan a sprint | Preview | Cancel] {"teamId":"team-harbour"}
      For Harbour. You see a preview before the team commits to anything. 2 unfinished cards of the sprint before are filled in with what was left; delete what you don’t want.
      <name> Sprint name: "Harbour 12"
      <goal> Goal (optional): "Skippers see tides before they book a berth." – One sentence: why this sprint is worth it.
      <startsOn> First day: "2026-11-02"
      <endsOn> Last day: "2026-11-13"
      <closesAt> Closing time on the last day: "17:00" – In the team’s time zone, Europe/Lisbon.
      <awayDays> Days off and away, all members together (optional):  – All of them, also those entered with /loadline off: none counts twice. Each holiday counts once for every member. Leave empty if you don’t know.
      <guests> Guests (optional):  – People who take part in this sprint only. They are told what is asked and stored.
      <cards> Cards, one a line (optional): "Import tide tables, 5, @ana\\nPrint the map, 2" – title, estimate, @owner, or title (estimate) @owner. Lists, tables and rows of a spreadsheet work as well. A title may begin with a short name: berth-3: Fog horn. No cards: leave it empty.
      <cards-2> More cards (field 2 of 3) (optional):  – If they don’t all fit above: a field holds 3,000 characters. Lines are counted on through all fields.
      <cards-3> More cards (field 3 of 3) (optional):  – If they don’t all fit above: a field holds 3,000 characters. Lines are counted on through all fields.
      <cardFile> Or a CSV file of cards (optional):  – As any sheet or tracker saves it, with the names of the columns in its first line. You see what was read from it before the preview."
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
      "[Commit to this? | Commit | Back] {"teamId":"team-harbour","seen":"f1f2"}
      # Harbour 12: 18 points on 4 cards
      Mon 2 Nov to Fri 13 Nov, 10 working days. It closes at 17:00 on its last day (Europe/Lisbon).
      26.5 working days of all members together.
      • <@U0ANA> works Monday to Thursday, and is off Mon 9 Nov to Tue 10 Nov.
      Goal: Skippers see tides before they book a berth.
      *Please check*
      • Card 4 has no owner yet, so nobody is asked about it until somebody takes it.
      *How much to commit to*
      No range yet. This needs 3 closed sprints with a commitment; there are 0. Every sprint that closes here adds one. You don’t have to wait: a facilitator can bring in past sprints with \`/loadline import\`.
      <ticked-1> Commit to these cards (optional): ["1=1. LP-1 Import tide tables: 5 points","2=2. LP-2 Show tides in the berth calendar: 8 points","3=3. LP-3 Print the harbour map: 2 points","4=4. Warn of low water: 3 points"] ["1=1. LP-1 Import tide tables: 5 points","2=2. LP-2 Show tides in the berth calendar: 8 points","3=3. LP-3 Print the harbour map: 2 points","4=4. Warn of low water: 3 points"] – Take a tick away to leave a card out; what is said here then follows. Only ticked cards are committed to.
      *Surprise odds of the big cards*
      Not known yet: no card of a closed sprint is known.
      *The team’s latest sprints*
      • Harbour 11: committed 20, velocity 17, kept
      *Who has which card*
      • <@U0ANA>: 1, 2
      • <@U0BEN>: 2, 3
      (After this, estimates stay as they are. Cards that come in later count as pulled-in work.)"
    `);
  });

  it('is previewed beside the range, with its chances and the odds of its big cards', () => {
    const beside = planPreviewView({ ...preview, ...besideHistory(STEADY) });
    expect(formText(beside).split('\n').slice(6, 15).join('\n')).toMatchInlineSnapshot(`
      "*Please check*
      • Card 4 has no owner yet, so nobody is asked about it until somebody takes it.
      *How much to commit to*
      At 26 points: 9 in 10 to keep it, 5 in 10 to finish everything, 1 in 10 to run out of work. Your last commitment was 21. From 9 closed sprints with a commitment, scaled to 50 member-days; \`/loadline range\` says more.
      This plan of 18 points: 9 in 10 to run out of work.
      *The chances of these cards*
      The chance to finish at least 80% of these 18 points is about 9 in 10, and to finish all of them about 9 in 10. This goes by the sizes of the cards and by what the team finished in 9 closed sprints. It doesn’t know in which order you will work, or how much surprise work the cards hold.
      <ticked-1> Commit to these cards (optional): ["1=1. LP-1 Import tide tables: 5 points","2=2. LP-2 Show tides in the berth calendar: 8 points","3=3. LP-3 Print the harbour map: 2 points","4=4. Warn of low water: 3 points"] ["1=1. LP-1 Import tide tables: 5 points","2=2. LP-2 Show tides in the berth calendar: 8 points","3=3. LP-3 Print the harbour map: 2 points","4=4. Warn of low water: 3 points"] – Take a tick away to leave a card out; what is said here then follows. Only ticked cards are committed to.
      *Surprise odds of the big cards*"
    `);
  });

  it('says how likely its points leave the team without work, where no commitment serves both as well', () => {
    const range = rangeAdvice(
      [30, 28, 32, 30].map((commitment, i) => pastSprint(i, { commitment, finished: 19, pulledIn: 10 })),
    );
    for (const advice of [range, besideHistory(STEADY).range]) {
      const view = planPreviewView({ ...preview, range: advice, commitment: readCommitment(18, advice) });
      expect(formText(view)).toContain('\nThis plan of 18 points: 9 in 10 to run out of work.');
    }
  });

  it('doesn’t say it again where the plan holds just as many points as are advised', () => {
    const { range } = besideHistory(STEADY);
    if ('undefined' in range.range || 'undefined' in range.range.advised)
      throw new Error('nothing is advised');
    const { points } = range.range.advised;
    const view = planPreviewView({
      ...preview,
      range,
      commitmentPoints: points,
      commitment: readCommitment(points, range),
    });
    expect(formText(view)).not.toContain('This plan of');
  });

  it('names an imported sprint as such, and a velocity that nobody knows', () => {
    const imported = {
      sprintName: 'Harbour 2',
      workingDays: 5,
      commitmentPoints: 20,
      velocityPoints: undefined,
      verdict: undefined,
    };
    expect(formText(planPreviewView({ ...preview, recent: [imported] }))).toContain(
      '• Harbour 2, 5 working days: committed 20, velocity not known, imported',
    );
  });

  it('lists each card once: those without a tick below the others', () => {
    const text = formText(planPreviewView({ ...preview, tickable: preview.cards.slice(1) }));
    expect(text).toContain('*The other cards*\n1. LP-1 Import tide tables: 5 points (<@U0ANA>)');
    expect(text).toContain('*Who has which card*\n• <@U0ANA>: 2\n• <@U0BEN>: 2, 3\n');
    for (const { title } of preview.cards.slice(0, 1)) expect(text.split(title)).toHaveLength(2);
  });

  it('is previewed without cards and without a history', () => {
    const empty = { ...preview, cards: [], tickable: [], commitmentPoints: 0, warnings: [], recent: [] };
    expect(formText(planPreviewView(empty))).toMatchInlineSnapshot(`
      "[Commit to this? | Commit | Back] {"teamId":"team-harbour","seen":"f1f2"}
      # Harbour 12: 0 points on 0 cards
      Mon 2 Nov to Fri 13 Nov, 10 working days. It closes at 17:00 on its last day (Europe/Lisbon).
      26.5 working days of all members together.
      • <@U0ANA> works Monday to Thursday, and is off Mon 9 Nov to Tue 10 Nov.
      Goal: Skippers see tides before they book a berth.
      *How much to commit to*
      No range yet. This needs 3 closed sprints with a commitment; there are 0. Every sprint that closes here adds one. You don’t have to wait: a facilitator can bring in past sprints with \`/loadline import\`.
      No closed sprint to compare with yet.
      (After this, estimates stay as they are. Cards that come in later count as pulled-in work.)"
    `);
  });
});

describe('answer', () => {
  const [firstCard, ...otherCards] = answerForm.cards as readonly [AnswerFormCard, ...AnswerFormCard[]];

  it('asks what is left on each card, and offers cards that nobody owns', () => {
    expect(formText(answerFormView(answerForm))).toMatchInlineSnapshot(`
      "[What is left? | Record | Cancel] {"sprintId":"sprint-12","day":"2026-11-04"}
      Harbour 12, Wed 4 Nov. Fill in what has changed; a card that you leave empty stays as it is. Points go in halves, such as 2.5.
      <left:card-1> 1. LP-1 Import tide tables: points left (was 3) (optional): 
      <left:card-2> 2. LP-2 Show tides in the berth calendar: points left (was 8) (optional): 
      <left:card-5> 3. LP-5 Repair the tide gauge: points left (was 3) (optional): 
      <moreCardIds> More to say about (optional): ["card-1=LP-1 Import tide tables","card-2=LP-2 Show tides in the berth calendar","card-5=LP-5 Repair the tide gauge"] – Points worked, a note, a block, or surprise work that wasn’t needed: the form then asks about these cards, and keeps what you typed.
      ---
      <takeCardIds> Take cards that nobody owns yet (optional): ["card-4=3 left: Warn of low water"] – You become their owner and are asked about them from now on."
    `);
  });

  it('asks in its second step why a card grew, and keeps every field of the first by its name', () => {
    expect(formText(answerFormView(answerForm, growth))).toMatchInlineSnapshot(`
      "[Why did it grow? | Record | Cancel] {"sprintId":"sprint-12","day":"2026-11-04"}
      A card grew, so please say why. Nothing is recorded yet. Surprise work: nobody foresaw it, and the card can’t be accepted without it. Estimate drift: the same work turned out larger than estimated.
      <left:card-1> 1. LP-1 Import tide tables: points left (was 3) (optional): "4"
      <worked:card-1> LP-1 Import tide tables: points worked since the last answer (optional): "1" – Only needed when it isn’t simply the difference.
      <surprise:card-1> LP-1 Import tide tables: of the 2 points of growth, how many were surprise work?:  – From 0 to 2; the rest counts as estimate drift.
      <note:card-1> LP-1 Import tide tables: what came up? (optional):  – A few words about the work. The status and the verdict show them without your name. Begin with “private:” to keep them to yourself.
      <left:card-2> 2. LP-2 Show tides in the berth calendar: points left (was 8) (optional): "6"
      ---
      <takeCardIds> Take cards that nobody owns yet (optional): ["card-4=3 left: Warn of low water"] – You become their owner and are asked about them from now on."
    `);
    const names = (view: ReturnType<typeof answerFormView>): string[] =>
      view.blocks.flatMap((block) => ('block_id' in block && block.block_id ? [block.block_id] : []));
    const answered = { ...answerForm, cards: answerForm.cards.slice(0, 2) };
    const first = names(answerFormView(answered)).filter((name) => name !== 'moreCardIds');
    expect(names(answerFormView(answered, growth))).toEqual(expect.arrayContaining(first));
  });

  it('shows an answer given before, with its explanation', () => {
    const given = { worked: 1, left: 4, surprise: 2, note: 'Two formats' };
    const text = formText(answerFormView({ ...answerForm, cards: [{ ...firstCard, given }], takeable: [] }));
    expect(text).toMatchInlineSnapshot(`
      "[What is left? | Record | Cancel] {"sprintId":"sprint-12","day":"2026-11-04"}
      Harbour 12, Wed 4 Nov. Fill in what has changed; a card that you leave empty stays as it is. Points go in halves, such as 2.5.
      <left:card-1> 1. LP-1 Import tide tables: points left (was 3) (optional): "4"
      <worked:card-1> LP-1 Import tide tables: points worked since the last answer (optional): "1" – Only needed when it isn’t simply the difference.
      <surprise:card-1> LP-1 Import tide tables: surprise work in this change, in points (optional): "2" – The rest of the growth counts as estimate drift.
      <note:card-1> LP-1 Import tide tables: what came up? (optional): "Two formats" – A few words about the work. The status and the verdict show them without your name. Begin with “private:” to keep them to yourself.
      <moreCardIds> More to say about (optional): ["card-1=LP-1 Import tide tables"] – Points worked, a note, a block, or surprise work that wasn’t needed: the form then asks about these cards, and keeps what you typed."
    `);
  });

  it('keeps the explanation “all drift” of an answer given before', () => {
    const given = { worked: undefined, left: 5, surprise: 0, note: '' };
    const text = formText(answerFormView({ ...answerForm, cards: [{ ...firstCard, given }] }));
    expect(text).toContain('surprise work in this change, in points (optional): "0"');
  });

  it('lets surprise work be given back on a card that holds some', () => {
    const holding = { ...firstCard, card: { ...firstCard.card, surprisePoints: 2 } };
    const more = { answers: [], cardIds: [holding.card.cardId] };
    const form = { ...answerForm, cards: [holding, ...otherCards] };
    const text = formText(answerFormView(form, undefined, undefined, more));
    expect(text).toContain('2 points of surprise work on this card so far. If some wasn’t needed after all');
    expect(text.match(/<surprise:/g)).toHaveLength(1);
  });

  it('takes 15 numbers for 15 cards: one field each, until more is opened', () => {
    const cards = linesOf(Array.from({ length: 15 }, (_, i) => card(i + 1))).map((line) => ({
      card: line,
      previousLeftPoints: 5,
      given: undefined,
    }));
    const form = { ...answerForm, cards, takeable: [] };
    const fields = (view: ReturnType<typeof answerFormView>): string[] =>
      view.blocks.flatMap(({ block_id }) =>
        block_id?.includes(':') ? [block_id.split(':')[0] as string] : [],
      );
    expect(fields(answerFormView(form))).toEqual(cards.map(() => 'left'));
    const more = { answers: [], cardIds: cards.map(({ card: { cardId } }) => cardId) };
    const opened = answerFormView(form, undefined, undefined, more);
    expect(fields(opened)).toEqual(cards.flatMap(() => ['left', 'worked', 'note', 'blocked']));
    expect(opened.blocks.length).toBeLessThanOrEqual(100);
  });

  it('keeps what was typed when the fields of a card are opened', () => {
    const answers = [{ cardId: firstCard.card.cardId, worked: '', left: '2.5', surprise: '', note: '' }];
    const more = { answers, cardIds: [firstCard.card.cardId] };
    const text = formText(answerFormView(answerForm, undefined, undefined, more));
    expect(text).toContain('<left:card-1> 1. LP-1 Import tide tables: points left (was 3) (optional): "2.5"');
    expect(text.match(/<worked:/g)).toHaveLength(1);
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
  it('pull: the load, the chances of each size, a checklist and a field for cards', () => {
    const pull = {
      heading,
      load: statusOf().load,
      check: pullInCheckOf(),
      workingDaysLeft: 5,
    };
    expect(formText(pullFormView(pull))).toMatchInlineSnapshot(`
      "[Pull in cards | Pull in | Cancel] {"sprintId":"sprint-12"}
      Harbour 12: 5 working days come after today. The load is heavy: the chance of finishing at least 80% of the commitment is 32%. About 13 points will probably be finished by the end. Of 10 sprints like this, 8 end between 8 and 19. Half of them end between 10 and 15.
      <cards> Cards, one a line:  – title, estimate, @owner, and a link if there is one. Halves are fine, such as 0.5. Lists, tables and rows of a spreadsheet work as well. A title may begin with a short name: berth-3: Fog horn. Nobody is asked about a card without an owner.
      *Will it be finished?*
      • 1 point: 42% chance after the open work, 97% if done first
      • 3 points: 31% chance after the open work, 90% if done first; of 7 such cards 5 were finished
      • 8 points: 6% chance after the open work, 44% if done first
      • 13 points or more: hardly, even if done first
      Based on 14 closed sprints of the team and the surprise work that cards of each size tend to hold. It assumes one queue for the whole team: if the card’s owner is free and the others aren’t, look at “done first”. What is done first leaves that much less time for the 16 points of open work.
      Of 9 cards pulled in before, 6 were finished in the same sprint.
      *Before you pull it in*
      • Independent: can it be finished without waiting for another card?
      • Negotiable: may the team still choose how to do it?
      • Valuable: who will be glad that it is done this sprint?
      • Estimable: do you know enough to give it points?
      • Small: does it fit into the time that is left?
      • Testable: how will you see that it is finished?"
    `);
    expect(formText(pullFormView({ ...pull, workingDaysLeft: 0 }))).toContain(
      'Harbour 12: no working day comes after today',
    );
  });

  it('drop: a card and a reason', () => {
    expect(formText(dropFormView({ heading, cards: plan.cards }))).toMatchInlineSnapshot(`
      "[Drop a card | Drop | Cancel] {"sprintId":"sprint-12"}
      A card dropped from Harbour 12 still counts with its estimate, as not finished, and is listed with your reason. If it was a mistake, it can be taken back.
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
      "[Close the sprint? | Close now | Keep it open] {"sprintId":"sprint-12"}
      Harbour 12 would close by itself on Fri 13 Nov at 17:00.
      Finished so far: 5 of 18 points committed. 4 cards with 16 points left will count as not finished.
      The verdict is posted in the channel. A facilitator can reopen the sprint until closing time on the next working day."
    `);
    expect(formText(cancelFormView({ heading }))).toMatchInlineSnapshot(`
      "[Cancel the sprint? | Cancel it | Keep it] {"sprintId":"sprint-12"}
      Harbour 12 ends at once and without a verdict. Its numbers are kept, and never count as history. This can’t be undone.
      <reason> Reason (optional):  – The channel reads it."
    `);
  });
});

describe('planning questions', () => {
  it('range: the days of the coming sprint, and the days off and away', () => {
    const advice = rangeAdvice(STEADY, 2.5);
    expect(formText(rangeFormView(advice, 'D1'))).toMatchInlineSnapshot(`
      "[Commitment range | Show the range | Cancel] {"teamId":"team-harbour","replyTo":"D1"}
      How much should Harbour commit to? What past sprints achieved is scaled to the working time of this one.
      <startsOn> First day: "2026-11-30"
      <endsOn> Last day: "2026-12-11"
      <awayDays> Days off and away, all members together (optional): "2.5" – All of them, also those entered with /loadline off: none counts twice. Each holiday counts once for every member. Leave empty if you don’t know.
      <points> A commitment to look at (optional):  – In points. The answer says how likely it is to be kept."
    `);
    expect(formText(rangeFormView(rangeAdvice(STEADY)))).toContain('all members together (optional):  –');
  });

  it('forecast: how much is left, by how much it grows, and the pace so far', () => {
    expect(
      formText(forecastFormView({ team, velocities: [22, 25.5, 21], keptNames: [] })),
    ).toMatchInlineSnapshot(`
      "[Forecast | Show the dates | Cancel] {"teamId":"team-harbour"}
      When will Harbour have finished a larger body of work? Its latest sprints finished 22, 25.5 and 21 points.
      <backlogPoints> Points left to do (optional):  – The sum of the estimates of all its cards, in the team’s own points.
      <growthPoints> Growth, in points a sprint (optional):  – By how much the work grows while you do it: new wishes, forgotten cards. Such as 5, or 2-8 if you are unsure. Leave empty for as much as measured so far; 0 is none.
      <sharePercent> Share of your sprints that goes to it, in percent (optional):  – The rest goes to other work. Leave empty if all of it does.
      <byDay> Is there a day by which it’s wanted? (optional):  – Then the answer also says how likely that is, and how much will be finished by then. Without points above, it says only that."
    `);
  });

  it('forecast: begins with the numbers of the question before', () => {
    const asked = { about: 'forecast', backlogPoints: 120, growthPoints: 2.5 } as const;
    const text = formText(forecastFormView({ team, velocities: [22], keptNames: [] }, asked, 'D1'));
    expect(text).toContain('Its latest sprint finished 22 points.');
    expect(text).toContain('<backlogPoints> Points left to do (optional): "120"');
    expect(text).toContain('<growthPoints> Growth, in points a sprint (optional): "2.5"');
    expect(formText(forecastFormView({ team, velocities: [], keptNames: [] }))).toContain(
      'No closed sprint shows yet',
    );
  });
});

describe('value and baseline', () => {
  it('value: the sprint with its present value, and a number', () => {
    expect(formText(valueFormView(valueForm))).toMatchInlineSnapshot(`
      "[Record a value | Record | Cancel] {"teamId":"team-harbour"}
      What was a sprint of Harbour worth? One number for each sprint, always in the same unit. You then see its growth next to the growth of velocity.
      <sprintId> Sprint: ["sprint-11=Harbour 11, ended 30 October 2026: no value yet","sprint-10=Harbour 10, ended 26 December 2025: -3.5"] "sprint-11=Harbour 11, ended 30 October 2026: no value yet"
      <recordedValue> Value (optional):  – One number per sprint, in a unit of your choice: revenue, users, anything. A new number replaces the old one, which is kept on record.
      <valuesFile> Or values of several sprints, as a CSV file (optional):  – With the columns sprint and value, as in a file from /loadline export. You see what it would record first.
      (Members and the product owner can see it with \`/loadline history\`, and may share that in the channel.)"
    `);
  });

  it('baseline: the first of all, or one of the closed sprints with what was finished in it', () => {
    expect(formText(baselineFormView(baselineForm))).toMatchInlineSnapshot(`
      "[Baseline sprint | Save | Cancel] {"teamId":"team-harbour"}
      Velocity growth of Harbour compares the velocity of a sprint with that of the baseline sprint. Choose one in which the team worked as it usually did then, or the median of the first three.
      <sprintId> Baseline sprint: ["first=First: Harbour 3, ended 26 December 2025: 10 points","first-three=The median of the first three: 11 points","sprint-11=Harbour 11, ended 30 October 2026: 12.5 points","sprint-3=Harbour 3, ended 26 December 2025: 10 points"] "first=First: Harbour 3, ended 26 December 2025: 10 points" – Verdicts that are posted keep their numbers. The next ones, and the history, use the new baseline."
    `);
  });

  it('begin with the latest sprint, and with the baseline as it is', () => {
    const chosen = (view: { blocks: object[] }) =>
      JSON.stringify(view.blocks).match(/"initial_option":.*?"value":"([^"]*)"/)?.[1];
    expect(chosen(valueFormView(valueForm))).toBe('sprint-11');
    expect(chosen(baselineFormView(baselineForm))).toBe('first');
    expect(chosen(baselineFormView({ ...baselineForm, named: baselineForm.choices[1] }))).toBe('sprint-3');
  });

  it('say how to name a sprint that is too old for the list', () => {
    expect(formText(baselineFormView({ ...baselineForm, leftOut: 1 }))).toContain(
      '1 older sprint isn’t in the list; name it with `/loadline baseline` and its name.',
    );
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
    [
      'preview',
      planPreviewView(preview, 'D1'),
      planPreviewContext,
      { teamId: team.id, seen: 'f1f2', replyTo: 'D1' },
    ],
    [
      'answer',
      answerFormView(answerForm, undefined, 'D1'),
      answerContext,
      { sprintId: 'sprint-12', day: '2026-11-04', replyTo: 'D1' },
    ],
    ['value', valueFormView(valueForm, 'D1'), teamContext, { teamId: team.id, replyTo: 'D1' }],
    ['baseline', baselineFormView(baselineForm, 'D1'), teamContext, { teamId: team.id, replyTo: 'D1' }],
    ['close', closeFormView(close, 'D1'), sprintContext, { sprintId: 'sprint-12', replyTo: 'D1' }],
    ['cancel', cancelFormView({ heading }), sprintContext, { sprintId: 'sprint-12' }],
  ] as const)('comes back with it: %s', (_name, view, schema, context) => {
    expect(decodeValue<object>(schema, view.private_metadata)).toEqual(context);
  });
});
