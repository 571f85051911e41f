import { barrier, block, box, building, opening, pitched, vehicle } from './parts.ts';
import { angle, count, length, shapeFrom } from './shape.ts';

const SIZES = [
  length('hallWidth', 'Hall, width', 16, 8, 50),
  length('hallDepth', 'Hall, depth', 10, 6, 40),
  length('wallHeight', 'Hall, low side', 4.5, 3.2, 10),
  angle('pitch', 'Pitch of its roof', 6, 2, 20),
  length('front', 'Open ground before the hall', 20, 16, 80),
  length('side', 'Open ground beside the hall', 14, 12, 80),
  length('fenceHeight', 'Fence', 2.4, 1.2, 3),
  count('containers', 'Containers', 3, 0, 5),
] as const;

/** A container, m: length, width, height; a common one of twenty feet, from memory. */
const [LONG, WIDE, HIGH] = [6.06, 2.44, 2.59] as const;
const SPACE = 0.3;

/** A fenced yard with a hall, containers along one side and a gate to the street. */
export const yard = shapeFrom(
  { key: 'yard', name: 'Yard', says: 'Hall, containers, van, chain-link fence with a wide gate' },
  SIZES,
  (s) => {
    const width = 1 + s.hallWidth + s.side;
    const depth = s.front + s.hallDepth + 1;
    const roof = pitched('monopitch', s.pitch, 0.3, 180);
    return {
      structures: [
        building('hall', 'Hall', box([1, s.front], s.hallWidth, s.hallDepth), s.wallHeight, roof, [
          opening('roller-door', 'Roller door', 'gate', 0, s.hallWidth / 2, { width: 4, height: 3 }),
          opening('side-door', 'Side door', 'door', 1, s.hallDepth / 2),
        ]),
        ...Array.from({ length: s.containers }, (_, k) =>
          block(
            `container-${k + 1}`,
            `Container ${k + 1}`,
            box([width - 1 - LONG, depth - 1 - WIDE - k * (WIDE + SPACE)], LONG, WIDE),
            HIGH,
          ),
        ),
        vehicle('van', 'Van', 'van', [1 + s.hallWidth / 2, s.front - 5], 180),
        barrier('fence', 'Fence', 'fence', box([0, 0], width, depth), s.fenceHeight, {
          closed: true,
          passage: 'screen',
          openings: [opening('gate', 'Gate', 'gate', 0, width / 2, { width: 6, height: s.fenceHeight })],
        }),
      ],
      boundary: box([0, 0], width, depth),
    };
  },
);
