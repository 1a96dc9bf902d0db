/**
 * Moves rows apart along one direction so that neighbours keep their spacing, each as near to its
 * wish as that allows: rows that meet form a block about the mean of their wishes. Wishes rise; the
 * rows stay between `from` and `to` where there is room for all of them, else they run past `to`.
 * Internal.
 */
export function spreadRows(
  wishes: readonly number[],
  { spacing, from, to }: { readonly spacing: number; readonly from: number; readonly to: number },
): number[] {
  const blocks: { first: number; count: number }[] = [];
  const last = Math.max(to, from + (wishes.length - 1) * spacing);
  const placed = (wish: number, count: number): number =>
    Math.max(from, Math.min(wish, last - (count - 1) * spacing));
  for (const wish of wishes) {
    let block = { first: placed(wish, 1), count: 1 };
    for (let before = blocks.at(-1); before !== undefined; before = blocks.at(-1)) {
      if (before.first + before.count * spacing <= block.first) break;
      blocks.pop();
      const count = before.count + block.count;
      const shift = before.count * spacing;
      const mean = (before.first * before.count + (block.first - shift) * block.count) / count;
      block = { first: placed(mean, count), count };
    }
    blocks.push(block);
  }
  return blocks.flatMap(({ first, count }) =>
    Array.from({ length: count }, (_, index) => first + index * spacing),
  );
}
