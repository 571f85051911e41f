import type { Facets } from './facets.ts';

const LEAF = 4;
const BINS = 16;

/**
 * A tree of boxes over facets or other boxes. Node n has its box in six numbers (least x, y, z, greatest x, y, z); a leaf
 * has `amount` of them from `first` on in `order`, a branch has its children at `first` and `first` + 1.
 */
export interface Tree {
  readonly boxes: Float64Array;
  readonly first: Int32Array;
  readonly amount: Int32Array;
  readonly order: Int32Array;
}

/** A tree over facets, for rays. Cost: n log n. */
export function treeOf({ count, corners }: Pick<Facets, 'count' | 'corners'>): Tree {
  const boxes = new Float64Array(count * 6);
  for (let facet = 0; facet < count; facet += 1)
    for (let axis = 0; axis < 3; axis += 1) {
      const at = facet * 9 + axis;
      const [a, b, c] = [corners[at] ?? 0, corners[at + 3] ?? 0, corners[at + 6] ?? 0];
      boxes[facet * 6 + axis] = Math.min(a, b, c);
      boxes[facet * 6 + 3 + axis] = Math.max(a, b, c);
    }
  return treeOfBoxes(boxes);
}

/** Builds a tree over boxes of six numbers each by the surface area heuristic in bins. Cost: n log n. */
export function treeOfBoxes(boxes: Float64Array): Tree {
  const count = boxes.length / 6;
  const middles = new Float64Array(count * 3);
  for (let one = 0; one < count; one += 1)
    for (let axis = 0; axis < 3; axis += 1)
      middles[one * 3 + axis] = ((boxes[one * 6 + axis] ?? 0) + (boxes[one * 6 + 3 + axis] ?? 0)) / 2;
  const order = Int32Array.from({ length: count }, (_, one) => one);
  const most = Math.max(1, 2 * count);
  const nodes = {
    boxes: new Float64Array(most * 6),
    first: new Int32Array(most),
    amount: new Int32Array(most),
  };
  let used = 1;
  const open = [{ node: 0, from: 0, to: count }];
  for (let job = open.pop(); job !== undefined; job = open.pop()) {
    const { node, from, to } = job;
    const box = around(boxes, order, from, to);
    nodes.boxes.set(box, node * 6);
    const middle = to - from <= LEAF ? -1 : split(boxes, middles, order, from, to, box);
    if (middle <= from || middle >= to) {
      nodes.first[node] = from;
      nodes.amount[node] = to - from;
      continue;
    }
    nodes.first[node] = used;
    open.push({ node: used, from, to: middle }, { node: used + 1, from: middle, to });
    used += 2;
  }
  return {
    boxes: nodes.boxes.subarray(0, used * 6),
    first: nodes.first.subarray(0, used),
    amount: nodes.amount.subarray(0, used),
    order,
  };
}

function around(boxes: Float64Array, order: Int32Array, from: number, to: number): Float64Array {
  const box = Float64Array.of(Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity);
  for (let at = from; at < to; at += 1) grow(box, 0, boxes, (order[at] ?? 0) * 6);
  return box;
}

function grow(into: Float64Array, at: number, boxes: Float64Array, from: number): void {
  for (let axis = 0; axis < 3; axis += 1) {
    into[at + axis] = Math.min(into[at + axis] ?? 0, boxes[from + axis] ?? 0);
    into[at + 3 + axis] = Math.max(into[at + 3 + axis] ?? 0, boxes[from + 3 + axis] ?? 0);
  }
}

const side = (box: Float64Array, at: number, axis: number): number =>
  Math.max(0, (box[at + 3 + axis] ?? 0) - (box[at + axis] ?? 0));

function surface(box: Float64Array, at: number): number {
  const [x, y, z] = [side(box, at, 0), side(box, at, 1), side(box, at, 2)];
  return x * y + y * z + z * x;
}

/** Orders the facets of a node by the cheapest of the bin splits along its longest axis; where the second part begins. */
function split(
  boxes: Float64Array,
  middles: Float64Array,
  order: Int32Array,
  from: number,
  to: number,
  box: Float64Array,
): number {
  const sizes = [0, 1, 2].map((axis) => (box[axis + 3] ?? 0) - (box[axis] ?? 0));
  const axis = sizes.indexOf(Math.max(...sizes));
  let [low, high] = [Infinity, -Infinity];
  for (let at = from; at < to; at += 1) {
    const middle = middles[(order[at] ?? 0) * 3 + axis] ?? 0;
    low = Math.min(low, middle);
    high = Math.max(high, middle);
  }
  if (!(high > low)) return (from + to) >> 1;
  const binOf = (facet: number): number =>
    Math.min(BINS - 1, Math.floor((((middles[facet * 3 + axis] ?? 0) - low) / (high - low)) * BINS));
  const cut = cheapestCut(boxes, order, from, to, binOf);
  const part = order.slice(from, to);
  let [front, back] = [from, to];
  for (const facet of part) {
    if (binOf(facet) < cut) order[front++] = facet;
    else order[--back] = facet;
  }
  return front;
}

function cheapestCut(
  boxes: Float64Array,
  order: Int32Array,
  from: number,
  to: number,
  binOf: (facet: number) => number,
): number {
  const counts = new Int32Array(BINS);
  const bins = new Float64Array((BINS + 1) * 6);
  const empty = (at: number) => bins.fill(Infinity, at, at + 3).fill(-Infinity, at + 3, at + 6);
  for (let bin = 0; bin < BINS; bin += 1) empty(bin * 6);
  for (let at = from; at < to; at += 1) {
    const facet = order[at] ?? 0;
    const bin = binOf(facet);
    counts[bin] = (counts[bin] ?? 0) + 1;
    grow(bins, bin * 6, boxes, facet * 6);
  }
  // The last box gathers bins from one end on.
  const all = BINS * 6;
  const costs = new Float64Array(BINS);
  const sweep = (upwards: boolean, put: (bin: number, cost: number) => void): void => {
    empty(all);
    let amount = 0;
    for (let step = 0; step < BINS; step += 1) {
      const bin = upwards ? step : BINS - 1 - step;
      grow(bins, all, bins, bin * 6);
      amount += counts[bin] ?? 0;
      put(bin, amount === 0 ? 0 : amount * surface(bins, all));
    }
  };
  sweep(true, (bin, cost) => {
    if (bin + 1 < BINS) costs[bin + 1] = cost;
  });
  sweep(false, (bin, cost) => {
    costs[bin] = (costs[bin] ?? 0) + cost;
  });
  let [best, cheapest] = [BINS >> 1, Infinity];
  for (let cut = 1; cut < BINS; cut += 1) {
    const cost = costs[cut] ?? 0;
    if (cost < cheapest) [best, cheapest] = [cut, cost];
  }
  return best;
}
