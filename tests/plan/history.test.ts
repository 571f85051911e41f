import { expect, test } from 'vitest';
import { addLamp, newLamp } from '../../src/plan/commands/addLamp.ts';
import { addPatch, newPatch } from '../../src/plan/commands/addPatch.ts';
import { addSituation, newSituation } from '../../src/plan/commands/addSituation.ts';
import { setLamp } from '../../src/plan/commands/setLamp.ts';
import { setPatch } from '../../src/plan/commands/setPatch.ts';
import { setSituation } from '../../src/plan/commands/setSituation.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import { deleteThing } from '../../src/plan/commands/deleteThing.ts';
import { renamePlan, renameThing } from '../../src/plan/commands/renameThing.ts';
import { setBoundary } from '../../src/plan/commands/setBoundary.ts';
import { setRange } from '../../src/plan/commands/setRange.ts';
import { setStructureSize } from '../../src/plan/commands/setStructureSize.ts';
import { createHistory, record, redo, stepNames, undo, type History } from '../../src/plan/history.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';
import { chanceFrom, trials, type Chance } from '../house/seeded.ts';
import { wholePlan } from './wholePlan.ts';

test('undo and redo walk the named steps', () => {
  const plan = wholePlan();
  let history = createHistory(plan);
  expect(stepNames(history)).toEqual({ undo: null, redo: null });
  history = record(history, 'Tilt C1', aimCamera(plan, 'C1', { tilt: 30 }));
  history = record(history, 'Range of C2', setRange(history.plan, 'C2', 12));
  expect(stepNames(history)).toEqual({ undo: 'Range of C2', redo: null });
  history = undo(history);
  expect(history.plan.cameras['C2']?.range).toBe(30);
  expect(stepNames(history)).toEqual({ undo: 'Tilt C1', redo: 'Range of C2' });
  history = redo(history);
  expect(history.plan.cameras['C2']?.range).toBe(12);
});

test('what a step did not touch stays the very object that caches know', () => {
  const plan = wholePlan();
  const history = undo(record(createHistory(plan), 'Tilt C1', aimCamera(plan, 'C1', { tilt: 30 })));
  expect(history.plan.structures).toBe(plan.structures);
  expect(history.plan.cameras['C1']).toBe(plan.cameras['C1']);
  expect(history.plan.cameras['C2']).toBe(plan.cameras['C2']);
});

test('a deleted structure comes back as the very object it was', () => {
  const plan = wholePlan();
  const gone = record(
    createHistory(plan),
    'Delete House',
    deleteThing(plan, { kind: 'structure', id: 'house' }, { C1: [6, -0.3, 2.7] }),
  );
  expect(gone.plan.cameras['C1']?.mount).toEqual({ kind: 'loose', eye: [6, -0.3, 2.7] });
  const back = undo(gone).plan;
  expect(back).toEqual(plan);
  expect(back.structures['house']).toBe(plan.structures['house']);
  expect(back.cameras['C1']).toBe(plan.cameras['C1']);
});

test('a command that changes nothing is no step', () => {
  const history = createHistory(wholePlan());
  expect(record(history, 'Tilt C1', aimCamera(history.plan, 'C1', { tilt: 20 }))).toBe(history);
});

test('a new step ends what could be redone', () => {
  const plan = wholePlan();
  let history = undo(record(createHistory(plan), 'Tilt C1', aimCamera(plan, 'C1', { tilt: 30 })));
  history = record(history, 'Rename', renamePlan(history.plan, 'Other'));
  expect(redo(history)).toEqual(history);
});

/** Any command with any values; whichever thing it finds. */
const randomEdit = (plan: Plan, chance: Chance): Plan => {
  const camera = plan.cameraOrder.length > 0 ? chance.pick(plan.cameraOrder) : null;
  const structure = plan.structureOrder.length > 0 ? chance.pick(plan.structureOrder) : null;
  switch (chance.whole(0, 9)) {
    case 0:
      return camera === null
        ? plan
        : aimCamera(plan, camera, { pan: chance.between(-400, 400), tilt: chance.between(-90, 90) });
    case 1:
      return camera === null ? plan : setRange(plan, camera, chance.between(1, 90));
    case 2:
      return addCamera(
        plan,
        newCamera(plan, { kind: 'loose', eye: [chance.next(), 0, 3] }, { pan: 0, tilt: 20 }),
      );
    case 3:
      return structure === null
        ? plan
        : setStructureSize(plan, structure, { height: chance.between(0.5, 6) });
    case 4:
      return setBoundary(
        plan,
        chance.next() < 0.5
          ? null
          : [
              [0, 0],
              [chance.between(1, 9), 0],
              [0, 5],
            ],
      );
    case 5:
      return structure === null
        ? plan
        : renameThing(plan, { kind: 'structure', id: structure }, `Thing ${chance.whole(0, 99)}`);
    case 6: {
      const [situation] = plan.situationOrder;
      if (situation === undefined || chance.next() < 0.3)
        return addSituation(plan, newSituation(plan, `Situation ${chance.whole(0, 99)}`));
      if (chance.next() < 0.2) return deleteThing(plan, { kind: 'situation', id: situation }, {});
      return setSituation(plan, situation, {
        night: chance.next() < 0.5,
        treesInLeaf: chance.pick([true, false, null]),
        ...(structure === null ? {} : { away: { structure, gone: chance.next() < 0.5 } }),
      });
    }
    case 7: {
      const [lamp] = plan.lampOrder;
      if (lamp === undefined || chance.next() < 0.3) return addLamp(plan, newLamp(plan, [chance.next(), 2]));
      return chance.next() < 0.3
        ? deleteThing(plan, { kind: 'lamp', id: lamp }, {})
        : setLamp(plan, lamp, { height: chance.between(1, 9) });
    }
    case 8: {
      const [patch] = plan.patchOrder;
      if (patch === undefined)
        return addPatch(
          plan,
          newPatch(plan, [
            [0, 0],
            [chance.between(1, 9), 0],
            [0, 5],
          ]),
        );
      return chance.next() < 0.5
        ? deleteThing(plan, { kind: 'patch', id: patch }, {})
        : setPatch(plan, patch, { pitch: chance.between(0, 30) });
    }
    default: {
      if (chance.next() < 0.5 && camera !== null)
        return deleteThing(plan, { kind: 'camera', id: camera }, {});
      if (structure === null) return plan;
      return deleteThing(plan, { kind: 'structure', id: structure }, { C1: [1, 2, 3] });
    }
  }
};

const seeds = Array.from({ length: trials(30, 2000) }, (_, index) => 20_260 + index);

test.each(seeds)('edits, undo and redo end where a pile of whole plans does (seed %i)', (seed) => {
  const chance = chanceFrom(seed);
  let history: History = createHistory(wholePlan());
  // The oracle: every plan there ever was, whole, and where in the pile we stand.
  const pile: Plan[] = [history.plan];
  let at = 0;
  for (let step = 0; step < 60; step += 1) {
    const dice = chance.next();
    if (dice < 0.25) {
      history = undo(history);
      at = Math.max(0, at - 1);
    } else if (dice < 0.4) {
      history = redo(history);
      at = Math.min(pile.length - 1, at + 1);
    } else {
      const next = randomEdit(history.plan, chance);
      if (next !== history.plan) {
        history = record(history, `Step ${step}`, next);
        pile.splice(at + 1, pile.length, structuredClone(next));
        at += 1;
      }
    }
    expect(history.plan).toEqual(pile[at]);
  }
  // Whatever was done, the plan is one that the door lets in.
  expect(readPlan(planText(history.plan))).toMatchObject({ ok: true, value: history.plan });
});
