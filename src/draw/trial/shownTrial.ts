import type { Assessment } from '../../assess/assessment.ts';
import { createSectioner, type Sectioner } from '../../assess/section/sectioner.ts';
import type { Section } from '../../assess/section/section.ts';
import { createJudgePoints, type AskedPoint } from '../../assess/trial/askedPoints.ts';
import { atDistance, type AtDistance } from '../../assess/trial/alongAxis.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import type { Plan } from '../../plan/plan.ts';

/** One of the settings compared, as it is assessed. */
export interface TrialSetting {
  readonly id: string;
  /** A stands; B, C, D are tried. */
  readonly letter: string;
  readonly section: Section;
  readonly coverage: CameraCoverage;
  /** The points among what must be seen. */
  readonly points: readonly AskedPoint[];
}

/** The settings of some cameras of a plan as it is assessed; those that the assessment lacks are left out. */
export type ShowTrial = (
  assessment: Assessment,
  plan: Plan,
  settings: readonly { readonly id: string; readonly letter: string }[],
) => readonly TrialSetting[];

/** The section needs somebody to stand somewhere; nobody asks after them here. */
const PERSON = 4;

/** Remembers, by its identity, what it laid out of the scene that is shown. */
export function createShowTrial(): ShowTrial {
  const sectioner: Sectioner = createSectioner();
  const judge = createJudgePoints();
  return (assessment, plan, settings) =>
    settings.flatMap(({ id, letter }): readonly TrialSetting[] => {
      const coverage = assessment.cameras.find(({ camera }) => camera.id === id);
      const mount = plan.cameras[id]?.mount;
      const host = mount !== undefined && 'host' in mount ? mount.host : null;
      const section = sectioner(assessment, {
        camera: id,
        host,
        person: PERSON,
        settings: plan.settings,
      });
      if (coverage === undefined || section === null) return [];
      return [{ id, letter, section, coverage, points: judge(assessment, plan, id) }];
    });
}

/** What a setting makes of a distance, m ahead of the point below its lens. */
export const settingAt = ({ section }: TrialSetting, distance: number, { settings }: Plan): AtDistance =>
  atDistance(section, distance, settings.faceHeight);
