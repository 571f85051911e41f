import type { Outcome } from '../../../src/base/fault.ts';
import type { Vec2 } from '../../../src/base/vector.ts';
import type { Structure } from '../../../src/model/structure.ts';
import type { Movable } from '../../../src/plan/commands/thing.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import type { Chance } from '../../house/seeded.ts';

export const place = (chance: Chance): Vec2 => [chance.between(-30, 30), chance.between(-30, 30)];

/** A size, now and then beyond all bounds. */
export const length = (chance: Chance, least: number, most: number): number =>
  chance.next() < 0.04
    ? chance.pick([0, -1, 1e-9, 1e7, Number.NaN, Number.POSITIVE_INFINITY])
    : chance.between(least, most);

/** A size as a plan may hold it. */
export const finite = (chance: Chance, least: number, most: number): number =>
  chance.next() < 0.04 ? chance.pick([0, -1, 1e-9, 1e7]) : chance.between(least, most);

export const any = (plan: Plan, chance: Chance): Structure | undefined =>
  plan.structureOrder.length === 0 ? undefined : plan.structures[chance.pick(plan.structureOrder)];

export const movables = (plan: Plan, chance: Chance): Movable[] =>
  [
    ...plan.structureOrder.map((id): Movable => ({ kind: 'structure', id })),
    ...plan.cameraOrder.map((id): Movable => ({ kind: 'camera', id })),
    ...plan.lampOrder.map((id): Movable => ({ kind: 'lamp', id })),
    ...plan.patchOrder.map((id): Movable => ({ kind: 'patch', id })),
    ...plan.pictureOrder.map((id): Movable => ({ kind: 'picture', id })),
    ...(plan.boundary ? [{ kind: 'boundary' } as const] : []),
  ].filter(() => chance.next() < 0.4);

/** Something with corners and how many it has. */
export function outlined(
  plan: Plan,
  chance: Chance,
): { id: string; corners: number; edges: number } | undefined {
  const all = [
    ...Object.values(plan.structures).flatMap((s) => {
      if ('outline' in s) return [{ id: s.id, corners: s.outline.length, edges: s.outline.length }];
      return s.kind === 'barrier'
        ? [{ id: s.id, corners: s.line.length, edges: s.line.length - (s.closed ? 0 : 1) }]
        : [];
    }),
    ...Object.values(plan.patches).map(({ id, outline }) => ({
      id,
      corners: outline.length,
      edges: outline.length,
    })),
    ...(plan.boundary
      ? [{ id: 'boundary', corners: plan.boundary.length, edges: plan.boundary.length }]
      : []),
  ];
  return all.length === 0 ? undefined : chance.pick(all);
}

export const cornerOf = (plan: Plan, id: string, corner: number): Vec2 => {
  const thing = plan.structures[id] ?? plan.patches[id] ?? { outline: plan.boundary ?? [] };
  const corners = 'outline' in thing ? thing.outline : 'line' in thing ? thing.line : [];
  return corners[corner] ?? [0, 0];
};

export type Edit = (plan: Plan, chance: Chance) => Outcome<Plan> | undefined;

export const onEdge =
  (run: (plan: Plan, chance: Chance, id: string, edge: number) => Outcome<Plan>): Edit =>
  (plan, chance) => {
    const thing = outlined(plan, chance);
    return thing && run(plan, chance, thing.id, chance.whole(0, thing.edges - 1));
  };

export const onOpening =
  (run: (plan: Plan, chance: Chance, on: string, id: string) => Outcome<Plan>): Edit =>
  (plan, chance) => {
    const structure = any(plan, chance);
    if (!structure || !('openings' in structure) || structure.openings.length === 0) return undefined;
    return run(plan, chance, structure.id, chance.pick(structure.openings).id);
  };

export const onService =
  (run: (plan: Plan, chance: Chance, on: string, id: string) => Outcome<Plan>): Edit =>
  (plan, chance) => {
    const structure = any(plan, chance);
    if (structure?.kind !== 'building' || structure.services.length === 0) return undefined;
    return run(plan, chance, structure.id, chance.pick(structure.services).id);
  };
