import type { Plan, PlanCamera } from '../../plan/plan.ts';

const sameExcept = <T extends object>(one: T, two: T, except: keyof T): boolean => {
  const entries = new Map(Object.entries(two));
  return Object.entries(one).every(([key, value]) => key === except || entries.get(key) === value);
};

const sameCameras = (one: Plan['cameras'], two: Plan['cameras']): boolean => {
  const ids = Object.keys(one);
  return (
    ids.length === Object.keys(two).length &&
    ids.every((id) => {
      const [a, b]: readonly (PlanCamera | undefined)[] = [one[id], two[id]];
      return a !== undefined && b !== undefined && (a === b || sameExcept(a, b, 'card'));
    })
  );
};

/** Whether two plans differ in nothing but what stands on drill cards, such as ticks, on which no caution hangs. */
export const sameButCards = (one: Plan, two: Plan): boolean =>
  one === two || (sameExcept(one, two, 'cameras') && sameCameras(one.cameras, two.cameras));

/** A camera's cautions with the ticks that it has now. */
export const withTicks = <C extends { readonly id: string; readonly ticked: boolean }>(
  cautions: readonly C[],
  { card }: Pick<PlanCamera, 'card'>,
): readonly C[] => cautions.map((one) => ({ ...one, ticked: card.ticked.includes(one.id) }));
