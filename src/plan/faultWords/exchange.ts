import { allowed, given, subjectOf, where, type Words } from './say.ts';

/** Words for maps that cannot be read, and features of them that cannot be built. */
export const exchangeWords: Readonly<Record<string, Words>> = {
  'geojson.empty': () =>
    'This map is empty: its collection has no features. Export it again with the buildings of the site in view.',
  'geojson.pointsOnly': (fault) =>
    `This map holds only points${fault.given === undefined ? '' : ` (${fault.given})`}, which block no view. Export the outlines of buildings (polygons) as GeoJSON.`,
  'geojson.noBuildings': (fault) =>
    `This map holds ${fault.given ?? 'some'} lines and areas, but no building, wall, fence or hedge. Export the features tagged as buildings.`,
  'geojson.unreadable': (fault) =>
    `None of the ${fault.given ?? ''} features of this map has a geometry that can be read. Export it again as GeoJSON (RFC 7946).`.replace(
      'the  ',
      'the ',
    ),
  'geojson.crs': (fault) =>
    `This map is in the coordinate system ${given(fault, 'of its own')}. Export it in longitude and latitude (WGS 84).`,
  'geojson.projected': (fault) =>
    `The coordinates of this map are no longitude and latitude${fault.given === undefined ? '' : ` (the first is ${fault.given})`}. Export it in WGS 84 degrees.`,
  'geojson.spread': (fault) =>
    `The buildings of this map lie ${fault.given ?? 'too far'} apart; one site is at most ${allowed(fault, '50 km')}. Cut out the site and export again.`,
  'geojson.heights': (fault) =>
    `${subjectOf(fault, 'A building')} would begin above its own top${fault.given === undefined ? '' : ` (${fault.given})`}${where(fault)}, and is left out. Correct its heights in the map.`,
  'geojson.tall': (fault) =>
    `${subjectOf(fault, 'A building')} would be ${given(fault, 'very')} m high${where(fault)}, and is left out; the most is ${allowed(fault, '1000')} m. Correct its height in the map.`,
};
