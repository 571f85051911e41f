/**
 * A camera written down anew for tests: turns a point by three rotation matrices and applies the named law. Shares
 * nothing with src/optics but the convention: x right, y down, z ahead; pan from north, tilt down, roll clockwise.
 */
export interface PlainCamera {
  readonly eye: readonly number[];
  readonly pan: number;
  readonly tilt: number;
  readonly roll: number;
  readonly focalLength: number;
  readonly k: number;
  readonly sensor: { readonly width: number; readonly height: number };
  readonly frame: { readonly width: number; readonly height: number };
}

const turned = (degrees: number) =>
  [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)] as const;

/** A direction of the site along the camera's own right, down and ahead. */
export function plainTurn(
  camera: PlainCamera,
  [x0 = 0, y0 = 0, z0 = 0]: readonly number[],
): [number, number, number] {
  let [x, y, z] = [x0, y0, z0];
  // Turn the world by pan about up, so that the bearing of the axis becomes north.
  const [cp, sp] = turned(camera.pan);
  [x, y] = [cp * x - sp * y, sp * x + cp * y];
  // Tilt about east: the axis comes level.
  const [ct, st] = turned(camera.tilt);
  [y, z] = [ct * y - st * z, st * y + ct * z];
  const [right, down] = [x, -z];
  const [cr, sr] = turned(camera.roll);
  return [cr * right + sr * down, cr * down - sr * right, y];
}

/** Pixels right and down from the top-left corner; null where there is no image. */
export function plainImage(camera: PlainCamera, point: readonly number[]): readonly [number, number] | null {
  const [right, down, ahead] = plainTurn(
    camera,
    [0, 1, 2].map((axis) => (point[axis] ?? 0) - (camera.eye[axis] ?? 0)),
  );
  const off = Math.sqrt(right * right + down * down);
  const theta = Math.acos(Math.max(-1, Math.min(1, ahead / Math.sqrt(off * off + ahead * ahead))));
  const { k } = camera;
  if (k !== 0 && theta >= Math.PI / 2 / Math.abs(k)) return null;
  const law = k > 0 ? Math.tan(k * theta) / k : k < 0 ? Math.sin(-k * theta) / -k : theta;
  const mm = off === 0 ? 0 : (camera.focalLength * law) / off;
  return [
    camera.frame.width / 2 + mm * right * (camera.frame.width / camera.sensor.width),
    camera.frame.height / 2 + mm * down * (camera.frame.height / camera.sensor.height),
  ];
}

/** Horizontal px/m by central difference of 0.1 mm across the bearing. */
export function plainDensity(camera: PlainCamera, point: readonly number[]): number {
  const [dx, dy] = [(point[0] ?? 0) - (camera.eye[0] ?? 0), (point[1] ?? 0) - (camera.eye[1] ?? 0)];
  const over = Math.sqrt(dx * dx + dy * dy);
  const step = [(dy / over) * 5e-5, (-dx / over) * 5e-5, 0];
  const one = plainImage(
    camera,
    point.map((n, axis) => n + (step[axis] ?? 0)),
  );
  const two = plainImage(
    camera,
    point.map((n, axis) => n - (step[axis] ?? 0)),
  );
  return one === null || two === null ? 0 : Math.hypot(one[0] - two[0], one[1] - two[1]) / 1e-4;
}
