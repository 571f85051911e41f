import type { Assessment } from '../../assess/assessment.ts';
import { add, scale, subtract, unit, type Vec3 } from '../../base/vector.ts';
import type { Ink } from '../../draw/ink.ts';
import type { Plate } from '../../draw/labelPlaces.ts';
import type { CameraGhost, Ghost } from '../../editor/tools/chart.ts';
import type { Camera } from '../../optics/camera.ts';
import { axesOf } from '../../optics/projection.ts';
import type { Pickable } from '../picking.ts';
import type { SignAt } from '../pointedAt.ts';
import type { Sheet, Spot } from '../sheet.ts';
import { LampSigns, type LampShown } from './LampSigns.ts';
import { inSight } from './inSight.ts';
import { discSpots } from './discSpots.ts';
import { CameraSign, crossSign, faceOutline, isWide, lookedSign, pinSign, svg } from './signs.ts';

export interface Signs {
  readonly sheet: Sheet;
  readonly assessment: Assessment | null;
  /** As they stand, which may be ahead of the assessment. */
  readonly cameras: readonly Camera[];
  readonly solids: Pickable;
  readonly selected: string | null;
  readonly hovered: string | null;
  readonly lamps: readonly LampShown[];
  readonly lamp: { readonly selected: string | null; readonly hovered: string | null };
  readonly ghost: Ghost | null;
  /** The spot that is asked about and held. */
  readonly pinned: Vec3 | null;
  /** The place that faces look to. */
  readonly looked: Vec3 | null;
  readonly counted: (camera: string) => boolean;
}

/** A wall or soffit within this of a lens carries it, m. */
const BEFORE = 0.12;

/** About as wide as a letter of a camera's name, px. */
const CHARACTER = 7;

interface Drawn {
  readonly id: string;
  readonly name: string;
  readonly body: Spot;
  readonly disc: Spot;
}

/** Signs of one size on the window over the picture: cameras with their names, the cross of the selected one's axis, a ghost. */
export class SignLayer {
  private readonly root = svg('svg', { class: 'signs', 'aria-hidden': 'true' });
  private readonly cross = crossSign();
  private readonly outline = faceOutline();
  private readonly pin = pinSign();
  private readonly looked = lookedSign();
  private readonly lamps = new LampSigns();
  private readonly ghost = new CameraSign('+');
  private readonly cameras = new Map<string, CameraSign>();
  private drawn: readonly Drawn[] = [];
  private crossAt: Spot | null = null;
  private lookedAt: Spot | null = null;
  private selected: string | null = null;
  private selectedLamp: string | null = null;

  constructor(layer: HTMLElement) {
    layer.append(this.root);
    this.root.append(
      this.outline.root,
      this.lamps.root,
      this.cross.root,
      this.pin.root,
      this.looked.root,
      this.ghost.root,
    );
  }

  tint({ ink, paper, saffron, casing }: Ink): void {
    for (const [name, colour] of Object.entries({ ink, paper, saffron, casing }))
      this.root.style.setProperty(`--sign-${name}`, colour);
  }

  show(signs: Signs): void {
    const { sheet, assessment, cameras, solids, selected, hovered, ghost, pinned, counted } = signs;
    this.selected = selected;
    this.selectedLamp = signs.lamp.selected;
    this.lamps.show(sheet, solids, signs.lamps, {
      ...signs.lamp,
      ghost: ghost?.kind === 'lamp' ? ghost.eye : null,
    });
    for (const [id, sign] of this.cameras) {
      if (cameras.some((camera) => camera.id === id)) continue;
      sign.root.remove();
      this.cameras.delete(id);
    }
    const spots = cameras.flatMap((camera) => {
      const body = sheet.spotFromSite(camera.eye);
      return body ? [{ camera, body }] : [];
    });
    const discs = discSpots(
      spots.map(({ body }) => body),
      sheet.width,
      sheet.height,
    );
    this.drawn = spots.map(({ camera, body }, i) => {
      let sign = this.cameras.get(camera.id);
      if (!sign) {
        sign = new CameraSign(camera.name);
        this.cameras.set(camera.id, sign);
        this.root.append(sign.root);
      }
      const disc = discs[i] ?? { x: body.x + 24, y: body.y - 32 };
      sign.draw(body, disc, turnOf(sheet, camera.eye, axesOf(camera).forward), {
        name: camera.name,
        selected: camera.id === selected,
        hovered: camera.id === hovered,
        behind: !inSight(sheet, solids, camera.eye, BEFORE),
        idle: !counted(camera.id),
      });
      return { id: camera.id, name: camera.name, body, disc };
    });
    for (const [id, sign] of this.cameras)
      sign.root.style.display = this.drawn.some((one) => one.id === id) ? '' : 'none';
    const chosen = assessment?.cameras.find(({ camera }) => camera.id === selected);
    this.crossAt = chosen ? sheet.spotFromSite(chosen.frustum.axisEnd) : null;
    this.cross.draw(this.crossAt);
    this.pin.draw(pinned && sheet.spotFromSite(pinned));
    this.lookedAt = signs.looked && sheet.spotFromSite(signs.looked);
    this.looked.draw(this.lookedAt);
    this.showGhost(sheet, ghost?.kind === 'camera' ? ghost : null);
  }

  private showGhost(sheet: Sheet, ghost: CameraGhost | null): void {
    const body = ghost ? sheet.spotFromSite(ghost.eye) : null;
    this.ghost.root.style.display = body ? '' : 'none';
    this.outline.draw((ghost?.face ?? []).flatMap((corner) => sheet.spotFromSite(corner) ?? []));
    if (!ghost || !body) return;
    this.ghost.draw(
      body,
      { x: body.x + 22, y: body.y - 30 },
      turnOf(sheet, ghost.eye, subtract(ghost.towards, ghost.eye)),
      {
        name: '+',
        selected: true,
        hovered: false,
        behind: true,
        idle: false,
      },
    );
  }

  /** The sign under a place of the window. */
  at({ x, y }: Spot, reach: number): SignAt {
    const near = (spot: Spot | null, within: number): boolean =>
      spot !== null && Math.hypot(spot.x - x, spot.y - y) <= within;
    const chosen = this.drawn.find(({ id }) => id === this.selected);
    const onBody = chosen ? near(chosen.body, reach) || near(chosen.disc, reach) : false;
    if (onBody) return { camera: this.selected, lamp: null, handle: 'body' };
    if (near(this.crossAt, reach)) return { camera: null, lamp: null, handle: 'cross' };
    const other = this.drawn.findLast(
      ({ body, disc }) => near(body, reach) || near(disc, Math.max(reach, 13)),
    );
    if (other) return { camera: other.id, lamp: null, handle: null };
    const lamp = this.lamps.at({ x, y }, reach);
    return { camera: null, lamp, handle: lamp !== null && lamp === this.selectedLamp ? 'lamp' : null };
  }

  /** What labels keep clear of. */
  get plates(): readonly Plate[] {
    const lamps = this.lamps.spots.map(({ x, y }): Plate => ({ x, y, width: 22, height: 22, angle: 0 }));
    const cameras = this.drawn.flatMap(({ name, body, disc }) => {
      const [dx, dy] = [disc.x - body.x, disc.y - body.y];
      const wide = isWide(name) ? name.length * CHARACTER : 0;
      return [
        { x: body.x, y: body.y, width: 28, height: 28, angle: 0 },
        { x: disc.x + wide / 2, y: disc.y, width: 28 + wide, height: 28, angle: 0 },
        {
          x: (body.x + disc.x) / 2,
          y: (body.y + disc.y) / 2,
          width: Math.hypot(dx, dy),
          height: 4,
          angle: (Math.atan2(dy, dx) * 180) / Math.PI,
        },
      ];
    });
    const place = this.lookedAt;
    const looked = place ? [{ x: place.x + 48, y: place.y, width: 112, height: 18, angle: 0 }] : [];
    return [...lamps, ...looked, ...cameras];
  }
}

/** The turn on the window of a direction in the site, °. */
function turnOf(sheet: Sheet, at: Vec3, along: Vec3): number {
  const size = sheet.metresPerPixel(at) * 20;
  const [a, b] = [sheet.spotFromSite(at), sheet.spotFromSite(add(at, scale(unit(along), size)))];
  return a && b ? (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI : 0;
}
