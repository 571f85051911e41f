import { SHAPES } from '../model/shapes/shapes.ts';
import type { Shape } from '../model/shapes/shape.ts';
import { addStructures } from '../plan/commands/addStructures.ts';
import { setBoundary } from '../plan/commands/setBoundary.ts';
import type { Plan } from '../plan/plan.ts';
import type { Editor } from './editor.ts';

/** The generic sites that one may begin with. */
export const shapes: readonly Shape[] = SHAPES;

/** Puts a generic site of these sizes into the plan as one step; every size counts as guessed. */
export function addShape(editor: Editor, shape: Shape, sizes: Readonly<Record<string, number>>): void {
  const { structures, boundary } = shape.make(sizes);
  editor.run(`Begin with a ${shape.name.toLowerCase()}`, (plan): Plan => {
    const next = addStructures(plan, { structures, origin: null, credits: [] });
    return next.boundary === null ? setBoundary(next, boundary) : next;
  });
  const [first] = structures;
  if (first) editor.select({ kind: 'structure', id: first.id });
  editor.say(`${shape.name}: every size is a guess. The survey list says what to measure.`);
}
