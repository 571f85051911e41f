import type { Opening } from '../structure.ts';
import { barrier, box, building, FLAT, opening, pitched, tree, vehicle } from './parts.ts';
import { angle, length, shapeFrom } from './shape.ts';

const SIZES = [
  length('houseWidth', 'House, along the street', 10, 5, 20),
  length('houseDepth', 'House, front to back', 8, 5, 15),
  length('wallHeight', 'Height of the eaves', 5, 2.4, 9),
  angle('pitch', 'Pitch of the roof', 35, 15, 55),
  length('overhang', 'Overhang of the roof', 0.4, 0, 0.8),
  length('front', 'Front garden', 7, 5, 20),
  length('back', 'Back garden', 12, 4, 40),
  length('side', 'Beside the house, west', 3, 1, 10),
  length('garageWidth', 'Garage, width', 3.2, 2.6, 7),
  length('garageDepth', 'Garage, depth', 6, 4.5, 9),
  length('fenceHeight', 'Fence', 1.8, 0.9, 2.4),
] as const;

/** Between the house and the garage, and between the garage and the fence, m. */
const GAP = 1;

/** Windows beside the door, and above where there is a second floor. */
function frontOpenings(width: number, height: number): readonly Opening[] {
  const places = [0.2 * width, 0.8 * width];
  const ground = [
    opening('front-door', 'Front door', 'door', 0, width / 2),
    ...places.map((at, k) => opening(`front-window-${k + 1}`, `Front window ${k + 1}`, 'window', 0, at)),
    opening('back-door', 'Back door', 'door', 2, 0.3 * width),
  ];
  if (height < 4.4) return ground;
  const sill = height / 2 + 0.8;
  return [
    ...ground,
    ...places.map((at, k) =>
      opening(`bedroom-${k + 1}`, `Bedroom window ${k + 1}`, 'window', 0, at, { sill }),
    ),
  ];
}

/** A house in its garden, with a garage, a drive, a fence around the back and a hedge along the street. */
export const detached = shapeFrom(
  {
    key: 'detached',
    name: 'Detached house',
    says: 'House, garage, car on the drive, fence, hedge with a gate, a tree',
  },
  SIZES,
  (s) => {
    const garageX = s.side + s.houseWidth + GAP;
    const width = garageX + s.garageWidth + GAP;
    const depth = s.front + Math.max(s.houseDepth, s.garageDepth) + s.back;
    const door = s.side + s.houseWidth / 2;
    const crown = Math.min(2.5, s.back / 4);
    const garageDoor = opening('garage-door', 'Garage door', 'gate', 0, s.garageWidth / 2, {
      width: Math.min(s.garageWidth - 0.4, 5),
      height: 2,
    });
    return {
      structures: [
        building(
          'house',
          'House',
          box([s.side, s.front], s.houseWidth, s.houseDepth),
          s.wallHeight,
          pitched('gable', s.pitch, s.overhang),
          frontOpenings(s.houseWidth, s.wallHeight),
        ),
        building('garage', 'Garage', box([garageX, s.front], s.garageWidth, s.garageDepth), 2.4, FLAT, [
          garageDoor,
        ]),
        vehicle('car', 'Car', 'car', [garageX + s.garageWidth / 2, s.front / 2], 180),
        barrier(
          'fence',
          'Fence',
          'fence',
          [
            [0, s.front],
            [0, depth],
            [width, depth],
            [width, s.front],
          ],
          s.fenceHeight,
        ),
        barrier(
          'hedge',
          'Hedge',
          'hedge',
          [
            [0, 0.4],
            [garageX, 0.4],
          ],
          1.2,
          { openings: [opening('gate', 'Garden gate', 'gate', 0, door, { height: 1 })] },
        ),
        tree('tree', 'Tree', [s.side + crown, depth - 1.5 * crown], 2.4 * crown + 1, crown),
      ],
      boundary: box([0, 0], width, depth),
    };
  },
);
