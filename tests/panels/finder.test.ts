import { describe, expect, test } from 'vitest';
import type { Vec3 } from '../../src/base/vector.ts';
import { createCommands } from '../../src/editor/commands.ts';
import { createEditor } from '../../src/editor/store.ts';
import { findsFor } from '../../src/panels/finder/finds.ts';
import { rankOf } from '../../src/panels/finder/matches.ts';
import { demo } from '../editor/plans.ts';

function atHand() {
  const editor = createEditor(demo());
  const commands = createCommands();
  const went: (readonly [string, Vec3])[] = [];
  commands.add([
    { id: 'undo', label: 'Undo', keys: 'Ctrl Z', off: () => 'Nothing to undo', run: () => editor.undo() },
    { id: 'home', label: 'Show the whole site', also: 'fit zoom', keys: 'Home', run: () => undefined },
  ]);
  commands.setPlaces({
    goTo: (point) => went.push(['go', point]),
    ask: (point) => went.push(['ask', point]),
    pointAt: () => null,
    middle: () => [0, 0, 0],
    fromAbove: () => undefined,
  });
  const finds = (typed: string) => findsFor(typed, { editor, commands });
  const take = (typed: string) => {
    const [first] = finds(typed);
    if (!first) throw new Error(`nothing is found for ${typed}`);
    first.run();
    return first;
  };
  return { editor, finds, take, went, plan: () => editor.store.getState().plan };
}

describe('the finder', () => {
  test('finds commands by any of their words, with keys, and says why one is off', () => {
    const { finds } = atHand();
    expect(finds('whole')[0]).toMatchObject({ label: 'Show the whole site', keys: 'Home', off: null });
    expect(finds('zoom')[0]).toMatchObject({ id: 'home' });
    expect(finds('und')[0]).toMatchObject({ label: 'Undo', off: 'Nothing to undo' });
    expect(finds('qqq')).toEqual([]);
  });

  test('“c1 tilt 24” sets the tilt as one step', () => {
    const { take, plan, editor } = atHand();
    expect(take('c1 tilt 24').label).toBe('C1: tilt 24.0 °');
    expect(plan().cameras['C1']?.tilt).toBe(24);
    expect(editor.store.getState().undoName).toBe('Tilt of C1');
    editor.undo();
    expect(plan()).toEqual(demo());
  });

  test('a number that is named alone shows how it stands, and goes on with its name', () => {
    const { finds, plan } = atHand();
    const tilt = plan().cameras['C1']?.tilt ?? NaN;
    const row = finds('c1 tilt').find(({ sort }) => sort === 'value');
    expect(row).toMatchObject({ label: `C1: tilt ${tilt.toFixed(1)} °`, fill: 'c1: tilt ' });
    expect(finds(`${row?.fill ?? ''}24`)[0]?.label).toBe('C1: tilt 24.0 °');
  });

  test('a height is read in any unit, and one out of bounds is not offered', () => {
    const { take, finds, plan } = atHand();
    const [house] = Object.values(plan().structures).filter(({ kind }) => kind === 'building');
    if (house?.kind !== 'building') throw new Error('the sample has a house');
    take(`${house.name} wall height 9' 6"`);
    const now = plan().structures[house.id];
    expect(now?.kind === 'building' ? now.height : 0).toBeCloseTo(9.5 * 0.3048, 12);
    expect(finds(`${house.name} wall height -3`).some(({ sort }) => sort === 'value')).toBe(false);
  });

  test('selects things, goes to corners and asks what hides a place', () => {
    const { take, went, plan, editor } = atHand();
    const [house] = Object.values(plan().structures).filter(({ kind }) => kind === 'building');
    if (house?.kind !== 'building') throw new Error('the sample has a house');
    take(`select ${house.name}`);
    expect(editor.store.getState().selected).toEqual({ kind: 'structure', id: house.id });
    take(`go to ${house.name} corner 1`);
    expect(went[0]?.[1].slice(0, 2)).toEqual(house.outline[0]);
    const [opening] = house.openings;
    if (!opening) throw new Error('the house has an opening');
    take(`what hides ${opening.name}`);
    expect(went[1]?.[0]).toBe('ask');
  });
});

describe('rankOf', () => {
  test('every word must begin one of the label; in order and early comes first', () => {
    expect(rankOf(['gar', 'hei'], 'Garage wall height')).not.toBeNull();
    expect(rankOf(['gate'], 'Garage')).toBeNull();
    const inOrder = rankOf(['go', 'house'], 'Go to House corner 1') ?? Infinity;
    const turned = rankOf(['house', 'go'], 'Go to House corner 1') ?? -Infinity;
    expect(inOrder).toBeLessThan(turned);
  });
});
