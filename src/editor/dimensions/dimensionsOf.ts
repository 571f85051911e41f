import type { Plan } from '../../plan/plan.ts';
import type { Selected } from '../editor.ts';
import { placementSettings } from '../settings/placementSettings.ts';
import { dimension, type Dimension } from './dimension.ts';
import { edgeDimensions, positionDimensions } from './outlineDimensions.ts';
import { openingDimensions } from './openingDimensions.ts';
import { spotDimensions } from './spotDimensions.ts';
import { placeOfSize } from './placeOfSize.ts';

/**
 * The dimensions of a thing in the order in which Tab walks them: position, each edge from the first drawn, then the
 * numbers of its sheet; of a camera the numbers of its mount and aim.
 * @param swapped whether an edge's first end moves instead of its second
 */
export function dimensionsOf(plan: Plan, thing: Selected, swapped = false): readonly Dimension[] {
  switch (thing.kind) {
    case 'structure':
      return [
        ...positionDimensions(plan, thing),
        ...edgeDimensions(plan, thing.id, swapped),
        ...sizeDimensions(plan, thing),
      ];
    case 'patch':
      return [...positionDimensions(plan, thing), ...edgeDimensions(plan, thing.id, swapped)];
    case 'boundary':
      return edgeDimensions(plan, 'boundary', swapped);
    case 'opening': {
      const host = plan.structures[thing.on];
      const opening =
        host && 'openings' in host ? host.openings.find(({ id }) => id === thing.id) : undefined;
      return host && opening ? openingDimensions(host, opening) : [];
    }
    case 'ground':
      return spotDimensions(plan);
    case 'camera':
    case 'lamp':
      return sizeDimensions(plan, thing);
    default:
      return [];
  }
}

/** Its place has been told already. */
const PLACE = ['at 0', 'at 1'];

/** The numbers of its sheet, with places to be drawn at. */
const sizeDimensions = (plan: Plan, thing: Selected): readonly Dimension[] =>
  placementSettings(plan, thing)
    .filter(({ key }) => !PLACE.includes(key))
    .map(({ key, label, measure, value, bounds, change }) =>
      dimension({
        key,
        label,
        measure,
        value,
        bounds,
        between: placeOfSize(plan, thing, key),
        change: (next) => (now) => change(now, next),
      }),
    );
