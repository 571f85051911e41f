import { describe, expect, test } from 'vitest';
import { readPhotometry } from '../../../src/exchange/photometry/readPhotometry.ts';
import { candelaAt } from '../../../src/optics/photometry.ts';
import { faultText } from '../../../src/plan/faultText.ts';

/** A lamp of four angles; `head` the ten numbers, `rest` what follows the ballast line. */
const file = ({
  first = 'IESNA:LM-63-2002',
  tilt = 'TILT=NONE',
  head = '1 1000 1 4 1 1 2 0.1 0.1 0',
  ballast = '1 1 10',
  rest = '0 30 60 90\n0\n1000 800 300 0',
} = {}): string => [first, '[TEST] own', tilt, head, ballast, rest, ''].join('\n');

const read = (text: string) => {
  const outcome = readPhotometry('lamp.ies', text);
  if (!outcome.ok) throw new Error(outcome.faults.map(faultText).join('\n'));
  return outcome;
};
const faultOf = (text: string) => {
  const outcome = readPhotometry('lamp.ies', text);
  if (outcome.ok) throw new Error('it was accepted');
  expect(outcome.faults.map(faultText).join(' ')).toMatch(/^[A-Z“].*lamp\.ies.+\.$/);
  return outcome.faults[0]?.code;
};
const plain = { verticals: [0, 30, 60, 90], horizontals: [0], candela: [[1000, 800, 300, 0]] };

describe('a photometric file', () => {
  test('gives angles and candela', () => {
    expect(read(file())).toEqual({ ok: true, value: plain, notes: [] });
  });

  test.each([
    ['CRLF', file().replaceAll('\n', '\r\n')],
    ['CR alone', file().replaceAll('\n', '\r')],
    ['commas', file({ rest: '0,30, 60 ,90\n0\n1000,800,300,0' })],
    [
      'numbers broken over lines anywhere',
      file().replace('1 1000 1 4', '1 1000\n1\n\n4').replace('800 300', '800\n\t300'),
    ],
    ['exponents and signs', file({ rest: '0 3e1 +60 9.0E1\n.0\n1000. 800 300 -0' })],
    ['a lower-case keyword with blanks', file({ tilt: ' tilt = none ' })],
    ['an end mark of old', `${file()}\u001A`],
    ['no version, as in 1986', file({ first: 'A LAMP OF 1986' })],
    ['the version of 1991', file({ first: 'IESNA91' })],
    ['the version of 1995', file({ first: 'IESNA:LM-63-1995' })],
    ['the version of 2019', file({ first: 'IES:LM-63-2019', ballast: '1 1.00001 10' })],
    ['feet', file({ head: '1 1000 1 4 1 1 1 0.3 0.3 0' })],
    ['absolute photometry', file({ head: '1 -1 1 4 1 1 2 -0.1 0 0' })],
  ])('with %s reads the same', (_, text) => {
    const { value, notes } = read(text);
    expect(value).toEqual(expect.objectContaining({ verticals: plain.verticals, horizontals: [0] }));
    expect(value.candela.flat().map(Math.abs)).toEqual([1000, 800, 300, 0]);
    expect(notes).toEqual([]);
  });

  test('has its multiplier and the factor of its ballast applied', () => {
    const text = file({ head: '1 1000 1.5 4 1 1 2 0.1 0.1 0', ballast: '0.8 1 10' });
    expect(read(text).value.candela[0]?.[1]).toBeCloseTo(800 * 1.5 * 0.8, 9);
  });

  test('has the third factor applied only where it was one, until 1991', () => {
    const of = (first: string) => read(file({ first, ballast: '1 0.9 10' })).value.candela[0]?.[0];
    expect(of('A LAMP OF 1986')).toBeCloseTo(900, 9);
    expect(of('IESNA91')).toBeCloseTo(900, 9);
    expect(of('IESNA:LM-63-1995')).toBe(1000);
    expect(of('IES:LM-63-2019')).toBe(1000);
  });

  test('keeps candela by horizontal, then by vertical', () => {
    const rest = '0 45 90\n0 180\n9 8 7\n6 5 4';
    const { value } = read(file({ head: '1 1000 1 3 2 1 2 0 0 0', rest }));
    expect(value.candela).toEqual([
      [9, 8, 7],
      [6, 5, 4],
    ]);
    expect(candelaAt(value, 45, 180)).toBe(5);
  });

  test('with tilt data is read past them, with a note', () => {
    const text = file({
      tilt: 'TILT=INCLUDE',
      head: '1\n3\n0 45 90\n1 0.95 0.9\n1 1000 1 4 1 1 2 0.1 0.1 0',
    });
    const { value, notes } = read(text);
    expect(value).toEqual(plain);
    expect(notes.map(({ code }) => code)).toEqual(['ies.tiltLeft']);
  });

  test('that goes on past its light is read, with a note', () => {
    expect(read(`${file()}7 7 7\n`)).toMatchObject({ value: plain, notes: [{ code: 'ies.more', given: 3 }] });
  });
});

describe('a file that gives no light is refused with words', () => {
  test.each([
    ['ies.noTilt', ''],
    ['ies.noTilt', '{"version": 2}'],
    ['ies.tiltFile', file({ tilt: 'TILT=other.tlt' })],
    ['ies.number', file({ rest: '0 30 sixty 90\n0\n1000 800 300 0' })],
    ['ies.number', file({ rest: '0 30 60 90\n0\n1000 800 1e999 0' })],
    ['ies.short', file({ rest: '0 30 60 90\n0\n1000 800 300' })],
    ['ies.short', file({ head: '1 1000 1', ballast: '', rest: '' })],
    ['ies.short', file({ head: '1 1000 1 90000 90000 1 2 0 0 0' })],
    ['ies.short', file({ tilt: 'TILT=INCLUDE', head: '1 90000' })],
    ['ies.type', file({ head: '1 1000 1 4 1 2 2 0.1 0.1 0' })],
    ['ies.type', file({ head: '1 1000 1 4 1 3 2 0.1 0.1 0' })],
    ['value.choice', file({ head: '1 1000 1 4 1 4 2 0.1 0.1 0' })],
    ['value.choice', file({ head: '1 1000 1 4 1 1 3 0.1 0.1 0' })],
    ['number.range', file({ head: '1 1000 0 4 1 1 2 0.1 0.1 0' })],
    ['number.range', file({ head: '1 1000 1 0 1 1 2 0.1 0.1 0' })],
    ['number.whole', file({ head: '1 1000 1 4.5 1 1 2 0.1 0.1 0' })],
    ['number.range', file({ ballast: '-1 1 10' })],
    ['ies.rising', file({ rest: '0 60 30 90\n0\n1000 800 300 0' })],
    ['ies.rising', file({ rest: '0 30 30 90\n0\n1000 800 300 0' })],
    ['ies.vertical', file({ rest: '-90 0 60 90\n0\n1000 800 300 0' })],
    ['ies.horizontal', file({ rest: '0 30 60 90\n45\n1000 800 300 0' })],
    ['ies.candela', file({ rest: '0 30 60 90\n0\n1000 -800 300 0' })],
  ])('%s', (code, text) => {
    expect(faultOf(text)).toBe(code);
  });
});
