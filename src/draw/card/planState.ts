import type { Plan } from '../../plan/plan.ts';
import { planText } from '../../plan/write.ts';

/** FNV-1a over 32 bits (public domain; constants from memory), of UTF-16 units. */
function hash(text: string): number {
  let sum = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return sum;
}

/**
 * A short mark by which a printed card is told from the plan as it is now: "3F9A-1C02". What was ticked and noted on cards does
 * not count, since it changes nothing that is drilled.
 */
export function planState(plan: Plan): string {
  const cameras = Object.fromEntries(
    Object.entries(plan.cameras).map(([id, camera]) => [
      id,
      { ...camera, card: { ticked: [], asBuilt: {} } },
    ]),
  );
  const digits = hash(planText({ ...plan, cameras }))
    .toString(16)
    .toUpperCase()
    .padStart(8, '0');
  return `${digits.slice(0, 4)}-${digits.slice(4)}`;
}
