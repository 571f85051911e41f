import { plainTurn, type PlainCamera } from './plainCamera.ts';
import { alongRow, breaksOf, OPEN } from './rowAreas.ts';
import type { RowScene } from './rowScene.ts';

/** What of seen ground counts for each band: px/m, limits from above (°, and the highest band kept past each), range (m). */
export interface Wanted {
  readonly densities: readonly number[];
  readonly caps: readonly { readonly above: number; readonly band: number }[];
  readonly range: number;
}

/**
 * Conditions along a row are sampled so many times, evenly in angle; a change between two is then found to a nanometre. For
 * some lenses bent beyond k = −½ too few: there 200 moved an area by a thousandth.
 */
const SAMPLES = 40;
/** Rows are at most this far apart, and no closer than this where what is on them changes, m. */
const [COARSE, FINE] = [0.15, 2e-4];
/** Simpson's halving test must pass to this, m² per m of rows. */
const TOLERANCE = 3e-7;

/**
 * Areas by rows: seen in the frame, then seen at each band or better, then hidden by each solid in the frame. Along a row the
 * ends of every stretch are found, by geometry and by halving; rows are put together by Simpson's rule, halved until it
 * agrees with itself and nothing appears or goes between rows. Good to about 1e-5 m²: see tests/property.
 */
export function bandsByRows(
  scene: RowScene,
  camera: PlainCamera,
  wanted: Wanted,
  samples = SAMPLES,
): number[] {
  return sumOfRows(new BandRow(scene, camera, wanted, samples), breaksOf(scene));
}

/** What lies on a row, as so many lengths. */
export interface Row {
  readonly size: number;
  at(y: number): Lengths;
}

/** Lengths on rows put together into areas, from the first break to the last. */
export function sumOfRows(row: Row, breaks: readonly number[]): number[] {
  const sums = new Array<number>(row.size).fill(0);
  for (let at = 0; at + 1 < breaks.length; at += 1) {
    const [low, high] = [breaks[at] ?? 0, breaks[at + 1] ?? 0];
    const parts = Math.max(1, Math.ceil((high - low) / COARSE));
    const hair = (high - low) * 1e-9;
    let before = row.at(low + hair);
    for (let part = 0; part < parts; part += 1) {
      const [from, to] = [
        low + (part * (high - low)) / parts,
        low + ((part + 1) * (high - low)) / parts - (part + 1 === parts ? hair : 0),
      ];
      const after = row.at(to);
      halve(row, from, before, (from + to) / 2, row.at((from + to) / 2), to, after, sums);
      before = after;
    }
  }
  return sums;
}

export interface Lengths {
  readonly lengths: readonly number[];
  /** Tells rows apart on which other things lie, or the same in another order. */
  readonly sign: string;
}

function halve(
  row: Row,
  from: number,
  first: Lengths,
  middle: number,
  half: Lengths,
  to: number,
  last: Lengths,
  sums: number[],
): void {
  const size = to - from;
  const [one, two] = [row.at((from + middle) / 2), row.at((middle + to) / 2)];
  const same = [half, last, one, two].every(({ sign }) => sign === first.sign);
  const f = (lengths: Lengths, i: number) => lengths.lengths[i] ?? 0;
  let worst = 0;
  const finer = sums.map((_, i) => {
    const coarse = (size / 6) * (f(first, i) + 4 * f(half, i) + f(last, i));
    const fine = (size / 12) * (f(first, i) + 4 * f(one, i) + 2 * f(half, i) + 4 * f(two, i) + f(last, i));
    worst = Math.max(worst, Math.abs(fine - coarse));
    return fine + (same ? (fine - coarse) / 15 : 0);
  });
  if ((same && worst <= TOLERANCE * size) || size <= FINE) {
    finer.forEach((area, i) => (sums[i] = (sums[i] ?? 0) + area));
    return;
  }
  halve(row, from, first, (from + middle) / 2, one, middle, half, sums);
  halve(row, middle, half, (middle + to) / 2, two, to, last, sums);
}

/** A stretch of a row, relative to the lens. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly owner: number;
  readonly held: readonly boolean[];
}

/** One camera's stretches of a row. */
export class BandRow implements Row {
  readonly size: number;
  private readonly scene: RowScene;
  private readonly samples: number;
  private readonly camera: PlainCamera;
  private readonly wanted: Wanted;
  private readonly axes: readonly (readonly number[])[];
  private readonly count: number;
  /** Conditions that must hold: the frame, then each band. */
  private readonly sets: readonly (readonly number[])[];

  constructor(scene: RowScene, camera: PlainCamera, wanted: Wanted, samples: number) {
    this.scene = scene;
    this.samples = samples;
    this.camera = camera;
    this.wanted = wanted;
    this.axes = [plainTurn(camera, [1, 0, 0]), plainTurn(camera, [0, 1, 0]), plainTurn(camera, [0, 0, 1])];
    const { densities, caps } = wanted;
    const frame = camera.k === 1 ? [] : [0, 1, 2, 3, 4].map((i) => 1 + densities.length + caps.length + i);
    this.count = 1 + densities.length + caps.length + frame.length;
    this.sets = [
      frame,
      ...densities.map((_, band) => [
        0,
        1 + band,
        ...caps.flatMap((cap, i) => (cap.band <= band ? [1 + densities.length + i] : [])),
        ...frame,
      ]),
    ];
    this.size = this.sets.length + scene.solids.length;
  }

  at(y: number): Lengths {
    const lengths = new Array<number>(this.size).fill(0);
    let sign = '';
    for (const { from, to, owner, held } of this.pieces(y)) {
      sign += `${owner},`;
      held.forEach((holds, i) => {
        if (owner < OPEN || (owner >= 0 && i > 0) || !holds) return;
        const slot = owner >= 0 ? this.sets.length + owner : i;
        lengths[slot] = (lengths[slot] ?? 0) + to - from;
        sign += i;
      });
    }
    return { lengths, sign };
  }

  /** Stretches between whose ends nothing changes: what hides them, and which sets of conditions hold, frame first. */
  pieces(y: number): Piece[] {
    const stretches = alongRow(this.scene, y);
    const first = stretches[0];
    const last = stretches[stretches.length - 1];
    if (first === undefined || last === undefined) return [];
    const turns = this.turns(y, first.from, last.to);
    const pieces: Piece[] = [];
    let next = 0;
    for (const { from, to, owner } of stretches) {
      while (next < turns.length && (turns[next] ?? 0) <= from) next += 1;
      let start = from;
      for (;;) {
        const end = Math.min(to, turns[next] ?? Infinity);
        if (end - start > 1e-8) {
          const values = this.values((start + end) / 2, y);
          const held = this.sets.map((set) => set.every((at) => (values[at] ?? 0) >= 0));
          pieces.push({ from: start, to: end, owner, held });
        }
        if (end >= to) break;
        start = end;
        next += 1;
      }
    }
    return pieces;
  }

  /** Where any condition turns on a stretch of a row, ascending. */
  private turns(y: number, from: number, to: number): number[] {
    const off = Math.hypot(y, this.scene.rise);
    const [low, high] = [Math.atan(from / off), Math.atan(to / off)];
    const places = Array.from(
      { length: this.samples + 1 },
      (_, i) => off * Math.tan(low + ((high - low) * i) / this.samples),
    );
    const values = places.map((x) => this.values(x, y));
    const found: number[] = [];
    for (let i = 0; i < this.count; i += 1) {
      const f = (x: number) => this.values(x, y)[i] ?? 0;
      for (let at = 0; at < this.samples; at += 1) {
        const [a, b] = [places[at] ?? 0, places[at + 1] ?? 0];
        const [fa, fb] = [values[at]?.[i] ?? 0, values[at + 1]?.[i] ?? 0];
        if (fa >= 0 !== fb >= 0) found.push(root(f, a, fa, b, fb));
        const fc = values[at + 2]?.[i];
        if (fc === undefined || fa >= 0 !== fb >= 0 || fb >= 0 !== fc >= 0) continue;
        // The middle of three lies nearest to 0: between its neighbours the condition may turn twice.
        if (Math.abs(fb) > 2 || Math.abs(fb) >= Math.abs(fa) || Math.abs(fb) >= Math.abs(fc)) continue;
        const c = places[at + 2] ?? 0;
        const tip = nearestToZero(f, a, c, fb >= 0 ? 1 : -1);
        const ft = f(tip);
        if (ft >= 0 !== fb >= 0) found.push(root(f, a, fa, tip, ft), root(f, tip, ft, c, fc));
      }
    }
    return found.sort((one, two) => one - two);
  }

  /** All conditions at a place, each ≥ 0 where it holds. */
  private values(x: number, y: number): number[] {
    const { camera, wanted } = this;
    const { rise } = this.scene;
    const over = Math.hypot(x, y);
    const [mx, my] = over < 1e-9 ? [1, 0] : [y / over, -x / over];
    const h = 5e-5;
    const [one, two] = [this.image(x + h * mx, y + h * my), this.image(x - h * mx, y - h * my)];
    const density = Math.hypot(one[0] - two[0], one[1] - two[1]) / (2 * h);
    const values = [1 - (over * over + rise * rise) / wanted.range ** 2];
    for (const limit of wanted.densities) values.push(one[2] > 0 && two[2] > 0 ? density / limit - 1 : -1);
    for (const { above } of wanted.caps)
      values.push(rise >= 0 ? 1 : (over * Math.tan((above * Math.PI) / 180)) / -rise - 1);
    if (camera.k === 1) return values;
    const [u, v, margin] = this.image(x, y);
    const [across, down] = [camera.frame.width / 2, camera.frame.height / 2];
    values.push(1 - u / across, 1 + u / across, 1 - v / down, 1 + v / down, margin);
    return values;
  }

  /** Pixels right of and below the middle, and how far within the lens's greatest angle, rad. */
  private image(x: number, y: number): readonly [number, number, number] {
    const { axes, camera } = this;
    const { rise } = this.scene;
    const along = (axis: number) =>
      (axes[0]?.[axis] ?? 0) * x + (axes[1]?.[axis] ?? 0) * y + (axes[2]?.[axis] ?? 0) * rise;
    const [right, down, ahead] = [along(0), along(1), along(2)];
    const off = Math.hypot(right, down);
    // Half the angle from the axis by its tangent: sure at every angle.
    const theta = 2 * Math.atan2(off, Math.hypot(off, ahead) + ahead);
    const { k } = camera;
    const margin = (k === 0 ? Math.PI : Math.min(Math.PI, Math.PI / 2 / Math.abs(k))) - theta;
    if (margin <= 0) return [right < 0 ? -1e7 : 1e7, down < 0 ? -1e7 : 1e7, margin];
    const law = k > 0 ? Math.tan(k * theta) / k : k < 0 ? Math.sin(-k * theta) / -k : theta;
    const gain = off === 0 ? 0 : (camera.focalLength * law) / off;
    return [
      (gain * right * camera.frame.width) / camera.sensor.width,
      (gain * down * camera.frame.height) / camera.sensor.height,
      margin,
    ];
  }
}

/** By halving and false position in turn. */
function root(f: (x: number) => number, a: number, fa: number, b: number, fb: number): number {
  for (let step = 0; step < 80 && Math.abs(b - a) > 1e-10; step += 1) {
    const x = step % 2 === 0 && fa !== fb ? a + ((b - a) * fa) / (fa - fb) : (a + b) / 2;
    const fx = f(x);
    if (fx === 0) return x;
    if (fx >= 0 === fa >= 0) [a, fa] = [x, fx];
    else [b, fb] = [x, fx];
  }
  return (a + b) / 2;
}

/** The least of sense·f between two places, by golden sections. */
function nearestToZero(f: (x: number) => number, a: number, b: number, sense: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [a, b];
  for (let step = 0; step < 24; step += 1) {
    const [one, two] = [high - golden * (high - low), low + golden * (high - low)];
    if (sense * f(one) < sense * f(two)) high = two;
    else low = one;
  }
  return (low + high) / 2;
}
