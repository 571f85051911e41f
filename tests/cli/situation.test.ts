import { readFileSync, writeFileSync } from 'node:fs';
import { afterAll, describe, expect, test } from 'vitest';
import { planText } from '../../src/plan/write.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { DEMO, planAt, scratch, soffit, soffitJson } from './ran.ts';

const files = scratch();
afterAll(files.clear);

interface Listed {
  readonly id: string;
  readonly passage: string;
}

const solidsIn = (file: string, ...situation: string[]): ReadonlyMap<string, string> =>
  new Map(
    (soffitJson('solids', file, ...situation) as { solids: Listed[] }).solids.map(({ id, passage }) => [
      id,
      passage,
    ]),
  );

const kept = (name: string, plan: Plan): string => {
  const file = files.file(name);
  writeFileSync(file, planText(plan));
  return file;
};

describe('--situation', () => {
  test('of solids: the van is away, crowns and hedges are bare, and all else stands', () => {
    const drawn = solidsIn(DEMO);
    const bare = solidsIn(DEMO, '--situation', 'bare');
    expect([...drawn.keys()].filter((id) => !bare.has(id))).toEqual(['van']);
    const changed = [...bare].filter(([id, passage]) => drawn.get(id) !== passage);
    expect(changed).toEqual([
      ['hedge', 'screen'],
      ['tree.crown', 'screen'],
    ]);
  });

  test('of solids: a leaf stands as the situation has it', () => {
    const plan = planAt(DEMO);
    const night = plan.situations['night'];
    if (!night) throw new Error('the demo plan has no night');
    const glazed = {
      ...night,
      id: 'glazed',
      leaves: { 'side-gate': 'glazed', 'front-gate': 'open' },
    } as const;
    const file = kept('leaves.json', {
      ...plan,
      situations: { ...plan.situations, glazed },
      situationOrder: [...plan.situationOrder, 'glazed'],
    });
    expect(solidsIn(file, '--situation', 'glazed').get('side-fence.side-gate')).toBe('clear');
    expect(solidsIn(file).get('side-fence.side-gate')).toBe('solid');
    const obj = (name: string, ...more: string[]): string => {
      soffit('solids', file, '--obj', files.file(name), ...more);
      return /g hedge\.front-gate screen\n[^g]*/.exec(readFileSync(files.file(name), 'utf8'))?.[0] ?? '';
    };
    expect(obj('shut.obj')).not.toBe('');
    expect(obj('open.obj', '--situation', 'glazed')).not.toBe(obj('shut.obj'));
  });

  test('of cover: with the van away it hides nothing, and the result says which situation it is', () => {
    interface Told {
      situation: string | null;
      cameras: { id: string; byHider: { id: string }[] }[];
    }
    const hiders = (told: Told) => told.cameras.flatMap(({ byHider }) => byHider.map(({ id }) => id));
    const drawn = soffitJson('cover', DEMO) as Told;
    const bare = soffitJson('cover', DEMO, '--situation', 'bare') as Told;
    expect([drawn.situation, bare.situation]).toEqual([null, 'bare']);
    expect(hiders(drawn)).toContain('van');
    expect(hiders(bare)).not.toContain('van');
    expect(hiders(bare)).not.toContain('tree.crown');
  });

  test('of cells: no cell names what is away', () => {
    const cells = (...more: string[]): string =>
      soffit('cells', DEMO, '--camera', 'C2', '--cell', '0.5', ...more).out;
    expect(cells()).toContain(',van\n');
    expect(cells('--situation', 'bare')).not.toContain(',van\n');
  });

  test('of cameras: one on what is away is left out, and a note says so', () => {
    const plan = planAt(DEMO);
    const bare = plan.situations['bare'];
    if (!bare) throw new Error('the demo plan has no bare trees');
    const file = kept('away.json', {
      ...plan,
      situations: { ...plan.situations, bare: { ...bare, away: ['garage'] } },
    });
    const said = soffit('cameras', file, '--situation', 'bare', '--json');
    expect(said.code).toBe(0);
    expect(said.err).toMatch(/“C2” is fixed to what is away in this situation \(Garage\)/);
    const { cameras } = JSON.parse(said.out) as { cameras: { id: string }[] };
    expect(cameras.map(({ id }) => id)).toEqual(['C1', 'C3']);
  });

  test.each(['cover', 'solids', 'cameras', 'cells'])(
    'unknown to %s is refused with those there are',
    (name) => {
      const said = soffit(name, DEMO, '--camera', 'C1', '--situation', 'valueOf');
      const plain = soffit(name, DEMO, '--situation', 'valueOf');
      const { code, err } = name === 'cover' || name === 'cells' ? said : plain;
      expect(code).toBe(2);
      expect(err).toMatch(/no situation “valueOf”. It has: as-drawn, night, bare/);
    },
  );
});
