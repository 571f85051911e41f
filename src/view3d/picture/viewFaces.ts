import { tan } from '../../base/angle.ts';
import type { Vec3 } from '../../base/vector.ts';
import type { Camera } from '../../optics/camera.ts';
import { axesOf, pixelPitch, siteRayFromImage } from '../../optics/projection.ts';
import type { Part } from '../wash/Wash.ts';

/** A flat picture through the lens's place: its directions, and between which slopes (tangents) it reaches. */
export interface ViewFace {
  readonly right: Vec3;
  readonly up: Vec3;
  readonly ahead: Vec3;
  readonly left: number;
  readonly most: number;
  readonly bottom: number;
  readonly top: number;
  /** Where it stands in the picture that holds all faces, px. */
  readonly part: Part;
}

/** Flat pictures that hold all that a bent lens sees, side by side in one, from which the bent one is read. */
export interface ViewFaces {
  readonly faces: readonly ViewFace[];
  readonly width: number;
  readonly height: number;
}

/** Places of the picture that are asked which way they look, across and down. */
const ASKED = 48;
/** Faces reach so far past what is read of them, px, so that lines and edges there are whole. */
const MARGIN = 6;
/** No side of the picture that holds them is longer, px. */
const LONGEST = 4096;
/** Past these slopes one flat picture is stretched too far, and the sides of a cube are used. */
const FLAT = tan(58);

/** A rectilinear lens's picture as a flat one. @param camera upright; @param width, height of the window, px */
export function flatFace(camera: Camera, width: number, height: number): ViewFace {
  const { right, down, forward } = axesOf(camera);
  const [across, along] = [
    camera.sensor.width / 2 / camera.focalLength,
    camera.sensor.height / 2 / camera.focalLength,
  ];
  return {
    right,
    up: negative(down),
    ahead: forward,
    left: -across,
    most: across,
    bottom: -along,
    top: along,
    part: { x: 0, y: 0, width, height },
  };
}

/** The faces that a bent lens needs, whichever way it is aimed: sides of a cube about it, by their place in SIDES. */
export interface FaceLayout {
  readonly parts: readonly (Omit<ViewFace, 'right' | 'up' | 'ahead'> & { readonly side: number })[];
  readonly width: number;
  readonly height: number;
}

/**
 * What a bent lens needs: one flat picture where it looks no wider than that bears, else the sides of a cube about it, cut to
 * what is seen of each. It hangs on lens and frame alone, so that it serves a whole drag.
 * @param camera upright
 * @param scale  px of the faces a pixel of the recorded picture
 */
export function faceLayout(camera: Camera, scale: number): FaceLayout {
  const ways = waysOf(camera);
  const pitch = pixelPitch(camera);
  // As fine in its middle as is asked for.
  const fine = camera.focalLength * Math.max(pitch.across, pitch.down) * scale;
  const isFlat = ways.every(([x, y, z]) => z > 0 && Math.abs(x) < FLAT * z && Math.abs(y) < FLAT * z);
  const sides = isFlat ? [0] : SIDES.map((_, side) => side);
  const found = sides.flatMap((side): Bounds[] => {
    const slopes = ways.flatMap((way) => slopesOn(way, side, isFlat));
    if (slopes.length === 0) return [];
    const [xs, ys] = [slopes.map(([x]) => x), slopes.map(([, y]) => y)];
    // Between two places that were asked a little more may be seen.
    const spare = 3 / ASKED;
    const bound = (value: number) => (isFlat ? value : Math.min(1, Math.max(-1, value)));
    return [
      {
        side,
        left: bound(Math.min(...xs) - spare),
        most: bound(Math.max(...xs) + spare),
        bottom: bound(Math.min(...ys) - spare),
        top: bound(Math.max(...ys) + spare),
      },
    ];
  });
  return packed(found, fine);
}

/** The faces of a layout as a camera is aimed. @param camera upright */
export function bentFaces(camera: Camera, { parts, width, height }: FaceLayout): ViewFaces {
  const { right, down, forward } = axesOf(camera);
  const axes = axesOfSides(right, negative(down), forward);
  return {
    faces: parts.flatMap(({ side, ...part }): ViewFace[] => {
      const own = axes[side];
      return own ? [{ right: own[0], up: own[1], ahead: own[2], ...part }] : [];
    }),
    width,
    height,
  };
}

type Bounds = Omit<FaceLayout['parts'][number], 'part'>;

const axesOfSides = (right: Vec3, up: Vec3, forward: Vec3): readonly (readonly [Vec3, Vec3, Vec3])[] => [
  [right, up, forward],
  [negative(forward), up, right],
  [forward, up, negative(right)],
  [right, negative(forward), up],
  [right, forward, negative(up)],
  [negative(right), up, negative(forward)],
];

const negative = ([x, y, z]: Vec3): Vec3 => [-x, -y, -z];

/** Which way places of the picture look: right, up, ahead of the lens. */
function waysOf(camera: Camera): Vec3[] {
  // Level and due north, ahead is y and up is z.
  const level = { ...camera, pan: 0, tilt: 0, roll: 0 };
  const { width, height } = camera.frame;
  const ways: Vec3[] = [];
  for (let row = 0; row <= ASKED; row += 1)
    for (let column = 0; column <= ASKED; column += 1) {
      const way = siteRayFromImage(level, { u: (width * column) / ASKED, v: (height * row) / ASKED });
      if (way) ways.push([way[0], way[2], way[1]]);
    }
  return ways;
}

/** A way's slopes on a side of the cube that it goes through; none on the others. */
function slopesOn([x, y, z]: Vec3, side: number, flat: boolean): (readonly [number, number])[] {
  const [a, b, c] = SIDES[side]?.(x, y, z) ?? [0, 0, -1];
  if (c <= 0) return [];
  const [p, q] = [a / c, b / c];
  return flat || (Math.abs(p) <= 1.0001 && Math.abs(q) <= 1.0001) ? [[p, q]] : [];
}

/** Right, up and ahead of each side from those of the lens; the shader has the same. */
const SIDES: readonly ((x: number, y: number, z: number) => Vec3)[] = [
  (x, y, z) => [x, y, z],
  (x, y, z) => [-z, y, x],
  (x, y, z) => [z, y, -x],
  (x, y, z) => [x, -z, y],
  (x, y, z) => [x, z, -y],
  (x, y, z) => [-x, y, -z],
];

/** Puts faces on shelves. */
function packed(faces: readonly Bounds[], fine: number): FaceLayout {
  for (let scale = fine; ; scale *= 0.8) {
    const sized = faces
      .map((face) => ({
        face,
        width: Math.ceil((face.most - face.left) * scale) + 2 * MARGIN,
        height: Math.ceil((face.top - face.bottom) * scale) + 2 * MARGIN,
      }))
      .toSorted((a, b) => b.height - a.height);
    const widest = Math.min(
      LONGEST,
      sized.reduce((sum, one) => sum + one.width, 0),
    );
    let [x, y, high, wide] = [0, 0, 0, 0];
    const parts = sized.map(({ face, width, height }): FaceLayout['parts'][number] => {
      if (x > 0 && x + width > widest) [x, y, high] = [0, y + high, 0];
      const part: Part = { x, y, width, height };
      [x, high] = [x + width, Math.max(high, height)];
      wide = Math.max(wide, x);
      const slack = MARGIN / scale;
      return {
        ...face,
        left: face.left - slack,
        most: face.left - slack + width / scale,
        bottom: face.bottom - slack,
        top: face.bottom - slack + height / scale,
        part,
      };
    });
    const height = y + high;
    if ((wide <= LONGEST && height <= LONGEST) || scale < 1) return { parts, width: wide, height };
  }
}
