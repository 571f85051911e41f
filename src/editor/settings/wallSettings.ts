import type { Building } from '../../model/structure.ts';
import { resizeStructure, setStructure } from '../../plan/commands/setStructure.ts';
import { LIMITS } from '../../plan/limits.ts';
import type { Setting } from './setting.ts';

/** Thickness of a building's walls, 0 where it is one block; and the year in which it was built, 0 where not known. */
export function wallSettings({ id, wallThickness, yearBuilt }: Building): readonly Setting[] {
  return [
    {
      key: 'wallThickness',
      label: 'Wall thickness',
      measure: 'length',
      bounds: { least: 0, most: 2 },
      value: wallThickness ?? 0,
      change: (plan, value) =>
        resizeStructure(
          plan,
          id,
          { wallThickness: value < LIMITS.thickness.least ? null : value },
          'measured',
        ),
    },
    {
      key: 'yearBuilt',
      label: 'Year built',
      measure: 'count',
      bounds: { least: 0, most: LIMITS.year.most },
      value: yearBuilt ?? 0,
      change: (plan, value) => setStructure(plan, id, { yearBuilt: value === 0 ? null : Math.round(value) }),
    },
  ];
}
