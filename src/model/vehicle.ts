import { cos, sin } from '../base/angle.ts';
import type { Vec2 } from '../base/vector.ts';
import { coordinateFaults } from './footprint.ts';
import { madeOf, unmade, type Made } from './made.ts';
import { Shell, type Mesh } from './shell.ts';
import { numberFaults, sizeFaults } from './size.ts';
import type { Vehicle } from './structure.ts';

/** Side profiles, counter-clockwise seen from the vehicle's right: shares of length from the rear, and of height. */
const PROFILES: Readonly<Record<Vehicle['sort'], readonly Vec2[]>> = {
  car: [
    [0, 0],
    [1, 0],
    [1, 0.42],
    [0.97, 0.55],
    [0.75, 0.66],
    [0.58, 1],
    [0.28, 1],
    [0.1, 0.66],
    [0.01, 0.62],
    [0, 0.5],
  ],
  van: [
    [0, 0],
    [1, 0],
    [1, 0.34],
    [0.98, 0.45],
    [0.88, 0.55],
    [0.75, 0.97],
    [0.71, 1],
    [0, 1],
  ],
};

/** A vehicle: its side profile over its whole width, standing on the ground. */
export function vehicleSolids(vehicle: Vehicle): Made {
  const wrong = [
    ...coordinateFaults([vehicle.at], ['at'], vehicle.name).map((fault) => ({ ...fault, path: ['at'] })),
    ...numberFaults(vehicle.heading, ['heading'], vehicle.name),
    ...numberFaults(vehicle.base, ['base'], vehicle.name),
    ...sizeFaults(vehicle.length, ['length'], vehicle.name),
    ...sizeFaults(vehicle.width, ['width'], vehicle.name),
    ...sizeFaults(vehicle.height, ['height'], vehicle.name),
  ];
  if (wrong.length > 0) return unmade(wrong);
  return madeOf(vehicle, vehicleMesh(vehicle), 'solid');
}

function vehicleMesh(vehicle: Vehicle): Mesh | null {
  const shell = new Shell();
  const forward: Vec2 = [sin(vehicle.heading), cos(vehicle.heading)];
  const right: Vec2 = [cos(vehicle.heading), -sin(vehicle.heading)];
  const side = (sign: 1 | -1): number[] =>
    PROFILES[vehicle.sort].map(([along, up]) => {
      const ahead = (along - 0.5) * vehicle.length;
      const across = (sign * vehicle.width) / 2;
      const x = vehicle.at[0] + forward[0] * ahead + right[0] * across;
      const y = vehicle.at[1] + forward[1] * ahead + right[1] * across;
      return shell.corner(x, y, vehicle.base + up * vehicle.height);
    });
  const rightSide = side(1);
  const leftSide = side(-1);
  shell.face(rightSide);
  shell.face([...leftSide].reverse());
  rightSide.forEach((corner, k) => {
    const next = (k + 1) % rightSide.length;
    const [ahead, leftAhead, left] = [rightSide[next], leftSide[next], leftSide[k]];
    if (ahead === undefined || leftAhead === undefined || left === undefined) return;
    shell.face([ahead, corner, left, leftAhead]);
  });
  return shell.mesh();
}
