import { chanceFrom } from '../house/seeded.ts';
import type { Bench } from './main.ts';
import { rowFill } from './rowFill.ts';
import { median, table, timesOf } from './rounds.ts';
import { benchScene, gridAround, lumpScene, townScene, type BenchScene } from './scenes.ts';

const ROUNDS = 15;
const CELLS = 400_000;

interface Point {
  readonly series: string;
  readonly triangles: number;
  readonly cells: number;
  /** What the series grows by. */
  readonly size: number;
  readonly fill: () => void;
}

const pointOf = (
  series: string,
  { facets, cameras, half }: BenchScene,
  cells: number,
  by: 'triangles' | 'cells',
): Point => {
  const fill = rowFill(facets);
  const views = cameras.map((camera) => ({ camera, grid: gridAround(camera.eye, half, cells) }));
  return {
    series,
    triangles: facets.count,
    cells,
    size: by === 'cells' ? cells : facets.count,
    fill: () => views.forEach(({ camera, grid }) => fill(camera, grid)),
  };
};

/** The exponent of the power law nearest to points in logarithms: least squares. */
function exponentOf(sizes: readonly number[], times: readonly number[]): number {
  const [x, y] = [sizes.map(Math.log), times.map(Math.log)];
  const mean = (list: readonly number[]) => list.reduce((sum, n) => sum + n, 0) / list.length;
  const [mx, my] = [mean(x), mean(y)];
  const both = x.reduce((sum, n, at) => sum + (n - mx) * ((y[at] ?? 0) - my), 0);
  return both / x.reduce((sum, n) => sum + (n - mx) ** 2, 0);
}

const bench: Bench = {
  title: 'How the row fill grows with triangles and with cells, 4 cameras',
  async run() {
    const street = benchScene('S2 street');
    const points = [
      ...[5, 10, 20, 40].map((side) => pointOf('a town spreads', townScene(side), CELLS, 'triangles')),
      ...[5, 10, 20, 40, 80].map((fine) =>
        pointOf('the same lumps in finer meshes', lumpScene(fine), CELLS, 'triangles'),
      ),
      ...[25_000, 100_000, 400_000, 1_600_000].map((cells) =>
        pointOf('a street in finer cells', street, cells, 'cells'),
      ),
    ];
    const name = (at: number) => `p${at}`;
    const jobs = Object.fromEntries(points.map(({ fill }, at) => [name(at), fill]));
    for (const { fill } of points) for (let warm = 0; warm < 3; warm += 1) fill();
    const times = await timesOf<string>(jobs, ROUNDS, chanceFrom(21));
    const spent = points.map((_, at) => median(times(name(at))));
    return table(
      ['series', 'triangles', 'cells', 'row fill, ms', 'exponent of the series'],
      points.map((point, at) => {
        const own = points.flatMap((one, index) => (one.series === point.series ? [index] : []));
        const last = own.at(-1) === at;
        const sizes = own.map((index) => points[index]?.size ?? 1);
        const all = own.map((index) => spent[index] ?? 1);
        const exponent = last ? exponentOf(sizes, all).toFixed(2) : '';
        return [
          own[0] === at ? point.series : '',
          point.triangles,
          point.cells,
          (spent[at] ?? 0).toFixed(2),
          exponent,
        ];
      }),
    );
  },
};

export default bench;
