import { expect, test } from 'vitest';
import type { PointAnswer } from '../../src/assess/assessment.ts';
import type { State } from '../../src/coverage/state.ts';
import { figureText } from '../../src/draw/figureText.ts';

const answer = (state: State): PointAnswer => ({
  camera: 'C1',
  state,
  band: 0,
  density: null,
  depression: 0,
  hider: null,
  before: null,
  lost: 0,
});

const said = (feet: State, waist: State, face: State): string =>
  figureText(
    {
      camera: 'C1',
      parts: [
        { part: 'feet', answer: answer(feet) },
        { part: 'waist', answer: answer(waist) },
        { part: 'face', answer: answer(face) },
      ],
    },
    ({ state }) => (state === 'hidden' ? 'hidden by Van' : state),
  );

test.each([
  [['covered', 'covered', 'too coarse'], 'Standing here: face, waist and feet seen'],
  [['hidden', 'hidden', 'covered'], 'Standing here: face seen, waist and feet hidden by Van'],
  [['hidden', 'covered', 'out of frame'], 'Standing here: waist seen, face out of frame, feet hidden by Van'],
  [['hidden', 'hidden', 'hidden'], 'Standing here: face, waist and feet hidden by Van'],
] satisfies [readonly [State, State, State], string][])('%j: %s', ([feet, waist, face], words) => {
  expect(said(feet, waist, face)).toBe(words);
});
