import { describe, expect, test } from 'vitest';
import { cardPage, type CardInput } from '../../../src/draw/card/cardPage.ts';
import type { CardCaution } from '../../../src/draw/card/cautionBlock.ts';
import { paperOf, type PaperName } from '../../../src/draw/card/sheets.ts';
import type { Page } from '../../../src/exchange/paper/page.ts';
import { NO_LIMITS } from '../../../src/optics/mount.ts';
import { defaultDevice } from '../../../src/plan/defaultDevice.ts';
import type { Plan, PlanCamera } from '../../../src/plan/plan.ts';
import { isThorough } from '../../house/seeded.ts';
import { bare, factsOf, houseTurned, siteOf } from './cardSites.ts';
import { textsOf, wordFaults } from './wordFaults.ts';
import { closeTo } from './near.ts';

const hosted = { ...bare, host: 'house', face: 0, corner: 'start' } as const;
const arm = { ...hosted, kind: 'arm', distance: 3.8, height: 2.4, reach: 0.2, drop: 0.1 } as const;

const varifocal = {
  ...defaultDevice,
  lens: {
    ...defaultDevice.lens,
    shortest: 2.8,
    longest: 12,
    focalLength: 4.2,
    statedHfov: null,
    statedVfov: null,
  },
};

/** A site for each way that a camera is fixed, also at the ends of a wall and with what takes much room. */
const SITES: Readonly<Record<string, Plan>> = {
  arm: siteOf([houseTurned(0)], arm, { device: varifocal, pan: 200, exposure: { day: 10, night: 40 } }),
  flush: siteOf([houseTurned(77)], { ...hosted, kind: 'flush', distance: 0.1, height: 0.2, standOff: 0.05 }),
  'at the right end': siteOf([houseTurned(200)], { ...arm, distance: 7.95, height: 2.7 }, { pan: 10 }),
  soffit: siteOf([houseTurned(0)], { ...hosted, kind: 'soffit', distance: 6, inset: 0.25, drop: 0.1 }),
  corner: siteOf(
    [houseTurned(0)],
    { ...bare, kind: 'corner', host: 'house', face: 1, height: 2.4, reach: 0.2 },
    { pan: 150 },
  ),
  pole: siteOf(
    [houseTurned(0)],
    { kind: 'pole', at: [4, -5], height: 3, reach: 0.3, facing: 20, diameter: 0.114, limits: NO_LIMITS },
    { device: varifocal, pan: 10 },
  ),
  'pole with nothing near': siteOf([], {
    kind: 'pole',
    at: [4, -5],
    height: 6,
    reach: 0,
    facing: 200,
    diameter: 0.2,
    limits: NO_LIMITS,
  }),
  'long wall': siteOf(
    [
      houseTurned(0, {
        outline: [
          [0, 0],
          [46, 0],
          [46, 6],
          [0, 6],
        ],
        height: 8.4,
        name: 'The old weaving shed by the upper gate, northern range',
      }),
    ],
    { ...arm, distance: 22, height: 6, plate: { width: 0.3, height: 0.5, right: 0.4, up: -0.3 } },
    { name: 'Camera over the upper yard, looking at the loading door' },
  ),
};

const caution = (id: string, isStop: boolean, change: Partial<CardCaution> = {}): CardCaution => ({
  id,
  isStop,
  ticked: false,
  said: 'The hole is 0.12 m from the ceiling of Ground floor: cables and pipes often run there.',
  advice: 'Search for them from both sides. Nothing that is drawn here shows that a place is free.',
  status:
    id === 'a'
      ? 'lines and bands of a wiring rule, as electricians’ pages quote them'
      : 'common practice, no source',
  ...change,
});

const landmarks = ['a', 'b', 'c', 'd'].map((letter, at) => ({
  letter,
  name:
    at % 2 === 0
      ? 'Front door, left jamb, foot'
      : 'The old weaving shed by the upper gate, right jamb of its door, top',
  where: `${10 * at} % across, ${90 - at} % down`,
}));

/** A wide picture, a tall one as of a corridor, one in which nothing is to be found, and none. */
const PICTURES: readonly CardInput['picture'][] = [
  { drawn: { width: 420, height: 236, marks: [], levels: 4 }, landmarks },
  { drawn: { width: 236, height: 420, marks: [], levels: 4 }, landmarks },
  { drawn: { width: 420, height: 315, marks: [], levels: 4 }, landmarks: [] },
  null,
];

const MANY = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((id) => caution(id, true));

function inputOf(plan: Plan, change: Partial<CardInput> = {}): CardInput {
  return {
    facts: factsOf(plan),
    section: null,
    title: {
      camera: plan.cameras['C']?.name ?? '',
      site: 'Card site',
      number: 'Card 1 of 1',
      date: '25 November 2026',
      state: 'plan 0123-4567',
      conditions: 'as drawn',
      edition: 'IEC 62676-4:2014',
    },
    reading: { units: 'metres', courses: false },
    paper: 'a4',
    picture: null,
    cautions: [],
    asBuilt: {},
    ...change,
  };
}

const wordsOf = (page: Page): readonly string[] => textsOf(page).map(({ text }) => text);

describe('no word lies on another or off the page', () => {
  const papers: readonly PaperName[] = ['a4', 'letter'];

  const few = [caution('a', true), caution('c', false)];
  const looks: readonly Partial<CardInput>[] = isThorough
    ? papers.flatMap((paper) =>
        (['metres', 'feet'] as const).flatMap((units) =>
          [[], few, MANY].flatMap((cautions) =>
            PICTURES.map((picture) => ({ paper, cautions, picture, reading: { units, courses: true } })),
          ),
        ),
      )
    : [
        {
          paper: 'a4',
          cautions: few,
          picture: PICTURES[0] ?? null,
          reading: { units: 'metres', courses: true },
        },
        {
          paper: 'letter',
          cautions: MANY,
          picture: PICTURES[1] ?? null,
          reading: { units: 'feet', courses: true },
        },
      ];

  test.each(Object.entries(SITES))('%s', (_, plan) => {
    const asBuilt = { height: '2405', by: 'A fitter whose name is longer than its line is', room: 'Landing' };
    const input = inputOf(plan, { asBuilt });
    for (const look of looks) expect(wordFaults(cardPage({ ...input, ...look }))).toEqual([]);
  });

  test('the sheets are those that printers have', () => {
    expect(papers.map((paper) => paperOf(paper))).toEqual([
      { name: 'A4', width: 210, height: 297 },
      { name: 'Letter', width: closeTo(8.5 * 25.4, 9), height: closeTo(11 * 25.4, 9) },
    ]);
  });
});

describe('what an installer reads', () => {
  test('two edges each way, in millimetres', () => {
    expect(wordsOf(cardPage(inputOf(SITES['arm'] ?? siteOf([], arm))))).toEqual(
      expect.arrayContaining([
        '900 from right jamb of Door',
        '1200 from left jamb of Window',
        '2500 above ground',
        '500 below underside of the eaves',
      ]),
    );
  });

  test('heights by courses of brick too, where that is asked for', () => {
    const page = cardPage(
      inputOf(siteOf([houseTurned(0)], arm), { reading: { units: 'metres', courses: true } }),
    );
    // 2500 = 33 × 75 + 25; 500 = 6 × 75 + 50.
    expect(wordsOf(page)).toEqual(
      expect.arrayContaining([
        '2500 = 33 courses + 25 mm above ground',
        '500 = 6 courses + 50 mm below underside of the eaves',
        '900 from right jamb of Door',
      ]),
    );
  });

  test('in feet and inches to an eighth, where the plan has them', () => {
    const page = cardPage(
      inputOf(siteOf([houseTurned(0)], arm), { reading: { units: 'feet', courses: false } }),
    );
    // 900 mm is 35.43 in, 1200 is 47.24, 2500 is 98.43, 500 is 19.685, nearer to 5/8 than to 3/4.
    expect(wordsOf(page)).toEqual(
      expect.arrayContaining([
        `2' 11 3/8" from right jamb of Door`,
        `3' 11 1/4" from left jamb of Window`,
        `8' 2 3/8" above ground`,
        `1' 7 5/8" below underside of the eaves`,
      ]),
    );
    // A plate of 120 mm is 4.72 in, without feet.
    expect(wordsOf(page)).toContain('4 3/4"');
  });

  test('that an edge was never measured', () => {
    const own = houseTurned(0);
    const openings = own.openings.map((one) => ({ ...one, got: 'guessed' as const }));
    expect(wordsOf(cardPage(inputOf(siteOf([{ ...own, openings }], arm))))).toContain(
      '900 from right jamb of Door (edge guessed)',
    );
  });

  test('under a soffit how far from wall and edge; around a corner the turn from both walls; on a post two tapes', () => {
    expect(wordsOf(cardPage(inputOf(SITES['soffit'] ?? siteOf([], arm))))).toEqual(
      expect.arrayContaining(['250 from wall', '150 from outer edge', '200 from right jamb of Window']),
    );
    expect(wordsOf(cardPage(inputOf(SITES['corner'] ?? siteOf([], arm))))).toEqual(
      expect.arrayContaining(['30° left; 60° right', '15° right', '2400 above ground']),
    );
    // (4, 5) from both corners: the root of 41.
    expect(wordsOf(cardPage(inputOf(SITES['pole'] ?? siteOf([], arm))))).toEqual(
      expect.arrayContaining([
        'A  6403 from south-west corner of House',
        'B  6403 from south-east corner of House',
        '3000 above ground to the lens',
      ]),
    );
  });

  test('the turn as whoever stands with the back to the wall has it, in whole degrees', () => {
    const turned = (change: Partial<PlanCamera>) =>
      wordsOf(cardPage(inputOf(siteOf([houseTurned(0)], arm, change))));
    expect(turned({ pan: 225, tilt: 24 })).toEqual(expect.arrayContaining(['45° right', '24° down']));
    expect(turned({ pan: 149.6, tilt: -3 })).toEqual(expect.arrayContaining(['30° left (30.4°)', '3° up']));
    expect(turned({ pan: 180.2, tilt: 0.1 })).toEqual(expect.arrayContaining(['straight out', 'level']));
  });

  test('what it rests on: edition, conditions, date, plan, and that it proves nothing', () => {
    const words = wordsOf(cardPage(inputOf(siteOf([houseTurned(0)], arm)))).join('\n');
    expect(words).toContain('Conditions: as drawn. IEC 62676-4:2014');
    expect(words).toContain('25 November 2026, plan 0123-4567');
    expect(words).toContain(
      'Nothing drawn here proves a place safe: detect cables and pipes from both sides. Local codes and licensed practice come first',
    );
  });

  test('what was noted of how it was built', () => {
    const page = cardPage(
      inputOf(siteOf([houseTurned(0)], arm), { asBuilt: { serial: 'SN 4711', room: 'Hall cupboard' } }),
    );
    expect(wordsOf(page)).toEqual(
      expect.arrayContaining(['SN 4711', 'Room where it comes out: Hall cupboard']),
    );
  });
});

describe('ready or not', () => {
  const signs = (cautions: CardInput['cautions']) =>
    wordsOf(cardPage(inputOf(siteOf([houseTurned(0)], arm), { cautions }))).filter((words) =>
      /NOT READY|^Do not drill|not worked out/u.test(words),
    );

  test('until every stop is ticked it says so, large', () => {
    expect(signs([caution('a', true), caution('b', true, { ticked: true }), caution('c', false)])).toEqual([
      'NOT READY',
      'Do not drill: 1 of 2 things to look at first is not ticked below.',
    ]);
    const [sign] = textsOf(
      cardPage(inputOf(siteOf([houseTurned(0)], arm), { cautions: [caution('a', true)] })),
    ).filter(({ text }) => text === 'NOT READY');
    expect(sign?.size).toBeGreaterThanOrEqual(6);
  });

  test('with every stop ticked it does not, whatever else there is to know', () => {
    expect(signs([caution('a', true, { ticked: true }), caution('c', false)])).toEqual([]);
  });

  test('nor can a card be drilled from of which cautions are not known', () => {
    expect(signs(null)).toContain('NOT READY');
  });

  test('no stop is cut short, however little room there is', () => {
    const words = wordsOf(
      cardPage(inputOf(SITES['arm'] ?? siteOf([], arm), { paper: 'letter', cautions: MANY })),
    ).join(' ');
    expect(words.split('Search for them from both sides.').length - 1).toBe(MANY.length);
  });
});
