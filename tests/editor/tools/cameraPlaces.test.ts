import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../../src/base/vector.ts';
import { createEditor } from '../../../src/editor/store.ts';
import { LATER_TOOLS } from '../../../src/editor/tools/laterTools.ts';
import { createToolbox } from '../../../src/editor/tools/toolbox.ts';
import type { Structure } from '../../../src/model/structure.ts';
import { addStructure } from '../../../src/plan/commands/addStructure.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { barrierWith, blockWith, buildingWith, canopyWith, rectangle } from '../../model/sampleStructures.ts';
import { demo } from '../plans.ts';
import { pointing } from './pointing.ts';

function demoWith(structure: Structure): Plan {
  const added = addStructure(demo(), structure);
  if (!added.ok) throw new Error(JSON.stringify(added.faults));
  return added.value.plan;
}

function inHand(plan: Plan = demo()) {
  const editor = createEditor(plan);
  const tools = createToolbox(editor, LATER_TOOLS);
  editor.hold('camera');
  const now = () => editor.store.getState();
  const state = () => tools.store.getState().state;
  const fourth = () => {
    const camera = now().plan.cameras['C4'];
    if (!camera) throw new Error(`no fourth camera: ${state().strip?.text}`);
    return camera;
  };
  return { editor, tools, now, state, fourth };
}

describe('the camera tool takes what it is pointed at', () => {
  test('a gable, above the height of the eaves', () => {
    const { tools, now, fourth, state } = inHand();
    // The east end of the house rises to its ridge half-way along, 2.73 above the walls.
    const east: Vec3 = [60, 3, 12];
    tools.hover(pointing(now().plan, [11, 3.5, 4.2], {}, east));
    expect(state().strip?.text).toContain('4.20 up · 3.50 from the');
    tools.enter();
    tools.enter();
    expect(fourth().mount).toMatchObject({ kind: 'flush', host: 'house', face: 1, height: 4.2 });
    expect(fourth().pan).toBeCloseTo(90, 9);
  });

  test('the underside of a canopy, looked at from below', () => {
    const roofed = demoWith(
      canopyWith({
        id: 'porch',
        name: 'Porch',
        outline: [
          [12, -6],
          [16, -6],
          [16, -3],
          [12, -3],
        ],
        top: 2.7,
        thickness: 0.2,
      }),
    );
    const { tools, now, fourth, state } = inHand(roofed);
    tools.hover(pointing(now().plan, [14, -5, 2.5], {}, [14, -12, 0.4]));
    expect(state().strip?.text).toContain('under the soffit');
    tools.enter();
    tools.enter();
    expect(fourth().mount).toMatchObject({ kind: 'soffit', host: 'porch-1' });
  });

  test('the ceiling of a room, from within it', () => {
    const shop = buildingWith({
      id: 'shop',
      name: 'Shop',
      outline: rectangle(5, 4, [12, -7]),
      wallThickness: 0.3,
      height: 3,
    });
    const { tools, now, fourth, state } = inHand(demoWith(shop));
    tools.hover(pointing(now().plan, [13.5, -5.7, 2.8], {}, [15, -5, 1.6]));
    expect(state().strip?.text).toContain('under the ceiling, 1.00 from the wall');
    tools.enter();
    tools.enter();
    expect(fourth().mount).toMatchObject({ kind: 'soffit', host: 'shop-1', face: 4, inset: 1 });
  });

  test('a post that was drawn, on the side that is seen', () => {
    const post = blockWith({
      id: 'post',
      name: 'Post',
      outline: [
        [14, -6],
        [14.2, -6],
        [14.2, -5.8],
        [14, -5.8],
      ],
      base: 0,
      height: 3,
    });
    const { tools, now, fourth } = inHand(demoWith(post));
    tools.click(pointing(now().plan, [14.1, -6, 2.4], {}, [14.1, -30, 6]));
    tools.enter();
    expect(fourth().mount).toMatchObject({ kind: 'flush', host: 'post-1', face: 0, height: 2.4 });
  });

  test('the corner of a wall that turns, where its bracket is one for corners', () => {
    const wall = barrierWith({
      id: 'yard',
      name: 'Yard wall',
      line: [
        [12, -6],
        [17, -6],
        [17, -2],
      ],
      thickness: 0.2,
      height: 2.5,
    });
    const { tools, now, fourth, state } = inHand(demoWith(wall));
    tools.again();
    tools.again();
    tools.hover(pointing(now().plan, [16.5, -6.1, 2], {}, [14, -30, 6]));
    expect(state().strip?.text).toContain('on the corner');
    tools.enter();
    tools.enter();
    expect(fourth().mount).toMatchObject({ kind: 'corner', host: 'yard-wall-1', face: 3 });
    expect(fourth().pan).toBeCloseTo(135, 6);
  });

  test('a free end of a wall is no corner, and the strip says what would be', () => {
    const wall = barrierWith({
      id: 'yard',
      name: 'Yard wall',
      line: [
        [12, -6],
        [17, -6],
      ],
      thickness: 0.2,
      height: 2.5,
    });
    const { tools, now, state } = inHand(demoWith(wall));
    tools.again();
    tools.again();
    tools.hover(pointing(now().plan, [16.5, -6.1, 2], {}, [14, -30, 6]));
    expect(state().ghost).toBeNull();
    expect(state().strip?.text).toContain('corner');
  });

  test('the ground: a pole, whose height and thickness are typed', () => {
    const { tools, now, fourth, state } = inHand();
    tools.hover(pointing(now().plan, [15, -5, 0]));
    expect(state().strip?.fields.map(({ key }) => key)).toEqual(['height', 'diameter']);
    tools.type('height', 4.5);
    tools.type('diameter', 0.14);
    tools.enter();
    tools.enter();
    expect(fourth().mount).toMatchObject({ kind: 'pole', height: 4.5, diameter: 0.14 });
  });
});
