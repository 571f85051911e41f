import { accept, type Outcome } from '../../../base/fault.ts';
import type { Vec2 } from '../../../base/vector.ts';
import { groundCorners, groundHeight, type Ground } from '../../../model/ground.ts';
import { signedArea } from '../../../model/ring.ts';
import { terrainOf, type Terrain } from '../../../model/terrain.ts';
import type { Got, Ring } from '../../../model/structure.ts';
import { addStructure, type StructureDraft } from '../../../plan/commands/addStructure.ts';
import type { Plan } from '../../../plan/plan.ts';
import type { Editor } from '../../editor.ts';
import type { Drawn, Made } from './drawSpec.ts';

/** The plan with a new structure, last in order, or why it cannot be built. */
export function added(plan: Plan, draft: StructureDraft): Outcome<Made> {
  const made = addStructure(plan, draft);
  if (!made.ok) return made;
  return accept({ plan: made.value.plan, thing: { kind: 'structure', id: made.value.id } });
}

/**
 * Puts a structure into the plan as one step and selects it; what stands in the way is said.
 * @returns the thing; null where it is not in the plan
 */
export function put(
  editor: Editor,
  made: Outcome<Made>,
): { readonly kind: 'structure'; readonly id: string } | null {
  if (!made.ok) {
    editor.say('This cannot stand here.', made.faults);
    return null;
  }
  const { plan, thing } = made.value;
  if (thing.kind !== 'structure') return null;
  editor.run(`Add ${plan.structures[thing.id]?.name ?? 'thing'}`, () => plan);
  // A plan that only reads takes nothing; the editor has said so.
  if (editor.store.getState().plan !== plan) return null;
  editor.select(thing);
  return thing;
}

/** The height on which a new structure stands, m above z = 0: of uneven ground the lowest under these places of it. */
export function baseOf({ ground }: Plan, under: readonly Vec2[] = []): number {
  if (ground.kind === 'flat' || under.length === 0) return groundHeight(ground);
  const terrain = terrainUnder(ground);
  if (terrain === null) return groundHeight(ground);
  const least = Math.min(...under.map(([x, y]) => terrain.heightAt(x, y)));
  return Math.round(least * 1000) / 1000;
}

/** How far beyond its outermost heights ground is laid out, m; farther out it goes on level too. */
const AROUND = 50;

const kept = new WeakMap<Ground, Terrain | null>();

/** Uneven ground, laid out once. */
function terrainUnder(ground: Ground): Terrain | null {
  const known = kept.get(ground);
  if (known !== undefined) return known;
  const corners = groundCorners(ground);
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
  const made = terrainOf(ground, {
    left: xs.reduce((a, b) => Math.min(a, b), Infinity) - AROUND,
    bottom: ys.reduce((a, b) => Math.min(a, b), Infinity) - AROUND,
    right: xs.reduce((a, b) => Math.max(a, b), -Infinity) + AROUND,
    top: ys.reduce((a, b) => Math.max(a, b), -Infinity) + AROUND,
  });
  kept.set(ground, made?.terrain ?? null);
  return made?.terrain ?? null;
}

/** How what was drawn is known: typed lengths are taped, clicks on a picture with a scale are read from a map. */
export function gotOf(plan: Plan, { typed }: Pick<Drawn, 'typed'>): Got {
  if (typed) return 'measured';
  const traced = Object.values(plan.pictures).some(
    ({ use, hidden }) => use.kind === 'site' && use.metresPerPixel !== null && !hidden,
  );
  return traced ? 'mapped' : 'guessed';
}

/** The ring counter-clockwise, from the same first corner. */
export function counterClockwise(ring: Ring): Ring {
  if (signedArea(ring) >= 0) return ring;
  const [first, ...rest] = ring;
  return first ? [first, ...rest.toReversed()] : ring;
}
