import { chanceFrom } from '../house/seeded.ts';
import { nativeMissing, PACKETS, startNative, type NativeRays } from './embree/native.ts';
import { framedCells } from './framedCells.ts';
import type { Bench, Row } from './main.ts';
import { rayPerCell } from './rayPerCell.ts';
import { rowFill } from './rowFill.ts';
import { median, ratio, table, timesOf } from './rounds.ts';
import { benchScene, gridAround, type BenchScene, type SceneName } from './scenes.ts';

/**
 * What a row fill at 400,000 cells is to be faster by; the million triangles of S4 are reported only. Held against the
 * quietest rounds of both, since the machine may be shared.
 */
const BARS = { embree: 10, bvh: 100 };
const BARRED: readonly SceneName[] = ['S1 house', 'S2 street', 'S3 town'];
const CASES: readonly (readonly [SceneName, readonly number[]])[] = [
  ['S1 house', [100_000, 400_000, 1_600_000]],
  ['S2 street', [100_000, 400_000, 1_600_000]],
  ['S3 town', [100_000, 400_000, 1_600_000]],
  ['S4 dense', [100_000, 400_000, 1_600_000]],
];

interface Measured extends Row {
  readonly inFrame: number;
  readonly bvh: number;
  readonly single: number | null;
  readonly packet: number | null;
  readonly packetMode: string;
  /** Least time of theirs ÷ least of ours. */
  readonly quietBvh: number;
  readonly quietSingle: number | null;
  readonly apartBvh: number;
  readonly apartEmbree: number | null;
}

/** As long as this is filled again and again in a round, ms, since rays take that long too: one blink tells little. */
const LEAST_TIME = 60;

function meanTime(job: () => void): number {
  const start = performance.now();
  let runs = 0;
  for (; performance.now() - start < LEAST_TIME; runs += 1) job();
  return (performance.now() - start) / runs;
}

const apart = (one: Uint8Array, two: Uint8Array): number =>
  one.reduce((sum, state, at) => sum + (state === two[at] ? 0 : 1), 0);

async function measure(scene: BenchScene, cells: number, missing: string | null): Promise<Measured> {
  const { facets, cameras, half } = scene;
  const fill = rowFill(facets);
  const views = cameras.map((camera) => ({ camera, grid: gridAround(camera.eye, half, cells) }));
  const framed = views.map(({ camera, grid }) => {
    const { rows, solids } = fill(camera, grid);
    return framedCells(camera, grid, rows, solids);
  });
  const ours = new Uint8Array(framed.reduce((sum, { hidden }) => sum + hidden.length, 0));
  const theirs = new Uint8Array(ours.length);
  let from = 0;
  const parts = framed.map((cellsOfOne) => {
    const part = { ...cellsOfOne, theirs: theirs.subarray(from, from + cellsOfOne.hidden.length) };
    ours.set(cellsOfOne.hidden, from);
    from += cellsOfOne.hidden.length;
    return part;
  });
  const cast = rayPerCell(scene.solids);
  const native: NativeRays | null = missing === null ? await startNative(facets, framed) : null;
  const fillAll = () => views.forEach(({ camera, grid }) => fill(camera, grid));
  const jobs: Record<string, () => void | Promise<number>> = {
    ours: () => Promise.resolve(meanTime(fillAll)),
    bvh: () => parts.forEach(({ camera, targets, theirs: into }) => cast(camera.eye, targets, into)),
  };
  for (const mode of native === null ? [] : (['single', ...PACKETS] as const))
    jobs[mode] = async () => (await native?.run(mode)) ?? Number.NaN;
  for (let warm = 0; warm < 5; warm += 1) fillAll();
  const rounds = cells > 400_000 || facets.count > 500_000 ? 3 : 11;
  const times = await timesOf(jobs, rounds, chanceFrom(cells));
  await native?.run('single');
  const apartEmbree = native === null ? null : apart(ours, await native.hidden());
  native?.close();
  const best = PACKETS.toSorted((one, two) => median(times(one)) - median(times(two)))[0] ?? 'packet8';
  const over = (name: string): number | null =>
    times(name).length === 0 ? null : ratio(times(name), times('ours'));
  const quiet = (name: string): number | null =>
    times(name).length === 0 ? null : Math.min(...times(name)) / Math.min(...times('ours'));
  return {
    scene: scene.name,
    cells,
    path: 'typescript',
    ms: median(times('ours')),
    overBvh: over('bvh'),
    overEmbreeSingle: over('single'),
    overEmbreePacket: over(best),
    inFrame: ours.length,
    bvh: median(times('bvh')),
    single: native === null ? null : median(times('single')),
    packet: native === null ? null : median(times(best)),
    packetMode: best,
    quietBvh: quiet('bvh') ?? Number.NaN,
    quietSingle: quiet('single'),
    apartBvh: apart(ours, theirs),
    apartEmbree,
  };
}

const digits = (value: number | null, places: number): string => value?.toFixed(places) ?? 'absent';

const bench: Bench = {
  title:
    'Seen and hidden of cells, 4 cameras: our row fill in TypeScript, a general tree of boxes, native Embree',
  async run(record) {
    const missing = nativeMissing();
    const rows: Measured[] = [];
    for (const [name, sizes] of CASES) {
      const scene = benchScene(name);
      for (const cells of sizes) rows.push(await measure(scene, cells, missing));
    }
    rows.forEach(({ scene, cells, path, ms, overBvh, overEmbreeSingle, overEmbreePacket }) =>
      record({ scene, cells, path, ms, overBvh, overEmbreeSingle, overEmbreePacket }),
    );
    const missed = rows
      .filter(({ scene, cells }) => cells === 400_000 && BARRED.some((name) => name === scene))
      .filter(({ quietBvh, quietSingle }) => quietBvh < BARS.bvh || (quietSingle ?? Infinity) < BARS.embree);
    const lines = [
      ...(missing === null ? [] : [`Embree: absent, ${missing}`]),
      ...table(
        [
          'scene',
          'cells',
          'in frame, all cameras',
          'row fill, ms',
          'tree of boxes, ms',
          'Embree single, ms',
          'Embree packets, ms',
          '÷ tree of boxes',
          '÷ Embree single',
          '÷ Embree packets',
          'the same in the quietest rounds: tree, Embree single',
          'judged otherwise: tree, Embree',
        ],
        rows.map((row) => [
          row.scene,
          row.cells,
          row.inFrame,
          row.ms.toFixed(2),
          row.bvh.toFixed(0),
          digits(row.single, 1),
          row.packet === null ? 'absent' : `${row.packet.toFixed(1)} (${row.packetMode})`,
          digits(row.overBvh, 0),
          digits(row.overEmbreeSingle, 1),
          digits(row.overEmbreePacket, 1),
          `${row.quietBvh.toFixed(0)}, ${digits(row.quietSingle, 1)}`,
          `${row.apartBvh}, ${digits(row.apartEmbree, 0)}`,
        ]),
      ),
    ];
    if (missed.length > 0)
      throw new Error(
        `missed at 400,000 cells (${BARS.embree} × Embree single, ${BARS.bvh} × the tree): ` +
          `${missed.map(({ scene }) => scene).join(', ')}\n  ${lines.join('\n  ')}`,
      );
    return lines;
  },
};

export default bench;
