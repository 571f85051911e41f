import { accept, type Outcome } from '../../../base/fault.ts';
import type { Vec2 } from '../../../base/vector.ts';
import { postCount, postsAlong } from '../../../model/shapes/posts.ts';
import type { Block, Got } from '../../../model/structure.ts';
import { addGroup } from '../../../plan/commands/addGroup.ts';
import { sound } from '../../../plan/commands/admitted.ts';
import { idStem } from '../../../plan/commands/addStructure.ts';
import { deleteThings } from '../../../plan/commands/deleteThings.ts';
import { freshId, takenIds } from '../../../plan/commands/freshId.ts';
import { freshName, takenNames } from '../../../plan/commands/freshName.ts';
import type { Plan } from '../../../plan/plan.ts';
import { eyesOf } from '../../selectionActs.ts';
import type { Made } from '../drawing/drawSpec.ts';

/** Posts to stand along a line. */
export interface PostRow {
  readonly corners: readonly Vec2[];
  readonly closed: boolean;
  /** How far apart at most, m, or how many on a line of one edge; a post stands at each corner. */
  readonly by: { readonly spacing: number } | { readonly count: number };
  readonly thickness: number;
  readonly height: number;
  /** m above z = 0. */
  readonly base: number;
  readonly got: Got;
}

/** A post's outline and height as they are to be. */
type Stand = Pick<Block, 'outline' | 'base' | 'height' | 'got'>;

/**
 * The plan with posts along a line, bound to a group.
 * @param group the row that is made anew: its posts keep their ids as far as they go, the rest comes or goes at the end
 * @returns     refused where they cannot stand there
 */
export function withPosts(plan: Plan, row: PostRow, group: string | null = null): Outcome<Made> {
  const stands = standsOf(row);
  const former = group === null ? [] : membersOf(plan, group);
  const surplus = former.slice(stands.length).map((id) => ({ kind: 'structure', id }) as const);
  const fewer = surplus.length === 0 ? plan : deleteThings(plan, surplus, eyesOf(plan));
  const kept = former.slice(0, stands.length);
  const [ids, names] = [takenIds(fewer), takenNames(fewer)];
  const claim = (): { id: string; name: string } => {
    const name = freshName('Post', names);
    names.add(name);
    const id = freshId(ids, idStem(name));
    ids.add(id);
    return { id, name };
  };
  const posts = stands.map((stand, k): Block => {
    const before = fewer.structures[kept[k] ?? ''];
    if (before?.kind === 'block') return { ...before, ...stand };
    return { ...claim(), kind: 'block', hidden: false, locked: false, passage: 'solid', ...stand };
  });
  const news = posts.slice(kept.length).map(({ id }) => id);
  const next: Plan = {
    ...fewer,
    structures: { ...fewer.structures, ...Object.fromEntries(posts.map((post) => [post.id, post])) },
    structureOrder: [...fewer.structureOrder, ...news],
  };
  const bound = boundIn(
    next,
    group,
    posts.map(({ id }) => id),
  );
  const checked = sound(plan, bound.plan);
  return checked.ok ? accept({ plan: checked.value, thing: { kind: 'group', id: bound.id } }) : checked;
}

function boundIn(plan: Plan, group: string | null, members: readonly string[]): { plan: Plan; id: string } {
  const held = group === null ? undefined : plan.groups[group];
  if (!held) return addGroup(plan, members, 'Posts');
  return { plan: { ...plan, groups: { ...plan.groups, [held.id]: { ...held, members } } }, id: held.id };
}

/** The posts of a row in the order in which they stand. */
function membersOf({ groups, structures }: Plan, group: string): readonly string[] {
  const members = Object.hasOwn(groups, group) ? (groups[group]?.members ?? []) : [];
  return members.filter((id) => structures[id]?.kind === 'block');
}

/** Edge by edge, so that one stands at each corner; where two edges meet it is one. */
function standsOf({ corners, closed, by, thickness, height, base, got }: PostRow): readonly Stand[] {
  const ends = corners.slice(1);
  const edges = (closed ? [...ends, ...corners.slice(0, 1)] : ends).map(
    (to, k) => [corners[k] ?? to, to] as const,
  );
  const outlines = edges.flatMap(([from, to], k) => {
    const count =
      'count' in by ? by.count : postCount(Math.hypot(to[0] - from[0], to[1] - from[1]), by.spacing);
    const posts = postsAlong({ from, to, count, thickness, height, name: 'Post' });
    const isLast = closed && k === edges.length - 1;
    return posts.slice(k === 0 ? 0 : 1, isLast ? -1 : undefined);
  });
  return outlines.map(({ outline }) => ({
    outline,
    base,
    height,
    got: { outline: got, base: 'guessed', height: 'guessed' },
  }));
}

/** What a row is like as it stands: how many, how far the first two are apart, how thick and high, m; null: no such row. */
export function rowAsItIs(
  plan: Plan,
  group: string,
): {
  readonly count: number;
  readonly spacing: number;
  readonly thickness: number;
  readonly height: number;
} | null {
  const posts = membersOf(plan, group).flatMap((id) => {
    const post = plan.structures[id];
    return post?.kind === 'block' ? [post] : [];
  });
  const [first, second] = posts;
  if (!first) return null;
  const [a = ZERO, b = ZERO] = first.outline;
  return {
    count: posts.length,
    spacing: second ? apart(middle(first), middle(second)) : 0,
    thickness: apart(a, b),
    height: first.height,
  };
}

const ZERO: Vec2 = [0, 0];
const apart = (a: Vec2, b: Vec2): number => Math.round(Math.hypot(b[0] - a[0], b[1] - a[1]) * 1e6) / 1e6;
const middle = ({ outline }: Block): Vec2 => {
  const [a = ZERO, , c = ZERO] = outline;
  return [(a[0] + c[0]) / 2, (a[1] + c[1]) / 2];
};
