import { describe, expect, test } from 'vitest';
import { pinchZoom, wheelKind, wheelZoom, type WheelTurn } from '../../src/view3d/navigate/wheelKind.ts';

const turn = (more: Partial<WheelTurn>): WheelTurn => ({
  deltaX: 0,
  deltaY: 0,
  deltaMode: 0,
  ctrlKey: false,
  time: 1000,
  ...more,
});

describe('a wheel, two fingers or a pinch', () => {
  test.each([
    ['wheel', { deltaY: 100 }],
    ['wheel', { deltaY: -120 }],
    ['wheel', { deltaY: 3, deltaMode: 1 }],
    ['fingers', { deltaY: 12 }],
    ['fingers', { deltaX: 5, deltaY: 80 }],
    ['pinch', { deltaY: 2, ctrlKey: true }],
  ] as const)('%s: %o', (kind, more) => {
    expect(wheelKind(turn(more), null, 1).kind).toBe(kind);
  });

  test('a burst keeps to what it began as', () => {
    const first = wheelKind(turn({ deltaY: 8 }), null, 1);
    const fast = wheelKind(turn({ deltaY: 90, time: 1100 }), first, 1);
    expect(fast.kind).toBe('fingers');
    expect(wheelKind(turn({ deltaY: 90, time: 1250 }), fast, 1).kind).toBe('fingers');
  });

  test('after 180 ms of quiet it is judged anew', () => {
    const first = wheelKind(turn({ deltaY: 8 }), null, 1);
    expect(wheelKind(turn({ deltaY: 100, time: 1181 }), first, 1).kind).toBe('wheel');
  });

  test('the browser’s zoom is undone before a notch is measured', () => {
    expect(wheelKind(turn({ deltaY: 25 }), null, 2).kind).toBe('wheel');
    expect(wheelKind(turn({ deltaY: 60 }), null, 0.5).kind).toBe('fingers');
  });

  test('a notch is 1.15, away from the hand is nearer', () => {
    expect(wheelZoom(turn({ deltaY: -100 }))).toBeCloseTo(1.15, 9);
    expect(wheelZoom(turn({ deltaY: 3, deltaMode: 1 }))).toBeCloseTo(1 / 1.15, 9);
    expect(pinchZoom(turn({ deltaY: -10 }))).toBeGreaterThan(1);
  });
});
