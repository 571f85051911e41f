import type { Assessment } from '../assess/assessment.ts';
import { fixed } from '../base/length.ts';
import type { Plan } from '../plan/plan.ts';
import type { Target } from '../coverage/target.ts';

/** "ground", "face, 1.60 m": what coverage is asked for, in a sentence. */
export function targetText(target: Target): string {
  const { kind, height } = target;
  switch (kind) {
    case 'ground':
      return 'ground';
    case 'plate':
      return `plate, ${height.toFixed(2)} m`;
    case 'face':
      return `face, ${height.toFixed(2)} m${looksText(target)}`;
    case 'surface':
      return 'a surface';
    case 'height':
      return `${height.toFixed(2)} m`;
  }
}

/** What an assessment is of, in a sentence: "ground", "face, 1.60 m", "House, south wall"; then the conditions, if not as drawn. */
export function askedText({ surface, question, scene }: Asked, { structures, situations }: Plan): string {
  const owner = surface && structures[surface.owner]?.name;
  const what = surface
    ? [owner, surface.name.toLowerCase()].filter(Boolean).join(', ')
    : targetText(question.target);
  const conditions = scene.situation === null ? undefined : situations[scene.situation]?.name;
  return conditions === undefined ? what : `${what}, ${conditions}`;
}

type Asked = Pick<Assessment, 'surface' | 'question'> & {
  readonly scene: Pick<Assessment['scene'], 'situation'>;
};

/** ", looking to 180°", ", looking to 3.2 east, 4.0 north"; nothing where faces may look anywhere. */
export function looksText(target: Target): string {
  const looks = target.kind === 'face' ? target.looks : undefined;
  if (looks === undefined) return '';
  return looks.kind === 'bearing'
    ? `, looking to ${looks.bearing.toFixed(0)}°`
    : `, looking to ${fixed(looks.at[0], 1)} east, ${fixed(looks.at[1], 1)} north`;
}
