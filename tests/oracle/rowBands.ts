import { plainTurn, type PlainCamera } from './plainCamera.ts';
import { alongRow, breaksOf, OPEN } from './rowAreas.ts';
import type { RowScene } from './rowScene.ts';
import { sumOfRows, type Lengths, type Row } from './rowSums.ts';
import { nearestToZero, root } from './turns.ts';

/** What of seen ground counts for each band: px/m, limits from above (°, and the highest band kept past each), range (m). */
export interface Wanted {
  readonly densities: readonly number[];
  readonly caps: readonly { readonly above: number; readonly band: number }[];
  readonly range: number;
}

/**
 * Conditions along a row are sampled so many times, evenly in angle; a change between two is then found to a nanometre.
 */
const SAMPLES = 40;
/** Directions about a place into which curves run, as a share of the samples: between two of those along a row a spoke is lost. */
const SPOKES = 0.6;
/** How far past its greatest angle a law that goes on is asked, rad: else a strip was lost along the edge of what k = −1 sees. */
const PAST = [0, -0.05] as const;

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
  // The row below the lens is a break of its own: a frame of 180° can end along it.
  const breaks = [...breaksOf(scene), 0].sort((one, two) => one - two);
  const { bottom, top } = scene.window;
  const inside = breaks.filter((y) => y >= bottom && y <= top);
  return sumOfRows(new BandRow(scene, camera, wanted, samples), inside);
}

/** Where directions about a place, evenly spaced, meet a stretch of a row. */
function around(
  [x, y]: readonly [number, number],
  row: number,
  from: number,
  to: number,
  samples: number,
): readonly number[] {
  const off = Math.abs(row - y);
  const count = Math.round(samples * SPOKES);
  return Array.from(
    { length: count },
    (_, i) => x + off * Math.tan(Math.PI * ((i + 0.5) / count - 0.5)),
  ).filter((place) => place > from && place < to);
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
  /** Right, down and ahead of the camera of what lies one metre east, then north, then up. */
  private readonly axes: readonly number[];
  private readonly count: number;
  /** The first condition of a bent lens's frame. */
  private readonly frameFrom: number;
  /** Conditions that must hold: the frame, then each band. */
  private readonly sets: readonly (readonly number[])[];

  constructor(scene: RowScene, camera: PlainCamera, wanted: Wanted, samples: number) {
    this.scene = scene;
    this.samples = samples;
    this.camera = camera;
    this.wanted = wanted;
    this.axes = [
      ...plainTurn(camera, [1, 0, 0]),
      ...plainTurn(camera, [0, 1, 0]),
      ...plainTurn(camera, [0, 0, 1]),
    ];
    const { densities, caps } = wanted;
    this.frameFrom = 1 + densities.length + caps.length;
    const frame = camera.k === 1 ? [] : [0, 1, 2, 3, 4].map((i) => this.frameFrom + i);
    this.count = this.frameFrom + frame.length;
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
    // Only where a row is asked finely: few rows need them.
    if (this.samples > SAMPLES)
      for (const spoke of this.spokes) places.push(...around(spoke, y, from, to, this.samples));
    places.sort((one, two) => one - two);
    const values = places.map((x) => this.values(x, y));
    const found: number[] = [];
    for (let i = 0; i < this.count; i += 1) {
      const f = (x: number) => this.value(i, x, y);
      for (let at = 0; at + 1 < places.length; at += 1) {
        const [a, b] = [places[at] ?? 0, places[at + 1] ?? 0];
        const [fa, fb] = [values[at]?.[i] ?? 0, values[at + 1]?.[i] ?? 0];
        if (fa >= 0 !== fb >= 0) found.push(root(f, a, fa, b, fb));
        if (fa >= 0 !== fb >= 0) continue;
        const dip = (c: number, fc: number) => {
          const tip = nearestToZero(f, a, c, fb >= 0 ? 1 : -1);
          const ft = f(tip);
          if (ft >= 0 !== fb >= 0) found.push(root(f, a, fa, tip, ft), root(f, tip, ft, c, fc));
        };
        // At the end of the stretch there is no third: a value smaller than its last step may come from beyond 0.
        if (at === 0 && Math.abs(fa) < Math.abs(fa - fb)) dip(b, fb);
        const fc = values[at + 2]?.[i];
        if (fc === undefined && Math.abs(fb) < Math.abs(fa - fb)) dip(b, fb);
        if (fc === undefined || fb >= 0 !== fc >= 0) continue;
        // The middle of three lies nearest to 0: between its neighbours the condition may turn twice.
        if (Math.abs(fb) > 2 || Math.abs(fb) >= Math.abs(fa) || Math.abs(fb) >= Math.abs(fc)) continue;
        dip(places[at + 2] ?? 0, fc);
      }
    }
    return found.sort((one, two) => one - two);
  }

  /**
   * Places into which curves run like spokes, since density or frame hang on the direction alone about them: straight below or
   * above the lens, and straight behind it.
   */
  private get spokes(): readonly (readonly [number, number])[] {
    const { axes, scene, camera } = this;
    const [ahead, north, up] = [axes[2] ?? 0, axes[5] ?? 0, axes[8] ?? 0];
    const behind = scene.rise / -up;
    const isBehind = camera.k !== 1 && behind > 0 && Number.isFinite(behind);
    return [[0, 0], ...(isBehind ? [[-behind * ahead, -behind * north] as const] : [])];
  }

  /** All conditions at a place, each ≥ 0 where it holds. */
  private values(x: number, y: number): number[] {
    const { wanted, frameFrom } = this;
    const { densities, caps } = wanted;
    const density = this.density(x, y);
    const values = [this.value(0, x, y)];
    for (const limit of densities) values.push(density < 0 ? -1 : density / limit - 1);
    for (let i = 0; i < caps.length; i += 1) values.push(this.value(1 + densities.length + i, x, y));
    if (this.count === frameFrom) return values;
    const [u, v, margin] = this.image(x, y);
    for (let side = 0; side < 5; side += 1) values.push(this.within(side, u, v, margin));
    return values;
  }

  /** One of them. */
  private value(i: number, x: number, y: number): number {
    const { wanted, frameFrom } = this;
    const { rise } = this.scene;
    const { densities, caps } = wanted;
    if (i === 0) return 1 - (x * x + y * y + rise * rise) / wanted.range ** 2;
    if (i <= densities.length) {
      const density = this.density(x, y);
      return density < 0 ? -1 : density / (densities[i - 1] ?? 1) - 1;
    }
    if (i < frameFrom) {
      const above = caps[i - 1 - densities.length]?.above ?? 0;
      return rise >= 0 ? 1 : (Math.hypot(x, y) * Math.tan((above * Math.PI) / 180)) / -rise - 1;
    }
    const [u, v, margin] = this.image(x, y);
    return this.within(i - frameFrom, u, v, margin);
  }

  /** The sides of the frame, then the lens's greatest angle. */
  private within(side: number, u: number, v: number, margin: number): number {
    const { frame } = this.camera;
    const at = side < 2 ? u / (frame.width / 2) : v / (frame.height / 2);
    return side === 4 ? margin : side % 2 === 0 ? 1 - at : 1 + at;
  }

  /** px/m of a tenth of a millimetre square to the bearing, by two images of it; −1 where one of its ends has none. */
  private density(x: number, y: number): number {
    const over = Math.hypot(x, y);
    const [mx, my] = over < 1e-9 ? [1, 0] : [y / over, -x / over];
    const h = 5e-5;
    const [u0, v0, m0] = this.image(x + h * mx, y + h * my);
    const [u1, v1, m1] = this.image(x - h * mx, y - h * my);
    const past = PAST[this.camera.k < 0 ? 1 : 0];
    return m0 > past && m1 > past ? Math.hypot(u0 - u1, v0 - v1) / (2 * h) : -1;
  }

  /** Pixels right of and below the middle, and how far within the lens's greatest angle, rad. */
  private image(x: number, y: number): readonly [number, number, number] {
    const { axes, camera } = this;
    const { rise } = this.scene;
    const [r0 = 0, d0 = 0, f0 = 0, r1 = 0, d1 = 0, f1 = 0, r2 = 0, d2 = 0, f2 = 0] = axes;
    const right = r0 * x + r1 * y + r2 * rise;
    const down = d0 * x + d1 * y + d2 * rise;
    const ahead = f0 * x + f1 * y + f2 * rise;
    const off = Math.hypot(right, down);
    // Half the angle from the axis by its tangent: sure at every angle.
    const theta = 2 * Math.atan2(off, Math.hypot(off, ahead) + ahead);
    const { k } = camera;
    const margin = (k === 0 ? Math.PI : Math.min(Math.PI, Math.PI / 2 / Math.abs(k))) - theta;
    if (margin <= PAST[k < 0 ? 1 : 0]) return [right < 0 ? -1e7 : 1e7, down < 0 ? -1e7 : 1e7, margin];
    const law = k > 0 ? Math.tan(k * theta) / k : k < 0 ? Math.sin(-k * theta) / -k : theta;
    const gain = off === 0 ? 0 : (camera.focalLength * law) / off;
    return [
      (gain * right * camera.frame.width) / camera.sensor.width,
      (gain * down * camera.frame.height) / camera.sensor.height,
      margin,
    ];
  }
}
