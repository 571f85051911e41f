import type { AtDistance } from '../../assess/trial/alongAxis.ts';
import type { TrialChange } from '../../assess/trial/change.ts';
import { fixed, lengthText, type LengthUnit } from '../../base/length.ts';
import type { Area } from '../../coverage/area.ts';
import type { Edition } from '../../coverage/band.ts';
import type { TrialSetting } from '../../draw/trial/shownTrial.ts';
import { anglesOf } from '../../optics/setting.ts';
import { areaFigures } from '../areaText.ts';
import { stateWords } from './stateWords.ts';

/** A row of the table: one figure a setting, in the order of the settings. */
export interface TrialRow {
  readonly label: string;
  readonly cells: readonly string[];
  /** Whether the settings differ in it as far as it is shown. */
  readonly differs: boolean;
}

/** Rows under a heading of their own. */
export interface TrialRows {
  readonly title: string;
  readonly rows: readonly TrialRow[];
}

const NONE = '–';

const row = (label: string, cells: readonly string[]): TrialRow => ({
  label,
  cells,
  differs: cells.some((cell) => cell !== cells[0]),
});

/** "2.40"; in feet with its signs; a dash where there is none. */
const figure = (metres: number | null, units: LengthUnit): string =>
  metres === null ? NONE : metres === Infinity ? 'no end' : lengthText(metres, units).text;

const unitOf = (units: LengthUnit): string => lengthText(1, units).unit;

const named = (label: string, unit: string): string => (unit === '' ? label : `${label}, ${unit}`);

/** "≈ 23.4" or "23.4 ± 0.2". */
const areaCell = (area: Area): string => {
  const { value, bound } = areaFigures(area);
  return bound === '' ? value : `${value} ${bound}`;
};

/** How the settings are set: lens, angle, height, aim, pixels. */
export function settingRows(settings: readonly TrialSetting[], units: LengthUnit): TrialRows {
  const of = (tell: (setting: TrialSetting) => string): readonly string[] => settings.map(tell);
  const angle = (one: number | null): string => (one === null ? NONE : fixed(one, 1));
  return {
    title: 'How it is set',
    rows: [
      row(
        'Focal length, mm',
        of(({ coverage: { camera } }) => fixed(camera.focalLength, 1)),
      ),
      row(
        'Angle of view, °',
        of(({ coverage: { camera } }) => angle(anglesOf(camera).horizontal)),
      ),
      row(
        named('Mounting height', unitOf(units)),
        of(({ section }) => figure(section.mountingHeight, units)),
      ),
      row(
        'Tilt down, °',
        of(({ section }) => fixed(section.camera.tilt, 1)),
      ),
      row(
        'Pan, °',
        of(({ section }) => fixed(section.camera.pan, 1)),
      ),
    ],
  };
}

/** Ground at each band, finest first; what is nearest, and how far each band reaches. */
export function coverRows(
  settings: readonly TrialSetting[],
  { bands }: Edition,
  units: LengthUnit,
): readonly TrialRows[] {
  const finestFirst = bands.map((band, index) => ({ band, index })).toReversed();
  const areas = finestFirst.map(({ band, index }) =>
    row(
      `${band.name}, m²`,
      settings.map(({ coverage }) => {
        const area = coverage.areas.byBand[index];
        return area === undefined ? NONE : areaCell(area);
      }),
    ),
  );
  const reaches = finestFirst.map(({ band, index }) =>
    row(
      named(`${band.name} to`, unitOf(units)),
      settings.map(({ coverage }) => figure(coverage.reach.byBand[index] ?? null, units)),
    ),
  );
  const near = row(
    named('Nothing seen nearer than', unitOf(units)),
    settings.map(({ coverage }) => figure(coverage.reach.nearBlindDistance, units)),
  );
  return [
    { title: 'Ground with enough pixels to', rows: areas },
    { title: 'Straight ahead', rows: [near, ...reaches] },
  ];
}

/** What must be seen at a point: met, or what keeps it from being; nothing where the plan has no such point. */
export function pointRows(settings: readonly TrialSetting[], edition: Edition): readonly TrialRows[] {
  const rows = (settings[0]?.points ?? []).map(({ id, name, asked }) =>
    row(
      `${name}, to ${(edition.bands[asked - 1]?.name ?? '').toLowerCase()}`,
      settings.map(({ points }) => {
        const point = points.find((one) => one.id === id);
        if (point === undefined) return NONE;
        if (point.band >= asked) return 'met';
        return point.state === 'covered' ? 'too few pixels' : stateWords(point, edition);
      }),
    ),
  );
  return rows.length === 0 ? [] : [{ title: 'What must be seen, at a point', rows }];
}

/** What the settings make of one distance. */
export const distanceRows = (places: readonly AtDistance[], units: LengthUnit): readonly TrialRow[] => [
  row(
    named('Width of view', unitOf(units)),
    places.map(({ width }) => figure(width, units)),
  ),
  row(
    'Pixels a metre',
    places.map(({ density }) => (density === null ? NONE : density.toFixed(0))),
  ),
  row(
    'Pixels across a face',
    places.map(({ face }) => (face.across === null || !isSeen(face.state) ? NONE : face.across.toFixed(0))),
  ),
  row(
    'Face from above, °',
    places.map(({ face }) => face.above.toFixed(0)),
  ),
];

const isSeen = (state: AtDistance['state']): boolean => state === 'covered' || state === 'too coarse';

/** A figure of the exchange, with its sign in the picture. */
export interface ChangeRow {
  readonly sign: '+' | '−';
  readonly label: string;
  readonly area: Area;
}

/** What a setting gains and loses beside the standing one. */
export function changeRows(
  { byBand, finer, coarser }: TrialChange,
  edition: Edition,
  band: number,
): readonly ChangeRow[] {
  const name = edition.bands[band]?.name.toLowerCase() ?? '';
  const at = byBand[band];
  return [
    ...(at === undefined
      ? []
      : ([
          { sign: '+', label: `Gained: enough to ${name}`, area: at.gained },
          { sign: '−', label: `Lost: no longer enough to ${name}`, area: at.lost },
        ] as const)),
    { sign: '+', label: 'Any finer band', area: finer },
    { sign: '−', label: 'Any coarser band, or lost', area: coarser },
  ];
}
