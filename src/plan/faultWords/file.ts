import { allowed, capital, given, lastKey, subjectOf, where, type Words } from './say.ts';

/** Words for what is wrong with a file as a file, and with single values in it. */
export const fileWords: Readonly<Record<string, Words>> = {
  'file.empty': () => 'This file is empty. Your open plan is untouched. Try another copy.',
  'file.truncated': (fault) =>
    `This file stops half-way${fault.given === undefined ? '' : `, at ${fault.given}`}. Your open plan is untouched. Try another copy.`,
  'file.notJson': (fault) =>
    `This file is not in order: ${fault.given ?? 'a character'} does not fit there. Correct it in a text editor, or try another copy.`,
  'file.unknown': (fault) =>
    `${subjectOf(fault, 'This file')} is neither a plan nor a map that can be read here. Open ${allowed(fault, 'a Soffit plan or GeoJSON building footprints')}.`,
  'file.tooBig': (fault) =>
    `${subjectOf(fault, 'This file')} is ${fault.given ?? 'more'} MB; at most ${allowed(fault)} MB can be opened. Cut out the site’s surroundings and export again.`,
  'number.notFinite': (fault) =>
    `${subjectOf(fault)} holds ${fault.given ?? 'a number'}${where(fault)}, which is no number to build with. Write a plain number there.`,
  'number.range': (fault) =>
    `${capital(lastKey(fault))} is ${given(fault)} in ${subjectOf(fault, 'the file')}${where(fault)}. Make it ${allowed(fault)}.`,
  'number.whole': (fault) =>
    `${capital(lastKey(fault))} is ${given(fault)} in ${subjectOf(fault, 'the file')}${where(fault)}. Write a whole number.`,
  'coordinate.far': (fault) =>
    `${subjectOf(fault)} has a coordinate of ${given(fault)}${where(fault)}, farther than 100 km from the origin. Write metres from the site’s own origin.`,
  'value.missing': (fault) =>
    `${capital(lastKey(fault))} is missing from ${subjectOf(fault, 'the file')}${where(fault)}. Add ${allowed(fault, 'it')}.`,
  'value.type': (fault) =>
    `${subjectOf(fault)} has ${given(fault)} where ${allowed(fault, 'something else')} must stand${where(fault)}. Write ${allowed(fault, 'that')} there.`,
  'value.choice': (fault) =>
    `${capital(lastKey(fault))} is ${given(fault)} in ${subjectOf(fault, 'the file')}${where(fault)}. Write ${allowed(fault)}.`,
  'value.extra': (fault) =>
    `“${fault.given ?? lastKey(fault)}” is not part of a plan${where(fault)} and was left out. Check its spelling if it was meant.`,
  'list.length': (fault) =>
    `${capital(lastKey(fault))} has the wrong number of entries in ${subjectOf(fault, 'the file')}${where(fault)}. Give ${allowed(fault)}.`,
  'name.empty': (fault) => `A name is empty${where(fault)}. Write at least one character.`,
  'name.long': (fault) =>
    `A name is too long${where(fault)}: ${given(fault)}. Keep it to ${allowed(fault, 'fewer characters')}.`,
  'name.unprintable': (fault) =>
    `A name holds a character that cannot be printed${where(fault)}. Type it again on one line, without control characters.`,
  'id.form': (fault) =>
    `${capital(given(fault, 'This'))} cannot be an id${where(fault)}. Use up to 64 letters without accents, digits, hyphens and underscores, beginning with a letter or digit.`,
};
