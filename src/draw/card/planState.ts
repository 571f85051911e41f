import type { Plan, PlanCamera } from '../../plan/plan.ts';
import { planText } from '../../plan/write.ts';

/** FNV-1a over 32 bits (public domain; constants from memory), of UTF-16 units. */
function hash(text: string): number {
  let sum = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return sum;
}

/** A short mark by which a printed card is told from the plan as it is now: "3F9A-1C02". */
export function planState(bare: Plan): string {
  const digits = hash(planText(bare)).toString(16).toUpperCase().padStart(8, '0');
  return `${digits.slice(0, 4)}-${digits.slice(4)}`;
}

const EMPTY: PlanCamera['card'] = { ticked: [], asBuilt: {} };

/**
 * Plans without what was ticked and noted on cards, which changes nothing that is drilled: the same object as long as nothing
 * else changes, so that whoever remembers by identity remembers across a tick.
 */
export function withoutNotes(): (plan: Plan) => Plan {
  let last: { readonly plan: Plan; readonly bare: Plan } | null = null;
  return (plan) => {
    if (last === null || !isSameBut(last.plan, plan)) {
      const cameras = Object.fromEntries(
        Object.entries(plan.cameras).map(([id, camera]) => [id, { ...camera, card: EMPTY }]),
      );
      last = { plan, bare: { ...plan, cameras } };
    }
    return last.bare;
  };
}

/** Whether two plans are made of the same objects, but for notes on cards. */
function isSameBut(one: Plan, two: Plan): boolean {
  if (one === two) return true;
  if (!isShallowSame(one, two, 'cameras')) return false;
  const ids = Object.keys(one.cameras);
  return (
    ids.length === Object.keys(two.cameras).length &&
    ids.every((id) => {
      const [a, b] = [one.cameras[id], two.cameras[id]];
      return a !== undefined && b !== undefined && (a === b || isShallowSame(a, b, 'card'));
    })
  );
}

function isShallowSame<T extends object>(one: T, two: T, but: keyof T): boolean {
  const [a, b]: readonly [Map<string, unknown>, Map<string, unknown>] = [
    new Map(Object.entries(one)),
    new Map(Object.entries(two)),
  ];
  a.delete(String(but));
  b.delete(String(but));
  return a.size === b.size && [...a].every(([key, value]) => b.get(key) === value);
}
