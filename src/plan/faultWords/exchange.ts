import { allowed, given, lastKey, subjectOf, where, type Words } from './say.ts';

/** Words for maps that cannot be read, and features of them that cannot be built. */
export const exchangeWords: Readonly<Record<string, Words>> = {
  'pack.broken': (fault) =>
    `${subjectOf(fault, 'This file')} is a ZIP that cannot be unpacked; it may stop half-way. Your open plan is untouched. Try another copy.`,
  'pack.tooLarge': (fault) =>
    `${subjectOf(fault, 'This file')} would unpack to more than can be held. Save the plan again with fewer or smaller pictures.`,
  'pack.noPlan': (fault) =>
    `${subjectOf(fault, 'This file')} is a ZIP without a plan (plan.json) in it. Choose a file that was saved from here, or one that is not zipped.`,
  'ies.noTilt': (fault) =>
    `${subjectOf(fault, 'This file')} has no line that begins with TILT=, so that it holds no light to read. Choose the photometric file (.ies) of the lamp.`,
  'ies.tiltFile': (fault) =>
    `${subjectOf(fault, 'This file')} leaves part of its light to another file${fault.given === undefined ? '' : ` (${fault.given})`}, which is not read. Ask the maker for one with TILT=NONE.`,
  'ies.tiltLeft': (fault) =>
    `${subjectOf(fault, 'This file')} says how the light changes as the lamp is tilted. That was left out; the lamp counts as level.`,
  'ies.number': (fault) =>
    `${subjectOf(fault, 'This file')} has ${given(fault, 'something else')} where a number must stand. Correct it in a text editor, or ask for another copy.`,
  'ies.short': (fault) =>
    `${subjectOf(fault, 'This file')} stops after ${fault.given ?? 'too few'} numbers of ${allowed(fault, 'those it promises')}. Ask for another copy.`,
  'ies.more': (fault) =>
    `${subjectOf(fault, 'This file')} goes on for ${fault.given ?? 'some'} numbers past its light. They were left out.`,
  'ies.type': (fault) =>
    `${subjectOf(fault, 'This file')} measures its light in type ${fault.given ?? 'A or B'}, as floodlights in a test stand. Ask the maker for one of type C.`,
  'ies.rising': (fault) =>
    `The angles of ${subjectOf(fault, 'this file')} do not rise at ${given(fault, 'one of them')}${where(fault)}. Put them in order, each once.`,
  'ies.vertical': (fault) =>
    `The vertical angles of ${subjectOf(fault, 'this file')} run over ${fault.given ?? 'more than half a turn'}. Make them ${allowed(fault, '0° to 180°')}.`,
  'ies.horizontal': (fault) =>
    `The horizontal angles of ${subjectOf(fault, 'this file')} run over ${fault.given ?? 'something else'}, from which the rest of the circle is not known. Make them ${allowed(fault, 'go all round')}.`,
  'ies.candela': (fault) =>
    `The candela of ${subjectOf(fault, 'this file')} hold a value below 0 or beyond all lamps${fault.given === undefined ? '' : ` (${fault.given})`}. Correct it in a text editor, or ask for another copy.`,
  'elevation.head': (fault) =>
    `${subjectOf(fault)} is a grid of heights whose ${lastKey(fault)} is ${fault.given === undefined ? 'missing' : `no number that can be used`}. Export it again as an Esri ASCII grid.`,
  'elevation.degrees': (fault) =>
    `${subjectOf(fault)} has cells of ${given(fault)}, which looks like degrees. Export it in a projected coordinate system in metres, such as UTM.`,
  'elevation.cell': (fault) =>
    `${subjectOf(fault)} has cells of ${given(fault)} m. Export it with cells of ${allowed(fault)}.`,
  'elevation.cells': (fault) =>
    `${subjectOf(fault)} has ${given(fault)} cells; the most is ${allowed(fault)}. Cut out the site, or export it with larger cells.`,
  'elevation.number': (fault) =>
    `${subjectOf(fault)} has ${given(fault)} where a height should be${where(fault)}. Export it again as an Esri ASCII grid.`,
  'elevation.count': (fault) =>
    `${subjectOf(fault)} holds ${given(fault)} heights, but says that it has ${allowed(fault)}. It may be cut off: export it again.`,
  'elevation.wide': (fault) =>
    `${subjectOf(fault)} is ${given(fault)} m wide; the most is ${allowed(fault)} m. Cut out the site and export again.`,
  'elevation.relief': (fault) =>
    `${subjectOf(fault)} has ${given(fault)} m between its lowest and highest height; the most is ${allowed(fault)} m. Cut out the site, or say in the file what stands for no height.`,
  'elevation.empty': (fault) =>
    `${subjectOf(fault)} holds no height: every cell is marked as unknown. Export the part of the site that is surveyed.`,
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
