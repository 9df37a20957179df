import { describe, expect, test } from 'vitest';
import { burndownLayout } from '../../src/charts/burndown-layout.ts';
import { burndownPng } from '../../src/charts/burndown-png.ts';
import { palette } from '../../src/charts/palette.ts';
import { pixelDensity } from '../../src/charts/render-png.ts';
import type { Burndown } from '../../src/sprint/burndown.ts';
import * as examples from './burndown-examples.ts';
import { type DecodedPng, decodedPng } from './decoded-png.ts';

const { burndown: _, ...named } = examples;
const burndowns: [string, Burndown][] = Object.entries(named);

const drawn = async (burndown: Burndown) => decodedPng(await burndownPng(burndown));

/** Looks at the places of the picture in layout pixels. */
function lookingAt(png: DecodedPng) {
  return (x: number, y: number) => png.colourAt(x * pixelDensity, y * pixelDensity);
}

/** Whether the colour is met on the way from one height to another. */
function hasColourBetween(png: DecodedPng, colour: string, x: number, top: number, bottom: number): boolean {
  for (let y = top; y <= bottom; y += 0.5) if (lookingAt(png)(x, y) === colour) return true;
  return false;
}

describe('the burndown picture', () => {
  test('has nothing of the pictures drawn before it, one after the other or at once', async () => {
    const alone = await burndownPng(examples.allFuture);
    const others = burndowns.map(([, burndown]) => burndown);
    for (const other of others) await burndownPng(other);
    expect(await burndownPng(examples.allFuture)).toEqual(alone);
    const atOnce = await Promise.all(
      [...others, examples.allFuture].map((burndown) => burndownPng(burndown)),
    );
    expect(atOnce.at(-1)).toEqual(alone);
  });

  test.each(burndowns)('%s: is 1600 by 900, opaque and under 150 kB', async (_name, burndown) => {
    const bytes = await burndownPng(burndown);
    const png = await decodedPng(bytes);
    expect([png.widthPx, png.heightPx]).toEqual([1600, 900]);
    expect(png.opaque).toBe(true);
    expect(bytes.length).toBeLessThan(150_000);
  });

  test.each(burndowns)(
    '%s: the line of points left runs through every evening and no further',
    async (_name, burndown) => {
      const { xOf, yOf, leftEnd } = burndownLayout(burndown);
      const colourAt = lookingAt(await drawn(burndown));
      expect(colourAt(xOf(0), yOf(burndown.commitmentPoints))).toBe(palette.left);
      burndown.days.forEach(({ leftPoints }, index) => {
        if (leftPoints !== undefined) expect(colourAt(xOf(index + 1), yOf(leftPoints))).toBe(palette.left);
      });
      const lastPosition = burndown.days.length;
      if (leftEnd.position < lastPosition)
        expect(colourAt(xOf(lastPosition), yOf(leftEnd.leftPoints))).not.toBe(palette.left);
    },
  );

  test('the ideal line is dashed and falls from the commitment to its value on the last day', async () => {
    const { xOf, yOf } = burndownLayout(examples.allFuture);
    const colourAt = lookingAt(await drawn(examples.allFuture));
    const alongLine = Array.from({ length: 400 }, (_, step) => {
      const position = 0.3 + (step / 400) * 7.5;
      return colourAt(xOf(position), yOf(21 * (1 - position / 8)));
    });
    const shareDrawn = alongLine.filter((colour) => colour === palette.ideal).length / alongLine.length;
    // Six pixels drawn, five not.
    expect(shareDrawn).toBeGreaterThan(0.35);
    expect(shareDrawn).toBeLessThan(0.65);
  });

  test('no ideal line is drawn when there was no commitment', async () => {
    const stillNothing = examples.burndown('Nothing planned', 0, [[undefined], [undefined], [undefined]]);
    const { xOf, yOf } = burndownLayout(stillNothing);
    const colourAt = lookingAt(await drawn(stillNothing));
    const colours = new Set(
      Array.from({ length: 200 }, (_, step) => colourAt(xOf(1 + step / 100), yOf(0) - 0.5)),
    );
    expect(colours).not.toContain(palette.ideal);
  });

  test('pulled-in work is a filled bar on its day, as high as its points, and nowhere else', async () => {
    const { xOf, pulledInTrack, trackPoints } = burndownLayout(examples.finishedSprint);
    const colourAt = lookingAt(await drawn(examples.finishedSprint));
    const height = pulledInTrack.bottom - pulledInTrack.top;
    examples.finishedSprint.days.forEach(({ pulledInPoints }, index) => {
      const tip = pulledInTrack.bottom - (pulledInPoints / trackPoints) * height;
      const inside = colourAt(xOf(index + 1) + 6, tip + 2);
      const above = colourAt(xOf(index + 1) + 13, tip - 2);
      if (pulledInPoints > 0) expect(inside).toBe(palette.pulledIn);
      expect(above).not.toBe(palette.pulledIn);
    });
  });

  test('surprise work is hatched: its bars show its colour and the card', async () => {
    const { xOf, surpriseTrack } = burndownLayout(examples.growth);
    const colourAt = lookingAt(await drawn(examples.growth));
    const colours = Array.from({ length: 40 }, (_, step) =>
      colourAt(xOf(1) - 10 + step / 2, surpriseTrack.bottom - 8),
    );
    expect(colours).toContain(palette.surprise);
    expect(colours).toContain(palette.card);
  });

  test('a day without surprise work shows no trace of a bar', async () => {
    const { xOf, surpriseTrack } = burndownLayout(examples.growth);
    const png = await drawn(examples.growth);
    const track = [surpriseTrack.top, surpriseTrack.bottom + 1] as const;
    expect(hasColourBetween(png, palette.surprise, xOf(4) + 5, ...track)).toBe(true);
    expect(hasColourBetween(png, palette.surprise, xOf(5) + 5, ...track)).toBe(false);
  });

  test('surprise work that was not needed hangs below the line', async () => {
    const { xOf, surpriseTrack, surpriseFloorPoints, trackPoints } = burndownLayout(
      examples.unneededSurprise,
    );
    const png = await drawn(examples.unneededSurprise);
    const height = surpriseTrack.bottom - surpriseTrack.top;
    const zeroY = surpriseTrack.bottom + (surpriseFloorPoints / trackPoints) * height;
    const above = [surpriseTrack.top, zeroY - 2] as const;
    const below = [zeroY + 2, surpriseTrack.bottom] as const;
    // 3 points on Monday, 4 points taken back on Wednesday.
    expect(hasColourBetween(png, palette.surprise, xOf(1), ...above)).toBe(true);
    expect(hasColourBetween(png, palette.surprise, xOf(1), ...below)).toBe(false);
    expect(hasColourBetween(png, palette.surprise, xOf(3), ...above)).toBe(false);
    expect(hasColourBetween(png, palette.surprise, xOf(3), ...below)).toBe(true);
  });

  test.each([
    ['on its evening, when it is a working day', '2026-11-05', 4],
    ['between two evenings, when it is a day off', '2026-11-07', 5.5],
  ])('today is an upright line %s', async (_where, today, position) => {
    const { xOf, pulledInTrack, surpriseTrack } = burndownLayout(examples.midSprint);
    const between = (pulledInTrack.bottom + 4 + surpriseTrack.top - 10) / 2;
    const marked = await drawn({ ...examples.midSprint, today });
    const unmarked = await drawn({ ...examples.midSprint, today: undefined });
    expect(lookingAt(marked)(xOf(position), between)).toBe(palette.today);
    expect(lookingAt(unmarked)(xOf(position), between)).toBe(palette.card);
  });

  test.each(['2026-10-30', '2026-11-14'])('today is not marked outside the sprint, on %s', async (today) => {
    const outside = await burndownPng({ ...examples.finishedSprint, today });
    expect(Buffer.from(outside).equals(await burndownPng(examples.finishedSprint))).toBe(true);
  });

  test('the same burndown gives the same bytes, also when others are drawn at the same time', async () => {
    const alone = await burndownPng(examples.midSprint);
    const [again, , atOnce] = await Promise.all(
      [examples.midSprint, examples.growth, examples.midSprint].map(burndownPng),
    );
    expect(Buffer.from(alone).equals(again ?? alone.subarray(1))).toBe(true);
    expect(Buffer.from(alone).equals(atOnce ?? alone.subarray(1))).toBe(true);
  });

  test('one point more left, or another name, gives another picture', async () => {
    const first = Buffer.from(await burndownPng(examples.burndown('Ebb', 20, [[15], [8]])));
    const other = Buffer.from(await burndownPng(examples.burndown('Ebb', 20, [[16], [8]])));
    const renamed = Buffer.from(await burndownPng(examples.burndown('Eddy', 20, [[15], [8]])));
    expect(first.equals(other)).toBe(false);
    expect(first.equals(renamed)).toBe(false);
  });

  test('a day that is no date is refused instead of drawn', async () => {
    const [day] = examples.oneDay.days;
    if (day === undefined) throw new Error('the example has a day');
    await expect(burndownPng({ ...examples.oneDay, days: [{ ...day, day: 'soon' }] })).rejects.toThrow(
      RangeError,
    );
  });
});
