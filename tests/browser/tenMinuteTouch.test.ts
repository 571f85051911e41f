import type { CDPSession, Page } from 'playwright-core';
import { test } from 'vitest';
import type { Vec2 } from '../../src/base/vector.ts';
import { changing, frames, settled, visiting } from './driver.ts';
import { A_PIXEL, F_PIXEL, PICTURE, PLACES, savedPlan, SCRIPT, sheetNow } from './tenMinutes.ts';
import { expectTheHouse, onPicture } from './theHouse.ts';

/** A tablet. */
const TABLET = { viewport: { width: 1180, height: 820 }, hasTouch: true };

/** What the table's tool keys are in the list of what can be built; the kind is then chosen in the strip. */
const BUILD: Readonly<Record<string, readonly [tool: RegExp, kind?: string]>> = {
  W: [/^Building/],
  BB: [/^Block/, 'Canopy'],
  G: [/^Site boundary/],
  F: [/^Fence/],
  FFF: [/^Fence/, 'Hedge'],
  O: [/^Door/],
};

const PAD: Readonly<Record<string, string>> = {
  '→': 'Right',
  '←': 'Left',
  '↑': 'Up',
  '↓': 'Down',
  x: 'by',
  '-': 'minus',
};

type Spot = { readonly x: number; readonly y: number };

/** A hand on the glass: it taps, it pinches, and every touch is counted. */
class Hand {
  taps = 0;
  private readonly page: Page;
  private readonly session: CDPSession;

  constructor(page: Page, session: CDPSession) {
    this.page = page;
    this.session = session;
  }

  private async touch(moments: readonly (readonly Spot[])[]): Promise<void> {
    const send = async (type: 'touchStart' | 'touchMove' | 'touchEnd', spots: readonly Spot[]) => {
      await this.session.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: spots.map(({ x, y }, id) => ({ x, y, id })),
      });
      await frames(this.page);
    };
    for (const [at, spots] of moments.entries()) await send(at === 0 ? 'touchStart' : 'touchMove', spots);
    await send('touchEnd', []);
    this.taps += 1;
  }

  async press(role: 'button' | 'menuitemradio', name: string | RegExp): Promise<void> {
    await this.page.getByRole(role, { name, exact: typeof name === 'string' }).tap();
    await frames(this.page);
    this.taps += 1;
  }

  /** A choice in the strip. */
  async choose(name: string): Promise<void> {
    const strip = this.page.getByRole('form', { name: 'What is being changed' });
    await strip.getByText(name, { exact: true }).tap();
    await frames(this.page);
    this.taps += 1;
  }

  private async bar(name: string): Promise<void> {
    await this.page.getByRole('toolbar', { name: 'Touch' }).getByRole('button', { name, exact: true }).tap();
    await frames(this.page);
    this.taps += 1;
  }

  private async pad(open: boolean): Promise<void> {
    // It is put away by itself where nothing more is asked.
    const isOpen = (await this.page.getByRole('group', { name: 'Type' }).count()) > 0;
    if (open !== isOpen) await this.bar('Type');
  }

  async type(name: string): Promise<void> {
    await this.pad(true);
    await this.page.getByRole('group', { name: 'Type' }).getByRole('button', { name, exact: true }).tap();
    await frames(this.page);
    this.taps += 1;
  }

  /** Whether a finger put there meets the picture, and nothing that lies over it. */
  private isBare({ x, y }: Spot): Promise<boolean> {
    return this.page.evaluate(
      ([left, top]) => Boolean(document.elementFromPoint(left, top)?.closest('[role="application"]')),
      [x, y] as const,
    );
  }

  /** Two fingers, beside what lies over the Model, pinched to a share of their distance and moved together. */
  private async two(share: number, up: number): Promise<void> {
    const { sheet, left, top } = await sheetNow(this.page);
    const middle = left + sheet.width / 2;
    for (let y = top + 110; y < top + sheet.height; y += 20) {
      const at = (apart: number, by: number) => [
        { x: middle - apart, y: y + by },
        { x: middle + apart, y: y + by },
      ];
      const spots = at(120, 0);
      if (!(await Promise.all(spots.map((spot) => this.isBare(spot)))).every(Boolean)) continue;
      const half = 60 * (1 + share);
      await this.touch([spots, at(half, up / 2), at(120 * share, up)]);
      return;
    }
    throw new Error('there is no room for two fingers');
  }

  /** Two fingers move the view until the place is well in view and nothing lies over it. */
  private async bring([x, y]: Vec2): Promise<Spot> {
    for (let turns = 0; turns < 30; turns += 1) {
      const { sheet, left, top } = await sheetNow(this.page);
      const spot = sheet.spotFromSite([x, y, 0]);
      const isIn =
        spot !== null &&
        spot.x > 80 &&
        spot.x < sheet.width - 60 &&
        spot.y > 60 &&
        spot.y < sheet.height - 110;
      const seen = spot && { x: left + spot.x, y: top + spot.y };
      if (seen && isIn && (await this.isBare({ x: seen.x + 3, y: seen.y + 2 }))) return seen;
      if (isIn) await this.two(1, spot.y < sheet.height / 2 ? 60 : -60);
      else await this.two(0.85, 0);
    }
    throw new Error(`${x}, ${y} does not come into view`);
  }

  async tap(place: Vec2): Promise<void> {
    await this.pad(false);
    const { x, y } = await this.bring(place);
    await this.touch([[{ x: x + 3, y: y + 2 }]]);
  }

  async fromHere(place: Vec2): Promise<void> {
    await this.pad(false);
    await this.bring(place);
    await this.bar('From here');
    await this.tap(place);
  }
}

/** Plays a row of the table: a hover is From here and a tap, keys are the pad's. */
async function playByTouch(hand: Hand, script: string, places = PLACES): Promise<void> {
  const words = script.split(' ');
  for (let k = 0; k < words.length; k += 1) {
    const word = words[k] ?? '';
    const build = BUILD[word];
    if (build) {
      await hand.press('button', 'Build');
      await hand.press('menuitemradio', build[0]);
      if (build[1] !== undefined) await hand.choose(build[1]);
    } else if (word === 'click' || word === 'hover') {
      const name = words[(k += 1)] ?? '';
      const place = places[name];
      if (!place) await hand.choose(name);
      else if (word === 'click') await hand.tap(place);
      else await hand.fromHere(place);
    } else if (word === 'Enter' || word === 'Tab' || word === 'Space') await hand.type(word);
    else for (const letter of word) await hand.type(PAD[letter] ?? letter);
  }
}

test(
  'the ten-minute house once more, by touch alone',
  visiting(async (open) => {
    const page = await open(TABLET);
    const hand = new Hand(page, await page.context().newCDPSession(page));
    await hand.press('button', 'Open');
    await changing(page, () => hand.press('button', 'New, empty plan'));
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      hand.press('button', /^Trace a drawing/),
    ]);
    await chooser.setFiles(PICTURE);
    await page
      .getByText(/Pick two points/)
      .first()
      .waitFor();
    await frames(page);
    await playByTouch(hand, 'click A click F 12→', { A: onPicture(A_PIXEL), F: onPicture(F_PIXEL) });
    for (const row of SCRIPT) await playByTouch(hand, row);
    process.stdout.write(`ten-minute house by touch: ${hand.taps} taps\n`);
    await settled(page);
    expectTheHouse(await savedPlan(page));
  }),
);
