import { describe, expect, test } from 'vitest';
import { garage, house, site, window } from '../site.ts';
import { atRest, thing } from './atRest.ts';

describe('keyboard stops', () => {
  test('Enter begins, Tab walks in order, Enter rests', () => {
    const { tools, state } = atRest(site(house()), thing('house'));
    tools.enter();
    const labels: (string | undefined)[] = [];
    while (state().name === 'rest stops' && labels.length < 20) {
      labels.push(state().strip?.fields[0]?.label);
      tools.tab(false);
    }
    expect(labels).toEqual([
      'East',
      'North',
      'Edge 1',
      'Edge 2',
      'Edge 3',
      'Edge 4',
      'Wall height',
      'Base',
      'Overhang',
    ]);
    expect(state().name).toBe('rest');
    tools.enter();
    tools.tab(false);
    tools.tab(true);
    expect(state().strip?.fields[0]?.label).toBe('East');
    tools.enter();
    expect(state().name).toBe('rest');
  });

  test('arrows step the stop, within a second as one step of history', () => {
    const { editor, tools, outline } = atRest(site(house()), thing('house'));
    tools.enter();
    tools.tab(false);
    tools.tab(false);
    tools.nudge('up', true);
    tools.nudge('up', false);
    expect(outline('house')[1]?.[0]).toBeCloseTo(8.11, 9);
    expect(outline('house')[2]?.[0]).toBeCloseTo(8.11, 9);
    editor.undo();
    expect(outline('house')[1]).toEqual([8, 0]);
  });

  test('a typed length lengthens, with ; the other end moves', () => {
    const { tools, outline } = atRest(site(house()), thing('house'));
    tools.enter();
    tools.tab(false);
    tools.tab(false);
    tools.swap();
    expect(tools.typed('edge 0', '9.5', 'tab')).toBeNull();
    expect(outline('house')[0]).toEqual([-1.5, 0]);
    expect(outline('house')[1]).toEqual([8, 0]);
    expect(tools.typed('edge 1', '0', 'enter')).toContain('must be above 0');
    expect(outline('house')[2]).toEqual([8, 6]);
  });

  test('on a position a number and an arrow go that far', () => {
    const { tools, outline, state } = atRest(site(garage()), thing('garage'));
    tools.enter();
    expect(tools.typed('east', '1.25', 'down')).toBeNull();
    expect(outline('garage')[0]).toEqual([13, -1.25]);
    expect(state().name).toBe('rest stops');
    expect(tools.typed('east', '20', 'enter')).toBeNull();
    expect(outline('garage')[0]).toEqual([20, -1.25]);
    expect(state().name).toBe('rest');
  });

  test('what does not fit stays in the field and says so', () => {
    const { tools, outline } = atRest(site(house({ openings: [window('w')] })), thing('house'));
    tools.enter();
    tools.tab(false);
    tools.tab(false);
    expect(tools.typed('edge 0', '1.5', 'enter')).toContain('Stops here');
    expect(tools.typed('edge 0', 'wide', 'enter')).toContain('not a length');
    expect(outline('house')[1]).toEqual([8, 0]);
  });
});
