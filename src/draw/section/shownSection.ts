import type { Assessment } from '../../assess/assessment.ts';
import { createSectioner } from '../../assess/section/sectioner.ts';
import type { Section } from '../../assess/section/section.ts';
import type { Plan } from '../../plan/plan.ts';
import type { SheetWords } from './sectionSvg.ts';
import type { Named } from './sectionWords.ts';

/** The section of a camera of a plan as it is assessed; null where the scene has no such camera. */
export type ShowSection = (
  assessment: Assessment,
  plan: Plan,
  camera: string,
  person: number,
  height?: number,
) => Section | null;

/** Remembers, by its identity, what it laid out of the scene that is shown. */
export function createShowSection(): ShowSection {
  const section = createSectioner();
  return (assessment, plan, camera, person, height) => {
    const mount = plan.cameras[camera]?.mount;
    const host = mount !== undefined && 'host' in mount ? mount.host : null;
    return section(assessment, { camera, host, person, settings: plan.settings, height });
  };
}

/** What a section's words are taken from. */
export const namedIn = ({ scene, edition }: Assessment, plan: Plan): Named => ({
  solids: scene.solids,
  edition,
  units: plan.settings.units,
});

/** "Section through C1, along 225°, one scale both ways". */
export const sectionTitle = ({ camera }: Section): string =>
  `Section through ${camera.name}, along ${camera.pan.toFixed(0)}°, one scale both ways`;

/** What stands on the sheet of a section that is saved. */
export function sheetWords(assessment: Assessment, plan: Plan, section: Section): SheetWords {
  const { question, edition, scene } = assessment;
  const { kind, height } = question.target;
  const what =
    kind === 'ground' ? 'ground' : kind === 'surface' ? 'a surface' : `${kind}, ${height.toFixed(2)} m`;
  const conditions = scene.situation === null ? undefined : plan.situations[scene.situation]?.name;
  return {
    title: sectionTitle(section),
    plan: plan.name,
    edition: edition.name,
    asked: conditions === undefined ? what : `${what}, ${conditions}`,
  };
}
