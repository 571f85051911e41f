import type { Outcome } from '../../../src/base/fault.ts';
import type { Vec2 } from '../../../src/base/vector.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { emptyPlan } from '../../../src/plan/emptyPlan.ts';
import type { Plan } from '../../../src/plan/plan.ts';

export const valueOf = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.faults));
  return outcome.value;
};
export const codesOf = (outcome: Outcome<unknown>): string[] =>
  outcome.ok ? [] : outcome.faults.map(({ code }) => code);

export const planWith = (structure: Structure, cameras: Plan['cameras'] = {}): Plan => ({
  ...emptyPlan('p', 'P'),
  structures: { [structure.id]: structure },
  structureOrder: [structure.id],
  cameras,
  cameraOrder: Object.keys(cameras),
});

export const cornersAt = (plan: Plan, id: string): readonly Vec2[] => {
  const structure = plan.structures[id];
  if (structure && 'outline' in structure) return structure.outline;
  return structure?.kind === 'barrier' ? structure.line : [];
};
export const openingAt = (plan: Plan, id = 'house') => {
  const structure = plan.structures[id];
  return structure && 'openings' in structure ? structure.openings[0] : undefined;
};

export const edgesOf = (structure: Structure): number => {
  if ('outline' in structure) return structure.outline.length;
  return structure.kind === 'barrier' ? structure.line.length - (structure.closed ? 0 : 1) : 0;
};
