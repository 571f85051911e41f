import { expect, test } from 'vitest';
import { portFrom, usualPort } from './port.mjs';

test('without words the usual port is tried, and another will do', () => {
  expect(portFrom([])).toEqual({ port: usualPort, chosen: false });
});

test.each([[['--port', '5000']], [['--port=5000']]])('%j asks for port 5000 and no other', (words) => {
  expect(portFrom(words)).toEqual({ port: 5000, chosen: true });
});

test.each([
  [['--port'], 'has no number'],
  [['--port='], 'has no number'],
  [['--port', 'abc'], '“abc” is no port'],
  [['--port', '0'], '“0” is no port'],
  [['--port', '65536'], '“65536” is no port'],
  [['--port', '-1'], '“-1” is no port'],
  [['--port', '80.5'], '“80.5” is no port'],
  [['--port', '1e3'], '“1e3” is no port'],
  [['5000'], 'does not know “5000”'],
])('%j is refused with a way to mend it', (words, part) => {
  expect(() => portFrom(words)).toThrow(part);
  expect(() => portFrom(words)).toThrow('npm start -- --port');
});
