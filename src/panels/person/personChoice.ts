import type { Vec2 } from '../../base/vector.ts';
import type { Looks, Target } from '../../coverage/target.ts';
import type { Camera } from '../../optics/camera.ts';
import type { Moving } from '../../draw/person/shownPerson.ts';

/** Which way somebody looks: to the camera, as faces are asked for, along a bearing, or to a place that has a name. */
export type Way = 'camera' | 'asked' | 'bearing' | 'place';
export type Compare = 'nothing' | 'lens' | 'camera' | 'bands';

/** What a person chose to look at; it goes with the window. */
export interface PersonChoice {
  readonly way: Way;
  /** °. */
  readonly bearing: number;
  /** Where the place that is looked to lies. */
  readonly place: Vec2 | null;
  readonly cap: boolean;
  readonly moving: Moving;
  readonly compare: Compare;
  /** mm; null: until one is chosen, half as long again as the camera's own. */
  readonly focalLength: number | null;
  /** Id of the other camera; null: the first of the others. */
  readonly camera: string | null;
}

export const FIRST_CHOICE: PersonChoice = {
  way: 'camera',
  bearing: 180,
  place: null,
  cap: false,
  moving: 'still',
  compare: 'nothing',
  focalLength: null,
  camera: null,
};

/** Which way is looked, as the rules have it. */
export function looksOf(choice: PersonChoice, target: Target, eye: Camera['eye']): Looks {
  const camera: Looks = { kind: 'place', at: [eye[0], eye[1]] };
  switch (choice.way) {
    case 'camera':
      return camera;
    case 'asked':
      return (target.kind === 'face' ? target.looks : undefined) ?? camera;
    case 'bearing':
      return { kind: 'bearing', bearing: choice.bearing };
    case 'place':
      return choice.place === null ? camera : { kind: 'place', at: choice.place };
  }
}
