import { expect, test } from 'vitest';
import { createAnswers } from '../../src/answers/store.ts';
import { wire } from '../../src/app/wire.ts';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { createEditor } from '../../src/editor/store.ts';
import { aimCamera } from '../../src/plan/commands/aimCamera.ts';
import { moveThings } from '../../src/plan/commands/moveThings.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { demo } from '../editor/plans.ts';

/** The wire on the sample, with a pool that answers at once and counts how often it is asked. */
async function begun() {
  const editor = createEditor(demo());
  const answers = createAnswers();
  const session = createSession();
  const failures: unknown[] = [];
  const count = { asked: 0 };
  wire({
    editor,
    answers,
    session,
    pool: {
      assess: ({ plan, question, revision }) => {
        count.asked += 1;
        return Promise.resolve(runSteps(session.steps(plan, question, revision)));
      },
    },
    frame: (callback) => callback(),
    failed: (error) => failures.push(error),
  });
  await settle();
  expect(answers.getState().computing).toBeNull();
  return { editor, answers, count, failures, shown: () => answers.getState().assessment };
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 0));

const house = Object.values(demo().structures).find(({ kind }) => kind === 'building')?.id ?? '';

const slid =
  (east: number) =>
  (plan: Plan): Plan => {
    const moved = moveThings(plan, [{ kind: 'structure', id: house }], [east, 0]);
    if (!moved.ok) throw new Error('the house cannot go there');
    return moved.value;
  };

/** The least x of the house's solids. */
const west = (scene: { readonly solids: readonly { structure: string; positions: Float64Array }[] } | null) =>
  Math.min(
    ...(scene?.solids ?? [])
      .filter(({ structure }) => structure === house)
      .flatMap(({ positions }) => [...positions].filter((_, i) => i % 3 === 0)),
  );

test('while a house is moved what stands goes ahead at once, and its coverage waits for the release, marked', async () => {
  const { editor, answers, count, shown } = await begun();
  const before = shown();
  const stood = west(before?.scene ?? null);
  const others = before?.scene.solids.filter(({ structure }) => structure !== house) ?? [];
  const asked = count.asked;
  const gesture = editor.begin('Move');
  for (const east of [0.5, 1, 1.5]) {
    gesture.change(slid(east));
    const { ahead, computing } = answers.getState();
    expect(west(ahead)).toBeCloseTo(stood + east, 9);
    expect(ahead?.solids).toEqual(expect.arrayContaining(others.slice(0, 3)));
    // Nothing but what moved is made anew.
    const still = others.filter(({ id }) => !id.endsWith('.post'));
    for (const solid of still) expect(ahead?.solids).toContain(solid);
    expect(computing).not.toBeNull();
    expect(shown()).toBe(before);
  }
  expect(count.asked).toBe(asked);
  gesture.commit();
  await settle();
  expect(answers.getState().ahead).toBeNull();
  expect(answers.getState().computing).toBeNull();
  expect(shown()?.revision).toBe(editor.store.getState().revision);
  expect(west(shown()?.scene ?? null)).toBeCloseTo(stood + 1.5, 9);
  const { plan, revision, target } = editor.store.getState();
  const fresh = runSteps(
    createSession().steps(plan, { target, alone: null, situation: null, causes: 'exact' }, revision),
  );
  expect(shown()?.site.byBand).toEqual(fresh.site.byBand);
});

test('a drag that is called off ends where it began, with nothing ahead', async () => {
  const { editor, answers, shown } = await begun();
  const byBand = shown()?.site.byBand;
  const gesture = editor.begin('Move');
  gesture.change(slid(2));
  expect(answers.getState().ahead).not.toBeNull();
  gesture.cancel();
  await settle();
  expect(answers.getState().ahead).toBeNull();
  expect(answers.getState().computing).toBeNull();
  expect(shown()?.site.byBand).toEqual(byBand);
});

test('coverage that is on while shaping follows each move, from the very move that it is switched on at', async () => {
  const { editor, answers, shown } = await begun();
  const gesture = editor.begin('Move');
  gesture.change(slid(0.5));
  expect(answers.getState().ahead).not.toBeNull();
  editor.coverShaping(true);
  await settle();
  expect(answers.getState().ahead).toBeNull();
  for (const east of [1, 1.5]) {
    gesture.change(slid(east));
    await settle();
    expect(answers.getState().ahead).toBeNull();
    expect(shown()?.revision).toBe(editor.store.getState().revision);
  }
  gesture.commit();
});

test('a camera that is dragged is covered on the way whatever the switch says', async () => {
  const { editor, answers, shown } = await begun();
  const gesture = editor.begin('Tilt C1');
  gesture.change((plan) => aimCamera(plan, 'C1', { tilt: 33 }));
  expect(answers.getState().ahead).toBeNull();
  await settle();
  expect(shown()?.cameras[0]?.camera.tilt).toBe(33);
  gesture.cancel();
});
