/** A touch as soon as this after the pen is the hand that holds it, ms. */
const PALM = 500;

/** Once a pen has touched, fingers only move the view, unless they are said to draw; the hand's own touch is none. */
export class PenRule {
  private drawing = false;
  private last: number | null = null;

  get fingersDraw(): boolean {
    return this.drawing;
  }

  letFingersDraw(draw: boolean): void {
    this.drawing = draw;
  }

  /** A pen touched or moved. @param time ms */
  seen(time: number): void {
    this.last = time;
  }

  /** Whether a pen has been used, so that fingers need leave to draw. */
  get hasPen(): boolean {
    return this.last !== null;
  }

  /** Whether a touch is the hand's, at a time, ms. */
  isPalm(time: number): boolean {
    return this.last !== null && time - this.last < PALM;
  }

  /** Whether a finger only moves the view. */
  get onlyMoves(): boolean {
    return this.hasPen && !this.fingersDraw;
  }
}
