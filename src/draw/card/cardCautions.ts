import type { CautionReport } from '../../assess/cautions/caution.ts';
import type { LengthUnit } from '../../base/length.ts';
import { cautionWords, shownFirst } from '../cautions/cautionWords.ts';
import { statusWords } from '../cautions/status.ts';
import type { CardCaution } from './cautionBlock.ts';

/** What of a camera's cautions stands on its card: every stop, and the worst of the others up to five in all. */
export const cardCautions = ({ cautions }: CautionReport, units: LengthUnit): readonly CardCaution[] =>
  shownFirst(cautions).first.map((one) => {
    const { said, advice } = cautionWords(one, units);
    return {
      id: one.id,
      isStop: one.severity === 'stop',
      ticked: one.ticked,
      said,
      advice,
      status: statusWords(one.row),
    };
  });
