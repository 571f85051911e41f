/** Brings a row into view within the box of its list. Where the list has no box of its own, as on a phone, the page stays where it is. */
export function reveal(row: HTMLElement): void {
  const box = boxOf(row);
  if (!box) return;
  const [inner, outer] = [row.getBoundingClientRect(), box.getBoundingClientRect()];
  if (inner.top < outer.top) box.scrollTop -= outer.top - inner.top;
  else if (inner.bottom > outer.bottom) box.scrollTop += inner.bottom - outer.bottom;
}

function boxOf({ parentElement: box }: HTMLElement): HTMLElement | null {
  if (!box || box === document.body) return null;
  return /auto|scroll/.test(getComputedStyle(box).overflowY) && box.scrollHeight > box.clientHeight
    ? box
    : boxOf(box);
}
