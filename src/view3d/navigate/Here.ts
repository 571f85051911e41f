import { createStore } from 'zustand/vanilla';
import type { Vec3 } from '../../base/vector.ts';
import { spotMeant } from '../../editor/tools/camera/aim.ts';
import type { Pointed } from '../../editor/tools/pointed.ts';
import { groundOf } from '../ground/terrainFaces.ts';
import { hereWords } from '../parts/hereWords.ts';
import type { Model } from '../Model.ts';
import { spotOnSurface } from '../surfaceSpot.ts';
import type { Spot } from '../sheet.ts';

/** A pin comes off once the pointer has gone so far from it, px. */
const LOOSE = 8;

/** What is here: the spot that the pointer asks about, and one that stays asked about for a while. */
export class Here {
  /** The sentence to speak; `turn` rises with each. */
  readonly said = createStore<{ readonly text: string; readonly turn: number }>(() => ({
    text: '',
    turn: 0,
  }));
  /** The spot that is held, site frame. */
  pinned: Vec3 | null = null;
  private from: Spot | null = null;
  private readonly model: Model;

  constructor(model: Model) {
    this.model = model;
  }

  /** The pointer asks, unless a pin is held near it. */
  follow(at: Pointed | null): void {
    const { editor, pointer } = this.model;
    const { spot } = pointer.getState();
    if (this.pinned) {
      const near = spot && this.from && Math.hypot(spot.x - this.from.x, spot.y - this.from.y) <= LOOSE;
      if (near || at === null) return;
      this.release();
    }
    editor.point(at && this.spotOf(at));
  }

  /** Holds what is under the pointer, or in the middle of the view, and speaks of it. */
  pin(at: Pointed = this.model.pointedNow()): void {
    const { editor, answers, pointer } = this.model;
    const point = this.spotOf(at);
    if (!point) {
      this.say('Nothing of the site is here.');
      return;
    }
    this.pinned = point;
    this.from = pointer.getState().spot;
    const stop = answers.subscribe(({ probe, assessment }) => {
      if (this.pinned !== point) stop();
      else if (probe?.point === point && assessment) {
        stop();
        const { structures, cameras } = editor.store.getState().plan;
        const names = (id: string) => structures[id]?.name ?? cameras[id]?.name;
        this.say(hereWords(assessment, probe.answers, names, probe.figure));
      }
    });
    editor.point(point);
    this.model.invalidate();
  }

  /** Lets go of the pin; tells whether there was one. */
  release(): boolean {
    if (!this.pinned) return false;
    this.pinned = null;
    this.model.editor.point(null);
    this.model.invalidate();
    return true;
  }

  private say(text: string): void {
    this.said.setState(({ turn }) => ({ text, turn: turn + 1 }));
  }

  /** The spot of the board that is meant, at the height that coverage is asked for. */
  private spotOf(at: Pointed): Vec3 | null {
    const { editor, assessment } = this.model;
    if (!assessment) return null;
    if (assessment.surface) return spotOnSurface(assessment.surface, at);
    const { target } = editor.store.getState();
    if (groundOf(assessment.scene)) return onUneven(at, target.height);
    const spot = spotMeant(at, assessment.scene.ground + target.height);
    const { left, right, bottom, top } = assessment.scene.board;
    const inside = spot && spot[0] >= left && spot[0] <= right && spot[1] >= bottom && spot[1] <= top;
    return inside ? spot : null;
  }
}

/** As far above uneven ground as its cells are judged, m (coverage/unevenGround.ts). */
const LEAST_ABOVE = 1e-5;

/** The spot at a height above the uneven ground that is pointed at; a structure before it has none. */
const onUneven = ({ struck }: Pointed, height: number): Vec3 | null =>
  struck?.structure === null
    ? [struck.point[0], struck.point[1], struck.point[2] + Math.max(height, LEAST_ABOVE)]
    : (struck?.point ?? null);
