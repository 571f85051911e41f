import { dot, type Vec3 } from '../base/vector.ts';
import type { Plane } from '../base/plane.ts';
import type { Camera } from '../optics/camera.ts';
import type { SheetShadows } from '../sight/closing.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import { flatCasters, type Casters, type TargetBox } from './casters.ts';
import { hidersOver, type HidersOver } from './hidersOver.ts';
import { EVERYWHERE, ImageBounds, NOWHERE, PERHAPS } from './imageBounds.ts';
import { OUT, SCREENED_BY, SEEN_AT, WITHIN, type Asked, type Judge, type Judged } from './judge.ts';
import type { BandRule } from './rule.ts';
import type { SolidsAt } from './solidsAt.ts';

/** What of a screen closes up, sheet by sheet. */
interface Sheet {
  readonly normal: Vec3;
  readonly casters: Casters;
}

/** One camera over one target surface. */
export interface Layer {
  readonly camera: Camera;
  readonly plane: Plane;
  /** The lens in coordinates of the plane, on a flat surface at its foot; and how far the plane lies from the lens, m. */
  readonly foot: Vec3;
  readonly delta: number;
  readonly solids: Casters;
  readonly screens: Casters;
  readonly sheets: readonly Sheet[];
  /** Sine of the angle below which screens close up. */
  readonly closing: number;
  readonly lensInside: number | null;
  readonly inside: SolidsAt;
  /** Null where bands are not asked for: then what is seen has label SEEN_AT. */
  readonly rule: BandRule | null;
}

/** A layer of a camera on a plane. */
export function flatLayer(found: FoundSight, inside: SolidsAt, rule: BandRule | null): Layer {
  const { sight, footing, touches } = found;
  return {
    camera: sight.camera,
    plane: footing.plane,
    foot: [footing.foot[0], footing.foot[1], 0],
    delta: footing.delta,
    solids: flatCasters(found.solids, touches),
    screens: flatCasters(found.screens, touches),
    sheets: found.sheets.map(({ normal, shadows }: SheetShadows) => ({
      normal,
      casters: flatCasters(shadows, true),
    })),
    closing: found.closing,
    lensInside: sight.lensInside,
    inside,
    rule,
  };
}

const every = ({ count }: Casters): readonly number[] => Array.from({ length: count }, (_, at) => at);

/** Judges boxes for one layer. */
export class LayerJudge implements Judge {
  readonly all: Asked;
  private readonly layer: Layer;
  private readonly images: ImageBounds;
  private readonly bands: number;

  constructor(layer: Layer) {
    this.layer = layer;
    this.images = new ImageBounds(layer.camera);
    this.bands = layer.rule?.densities.length ?? 0;
    const { solids, screens, sheets, inside } = layer;
    this.all = {
      framed: PERHAPS,
      within: PERHAPS,
      faces: inside.all,
      solids: every(solids),
      screens: every(screens),
      sheets: sheets.map(({ casters }) => every(casters)),
    };
  }

  /** The label of what a solid hides. */
  hiddenBy(solid: number): number {
    return SEEN_AT + this.bands + 1 + solid;
  }

  /** @param box in coordinates of the plane */
  judge(box: TargetBox, asked: Asked): Judged {
    const { layer, images } = this;
    const { foot } = layer;
    const { hx, hy, hz } = box;
    const local = { x: box.x - foot[0], y: box.y - foot[1], z: box.z - foot[2], hx, hy, hz };
    const middle = this.fromLens(local);
    const radius = Math.sqrt(hx * hx + hy * hy + hz * hz);
    const framed = asked.framed === PERHAPS ? images.framed(middle, radius) : asked.framed;
    if (framed === NOWHERE) return { labels: [OUT], left: asked };
    const labels = framed === PERHAPS ? [OUT] : [];
    const faces = asked.within === PERHAPS ? layer.inside.facesIn(asked.faces, box) : [];
    const within =
      asked.within === PERHAPS && faces.length === 0
        ? layer.inside.holds(box)
          ? EVERYWHERE
          : NOWHERE
        : asked.within;
    if (within !== NOWHERE) labels.push(WITHIN);
    const left = { ...asked, framed, within, faces };
    if (within === EVERYWHERE) return { labels, left };
    if (layer.lensInside !== null) return { labels: [...labels, this.hiddenBy(layer.lensInside)], left };
    const solids = hidersOver(layer.solids, asked.solids, local, framed === EVERYWHERE);
    const hidden = new Set(solids.solids);
    if (!solids.open)
      return {
        labels: [...labels, ...[...hidden].map((one) => this.hiddenBy(one))],
        left: { ...left, solids: solids.left },
      };
    const screens = hidersOver(layer.screens, asked.screens, local, framed === EVERYWHERE);
    const sheets = layer.sheets.map((sheet, at) =>
      this.closedOver(sheet, asked.sheets[at] ?? [], local, middle, radius),
    );
    for (const { solids: closed } of sheets) for (const solid of closed) hidden.add(solid);
    for (const solid of hidden) labels.push(this.hiddenBy(solid));
    const isOpen = sheets.every(({ open }) => open);
    if (isOpen && screens.solids.length > 0) labels.push(SCREENED_BY);
    if (isOpen && screens.open) labels.push(...this.bandsOver(middle, radius, box));
    return {
      labels,
      left: {
        ...left,
        solids: solids.left,
        screens: screens.left,
        sheets: sheets.map((sheet) => sheet.left),
      },
    };
  }

  private fromLens({ x, y, z }: TargetBox): Vec3 {
    const { u, v, normal } = this.layer.plane;
    const w = z + this.layer.delta;
    return [
      x * u[0] + y * v[0] + w * normal[0],
      x * u[1] + y * v[1] + w * normal[1],
      x * u[2] + y * v[2] + w * normal[2],
    ];
  }

  /** What a sheet hides where it has closed up: (n·X)² < sine² · X². */
  private closedOver(
    { normal, casters }: Sheet,
    asked: readonly number[],
    box: TargetBox,
    middle: Vec3,
    radius: number,
  ): HidersOver {
    const far = Math.hypot(...middle);
    const along = Math.abs(dot(normal, middle));
    const sine = this.layer.closing;
    if (Math.max(0, along - radius) > sine * (far + radius)) return { solids: [], open: true, left: [] };
    const over = hidersOver(casters, asked, box, false);
    const isClosed = along + radius < sine * Math.max(0, far - radius);
    return isClosed ? over : { ...over, open: true };
  }

  /** The bands at which targets of a ball can be seen. */
  private bandsOver(middle: Vec3, radius: number, box: TargetBox): readonly number[] {
    const { rule } = this.layer;
    if (rule === null) return [SEEN_AT];
    const [low, high] = this.bandRange(rule, middle, radius, box);
    return Array.from({ length: high - low + 1 }, (_, at) => SEEN_AT + low + at);
  }

  private bandRange(rule: BandRule, middle: Vec3, radius: number, box: TargetBox): readonly [number, number] {
    const far = Math.hypot(...middle);
    const range = Math.sqrt(rule.range2);
    if (far - radius > range) return [0, 0];
    const { images } = this;
    images.bound(middle, radius);
    let [low, high] = [0, 0];
    for (const density of rule.densities) {
      if (images.least >= density) low += 1;
      if (images.most >= density) high += 1;
    }
    const over = Math.hypot(middle[0], middle[1]);
    // A level target keeps its height all over the box.
    const up = Math.abs(this.layer.plane.normal[2]) === 1 ? box.hz : radius;
    rule.slopes.forEach((slope, limit) => {
      const cap = rule.kept[limit] ?? 0;
      if (-middle[2] + up > Math.max(0, over - radius) * slope) low = Math.min(low, cap);
      if (-middle[2] - up > (over + radius) * slope) high = Math.min(high, cap);
      if (!rule.sided) return;
      const facing = rule.facing(limit, middle[0], middle[1]);
      const room = rule.facingSlope(middle[0], middle[1], radius) * radius;
      if (facing - room < 0) low = Math.min(low, cap);
      if (facing + room < 0) high = Math.min(high, cap);
    });
    return [far + radius > range ? 0 : low, high];
  }
}
