import type { Ring } from '../structure.ts';
import { barrier, block, box, building, canopy, opening, vehicle } from './parts.ts';
import { postsAlong } from './posts.ts';
import { count, length, shapeFrom } from './shape.ts';

const SIZES = [
  length('shopWidth', 'Shop, along the street', 10, 6, 25),
  length('shopDepth', 'Shop, along the side street', 9, 6, 25),
  length('wallHeight', 'Height of the roof', 4, 3.2, 9),
  length('parapet', 'Parapet', 0.6, 0.1, 1.5),
  length('corner', 'Cut off the corner', 1.8, 1.2, 2.5),
  length('awning', 'Awning, depth', 1.2, 0.5, 2.5),
  length('pavement', 'Pavement', 3, 2, 8),
  length('yard', 'Yard behind the shop', 8, 4, 30),
  count('bollards', 'Bollards at the kerb', 6, 2, 20),
] as const;

/** A shop between two streets, its door in the cut corner; a yard with a gate behind it. */
export const cornerShop = shapeFrom(
  {
    key: 'corner-shop',
    name: 'Corner shop',
    says: 'Shop with its door in the cut corner, awning, bollards, walled yard with a gate, van',
  },
  SIZES,
  (s) => {
    const { corner, pavement } = s;
    const [x, y] = [pavement, pavement];
    const [east, north] = [x + s.shopWidth, y + s.shopDepth];
    const outline: Ring = [
      [x + corner, y],
      [east, y],
      [east, north],
      [x, north],
      [x, y + corner],
    ];
    const front = s.shopWidth - corner;
    const side = s.shopDepth - corner;
    // It stays clear of the kerb, where the bollards stand.
    const awning = Math.min(s.awning, pavement - 0.6);
    const roof = { kind: 'parapet', pitch: 0, overhang: 0, ridge: null, parapet: s.parapet } as const;
    const end = north + s.yard;
    return {
      structures: [
        building('shop', 'Shop', outline, s.wallHeight, roof, [
          opening('shop-door', 'Shop door', 'door', 4, (corner * Math.SQRT2) / 2),
          opening('shop-window', 'Shop window', 'window', 0, front / 2, {
            width: front - 1.2,
            height: 1.8,
            sill: 0.6,
          }),
          opening('side-window', 'Side window', 'window', 3, side / 2, { width: Math.min(3, side - 1.2) }),
          opening('yard-door', 'Yard door', 'door', 2, s.shopWidth / 2),
        ]),
        canopy(
          'awning',
          'Awning',
          box([x + corner, y - awning], front, awning),
          Math.min(2.9, s.wallHeight - 0.1),
          0,
        ),
        ...postsAlong({
          from: [x + corner, 0.4],
          to: [east - 0.3, 0.4],
          count: s.bollards,
          thickness: 0.15,
          height: 1,
          name: 'Bollard',
        }),
        barrier(
          'yard-wall',
          'Yard wall',
          'wall',
          [
            [x, north],
            [x, end],
            [east, end],
            [east, north],
          ],
          2.2,
          { openings: [opening('yard-gate', 'Yard gate', 'gate', 0, s.yard / 2, { width: 3, height: 2.2 })] },
        ),
        block('bins', 'Bin store', box([east - 2.4, end - 1.4], 2, 1.1), 1.3),
        vehicle('van', 'Delivery van', 'van', [x / 2, north - 3], 0),
      ],
      boundary: box([0, 0], east, end),
    };
  },
);
