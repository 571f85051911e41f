import { describe, expect, test } from 'vitest';
import type { Grip } from '../../../src/editor/grips/grip.ts';
import { gripsOf } from '../../../src/editor/grips/gripsOf.ts';
import { addPicture, setPicture } from '../../../src/plan/commands/addPicture.ts';
import type { Picture, PictureFile, PicturePoint, Plan, SitePicture } from '../../../src/plan/plan.ts';
import { siteFromPicture } from '../../../src/plan/sitePicture.ts';
import { pointing } from '../tools/pointing.ts';
import { holding } from './holding.ts';
import { house, site } from '../site.ts';

const file: PictureFile = { sha: 'b'.repeat(64), type: 'image/png', width: 1000, height: 600 };
const laid: SitePicture = { kind: 'site', at: [-4, 9], metresPerPixel: 0.02, turn: 20, strength: 0.4 };

const put = (use: Picture['use']): { readonly plan: Plan; readonly id: string } => {
  const added = addPicture(site(house()), { name: 'Deeds', file, use });
  if (!added.ok) throw new Error(added.faults.map(({ code }) => code).join());
  return added.value;
};

function held(use: Picture['use'], change: Partial<Picture> = {}) {
  const { plan, id } = put(use);
  const changed = setPicture(plan, id, change);
  if (!changed.ok) throw new Error('the picture can be so');
  const all = holding(changed.value, { kind: 'picture', id });
  const grip = (point: 'first' | 'second' | 'body'): Grip => ({ part: 'picture', picture: id, point });
  const picture = (): Picture => {
    const found = all.now().plan.pictures[id];
    if (!found) throw new Error('the picture is gone');
    return found;
  };
  const siteUse = (): SitePicture => {
    const now = picture().use;
    if (now.kind !== 'site') throw new Error('it is no site picture');
    return now;
  };
  return { ...all, grip, picture, siteUse };
}

const cornerOf = (use: SitePicture, corner: PicturePoint) => siteFromPicture({ file, use }, corner);

describe('a picture of the site', () => {
  // A free drag is kept to the millimetre.
  test('is moved by its middle, as one step, and keeps scale and turn', () => {
    const { pull, grip, tools, siteUse, now, editor, placeOf } = held(laid);
    const [x, y] = placeOf(grip('body'));
    pull(grip('body'), [
      [0, 0, 0],
      [x + 3, y - 2, 0],
    ]);
    tools.release();
    const { at, ...rest } = siteUse();
    expect(at[0]).toBeCloseTo(-1, 3);
    expect(at[1]).toBeCloseTo(7, 3);
    expect(rest).toEqual({ kind: 'site', metresPerPixel: 0.02, turn: 20, strength: 0.4 });
    expect(now().undoName).toBe('Move Deeds');
    editor.undo();
    expect(siteUse()).toEqual(laid);
  });

  test.for([
    ['first', [0, 0], [1000, 600]],
    ['second', [1000, 600], [0, 0]],
  ] as const)('goes with its %s corner, about the other', ([point, own, other]) => {
    const { pull, grip, tools, siteUse, placeOf } = held(laid);
    const [x, y] = placeOf(grip(point));
    const fixed = cornerOf(laid, other);
    pull(grip(point), [[x + 1.7, y + 2.3, 0]]);
    tools.release();
    const now = cornerOf(siteUse(), own);
    expect(now[0]).toBeCloseTo(x + 1.7, 3);
    expect(now[1]).toBeCloseTo(y + 2.3, 3);
    const still = cornerOf(siteUse(), other);
    expect(still[0]).toBeCloseTo(fixed[0], 6);
    expect(still[1]).toBeCloseTo(fixed[1], 6);
    expect(siteUse().metresPerPixel).not.toBe(0.02);
  });

  test('without a scale has its middle alone: a stretch would make one up', () => {
    const { plan, id } = put({ ...laid, metresPerPixel: null });
    const grips = gripsOf(plan, [{ kind: 'picture', id }]);
    expect(grips.map(({ grip }) => grip.part === 'picture' && grip.point)).toEqual(['body']);
  });

  test('that is locked stays, and says so', () => {
    const { grip, tools, siteUse, now, placeOf } = held(laid, { locked: true });
    const { plan, selection } = now();
    expect(gripsOf(plan, selection).every(({ locked }) => locked)).toBe(true);
    const from = { ...pointing(plan, placeOf(grip('body'))), grip: grip('body') };
    tools.drag(from, pointing(plan, [3, 3, 0]));
    tools.release();
    expect(siteUse()).toEqual(laid);
    expect(now().notice?.text).toContain('Deeds is locked');
  });
});

describe('a pinned photo', () => {
  const photo = { kind: 'photo', at: [3, -6, 1.6], heading: null } as const;

  test('is moved at its height', () => {
    const { pull, grip, tools, picture } = held(photo);
    pull(grip('body'), [[5, -7, 1.6]]);
    tools.release();
    const { use } = picture();
    const at = use.kind === 'photo' ? use.at : [];
    [5, -7, 1.6].forEach((value, axis) => expect(at[axis]).toBeCloseTo(value, 6));
  });

  test('looks where its way is drawn to', () => {
    const { pull, grip, tools, picture } = held(photo);
    pull(grip('first'), [[6, -6, 1.6]]);
    tools.release();
    expect(picture().use).toEqual({ ...photo, heading: 90 });
  });
});
