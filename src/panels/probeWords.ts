import type { Assessment, PointAnswer } from '../assess/assessment.ts';
import { LOWERED } from '../draw/loweredText.ts';
import { acrossAt } from '../draw/acrossAt.ts';
import type { Vec3 } from '../base/vector.ts';
import type { State } from '../coverage/state.ts';

/** Of those that do not cover a spot, the one that comes nearest to it first. */
const NEAREST: readonly State[] = ['too coarse', 'too dark', 'screened', 'hidden', 'inside'];

/** The camera that covers a spot best, if any does; the others, nearest to it first; and those that look elsewhere. */
export function sorted(answers: readonly PointAnswer[]) {
  const [first] = answers;
  const best = first && first.band > 0 ? first : null;
  const rank = ({ state }: PointAnswer): number => NEAREST.indexOf(state);
  const others = answers.filter((answer) => answer !== best && answer.state !== 'out of frame');
  return {
    best,
    others: others.toSorted((a, b) => b.band - a.band || rank(a) - rank(b)),
    unframed: answers.filter(({ state }) => state === 'out of frame').map(({ camera }) => camera),
  };
}

/** "recognise, 131 px/m, seen from 24° above"; on a wall or a slope also the pixels across it. */
export function stateText(assessment: Assessment, answer: PointAnswer, point: Vec3): string {
  const { density, depression } = answer;
  const across = acrossAt(assessment, answer.camera, point);
  const second = across === null ? '' : `, ${across.toFixed(0)} px/m across the face`;
  const pixels = density === null ? '' : `, ${density.toFixed(0)} px/m${second}`;
  const above = `, seen from ${Math.abs(depression).toFixed(0)}° ${depression < 0 ? 'below' : 'above'}`;
  const seen = answer.state === 'covered' || answer.state === 'too coarse';
  const lowered = LOWERED[answer.lost] ?? '';
  return `${stateWords(assessment, answer)}${seen ? pixels + above : ''}${lowered}`;
}

/** The state alone: "hidden by the van, 4.1 m before it"; of a face that counts for less, why. */
export const shortText = (assessment: Assessment, answer: PointAnswer): string =>
  `${stateWords(assessment, answer)}${LOWERED[answer.lost] ?? ''}`;

function stateWords({ edition, scene }: Assessment, { state, band, hider, before }: PointAnswer): string {
  const by = hider === null ? '' : (scene.solids[hider]?.name ?? 'something');
  const gap = before === null ? '' : `, ${before.toFixed(1)} m before it`;
  switch (state) {
    case 'covered':
      return `${(edition.bands[band - 1]?.name ?? 'covered').toLowerCase()}`;
    case 'too coarse':
      return 'too few pixels';
    case 'hidden':
      return `hidden by ${by}${gap}`;
    case 'screened':
      return `through leaves or mesh of ${by}${gap}`;
    case 'inside':
      return `inside ${by === '' ? 'a structure' : by}`;
    case 'out of frame':
    case 'too dark':
      return state;
  }
}
