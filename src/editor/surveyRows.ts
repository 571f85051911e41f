import { surveyList, type SurveyRow } from '../plan/survey/surveyList.ts';
import type { Plan } from '../plan/plan.ts';

/** What to measure on site, the most uncertain first. */
export const surveyRows = (plan: Plan): readonly SurveyRow[] => surveyList(plan);
