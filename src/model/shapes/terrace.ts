import type { Structure } from '../structure.ts';
import { barrier, block, box, building, opening, pitched } from './parts.ts';
import { angle, count, length, shapeFrom } from './shape.ts';

const SIZES = [
  count('houses', 'Houses in the row', 4, 2, 10),
  length('houseWidth', 'Each house, along the street', 5, 4, 8),
  length('houseDepth', 'Each house, front to back', 8, 6, 12),
  length('wallHeight', 'Height of the eaves', 5.2, 4.6, 9),
  angle('pitch', 'Pitch of the roof', 38, 20, 55),
  length('wing', 'Rear wing, length', 3.5, 2, 6),
  length('front', 'Front gardens', 2, 1.2, 8),
  length('yard', 'Yards behind the wings', 6, 2, 25),
  length('wallsHeight', 'Yard walls', 1.8, 1, 2.5),
] as const;

/** One house of a row: its main part, its wing at the back, what parts its yard from the next, and its bins. */
function houseAt(
  k: number,
  s: Readonly<Record<(typeof SIZES)[number]['key'], number>>,
): readonly Structure[] {
  const x = k * s.houseWidth;
  const back = s.front + s.houseDepth;
  const end = back + s.wing + s.yard;
  const no = k + 1;
  const upper = s.wallHeight / 2 + 0.7;
  const openings = [
    opening(`door-${no}`, `Front door ${no}`, 'door', 0, 0.8),
    opening(`window-${no}`, `Front window ${no}`, 'window', 0, s.houseWidth - 1.2),
    opening(`bedroom-${no}`, `Bedroom window ${no}`, 'window', 0, s.houseWidth / 2, { sill: upper }),
  ];
  const body = box([x, s.front], s.houseWidth, s.houseDepth);
  const wing = box([x, back], 0.45 * s.houseWidth, s.wing);
  return [
    building(`house-${no}`, `House ${no}`, body, s.wallHeight, pitched('gable', s.pitch, 0.2, 90), openings),
    building(`wing-${no}`, `Rear wing ${no}`, wing, 2.6, pitched('monopitch', 12, 0, 90), [
      opening(`back-door-${no}`, `Back door ${no}`, 'door', 1, s.wing / 2),
    ]),
    block(`bins-${no}`, `Bins ${no}`, box([x + s.houseWidth - 1.4, 0.3], 1.2, 0.6), 1.1),
    barrier(
      `yard-wall-${no}`,
      `Yard wall ${no}`,
      'wall',
      [
        [x, back + s.wing],
        [x, end],
      ],
      s.wallsHeight,
    ),
  ];
}

/** A row of houses under one ridge, with rear wings, walled yards and a lane behind. */
export const terrace = shapeFrom(
  { key: 'terrace', name: 'Terrace', says: 'A row of houses with rear wings, walled yards, bins in front' },
  SIZES,
  (s) => {
    const width = s.houses * s.houseWidth;
    const end = s.front + s.houseDepth + s.wing + s.yard;
    const gates = Array.from({ length: s.houses }, (_, k) =>
      opening(`yard-gate-${k + 1}`, `Yard gate ${k + 1}`, 'gate', 0, (k + 0.5) * s.houseWidth, {
        width: 1,
        height: s.wallsHeight,
      }),
    );
    return {
      structures: [
        ...Array.from({ length: s.houses }, (_, k) => houseAt(k, s)).flat(),
        barrier(
          'last-yard-wall',
          'Last yard wall',
          'wall',
          [
            [width, s.front + s.houseDepth],
            [width, end],
          ],
          s.wallsHeight,
        ),
        barrier(
          'lane-wall',
          'Wall to the lane',
          'wall',
          [
            [0, end],
            [width, end],
          ],
          s.wallsHeight,
          { openings: gates },
        ),
      ],
      boundary: box([0, 0], width, end),
    };
  },
);
