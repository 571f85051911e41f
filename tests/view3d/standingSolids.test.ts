import { BufferAttribute, BufferGeometry, Group, InstancedBufferGeometry, Mesh, Vector3 } from 'three';
import { expect, test } from 'vitest';
import { builtOf } from '../../src/assess/sceneOf.ts';
import { moveThings } from '../../src/plan/commands/moveThings.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { windowUniforms } from '../../src/view3d/shading.ts';
import { StandingSolids } from '../../src/view3d/solids/StandingSolids.ts';
import { demo } from '../editor/plans.ts';

/** What is drawn by all meshes and line layers of a group: corners and lines; what is drawn twice or lost changes it. */
function drawn(group: Group): number {
  let count = 0;
  group.traverse((part) => {
    if (!(part instanceof Mesh) || !part.visible) return;
    const geometry: unknown = part.geometry;
    if (geometry instanceof InstancedBufferGeometry) count += geometry.instanceCount;
    else if (geometry instanceof BufferGeometry) {
      const places: unknown = geometry.getAttribute('position');
      if (places instanceof BufferAttribute) count += places.count;
    }
  });
  return count;
}

const solidsIn = (plan: Plan, built: Map<unknown, ReturnType<typeof builtOf>['solids']>) =>
  plan.structureOrder.flatMap((id) => {
    const structure = plan.structures[id];
    if (!structure) return [];
    const known = built.get(structure) ?? builtOf(structure, 0, null).solids;
    built.set(structure, known);
    return known;
  });

test('what is shown ahead is drawn once, with its outline where it is now, and gone again when it stands', () => {
  const plan = demo();
  const id = plan.structureOrder[0] ?? '';
  const moved = moveThings(plan, [{ kind: 'structure', id }], [2, 1]);
  if (!moved.ok) throw new Error('it cannot go there');
  const built = new Map<unknown, ReturnType<typeof builtOf>['solids']>();
  const group = new Group();
  const standing = new StandingSolids(group, windowUniforms(), { value: new Vector3(0, 0, 10) });
  const origin = [0, 0, 0] as const;
  standing.show(solidsIn(plan, built), plan.structures, origin);
  standing.point(null, [id]);
  const before = drawn(group);
  expect(before).toBeGreaterThan(100);
  const ahead = solidsIn(moved.value, built);
  for (let move = 0; move < 2; move += 1) {
    standing.showAhead(ahead, moved.value.structures);
    expect(drawn(group)).toBe(before);
  }
  standing.show(solidsIn(plan, built), plan.structures, origin);
  standing.point(null, [id]);
  expect(drawn(group)).toBe(before);
});
