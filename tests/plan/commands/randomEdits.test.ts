import { expect, test } from 'vitest';
import { solidsOf } from '../../../src/model/solids.ts';
import { checkPlan } from '../../../src/plan/checkPlan.ts';
import { createHistory, record, redo, undo, type History } from '../../../src/plan/history.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { readPlan } from '../../../src/plan/read.ts';
import { planText } from '../../../src/plan/write.ts';
import { chanceFrom, trials } from '../../house/seeded.ts';
import { wholePlan } from '../wholePlan.ts';
import { randomEdit } from './randomEdit.ts';

const seeds = Array.from({ length: trials(60, 10_000) }, (_, index) => 77_000 + index);

/** Edits and steps to and fro in one sequence. */
const STEPS = 30;

test.each(seeds)('edits, undo and redo end where a pile of whole plans does (seed %i)', (seed) => {
  const chance = chanceFrom(seed);
  let history: History = createHistory(wholePlan());
  // The oracle: every plan there ever was, whole and as text, and where in the pile we stand.
  const pile: string[] = [sorted(history.plan)];
  let at = 0;
  const wrong: string[] = [];
  for (let step = 0; step < STEPS; step += 1) {
    const dice = chance.next();
    let name = 'undo or redo';
    if (dice < 0.2) {
      history = undo(history);
      at = Math.max(0, at - 1);
    } else if (dice < 0.32) {
      history = redo(history);
      at = Math.min(pile.length - 1, at + 1);
    } else {
      const former = history.plan;
      const tried = randomEdit(former, chance);
      name = tried.name;
      // A command gives another plan and leaves the one that it got as it was.
      if (sorted(former) !== pile[at]) wrong.push(`${name} wrote into the plan`);
      const next = tried.outcome.ok ? tried.outcome.value : former;
      if (!tried.outcome.ok && tried.outcome.faults.length === 0)
        wrong.push(`${name} refused without a word`);
      if (next !== former) {
        const text = sorted(next);
        // The very same object where nothing changes, so that no empty step is made.
        if (text === pile[at]) wrong.push(`${name} changed nothing and gave another plan`);
        wrong.push(...unsound(next, former).map((what) => `${name}: ${what}`));
        history = record(history, name, next);
        pile.splice(at + 1, pile.length, text);
        at += 1;
      }
    }
    if (sorted(history.plan) !== pile[at]) wrong.push(`${name} does not end where it must`);
  }
  expect(wrong).toEqual([]);
  expect(readPlan(planText(history.plan))).toMatchObject({ ok: true, value: history.plan });
});

/** What is wrong with a plan: the door does not let it in, or a structure has neither closed solids nor a fault. */
function unsound(plan: Plan, former: Plan): readonly string[] {
  const checked = checkPlan(structuredClone(plan));
  const structures = Object.values(plan.structures).flatMap((structure) => {
    // The very object that it was has been asked already.
    if (former.structures[structure.id] === structure) return [];
    const { solids, faults } = solidsOf(structure);
    return [
      ...(solids.length + faults.length === 0 ? [`${structure.kind} is nothing`] : []),
      ...solids
        .filter(({ positions, triangles }) => !positions.every(Number.isFinite) || !closes(triangles))
        .map((solid) => `${solid.name} is open`),
    ];
  });
  return [...(checked.ok ? [] : checked.faults.map((fault) => JSON.stringify(fault))), ...structures];
}

/** Every edge of a mesh is walked as often one way as the other. */
function closes(triangles: Uint32Array): boolean {
  const open = new Map<number, number>();
  const most = triangles.reduce((a, b) => Math.max(a, b), 0) + 1;
  for (let k = 0; k < triangles.length; k += 3)
    for (const [from, to] of [
      [k, k + 1],
      [k + 1, k + 2],
      [k + 2, k],
    ] as const) {
      const [a, b] = [triangles[from] ?? 0, triangles[to] ?? 0];
      const key = Math.min(a, b) * most + Math.max(a, b);
      open.set(key, (open.get(key) ?? 0) + (a < b ? 1 : -1));
    }
  return [...open.values()].every((count) => count === 0);
}

/** A plan as text whose records stand in one order: they come back in another, which is told by their lists. */
const sorted = (plan: unknown): string =>
  JSON.stringify(plan, (_, part: unknown) =>
    part && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
