import { allowed, capital, given, lastKey, subjectOf, where, type Words } from './say.ts';

const outline =
  (what: string, mend: string): Words =>
  (fault) =>
    `The outline of ${subjectOf(fault, 'a structure')} ${what}${fault.given === undefined ? '' : ` (${fault.given})`}${where(fault)}. ${mend}`;

const opening =
  (what: string, mend: string): Words =>
  (fault) =>
    `${subjectOf(fault, 'An opening')} ${what}${fault.given === undefined ? '' : `: ${fault.given}`}${where(fault)}, and is left out. ${mend}${fault.allowed === undefined ? '' : ` Room: ${fault.allowed}.`}`;

const mount =
  (what: string, mend: string): Words =>
  (fault) =>
    `${subjectOf(fault, 'A camera')} ${what}${fault.given === undefined ? '' : ` (${fault.given})`}${where(fault)}. ${mend}${fault.allowed === undefined ? '' : ` What fits: ${fault.allowed}.`}`;

const barrier =
  (what: string, mend: string): Words =>
  (fault) =>
    `The line of ${subjectOf(fault, 'a barrier')} ${what}${fault.given === undefined ? '' : ` (${fault.given})`}${where(fault)}. ${mend}`;

/** Words for structures that cannot be built as drawn and mounts that do not fit. */
export const modelWords: Readonly<Record<string, Words>> = {
  'size.number': (fault) =>
    `A size of ${subjectOf(fault, 'a structure')} is ${fault.given ?? 'no number'}${where(fault)}. Write a plain number of metres.`,
  'size.small': (fault) =>
    `${capital(lastKey(fault))} of ${subjectOf(fault, 'a structure')} is ${given(fault)}${where(fault)}. Make it ${allowed(fault, 'larger than 0')}.`,
  'size.far': (fault) =>
    `${subjectOf(fault, 'A structure')} has a measure of ${given(fault)}${where(fault)}. Keep it ${allowed(fault, 'on the site')}.`,
  'footprint.corners': outline('has too few corners', 'An outline needs three.'),
  'footprint.repeated': outline('repeats a corner', 'The second one was left out.'),
  'footprint.crosses': outline('crosses itself', 'Move one of these corners so that no two edges cross.'),
  'footprint.touches': outline('touches itself', 'Move one of these corners away from the other edge.'),
  'footprint.area': outline('encloses no area', 'Move its corners apart.'),
  'footprint.hole-outside': outline(
    'has a hole that lies outside it',
    'Move the hole inside, or take it out.',
  ),
  'footprint.hole-in-hole': outline('has a hole within a hole', 'Take the inner one out.'),
  'roof.flat-instead': (fault) =>
    fault.given === undefined
      ? `This roof cannot be made on ${subjectOf(fault, 'this building')}${where(fault)}. The roof stays flat.`
      : `This roof cannot be made here because of ${fault.given} (${subjectOf(fault, 'a building')}). The roof stays flat.`,
  'roof.hip-instead': (fault) =>
    `No end of ${subjectOf(fault, 'this building')} will take a gable${where(fault)}, so its roof is hipped. A gable needs ${allowed(fault)}.`,
  'roof.pitch': (fault) =>
    `The roof of ${subjectOf(fault, 'a building')} has a pitch of ${given(fault)}°${where(fault)}. Make it ${allowed(fault)}.`,
  'roof.overhang': (fault) =>
    `The overhang of ${subjectOf(fault, 'a building')} is ${given(fault)}${where(fault)}. Make it ${allowed(fault)}.`,
  'roof.parapet': (fault) =>
    `The parapet of ${subjectOf(fault, 'a building')} is ${given(fault)}${where(fault)}. Make it ${allowed(fault)}.`,
  'roof.parapet-narrow': (fault) =>
    `${subjectOf(fault, 'A building')} is too narrow for a parapet${where(fault)}. The roof stays flat.`,
  'opening.face': opening('is in a face that is not there', 'Put it on another.'),
  'opening.size': opening('has no size', 'Give it a width and a height above 0.'),
  'opening.outside': opening('reaches past the end of its face', 'Narrow it, or move it.'),
  'opening.high': opening('reaches past the top of its wall', 'Lower it.'),
  'opening.overlaps': opening('overlaps another', 'Move one of the two.'),
  'opening.deep': opening('is deeper than the building behind it', 'Set it back less.'),
  'opening.corner': opening(
    'meets another around the corner',
    'Set it back less, or move it from the corner.',
  ),
  'opening.set-back': (fault) =>
    `${subjectOf(fault, 'An opening')} is set back farther than its wall is thick${where(fault)}. Set it back less.`,
  'building.block-instead': (fault) =>
    `${subjectOf(fault, 'A building')} cannot be hollow with walls that thick${where(fault)}. It stays one block; make the walls thinner.`,
  'barrier.corners': barrier('has too few corners', 'A barrier needs two, a closed one three.'),
  'barrier.repeated': barrier('repeats a corner', 'The second one was left out.'),
  'barrier.crosses': barrier('crosses itself', 'Move one of these corners so that no two edges cross.'),
  'barrier.touches': barrier('touches itself', 'Move one of these corners away from the other edge.'),
  'canopy.posts': (fault) =>
    `${subjectOf(fault, 'A canopy')} has ${given(fault)} posts${where(fault)}. Give it ${allowed(fault, 'at most one a corner')}.`,
  'tree.clear': (fault) =>
    `The crown of ${subjectOf(fault, 'a tree')} begins above its top${where(fault)}. Make the clear height ${allowed(fault, 'less than the height')}.`,
  'ground.spots-repeated': (fault) =>
    `Two spot heights are at one place${fault.given === undefined ? '' : ` (${fault.given})`}${where(fault)}. Their mean holds; take one of them out.`,
  'ground.spots-few': (fault) =>
    `The spot heights are at ${given(fault, 'too few')} different places${where(fault)}, and a slope needs three. The ground stays flat at their mean.`,
  'ground.spots-line': (fault) =>
    `All ${given(fault, '')} spot heights lie on one line${where(fault)}. The ground stays flat at their mean; add one beside the line.`.replace(
      'All  ',
      'All ',
    ),
  'ground.filled': (fault) =>
    `${given(fault, 'Some')} cells of the ground have no height${where(fault)}. They get that of the nearest cell that has one.`,
  'ground.unknown': (fault) =>
    `No cell of the ground has a height${where(fault)}. The ground stays flat at 0; read the heights in again.`,
  'solid.open': (fault) =>
    `${subjectOf(fault, 'A structure')} cannot be built as drawn${where(fault)}, and is left out. Simplify its outline or its openings.`,
  'mount.host': mount('lost its wall', 'It does not see until it is fixed to another.'),
  'mount.away': mount(
    'is fixed to what is away in this situation',
    'It does not see there; fix it to something that stays.',
  ),
  'mount.face': mount('is fixed to a face that is not there', 'Fix it to another wall.'),
  'mount.distance': mount('lies past the end of its wall', 'Slide it back.'),
  'mount.height': mount('lies above or below its wall', 'Change the mounting height.'),
  'mount.opening': mount('is fixed to an opening', 'Slide it beside the opening.'),
  'mount.soffit': mount(
    'hangs under eaves that are not there',
    'Give the roof an overhang, or fix the camera to the wall.',
  ),
  'mount.inset': mount('hangs outside the eaves', 'Bring it nearer to the wall.'),
  'mount.inner-corner': mount('is at a corner that turns inwards', 'A corner mount needs an outer corner.'),
};
