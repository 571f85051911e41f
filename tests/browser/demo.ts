import { readFileSync } from 'node:fs';
import type { Assessment } from '../../src/assess/assessment.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import type { Target } from '../../src/coverage/target.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';

/** The text of the plan with which the app opens. */
export const demoText = readFileSync('shared/plans/demo.plan.json', 'utf8');

export const planFrom = (text: string): Plan => {
  const read = readPlan(text);
  if (!read.ok) throw new Error(`the plan does not open: ${JSON.stringify(read.faults)}`);
  return read.value;
};

export const GROUND: Target = { kind: 'ground', height: 0 };

/** What the engine makes of a plan, here and not in the browser. */
export const assessed = (plan: Plan, target: Target = GROUND, situation: string | null = null): Assessment =>
  runSteps(createSession().steps(plan, { target, alone: null, situation, causes: 'exact' }, 1));

/** A figure shown to a tenth, judged by the engine's. */
export const isTenthOf = (shown: number | undefined, value: number): boolean =>
  shown !== undefined && Math.abs(shown - value) <= 0.05 + 1e-9;
