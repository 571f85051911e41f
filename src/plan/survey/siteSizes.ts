import type { Plan } from '../plan.ts';
import { levelOffBy, offBy, placeOffBy, type Size } from './size.ts';

/** Sizes of the site beside its structures: patches, lamps, heights of the ground. */
export const siteSizes = (plan: Plan): readonly Size[] => [
  ...plan.patchOrder.flatMap((id): Size[] => {
    const patch = plan.patches[id];
    if (!patch) return [];
    const { name, got, base, pitch } = patch;
    return [
      {
        thing: { kind: 'patch', id },
        name,
        what: 'outline and slope',
        value: (length) => `${length(base)} up, ${pitch.toFixed(1)}°`,
        got,
        uncertainty: levelOffBy(got),
        touches: [],
      },
    ];
  }),
  ...plan.lampOrder.flatMap((id): Size[] => {
    const lamp = plan.lamps[id];
    if (!lamp) return [];
    const { name, got, height } = lamp;
    return [
      {
        thing: { kind: 'lamp', id },
        name,
        what: 'place and height',
        value: (length) => `${length(height)} up`,
        got,
        uncertainty: Math.max(placeOffBy(got), offBy(got, height, 'height')),
        touches: [],
      },
    ];
  }),
  ...groundSizes(plan),
];

function groundSizes({ ground }: Plan): readonly Size[] {
  const thing = { kind: 'ground' } as const;
  if (ground.kind === 'flat') return [];
  if (ground.kind === 'grid') {
    const { got, cell } = ground;
    const value: Size['value'] = (length) => `cells of ${length(cell)}`;
    const uncertainty = levelOffBy(got);
    return [{ thing, name: 'Ground', what: 'heights', value, got, uncertainty, touches: [] }];
  }
  return ground.spots.map(({ at: [x, y], height, got }, index) => ({
    thing,
    name: 'Ground',
    what: `spot height ${index + 1}`,
    value: (length) => `${length(height)} at ${length(x)} east, ${length(y)} north`,
    got,
    uncertainty: levelOffBy(got),
    touches: [],
  }));
}
