import type { Assessment } from '../assess/assessment.ts';

/** "C1: identify 20.4, recognise 53.9 square metres. Nothing seen nearer than 1.95 metres." */
export function seenSentence({ cameras, edition }: Assessment, id: string): string {
  const coverage = cameras.find(({ camera }) => camera.id === id);
  if (!coverage) return '';
  const { areas, reach, camera } = coverage;
  const seen = edition.bands
    .map(({ name }, index) => ({ name, value: areas.byBand[index]?.value ?? 0 }))
    .toReversed()
    .filter(({ value }) => value >= 0.05)
    .map(({ name, value }) => `${name.toLowerCase()} ${value.toFixed(1)}`);
  if (seen.length === 0) return `${camera.name} covers nothing here.`;
  const near = reach.nearBlindDistance;
  const blind = near === null ? '' : ` Nothing seen nearer than ${near.toFixed(2)} metres.`;
  return `${camera.name}: ${seen.join(', ')} square metres.${blind}`;
}
