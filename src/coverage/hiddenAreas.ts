import type { Solid } from '../model/solid.ts';
import type { FoundSight } from '../sight/sightOf.ts';
import { less, NO_AREA, plus, type Area } from './area.ts';
import { causesOf } from './causes.ts';
import { closedAreas } from './closedAreas.ts';
import type { ConditionSets } from './conditions.ts';
import type { Cells, HiderArea } from './coverage.ts';
import { areaOf } from './tally.ts';
import { tallyHiders } from './tallyHiders.ts';
import { countedMask, type Within } from './within.ts';

/** What of the frame is hidden, screened or inside solids. */
export interface Hidden {
  /** By solid, and by screens that have closed up. */
  readonly byHider: readonly HiderArea[];
  readonly screened: Area;
  readonly inside: Area;
}

/** From borders between what hides first and the curves of closing screens; null where they do not close. */
export function hiddenExactly(
  found: FoundSight,
  within: Within,
  conditions: ConditionSets,
  solids: readonly Solid[],
): Hidden | null {
  if (within.cut === null) return null;
  const causes = causesOf(found, within.parts, within.cut, conditions);
  const closed = causes && closedAreas(found, within.parts, within.cut, conditions);
  if (causes === null || closed === null) return null;
  let screened = NO_AREA;
  const byHider: HiderArea[] = [...closed].map(([solid, { value, bound }]) => ({
    solid,
    area: { value, bound, how: 'exact' },
  }));
  for (const [solid, { value, bound }] of causes.byHider) {
    const area: Area = { value: Math.max(0, value), bound, how: 'exact' };
    if (solids[solid]?.passage === 'screen') screened = plus(screened, area);
    else byHider.push({ solid, area });
  }
  for (const { value, bound } of closed.values()) screened = less(screened, { value, bound, how: 'exact' });
  const { value, bound } = causes.inside;
  return { byHider, screened, inside: { value: Math.max(0, value), bound, how: 'exact' } };
}

/** The same counted from cells. */
export function hiddenCells(cells: Cells, within: Within, solids: number): Hidden {
  const { hiders, screens, inside } = tallyHiders(cells, countedMask(within), solids);
  const byHider: HiderArea[] = [];
  hiders.cells.forEach((count, solid) => {
    if (count > 0) byHider.push({ solid, area: areaOf(hiders, solid, cells.grid) });
  });
  return {
    byHider,
    screened: areaOf(screens, 0, cells.grid),
    inside: areaOf(inside, 0, cells.grid),
  };
}
