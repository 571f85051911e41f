import { describe, expect, test } from 'vitest';
import { copied, cut, notCopied, paste } from '../../src/editor/clip.ts';
import { selectEverything } from '../../src/editor/selectEverything.ts';
import { createEditor } from '../../src/editor/store.ts';
import { addCamera, newCamera } from '../../src/plan/commands/addCamera.ts';
import { emptyPlan } from '../../src/plan/emptyPlan.ts';
import { garage, house, site, window } from './site.ts';
import { atRest, thing } from './tools/atRest.ts';
import { bare } from '../plan/wholePlan.ts';

describe('copying and pasting', () => {
  test('a copy lands a metre beside what it is of, the next another metre, each one step and selected', () => {
    const { editor, now, outline } = atRest(site(house(), garage()), thing('garage'));
    const text = copied(editor) ?? '';
    expect(paste(editor, text)).toBe(true);
    const [first] = now().selection;
    expect(first && 'id' in first && outline(first.id)[0]).toEqual([14, 0]);
    expect(now().undoName).toBe('Paste Garage 2');
    expect(paste(editor, text)).toBe(true);
    const [second] = now().selection;
    expect(second && 'id' in second && outline(second.id)[0]).toEqual([15, 0]);
    expect(now().plan.structureOrder).toHaveLength(4);
    editor.undo();
    editor.undo();
    expect(now().plan.structureOrder).toEqual(['house', 'garage']);
  });

  test('another plan takes it where it was, with its windows', () => {
    const { editor } = atRest(site(house({ openings: [window('w1')] })), thing('house'));
    const text = copied(editor) ?? '';
    const other = createEditor(emptyPlan('other', 'Other'));
    expect(paste(other, text)).toBe(true);
    const { plan, selected } = other.store.getState();
    expect(plan.id).toBe('other');
    const [structure] = Object.values(plan.structures);
    expect(structure).toMatchObject({
      name: 'House',
      outline: [
        [0, 0],
        [8, 0],
        [8, 6],
        [0, 6],
      ],
    });
    expect(structure && 'openings' in structure && structure.openings).toHaveLength(1);
    expect(selected).toEqual({ kind: 'structure', id: structure?.id });
  });

  test('cut takes it out, and paste puts it back where it was', () => {
    const { editor, now, outline } = atRest(site(house(), garage()), thing('garage'));
    const text = cut(editor) ?? '';
    expect(now().plan.structureOrder).toEqual(['house']);
    expect(now().notice?.text).toBe('Garage: cut. Paste here, or in another plan or tab.');
    paste(editor, text);
    const [back] = now().selection;
    expect(back && 'id' in back && outline(back.id)[0]).toEqual([13, 0]);
  });

  test('what is locked is copied by cut, and stays', () => {
    const { editor, now } = atRest(site(garage({ locked: true })), thing('garage'));
    expect(cut(editor)).toContain('Garage');
    expect(now().plan.structureOrder).toEqual(['garage']);
    expect(now().notice?.text).toBe('What is locked stays. L frees it.');
  });

  test('a camera without its wall is loose, a metre from where the one on the wall looks from', () => {
    const mount = {
      kind: 'flush',
      ...bare,
      host: 'house',
      face: 0,
      corner: 'start',
      distance: 3,
      height: 2.2,
      standOff: 0.1,
    } as const;
    const plan = site(house());
    const camera = newCamera(plan, mount, { pan: 180, tilt: 20 });
    const editor = createEditor(addCamera(plan, camera));
    editor.select({ kind: 'camera', id: camera.id });
    paste(editor, copied(editor) ?? '');
    const { selected, plan: after } = editor.store.getState();
    expect(selected?.kind).toBe('camera');
    const copy = selected?.kind === 'camera' ? after.cameras[selected.id]?.mount : undefined;
    expect(copy).toEqual({ kind: 'loose', eye: [4, -0.1, 2.2] });
    expect(after.cameras[camera.id]?.mount).toEqual(mount);
  });

  test.each([
    '',
    'a shopping list',
    '{"mark":"soffit things"',
    '{"mark":"soffit things","eyes":{},"plan":{}}',
  ])('a clipboard that holds %j is refused in words, and nothing changes', (text) => {
    const { editor, now } = atRest(site(garage()), thing('garage'));
    const before = now().plan;
    expect(paste(editor, text)).toBe(false);
    expect(now().plan).toBe(before);
    expect(now().notice).toMatchObject({ tone: 'trouble', text: 'Nothing was pasted.' });
    expect(now().notice?.faults.length).toBeGreaterThan(0);
  });

  test('nothing selected, the boundary, and a plan edited in another tab say why', () => {
    const { editor, now } = atRest(site(garage()));
    expect(copied(editor)).toBeNull();
    expect(now().notice?.text).toBe('Select something first, then copy it.');
    editor.select({ kind: 'ground' });
    expect(notCopied(editor)).toContain('what it is part of');
    editor.select(thing('garage'));
    const text = copied(editor) ?? '';
    editor.store.setState({ readOnly: true });
    expect(cut(editor)).toBeNull();
    expect(paste(editor, text)).toBe(false);
    expect(now().notice?.text).toContain('edited in another tab');
  });

  test('everything is selected at once', () => {
    const { editor, now } = atRest(site(house(), garage()));
    selectEverything(editor);
    expect(now().selection).toEqual([thing('house'), thing('garage')]);
  });
});
