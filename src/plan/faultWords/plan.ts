import { allowed, capital, given, subjectOf, where, type Words } from './say.ts';

/** Words for what a plan file says of itself that does not hold together. */
export const planWords: Readonly<Record<string, Words>> = {
  'plan.noVersion': (fault) =>
    `This file does not say which version of the plan format it is. Add "version": ${allowed(fault)} if it is a plan.`,
  'plan.version': (fault) =>
    `The version of this plan is ${given(fault)}, which never was one. Write a whole number up to ${allowed(fault)}.`,
  'plan.newer': (fault) =>
    `This plan comes from a newer Soffit: its version is ${given(fault)}, and this one reads up to ${allowed(fault)}. Your open plan is untouched. Update, or ask for a copy in the older version.`,
  'id.key': (fault) =>
    `${subjectOf(fault, 'A record')} is filed under “${allowed(fault)}” but calls itself ${given(fault)}${where(fault)}. Make both the same.`,
  'id.shared': (fault) =>
    `The id ${given(fault)} of ${subjectOf(fault, 'a record')} is also that of ${allowed(fault)}${where(fault)}. Give one of them another.`,
  'order.twice': (fault) =>
    `${capital(given(fault, 'An id'))} stands twice in an order${where(fault)}. Take one of the two out.`,
  'order.noRecord': (fault) =>
    `An order names ${given(fault)}, but there is no such record${where(fault)}. Add the record, or take the name out.`,
  'order.unlisted': (fault) =>
    `${subjectOf(fault, 'A record')} is missing from ${allowed(fault, 'its order')}. Add ${given(fault)} there.`,
  'ring.short': (fault) =>
    `An outline of ${subjectOf(fault, 'the plan')} has fewer than three corners${where(fault)}. Give it at least three.`,
  'line.short': (fault) =>
    `A line of ${subjectOf(fault, 'the plan')} has too few corners${where(fault)}. Give it ${allowed(fault, '2 or more')}.`,
  'spots.few': (fault) =>
    `Ground that goes by spot heights has none${where(fault)}. Give it ${allowed(fault, '1 or more')}, or make it flat.`,
  'ground.cells': (fault) =>
    `The ground has ${given(fault, 'too many')} cells${where(fault)}; the most is ${allowed(fault, '1000000')}. Make its cells larger.`,
  'ground.heights': (fault) =>
    `The ground has ${given(fault, 'the wrong number of')} heights${where(fault)}. Give it columns × rows: ${allowed(fault, 'one a cell')}.`,
  'photometry.rising': (fault) =>
    `The angles of the light of ${subjectOf(fault, 'a lamp')} do not rise at ${given(fault, 'one of them')}${where(fault)}. Put them in order, each once.`,
  'photometry.count': (fault) =>
    `The light of ${subjectOf(fault, 'a lamp')} has ${given(fault, 'the wrong number of')} candela${where(fault)}. Give it ${allowed(fault, 'one for each pair of angles')}.`,
  'looks.along': (fault) =>
    `${subjectOf(fault, 'A requirement')} looks along its line, but it is ${fault.given === undefined ? 'none' : `of the kind ${given(fault)}`}${where(fault)}. Give it a bearing or a place to look to.`,
  'structure.vast': (fault) =>
    `${subjectOf(fault, 'A structure')} is ${given(fault)} m across${where(fault)}; the most is ${allowed(fault)} m. If it was drawn in millimetres, divide by 1000.`,
  'modes.none': (fault) => `${subjectOf(fault, 'A camera')} has no picture mode${where(fault)}. Give it one.`,
  'mode.twice': (fault) =>
    `${subjectOf(fault, 'A camera')} has two picture modes with the id ${given(fault)}${where(fault)}. Rename one.`,
  'mode.missing': (fault) =>
    `${subjectOf(fault, 'A camera')} records in the mode ${given(fault)}, which it does not have${where(fault)}. Choose ${allowed(fault)}.`,
  'mode.crop': (fault) =>
    `A picture mode of ${subjectOf(fault, 'a camera')} reaches past the edge of the sensor${where(fault)}. Its corner and size are shares that may not add up to more than 1.`,
  'lens.range': (fault) =>
    `${subjectOf(fault, 'A camera')} is set to ${given(fault)} mm, outside its lens’s range${where(fault)}. Set ${allowed(fault)}.`,
  'device.twice': (fault) =>
    `Two devices of the file have the id ${given(fault)}${where(fault)}. Give ${subjectOf(fault, 'one of them')} another.`,
  'sheet.reversed': (fault) =>
    `The range of the lens runs backwards in ${subjectOf(fault, 'this data sheet')} (${fault.given ?? 'the longest comes first'}). It would be consistent as ${allowed(fault)}.`,
  'sheet.angles': (fault) =>
    `A longer lens sees less, but ${subjectOf(fault, 'this data sheet')} says ${fault.given ?? 'otherwise'}. It would be consistent as ${allowed(fault)}.`,
  'sheet.angle': (fault) =>
    `${fault.given ?? 'This angle'} fits no lens on this sensor (${subjectOf(fault, 'data sheet')}). ${allowed(fault, 'Another focal length')} would fit that angle. Check focal length, angle and sensor.`,
  'sheet.vertical': (fault) =>
    `The sheet of ${subjectOf(fault, 'this camera')} says ${fault.given ?? 'an angle'} up and down, but from its other numbers follows ${allowed(fault)}. The angle across is used.`,
  'sheet.shape': (fault) =>
    `${subjectOf(fault, 'A picture')} has ${fault.given ?? 'pixels of its own'}: another shape than its part of the sensor, so that things would look stretched. It would be consistent on ${allowed(fault)}.`,
  'sheet.middle': (fault) =>
    `${subjectOf(fault, 'A picture')} is cut ${fault.given ?? 'a way'} off the middle of the sensor. It is worked out as if cut from ${allowed(fault, 'the middle')}.`,
  'sheet.exposure': (fault) =>
    `${fault.given ?? 'This exposure'} is longer than one picture lasts in ${subjectOf(fault, 'this camera')}. It would be consistent with ${allowed(fault)}.`,
  'lens.inconsistent': (fault) =>
    `The data sheet of ${subjectOf(fault, 'a camera')} contradicts itself: ${fault.given ?? 'focal length and angle'} fits no lens on this sensor. Check sensor, focal length and angle; ${allowed(fault, 'another focal length')} would fit.`,
  'situation.noStructure': (fault) =>
    `The situation ${subjectOf(fault, 'of this plan')} takes away ${given(fault)}, which is no structure${where(fault)}. Take it out.`,
  'situation.noOpening': (fault) =>
    `The situation ${subjectOf(fault, 'of this plan')} sets ${given(fault)}, which is no opening${where(fault)}. Take it out.`,
  'group.empty': (fault) =>
    `${subjectOf(fault, 'A group')} has nothing in it${where(fault)}. Put something in, or take it out.`,
  'group.noMember': (fault) =>
    `The group ${subjectOf(fault, 'of this plan')} has ${given(fault)} in it, which is no structure, camera or lamp${where(fault)}. Take it out.`,
  'group.shared': (fault) =>
    `The group ${subjectOf(fault, 'of this plan')} has ${given(fault)} in it, which is in the group ${allowed(fault)} already${where(fault)}. Take it out of one.`,
  'picture.sha': (fault) =>
    `The file of the picture ${subjectOf(fault, 'of this plan')} is named by ${given(fault)}${where(fault)}, which is no SHA-256. Put the picture in again.`,
  'picture.wall': (fault) =>
    `The wall of the picture ${subjectOf(fault, 'of this plan')} is not there${where(fault)}. Put it on another, or delete it.`,
  'service.face': (fault) =>
    `${subjectOf(fault, 'A point on a wall')} is on wall ${given(fault)}, which is not there${where(fault)}. Put it on ${allowed(fault, 'another')}.`,
  'service.outside': (fault) =>
    `${subjectOf(fault, 'A point on a wall')} lies past the end of its wall or above it: ${given(fault)} m${where(fault)}. What fits: ${allowed(fault, 'less')}.`,
  'edition.unknown': (fault) =>
    `The plan is judged by ${given(fault)}, an edition that is not known here${where(fault)}. Choose ${allowed(fault)}.`,
};
