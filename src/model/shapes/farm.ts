import type { Ring } from '../structure.ts';
import { roundRing } from '../tree.ts';
import { barrier, block, box, building, canopy, opening, pitched, tree, vehicle } from './parts.ts';
import { angle, count, length, shapeFrom } from './shape.ts';

const SIZES = [
  length('houseWidth', 'Farmhouse, width', 11, 7, 20),
  length('houseWing', 'Farmhouse, its wing', 5, 2, 12),
  length('wallHeight', 'Height of its eaves', 4.8, 2.6, 8),
  angle('pitch', 'Pitch of the roofs', 40, 20, 55),
  length('barnLength', 'Barn, length', 24, 10, 60),
  length('barnWidth', 'Barn, width', 12, 6, 25),
  length('barnHeight', 'Barn, eaves', 5, 3.4, 9),
  length('court', 'Court between them', 20, 12, 60),
  length('shed', 'Open shed, length', 10, 4, 30),
  count('trees', 'Trees along the lane', 5, 0, 12),
] as const;

const HOUSE_DEPTH = 7;
const WALL = 1.2;

/** A farmhouse, a barn and an open shed around a court, a silo, a wall with a gate and trees along the lane. */
export const farm = shapeFrom(
  { key: 'farm', name: 'Farm', says: 'Farmhouse with a wing, barn, open shed, silo, walled court, trees' },
  SIZES,
  (s) => {
    const [margin, lane] = [6, 8];
    const barnX = margin + s.houseWidth + s.court;
    const barnY = lane + 2;
    const width = barnX + s.barnWidth + 8;
    const depth = lane + Math.max(s.barnLength + 4, HOUSE_DEPTH + s.houseWing + 12);
    const east = margin + s.houseWidth;
    const wing = 0.45 * s.houseWidth;
    const house: Ring = [
      [margin, lane + 2],
      [east, lane + 2],
      [east, lane + 2 + HOUSE_DEPTH],
      [margin + wing, lane + 2 + HOUSE_DEPTH],
      [margin + wing, lane + 2 + HOUSE_DEPTH + s.houseWing],
      [margin, lane + 2 + HOUSE_DEPTH + s.houseWing],
    ];
    return {
      structures: [
        building('farmhouse', 'Farmhouse', house, s.wallHeight, pitched('hip', s.pitch, 0.4), [
          opening('front-door', 'Front door', 'door', 0, s.houseWidth / 2),
          opening('front-window-1', 'Front window 1', 'window', 0, 0.2 * s.houseWidth),
          opening('front-window-2', 'Front window 2', 'window', 0, 0.8 * s.houseWidth),
          opening('court-door', 'Court door', 'door', 1, HOUSE_DEPTH / 2),
        ]),
        building(
          'barn',
          'Barn',
          box([barnX, barnY], s.barnWidth, s.barnLength),
          s.barnHeight,
          pitched('gable', Math.min(s.pitch, 45), 0.5, 0),
          [opening('barn-door', 'Barn door', 'gate', 3, s.barnLength / 2, { width: 3.6, height: 3.2 })],
        ),
        canopy('shed', 'Open shed', box([east + 2, depth - 6], Math.min(s.shed, s.court - 4), 5), 3.2, 4),
        block('silo', 'Silo', roundRing([barnX + s.barnWidth + 4, barnY + 4], 4), 8),
        vehicle('tractor', 'Farm van', 'van', [east + s.court / 2, lane + 6], 0),
        barrier(
          'court-wall',
          'Court wall',
          'wall',
          [
            [east, lane + 2],
            [barnX, lane + 2],
          ],
          WALL,
          {
            openings: [
              opening('court-gate', 'Court gate', 'gate', 0, s.court / 2, { width: 4, height: WALL }),
            ],
          },
        ),
        ...Array.from({ length: s.trees }, (_, k) =>
          tree(`tree-${k + 1}`, `Tree ${k + 1}`, [((k + 0.5) * width) / s.trees, 3], 8, 1.6),
        ),
      ],
      boundary: box([0, 0], width, depth),
    };
  },
);
