import { Group, Matrix4, type PerspectiveCamera } from 'three';
import { dot, scale, subtract, type Vec3 } from '../base/vector.ts';
import { eyeOf, fieldOf, viewAxes, type Orbit } from './orbit.ts';

/*
 * The one place where the site frame (x east, y north, z up) becomes the renderer's (x right, y up, z towards the viewer):
 * a quarter turn about x. East stays x, up becomes y, north becomes −z.
 */

/** A point or direction of the site in the renderer's frame. */
export const rendererFromSite = ([x, y, z]: Vec3): Vec3 => [x, z, -y];

/** A point or direction of the renderer in the site frame. */
export const siteFromRenderer = ([x, y, z]: Vec3): Vec3 => [x, -z, y];

/** Holds all that is drawn in site coordinates relative to an origin near it. */
export function siteGroup(): Group {
  const group = new Group();
  group.matrixAutoUpdate = false;
  group.matrix.set(1, 0, 0, 0, 0, 0, 1, 0, 0, -1, 0, 0, 0, 0, 0, 1);
  group.matrixWorldNeedsUpdate = true;
  return group;
}

/** Sets the renderer's camera to a view. `origin` is the site point at the renderer's 0, 0, 0. */
export function lookAlong(
  camera: PerspectiveCamera,
  orbit: Orbit,
  origin: Vec3,
  aspect: number,
  reach: { readonly middle: Vec3; readonly radius: number },
): void {
  const axes = viewAxes(orbit);
  const eye = rendererFromSite(subtract(eyeOf(orbit), origin));
  const [r, u, b] = [axes.right, axes.up, scale(axes.ahead, -1)].map(rendererFromSite) as [Vec3, Vec3, Vec3];
  camera.matrixAutoUpdate = false;
  camera.matrix.copy(
    new Matrix4().set(
      r[0],
      u[0],
      b[0],
      eye[0],
      r[1],
      u[1],
      b[1],
      eye[1],
      r[2],
      u[2],
      b[2],
      eye[2],
      0,
      0,
      0,
      1,
    ),
  );
  camera.updateMatrixWorld(true);
  const depth = dot(subtract(reach.middle, eyeOf(orbit)), axes.ahead);
  camera.fov = fieldOf(orbit);
  camera.aspect = aspect;
  camera.far = Math.max(depth + reach.radius, 1);
  camera.near = Math.max(depth - reach.radius, camera.far / 2000, 0.02);
  camera.updateProjectionMatrix();
}
