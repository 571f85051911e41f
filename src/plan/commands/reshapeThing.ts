import { cos, sin, tan } from '../../base/angle.ts';
import { accept, refuse, type Outcome } from '../../base/fault.ts';
import { SAME_POINT } from '../../base/tolerance.ts';
import type { Vec2 } from '../../base/vector.ts';
import { cornerAt } from '../../model/ring.ts';
import { span } from '../../model/segment.ts';
import type { Got, Structure } from '../../model/structure.ts';
import type { Patch, Plan } from '../plan.ts';
import { carried } from '../reshape/carried.ts';
import { chainOf } from '../reshape/chainOf.ts';
import { edgeCount, wound, type Chain, type Reshaped } from '../reshape/reshaped.ts';
import { admitted } from './admitted.ts';
import { setBoundary } from './setBoundary.ts';

/** By this the outline commands know the site boundary; no thing has it as its id. */
const BOUNDARY = 'boundary';

/** What a person calls it, and its corners. */
export interface Shape extends Chain {
  readonly name: string;
}

/**
 * Changes the corners of what goes by an id: a structure with an outline or a line, a patch, or `boundary`.
 * What is fixed to its edges goes along, or the change is refused.
 * @param how  how the new corners were got; left out, the mark stays
 * @throws     RangeError where nothing with corners goes by that id
 */
export function reshapeThing(
  plan: Plan,
  id: string,
  reshape: (shape: Shape) => Outcome<Reshaped>,
  how?: Got,
): Outcome<Plan> {
  const structure = Object.hasOwn(plan.structures, id) ? plan.structures[id] : undefined;
  const chain = structure && chainOf(structure);
  if (structure && chain) return reshapeStructure(plan, structure, chain, reshape, how);
  const patch = Object.hasOwn(plan.patches, id) ? plan.patches[id] : undefined;
  if (patch) return reshapePatch(plan, patch, reshape, how);
  if (id !== BOUNDARY || !plan.boundary) throw new RangeError(`the plan has nothing with corners ${id}`);
  const shape = { corners: plan.boundary, closed: true, name: 'Site boundary' };
  const reshaped = ringFrom(shape, reshape);
  if (!reshaped.ok) return reshaped;
  return isSame(shape, reshaped.value)
    ? accept(plan)
    : admitted(plan, setBoundary(plan, reshaped.value.corners));
}

function reshapeStructure(
  plan: Plan,
  structure: Structure,
  chain: Chain,
  reshape: (shape: Shape) => Outcome<Reshaped>,
  how: Got | undefined,
): Outcome<Plan> {
  const shape = { ...chain, name: structure.name };
  // The sides of a barrier are told by the way it was drawn, so that it is never turned round.
  const reshaped = structure.kind === 'barrier' ? reshape(shape) : ringFrom(shape, reshape);
  if (!reshaped.ok) return reshaped;
  const moved: Outcome<Plan> = isSame(shape, reshaped.value)
    ? accept(plan)
    : carried(plan, structure, reshaped.value);
  return moved.ok ? admitted(plan, withMark(moved.value, structure.id, how)) : moved;
}

function withMark(plan: Plan, id: string, how: Got | undefined): Plan {
  const structure = plan.structures[id];
  if (how === undefined || !structure) return plan;
  const marked = ((): Structure => {
    if ('outline' in structure && structure.got.outline !== how) {
      const got = { ...structure.got, outline: how };
      // Each kind with an outline marks how it was got, so the kind keeps its shape.
      return { ...structure, got } as Structure;
    }
    return structure.kind === 'barrier' && structure.got.line !== how
      ? { ...structure, got: { ...structure.got, line: how } }
      : structure;
  })();
  return marked === structure ? plan : { ...plan, structures: { ...plan.structures, [id]: marked } };
}

function reshapePatch(
  plan: Plan,
  patch: Patch,
  reshape: (shape: Shape) => Outcome<Reshaped>,
  how: Got | undefined,
): Outcome<Plan> {
  const shape = { corners: patch.outline, closed: true, name: patch.name };
  const reshaped = ringFrom(shape, reshape);
  if (!reshaped.ok) return reshaped;
  const got = how ?? patch.got;
  if (isSame(shape, reshaped.value) && got === patch.got) return accept(plan);
  const outline = reshaped.value.corners;
  const next = { ...patch, outline, base: heightAt(patch, cornerAt(outline, 0)), got };
  return admitted(plan, { ...plan, patches: { ...plan.patches, [patch.id]: next } });
}

/** Height of a patch's plane: it stays where it is when the first corner, at which its base counts, goes elsewhere. */
function heightAt({ outline, base, pitch, rises }: Patch, [x, y]: Vec2): number {
  const [fromX, fromY] = cornerAt(outline, 0);
  if (pitch === 0) return base;
  return base + tan(pitch) * ((x - fromX) * sin(rises) + (y - fromY) * cos(rises));
}

function ringFrom(shape: Shape, reshape: (shape: Shape) => Outcome<Reshaped>): Outcome<Reshaped> {
  const reshaped = reshape(shape);
  return reshaped.ok ? accept(wound(shape, reshaped.value)) : reshaped;
}

const isSame = ({ corners }: Chain, reshaped: Reshaped): boolean =>
  !reshaped.reversed &&
  corners.length === reshaped.corners.length &&
  corners.every(([x, y], k) => x === reshaped.corners[k]?.[0] && y === reshaped.corners[k]?.[1]);

/** @throws RangeError where there is no such corner or edge */
export function checkNumber(shape: Shape, what: 'corner' | 'edge', number: number): void {
  const count = what === 'corner' ? shape.corners.length : edgeCount(shape);
  if (!Number.isInteger(number) || number < 0 || number >= count)
    throw new RangeError(`${shape.name} has no ${what} ${number}`);
}

/** A change of edges needs edges: a corner that stands twice, as some files have it, is taken out first. */
export function repeatedFault(shape: Shape): Outcome<never> | null {
  const edges = Array.from({ length: edgeCount(shape) }, (_, edge) => edge);
  const isTwice = edges.some(
    (edge) => span(cornerAt(shape.corners, edge), cornerAt(shape.corners, edge + 1)) < SAME_POINT,
  );
  return isTwice ? refuse({ code: 'edit.repeated', path: [], subject: shape.name }) : null;
}
