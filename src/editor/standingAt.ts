import { cos, sin } from '../base/angle.ts';
import type { Vec2 } from '../base/vector.ts';
import type { Camera } from '../optics/camera.ts';
import type { Standing } from './editor.ts';

/** Where over ground somebody stands, for a camera: at the place that was picked, else ahead of its lens. */
export const standingAt = ({ ahead, at }: Standing, { eye, pan }: Pick<Camera, 'eye' | 'pan'>): Vec2 =>
  at ?? [eye[0] + ahead * sin(pan), eye[1] + ahead * cos(pan)];
