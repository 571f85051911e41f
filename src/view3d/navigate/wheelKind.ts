/** What turns a wheel event into a gesture: a wheel's notches, two fingers sliding, or a pinch. */
type WheelKind = 'wheel' | 'fingers' | 'pinch';

export interface WheelTurn {
  readonly deltaX: number;
  readonly deltaY: number;
  /** 0 pixels, 1 lines, 2 pages. */
  readonly deltaMode: number;
  readonly ctrlKey: boolean;
  /** ms. */
  readonly time: number;
}

/** Quiet after which the next event is judged anew, ms. */
const QUIET = 180;
const NOTCH = 40;

export interface Burst {
  readonly kind: WheelKind;
  readonly time: number;
}

/**
 * Decides at the first event of a burst and keeps to it. A pinch comes with ctrlKey; a wheel in lines or pages, or in steps
 * of 40 px up with nothing sideways; the rest are fingers.
 * @param zoom of the browser's page, which scales the steps: 1 is none
 */
export function wheelKind(turn: WheelTurn, before: Burst | null, zoom: number): Burst {
  if (before && turn.time - before.time < QUIET) return { kind: before.kind, time: turn.time };
  if (turn.ctrlKey) return { kind: 'pinch', time: turn.time };
  const notched = turn.deltaX === 0 && Math.abs(turn.deltaY) * zoom >= NOTCH;
  return { kind: turn.deltaMode !== 0 || notched ? 'wheel' : 'fingers', time: turn.time };
}

const PIXELS_PER_NOTCH = 100;
const NOTCH_ZOOM = 1.15;

/** How much nearer a wheel's turn brings the view; above 1 is nearer. */
export function wheelZoom({ deltaY, deltaMode }: WheelTurn): number {
  const notches = deltaMode === 0 ? deltaY / PIXELS_PER_NOTCH : deltaMode === 1 ? deltaY / 3 : deltaY;
  return NOTCH_ZOOM ** -Math.max(-4, Math.min(4, notches));
}

export const pinchZoom = ({ deltaY }: WheelTurn): number => Math.exp(-deltaY * 0.01);
