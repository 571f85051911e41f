import { CanvasTexture, LinearFilter, type Texture } from 'three';
import type { Scene } from '../../assess/scene.ts';
import type { Solid } from '../../model/solid.ts';
import { boxOf } from '../picking.ts';
import { GROUND } from './terrainFaces.ts';

const NEAR_BLUR = 0.22;
const FAR_BLUR = 0.95;
const MOST_PIXELS = 640;

/** A soft darkening of the ground around footprints, over the board: red 0 to 1. Null where the page has no canvas. */
export function contactShade({ board, solids, ground }: Scene): Texture | null {
  const [width, height] = [board.right - board.left, board.top - board.bottom];
  const scale = Math.min(8, MOST_PIXELS / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(2, Math.round(width * scale));
  canvas.height = Math.max(2, Math.round(height * scale));
  const context = canvas.getContext('2d');
  if (!context) return null;
  context.fillStyle = '#000';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.globalCompositeOperation = 'lighter';
  const footprints = new Path2D();
  // From metres, north up, to pixels from the top left.
  const placed = new DOMMatrix([scale, 0, 0, -scale, -board.left * scale, board.top * scale]);
  const uneven = solids.at(-1)?.id === GROUND;
  for (const solid of solids) {
    const { passage } = solid;
    if (passage !== 'solid' || solid.id === GROUND) continue;
    // On a slope a thing stands where it is lowest.
    const level = uneven ? Math.max(ground, boxOf(solid)[2] ?? ground) : ground;
    footprints.addPath(footprintAt(solid, level), placed);
  }
  for (const [blur, share] of [
    [NEAR_BLUR, 0.6],
    [FAR_BLUR, 0.4],
  ] as const) {
    context.filter = `blur(${Math.max(0.5, blur * scale)}px)`;
    context.fillStyle = `rgb(${Math.round(255 * share)} 0 0)`;
    context.fill(footprints);
  }
  const texture = new CanvasTexture(canvas);
  texture.minFilter = LinearFilter;
  texture.magFilter = LinearFilter;
  texture.generateMipmaps = false;
  return texture;
}

/** Upright faces have no area over ground, m². */
const LEAST_AREA = 1e-8;
/** How near to the ground a face of the foot of a solid lies, m. */
const NEAR = 0.3;

interface Footprint {
  readonly ground: number;
  readonly path: Path2D;
}

const kept = new WeakMap<Solid, Footprint>();

/** What of a solid lies on the ground, in metres of the site. */
function footprintAt(solid: Solid, ground: number): Path2D {
  const known = kept.get(solid);
  if (known?.ground === ground) return known.path;
  const path = footprintOf(solid, ground);
  kept.set(solid, { ground, path });
  return path;
}

function footprintOf({ positions: p, triangles }: Solid, ground: number): Path2D {
  const path = new Path2D();
  const corner = (i: number): [x: number, y: number, z: number] => {
    const at = (triangles[i] ?? 0) * 3;
    return [p[at] ?? 0, p[at + 1] ?? 0, p[at + 2] ?? 0];
  };
  for (let i = 0; i + 2 < triangles.length; i += 3) {
    const [a, b, c] = [corner(i), corner(i + 1), corner(i + 2)];
    if (Math.max(a[2], b[2], c[2]) > ground + NEAR) continue;
    const area = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    if (Math.abs(area) < LEAST_AREA) continue;
    // One sense of turn for all, so that overlaps add up instead of cancelling.
    const [second, third] = area > 0 ? [b, c] : [c, b];
    path.moveTo(a[0], a[1]);
    path.lineTo(second[0], second[1]);
    path.lineTo(third[0], third[1]);
    path.closePath();
  }
  return path;
}
