import type { Assessment, PointAnswer } from '../assess/assessment.ts';

/** "recognise, 131 px/m, seen from 24° above" */
export function stateText(assessment: Assessment, answer: PointAnswer): string {
  const { density, depression } = answer;
  const pixels = density === null ? '' : `, ${density.toFixed(0)} px/m`;
  const above = `, seen from ${Math.abs(depression).toFixed(0)}° ${depression < 0 ? 'below' : 'above'}`;
  const seen = answer.state === 'covered' || answer.state === 'too coarse';
  return `${shortText(assessment, answer)}${seen ? pixels + above : ''}`;
}

/** The state alone: "hidden by the van, 4.1 m before it". */
export function shortText(
  { edition, scene }: Assessment,
  { state, band, hider, before }: PointAnswer,
): string {
  const by = hider === null ? '' : (scene.solids[hider]?.name ?? 'something');
  const gap = before === null ? '' : `, ${before.toFixed(1)} m before it`;
  switch (state) {
    case 'covered':
      return (edition.bands[band - 1]?.name ?? 'covered').toLowerCase();
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
