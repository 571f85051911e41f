import type { Area } from '../coverage/area.ts';
import type { Plan } from '../plan/plan.ts';
import { askedText } from './targetText.ts';
import type { Assessment } from '../assess/assessment.ts';

/**
 * What all cameras that count make of the site, to be spoken when conditions or what is asked for change: "Whole site, at
 * ground, Night: identify 57.2 square metres. Seen by no camera 131.3."
 */
export function siteSentence(assessment: Assessment, plan: Plan): string {
  const { site, edition } = assessment;
  const seen = bandWords(edition, site.byBand);
  const what = seen === '' ? 'nothing is covered' : `${seen} square metres`;
  return `Whole site, at ${askedText(assessment, plan)}: ${what}. Seen by no camera ${site.unseen.value.toFixed(1)}.`;
}

const bandWords = ({ bands }: Assessment['edition'], areas: readonly Area[]): string =>
  bands
    .map(({ name }, index) => ({ name, value: areas[index]?.value ?? 0 }))
    .toReversed()
    .filter(({ value }) => value >= 0.05)
    .map(({ name, value }) => `${name.toLowerCase()} ${value.toFixed(1)}`)
    .join(', ');

/** "C1: identify 20.4, recognise 53.9 square metres. Nothing seen nearer than 1.95 metres." */
export function seenSentence({ cameras, edition }: Assessment, id: string): string {
  const coverage = cameras.find(({ camera }) => camera.id === id);
  if (!coverage) return '';
  const { areas, reach, camera } = coverage;
  const seen = bandWords(edition, areas.byBand);
  const dark = areas.byState['too dark'].value;
  const unlit = dark >= 0.05 ? ` Too dark ${dark.toFixed(1)} square metres.` : '';
  if (seen === '') return `${camera.name} covers nothing here.${unlit}`;
  const near = reach.nearBlindDistance;
  const blind = near === null ? '' : ` Nothing seen nearer than ${near.toFixed(2)} metres.`;
  return `${camera.name}: ${seen} square metres.${blind}${unlit}`;
}
