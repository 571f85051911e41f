import { expect, test } from 'vitest';
import { reportText, reportWords } from '../../src/exchange/reportText.ts';
import { Tally } from '../../src/exchange/report.ts';
import { filesBelow, textOfFile } from '../house/projectFiles.ts';

const used = filesBelow('src/exchange')
  .filter((file) => !file.endsWith('reportText.ts'))
  .flatMap((file) =>
    [...textOfFile(file).matchAll(/'((?:left|taken|assumed)\.[a-zA-Z-]+)'/g)].map(([, code]) => code ?? ''),
  );
// The last word of these is a value: `taken.${kind}`, `assumed.flat-${why}`.
const made = ['building', 'part', 'canopy', 'wall', 'fence', 'hedge'].map((kind) => `taken.${kind}`);
const flat = ['shape', 'outline', 'steep'].map((why) => `assumed.flat-${why}`);

test('every line that an import can report has words, and no words are left over', () => {
  expect(new Set([...used, ...made, ...flat])).toEqual(new Set(Object.keys(reportWords)));
});

test('a report says how many, and the names of the first few of what was left or assumed', () => {
  const left = new Tally();
  const taken = new Tally();
  for (const name of ['A', '<b>', 'C', 'D']) left.add('left.outline', name);
  for (let index = 0; index < 12; index += 1) taken.add('taken.building', 'House');
  const assumed = new Tally();
  assumed.add('assumed.levels', 'Mill');
  expect(reportText({ taken: taken.report(), left: left.report(), assumed: assumed.report() })).toEqual([
    { part: 'taken', text: '12 buildings' },
    { part: 'left', text: '4 buildings whose outlines cannot be built: “A”, “<b>”, “C” …' },
    { part: 'assumed', text: '1 building gives levels only: 3.0 m each: “Mill”' },
  ]);
});
