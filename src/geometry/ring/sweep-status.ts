/**
 * The edges that a sweep line cuts, in order along it: a balanced search tree and a linked list. The
 * tree is a treap with priorities hashed from the slot numbers, so the same input always gives the
 * same tree. Internal.
 */
export interface SweepStatus {
  /**
   * Inserts an edge. `sideOf` is 1 if its point is above an edge in the tree, -1 if below, 0 if on it.
   *
   * @returns the slot, or `-1 - edge` for the edge that the point is on
   */
  insert(edge: number, sideOf: (edge: number) => number): number;
  /** Inserts an edge directly above the one in a slot. */
  insertAbove(edge: number, slot: number): number;
  remove(slot: number): void;
  /** Replaces the edge in a slot. */
  replace(slot: number, edge: number): void;
  /** The edge in a slot. */
  edgeAt(slot: number): number;
  /** The slot below, or -1. */
  below(slot: number): number;
  /** The slot above, or -1. */
  above(slot: number): number;
}

const NONE = -1;

/** Makes an empty status with room for as many edges as there can be at once. Internal. */
export function makeSweepStatus(room: number): SweepStatus {
  const edge = new Int32Array(room);
  const left = new Int32Array(room).fill(NONE);
  const right = new Int32Array(room).fill(NONE);
  const parent = new Int32Array(room).fill(NONE);
  const order = makeOrder(room);
  const free: number[] = [];
  let used = 0;
  let root = NONE;
  const at = (list: Int32Array, slot: number): number => list[slot] ?? NONE;

  function replaceChild(of: number, child: number, by: number): void {
    if (of === NONE) root = by;
    else if (at(left, of) === child) left[of] = by;
    else right[of] = by;
    if (by !== NONE) parent[by] = of;
  }

  /** Rotates a slot above its parent. */
  function turnUp(slot: number): void {
    const over = at(parent, slot);
    const [near, far] = at(left, over) === slot ? [left, right] : [right, left];
    const inner = at(far, slot);
    replaceChild(at(parent, over), over, slot);
    near[over] = inner;
    if (inner !== NONE) parent[inner] = over;
    far[slot] = over;
    parent[over] = slot;
  }

  function place(item: number, under: number, side: Int32Array): number {
    const slot = free.pop() ?? used++;
    edge[slot] = item;
    left[slot] = NONE;
    right[slot] = NONE;
    parent[slot] = under;
    if (under === NONE) root = slot;
    else side[under] = slot;
    if (under === NONE) order.put(slot, NONE, NONE);
    else if (side === left) order.put(slot, order.below(under), under);
    else order.put(slot, under, order.above(under));
    while (at(parent, slot) !== NONE && priority(slot) > priority(at(parent, slot))) turnUp(slot);
    return slot;
  }

  return {
    insert(item, sideOf) {
      let under = NONE;
      let side = left;
      for (let here = root; here !== NONE; here = at(side, here)) {
        const where = sideOf(at(edge, here));
        if (where === 0) return -1 - at(edge, here);
        under = here;
        side = where > 0 ? right : left;
      }
      return place(item, under, side);
    },
    insertAbove(item, slot) {
      if (at(right, slot) === NONE) return place(item, slot, right);
      let under = at(right, slot);
      while (at(left, under) !== NONE) under = at(left, under);
      return place(item, under, left);
    },
    remove(slot) {
      for (;;) {
        const low = at(left, slot);
        const high = at(right, slot);
        if (low === NONE || high === NONE) {
          replaceChild(at(parent, slot), slot, low === NONE ? high : low);
          break;
        }
        turnUp(priority(low) > priority(high) ? low : high);
      }
      order.take(slot);
      free.push(slot);
    },
    replace(slot, item) {
      edge[slot] = item;
    },
    edgeAt: (slot) => at(edge, slot),
    below: order.below,
    above: order.above,
  };
}

/** The slots as a list from the lowest edge to the highest. */
function makeOrder(room: number) {
  const down = new Int32Array(room).fill(NONE);
  const up = new Int32Array(room).fill(NONE);
  const below = (slot: number): number => down[slot] ?? NONE;
  const above = (slot: number): number => up[slot] ?? NONE;
  const join = (low: number, high: number): void => {
    if (low !== NONE) up[low] = high;
    if (high !== NONE) down[high] = low;
  };
  return {
    below,
    above,
    put(slot: number, low: number, high: number): void {
      down[slot] = low;
      up[slot] = high;
      join(low, slot);
      join(slot, high);
    },
    take: (slot: number): void => join(below(slot), above(slot)),
  };
}

/** A fixed shuffle of the slot numbers. */
function priority(slot: number): number {
  const mixed = Math.imul(slot ^ (slot >>> 16), 0x45d9f3b);
  return Math.imul(mixed ^ (mixed >>> 15), 0x2c1b3c6d) >>> 0;
}
