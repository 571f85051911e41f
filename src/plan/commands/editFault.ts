import type { Fault } from '../../base/fault.ts';
import { LEAST_SIZE } from '../../base/tolerance.ts';
import type { Opening } from '../../model/structure.ts';

/** What each fault of a thing as it would be is called where the change is refused: nothing of it is made. */
const codes: Readonly<Record<string, string>> = {
  'footprint.corners': 'edit.corners',
  'footprint.crosses': 'edit.crosses',
  'footprint.touches': 'edit.touches',
  'footprint.area': 'edit.area',
  'footprint.hole-outside': 'edit.hole',
  'footprint.hole-in-hole': 'edit.hole',
  'barrier.corners': 'edit.corners',
  'barrier.crosses': 'edit.crosses',
  'barrier.touches': 'edit.touches',
  'opening.face': 'edit.openingFace',
  'opening.size': 'edit.openingSize',
  'opening.outside': 'edit.openingOutside',
  'opening.high': 'edit.openingHigh',
  'opening.overlaps': 'edit.openingOverlaps',
  'opening.deep': 'edit.openingDeep',
  'opening.corner': 'edit.openingCorner',
  'service.face': 'edit.serviceFace',
  'service.outside': 'edit.serviceOutside',
  'mount.host': 'edit.cameraFace',
  'mount.face': 'edit.cameraFace',
  'mount.distance': 'edit.cameraDistance',
  'mount.height': 'edit.cameraHeight',
  'mount.opening': 'edit.cameraOpening',
  'mount.soffit': 'edit.cameraSoffit',
  'mount.inset': 'edit.cameraInset',
  'mount.inner-corner': 'edit.cameraCorner',
};

const renamed = (fault: Fault): Fault => ({ ...fault, code: codes[fault.code] ?? fault.code });

/** Why an outline may not become what it would. */
export const drawnFault = renamed;

/** Why an opening that was placed or changed does not fit. */
export const openingFault = renamed;

export const serviceFault = renamed;

/** Why a camera would no longer fit what it is fixed to. */
export const cameraFault = (fault: Fault, name: string): Fault => ({ ...renamed(fault), subject: name });

/** Why a wall may not change: an opening in it, left as it is, needs more of it. */
export function stopFault(fault: Fault, opening: Opening): Fault {
  if (fault.code === 'opening.outside')
    return { ...fault, code: 'edit.stopsShort', given: metres(opening.along + opening.width + LEAST_SIZE) };
  if (fault.code === 'opening.high')
    return { ...fault, code: 'edit.stopsLow', given: metres(opening.sill + opening.height + LEAST_SIZE) };
  return renamed(fault);
}

const metres = (value: number): string => `${(Math.ceil(value * 100 - 1e-6) / 100).toFixed(2)} m`;
