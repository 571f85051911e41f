import type { Assessment } from '../../assess/assessment.ts';
import type { CameraCoverage } from '../../coverage/coverage.ts';
import { askedOfCells } from '../wash/cellLabels.ts';

/** An assessment in which one camera is all that there is, where the wash asks cells of what all cover together. */
export function aloneOf(assessment: Assessment, { cells }: CameraCoverage): Assessment {
  const asked = askedOfCells(assessment);
  if (asked === 'nothing' || asked === 'screens' || assessment.cameras.length < 2) return assessment;
  return { ...assessment, site: { ...assessment.site, band: cells.band } };
}
