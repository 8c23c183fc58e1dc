/**
 * Does the newest of what it is given once the next frame has been painted: what is drawn at once is never late for
 * what may follow. While answers keep coming, one is drawn each frame, so nothing waits for the hand to rest.
 */
export function afterFrame<Thing>(draw: (thing: Thing) => void): { follow: (thing: Thing) => void; stop: () => void } {
  let waiting: { readonly thing: Thing } | undefined;
  let frame: number | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const drawNewest = (): void => {
    const newest = waiting;
    waiting = undefined;
    frame = undefined;
    if (newest) draw(newest.thing);
  };

  const follow = (thing: Thing): void => {
    waiting = { thing };
    frame ??= requestAnimationFrame(() => {
      timer = setTimeout(drawNewest);
    });
  };

  const stop = (): void => {
    if (frame !== undefined) cancelAnimationFrame(frame);
    clearTimeout(timer);
    waiting = undefined;
    frame = undefined;
  };

  return { follow, stop };
}
