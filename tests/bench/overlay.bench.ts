import { FillRule, differenceD, unionD, type PathsD } from 'clipper2-ts';
import { areasOver, outlinesOf, type Seer } from '../../src/coverage/siteAreas.ts';
import { BandRule } from '../../src/coverage/rule.ts';
import type { ArcRings } from '../../src/sight/arcRings.ts';
import type { Facets } from '../../src/sight/facets.ts';
import { lensInside } from '../../src/sight/lensInside.ts';
import { horizontalPlane } from '../../src/base/plane.ts';
import { sightOf } from '../../src/sight/sightOf.ts';
import { chanceFrom, type Chance } from '../house/seeded.ts';
import { cameraWith } from '../optics/sampleCamera.ts';
import type { Bench } from './main.ts';
import { median, quantile, ratio, table, timesOf } from './rounds.ts';
import { benchScene } from './scenes.ts';

const ROUNDS = 21;
const MOST = 30;
/** ms for 30 cameras in the quicker rounds: neighbours on the machine only add. */
const BAR = 12;
const HEIGHT = 1.6;
const BANDS = [25, 62.5, 125, 250].map((density) => ({ key: `${density}`, name: `${density}`, density }));
const CAPS = [
  { above: 20, side: 90, band: 3 },
  { above: 30, side: 90, band: 2 },
];
const WINDOW = [
  [-40, -25],
  [40, -25],
  [40, 25],
  [-40, 25],
] as const;

/** Cameras over the street, of wide angle, every third with a bent lens. */
function seersOn(facets: Facets, chance: Chance): readonly Seer[] {
  const seers: Seer[] = [];
  while (seers.length < MOST) {
    const camera = cameraWith({
      eye: [chance.between(-36, 36), chance.between(-7, 7), chance.between(5.9, 6.5)],
      pan: chance.between(0, 360),
      tilt: chance.between(15, 40),
      focalLength: 2,
      k: seers.length % 3 === 2 ? 0 : 1,
      sensor: { width: 5.6, height: 3.15 },
    });
    if (lensInside(camera.eye, facets) !== null) continue;
    const { seen } = sightOf(camera, horizontalPlane(HEIGHT), WINDOW, facets).sight;
    seers.push({ camera, seen, rule: new BandRule(BANDS, CAPS, camera.range) });
  }
  return seers;
}

/** The same by a polygon library, arcs as their chords: what the best camera reaches, band by band. */
function byLibrary(outlines: readonly (readonly PathsD[])[]): readonly PathsD[] {
  const unions = BANDS.map((_, band) =>
    unionD(
      outlines.flatMap((one) => one[band] ?? []),
      [],
      FillRule.NonZero,
      6,
    ),
  );
  return unions.map((union, band) => {
    const finer = unions[band + 1];
    return finer === undefined ? union : differenceD(union, finer, FillRule.NonZero, 6);
  });
}

const pathsOf = ({ corners, starts }: ArcRings): PathsD =>
  Array.from(starts.subarray(0, -1), (start, ring) =>
    Array.from({ length: (starts[ring + 1] ?? 0) - start }, (_, at) => ({
      x: corners[(start + at) * 2] ?? 0,
      y: corners[(start + at) * 2 + 1] ?? 0,
    })),
  );

const bench: Bench = {
  title: `Best band and count over several cameras, ${BANDS.length} bands, the street S2`,
  async run() {
    const chance = chanceFrom(8);
    const seers = seersOn(benchScene('S2 street').facets, chance);
    const outlines = seers.map((seer) => outlinesOf(WINDOW, seer, HEIGHT));
    const paths = outlines.map((bands) => bands.map(pathsOf));
    const rows: (string | number)[][] = [];
    for (const cameras of [3, 8, 16, MOST]) {
      const [mine, theirs] = [outlines.slice(0, cameras), paths.slice(0, cameras)];
      const jobs = {
        overlay: () => void areasOver(mine, BANDS.length),
        library: () => void byLibrary(theirs),
        outlines: () => seers.slice(0, cameras).forEach((seer) => outlinesOf(WINDOW, seer, HEIGHT)),
      };
      Object.values(jobs).forEach((job) => job());
      const times = await timesOf(jobs, ROUNDS, chance);
      const edges = mine.flat().reduce((sum, { corners }) => sum + corners.length / 2, 0);
      rows.push([
        cameras,
        edges,
        quantile(times('overlay'), 0.1).toFixed(2),
        median(times('overlay')).toFixed(2),
        (quantile(times('outlines'), 0.1) / cameras).toFixed(2),
        median(times('library')).toFixed(1),
        ratio(times('library'), times('overlay')).toFixed(1),
      ]);
    }
    const lines = table(
      [
        'cameras',
        'edges',
        'overlay, 10th ms',
        'median ms',
        'outlines a camera, 10th ms',
        'library, median ms',
        'library ÷ overlay',
      ],
      rows,
    );
    if (Number(rows.at(-1)?.[2]) > BAR)
      throw new Error(`${MOST} cameras above ${BAR} ms:\n  ${lines.join('\n  ')}`);
    return lines;
  },
};

export default bench;
