/** A finger that moves so far sideways, in pixels, and less up or down, has swiped. */
const swipePixels = 60;

/** Arrow keys, space and a swipe lead from moment to moment, where nothing else wants them. */
export function followKeys(root: HTMLElement, step: (by: 1 | -1) => void, isWorking: () => boolean): void {
  document.addEventListener('keydown', (event) => {
    if (!isWorking() || event.altKey || event.ctrlKey || event.metaKey) return;
    const target = event.target instanceof HTMLElement ? event.target : undefined;
    const types = target?.matches('input:not([type=checkbox]), select, textarea') ?? false;
    const takesSpace = target?.matches('button, input, select, summary') ?? false;
    if (types) return;
    const by = event.key === 'ArrowRight' ? 1 : event.key === 'ArrowLeft' ? -1 : undefined;
    const way = by ?? (event.key === ' ' && !takesSpace ? (event.shiftKey ? -1 : 1) : undefined);
    if (way === undefined) return;
    event.preventDefault();
    step(way);
  });

  let from: { readonly x: number; readonly y: number } | undefined;
  root.addEventListener(
    'touchstart',
    (event) => {
      const touch = event.touches.length === 1 ? event.touches[0] : undefined;
      from = touch && { x: touch.clientX, y: touch.clientY };
    },
    { passive: true },
  );
  root.addEventListener('touchend', (event) => {
    const touch = event.changedTouches[0];
    if (!from || !touch) return;
    const [x, y] = [touch.clientX - from.x, touch.clientY - from.y];
    from = undefined;
    if (Math.abs(x) < swipePixels || Math.abs(x) < 1.5 * Math.abs(y)) return;
    step(x < 0 ? 1 : -1);
  });
}
