import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { createSession, runSteps } from '../../src/assess/session.ts';
import { groupsOf } from './objGroups.ts';
import { DEMO, planAt, scratch, soffit, soffitJson } from './ran.ts';

const files = scratch();
afterAll(files.clear);

describe('cells', () => {
  const rowsOf = (...words: string[]) => {
    const file = files.file('cells.csv');
    expect(soffit('cells', DEMO, ...words, '--csv', file).err).toBe('');
    const [head, ...rows] = readFileSync(file, 'utf8').trimEnd().split('\n');
    return { head, rows: rows.map((row) => row.split(',')) };
  };

  test('are as the contract has them, with the words of the trade', () => {
    const { head, rows } = rowsOf('--camera', 'C1', '--target-height', '1.6', '--cell', '0.5');
    expect(head).toBe('x,y,z,state,band,density,depression,hidden_by');
    const obj = files.file('ids.obj');
    soffit('solids', DEMO, '--obj', obj);
    const ids = new Set(groupsOf(readFileSync(obj, 'utf8')).keys());
    const states = new Set<string>();
    for (const [
      x = '',
      y = '',
      z,
      state = '',
      band = '',
      density = '',
      depression = '',
      hiddenBy = '',
    ] of rows) {
      states.add(state);
      expect(z).toBe('1.6000');
      expect([x, y].every((text) => /^-?\d+\.\d{4}$/.test(text))).toBe(true);
      expect(band !== '').toBe(state === 'covered');
      expect(hiddenBy !== '').toBe(state === 'hidden');
      expect(hiddenBy === '' || ids.has(hiddenBy)).toBe(true);
      const framed = state !== 'inside' && state !== 'out of frame';
      expect([density !== '', depression !== '']).toEqual([framed, framed]);
      if (!framed) continue;
      // The lens of C1 is at (8.6, −0.3, 2.9).
      const angle = (Math.atan((2.9 - 1.6) / Math.hypot(Number(x) - 8.6, Number(y) + 0.3)) * 180) / Math.PI;
      expect(Number(depression)).toBeCloseTo(angle, 2);
      const bands = ['detect', 'observe', 'recognise', 'identify'];
      const reached = [25, 62.5, 125, 250].filter((least) => Number(density) >= least).length;
      expect(band).toBe(state === 'covered' ? bands[reached - 1] : '');
    }
    expect([...states].toSorted()).toEqual(['covered', 'hidden', 'inside', 'out of frame']);
  });

  test('lie half a cell from the board’s corner, each S from the next', () => {
    const { rows } = rowsOf('--camera', 'C2', '--cell', '0.4');
    const xs = [...new Set(rows.map(([x]) => Number(x)))];
    const ys = [...new Set(rows.map(([, y]) => Number(y)))];
    expect(rows).toHaveLength(xs.length * ys.length);
    for (const line of [xs, ys])
      expect(
        Math.max(...line.slice(1).map((value, at) => Math.abs(value - (line[at] ?? NaN) - 0.4))),
      ).toBeLessThan(2e-4);
  });

  test('are printed where no file is named, and counted in JSON', () => {
    const printed = soffit('cells', DEMO, '--camera', 'C1', '--cell', '1');
    const summary = soffitJson(
      'cells',
      DEMO,
      '--camera',
      'C1',
      '--cell',
      '1',
      '--csv',
      files.file('one.csv'),
    ) as {
      cells: number;
      states: Record<string, number>;
    };
    expect(printed.out).toBe(readFileSync(files.file('one.csv'), 'utf8'));
    expect(printed.out.trimEnd().split('\n')).toHaveLength(summary.cells + 1);
    expect(Object.values(summary.states).reduce((sum, count) => sum + count, 0)).toBe(summary.cells);
  });

  test('of the app’s own size are the very cells of the assessment', () => {
    const { rows } = rowsOf('--camera', 'C1');
    const question = {
      target: { kind: 'ground', height: 0 },
      alone: null,
      situation: null,
      causes: 'exact',
    } as const;
    const assessment = runSteps(createSession().steps(planAt(DEMO), question, 1));
    const cells = assessment.cameras[0]?.cells;
    expect(rows).toHaveLength(cells?.state.length ?? -1);
    const words = ['inside', 'out of frame', 'hidden', 'screened', 'too dark', 'too coarse', 'covered'];
    expect(rows.findIndex(([, , , state], at) => state !== words[cells?.state[at] ?? -1])).toBe(-1);
  });

  test('of a face past its limit from above keep a lower band', () => {
    const face = rowsOf('--camera', 'C1', '--target', 'face', '--cell', '0.5').rows;
    const bare = rowsOf('--camera', 'C1', '--target-height', '1.6', '--cell', '0.5').rows;
    const steep = (rows: string[][], band: string) =>
      rows.filter((row) => row[4] === band && Number(row[6]) > 20).length;
    expect(steep(bare, 'identify')).toBeGreaterThan(0);
    expect(steep(face, 'identify')).toBe(0);
  });
});
