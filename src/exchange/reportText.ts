import { LEVEL_HEIGHT } from './geojson/heights.ts';
import { DEFAULT_PITCH } from './geojson/roofs.ts';
import type { ImportReport, ReportLine } from './report.ts';

/** One line of a report, worded. */
export interface ReportSentence {
  readonly part: 'taken' | 'left' | 'assumed';
  readonly text: string;
}

/** Words for one thing and for several; `#` is their number. */
type Count = readonly [one: string, several: string];

export const reportWords: Readonly<Record<string, Count>> = {
  'taken.building': ['1 building', '# buildings'],
  'taken.part': ['1 part of a building', '# parts of buildings'],
  'taken.canopy': ['1 roof that stands open below', '# roofs that stand open below'],
  'taken.wall': ['1 wall', '# walls'],
  'taken.fence': ['1 fence', '# fences'],
  'taken.hedge': ['1 hedge', '# hedges'],
  'taken.tree': ['1 tree', '# trees'],
  'taken.height': ['1 height of the ground', '# heights of the ground'],
  'left.height': [
    '1 cell without a height, which gets that of the nearest that has one',
    '# cells without a height, which get that of the nearest that has one',
  ],
  'left.unreadable': ['1 feature that is not valid GeoJSON', '# features that are not valid GeoJSON'],
  'left.noGeometry': ['1 feature that draws nothing', '# features that draw nothing'],
  'left.notOnEarth': [
    '1 feature with coordinates beyond ±180° and ±90°',
    '# features with coordinates beyond ±180° and ±90°',
  ],
  'left.underground': ['1 area underground', '# areas underground'],
  'left.polygon': ['1 area that is no building', '# areas that are no buildings'],
  'left.line': ['1 line that is no wall, fence or hedge', '# lines that are no walls, fences or hedges'],
  'left.treeRow': ['1 row of trees', '# rows of trees'],
  'left.point': ['1 point', '# points'],
  'left.gate': ['1 gate that is only a point', '# gates that are only points'],
  'left.lowBarrier': [
    '1 barrier that blocks no view (kerb, bollard and the like)',
    '# barriers that block no view (kerbs, bollards and the like)',
  ],
  'left.forParts': ['1 outline whose parts are drawn instead', '# outlines whose parts are drawn instead'],
  'left.partlyForParts': [
    '1 outline where parts are drawn instead; the rest of it stands',
    '# outlines where parts are drawn instead; the rest of them stands',
  ],
  'left.outline': ['1 building whose outline cannot be built', '# buildings whose outlines cannot be built'],
  'left.barrier': ['1 barrier whose line cannot be built', '# barriers whose lines cannot be built'],
  'left.heights': [
    '1 building whose heights contradict one another',
    '# buildings whose heights contradict one another',
  ],
  'left.far': [
    '1 thing too far away or too large for a site',
    '# things too far away or too large for a site',
  ],
  'assumed.plain': [
    '1 area without tags is taken for a building',
    '# areas without tags are taken for buildings',
  ],
  'assumed.height': [
    `1 building says nothing of its height: two levels of ${LEVEL_HEIGHT.toFixed(1)} m, one for garages and sheds`,
    `# buildings say nothing of their height: two levels of ${LEVEL_HEIGHT.toFixed(1)} m, one for garages and sheds`,
  ],
  'assumed.levels': [
    `1 building gives levels only: ${LEVEL_HEIGHT.toFixed(1)} m each`,
    `# buildings give levels only: ${LEVEL_HEIGHT.toFixed(1)} m each`,
  ],
  'assumed.flat-shape': [
    '1 roof of a shape that is not made here is flat at its full height',
    '# roofs of shapes that are not made here are flat at their full height',
  ],
  'assumed.flat-outline': [
    '1 pitched roof on an outline that takes none is flat at its full height',
    '# pitched roofs on outlines that take none are flat at their full height',
  ],
  'assumed.flat-steep': [
    '1 roof that would be too steep or leave no wall is flat at its full height',
    '# roofs that would be too steep or leave no wall are flat at their full height',
  ],
  'assumed.pitch': [
    `1 roof says its shape only: pitched ${DEFAULT_PITCH}°`,
    `# roofs say their shape only: pitched ${DEFAULT_PITCH}°`,
  ],
  'assumed.barrierHeight': [
    '1 wall, fence or hedge has no height: 1.8 m for a wall, else 1.5 m',
    '# walls, fences and hedges have no height: 1.8 m for walls, else 1.5 m',
  ],
  'assumed.fence': [
    '1 fence says not of what it is: it hides like boards',
    '# fences say not of what they are: they hide like boards',
  ],
  'assumed.metres': [
    'The file names no unit: cells and heights count as metres',
    'The files name no unit: cells and heights count as metres',
  ],
  'assumed.middle': [
    'The middle of the grid is the origin of the site',
    'The middle of each of # grids is the origin of the site',
  ],
  'assumed.datum': ['Heights count from z = 0 at', 'Heights of # grids count from z = 0 at'],
  'assumed.tree': [
    '1 tree lacks height or crown: 8 m, 5 m across',
    '# trees lack height or crown: 8 m, 5 m across',
  ],
};

/** A report in plain sentences, in the order taken, left, assumed. Names are plain text. */
export function reportText(report: ImportReport): readonly ReportSentence[] {
  const worded = (part: ReportSentence['part'], named: boolean) =>
    report[part].map((line): ReportSentence => ({ part, text: lineText(line, named) }));
  return [...worded('taken', false), ...worded('left', true), ...worded('assumed', true)];
}

function lineText({ code, count, names }: ReportLine, named: boolean): string {
  const words = Object.hasOwn(reportWords, code) ? reportWords[code] : undefined;
  const text = (words?.[count === 1 ? 0 : 1] ?? `# × ${code}`).replace('#', String(count));
  if (!named || names.length === 0) return text;
  const more = count > names.length ? ' …' : '';
  return `${text}: ${names.map((name) => `“${name}”`).join(', ')}${more}`;
}
