import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { settingOf } from '../../src/optics/setting.ts';
import { readPlan } from '../../src/plan/read.ts';
import { planText } from '../../src/plan/write.ts';

const text = readFileSync('shared/plans/demo.plan.json', 'utf8');

const demo = () => {
  const read = readPlan(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read;
};

test('the demo plan opens without a fault or a note', () => {
  expect(demo().notes).toEqual([]);
});

test('the demo plan is written as the program writes plans', () => {
  expect(planText(demo().value)).toBe(text);
});

test('the demo plan holds what the first minutes need', () => {
  const plan = demo().value;
  const structures = plan.structureOrder.map((id) => plan.structures[id]);
  const kinds = new Set(structures.map((structure) => structure?.kind));
  expect(kinds).toEqual(new Set(['building', 'barrier', 'vehicle', 'tree', 'block']));
  const passages = structures.flatMap((structure) =>
    structure?.kind === 'barrier' ? [structure.passage] : [],
  );
  expect(passages).toContain('screen');
  expect(passages).toContain('solid');
  expect(plan.cameraOrder).toEqual(['C1', 'C2', 'C3']);
  expect(plan.boundary).not.toBeNull();
  expect(plan.origin).toBeNull();
});

test('no data sheet of the demo plan contradicts itself', () => {
  for (const camera of Object.values(demo().value.cameras)) {
    const { faults, setting } = settingOf(camera.device, camera.name);
    expect(faults).toEqual([]);
    expect(setting.k).toBeGreaterThan(-1);
    expect(setting.k).toBeLessThan(1);
  }
});
