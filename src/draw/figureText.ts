import type { FigureAnswer } from '../assess/figureAt.ts';
import type { PointAnswer } from '../assess/assessment.ts';

/**
 * What is seen of a person standing at a spot: "Standing here: face and waist seen, feet hidden by Van".
 * @param why what keeps a part from being seen, in words: "hidden by Van"
 */
export function figureText({ parts }: FigureAnswer, why: (answer: PointAnswer) => string): string {
  const seen: string[] = [];
  const kept = new Map<string, string[]>();
  for (const { part, answer } of parts.toReversed()) {
    if (answer.state === 'covered' || answer.state === 'too coarse') seen.push(part);
    else kept.set(why(answer), [...(kept.get(why(answer)) ?? []), part]);
  }
  const groups = [
    ...(seen.length > 0 ? [`${listed(seen)} seen`] : []),
    ...[...kept].map(([reason, which]) => `${listed(which)} ${reason}`),
  ];
  return `Standing here: ${groups.join(', ')}`;
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1) ?? ''}`;
