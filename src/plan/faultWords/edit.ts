import { allowed, given, subjectOf, type Words } from './say.ts';

/** Words for changes that are refused: why, and what to do first. No paths, since nothing stands in a file yet. */
const opening =
  (what: string, mend: string): Words =>
  (fault) =>
    `${subjectOf(fault, 'The opening')} ${what}. ${mend}${fault.allowed === undefined ? '' : ` Room: ${fault.allowed}.`}`;

const camera =
  (what: string, mend: string): Words =>
  (fault) =>
    `Stops here: the camera ${subjectOf(fault, 'on it')} ${what}. ${mend}${fault.allowed === undefined ? '' : ` What fits: ${fault.allowed}.`}`;

const particulars = (value: string | number | undefined): string => (value === undefined ? '' : `: ${value}`);

export const editWords: Readonly<Record<string, Words>> = {
  'edit.corners': (fault) =>
    `${subjectOf(fault, 'This')} would have ${given(fault, 'too few')} corners. Keep this one: it needs ${allowed(fault, 'three')}.`,
  'edit.crosses': (fault) =>
    `${subjectOf(fault, 'The outline')} would cross itself${particulars(fault.given)}. Move the corner elsewhere, or take it back.`,
  'edit.touches': (fault) =>
    `${subjectOf(fault, 'The outline')} would touch itself${particulars(fault.given)}. Move the corner elsewhere, or take it back.`,
  'edit.area': (fault) =>
    `${subjectOf(fault, 'The outline')} would enclose no ground. Keep its corners apart.`,
  'edit.hole': (fault) =>
    `A courtyard of ${subjectOf(fault, 'the building')} would no longer lie within it. Stop before that, or take the courtyard out first.`,
  'edit.edgeGone': (fault) =>
    `Stops here: an edge of ${subjectOf(fault, 'this')} would shrink to nothing. Take a corner out first.`,
  'edit.repeated': (fault) =>
    `${subjectOf(fault, 'This')} has two corners in one place. Take one of them out first.`,
  'edit.bow': (fault) =>
    `The bow of ${subjectOf(fault, 'this edge')} would be ${given(fault, 'nothing')} m high. Make it ${allowed(fault, 'less than half the length of the edge')}.`,
  'edit.splitEnd': (fault) =>
    `A corner of ${subjectOf(fault, 'this')} would come within ${allowed(fault, '0.01 m')} of another. Split it farther from the end.`,
  'edit.wallGone': (fault) =>
    `${subjectOf(fault, 'Something')} is on a wall that would no longer be there. Move it or delete it first.`,
  'edit.cornerThere': (fault) =>
    `${subjectOf(fault, 'An opening')} stands where the corner would be. Put the corner beside it, or move it first.`,
  'edit.noRoom': (fault) =>
    `${subjectOf(fault, 'Something')} has no room on the wall that would be left. Move it nearer to its other corner first.`,
  'edit.cornerCamera': (fault) =>
    `The camera ${subjectOf(fault, 'there')} is mounted around this corner. Fix it to a wall first.`,
  'edit.stopsShort': (fault) =>
    `Stops here: ${subjectOf(fault, 'an opening')} needs ${fault.given ?? 'more'} of wall. Narrow it or move it first.`,
  'edit.stopsLow': (fault) =>
    `Stops here: ${subjectOf(fault, 'an opening')} needs a wall ${fault.given ?? 'as'} high. Lower it first.`,
  'edit.openingFace': opening('would be in a wall that is not there', 'Put it on another.'),
  'edit.openingSize': opening('would have no size', 'Give it a width and a height above 0.'),
  'edit.openingOutside': opening('would reach past the end of its wall', 'Narrow it, or move it.'),
  'edit.openingHigh': opening('would reach past the top of its wall', 'Lower it.'),
  'edit.openingOverlaps': (fault) =>
    `${subjectOf(fault, 'The opening')} would overlap ${given(fault, 'another')}. Move one of the two.`,
  'edit.openingDeep': opening('would be deeper than what is behind it', 'Set it back less.'),
  'edit.openingCorner': opening('would run into the corner', 'Move it from the corner.'),
  'edit.serviceFace': opening('would be on a wall that is not there', 'Put it on another.'),
  'edit.serviceOutside': opening('would lie past the end or the top of its wall', 'Move it first.'),
  'aim.pan': (fault) =>
    `Pan stops ${allowed(fault)} from straight out: this mount. ${subjectOf(fault, 'The camera')} would look ${fault.given ?? 'past it'}. Use an arm or a corner bracket, or fix it to another wall.`,
  'aim.tilt': (fault) =>
    `Tilt stops at ${allowed(fault)}: this mount. ${subjectOf(fault, 'The camera')} would look ${fault.given ?? 'past it'}. Use an arm, or aim farther out.`,
  'aim.roll': (fault) =>
    `Roll stops at ${allowed(fault)} each way: this mount. ${subjectOf(fault, 'The camera')} would be turned by ${fault.given ?? 'more'}. Turn the picture in the camera instead, if it can.`,
  'edit.cameraFace': camera('would lose its wall', 'Fix it elsewhere first.'),
  'edit.cameraDistance': camera('would lie past the end of its wall', 'Slide it first.'),
  'edit.cameraHeight': camera('would lie above or below its wall', 'Change its height first.'),
  'edit.cameraOpening': camera('would be on an opening', 'Slide it first.'),
  'edit.cameraSoffit': camera('would lose its eaves', 'Fix it to the wall first.'),
  'edit.cameraInset': camera('would hang outside the eaves', 'Bring it nearer to the wall first.'),
  'edit.cameraCorner': camera('would be at a corner that turns inwards', 'Fix it to a wall first.'),
  'clip.other': () =>
    'What was copied last is nothing of a plan. Select things, copy them, then paste again.',
  'clip.cameraLeft': (fault) =>
    `The camera ${subjectOf(fault, 'among them')} was left out, since nothing here holds it. Copy its building too.`,
};
